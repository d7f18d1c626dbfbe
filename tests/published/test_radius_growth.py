"""Geometry: when the crane leans by one degree, a head 30 m up moves out by 30 tan 1 = 0.524 m.

Source: Plain geometry and statics. Status: worked.
"""

from dataclasses import replace
from math import radians, tan

import numpy as np
import pytest
from making import BARE_HEAD, NO_ROPE, RIGID, bare_machine, one, stiff_section

from boomsim.gravity import GRAVITY
from boomsim.machine.model import CALM, CarrierMass, Disturbances
from boomsim.mechanics.boom.boom_state import solve_state
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.stability.masses import masses
from boomsim.mechanics.stability.overturning import Overturning, overturning

# The heel pin is 2 m up, so a boom 28 m tall has its head 30 m above the ground.
TALL, ANGLE = 28.0, radians(70.0)


def balance(change: Disturbances, slew: float) -> Overturning:
    bar = stiff_section(TALL / float(np.sin(ANGLE)), stiffness=RIGID)
    truck = CarrierMass(name="truck", mass=20e3, x=0.0, y=0.0, z=0.0)
    machine = bare_machine((bar,), head=replace(BARE_HEAD, mass=0.0), carrier=(truck,))
    boom = condense(machine, extension=np.zeros((1, 0)))
    state = solve_state(boom, load=one(1000.0), parts=NO_ROPE, angle=one(ANGLE))
    placed = masses(boom, state=state, counterweight=machine.counterweights[0])
    assert placed.head_up[0, 0] == pytest.approx(30.0)
    return overturning(
        boom,
        placed=placed,
        state=state,
        support=machine.supports[0],
        slew=np.array([slew]),
        disturbances=change,
    )


def lever(made: Overturning, slew: float) -> float:
    """Of the load, over the line that the boom points at [m]."""
    facing = made.lines.normal @ np.array([np.cos(slew), np.sin(slew)])
    return float(made.lever[0, int(np.argmax(facing)), 0, 0]) / GRAVITY


@pytest.mark.parametrize("slew", [0.0, np.pi / 2, np.pi, -np.pi / 2])
def test_a_lean_ahead_moves_the_hook_out_by_0_524_m(slew: float) -> None:
    # Half a unit of the third decimal.
    lean = Disturbances(lean=radians(1.0))
    grown = lever(balance(lean, slew), slew) - lever(balance(CALM, slew), slew)
    assert grown == pytest.approx(0.524, abs=5e-4)


def test_a_lean_across_moves_the_hook_as_far_to_the_left() -> None:
    # Slew 0 points to the rear (x); left of the boom is then +y, "anticlockwise seen from above".
    level, leaning = balance(CALM, 0.0), balance(Disturbances(lean_across=radians(1.0)), 0.0)
    left = int(np.argmax(level.lines.normal @ np.array([0.0, 1.0])))
    grown = (leaning.lever - level.lever)[0, left, 0, 0] / GRAVITY
    # The head turns as a whole, so exact; printed with three decimals.
    assert grown == pytest.approx(30.0 * tan(radians(1.0)), rel=1e-9)
    assert grown == pytest.approx(0.524, abs=5e-4)


def test_a_lean_takes_nothing_from_a_truck_whose_centre_is_on_the_ground() -> None:
    level, leaning = balance(CALM, 0.0), balance(Disturbances(lean=radians(1.0)), 0.0)
    assert leaning.righting == pytest.approx(level.righting)
