"""Closed forms of small pieces: polygons of supports, torsion, a bent axis, a boom at its head."""

from dataclasses import replace
from math import pi, tan
from random import Random

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from making import (
    BARE_HEAD,
    FOUR_JACKS,
    NO_ROPE,
    RIGID,
    bare_boom,
    bare_machine,
    invented_crane,
    one,
    pulled_sideways,
    stiff_section,
)

from boomsim.machine.model import Disturbances, Support
from boomsim.machine.shapes.box import box
from boomsim.machine.shapes.tube import tube
from boomsim.mechanics.boom.boom_state import solve_state
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.boom.internal_forces import section_forces
from boomsim.mechanics.sections.effective_section import effective_section
from boomsim.mechanics.sections.section_properties import properties
from boomsim.mechanics.stability.masses import masses
from boomsim.mechanics.stability.tipping_lines import tipping_lines
from boomsim.rating.limits.tipping import boom_at_head


def stand(points: list[tuple[float, float]]) -> Support:
    return replace(FOUR_JACKS, points=tuple(points))


@given(st.integers(3, 9), st.floats(0.0, 6.0), st.randoms(use_true_random=False))
def test_a_regular_polygon_has_as_many_lines_as_corners_each_its_inradius_away(
    corners: int, turned: float, order: Random
) -> None:
    angles = turned + 2.0 * pi * np.arange(corners) / corners
    ring = [(3.0 * float(np.cos(a)), 3.0 * float(np.sin(a))) for a in angles]
    # Supports inside make no line, and those given twice count once.
    points = [*ring, *((0.3 * x, 0.3 * y) for x, y in ring), ring[0]]
    order.shuffle(points)
    lines = tipping_lines(stand(points))
    # Rounding only.
    assert lines.distance == pytest.approx([3.0 * np.cos(pi / corners)] * corners)
    assert np.hypot(*lines.normal.T) == pytest.approx(np.ones(corners))
    # Anticlockwise: each next normal is turned to the left by the same angle.
    after = np.roll(lines.normal, -1, axis=0)
    across = lines.normal[:, 0] * after[:, 1] - lines.normal[:, 1] * after[:, 0]
    assert across == pytest.approx([np.sin(2.0 * pi / corners)] * corners)
    assert np.roll(lines.start, -1, axis=0) == pytest.approx(lines.end)


def test_a_support_on_the_line_between_two_others_parts_it_no_further() -> None:
    lines = tipping_lines(stand([(3, 3), (0, 3), (-3, 3), (-3, -3), (0, -3), (3, -3), (3, 0)]))
    assert lines.distance == pytest.approx([3.0] * 4)


def test_the_torsion_constant_is_that_of_bredt() -> None:
    # Thin cells: J = t a^3 for a square of midline a; J = pi d^3 t / 4 for a tube of mean d, whose
    # polygon is as round as a circle to a part in a hundred.
    square = properties(box(0.31, width=0.31, top=0.01, bottom=0.01, web=0.01))
    assert square.torsion_constant == pytest.approx(0.01 * 0.3**3)
    round_one = properties(tube(0.31, wall=0.01))
    assert round_one.torsion_constant == pytest.approx(pi * 0.3**3 * 0.01 / 4.0, rel=1e-2)


def test_unequal_walls_hold_torsion_by_the_sum_of_length_over_thickness() -> None:
    # J = 4 A^2 / sum(l / t), on midlines of 0.4 m by 10 mm and 0.2 m by 20 mm.
    flat = properties(box(0.21, width=0.42, top=0.01, bottom=0.01, web=0.02))
    by_hand = 4.0 * (0.4 * 0.2) ** 2 / (2 * 0.4 / 0.01 + 2 * 0.2 / 0.02)
    assert flat.torsion_constant == pytest.approx(by_hand)


def test_a_boom_as_stiff_sideways_as_upwards_gets_no_torsion_from_bending() -> None:
    crane = invented_crane()
    square = box(0.6, width=0.6, top=0.007, bottom=0.007, web=0.007)
    sections = tuple(replace(s, profile=square) for s in crane.boom.sections)
    even = replace(crane, boom=replace(crane.boom, sections=sections))
    boom = condense(even, extension=np.array([[1.0, 0.7, 0.4]]))
    state = solve_state(
        boom, load=one(2000.0), parts=10, angle=one(0.9), disturbances=Disturbances(side_pull=0.05)
    )
    forces = section_forces(boom, state=state)
    assert np.abs(forces.moment[0, :, 0]).max() > 0.0
    # What is left is the pull below the axis at the head: 2000 kg x 5 % x 9.80665 x 0.25 m.
    hung = 2000.0 * 0.05 * 9.80665 * 0.25
    assert np.abs(forces.torsion) == pytest.approx(hung * np.ones_like(forces.torsion))


def test_bending_both_ways_twists_the_foot_of_a_flat_cantilever_by_p_q_l3_over_3() -> None:
    # dT/ds = M_up M_side (1/EI_up - 1/EI_side) with moments P (L - s) and Q (L - s), first order.
    length, load, share = 12.0, 200.0, 0.1
    flat = box(0.2, width=0.6, top=0.01, bottom=0.01, web=0.01)
    section = replace(stiff_section(length, stiffness=1e8), profile=flat)
    boom = bare_boom((section,))
    state = solve_state(
        boom, load=one(load), parts=NO_ROPE, angle=one(0.0),
        disturbances=Disturbances(side_pull=share),
    )  # fmt: skip
    shape, modulus = properties(flat), section.material.modulus
    weight = load * 9.80665
    compliance = 1.0 / (modulus * shape.i_y) - 1.0 / (modulus * shape.i_z)
    by_hand = weight * share * weight * length**3 / 3.0 * compliance
    found = float(section_forces(boom, state=state).torsion[0, 0, 0])
    assert abs(compliance * modulus * shape.i_z) > 1.0
    # Second order: the boom droops by some parts in a hundred of its length at most.
    assert abs(found) == pytest.approx(abs(by_hand), rel=0.02)


@pytest.mark.parametrize("load", [500.0, 2000.0])
def test_the_bent_axis_is_everywhere_one_metre_long_to_the_metre(load: float) -> None:
    # The cosine and the sine of its turn, whatever series gives them: within 1e-7 to 0.2 rad.
    boom = condense(invented_crane(), extension=np.array([[1.0, 1.0, 1.0]]))
    state = solve_state(boom, load=one(load), parts=10, angle=one(0.3))
    turned = np.abs(state.rotation)
    assert 0.02 < turned.max() < 0.2
    assert state.cos**2 + state.sin**2 == pytest.approx(1.0, abs=2e-7)
    assert state.cos == pytest.approx(np.cos(state.rotation), abs=1e-7)
    assert state.sin == pytest.approx(np.sin(state.rotation), abs=1e-7)


@pytest.mark.parametrize("heel", [-1.5, 0.0, 0.8])
def test_a_boom_referred_to_its_head_does_not_feel_where_its_heel_is(heel: float) -> None:
    # ISO 4305: an even bar of 3 t, 12 m long, head 0.5 m beyond it: F = 3000 x 6/12.5.
    bar = stiff_section(12.0, stiffness=RIGID, mass=3000.0)
    machine = replace(bare_machine((bar,), head=replace(BARE_HEAD, ahead=0.5)), heel_out=heel)
    boom = condense(machine, extension=np.zeros((1, 0)))
    state = solve_state(boom, load=one(1000.0), parts=NO_ROPE, angle=one(0.7))
    placed = masses(boom, state=state, counterweight=machine.counterweights[0])
    # A rigid bar: what its stiffness of 1e15 N m2 lets it bend.
    assert boom_at_head(machine, placed=placed) == pytest.approx(3000.0 * 6.0 / 12.5, rel=1e-6)


@given(st.floats(0.0, 0.2))
def test_sideways_a_cantilever_sways_by_q_l3_over_3_ei_whatever_turns_it(share: float) -> None:
    # Upright and loaded by next to nothing along it, so that thrust enlarges nothing.
    length, pull = 10.0, 1000.0 * share
    bar = stiff_section(length, stiffness=2e8)
    state = pulled_sideways(bare_boom((bar,)), across=pull, along=1e-3 * max(pull, 1.0))
    # The series of Simpson's rule is exact for a straight moment; thrust: a part in a million.
    assert state.head_left[0, 0] == pytest.approx(pull * length**3 / 3.0 / 2e8, rel=1e-5, abs=1e-9)
    assert tan(float(state.rotation_side[0, -1, 0])) == pytest.approx(
        pull * length**2 / 2.0 / 2e8, rel=1e-5, abs=1e-9
    )


@pytest.mark.parametrize("strength", [355e6, 690e6, 960e6])
def test_the_wall_that_a_thin_tube_is_told_to_take_is_taken(strength: float) -> None:
    # EN 1993-1-1:2005 Table 5.2: class 3 to d / t = 90 epsilon^2 = 90 x 235 MPa / f_y.
    with pytest.raises(ValueError, match="buckles as a shell") as refusal:
        effective_section(properties(tube(0.4, wall=0.003)), yield_stress=strength)
    wall = float(str(refusal.value).split("Take a wall of ")[1].split(" mm")[0])
    # Told to a tenth of a millimetre.
    assert wall == pytest.approx(400.0 / (90.0 * 235e6 / strength), abs=0.06)
    assert effective_section(properties(tube(0.4, wall=wall * 1e-3 + 1e-4)), yield_stress=strength)


def test_the_middle_of_a_swayed_bar_is_q_l3_over_8_ei_to_the_side() -> None:
    # w(s) = Q s^2 (3 L - s) / (6 E I), averaged over the length: Q L^3 / (8 E I).
    length, pull, stiffness = 10.0, 150.0, 2e8
    boom = bare_boom((stiff_section(length, stiffness=stiffness, mass=1.0),))
    state = pulled_sideways(boom, across=pull, along=1e-3 * pull)
    placed = masses(boom, state=state, counterweight=boom.machine.counterweights[0])
    # Simpson's rule is exact for cubics; a thrust of a thousandth of the pull adds next to nothing.
    assert placed.left[0, 0, 0] == pytest.approx(pull * length**3 / 8.0 / stiffness, rel=1e-5)
    assert placed.head_left[0, 0] == pytest.approx(pull * length**3 / 3.0 / stiffness, rel=1e-5)
