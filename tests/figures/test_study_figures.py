"""Figures of overload, all around the crane, and what eats capacity: from the artists' data."""

from functools import lru_cache

import numpy as np
import pytest
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure

from boomsim.caution import CAUTION
from boomsim.figures.around.around_figure import figure_of_around
from boomsim.figures.around.float_load_lines import draw_reactions
from boomsim.figures.around.sector_lines import draw_sectors
from boomsim.figures.around.slew_polar import draw_polar, update_polar, with_turns
from boomsim.figures.figure_page import caution_of, new_page, picture
from boomsim.figures.losses.losses_figure import figure_of_losses
from boomsim.figures.overload.event_bars import draw_events, update_events
from boomsim.figures.overload.operator_feel import draw_feel
from boomsim.figures.overload.overload_figure import figure_of_overload
from boomsim.figures.overload.overload_map_figure import (
    SHADES,
    draw_overload_map,
    figure_of_overload_map,
    narrow_ratio,
    shade_of,
)
from boomsim.figures.overload.righting_moment import draw_fall
from boomsim.machine.machine_files import load_machine
from boomsim.machine.model import Rigging
from boomsim.rating.around.centres_of_gravity import hung_at
from boomsim.rating.around.float_loads import ground_loads
from boomsim.rating.around.over_rear_sector import sectors
from boomsim.rating.around.slew_study import around
from boomsim.rating.chart_places import Places
from boomsim.rating.charts.load_chart import best_chart
from boomsim.rating.losses.losses_study import losses
from boomsim.rating.losses.mass_sensitivity import sensitivity
from boomsim.rating.overload.overload_map import overload_map
from boomsim.rating.overload.overload_sentences import MOST_LEAN
from boomsim.rating.overload.overload_study import overload
from boomsim.rating.setup import set_up

HALVES = np.array([0.5, 0.5, 0.5])


@lru_cache
def truck(support="full"):
    return set_up(load_machine("truck18"), rigging=Rigging(support=support))


@lru_cache
def raised(radius=5.0):
    return overload(truck(), extension=HALVES, radius=radius)


@lru_cache
def mapped():
    return overload_map(best_chart(truck()))


@lru_cache
def circle(*radii, support="full"):
    out = HALVES if support == "full" else 0.0 * HALVES
    return around(truck(support), extension=out, radius=np.array(radii))


@lru_cache
def surroundings(*radii, support="full"):
    found = circle(*radii, support=support)
    load = float(found.capacity[:, -1].min())
    at = hung_at(found.setup, extension=found.extension, load=load, radius=radii[-1])
    return {
        "at": at,
        "ground": ground_loads(at, slew=found.slew, mat=1.0),
        "sectors": sectors(found.setup, extension=found.extension, radius=np.arange(4.0, 17.0)),
    }


@lru_cache
def eaten(count=3):
    radii = np.array([5.0, 9.0, 13.0, 16.0])[:count]
    places = Places(extension=np.tile(HALVES, (count, 1)), radius=radii)
    return losses(truck(), places=places), sensitivity(truck(), places=places)


FIGURES = {
    "tips": lambda units: figure_of_overload(raised(13.0), units=units),
    "breaks": lambda units: figure_of_overload(raised(), units=units),
    "map": lambda units: figure_of_overload_map(mapped(), units=units),
    "around": lambda units: figure_of_around(
        circle(6.0, 9.0, 13.0), **surroundings(6.0, 9.0, 13.0), units=units
    ),
    "on tyres": lambda units: figure_of_around(
        circle(5.0, support="tyres"), **surroundings(5.0, support="tyres"), units=units
    ),
    "losses": lambda units: figure_of_losses(*eaten(), units=units),
    "four places": lambda units: figure_of_losses(*eaten(4), units=units),
}


@pytest.fixture(scope="module", params=[f"{n} {u}" for n in FIGURES for u in ("metric", "us")])
def figure(request):
    name, _, units = request.param.rpartition(" ")
    return FIGURES[name](units)


def boxes(figure):
    """Every piece of type that can be seen, with its place."""
    renderer = FigureCanvasAgg(figure).get_renderer()
    figure.draw(renderer)
    texts = [t for ax in figure.axes for t in (*ax.texts, ax._left_title, ax._right_title)]
    labels = [(ax.xaxis.label, ax.yaxis.label) for ax in figure.axes if ax.axison]
    texts += [*figure.texts, *(label for pair in labels for label in pair)]
    shown = [t for t in texts if t.get_text().strip() and t.get_visible()]
    return [(t, t.get_window_extent(renderer)) for t in shown]


@pytest.mark.slow
def test_the_caution_is_at_the_foot(figure):
    assert caution_of(figure) == CAUTION


@pytest.mark.slow
def test_no_words_run_off_the_page(figure):
    for text, box in boxes(figure):
        inside = box.x0 >= 0 and box.y0 >= 0
        inside = inside and box.x1 <= figure.bbox.x1 and box.y1 <= figure.bbox.y1
        assert inside, text.get_text()


@pytest.mark.slow
def test_no_words_lie_on_other_words(figure):
    found = boxes(figure)
    for k, (text, box) in enumerate(found):
        for other, there in found[k + 1 :]:
            assert not box.overlaps(there), (text.get_text(), other.get_text())


@pytest.mark.slow
@pytest.mark.parametrize("name", ["tips", "around", "losses"])
def test_the_same_figure_gives_the_same_bytes(name):
    first = picture(FIGURES[name]("metric"), kind="svg")
    assert picture(FIGURES[name]("metric"), kind="svg") == first


def blank(count=1):
    page = new_page(width=0.15, height=0.1)
    axes = [page.axes(left=0.02, bottom=0.01, width=0.1, height=0.05) for _ in range(count)]
    return axes[0] if count == 1 else axes


def test_bars_end_at_their_loads_in_the_order_of_events():
    result = raised()
    artists = draw_events(blank(), result)
    ends = [bar.get_width() for bar in artists.bars]
    most = result.load[-1]
    assert ends == pytest.approx([min(e.load, most) / 1000.0 for e in result.events])
    assert ends == sorted(ends)


def test_another_study_leaves_nothing_of_the_last_behind():
    artists = draw_events(blank(), raised(13.0))
    update_events(artists, raised())
    fresh = draw_events(blank(), raised())
    assert len(artists.bars) == len(fresh.bars) == len(artists.ax.patches)
    assert len(artists.ax.texts) == len(fresh.ax.texts)


def test_what_is_felt_is_drawn_until_it_ends():
    result = raised()
    artists = draw_feel(blank(3), result)
    x, y = artists.lines[0].get_data()
    assert x[-1] * 1000.0 == pytest.approx(result.failure.load, rel=1e-5)
    assert y * 1000.0 == pytest.approx(result.feel.lightest)
    assert artists.rated[0].get_xdata()[0] * 1000.0 == pytest.approx(result.rated)


@pytest.mark.slow
def test_a_lean_without_end_leaves_its_panel_and_what_was_before_can_be_read():
    """Where every tyre of a side goes light, springs alone would let the carrier turn for ever."""
    setup = set_up(load_machine("truck18"), rigging=Rigging(support="tyres"))
    found = overload(setup, extension=np.zeros(3), radius=4.0)
    axes = Figure().subplots(3)
    draw_feel(axes, found)
    told = found.feel.lean[found.feel.lean < np.radians(MOST_LEAN)]
    assert len(told) < len(found.feel.lean), "the lean must run away here, or this tries nothing"
    assert np.degrees(told.max()) < axes[1].get_ylim()[1] <= MOST_LEAN
    assert "nobody luffs" in " ".join(t.get_text() for t in figure_of_overload(found).texts)


def test_the_curve_of_the_tipping_load_starts_at_nothing_and_goes_down():
    result = raised()
    artists = draw_fall(blank(), result.fall)
    _, moment = artists.lines[2].get_data()
    assert abs(moment[0]) < 1e-3 * abs(moment[-1])
    assert np.all(np.diff(moment) < 0.0)
    rings, level = artists.returns.get_data()
    assert np.radians(rings) == pytest.approx(result.fall.no_return[:2])
    assert not np.any(level)


def test_every_rated_cell_is_on_the_map_with_the_shade_of_its_ratio():
    found = mapped()
    artists = draw_overload_map(blank(), found)
    assert len(artists.cells) == found.chart.rated.sum()
    for (row, column), cell in artists.cells.items():
        wanted = shade_of(float(found.ratio[row, column]))
        assert cell.get_facecolor() == pytest.approx(tuple(hex_rgba(wanted)))
    breaks = {SHADES[0][1], SHADES[1][1]}
    for row, column in artists.cells:
        dark = shade_of(float(found.ratio[row, column])) in breaks
        assert dark == bool(found.breaks_first[row, column])


def hex_rgba(colour):
    return [int(colour[k : k + 2], 16) / 255 for k in (1, 3, 5)] + [1.0]


def test_the_meeting_line_runs_along_edges_of_cells():
    artists = draw_overload_map(blank(), mapped())
    for line in artists.meeting:
        x, y = line.get_data()
        steps = np.abs(np.diff(x)) + np.abs(np.diff(y))
        assert np.all(steps == 1.0)


def test_no_cell_that_breaks_first_reads_as_if_it_did_not():
    assert [narrow_ratio(r) for r in (0.0, 0.5, 0.999, 1.0, 1.237, 12.3, np.inf)] == [
        "0",
        ".50",
        ".99",
        "1.00",
        "1.24",
        "12",
        "tips",
    ]


def test_a_polar_line_lies_at_the_capacity_of_its_slew_angle():
    found = circle(6.0, 9.0, 13.0)
    artists = draw_polar(blank(), found)
    for k, pair in enumerate(artists.curves):
        slew, capacity, tips, turns = with_turns(found, k)
        for line, own in zip(pair, (~tips, tips), strict=True):
            x, y = (np.asarray(v, dtype=float) for v in line.get_data())
            shown = own | turns
            assert np.hypot(x, y)[shown] * 1000.0 == pytest.approx(capacity[shown])
            assert np.all(np.isnan(x[~shown]))
            assert np.arctan2(y, x)[shown] == pytest.approx(
                np.arctan2(np.sin(slew), np.cos(slew))[shown], abs=1e-9
            )


def test_a_polar_figure_can_show_another_circle():
    artists = draw_polar(blank(), circle(6.0, 9.0, 13.0))
    update_polar(artists, circle(13.0))
    fresh = draw_polar(blank(), circle(13.0))
    assert len(artists.ax.lines) == len(fresh.ax.lines)
    assert len(artists.ax.texts) == len(fresh.ax.texts)


def test_forces_and_pressures_share_their_lines():
    ground = surroundings(6.0, 9.0, 13.0)["ground"]
    artists = draw_reactions(blank(), ground, truck().support)
    slew, force = artists.lines[0].get_data()
    assert np.radians(slew) == pytest.approx(ground.loads.slew)
    assert force * 1000.0 == pytest.approx(ground.force[0])
    high = artists.ax.get_ylim()[1] * 1000.0
    # One square metre under each float: as many pascals as newtons.
    assert artists.pressure.get_ylim()[1] * 1000.0 == pytest.approx(high)


def test_the_gain_over_the_rear_is_drawn_between_the_two_lines():
    found = surroundings(6.0, 9.0, 13.0)["sectors"]
    artists = draw_sectors(blank(), found)
    top = artists.gain.get_paths()[0].vertices[:, 1].max() * 1000.0
    assert top == pytest.approx(np.nanmax(found.rear.capacity))
