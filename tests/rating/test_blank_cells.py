"""Which cells of a chart are blank, and why."""

import csv
import re
from dataclasses import replace
from functools import lru_cache
from io import StringIO
from itertools import product

import numpy as np
import pytest
from making import invented_crane
from reeving_by_hand import parts_by_hand

from boomsim.cli import main
from boomsim.figures.charts.cell_text import FOOT, REEVED, foot_lines, numbers_of
from boomsim.figures.charts.chart_key import key_lines
from boomsim.figures.charts.chart_page import chart_sheets
from boomsim.figures.charts.chart_sizes_and_tints import FULL
from boomsim.figures.charts.page_marks import Words
from boomsim.machine.footprint import covered
from boomsim.machine.machine_files import load_machine, machine_names
from boomsim.machine.model import Rigging
from boomsim.rating.capacity import rate
from boomsim.rating.charts.blank_cells import (
    LESS,
    NO_REACH,
    PRINTED,
    REASONS,
    TURNS_OVER,
    UNDER_HOOK,
    nearest_radius,
    words_of,
)
from boomsim.rating.charts.chart_reading import read_chart
from boomsim.rating.charts.chart_tables import BLANKS, plain_chart, table_head, write_csv
from boomsim.rating.charts.load_chart import Chart, best_chart, stated_chart
from boomsim.rating.charts.reading_sentences import tell_reading
from boomsim.rating.setup import SECTORS, Setup, set_up
from boomsim.rating.strategies import configurations_of
from boomsim.reports.text_and_data import plain

WAYS_TO_STAND = [
    (name, support.name, counterweight.name, sector)
    for name in machine_names()
    for machine in [load_machine(name)]
    for support, counterweight, sector in product(machine.supports, machine.counterweights, SECTORS)
]


@lru_cache
def built_in(name: str, support: str, counterweight: str, sector: str) -> Chart:
    rigging = Rigging(support=support, counterweight=counterweight)
    return best_chart(set_up(load_machine(name), rigging=rigging, slew=sector))


@lru_cache
def light() -> Chart:
    """A crane on a light carrier without counterweight: it turns over with its longest boom."""
    machine = invented_crane()
    carrier = tuple(replace(part, mass=0.35 * part.mass) for part in machine.carrier)
    setup = set_up(replace(machine, carrier=carrier))
    setup = replace(setup, counterweight=replace(setup.counterweight, mass=0.0))
    ways = np.array([[0.0, 0.0, 0.0], [1.0, 0.0, 0.0], [0.0, 1.0, 1.0], [1.0, 1.0, 1.0]])
    return stated_chart(setup, configurations=configurations_of(machine.boom, extension=ways))


def rises_outwards(chart: Chart) -> list[tuple[int, int]]:
    """Cells that hold more than one nearer to the crane in their column, by plain looking."""
    return [
        (r, c)
        for c in range(len(chart.length))
        for r in range(len(chart.radii))
        if chart.rated[r, c]
        and any(chart.rated[n, c] and chart.steps[n, c] < chart.steps[r, c] for n in range(r))
    ]


def hanging_by_hand(chart: Chart) -> np.ndarray:
    """Hook block, slings and falls, each from the head sheave of a straight boom to the ground.

    Shape (rows, columns) [kg].
    """
    machine, head = chart.setup.machine, chart.setup.machine.boom.head
    parts = np.array([
        parts_by_hand(machine, length=float(length), most=chart.setup.parts)
        for length in chart.length
    ])  # fmt: skip
    up = machine.heel_up + chart.length * np.sin(chart.angle) - head.below * np.cos(chart.angle)
    return machine.hook_block + machine.slings + parts * up * machine.hoist.rope_mass


@pytest.mark.slow
@pytest.mark.parametrize("stands", WAYS_TO_STAND, ids=", ".join)
def test_no_figure_of_a_built_in_chart_rises_outwards_or_is_less_than_the_hook_weighs(
    stands: tuple[str, str, str, str],
) -> None:
    chart = built_in(*stands)
    assert rises_outwards(chart) == []
    assert np.all((chart.capacity >= hanging_by_hand(chart))[chart.rated])
    assert np.array_equal(chart.rated, chart.blank == PRINTED)
    assert np.array_equal(chart.steps >= 0, chart.rated)


@pytest.mark.parametrize("stands", WAYS_TO_STAND, ids=", ".join)
def test_the_first_row_lies_outside_the_machine_and_no_row_is_without_a_figure_at_the_ends(
    stands: tuple[str, str, str, str],
) -> None:
    chart = built_in(*stands)
    assert chart.radii[0] > nearest_radius(chart.setup)
    assert not chart.rated.any() or chart.rated[[0, -1]].any(axis=1).all()


def test_the_machine_covers_the_ground_as_far_as_its_edges_by_hand() -> None:
    """A rectangle about the axis of rotation: straight to an edge, and slanting to the side."""
    machine = invented_crane()
    rear = 3.0 + 0.12 * machine.heel_up
    half = 0.6 * 3.0
    assert covered(machine, slew=0.0) == pytest.approx(rear)
    assert covered(machine, slew=np.pi / 2) == pytest.approx(half)
    assert covered(machine, slew=np.radians(60.0)) == pytest.approx(half / np.sin(np.radians(60)))
    around, behind = set_up(machine), set_up(machine, slew=0.0)
    assert nearest_radius(around) == pytest.approx(half)
    assert nearest_radius(behind) == pytest.approx(rear)


def test_radii_over_the_machine_alone_are_refused() -> None:
    with pytest.raises(ValueError, match="over the machine itself"):
        best_chart(set_up(invented_crane()), radii=np.array([1.0]))


def test_each_blank_cell_of_a_stated_way_has_the_reason_that_its_rating_gives() -> None:
    chart = light()
    hanging = chart.setup.machine.hook_block + chart.setup.machine.slings
    assert chart.setup.machine.hoist.rope_mass == 0.0
    assert {int(k) for k in np.unique(chart.blank)} >= {PRINTED, NO_REACH}
    rating = rate(
        chart.setup, extension=chart.configurations.extension, radius=chart.radii
    ).capacity.T
    for (r, c), why in np.ndenumerate(chart.blank):
        rated, beyond = rating[r, c], chart.radii[r] >= chart.empty_hook.radius[c]
        outer = chart.steps[r:, c].max()
        if why == NO_REACH:
            assert np.isnan(rated)
        elif why == TURNS_OVER:
            assert rated < hanging and beyond
        elif why == UNDER_HOOK:
            assert rated < hanging + chart.step and not beyond
        elif why == LESS:
            assert rated < outer * chart.step
        else:
            assert rated >= hanging and not beyond


def test_a_boom_that_turns_the_crane_over_says_so_beside_one_that_does_not() -> None:
    chart = light()
    rows = chart.radii >= chart.empty_hook.radius[3]
    assert chart.rated[rows, 2].any(), "with less of its weight out the other boom still stands"
    assert set(chart.blank[rows, 3].tolist()) == {TURNS_OVER}


def holes() -> Chart:
    """A chart whose best column holds less at its least radius than a row farther out."""
    machine = load_machine("truck18")
    chart = built_in("truck18", machine.supports[0].name, machine.counterweights[0].name, "around")
    blank, steps = chart.blank.copy(), chart.steps.copy()
    for row, why in enumerate((LESS, UNDER_HOOK, TURNS_OVER)):
        blank[row, 0], steps[row, 0] = why, -1
    governing = np.where(steps < 0, -1, chart.governing)
    used = np.where(steps < 0, -1, chart.used)
    return replace(chart, blank=blank, steps=steps, governing=governing, used=used)


@pytest.mark.parametrize(("row", "why"), [(0, LESS), (1, UNDER_HOOK), (2, TURNS_OVER)])
def test_a_blank_cell_is_read_as_what_it_is(row: int, why: int) -> None:
    chart = holes()
    radius, length = float(chart.radii[row]), float(chart.length[0])
    reading = read_chart(chart, radius=radius, length=length)
    assert reading.blank and reading.net == 0.0
    assert reading.reason is REASONS[why]
    said = " ".join(tell_reading(reading, units="metric"))
    assert "nothing is rated there" in said
    assert words_of(REASONS[why], chart.setup.machine) in said


def test_between_two_booms_a_blank_of_the_shorter_one_counts_where_its_boom_does_reach() -> None:
    chart = holes()
    length = float(chart.length[:2].mean())
    radius = float(chart.radii[2])
    assert chart.rated[2, 1]
    reading = read_chart(chart, radius=radius, length=length)
    assert reading.blank and reading.reason is REASONS[TURNS_OVER]


def test_every_reason_in_a_chart_is_in_its_legend_and_its_sign_in_the_cell() -> None:
    chart = holes()
    lines = key_lines(chart, units="metric", look=FULL, width=180.0)
    listed = [item for line in lines for item in line.items]
    items = {item.sign: item.words for item in listed}
    (sheet,) = chart_sheets(chart)[:1]
    drawn = [mark.text for mark in sheet.marks if isinstance(mark, Words)]
    for why in (LESS, UNDER_HOOK, TURNS_OVER):
        reason = REASONS[why]
        assert items[reason.sign] == words_of(reason, chart.setup.machine)
        # Once in the cell and once in the key.
        assert drawn.count(reason.sign) == 2
    assert "empty: the boom cannot be there" in [item.words for item in listed]


def test_tables_for_programs_have_the_key_of_each_reason() -> None:
    chart = holes()
    told = plain(plain_chart(chart))
    keys = told["columns"][0]["blank"][:3]
    assert keys == [REASONS[k].key for k in (LESS, UNDER_HOOK, TURNS_OVER)]
    assert [cell is None for cell in told["columns"][0]["cells"][:3]] == [True] * 3
    assert set(keys) <= set(told["blank_reasons"])
    file = StringIO()
    write_csv([chart], file, units="metric")
    head, *lines = file.getvalue().splitlines()
    assert all(f"{key}: {REASONS[k].words}." in head for k, key in enumerate(keys))
    assert head.endswith(BLANKS)
    rows = list(csv.DictReader(lines))
    assert list(rows[0]) == table_head("metric")
    assert [row["blank"] for row in rows[:3]] == keys
    assert not any(row["gross_capacity_kg"] for row in rows[:3])


def test_the_foot_of_a_stated_chart_says_how_low_and_how_far_out_each_boom_may_come() -> None:
    chart = light()
    lines = dict(foot_lines(chart, numbers_of(chart, units="metric")))
    angles, radii = (lines[name] for name in FOOT)
    assert len(lines) == len(FOOT)
    found = chart.empty_hook
    assert found.turns_over.tolist() == [False, False, False, True]
    assert angles[:3] == radii[:3] == ["", "", ""]
    assert int(angles[3].removesuffix("°")) == int(np.ceil(np.degrees(found.angle[3])))
    assert float(radii[3]) <= found.radius[3] < float(radii[3]) + 0.1


@pytest.mark.slow
@pytest.mark.parametrize("name", ["yard60", "truck18"])
def test_the_foot_of_a_chart_says_the_parts_of_line_of_each_column(name: str) -> None:
    setup = set_up(load_machine(name))
    chart = best_chart(setup)
    told = dict(foot_lines(chart, numbers_of(chart, units="metric")))[REEVED]
    by_hand = [parts_by_hand(setup.machine, length=b, most=setup.parts) for b in chart.length]
    assert [int(parts) for parts in told] == by_hand
    assert len(set(told)) > 3


def test_charts_as_text_name_the_reasons_and_the_least_angles(
    capsys: pytest.CaptureFixture[str],
) -> None:
    ways = [f"--extension={way}" for way in ("100,100,100,100", "0,0,0,0")]
    assert main(["chart", "yard60", "--counterweight", "none", *ways]) == 0
    said = capsys.readouterr().out
    assert re.search(r"^never below +\d+° *$", said, re.MULTILINE)
    assert re.search(r"^nor beyond +[\d.]+ *$", said, re.MULTILINE)
    assert "without any margin" in " ".join(said.split())
    assert "where a cell is empty the boom cannot be" in " ".join(said.split()).lower()


def test_a_setup_that_lifts_nothing_anywhere_is_a_chart_of_reasons_and_no_crash() -> None:
    machine = invented_crane()
    feather = replace(
        machine,
        boom=replace(machine.boom, greatest_angle=0.6),
        carrier=tuple(replace(part, mass=1.0) for part in machine.carrier),
        superstructure=tuple(replace(part, mass=1.0) for part in machine.superstructure),
    )
    setup: Setup = set_up(feather)
    setup = replace(setup, counterweight=replace(setup.counterweight, mass=0.0))
    ways = configurations_of(machine.boom, extension=np.ones((1, 3)))
    chart = stated_chart(setup, configurations=ways)
    assert not chart.rated.any()
    assert TURNS_OVER in chart.blank
    assert chart_sheets(chart)
