"""A chart is read as the trade reads it, and every wrong way gives the figure it would give."""

from dataclasses import replace
from functools import lru_cache

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from boomsim.gravity import GRAVITY
from boomsim.machine.machine_files import load_machine
from boomsim.rating.charts.blank_cells import NO_REACH, PRINTED
from boomsim.rating.charts.chart_reading import read_chart
from boomsim.rating.charts.hoist_line import fewest_parts, line_limit
from boomsim.rating.charts.load_chart import Chart, best_chart, stated_chart
from boomsim.rating.charts.misreadings import misreadings
from boomsim.rating.charts.reading_sentences import tell_misreading, tell_reading
from boomsim.rating.setup import set_up
from boomsim.rating.strategies import configurations_of


@lru_cache
def chart(slew: str = "around") -> Chart:
    return best_chart(set_up(load_machine("truck18"), slew=slew))


def made(grid: list[list[int]], *, rope_mass: float = 0.0) -> Chart:
    """A chart with capacities written by hand, in steps of 100 kg, all structural or blank.

    Rows 4, 6 and 8 m, booms 10, 15 and 20 m, all at a boom angle of 60 deg.
    """
    steps = np.array(grid)
    whole = chart()
    setup = whole.setup
    hoist = replace(setup.machine.hoist, rope_mass=rope_mass)
    structural = next(k for k, limit in enumerate(whole.limits) if limit.name == "stress")
    return replace(
        whole,
        setup=replace(setup, machine=replace(setup.machine, hoist=hoist)),
        angle=np.full(steps.shape, np.pi / 3.0),
        radii=np.array([4.0, 6.0, 8.0]),
        length=np.array([10.0, 15.0, 20.0]),
        choices=((0,), (1,), (2,)),
        used=np.where(steps < 0, -1, np.arange(3)),
        step=100.0,
        steps=steps,
        blank=np.where(steps < 0, NO_REACH, PRINTED),
        exact=np.where(steps < 0, np.nan, 100.0 * steps + 30.0),
        governing=np.where(steps < 0, -1, structural),
    )


GRID = [[90, 80, -1], [60, 50, 45], [40, 30, 25]]


@settings(max_examples=60)
@given(st.floats(3.0, 27.0), st.floats(8.0, 28.4))
def test_the_figure_read_is_a_figure_of_the_chart_and_never_between(
    radius: float, length: float
) -> None:
    reading = read_chart(chart(), radius=radius, length=length)
    assert reading.row_radius >= radius * (1 - 1e-9)
    above = chart().radii[chart().radii >= radius * (1 - 1e-9)]
    assert reading.row_radius == above.min()
    # A column's own length, or the two columns beside it, of which the smaller figure counts.
    columns = chart().length
    longer = np.flatnonzero(columns >= length * (1 - 1e-9))
    shorter = np.flatnonzero(columns < length * (1 - 1e-9))
    row = np.nan_to_num(chart().capacity[reading.row])
    cell = row[reading.column]
    assert reading.cell == cell
    beside = {longer[0]} if not len(shorter) else {longer[0], shorter[-1]}
    assert reading.column in beside
    assert cell <= row[longer[0]]


def test_a_row_and_a_column_that_are_met_are_taken() -> None:
    reading = read_chart(made(GRID), radius=6.0, length=15.0)
    assert (reading.row_radius, reading.column_length, reading.cell) == (6.0, 15.0, 5000.0)


def test_between_rows_and_columns_the_next_larger_count() -> None:
    reading = read_chart(made(GRID), radius=6.1, length=15.1)
    assert (reading.row_radius, reading.column_length, reading.cell) == (8.0, 20.0, 2500.0)


def test_a_blank_cell_allows_nothing_whatever_stands_beside_it() -> None:
    reading = read_chart(made(GRID), radius=4.0, length=15.5)
    assert reading.blank
    assert (reading.gross, reading.net, reading.extension, reading.limit) == (0.0, 0.0, None, None)
    assert any("blank" in sentence for sentence in tell_reading(reading, units="metric"))


def test_a_cell_of_no_whole_step_is_not_blank_and_allows_nothing_either() -> None:
    reading = read_chart(made([[90, 80, -1], [60, 0, 45], [40, 30, 25]]), radius=6.0, length=15.0)
    assert not reading.blank
    assert (reading.gross, reading.net) == (0.0, 0.0)
    assert reading.limit is not None


def test_deductions_are_taken_off_the_gross_load() -> None:
    machine = chart().setup.machine
    reading = read_chart(made(GRID), radius=6.0, length=15.0, stowed_jib=250.0)
    assert reading.deducted == machine.hook_block + machine.slings + 250.0
    assert reading.net == 5000.0 - machine.hook_block - machine.slings - 250.0
    without = read_chart(made(GRID), radius=6.0, length=15.0)
    assert [taken.name for taken in without.deductions] == ["hook block", "slings"]


def test_the_falls_of_the_rope_are_deducted_from_the_head_to_the_ground_by_hand() -> None:
    """4 parts, 15 m of boom at 60 deg: 2.5 + 15 sin 60 - below cos 60 above the ground, 2 kg/m.

    Source: lengths in a right-angled triangle. Status: worked.
    """
    reading = read_chart(made(GRID, rope_mass=2.0), radius=6.0, length=15.0)
    head = reading.chart.setup.machine.boom.head
    height = 2.5 + 15.0 * 3.0**0.5 / 2.0 - head.below / 2.0
    named = {taken.name: taken.mass for taken in reading.deductions}
    assert reading.parts == 4
    assert named["4 falls of rope"] == pytest.approx(4 * 2.0 * height)
    hung = reading.chart.setup.machine.hook_block + reading.chart.setup.machine.slings
    assert reading.net == pytest.approx(5000.0 - hung - 8.0 * height)


def test_more_parts_than_the_rope_reaches_for_are_refused() -> None:
    with pytest.raises(ValueError, match=r"7 parts .* with 15.0 m of boom: 95.0 m .* Choose 4 or"):
        read_chart(made(GRID), radius=6.0, length=15.0, parts=7)


def test_parts_that_the_rope_does_not_reach_for_are_not_offered() -> None:
    """At 20 m the rope reaches for 3 parts, and 10 t want 4."""
    assert fewest_parts(made(GRID), gross=10e3) == 4
    assert fewest_parts(made(GRID), gross=10e3, column=2) is None
    assert fewest_parts(made(GRID), gross=8e3, column=2) == 3


def test_deductions_may_take_all() -> None:
    reading = read_chart(made(GRID), radius=8.0, length=20.0, stowed_jib=5000.0)
    assert reading.net == 0.0
    assert not read_chart(made(GRID), radius=8.0, length=20.0, stowed_jib=5000.0, load=1.0).allowed


@pytest.mark.parametrize(("over", "allowed"), [(0.0, True), (1.0, False)])
def test_a_load_is_allowed_up_to_the_net_figure_and_no_further(over: float, allowed: bool) -> None:
    net = read_chart(made(GRID), radius=6.0, length=15.0).net
    reading = read_chart(made(GRID), radius=6.0, length=15.0, load=net + over)
    assert reading.allowed is allowed


def test_one_part_of_line_carries_its_line_pull() -> None:
    # One part runs over one sheave at the head: pull x efficiency at most, pull at best.
    hoist = chart().setup.machine.hoist
    held = line_limit(chart(), parts=1)
    assert hoist.line_pull * hoist.sheave_efficiency / GRAVITY - chart().step < held
    assert held <= hoist.line_pull / GRAVITY


def test_more_parts_of_line_carry_more_and_less_than_so_many_times_as_much() -> None:
    limits = [line_limit(chart(), parts=p) for p in chart().setup.machine.hoist.parts]
    assert np.all(np.diff(limits) > 0.0)
    for parts, limit in zip(chart().setup.machine.hoist.parts[1:], limits[1:], strict=True):
        assert limit <= parts * (limits[0] + chart().step)


def test_too_few_parts_of_line_limit_the_gross_load() -> None:
    one = line_limit(made(GRID), parts=1)
    reading = read_chart(made(GRID), radius=6.0, length=15.0, parts=1)
    assert reading.rope_governs
    assert reading.gross == one < reading.cell
    assert any("rope" in sentence for sentence in tell_reading(reading, units="us"))


def test_the_fewest_parts_of_line_just_carry_the_load() -> None:
    for gross in (2000.0, 5000.0, 9000.0):
        parts = fewest_parts(chart(), gross=gross)
        assert parts is not None
        assert line_limit(chart(), parts=parts) >= gross
        if parts > 1:
            assert line_limit(chart(), parts=parts - 1) < gross
    assert fewest_parts(chart(), gross=1e6) is None


def wrong(reading, **more) -> dict[str, float]:
    return {one.key: one.net for one in misreadings(reading, **more)}


def test_wrong_readings_by_hand() -> None:
    # Right: 8 m and 20 m, 2500 kg. A quarter of the way from 6 to 8 m, half from 15 to 20 m.
    reading = read_chart(made(GRID), radius=6.5, length=17.5, deductions=())
    found = wrong(reading)
    assert found["next smaller radius"] == 4500.0
    assert found["larger of two booms"] == 3000.0
    assert found["rounded the wrong way"] == 5000.0
    assert found["interpolated radius"] == pytest.approx(4500 - 0.25 * 2000)
    assert found["interpolated length"] == pytest.approx(2750.0)
    assert found["interpolated both"] == pytest.approx(4750 - 0.25 * (4750 - 2750))


def test_the_first_row_and_the_first_column_are_misread_like_any_other() -> None:
    # Right: 6 m and 15 m, 5000 kg. Half from 4 to 6 m, three fifths from 10 to 15 m.
    reading = read_chart(made(GRID), radius=5.0, length=13.0, deductions=())
    found = wrong(reading)
    assert found["next smaller radius"] == 8000.0
    assert found["larger of two booms"] == 6000.0
    assert found["rounded the wrong way"] == 9000.0
    assert found["interpolated radius"] == pytest.approx(5000 + 0.5 * 3000)
    assert found["interpolated length"] == pytest.approx(5000 + 0.4 * 1000)
    assert found["interpolated both"] == pytest.approx(5400 + 0.5 * (8400 - 5400))


def test_wrong_deductions_by_hand() -> None:
    machine = chart().setup.machine
    found = wrong(read_chart(made(GRID), radius=6.0, length=15.0))
    assert found["forgot deductions"] == 5000.0
    assert found["added deductions"] == 5000.0 + machine.hook_block + machine.slings
    assert found["forgot hook block"] == 5000.0 - machine.slings
    assert found["forgot slings"] == 5000.0 - machine.hook_block


def test_on_a_row_nobody_interpolates_but_a_row_may_be_missed() -> None:
    found = wrong(read_chart(made(GRID), radius=6.0, length=15.0))
    assert not {"interpolated radius", "next smaller radius", "larger of two booms"} & set(found)
    machine = chart().setup.machine
    assert found["one row too near"] == 8000.0 - machine.hook_block - machine.slings


def test_forgetting_the_rope_gives_the_cell() -> None:
    reading = read_chart(made(GRID), radius=6.0, length=15.0, parts=1, deductions=())
    assert wrong(reading)["forgot parts of line"] == 5000.0


def test_a_structural_cell_does_not_warn_at_the_load_of_a_stability_cell() -> None:
    # Whoever takes it for 85 % of tipping expects the crane to tip at 5000/0.85.
    reading = read_chart(made(GRID), radius=6.0, length=15.0, deductions=())
    assert wrong(reading)["expects tipping first"] == pytest.approx(5000.0 / 0.85)
    tipping = next(k for k, limit in enumerate(chart().limits) if limit.name == "tipping")
    stable = replace(made(GRID), governing=np.full((3, 3), tipping))
    reading = read_chart(stable, radius=6.0, length=15.0, deductions=())
    assert "expects tipping first" not in wrong(reading)


def test_the_chart_for_another_sector_is_a_wrong_reading() -> None:
    rear = chart("rear")
    apart = np.argwhere((rear.steps != chart().steps) & chart().rated & rear.rated)
    assert len(apart)
    r, c = apart[0]
    where = {"radius": float(chart().radii[r]), "length": float(chart().length[c])}
    reading = read_chart(chart(), **where)
    assert wrong(reading, other_sector=rear)["wrong sector"] == pytest.approx(
        rear.capacity[r, c] - reading.deducted
    )


def test_every_wrong_reading_differs_from_the_right_one_and_is_told() -> None:
    reading = read_chart(chart(), radius=6.3, length=13.7)
    told = misreadings(reading)
    assert len(told) > 5
    for one in told:
        assert one.net != reading.net
        assert tell_misreading(one, reading, units="metric").startswith("The reader")


def test_a_stated_chart_is_read_by_its_extension() -> None:
    ways = configurations_of(
        chart().setup.machine.boom, extension=np.array([[0.5, 0.5, 0.5], [1.0, 0.5, 0.0]])
    )
    two = stated_chart(chart().setup, configurations=ways)
    for column, extension in enumerate(ways.extension):
        reading = read_chart(two, radius=9.0, extension=extension)
        assert reading.column == column
    with pytest.raises(ValueError, match="Name the extension"):
        read_chart(two, radius=9.0, length=float(ways.length[0]))
    with pytest.raises(ValueError, match="No column of this chart"):
        read_chart(two, radius=9.0, extension=[0.0, 0.0, 0.0])


@pytest.mark.parametrize(
    ("asked", "sentence"),
    [
        ({"radius": 99.0, "length": 20.0}, "beyond the last row"),
        ({"radius": np.nan, "length": 20.0}, "radius must be above 0 m"),
        ({"radius": 0.0, "length": 20.0}, "radius must be above 0 m"),
        ({"radius": 9.0, "length": 99.0}, "longer than any"),
        ({"radius": 9.0, "length": np.nan}, "boom length must be above 0 m"),
        ({"radius": 9.0}, "Give either the boom length or the extension"),
        ({"radius": 9.0, "extension": [0.0, 0.0, 0.0]}, "Give the boom length"),
        ({"radius": 9.0, "length": 20.0, "load": -1.0}, "load: -1 kg is outside 0 kg"),
        ({"radius": 9.0, "length": 20.0, "load": np.nan}, "load: nan t is outside 0 t"),
        ({"radius": 9.0, "length": 20.0, "stowed_jib": np.nan}, "jib: nan t is outside 0 t"),
        ({"radius": 9.0, "length": 20.0, "parts": 99}, "cannot be reeved"),
    ],
)
def test_what_cannot_be_read_is_refused_in_a_sentence(asked: dict, sentence: str) -> None:
    with pytest.raises(ValueError, match=sentence):
        read_chart(chart(), **asked)


def test_nearer_than_the_first_row_a_chart_allows_nothing() -> None:
    made = chart()
    with pytest.raises(ValueError, match=r"nearer than the first row .* Take a larger radius"):
        read_chart(made, radius=0.9 * float(made.radii[0]), length=float(made.length[0]))
