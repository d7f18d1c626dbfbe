"""What every figure owes: the caution, room for its words, the same bytes, a whole file or none."""

import ast
from pathlib import Path

import matplotlib as mpl
import pytest
from matplotlib.backends.backend_agg import FigureCanvasAgg

import boomsim.figures
from boomsim.caution import CAUTION
from boomsim.figures import figure_page as page
from boomsim.figures.comparison.comparison_figure import figure_of_comparison
from boomsim.figures.difference.difference_figure import figure_of_difference
from boomsim.figures.figure_page import caution_of, new_page, picture, write
from boomsim.figures.plan.plan_figure import figure_of_plan
from boomsim.figures.range.range_figure import figure_of_range
from boomsim.figures.side.side_figure import figure_of_lift
from boomsim.figures.text_width import text_width, wrap
from boomsim.rating.around.centres_of_gravity import hung_at

WAYS = ([0, 0, 0, 0.9], [0.9, 0, 0, 0])


FIGURES = ("comparison", "comparison us", "many", "lift", "lift us", "difference", "difference us")


@pytest.fixture(scope="module", params=[*FIGURES, "plan", "plan us", "range", "range us"])
def figure(request, comparison, many, lift, explained, setup):
    units = "us" if request.param.endswith(" us") else "metric"
    what = request.param.removesuffix(" us")
    if what == "lift":
        return figure_of_lift(lift, configuration=1, cell=1, units=units)
    if what == "difference":
        return figure_of_difference(explained, setup=setup, extensions=WAYS, units=units)
    if what == "plan":
        at = hung_at(setup, extension=WAYS[0], load=8000.0, radius=12.0)
        return figure_of_plan(at, slew=0.6, units=units)
    if what == "range":
        return figure_of_range(setup, units=units)
    return figure_of_comparison(many if what == "many" else comparison, units)


def words(figure):
    """Every piece of type in a figure that can be seen."""
    texts = [t for ax in figure.axes for t in ax.texts] + list(figure.texts)
    for ax in figure.axes:
        if ax.axison:
            texts += [ax.xaxis.label, ax.yaxis.label]
    return [t for t in texts if t.get_text().strip() and t.get_visible()]


def boxes(figure):
    renderer = FigureCanvasAgg(figure).get_renderer()
    figure.draw(renderer)
    return [(t, t.get_window_extent(renderer)) for t in words(figure)]


def test_the_caution_stands_at_the_foot_of_every_figure(figure):
    assert caution_of(figure) == CAUTION


def test_no_words_run_off_the_page(figure):
    for text, box in boxes(figure):
        inside = (
            box.x0 >= 0 and box.y0 >= 0 and box.x1 <= figure.bbox.x1 and box.y1 <= figure.bbox.y1
        )
        assert inside, text.get_text()


def test_no_words_lie_on_other_words(figure):
    upright = [(t, b) for t, b in boxes(figure) if t.get_rotation() in (0.0, 90.0)]
    for k, (text, box) in enumerate(upright):
        for other, there in upright[k + 1 :]:
            assert not box.overlaps(there), (text.get_text(), other.get_text())


def test_a_long_title_is_broken_into_lines_that_fit():
    title = "A machine with a name so long that nobody would read it to the end of the line " * 2
    made = new_page(width=0.09, height=0.08, title=title)
    assert all(box.x1 <= made.figure.bbox.x1 for _, box in boxes(made.figure))


def test_wrapped_lines_keep_every_word_and_fit():
    lines = wrap(CAUTION, width=0.05, size=6.0)
    assert " ".join(lines) == " ".join(CAUTION.split())
    assert all(text_width(line, size=6.0) <= 0.05 for line in lines)


def test_a_dollar_sign_in_a_name_is_not_read_as_mathematics():
    made = new_page(width=0.1, height=0.05, title="crane $x^2$ of my own")
    assert "$x^2$" in made.figure.texts[0].get_text()
    assert picture(made.figure, kind="png")


@pytest.mark.parametrize("kind", ["png", "svg", "pdf"])
def test_the_same_figure_gives_the_same_bytes(kind, comparison):
    first = picture(figure_of_comparison(comparison), kind=kind)
    assert picture(figure_of_comparison(comparison), kind=kind) == first


@pytest.mark.parametrize(
    ("name", "start"), [("a.png", b"\x89PNG"), ("a.SVG", b"<?xml"), ("a.pdf", b"%PDF")]
)
def test_the_suffix_says_what_is_written(name, start, tmp_path):
    made = new_page(width=0.05, height=0.03)
    assert write(made.figure, tmp_path / name).read_bytes().startswith(start)
    assert [p.name for p in tmp_path.iterdir()] == [name]


@pytest.mark.parametrize("name", ["figure.jpg", "figure", "figure.png.bak"])
def test_another_suffix_is_refused_with_the_way_out(name, tmp_path):
    with pytest.raises(ValueError, match=r"\.png, \.svg or \.pdf") as caught:
        write(new_page(width=0.05, height=0.03).figure, tmp_path / name)
    assert name in str(caught.value)
    assert not list(tmp_path.iterdir())


def test_a_folder_that_does_not_exist_is_refused(tmp_path):
    with pytest.raises(ValueError, match="does not exist"):
        write(new_page(width=0.05, height=0.03).figure, tmp_path / "no" / "figure.png")


def test_a_folder_in_the_way_is_refused(tmp_path):
    (tmp_path / "figure.png").mkdir()
    with pytest.raises(ValueError, match="is a folder"):
        write(new_page(width=0.05, height=0.03).figure, tmp_path / "figure.png")


def test_a_failure_while_writing_leaves_the_old_file_as_it_was(tmp_path, monkeypatch):
    target = tmp_path / "figure.svg"
    target.write_text("old")

    def full(self, other):
        raise OSError("disk full")

    monkeypatch.setattr(page.Path, "replace", full)
    with pytest.raises(ValueError, match="disk full"):
        write(new_page(width=0.05, height=0.03).figure, target)
    assert target.read_text() == "old"
    assert [p.name for p in tmp_path.iterdir()] == ["figure.svg"]


def test_drawing_and_writing_leave_the_global_settings_alone(comparison):
    before = dict(mpl.rcParams)
    picture(figure_of_comparison(comparison), kind="svg")
    assert dict(mpl.rcParams) == before


def test_no_figure_module_touches_pyplot_or_global_settings_or_writes_files():
    folder = Path(boomsim.figures.__file__).parent
    for path in folder.rglob("*.py"):
        names = {
            node.attr if isinstance(node, ast.Attribute) else node.name
            for node in ast.walk(ast.parse(path.read_text()))
            if isinstance(node, ast.Attribute | ast.alias)
        }
        own = {"savefig"} if path.name == "figure_page.py" else set()
        forbidden = {"pyplot", "matplotlib.pyplot", "show", "savefig", "rcParams"} - own
        # `show` of boomsim.units writes a number; an attribute `.show` would open a window.
        names -= {"show"} if "from boomsim.units import" in path.read_text() else set()
        assert not names & forbidden, path.name


@pytest.mark.parametrize("kind", ["png", "svg", "pdf"])
def test_a_drawn_page_holds_no_bitmap_even_before_the_collector_comes(kind, comparison):
    """One is some 9 MB, and the collector that would find it counts objects, not their size."""
    import gc

    from matplotlib.backends.backend_agg import RendererAgg

    def bitmaps():
        return sum(isinstance(one, RendererAgg) for one in gc.get_objects())

    gc.collect()
    before = bitmaps()
    gc.disable()
    try:
        figure = figure_of_comparison(comparison)
        first = picture(figure, kind=kind)
        assert bitmaps() <= before
        assert picture(figure, kind=kind) == first
    finally:
        gc.enable()
