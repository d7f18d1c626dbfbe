"""Sections that stretch along their axis: Hooke's law for bars, by hand.

A bar under its own weight w and a push P at its end is shorter by (P + w/2) L/(E A). Where one
section stands in another, thrust passes at the inner one's tail, through the lock: what lies ahead
of it in the outer section carries nothing of it. The luffing cylinder's lug takes what the
cylinder pushes along the boom.

Tolerances: the forms are exact for a bar that does not bend. The hoist rope of a bare machine, in
so many parts, pulls by some 1e-5 of the load.

Source: Hooke's law. Status: worked.
"""

from dataclasses import replace
from math import inf, pi

import numpy as np
import pytest
from making import NO_ROPE, bare_boom, kilograms, one, stiff_section

from boomsim.gravity import GRAVITY
from boomsim.machine.model import Section
from boomsim.mechanics.boom.boom_state import State, solve_state
from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.boom.internal_forces import section_forces
from boomsim.mechanics.sections.section_properties import properties
from boomsim.mechanics.stability.masses import masses

LOAD = 200e3
"""[N]"""

UPRIGHT, LEVEL, SLOPING = pi / 2, 0.0, pi / 4

ROPE = 2.0 / NO_ROPE
"""Twice the share of the load that the hoist rope still pulls along the boom."""

HEEL_UP = 2.0
"""Of a bare machine [m]."""


def bar(long: float, *, stiff: float, weight: float = 0.0, nose: float = 0.0) -> Section:
    """A section of axial stiffness E A [N] that does not bend; its weight in [N]."""
    made = stiff_section(long, stiffness=1e15, mass=weight / GRAVITY, nose=nose)
    along = stiff / properties(made.profile).area
    return replace(made, material=replace(made.material, axial_modulus=along))


def hung(*sections: Section, angle: float = UPRIGHT, lug: float = 4.0) -> tuple[Condensed, State]:
    """A boom without rope under a load on its head, at a boom angle [rad]."""
    boom = bare_boom(sections, lug=lug)
    state = solve_state(boom, load=kilograms(LOAD), parts=NO_ROPE, angle=one(angle))
    return boom, state


def longer(boom: Condensed, state: State) -> float:
    """By how much the head has come out along the base section [m]."""
    return float(state.head_along[0, 0] - boom.layout.boom_length[0])


def test_a_standing_bar_is_pressed_by_the_load_and_by_half_its_weight() -> None:
    long, stiff, weight = 20.0, 3e9, 60e3
    by_hand = -(LOAD + weight / 2) * long / stiff
    found = longer(*hung(bar(long, stiff=stiff, weight=weight)))
    assert found == pytest.approx(by_hand, rel=ROPE)


def test_thrust_passes_at_the_inner_section_s_tail() -> None:
    # Base section 10 m, whose last 3 m hold the inner one's overlap and carry nothing.
    outer, inner = bar(10.0, stiff=4e9), bar(9.0, stiff=2e9, nose=6.0)
    by_hand = -LOAD * (7.0 / 4e9 + 9.0 / 2e9)
    assert longer(*hung(outer, inner)) == pytest.approx(by_hand, rel=ROPE)


def test_the_luffing_cylinder_pulls_the_base_section_longer_up_to_its_lug() -> None:
    # A level boom: the load has no part along it. The rod rises 1.5 m on 3 m, so that its push
    # along the boom is twice that across, which holds the load over 12 m at an arm of 4 m.
    boom, state = hung(bar(12.0, stiff=4e9), angle=LEVEL)
    along = 2.0 * LOAD * 12.0 / 4.0
    assert state.lug_along[0, 0] == pytest.approx(along, rel=1e-4)
    # Of the load's arm, longer by the stretch, the push takes its ten-thousandth part.
    assert longer(boom, state) == pytest.approx(along * 4.0 / 4e9, rel=1e-3)


def test_the_luffing_cylinder_holds_the_load_at_its_stretched_arm() -> None:
    stiff = 2e7
    (_, rigid), (_, soft) = (
        hung(bar(12.0, stiff=one), angle=SLOPING, lug=4.0) for one in (inf, stiff)
    )
    # The load's part along presses all of the bar, the cylinder's pulls at the first 4 m.
    pressed = -LOAD * np.sin(SLOPING) * 12.0 + float(rigid.lug_along[0, 0]) * 4.0
    by_hand = 1.0 + pressed / stiff / 12.0
    # What the stretch does to itself: its square.
    assert soft.cylinder / rigid.cylinder == pytest.approx(by_hand, rel=3 * (by_hand - 1.0) ** 2)
    assert abs(by_hand - 1.0) > 5e-3


def test_the_front_pad_holds_the_inner_section_by_its_stretched_length() -> None:
    # About its tail: pad x overlap = load across x length; the overlap ahead of the tail is the
    # outer section's, which carries no thrust there.
    stiff, overlap, long = 1e8, 3.0, 9.0
    boom, state = hung(bar(10.0, stiff=inf), bar(long, stiff=stiff, nose=6.0), angle=SLOPING)
    strain = -LOAD * np.sin(SLOPING) / stiff
    by_hand = LOAD * np.cos(SLOPING) * long * (1.0 + strain) / overlap
    pad = section_forces(boom, state=state).front_pad[0, 1, 0]
    # The load turns by the square of the strain, no more.
    assert pad == pytest.approx(by_hand, rel=strain**2)
    assert state.strain[0, 2, 0] == pytest.approx(strain, rel=ROPE)


def test_centres_of_gravity_come_nearer_by_half_of_what_the_bar_is_shorter() -> None:
    boom, state = hung(bar(20.0, stiff=3e9, weight=1e-3))
    none = boom.machine.counterweights[0]
    height = masses(boom, state=state, counterweight=none).up[0, 0, 0]
    by_hand = HEEL_UP + 10.0 * (1.0 - LOAD / 3e9)
    assert height - HEEL_UP - 10.0 == pytest.approx(by_hand - HEEL_UP - 10.0, rel=ROPE)


def test_a_wanted_radius_is_held_by_the_stretched_boom() -> None:
    boom = bare_boom((bar(20.0, stiff=1e8),), lug=4.0)
    state = solve_state(boom, load=kilograms(LOAD), parts=NO_ROPE, radius=one(8.0))
    out = state.head_along * np.cos(state.angle) - state.head_above * np.sin(state.angle)
    assert out == pytest.approx(8.0, rel=1e-9)
    by_hand = 4.0 * state.lug_along - 20.0 * LOAD * np.sin(state.angle)
    # The stretch moves the head and with it the boom angle: its square, 2e-3, is left out.
    assert state.head_along == pytest.approx(20.0 + by_hand / 1e8, rel=2e-3**2)
