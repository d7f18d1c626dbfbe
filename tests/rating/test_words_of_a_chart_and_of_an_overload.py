"""What a chart says of a cell is what the rating and the overload study of that cell say.

The printed chart is read back, sign by sign; each cell is then rated and raised by itself.
"""

import csv
import io
import json
import re
from contextlib import redirect_stdout
from dataclasses import replace
from functools import lru_cache
from itertools import pairwise
from pathlib import Path

import numpy as np
import pytest

from boomsim.cli import main
from boomsim.figures.charts.chart_page import chart_sheets
from boomsim.figures.charts.chart_sizes_and_tints import BREAKS, FULL, SECOND
from boomsim.figures.charts.page_marks import Fill, Stroke
from boomsim.machine.machine_files import load_machine
from boomsim.rating.capacity import rate
from boomsim.rating.charts.chart_configurations import one_way_for_each_length
from boomsim.rating.charts.load_chart import best_chart, stated_chart
from boomsim.rating.limits.limit_kind import GIVES_WAY, PERMISSIBLE_VALUE, STABILITY, STRENGTH, TIPS
from boomsim.rating.overload.overload_map import overload_map
from boomsim.rating.overload.overload_study import overload
from boomsim.rating.overload.second_line import (
    BOLD_LINE,
    BREAKS_FIRST,
    FIRST,
    SECOND_LINE,
    TIPS_FIRST,
    comes_first,
    second_columns,
)
from boomsim.rating.setup import set_up

MACHINES = ("yard60", "truck18", "bench")
SECTORS = ("around", "rear")

SETS = {"": STABILITY, "*": STRENGTH, "†": PERMISSIBLE_VALUE}
"""What the signs behind figures say, as the chart's footnote does."""

ENDS = {GIVES_WAY: "breaks", TIPS: "tips"}
"""Which event of an overload means what."""

EVERY = 18
"""The quick part of the tests raises the load in one cell of so many."""


def printed(name, sector):
    """Text of the default chart with both lines."""
    out = io.StringIO()
    with redirect_stdout(out):
        assert main(["chart", name, "--sector", sector, "--breaks-first"]) == 0
    return out.getvalue()


@lru_cache
def read_back(name, sector):
    """Cells of a printed chart: (column, radius, figure, what sets it, whether it breaks first)."""
    found, first = [], 0
    lines = printed(name, sector).splitlines()
    for k, line in enumerate(lines):
        if not line.startswith("radius, m"):
            continue
        spans = [m.span() for m in re.finditer("-+", lines[k + 1])][1:]
        for row in lines[k + 2 :]:
            if not re.match(r"\d", row):
                break
            for c, (left, right) in enumerate(spans):
                cell = re.fullmatch(r"([\d.]+)([*†]?)\s*(!?)", row[left:right].strip())
                if cell:
                    figure, sign, breaks = cell.groups()
                    radius = float(row.split()[0])
                    found.append((first + c, radius, float(figure), SETS[sign], breaks == "!"))
        first += len(spans)
    return found


@lru_cache
def chart(name, sector):
    machine = load_machine(name)
    return stated_chart(
        set_up(machine, slew=sector), configurations=one_way_for_each_length(machine.boom)
    )


@lru_cache
def raised(name, sector):
    return overload_map(chart(name, sector))


DEFAULTS = [(name, sector) for name in MACHINES for sector in SECTORS]


@pytest.mark.slow
@pytest.mark.parametrize(("name", "sector"), DEFAULTS)
def test_every_cell_with_a_figure_is_read_back(name, sector):
    of = chart(name, sector)
    wanted = {(int(c), round(float(of.radii[r]), 6)) for r, c in np.argwhere(of.rated)}
    cells = read_back(name, sector)
    assert {(c, round(radius, 6)) for c, radius, *_ in cells} == wanted
    assert len(cells) == len(wanted)


@pytest.mark.parametrize(("name", "sector"), DEFAULTS)
def test_what_a_sign_says_sets_a_figure_is_what_the_rating_of_that_cell_says(name, sector):
    of, scale = chart(name, sector), 1.0 if name == "bench" else 1000.0
    cells = read_back(name, sector)
    for column in {cell[0] for cell in cells}:
        own = [cell for cell in cells if cell[0] == column]
        radii = np.array([cell[1] for cell in own])
        rating = rate(of.setup, extension=of.configurations.extension[column], radius=radii)
        for k, (_, _, figure, sets, _) in enumerate(own):
            assert rating.limits[rating.governing[0, k]].set_by == sets
            assert 0.0 <= rating.capacity[0, k] - figure * scale < of.step * (1.0 + 1e-9)


def first_event(name, sector, column, radius):
    """Of giving way and tipping, what comes first in the order of an overload's events."""
    of = chart(name, sector)
    found = overload(of.setup, extension=of.configurations.extension[column], radius=radius)
    return next(ENDS[event.kind] for event in found.events if event.kind in ENDS)


def check_first(name, sector, cells):
    for column, radius, _, _, breaks in cells:
        assert first_event(name, sector, column, radius) == ("breaks" if breaks else "tips")


@pytest.mark.slow
@pytest.mark.parametrize(("name", "sector"), DEFAULTS)
def test_what_comes_first_is_what_the_order_of_events_says_in_a_sample_of_cells(name, sector):
    check_first(name, sector, read_back(name, sector)[::EVERY])


@pytest.mark.slow
@pytest.mark.parametrize("name", ["yard60", "truck18"])
def test_what_comes_first_is_what_the_order_of_events_says_beside_the_second_line(name):
    # There a small error would show first: the cells on both sides of the line.
    cells = read_back(name, "around")
    breaks = {(c, radius) for c, radius, _, _, first in cells if first}
    beside = [
        cell
        for cell in cells
        if cell[4] != ((cell[0], cell[1] - 1.0) in breaks)
        or cell[4] != ((cell[0], cell[1] + 1.0) in breaks)
    ]
    assert len(beside) > 10
    check_first(name, "around", beside)


@pytest.mark.slow
@pytest.mark.long
@pytest.mark.parametrize(("name", "sector"), DEFAULTS)
def test_what_comes_first_is_what_the_order_of_events_says_in_every_cell(name, sector):
    check_first(name, sector, read_back(name, sector))


@pytest.mark.parametrize(("name", "sector"), DEFAULTS)
def test_a_sign_alone_does_not_say_what_comes_first(name, sector):
    # What stability sets always tips first here; of what it does not set, some tip first too.
    cells = read_back(name, sector)
    assert not any(breaks for *_, sets, breaks in cells if sets == STABILITY)
    others = [breaks for *_, sets, breaks in cells if sets != STABILITY]
    # Over the rear of the tabletop crane stability sets every figure that its chart shows.
    assert not all(others) or (not others and (name, sector) == ("bench", "rear"))


@pytest.mark.slow
@pytest.mark.parametrize(("name", "sector"), DEFAULTS)
def test_json_says_the_same_as_the_text_and_both_loads_bear_it_out(name, sector, capsys):
    assert main(["chart", name, "--sector", sector, "--breaks-first", "--json"]) == 0
    made = json.loads(capsys.readouterr().out)
    assert made["comes_first_words"] == FIRST
    shown = {(c, round(radius, 6)): breaks for c, radius, _, _, breaks in read_back(name, sector)}
    for c, (cells, column) in enumerate(zip(made["raised"], made["columns"], strict=True)):
        for radius, cell, rated in zip(made["radii"], cells, column["cells"], strict=True):
            assert (cell is None) == (rated is None)
            if cell is None:
                continue
            breaks = cell["comes_first"] == "breaks"
            assert breaks == shown.pop((c, round(radius, 6)))
            assert breaks == (cell["breaks_at"] < (cell["tips_at"] or np.inf))
    assert not shown


def test_the_table_says_the_same_as_json(tmp_path, capsys):
    file = tmp_path / "chart.csv"
    assert main(["chart", "truck18", "--breaks-first", "--json", "--csv", str(file)]) == 0
    made = json.loads(capsys.readouterr().out)
    with file.open(encoding="utf-8", newline="") as text:
        rows = list(csv.DictReader(line for line in text if not line.startswith("#")))
    told = [cell for column in made["raised"] for cell in column if cell is not None]
    rated = [row for row in rows if row["comes_first"]]
    assert len(rated) == len(told)
    for row, cell in zip(rated, told, strict=True):
        assert row["comes_first"] == cell["comes_first"]
        assert row["first_to_break"] == cell["first_to_break"]
        assert float(row["breaks_at_kg"]) == pytest.approx(cell["breaks_at"], abs=0.06)
        assert float(row["tips_at_kg"]) == pytest.approx(cell["tips_at"], abs=0.06)


def test_without_being_asked_for_nothing_says_what_comes_first(tmp_path, capsys):
    file = tmp_path / "chart.csv"
    assert main(["chart", "truck18", "--csv", str(file), "--json"]) == 0
    made = json.loads(capsys.readouterr().out)
    assert "second_line" not in made and "raised" not in made
    assert "comes_first" not in file.read_text()
    assert main(["chart", "truck18"]) == 0
    assert "!" not in capsys.readouterr().out


@lru_cache
def sheet(name):
    (page,) = chart_sheets(chart(name, "around"), look=replace(FULL, second_line=True))
    return page


@pytest.mark.parametrize("name", ["yard60", "truck18"])
def test_the_picture_draws_the_second_line_between_the_cells_that_the_text_parts(name):
    of, page = chart(name, "around"), sheet(name)
    fine = [m for m in page.marks if isinstance(m, Stroke) and m.width == 0.25]
    xs = sorted({round(p[0], 4) for m in fine for p in m.points})
    ys = sorted({round(p[1], 4) for m in fine for p in m.points})
    dashed = [m for m in page.marks if isinstance(m, Stroke) and m.width == SECOND and m.dash]
    *drawn, _ = dashed  # The last one is the sample in the key.
    shown = set()
    for line in drawn:
        corners = [
            (int(np.abs(np.subtract(ys, y)).argmin()), int(np.abs(np.subtract(xs, x)).argmin()))
            for x, y in line.points
        ]
        shown |= {tuple(sorted(pair)) for pair in pairwise(corners)}
    rows = {round(float(radius), 6): r for r, radius in enumerate(of.radii)}
    breaks = {
        (rows[round(radius, 6)], c): first for c, radius, _, _, first in read_back(name, "around")
    }
    wanted = set()
    for (r, c), first in breaks.items():
        if breaks.get((r + 1, c), first) != first:
            wanted.add(((r + 1, c), (r + 1, c + 1)))
        if breaks.get((r, c + 1), first) != first:
            wanted.add(((r, c + 1), (r + 1, c + 1)))
    assert shown == wanted


@pytest.mark.parametrize("name", ["yard60", "truck18"])
def test_the_picture_darkens_the_cells_in_which_something_breaks_first(name):
    page, found = sheet(name), raised(name, "around")
    dark = [m for m in page.marks if isinstance(m, Fill) and m.colour == BREAKS]
    area = sum(np.ptp([p[0] for p in m.points]) * np.ptp([p[1] for p in m.points]) for m in dark)
    fine = [m for m in page.marks if isinstance(m, Stroke) and m.width == 0.25]
    xs = sorted({round(p[0], 4) for m in fine for p in m.points})
    ys = sorted({round(p[1], 4) for m in fine for p in m.points})
    cell = np.diff(xs).max() * np.diff(ys).max()
    # One small swatch stands in the key besides; tints overlap by a twentieth of a millimetre.
    assert area / cell == pytest.approx(np.sum(found.breaks_first), rel=0.06)


def test_the_legend_says_what_each_line_parts():
    said = " ".join(m.text for m in sheet("yard60").marks if hasattr(m, "text"))
    for words in (BOLD_LINE, SECOND_LINE, BREAKS_FIRST, f"elsewhere {TIPS_FIRST}"):
        assert words in said
    text = " ".join(printed("yard60", "around").split())
    assert BOLD_LINE[1:] in text and SECOND_LINE in text
    assert f"!: {BREAKS_FIRST}" in text


@pytest.mark.slow
@pytest.mark.parametrize(("name", "sector"), DEFAULTS)
def test_the_count_in_the_text_is_the_count_of_its_signs(name, sector):
    cells = read_back(name, sector)
    breaks = sum(first for *_, first in cells)
    others = sum(sets != STABILITY for *_, sets, _ in cells)
    text = " ".join(printed(name, sector).split())
    assert f"In {breaks} of {len(cells)} cells {BREAKS_FIRST}; in {others} cells" in text


@pytest.mark.parametrize("name", ["yard60", "truck18"])
def test_the_two_lines_are_told_between_the_rows_that_they_part(name):
    lines = printed(name, "around").splitlines()
    start = next(k for k, line in enumerate(lines) if line.startswith("boom, m  bold line"))
    columns = {}
    for column, radius, _, sets, breaks in read_back(name, "around"):
        columns.setdefault(column, []).append((radius, sets != STABILITY, breaks))
    for column, line in enumerate(lines[start + 2 : start + 2 + len(columns)]):
        for k in (1, 2):
            parted = [
                f"{one[0]:g} and {two[0]:g}"
                for one, two in pairwise(columns[column])
                if one[k] != two[k]
            ]
            told = re.split(r"\s{2,}", line.strip())[k]
            assert told == (", ".join(parted) or "none: it tips first")


def test_a_cell_in_which_no_load_does_anything_says_so():
    found = raised("truck18", "around")
    row, column = (int(k) for k in np.argwhere(found.chart.rated)[0])
    never = np.full(found.failure.shape, np.inf)
    nothing = replace(found, failure=never, tipping=never)
    assert comes_first(nothing, row, column) == "neither"
    assert second_columns(nothing, units="metric").cells[column][row] == ["neither", "", "", ""]


@pytest.mark.parametrize("other", [("--read", "9 m, 20 m"), ("--all", "book")])
def test_the_second_line_goes_with_a_chart_only(other, capsys, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    assert main(["chart", "truck18", "--breaks-first", *other]) == 2
    said = capsys.readouterr()
    assert f"--breaks-first draws a line on one chart and {other[0]} draws none" in said.err
    assert said.out == "" and not list(tmp_path.iterdir())


def test_the_class_version_hides_both_lines_and_its_answers_show_both(capsys, tmp_path):
    file = tmp_path / "b.svg"
    assert main(["chart", "truck18", "--class", "--breaks-first", "--figure", str(file)]) == 0
    text = capsys.readouterr().out
    assert "!" not in text and SECOND_LINE not in " ".join(text.split())
    assert "second line" not in file.read_text()
    answers = (tmp_path / "b-answers.svg").read_text()
    assert SECOND_LINE in answers and BOLD_LINE in answers


def test_the_best_chart_has_a_second_line_too():
    found = overload_map(best_chart(set_up(load_machine("truck18"))))
    breaks = [comes_first(found, int(r), int(c)) for r, c in np.argwhere(found.chart.rated)]
    assert {"breaks", "tips"} == set(breaks)


def test_the_page_on_charts_counts_as_the_chart_does():
    of, found = chart("yard60", "around"), raised("yard60", "around")
    page = (Path(__file__).parents[2] / "docs" / "charts.md").read_text(encoding="utf-8")
    said = " ".join(page.split())
    assert f"sets {np.sum(of.structural & of.rated)} of {np.sum(of.rated)} figures" in said
    assert f"in {np.sum(found.breaks_first)} of these cells {BREAKS_FIRST}" in said
    every = len(best_chart(of.setup, radii=np.array([9.0])).configurations.length)
    assert f"So {len(of.length)} of yard60's {every} ways make its chart" in said
