"""Sections that shear as well as bend: closed forms for small deflections.

A cantilever sags by P L/(G A) more than by bending (Timoshenko's beam). Where one section stands
in another, the shear inside the overlap is the moment at the mouth over the overlap's length, of
both sections: Castigliano's theorem gives the sag. A column that shears buckles under
P_E/(1 + P_E/(G A)) (Engesser).

Tolerances: the forms are exact, so what the stub that stands for a head adds, or rounding.

Source: Castigliano's theorem; Engesser's formula. Status: worked.
"""

from dataclasses import replace
from math import inf, pi

import pytest
from making import RIGID, bare_boom, loaded, pulled_sideways, stiff_section

from boomsim.machine.model import Section
from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.sections.section_properties import properties

LENGTH, STIFFNESS, IN_SHEAR = 20.0, 40e6, 2e6
"""A bar that shears as much as no boom does: a twelfth of its sag [m], [N m2], [N]."""

LUG = 4.0
"""Where the luffing cylinder holds the base section in the luffing plane [m]."""

SMALL = 10.0
"""A force whose slopes' squares do not show [N]."""


def section(long: float, bending: float, in_shear: float, nose: float = 0.0) -> Section:
    """A section of stiffnesses E I [N m2] and G A [N], the same in both planes."""
    made = stiff_section(long, stiffness=bending, nose=nose)
    modulus = in_shear / properties(made.profile).shear_area_y
    return replace(made, material=replace(made.material, shear_modulus=modulus))


def bar(in_shear: float = IN_SHEAR) -> Condensed:
    """One bar, with a rigid stub in its mouth for a head."""
    stub = stiff_section(1.0 + STUB, stiffness=RIGID, nose=STUB)
    return bare_boom((section(LENGTH, STIFFNESS, in_shear), stub), lug=LUG)


STUB = 1e-3
"""The head's foot lies so far ahead of the bar [m]."""


def sway(boom: Condensed, thrust: float = 1e-3) -> float:
    """Of the head under a small pull sideways, where the base section is clamped [m]."""
    return float(pulled_sideways(boom, across=SMALL, along=thrust).head_left[0, 0])


def test_a_cantilever_gives_by_bending_and_by_shear() -> None:
    by_hand = SMALL * (LENGTH**3 / (3 * STIFFNESS) + LENGTH / IN_SHEAR)
    # The stub leans with the mouth and takes the pull away from it: 1.5 times its length, twice.
    assert sway(bar()) == pytest.approx(by_hand, rel=3 * STUB / LENGTH)


def test_a_bar_that_overhangs_its_cylinder_sags_by_bending_and_by_shear() -> None:
    # The stub leans with the mouth, at three times the chord's slope or less.
    # Shear P outboard of the lug, P b/a between heel pin and lug; measured from the line of both.
    a, b = LUG, LENGTH - LUG
    by_hand = SMALL * (b**2 * LENGTH / (3 * STIFFNESS) + (b + b**2 / a) / IN_SHEAR)
    down = -loaded(bar(), across=SMALL, along=0.0).head_above[0, 0]
    assert down == pytest.approx(by_hand, rel=4 * STUB / LENGTH)


@pytest.mark.parametrize("overlap", [1.0, 2.0, 4.0])
def test_two_sections_give_by_the_shear_in_their_overlap(overlap: float) -> None:
    # Moment at the mouth P p; over the overlap c the inner shears by P p/c, the outer by P more.
    long, p, c = 10.0, 8.0, overlap
    by_hand = SMALL * ((long - c + c * (1 + p / c) ** 2) / 3e7 + (c * (p / c) ** 2 + p) / 2e7)
    shears, bends = (
        bare_boom((section(long, 90e6, outer), section(p + c, 50e6, inner, nose=p)), lug=LUG)
        for outer, inner in ((3e7, 2e7), (inf, inf))
    )
    assert sway(shears) - sway(bends) == pytest.approx(by_hand, rel=1e-5)


def test_a_column_that_shears_buckles_under_engesser_s_load() -> None:
    # Timoshenko & Gere, Theory of Elastic Stability, 2.17. Status: from memory.
    # What the head yields to a small pull falls in a straight line to nought at the critical load
    # (Southwell's plot), which is nearly straight from 0.85 of it: half a percent.
    euler = pi**2 * STIFFNESS / (4 * LENGTH**2)
    by_hand = euler / (1 + euler / IN_SHEAR)
    low, high = 0.85, 0.95
    holds = [1.0 / sway(bar(), thrust=share * by_hand) for share in (low, high)]
    critical = high + holds[1] * (high - low) / (holds[0] - holds[1])
    assert critical == pytest.approx(1.0, rel=5e-3)
