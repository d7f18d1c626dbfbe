"""Rayleigh's quotient of the boom's own shapes, where it can be worked by hand."""

from dataclasses import replace
from math import cos, pi, sin

import numpy as np
import pytest
from making import (
    BARE_HEAD,
    NO_ROPE,
    bare_boom,
    bare_machine,
    even_bar,
    kilograms,
    loaded,
    one,
    pulled_sideways,
)
from scipy.optimize import brentq

from boomsim.machine.model import Section
from boomsim.machine.shapes.box import box
from boomsim.mechanics.condense import Condensed, condense
from boomsim.mechanics.forces import section_forces
from boomsim.mechanics.profile import properties
from boomsim.mechanics.state import State, solve_state
from boomsim.mechanics.sway import critical_ratio

LENGTH, STIFFNESS = 20.0, 40e6
CRITICAL = pi**2 * STIFFNESS / (4 * LENGTH**2)


def ratio(boom: Condensed, state: State) -> float:
    forces = section_forces(boom, state=state)
    return float(critical_ratio(boom, state=state, forces=forces)[0, 0])


@pytest.mark.parametrize("share", [0.05, 0.2, 0.5])
def test_of_an_even_column_it_is_1_3_percent_low(share: float) -> None:
    # The shape of a tip force: int EI w''2 = P int w'2 gives P = (1/3)/(2/15) EI/L2 = 2.5 EI/L2,
    # against pi2/4 = 2.467 EI/L2.
    boom = bare_boom(even_bar(LENGTH, stiffness=STIFFNESS))
    state = pulled_sideways(boom, across=1e-4 * CRITICAL, along=share * CRITICAL)
    by_hand = share * CRITICAL / (2.5 * STIFFNESS / LENGTH**2)
    assert ratio(boom, state) == pytest.approx(by_hand, rel=1e-3)


@pytest.mark.parametrize("ahead", [0.5, 2.0, 5.0])
def test_a_head_ahead_of_the_last_front_is_a_rigid_end_of_the_column(ahead: float) -> None:
    # Bent part w = tip (1 - cos kx), straight from L on: tip = w(L) + ahead w'(L), so that the
    # critical load EI k2 has k ahead tan(kL) = 1.
    k = brentq(lambda k: k * ahead * sin(k * LENGTH) - cos(k * LENGTH), 0.0, pi / 2 / LENGTH)
    exact = STIFFNESS * k**2
    boom = bare_boom(even_bar(LENGTH, stiffness=STIFFNESS), head=replace(BARE_HEAD, ahead=ahead))
    state = pulled_sideways(boom, across=1e-4 * exact, along=0.3 * exact)
    # Rayleigh's quotient is never above the truth, and the more is rigid the nearer it comes.
    # An even column without a head gives pi2/10; the little that it is bent takes a bit of that.
    assert pi**2 / 10 * (1 - 1e-4) < ratio(boom, state) / 0.3 < 1.0 + 1e-6


def test_it_does_not_depend_on_how_hard_the_boom_is_pushed_aside() -> None:
    boom = bare_boom(even_bar(LENGTH, stiffness=STIFFNESS))
    found = [
        ratio(boom, loaded(boom, across=share * CRITICAL, along=0.3 * CRITICAL))
        for share in (1e-3, 1e-2)
    ]
    assert found[1] == pytest.approx(found[0], rel=1e-2)


def wide_bar() -> tuple[Section, ...]:
    """A bar that is stiffer sideways, so that the luffing plane has the larger ratio."""
    profile = box(0.2, width=0.6, top=0.005, bottom=0.005, web=0.005)
    modulus = STIFFNESS / properties(profile).i_y
    return tuple(
        replace(part, profile=profile, material=replace(part.material, modulus=modulus))
        for part in even_bar(LENGTH, stiffness=STIFFNESS)
    )


@pytest.mark.parametrize(("ahead", "below"), [(0.0, 0.0), (0.0, 0.3), (3.0, 0.0)])
def test_the_rope_relieves_by_the_droop_of_the_head_and_not_by_how_low_its_sheave_sits(
    ahead: float, below: float
) -> None:
    # Level, one part of line: the rope presses the boom with the whole load P and pulls it back
    # with P tip/l, l being from heel pin to sheave. The shape of a force across the head:
    # M = l - x, EI w' = l x - x2/2 up to L and even from there on. With no head ahead the quotient
    # is P L2/EI (2/15 - 1/9)/(1/3) = P L2/(15 EI).
    # Hanging lower changes nothing, for the load hangs straight down from the axis's end.
    force = 1e-4 * CRITICAL
    head = replace(BARE_HEAD, ahead=ahead, below=below)
    boom = condense(bare_machine(wide_bar(), head=head), extension=np.zeros((1, 5)))
    state = solve_state(boom, load=kilograms(force), parts=1, angle=one(0.0))
    arm, turn = LENGTH + ahead, LENGTH * ahead + LENGTH**2 / 2
    along_bar = arm**2 * LENGTH**3 / 3 - arm * LENGTH**4 / 4 + LENGTH**5 / 20
    tip = arm * LENGTH**2 / 2 - LENGTH**3 / 6 + ahead * turn
    work = along_bar + ahead * turn**2 - tip**2 / arm
    by_hand = force / STIFFNESS * work / ((arm**3 - ahead**3) / 3)
    # The load stretches the drooping axis by its slope, 1e-4, of itself.
    assert ratio(boom, state) == pytest.approx(by_hand, rel=5e-3)


def test_a_boom_that_is_only_stretched_cannot_buckle() -> None:
    # Pointing down at 60 degrees: the load pulls along the boom.
    boom = bare_boom(even_bar(LENGTH, stiffness=STIFFNESS))
    state = solve_state(boom, load=kilograms(0.2 * CRITICAL), parts=NO_ROPE, angle=one(-pi / 3))
    assert ratio(boom, state) < 0.0
