"""Which radii are rows of a chart: whole steps over what the boom can reach, by plain geometry."""

from dataclasses import replace
from math import cos, floor, hypot, log10, radians, sin

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from making import invented_crane

from boomsim.rating.charts.rows_and_rounding import (
    chart_radii,
    chart_step,
    reach,
    row_step,
    whole_steps,
)

CRANE = invented_crane()
STEEPEST = radians(80.0)
BELOW = 0.25
FOOT, POUND = 0.3048, 0.45359237


def near(length: float) -> float:
    """Head of the unbent boom at its steepest: along it, and the sheave below the axis [m]."""
    return CRANE.heel_out + length * cos(STEEPEST) + BELOW * sin(STEEPEST)


def test_the_reach_is_that_of_the_unbent_boom_at_its_steepest_and_of_the_straight_one() -> None:
    lengths = np.array([10.0, 21.0, 33.0])
    close, far = reach(CRANE, length=lengths)
    assert close == pytest.approx([near(length) for length in lengths])
    assert far == pytest.approx([CRANE.heel_out + hypot(length, BELOW) for length in lengths])


@pytest.mark.parametrize("step", [0.5, 1.0, 2.0])
def test_rows_begin_where_the_shortest_and_end_where_the_longest_boom_reaches(step: float) -> None:
    lengths = np.array([20.0, 33.0])
    rows = chart_radii(CRANE, length=lengths, step=step)
    # Whole steps, so exact in the last digits that half, one and two metres have.
    assert rows / step == pytest.approx(np.round(rows / step), abs=1e-12)
    assert np.diff(rows) == pytest.approx(step)
    assert rows[0] - step < near(20.0) <= rows[0] < near(33.0)
    assert rows[-1] <= CRANE.heel_out + hypot(33.0, BELOW) < rows[-1] + step


def test_no_row_lies_on_the_axis_of_rotation_or_behind_it() -> None:
    back = replace(CRANE, heel_out=-8.0)
    assert chart_radii(back, length=np.array([12.0]), step=0.5)[0] == 0.5


def even(value: float) -> bool:
    """Whether a step is 1, 2 or 5 of a power of ten."""
    first = value / 10.0 ** floor(log10(value) + 1e-9)
    return any(abs(first - k) < 1e-9 for k in (1.0, 2.0, 5.0))


@pytest.mark.parametrize(("units", "foot", "pound"), [("metric", 1.0, 1.0), ("us", FOOT, POUND)])
@pytest.mark.parametrize("size", [0.03, 0.4, 2.7])
def test_a_small_machine_has_some_forty_even_rows_and_steps(
    units: str, foot: float, pound: float, size: float
) -> None:
    small = replace(CRANE, heel_out=0.0)
    apart = row_step(small, length=np.array([size]), units=units)
    assert even(apart / foot)
    # Forty or fewer, and of three steps in a decade each is at most two and a half times the last.
    assert 40.0 / 2.5 <= hypot(size, BELOW) / apart <= 40.0 + 1e-9
    step = chart_step(np.array([np.nan, size]), units=units)
    assert even(step / pound)
    assert 40.0 / 2.5 <= size / step <= 40.0 + 1e-9


def test_a_crane_has_whole_metres_and_fifties_of_kilograms() -> None:
    assert row_step(CRANE, length=np.array([33.0])) == 1.0
    assert row_step(CRANE, length=np.array([33.0]), units="us") == pytest.approx(5.0 * FOOT)
    assert chart_step(np.array([np.nan, 9e3])) == 50.0
    assert chart_step(np.array([np.nan, 9e3]), units="us") == pytest.approx(100.0 * POUND)


def test_steps_are_the_most_whose_product_is_no_more_than_there_is() -> None:
    capacity = np.array([0.0, 49.9, 50.0, 149.999, 150.0, np.nan])
    assert whole_steps(capacity, step=50.0).tolist() == [0, 0, 1, 2, 3, -1]


@given(st.floats(0.0, 1e6), st.sampled_from([0.1, 0.3, 7.0, 50.0, 100 * POUND]))
def test_a_step_more_would_be_more_than_there_is(capacity: float, step: float) -> None:
    # In the machine's own numbers: 3 x 0.1 is more than 0.3, so that 0.3 holds two tenths.
    (steps,) = whole_steps(np.array([capacity]), step=step)
    assert steps * step <= capacity < (steps + 1) * step
