"""Castigliano's theorem: deflection of bars with steps and of sections that telescope.

Closed forms for small deflections, worked by hand; so the loads here are small, and the results are
scaled to the book's load. Both planes: sideways the base is clamped, in the luffing plane the
luffing cylinder holds it 10 micrometres from the heel pin, which is as good.

Tolerances: the forms are exact, so a millionth for rounding; the lug 10 micrometres from the heel
pin takes 2e-6 of the length from a deflection.

Source: Castigliano's theorem. Status: worked.
"""

import numpy as np
import pytest
from making import (
    NO_ROPE,
    RIGID,
    bare_boom,
    bare_machine,
    chain,
    kilograms,
    loaded,
    one,
    stiff_section,
)

from boomsim.gravity import GRAVITY
from boomsim.machine.model import Disturbances
from boomsim.mechanics.boom.boom_state import State, solve_state
from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.boom.internal_forces import Forces, section_forces

SHARE = 1e-3
"""Of the book's load: slopes of 3e-5 rad, whose squares do not show."""


def droop(boom: Condensed, force: float) -> tuple[State, Forces]:
    """Level, with a weight at the head."""
    state = loaded(boom, across=force, along=0.0)
    return state, section_forces(boom, state=state)


def sway(boom: Condensed, force: float) -> tuple[State, Forces]:
    """Level, with a pull to the left that is a million times the weight."""
    state = solve_state(
        boom,
        load=kilograms(1e-6 * force),
        parts=NO_ROPE,
        angle=one(0.0),
        disturbances=Disturbances(side_pull=1e6),
    )
    return state, section_forces(boom, state=state)


def test_a_stepped_cantilever_droops_153_mm() -> None:
    # (Q/3) sum (s_i3 - s_(i-1)3)/(EI)_i, s from the tip: Q 10 kN; 6, 5, 4 m of 90, 50, 20 MN m2.
    by_hand = 10e3 / 3 * (4**3 / 20e6 + (9**3 - 4**3) / 50e6 + (15**3 - 9**3) / 90e6)
    assert by_hand == pytest.approx(0.1530, abs=1e-12)
    boom = bare_boom(chain([6.0, 5.0, 4.0], stiffness=[90e6, 50e6, 20e6]))
    # Two joints of 0.1 mm and the lug take away 4e-5 of it.
    assert -droop(boom, SHARE * 10e3)[0].head_above[0, 0] / SHARE == pytest.approx(0.153, rel=1e-4)
    assert sway(boom, SHARE * 10e3)[0].head_left[0, 0] / SHARE == pytest.approx(0.153, rel=1e-4)


# Inner section from, to [m]; front and rear pad [kN]; deflection [mm]; slope of the tip [mrad].
TELESCOPED = (
    (4.0, 9.0, 50.0, 40.0, 138.1667, 26.5),
    (3.0, 8.0, 25.0, 15.0, 91.5833, None),
)


def two_sections(tail: float) -> Condensed:
    """Outer 0 to 5 m, 20 MN m2; inner 5 m long, 8 MN m2; weightless, rigid pads."""
    outer = stiff_section(5.0, stiffness=20e6)
    inner = stiff_section(5.0, stiffness=8e6, stroke=5.0)
    return condense(bare_machine((outer, inner)), extension=np.array([[tail / 5.0]]))


@pytest.mark.parametrize(("tail", "tip", "front", "rear", "droops", "slope"), TELESCOPED)
def test_two_telescoped_sections_droop_as_the_closed_form_says(
    tail: float, tip: float, front: float, rear: float, droops: float, slope: float | None
) -> None:
    boom = two_sections(tail)
    assert boom.layout.boom_length[0] == tip
    state, forces = droop(boom, SHARE * 10e3)
    assert forces.front_pad[0, 1, 0] / SHARE == pytest.approx(front * 1e3, rel=1e-6)
    assert forces.rear_pad[0, 1, 0] / SHARE == pytest.approx(rear * 1e3, rel=1e-6)
    # The lug 10 micrometres from the heel pin takes away 2e-6 of the length.
    assert -state.head_above[0, 0] / SHARE == pytest.approx(droops * 1e-3, rel=1e-5)
    if slope is not None:
        assert -state.rotation[0, -1, 0] / SHARE == pytest.approx(slope * 1e-3, rel=1e-5)


@pytest.mark.parametrize(("tail", "tip", "front", "rear", "droops", "slope"), TELESCOPED)
def test_two_telescoped_sections_sway_as_the_closed_form_says(
    tail: float, tip: float, front: float, rear: float, droops: float, slope: float | None
) -> None:
    boom = two_sections(tail)
    state, forces = sway(boom, SHARE * 10e3)
    assert abs(forces.front_pad_side[0, 1, 0]) / SHARE == pytest.approx(front * 1e3, rel=1e-6)
    assert abs(forces.rear_pad_side[0, 1, 0]) / SHARE == pytest.approx(rear * 1e3, rel=1e-6)
    assert state.head_left[0, 0] / SHARE == pytest.approx(droops * 1e-3, rel=1e-5)
    if slope is not None:
        assert state.rotation_side[0, -1, 0] / SHARE == pytest.approx(slope * 1e-3, rel=1e-5)


def test_own_weight_droops_a_cantilever_by_q_l4_over_8_ei() -> None:
    # First order exactly, whatever the number of pieces: stations carry a parabola.
    length, stiffness, line_mass = 12.0, 30e6, 0.1
    boom = bare_boom(chain([length], stiffness=[stiffness], line_mass=line_mass))
    state, forces = droop(boom, 0.0)
    by_hand = line_mass * GRAVITY * length**4 / (8 * stiffness)
    assert -state.head_above[0, 0] == pytest.approx(by_hand, rel=1e-5)
    foot = line_mass * GRAVITY * length**2 / 2
    assert -forces.moment.min() == pytest.approx(foot, rel=1e-5)


def test_play_turns_the_head_down_by_play_over_overlap() -> None:
    # Rigid sections, 2 mm of play over an overlap of 1 m: the inner one turns by 2 mrad.
    outer = stiff_section(5.0, stiffness=RIGID)
    inner = stiff_section(5.0, stiffness=RIGID, nose=4.0, clearance=0.002)
    state, _ = droop(bare_boom((outer, inner)), 10e3)
    assert state.rotation[0, :9, 0] == pytest.approx(0.0, abs=1e-8)
    assert state.rotation[0, 9:, 0] == pytest.approx(-0.002, rel=1e-5)


def test_play_turns_nothing_that_lies_on_both_its_pads() -> None:
    # Without a load the inner section's weight acts 5 m from its tail, the mouth is 9 m from it:
    # both pads carry it from below, 5/9 and 4/9 of it, and there is no play to take up.
    outer = stiff_section(12.0, stiffness=RIGID)
    inner = stiff_section(10.0, stiffness=RIGID, mass=500.0, nose=1.0, clearance=0.002)
    state, forces = droop(bare_boom((outer, inner)), 0.0)
    assert forces.front_pad[0, 1, 0] == pytest.approx(500.0 * GRAVITY * 5.0 / 9.0, rel=1e-6)
    assert forces.rear_pad[0, 1, 0] == pytest.approx(-500.0 * GRAVITY * 4.0 / 9.0, rel=1e-6)
    assert state.rotation[0, :, 0] == pytest.approx(0.0, abs=1e-8)
