"""Greenhill, Proc. Cambridge Phil. Soc. 4 (1881): a clamped column buckles under its own weight q
when q L3/(EI) = 7.8373.

Source: Greenhill (1881). Status: read.
"""

from math import pi

import numpy as np
import pytest
from making import NO_ROPE, bare_boom, even_bar, kilograms, one

from boomsim.gravity import GRAVITY
from boomsim.machine.model import Disturbances
from boomsim.mechanics.boom.boom_state import State, solve_state
from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.boom.critical_load import critical_ratio
from boomsim.mechanics.boom.internal_forces import section_forces

GREENHILL = 7.8373
LENGTH, STIFFNESS = 30.0, 20e6


def upright(share: float) -> tuple[Condensed, State]:
    """A boom that stands upright, its weight a share of Greenhill's, with a breath of wind."""
    mass = share * GREENHILL * STIFFNESS / LENGTH**3 / GRAVITY
    boom = bare_boom(even_bar(LENGTH, stiffness=STIFFNESS, line_mass=mass))
    state = solve_state(
        boom,
        load=kilograms(0.0),
        parts=NO_ROPE,
        angle=one(pi / 2),
        disturbances=Disturbances(wind_speed=1.0, wind_across=True),
    )
    return boom, state


def test_below_greenhills_weight_the_column_stands() -> None:
    # Nearly: at 0.97 a breath of wind is enlarged some thirty times.
    _, state = upright(0.97)
    assert state.converged.all()
    assert 0.0 < state.head_left[0, 0] < 0.05 * LENGTH


def test_sway_grows_without_bound_at_greenhills_weight() -> None:
    # Southwell's plot: 1/sway is a straight line in the weight and is nought at the critical one.
    shares = np.array([0.90, 0.96])
    yielding = [1.0 / upright(float(s))[1].head_left[0, 0] for s in shares]
    slope = (yielding[1] - yielding[0]) / (shares[1] - shares[0])
    # Higher modes bend the line a little: 0.2 %.
    assert shares[1] - yielding[1] / slope == pytest.approx(1.0, abs=2e-3)


def test_beyond_greenhills_weight_there_is_no_state() -> None:
    # Between 1.00 and 1.05 an elastica finds a new, far bent equilibrium within the range of its
    # rotations; beyond it there is none to be found, and none is returned.
    _, state = upright(1.10)
    assert not state.converged.any()
    assert np.isnan(state.head_left).all()


@pytest.mark.parametrize("share", [0.2, 0.5, 0.9])
def test_the_critical_ratio_is_the_share_of_greenhills_weight(share: float) -> None:
    # Six pieces of bar leave 1e-4, and three steps no more.
    boom, state = upright(share)
    ratio = critical_ratio(boom, state=state, forces=section_forces(boom, state=state))
    assert ratio[0, 0] / share == pytest.approx(1.0, abs=3e-4)
