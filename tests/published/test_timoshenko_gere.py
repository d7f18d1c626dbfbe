"""Timoshenko & Gere, Theory of Elastic Stability, 1.11 and following: how an axial force enlarges
the deflection of a cantilever.

Tip load: 3 (tan u - u)/u3 with u = (pi/2) sqrt(P/Pcr). The formula was read there; for an even
load, (8/u4)(1 + u tan u - u2/2 - sec u) is derived the same way.

Source: Timoshenko & Gere, Theory of Elastic Stability. Status: read.
"""

from collections.abc import Callable
from math import pi, sqrt, tan

import numpy as np
import pytest
from making import (
    NO_ROPE,
    SQUARE,
    bare_boom,
    even_bar,
    kilograms,
    loaded,
    one,
    pulled_sideways,
)

from boomsim.machine.model import Disturbances
from boomsim.mechanics.boom.boom_state import State, solve_state
from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.external_loads import AIR_FACTOR
from boomsim.mechanics.sections.section_properties import properties

LENGTH, STIFFNESS = 20.0, 40e6
CRITICAL = pi**2 * STIFFNESS / (4 * LENGTH**2)

# P/Pcr, amplification: the formula to six figures.
TIP_LOAD = ((0.1, 1.10965), (0.3, 1.42281), (0.5, 1.98629), (0.8, 4.94339))
EVEN_LOAD = ((0.3, 1.41069), (0.5, 1.95740), (0.8, 4.82397))

# A ten-thousandth of the critical load across: at P/Pcr 0.8 the tip moves 8 mm in 20 m, so that
# shortening lever arms, which the theory of small deflections leaves out, do not show. What remains
# is the rule of integration over six pieces, joints of 0.1 mm, and where the iteration stops
# (1e-8 rad, which the thrust enlarges as it enlarges the deflection).
SMALL = 1e-4 * CRITICAL
CLOSE = 3e-4


@pytest.fixture(scope="module")
def boom() -> Condensed:
    return bare_boom(even_bar(LENGTH, stiffness=STIFFNESS))


@pytest.mark.parametrize(("ratio", "larger"), TIP_LOAD)
def test_thrust_enlarges_the_droop_in_the_luffing_plane(
    boom: Condensed, ratio: float, larger: float
) -> None:
    alone = SMALL * LENGTH**3 / (3 * STIFFNESS)
    state = loaded(boom, across=SMALL, along=ratio * CRITICAL)
    assert -state.head_above[0, 0] / alone == pytest.approx(larger, rel=CLOSE)


@pytest.mark.parametrize(("ratio", "larger"), TIP_LOAD)
def test_thrust_enlarges_the_sway_of_a_side_pull(
    boom: Condensed, ratio: float, larger: float
) -> None:
    alone = SMALL * LENGTH**3 / (3 * STIFFNESS)
    state = pulled_sideways(boom, across=SMALL, along=ratio * CRITICAL)
    assert state.head_left[0, 0] / alone == pytest.approx(larger, rel=CLOSE)


@pytest.mark.parametrize(("ratio", "larger"), EVEN_LOAD)
def test_thrust_enlarges_the_sway_of_wind_along_the_boom(
    boom: Condensed, ratio: float, larger: float
) -> None:
    # (8/u4)(1 + u tan u - u2/2 - sec u). Status: worked.
    push = SMALL / LENGTH
    alone = push * LENGTH**4 / (8 * STIFFNESS)
    speed = (push / (AIR_FACTOR * properties(SQUARE).outer_height)) ** 0.5
    state = solve_state(
        boom,
        load=kilograms(ratio * CRITICAL),
        parts=NO_ROPE,
        angle=one(pi / 2),
        disturbances=Disturbances(wind_speed=speed, wind_across=True),
    )
    assert state.head_left[0, 0] / alone == pytest.approx(larger, rel=CLOSE)


@pytest.mark.parametrize("lift", [loaded, pulled_sideways])
def test_a_boom_just_below_its_critical_load_still_has_a_state(
    boom: Condensed, lift: Callable[..., State]
) -> None:
    # 3 (tan u - u)/u3 at P/Pcr 0.98; a thousandth of the critical load more or less is 5 % there.
    alone = SMALL * LENGTH**3 / (3 * STIFFNESS)
    u = pi / 2 * sqrt(0.98)
    state = lift(boom, across=SMALL, along=0.98 * CRITICAL)
    moved = max(abs(state.head_above[0, 0]), abs(state.head_left[0, 0]))
    assert moved / alone == pytest.approx(3 * (tan(u) - u) / u**3, rel=0.05)


@pytest.mark.parametrize("lift", [loaded, pulled_sideways])
@pytest.mark.parametrize("ratio", [1.10, 1.5, 3.0])
def test_a_boom_beyond_its_critical_load_has_none(
    boom: Condensed, lift: Callable[..., State], ratio: float
) -> None:
    state = lift(boom, across=SMALL, along=ratio * CRITICAL)
    assert not state.converged.any()
    assert np.isnan(state.head_above).all()
