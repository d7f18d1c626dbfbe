"""HERA Steel Design & Construction Bulletin 73 (New Zealand, 2003): a telescopic platform boom.

Here: what the overlap carries. 7.50 kN at the end of a boom at 45 degrees; overhang a 3.30 m,
overlap c 1.70 m (inferred: it reproduces the printed reaction); 1.30 kN sideways.

Tolerances: half a unit of a printed figure; against the exact form rounding and the rope, which
pulls a hundred-thousandth of the load.

Source: HERA Bulletin 73 (2003). Status: read.
"""

from math import cos, pi

import numpy as np
import pytest
from making import NO_ROPE, RIGID, bare_machine, kilograms, one, stiff_section

from boomsim.machine.model import Disturbances
from boomsim.mechanics.boom.boom_state import solve_state
from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.boom.internal_forces import Forces, section_forces

OVERHANG, OVERLAP = 3.30, 1.70
MOUTH = 12
"""First station of the inner section that lies at the outer's mouth or beyond: 9 + 3."""


@pytest.fixture(scope="module")
def boom() -> Condensed:
    outer = stiff_section(4.0, stiffness=RIGID)
    inner = stiff_section(OVERHANG + OVERLAP, stiffness=RIGID, stroke=OVERHANG)
    return condense(bare_machine((outer, inner)), extension=np.array([[1.0]]))


def carried(boom: Condensed, angle: float, force: float, side: float = 0.0) -> Forces:
    state = solve_state(
        boom,
        load=kilograms(force),
        parts=NO_ROPE,
        angle=one(angle),
        disturbances=Disturbances(side_pull=side / force),
    )
    return section_forces(boom, state=state)


def test_the_overlap_is_as_the_bulletin_draws_it(boom: Condensed) -> None:
    assert boom.layout.overlap[0, 1] == pytest.approx(OVERLAP)
    assert boom.stations.position[0, 1, MOUTH - 9] == pytest.approx(OVERLAP)


def test_the_load_is_5_30_kn_across_and_along(boom: Condensed) -> None:
    # Printed 5.30 kN for 7.50 kN at 45 degrees: three figures.
    forces = carried(boom, pi / 4, 7.50e3)
    assert forces.shear[0, -1, 0] == pytest.approx(-5.30e3, rel=1e-3)
    assert forces.axial[0, -1, 0] == pytest.approx(-5.30e3, rel=1e-3)


def test_the_front_pad_carries_f_times_overhang_and_overlap_over_overlap(boom: Condensed) -> None:
    # F (a + c)/c = 15.588 kN for F = 5.30 kN exactly; printed 15.6 kN.
    exact = carried(boom, 0.0, 5.30e3)
    assert exact.front_pad[0, 1, 0] == pytest.approx(15.588e3, abs=0.5)
    printed = carried(boom, pi / 4, 7.50e3)
    assert printed.front_pad[0, 1, 0] == pytest.approx(15.6e3, abs=50.0)


def test_the_rear_pad_carries_the_rest(boom: Condensed) -> None:
    # F a/c, so that front pad less rear pad is F.
    forces = carried(boom, 0.0, 5.30e3)
    assert forces.rear_pad[0, 1, 0] == pytest.approx(5.30e3 * OVERHANG / OVERLAP, rel=1e-6)
    assert forces.front_pad[0, 1, 0] - forces.rear_pad[0, 1, 0] == pytest.approx(5.30e3, rel=1e-6)


def test_moments_at_the_front_pad_are_those_printed(boom: Condensed) -> None:
    # Printed 17.5 kN m in plane, and 4.30 kN m sideways for 1.30 kN x 3.30 m = 4.29 kN m.
    forces = carried(boom, pi / 4, 7.50e3, side=1.30e3)
    assert forces.moment[0, MOUTH, 0] == pytest.approx(-17.5e3, abs=50.0)
    assert abs(forces.moment_side[0, MOUTH, 0]) == pytest.approx(4.30e3, rel=3e-3)
    assert abs(forces.moment_side[0, MOUTH, 0]) == pytest.approx(1.30e3 * OVERHANG, rel=1e-6)


def test_the_outer_section_carries_no_moment_of_the_inner_ones_past_its_tail(
    boom: Condensed,
) -> None:
    # Both pads are the inner section's only hold: outside the overlap the outer section carries
    # F times the distance to the load, in the overlap the inner one's moment falls to nought.
    forces = carried(boom, 0.0, 5.30e3)
    foot = 5.30e3 * (4.0 + OVERHANG)
    assert forces.moment[0, :9, 0].min() == pytest.approx(-foot, rel=1e-5)
    assert forces.moment[0, 9, 0] == pytest.approx(0.0, abs=1e-3)


def test_the_thrust_enters_the_outer_section_at_the_lock(boom: Condensed) -> None:
    # 7.50 cos 45; the rope, reeved so often, adds a hundred-thousandth.
    forces = carried(boom, pi / 4, 7.50e3)
    along = 7.50e3 * cos(pi / 4)
    assert forces.lock[0, 1, 0] == pytest.approx(along, rel=1e-4)
    ahead_of_tail = boom.stations.position[0, 0] > 4.0 - OVERLAP + 1e-9
    assert np.abs(forces.axial[0, :9, 0][ahead_of_tail]).max() < 1.0
