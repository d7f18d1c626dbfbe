"""AISC 360 (Specification for Structural Steel Buildings), Commentary to Chapter C, C2: two
benchmark problems for second-order analysis, in the printed sets *without* shear deformation: the
bars here are rigid in shear.

A bar of E 29000 ksi, I 484 in4, L 28 ft. Case 2 is a cantilever with 1 kip across its tip and P
along it; case 1 a simple span with 0.2 kip/ft across and P along it.

Tolerance: one in the third printed figure, and the bar is cut into six pieces so that its own
error is far below that. The closed form tan(u)/u gives 848.98 kip-in where the
table prints 848, so its last figure is not rounded to nearest; half a unit would refuse the closed
form itself.

Source: AISC 360, Commentary C2. Status: read.
"""

from math import pi, tan

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
from boomsim.mechanics.boom.boom_state import solve_state
from boomsim.mechanics.boom.internal_forces import section_forces
from boomsim.mechanics.external_loads import AIR_FACTOR
from boomsim.mechanics.sections.section_properties import properties

INCH = 0.0254
KIP = 4448.2216
STIFFNESS = 29000 * KIP / INCH**2 * 484 * INCH**4
LENGTH = 28 * 12 * INCH

# P [kip], moment at the base [kip-in], deflection of the tip [in]: case 2, no shear deformation.
CANTILEVER = ((0.0, 336, 0.901), (100.0, 469, 1.33), (150.0, 598, 1.75), (200.0, 848, 2.56))

# P [kip], moment at midspan [kip-in], deflection there [in]: case 1, no shear deformation.
SPAN = ((0.0, 235, 0.197), (150.0, 269, 0.224), (300.0, 313, 0.261), (450.0, 375, 0.311))


@pytest.mark.parametrize(("thrust", "moment", "deflection"), CANTILEVER)
def test_a_cantilever_bends_in_the_luffing_plane_as_in_case_2(
    thrust: float, moment: float, deflection: float
) -> None:
    boom = bare_boom(even_bar(LENGTH, stiffness=STIFFNESS))
    state = loaded(boom, across=1.0 * KIP, along=thrust * KIP)
    forces = section_forces(boom, state=state)
    assert -forces.moment.min() / (KIP * INCH) == pytest.approx(moment, abs=1.0)
    assert -state.head_above[0, 0] / INCH == pytest.approx(deflection, abs=0.01)


@pytest.mark.parametrize(("thrust", "moment", "deflection"), CANTILEVER[1:])
def test_a_cantilever_bends_sideways_as_in_case_2(
    thrust: float, moment: float, deflection: float
) -> None:
    boom = bare_boom(even_bar(LENGTH, stiffness=STIFFNESS))
    state = pulled_sideways(boom, across=1.0 * KIP, along=thrust * KIP)
    forces = section_forces(boom, state=state)
    assert forces.moment_side.max() / (KIP * INCH) == pytest.approx(moment, abs=1.0)
    assert state.head_left[0, 0] / INCH == pytest.approx(deflection, abs=0.01)


@pytest.mark.parametrize("thrust", [100.0, 150.0, 200.0])
def test_the_moment_at_the_base_is_the_closed_form_to_four_figures(thrust: float) -> None:
    # H L tan(u)/u with u = L sqrt(P/EI). The boom's lever arms shorten with its slope, here by
    # up to (0.011 rad)2, and P/Pcr 0.65 makes three times as much of a difference: 4e-4, and
    # some for eight pieces. Status: worked.
    boom = bare_boom(even_bar(LENGTH, stiffness=STIFFNESS, pieces=8))
    forces = section_forces(boom, state=loaded(boom, across=1.0 * KIP, along=thrust * KIP))
    u = LENGTH * (thrust * KIP / STIFFNESS) ** 0.5
    assert -forces.moment.min() == pytest.approx(KIP * LENGTH * tan(u) / u, rel=6e-4)


@pytest.mark.parametrize(("thrust", "moment", "deflection"), SPAN)
def test_half_a_span_bends_sideways_as_in_case_1(
    thrust: float, moment: float, deflection: float
) -> None:
    # Cut at midspan, where it is level, half a span is a cantilever: the end reaction w L/2 pulls
    # its tip one way, the load w (here wind) pushes the other way, and P stays parallel.
    load, half = 0.2 * KIP / (12 * INCH), LENGTH / 2
    boom = bare_boom(even_bar(half, stiffness=STIFFNESS))
    along = max(thrust, 1e-3) * KIP
    across = Disturbances(
        side_pull=-load * half / along,
        wind_across=True,
        wind_speed=(load / (AIR_FACTOR * properties(SQUARE).outer_height)) ** 0.5,
    )
    state = solve_state(
        boom, load=kilograms(along), parts=NO_ROPE, angle=one(pi / 2), disturbances=across
    )
    forces = section_forces(boom, state=state)
    assert -forces.moment_side.min() / (KIP * INCH) == pytest.approx(moment, abs=1.0)
    assert -state.head_left[0, 0] / INCH == pytest.approx(deflection, abs=0.001)
