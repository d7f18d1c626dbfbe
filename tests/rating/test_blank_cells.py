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
    words_of,
)
from boomsim.rating.charts.chart_reading import read_chart
from boomsim.rating.charts.chart_tables import BLANKS, plain_chart, table_head, write_csv
from boomsim.rating.charts.load_chart import Chart, best_chart, stated_chart
from boomsim.rating.charts.reading_sentences import tell_reading
from boomsim.rating.nearest_radius import hangs_clear, nearest_radius
from boomsim.rating.setup import SECTORS, Setup, rear_sector, set_up
from boomsim.rating.strategies import configurations_of
from boomsim.reports.json_schema import plain

WAYS_TO_STAND = [
    (name, support.name, counterweight.name, sector)
    for name in machine_names()
    for machine in [load_machine(name)]
    for support, counterweight, sector in product(machine.supports, machine.counterweights, SECTORS)
]
LARGE = ("yard60", "full", "10 t", "rear")
SOME_DAILY = [
    # A chart of the large machine takes a second: of them one is drawn up daily.
    pytest.param(one, marks=pytest.mark.slow if one[0] == LARGE[0] and one != LARGE else ())
    for one in WAYS_TO_STAND
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


@pytest.mark.parametrize("stands", SOME_DAILY, ids=", ".join)
def test_the_first_row_lies_outside_the_machine_and_no_row_is_without_a_figure_at_the_ends(
    stands: tuple[str, str, str, str],
) -> None:
    chart = built_in(*stands)
    assert chart.radii[0] > nearest_radius(chart.setup)
    assert not chart.rated.any() or chart.rated[[0, -1]].any(axis=1).all()


def test_a_load_hangs_clear_by_hand() -> None:
    """A load as wide as the carrier: beside it a width over the side, behind it half of one more.

    The outriggers are out 3 m lengthways and sideways; the carrier is 3.6 m wide.
    """
    machine = invented_crane()
    half, rear = 0.6 * 3.0, 3.0 + 0.12 * machine.heel_up
    support = machine.supports[0]
    straight = hangs_clear(machine, support, slew=np.radians([0.0, 90.0, 45.0, 75.0, 60.0]))
    assert straight[0] == pytest.approx(rear + half)
    # Square to the side the outriggers stand 3 m off, and half of the load is 1.8 m.
    assert straight[1] == pytest.approx(2.0 * half)
    # Over a float the load is past it by half its own width.
    assert straight[2] == pytest.approx(np.hypot(3.0, 3.0) + half)
    # At 75 deg it passes 2.1 m beside the float; at 60 deg 1.1 m, and has to go past it.
    assert straight[3] == pytest.approx(2.0 * half / np.sin(np.radians(75.0)))
    assert straight[4] == pytest.approx(leaves_disc((3.0, 3.0), half, np.radians(60.0)))
    around, behind = set_up(machine), set_up(machine, slew=0.0)
    assert nearest_radius(around) == pytest.approx(2.0 * half)
    assert nearest_radius(behind) == pytest.approx(rear + half)


def leaves_disc(middle: tuple[float, float], radius: float, slew: float) -> float:
    """Farther root of |r u - p|^2 = radius^2."""
    along = middle[0] * np.cos(slew) + middle[1] * np.sin(slew)
    return along + np.sqrt(along**2 - np.hypot(*middle) ** 2 + radius**2)


@pytest.mark.parametrize("stands", SOME_DAILY, ids=", ".join)
def test_from_the_nearest_radius_on_and_not_before_a_load_hangs_beside_the_machine(
    stands: tuple[str, str, str, str],
) -> None:
    """Points of the load against the drawn outline of carrier and outriggers, counted out.

    Outline by hand from the machine file: a rectangle past the outermost wheels and jacks, beams to
    the floats. Half a degree and a millimetre are how finely it is looked at.
    """
    setup = built_in(*stands).setup
    machine, support = setup.machine, setup.support
    half = 1.15 * max(
        (abs(y) for s in machine.supports if s.kind == "tyres" for _, y in s.points),
        default=0.6 / 1.15 * max(abs(y) for s in machine.supports for _, y in s.points),
    )
    along = [x for s in machine.supports for x, _ in s.points]
    front, rear = min(along) - 0.12 * machine.heel_up, max(along) + 0.12 * machine.heel_up
    solid = [(x, y) for x in np.linspace(front, rear, 400) for y in (-half, half)]
    solid += [(x, y) for x in (front, rear) for y in np.linspace(-half, half, 100)]
    if support.kind == "outriggers":
        solid += [(x, f * y) for x, y in support.points for f in np.linspace(half / abs(y), 1, 100)]
    edge = np.pi if stands[3] == "around" else rear_sector(support)
    slews = np.linspace(-edge, edge, 721)

    def is_clear(radius: float) -> np.ndarray:
        """By slew angle: further off than half a load from all, and outside the carrier."""
        x, y = radius * np.cos(slews), radius * np.sin(slews)
        points = np.array(solid)
        far = np.hypot(points[:, 0, None] - x, points[:, 1, None] - y).min(axis=0) >= half
        inside = (x > front) & (x < rear) & (np.abs(y) < half)
        return far & ~inside

    nearest = nearest_radius(setup)
    assert is_clear(1.005 * nearest).any()
    assert not any(is_clear(radius).any() for radius in np.linspace(0.05, 0.99, 40) * nearest)


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
