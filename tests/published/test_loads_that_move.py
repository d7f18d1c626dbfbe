"""A load that is jerked, dropped or swung: formulas of mechanics and strength-of-materials
textbooks (remembered), and the motion itself, integrated.

Source: textbooks under impact, conical pendulum, accelerated pendulum; SciPy's integrator as the
reference program. Status: from memory; where a motion is integrated: reference program.
"""

from math import asin, atan, cos, radians, sin, tan

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from boomsim.gravity import GRAVITY
from boomsim.mechanics.moving_loads import (
    dropped,
    stopped_at_once,
    stopped_in,
    swung_back,
    swung_out,
)


def largest_force(sag: float, *, speed: float, start: float) -> float:
    """Largest spring force over weight: a mass that moves down at `speed`, its spring stretched by
    `start`, integrated. The spring pushes nothing."""
    stiffness = GRAVITY / sag

    def motion(_: float, at: np.ndarray) -> list[float]:
        return [at[1], GRAVITY - stiffness * max(at[0], 0.0)]

    period = 2.0 * np.pi * np.sqrt(sag / GRAVITY)
    found = solve_ivp(
        motion, (0.0, 2.0 * period), [start, speed], rtol=1e-10, atol=1e-12, max_step=period / 500
    )
    return float(found.y[0].max() / sag)


@pytest.mark.parametrize(("speed", "sag"), [(0.1, 0.05), (0.5, 0.145), (1.5, 0.3)])
def test_a_stop_at_once_is_what_a_mass_on_a_spring_does(speed: float, sag: float) -> None:
    """Tolerance: the largest of 500 steps a period lies within (pi/500)2/2 of the crest.
    Status: reference program."""
    found = largest_force(sag, speed=speed, start=sag)
    assert stopped_at_once(speed, sag=sag) == pytest.approx(found, rel=3e-5)


@pytest.mark.parametrize(("height", "sag"), [(0.0, 0.1), (0.05, 0.145), (0.3, 0.02)])
def test_a_fall_into_slack_slings_is_what_a_mass_on_a_spring_does(
    height: float, sag: float
) -> None:
    """Tolerance: as above. Status: reference program."""
    found = largest_force(sag, speed=float(np.sqrt(2.0 * GRAVITY * height)), start=0.0)
    assert dropped(height, sag=sag) == pytest.approx(found, rel=3e-5)


def test_a_load_let_go_counts_twice_and_one_from_forty_times_its_sag_tenfold() -> None:
    """The two cases every textbook has. Tolerance: exact but for rounding. Status: from memory."""
    assert dropped(0.0, sag=0.123) == pytest.approx(2.0, rel=1e-12)
    assert dropped(0.040, sag=0.001) == pytest.approx(10.0, rel=1e-12)


def test_an_even_stop_is_newtons_second_law() -> None:
    """2 t stopped from 0.6 m/s in 0.5 s: 2000 (9.80665 + 1.2) = 22013.3 N, over 19613.3 N.

    Tolerance: six figures by hand. Status: worked."""
    assert stopped_in(0.6, time=0.5) == pytest.approx(22013.3 / 19613.3, rel=1e-5)


@pytest.mark.parametrize(("speed", "radius", "rope"), [(1.5, 10.0, 15.5), (3.0, 8.0, 20.0)])
def test_a_slewed_load_hangs_where_its_forces_balance(
    speed: float, radius: float, rope: float
) -> None:
    """At the angle a: rope force along the rope, weight, and mass times w2 r towards the axis.

    Tolerance: rounding. Status: worked."""
    angle = swung_out(speed, radius=radius, rope=rope)
    pull = GRAVITY / cos(angle)
    inwards = (speed / radius) ** 2 * (radius + rope * sin(angle))
    assert pull * sin(angle) == pytest.approx(inwards, rel=1e-12)
    assert swung_out(speed, radius=radius, rope=1e-9) == pytest.approx(
        atan(speed**2 / (GRAVITY * radius)), rel=1e-6
    )


def test_a_load_that_would_fly_off_is_refused() -> None:
    """At 5 m/s round a head 3 m out w2 R/g is 0.85, over tan 30 degrees. Status: worked."""
    with pytest.raises(ValueError, match="30 degrees"):
        swung_out(5.0, radius=3.0, rope=30.0)


@pytest.mark.parametrize("acceleration", [0.1, 0.5])
def test_a_load_swings_twice_as_far_as_it_would_rest_when_slewing_is_stopped(
    acceleration: float,
) -> None:
    """A pendulum whose hinge is accelerated evenly from rest, integrated with its true sine.

    Tolerance: small angles; beyond them the error grows with the square of the angle, 0.05^2.
    Status: reference program."""
    length = 12.0

    def motion(_: float, at: np.ndarray) -> list[float]:
        return [at[1], -(GRAVITY * sin(at[0]) - acceleration * cos(at[0])) / length]

    found = solve_ivp(motion, (0.0, 12.0), [0.0, 0.0], rtol=1e-10, atol=1e-12, max_step=0.01)
    farthest = tan(float(found.y[0].max()))
    assert swung_back(acceleration * 2.0, time=2.0) == pytest.approx(farthest, rel=0.004)
    assert asin(sin(farthest)) < radians(7.0)
