"""A chart page shows the figures of its chart, each in its cell, and the caution."""

from functools import lru_cache
from itertools import pairwise, product

import numpy as np
import pytest
from reeving_by_hand import parts_by_hand

from boomsim.caution import CAUTION
from boomsim.figures.charts.cell_text import code, numbers_of, percent, percents
from boomsim.figures.charts.chart_page import chart_sheets, columns_on_pages
from boomsim.figures.charts.chart_sizes_and_tints import ANSWERS, BOLD, CLASS, FULL, TINT
from boomsim.figures.charts.configuration_bars import ALL_OUT, PARTLY_OUT
from boomsim.figures.charts.page_marks import PAPERS, Fill, Stroke, Words
from boomsim.figures.charts.sheet_figure import figure_of_sheet
from boomsim.figures.charts.sheet_svg import svg_text
from boomsim.figures.charts.typeface import broken, width_of
from boomsim.machine.machine_files import load_machine
from boomsim.rating.charts.bold_line import bold_edges
from boomsim.rating.charts.chart_configurations import (
    configurations_at_lengths,
    every_configuration,
)
from boomsim.rating.charts.column_changes import first_rows
from boomsim.rating.charts.load_chart import best_chart, stated_chart
from boomsim.rating.setup import set_up


@lru_cache
def chart(name="truck18", units="metric"):
    return best_chart(set_up(load_machine(name)), units=units)


@lru_cache
def many():
    setup = set_up(load_machine("yard60"))
    ways = configurations_at_lengths(setup.machine.boom, length=[25.9, 29.5])
    return stated_chart(setup, configurations=ways)


@lru_cache
def sheet(name="truck18", units="metric", paper="a4", look=FULL):
    (one,) = chart_sheets(chart(name, units), units=units, paper=paper, look=look)
    return one


def words(page):
    return [mark for mark in page.marks if isinstance(mark, Words)]


def span(mark):
    """Left and right end of a line of type [mm]."""
    wide = width_of(mark.text, size=mark.size, bold=mark.bold)
    left = mark.x - {"left": 0.0, "center": wide / 2, "right": wide}[mark.align]
    return left, left + wide


def figures(page, of):
    numbers = numbers_of(of, units="metric")
    wanted = {numbers.capacity(int(s)) for s in np.unique(of.steps) if s >= 0}
    return [mark for mark in words(page) if mark.text in wanted and mark.align == "right"]


def test_every_rated_cell_has_its_figure_under_its_boom_and_beside_its_radius():
    page, of = sheet(), chart()
    numbers = numbers_of(of, units="metric")
    booms = {
        mark.text: mark.x
        for mark in words(page)
        if mark.bold and mark.align == "center" and mark.text in map(numbers.boom, of.length)
    }
    radii = {
        mark.text: mark.y
        for mark in words(page)
        if mark.bold and mark.align == "right" and mark.text in map(numbers.radius, of.radii)
    }
    half = np.diff(sorted(booms.values())).min() / 2
    shown = {}
    for mark in figures(page, of):
        column = next(b for b, x in booms.items() if abs(np.mean(span(mark)) - x) < half)
        row = next((r for r, y in radii.items() if abs(mark.y - y) < 1e-6), None)
        if row is not None:
            shown[row, column] = mark.text
    for r, c in np.argwhere(of.rated):
        key = numbers.radius(of.radii[r]), numbers.boom(of.length[c])
        assert shown.pop(key) == numbers.capacity(int(of.steps[r, c]))
    assert not shown


@pytest.mark.slow
@pytest.mark.parametrize("name", ["truck18", "yard60", "bench"])
@pytest.mark.parametrize(("units", "paper"), [("metric", "a4"), ("us", "letter")])
def test_nothing_runs_off_the_paper_or_into_its_neighbour(name, units, paper):
    page = sheet(name, units, paper)
    assert {page.width, page.height} == set(PAPERS[paper])
    lines = {}
    for mark in words(page):
        left, right = span(mark)
        assert left > 0.0 and right < page.width
        assert 0.0 < mark.y < page.height
        lines.setdefault(round(mark.y, 3), []).append((left, right, mark.text))
    for line in lines.values():
        line.sort()
        for (_, right, one), (left, _, two) in pairwise(line):
            assert right <= left + 0.05, f"{one!r} runs into {two!r}"


@pytest.mark.parametrize("look", [FULL, CLASS, ANSWERS])
def test_the_caution_stands_on_every_page(look):
    said = " ".join(mark.text for mark in words(sheet(look=look)))
    assert CAUTION in said


def test_the_bold_line_runs_along_the_edges_between_the_families():
    page, of = sheet(), chart()
    heavy = [m for m in page.marks if isinstance(m, Stroke) and m.width == BOLD]
    # The last one is the sample in the key.
    *drawn, sample = heavy
    assert len(sample.points) == 2
    fine = [m for m in page.marks if isinstance(m, Stroke) and m.width == 0.25]
    xs = sorted({round(p[0], 4) for m in fine for p in m.points})
    ys = sorted({round(p[1], 4) for m in fine for p in m.points})
    shown = set()
    for line in drawn:
        corners = [
            (int(np.abs(np.subtract(ys, y)).argmin()), int(np.abs(np.subtract(xs, x)).argmin()))
            for x, y in line.points
        ]
        shown |= {tuple(sorted(pair)) for pair in pairwise(corners)}
    assert shown == {tuple(sorted(edge)) for edge in bold_edges(of)}


def test_the_tint_covers_the_structural_cells():
    page, of = sheet(), chart()
    tinted = [m for m in page.marks if isinstance(m, Fill) and m.colour == TINT]
    area = sum(np.ptp([p[0] for p in m.points]) * np.ptp([p[1] for p in m.points]) for m in tinted)
    lines = [m for m in page.marks if isinstance(m, Stroke) and m.width == 0.25]
    xs = sorted({round(p[0], 4) for m in lines for p in m.points})
    ys = sorted({round(p[1], 4) for m in lines for p in m.points})
    cell = np.diff(xs).max() * np.diff(ys).max()
    # One small swatch stands in the key besides; tints overlap by a twentieth of a millimetre.
    assert area / cell == pytest.approx(np.sum(of.structural & of.rated), rel=0.05)


def test_the_class_version_gives_nothing_away():
    page, of = sheet(look=CLASS), chart()
    assert not [m for m in page.marks if isinstance(m, Fill) and m.colour == TINT]
    assert not [m for m in page.marks if isinstance(m, Stroke) and m.width == BOLD]
    codes = {code(limit) for limit in of.limits} - {""}
    assert not codes & {mark.text for mark in words(page)}
    assert any("Draw the line" in mark.text for mark in words(page))
    # The figures are the same.
    assert [m.text for m in figures(page, of)] == [m.text for m in figures(sheet(), of)]


def test_the_answer_sheet_counts_edges_and_cells():
    said = " ".join(mark.text for mark in words(sheet(look=ANSWERS)))
    of = chart()
    assert f"runs along {len(bold_edges(of))} cell edges" in said
    assert f"In the {np.sum(of.structural & of.rated)} tinted cells" in said


def test_columns_are_parted_evenly_over_pages_and_none_is_lost():
    setup = set_up(load_machine("yard60"))
    ways = every_configuration(setup.machine.boom)
    wide = stated_chart(setup, configurations=ways, radii=np.array([10.0]))
    pieces = columns_on_pages(wide, paper="letter")
    assert np.concatenate(pieces).tolist() == list(range(len(ways.length)))
    assert max(map(len, pieces)) - min(map(len, pieces)) <= 1


def test_a_stated_chart_shows_how_far_each_section_is_out_and_how_each_boom_is_reeved():
    pages = chart_sheets(many(), units="metric")
    shown = [m.text for page in pages for m in words(page) if m.align == "center" and not m.bold]
    wanted = [percent(f) for row in many().configurations.extension for f in row]
    machine = many().setup.machine
    most = many().setup.parts
    for length in many().length:
        wanted.append(str(parts_by_hand(machine, length=float(length), most=most)))
    assert sorted(shown) == sorted(wanted)


LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


def bars(page):
    """Share filled of each frame of a section's bar, by the left end and the top of its block."""
    framed = [m for m in page.marks if isinstance(m, Stroke) and m.width == 0.2]
    filled = [m for m in page.marks if isinstance(m, Fill) and m.colour in (ALL_OUT, PARTLY_OUT)]
    full = {tuple(m.points[0]): np.ptp([p[0] for p in m.points]) for m in filled}
    return [
        (m.points[0], full.get(tuple(m.points[0]), 0.0) / np.ptp([p[0] for p in m.points]))
        for m in framed
    ]


@pytest.mark.slow
@pytest.mark.parametrize("name", ["truck18", "yard60", "bench"])
def test_the_list_of_best_ways_draws_each_section_as_far_as_it_is_out(name):
    of, page = chart(name), sheet(name)
    # Column by column, way by way, the largest section first.
    wanted = [
        fraction
        for c in range(len(of.length))
        for way in first_rows(of, c)
        for fraction in of.configurations.extension[way]
    ]
    assert [share for _, share in bars(page)] == pytest.approx(wanted, abs=1e-9)


@pytest.mark.slow
def test_the_list_of_best_ways_says_from_which_radius_each_is_used():
    of, page = chart("yard60"), sheet("yard60")
    numbers = numbers_of(of, units="metric")
    blocks = [corner for corner, _ in bars(page)][:: of.configurations.extension.shape[1]]
    wanted = [
        ", ".join(numbers.radius(float(of.radii[r])) for r in rows)
        for c in range(len(of.length))
        for rows in first_rows(of, c).values()
    ]
    shown = []
    for left, top in blocks:
        beside = [m for m in words(page) if 0.0 < left - m.x < 1.0 and 0.0 < m.y - top < 3.0]
        shown.append(min(beside, key=lambda m: m.y).text)
    assert shown == wanted


def test_a_column_is_marked_where_it_passes_to_another_way_and_nowhere_else():
    of, page = chart("yard60"), sheet("yard60")
    signs = [m for m in page.marks if isinstance(m, Fill) and len(m.points) == 3]
    changes = 0
    for c in range(len(of.length)):
        used = of.used[of.rated[:, c], c]
        changes += int(np.sum(np.diff(used) != 0))
    # One more stands in the key.
    assert len(signs) == changes + 1


def test_no_way_to_extend_is_written_as_digits_or_letters_on_a_chart_of_best_ways():
    boom = load_machine("yard60").boom
    places = [boom.lock_positions.index(p) for p in boom.lock_positions]
    coded = {"".join(map(str, code)) for code in product(places, repeat=4)}
    said = {part for mark in words(sheet("yard60")) for part in mark.text.split()}
    assert not said & coded
    assert not [mark.text for mark in words(sheet("yard60")) if mark.text in LETTERS]


def test_percents_of_a_way_stand_beside_its_bars_where_a_column_is_wide():
    of = chart()
    said = [mark.text for mark in words(sheet())]
    for way in np.unique(of.used[of.rated]):
        assert percents(of.configurations.extension[way]) in said


@pytest.mark.parametrize(("share", "text"), [(0.465, "47"), (0.0, "0"), (1.0, "100"), (0.5, "50")])
def test_percents_are_whole_and_halves_go_up(share, text):
    assert percent(share) == text


def test_the_page_is_the_same_as_svg_and_as_figure():
    page = sheet()
    svg, figure = svg_text(page), figure_of_sheet(page)
    assert svg.count("<text ") == len(words(page))
    assert CAUTION.replace("'", "&#x27;") in svg
    drawn = list(figure.axes[0].texts)
    assert [text.get_text() for text in drawn] == [mark.text for mark in words(page)]
    size = figure.get_size_inches() * 25.4
    assert size == pytest.approx((page.width, page.height))


def test_a_text_is_broken_into_lines_that_fit():
    text = "Never read between figures: take the next larger radius and the smaller figure."
    lines = broken(text, width=30.0, size=8.0)
    assert " ".join(lines) == text
    assert max(width_of(line, size=8.0) for line in lines) <= 30.0
