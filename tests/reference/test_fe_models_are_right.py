"""The finite-element models are themselves checked, against closed forms and printed values.

Sources beside each test. AISC: Specification for Structural Steel Buildings, ANSI/AISC 360,
Commentary to Chapter C, benchmark problems (the set without shear deformation).
"""

import math
from collections.abc import Callable
from dataclasses import replace
from functools import partial

import fe_opensees
import fe_pynite
import numpy as np
import pytest
from boom_frame import (
    GRAVITY,
    BoomFrame,
    SectionLine,
    boom_frame,
    joint,
    places,
    rope_tension,
)
from boom_states import boom_answer, solve_boom
from frame import Beam, Frame, FrameSolution, FrameSolver, NoSolution
from plates import plate_sum
from random_machines import State, boom_length, random_machine, random_state

from boomsim.machine.model import Machine, Profile

INCH, KIP = 0.0254, 4448.2216152605
STIFF = 1e12
BOTH = pytest.mark.parametrize("solver", [fe_opensees.solve_frame, fe_pynite.solve_frame])


def row(
    frame: Frame, points: np.ndarray, bending: float, load: tuple[float, float] = (0.0, 0.0)
) -> SectionLine:
    """A straight row of beams along x, with little stretch."""
    nodes = {float(x - points[0]): frame.node((x, 0.0)) for x in points}
    start, numbers = len(frame.beams), list(nodes.values())
    for a, b in zip(numbers, numbers[1:], strict=False):
        frame.beams.append(Beam(first=a, last=b, axial=STIFF, bending=bending, load=load))
    return SectionLine(nodes=nodes, beams=range(start, len(frame.beams)))


def cantilever(
    length: float,
    bending: float,
    tip: tuple[float, float],
    load: tuple[float, float] = (0.0, 0.0),
    count: int = 32,
) -> Frame:
    """Clamped at x = 0, `tip` and `load` are x and y forces."""
    frame = Frame()
    line = row(frame, np.linspace(0, length, count + 1), bending, load)
    frame.supports[line.tail] = (True, True, True)
    frame.push(line.front, tip)
    return frame


exact = partial(fe_opensees.solve_frame, settled=1e-13)


def drop(frame: Frame, solver: FrameSolver = exact) -> float:
    """How far the last node sinks [m]."""
    return float(-solver(frame).displacements[-1, 1])


def buckling_load(frame_at: Callable[[float], Frame], guess: float) -> float:
    """Where the inverse of a small side deflection comes to zero, from 98 and 99 % of a guess."""
    shares = np.array([0.98, 0.99])
    inverse = [1 / drop(frame_at(share * guess)) for share in shares]
    slope = (inverse[1] - inverse[0]) / (shares[1] - shares[0])
    return float(guess * (shares[0] - inverse[0] / slope))


@BOTH
@pytest.mark.parametrize(
    ("thrust", "moment", "sway"),
    [(0, 336, 0.901), (100, 469, 1.33), (150, 598, 1.75), (200, 848, 2.56)],
)
def test_a_cantilever_with_thrust_gives_the_printed_moment_and_sway(
    solver: FrameSolver, thrust: float, moment: float, sway: float
) -> None:
    """AISC case 2: 1 kip across, 28 ft. Tolerance 0.6 %: three printed figures."""
    bending = 29000 * KIP / INCH**2 * 484 * INCH**4
    solution = solver(cantilever(28 * 12 * INCH, bending, (-thrust * KIP, -KIP)))
    assert solution.moments[0, 0] / (KIP * INCH) == pytest.approx(moment, rel=6e-3)
    assert -solution.displacements[-1, 1] / INCH == pytest.approx(sway, rel=6e-3)


@BOTH
@pytest.mark.parametrize(
    ("thrust", "moment", "sag"), [(0, 235, 0.197), (150, 269, 0.224), (300, 313, 0.261)]
)
def test_a_simple_span_with_thrust_gives_the_printed_moment_and_sag(
    solver: FrameSolver, thrust: float, moment: float, sag: float
) -> None:
    """AISC case 1: 0.2 kip/ft on 28 ft. Tolerance 0.6 %: three printed figures."""
    bending = 29000 * KIP / INCH**2 * 484 * INCH**4
    frame = Frame()
    points = np.linspace(0, 28 * 12 * INCH, 33)
    line = row(frame, points, bending, (0.0, -0.2 * KIP / (12 * INCH)))
    frame.supports[line.tail], frame.supports[line.front] = (
        (True, True, False),
        (False, True, False),
    )
    frame.push(line.front, (-thrust * KIP, 0.0))
    solution = solver(frame)
    assert -solution.moments[16, 0] / (KIP * INCH) == pytest.approx(moment, rel=6e-3)
    assert -solution.displacements[16, 1] / INCH == pytest.approx(sag, rel=6e-3)


@pytest.mark.parametrize(
    ("share", "factor"), [(0.1, 1.10965), (0.3, 1.42281), (0.5, 1.98629), (0.8, 4.94339)]
)
def test_thrust_amplifies_a_tip_load_as_timoshenko_says(share: float, factor: float) -> None:
    """3 (tan u - u)/u^3: Timoshenko & Gere, Theory of Elastic Stability, 1.11. Figures exact."""
    thrust = share * math.pi**2 / 4
    with_thrust = drop(cantilever(1.0, 1.0, (-thrust, -1e-4), count=128))
    assert with_thrust / (1e-4 / 3) == pytest.approx(factor, rel=1e-4)


@pytest.mark.parametrize(("share", "factor"), [(0.3, 1.41069), (0.5, 1.95740), (0.8, 4.82397)])
def test_thrust_amplifies_a_spread_load_as_its_closed_form(share: float, factor: float) -> None:
    """(8/u^4)(1 + u tan u - u^2/2 - sec u): solved from the differential equation, exact."""
    thrust = share * math.pi**2 / 4
    with_thrust = drop(cantilever(1.0, 1.0, (-thrust, 0.0), (0.0, -1e-4), count=128))
    assert with_thrust / (1e-4 / 8) == pytest.approx(factor, rel=1e-4)


@pytest.mark.parametrize(("load", "sink"), [(0.2, 0.06636), (0.5, 0.16214), (1.0, 0.30172)])
def test_large_bending_follows_the_elastica(load: float, sink: float) -> None:
    """Bisshopp & Drucker, Quarterly of Applied Mathematics 3 (1945): from memory. Exact figures.

    Tolerance 0.02 %: the closed form forbids stretch and the last printed figure is rounded.
    """
    assert drop(cantilever(1.0, 1.0, (0.0, -load), count=64)) == pytest.approx(sink, rel=2e-4)


@BOTH
def test_a_stepped_cantilever_sinks_as_castigliano_says(solver: FrameSolver) -> None:
    """(Q/3) sum((s_i^3 - s_(i-1)^3)/(EI)_i) = 153.0 mm for 10 kN; a thousandth of it here.

    Castigliano's theorem, exact for small bending.
    """
    frame = Frame()
    place, node = 0.0, frame.node((0.0, 0.0))
    frame.supports[node] = (True, True, True)
    for length, bending in ((6, 90e6), (5, 50e6), (4, 20e6)):
        for _ in range(4):
            place += length / 4
            end = frame.node((place, 0.0))
            frame.beams.append(Beam(first=node, last=end, axial=STIFF, bending=bending))
            node = end
    frame.push(node, (0.0, -10.0))
    assert drop(frame, solver) == pytest.approx(153.0e-6, rel=1e-5)


@pytest.mark.parametrize(
    ("stiff_part", "factor"), [(1 / 3, 0.3553), (1 / 2, 0.4189), (2 / 3, 0.4713)]
)
def test_a_stepped_column_buckles_at_the_tabulated_load(stiff_part: float, factor: float) -> None:
    """Clamped below, free above, EI below twice that above: P L^2/(pi^2 EI_above).

    Roark's Formulas for Stress and Strain, elastic stability, stepped bar: from memory.
    Tolerance 0.05 %: four printed figures, and the load is found along a straight line.
    """

    def frame_at(thrust: float) -> Frame:
        frame = Frame()
        node = frame.node((0.0, 0.0))
        frame.supports[node] = (True, True, True)
        heights = np.append(np.linspace(0, stiff_part, 17), np.linspace(stiff_part, 1, 17)[1:])
        for x in heights[1:]:
            bending = 2.0 if x < stiff_part + 1e-9 else 1.0
            end = frame.node((float(x), 0.0))
            frame.beams.append(Beam(first=node, last=end, axial=STIFF, bending=bending))
            node = end
        frame.push(node, (-thrust, -1e-7))
        return frame

    found = buckling_load(frame_at, factor * math.pi**2)
    assert found / math.pi**2 == pytest.approx(factor, rel=5e-4)


def test_a_clamped_column_buckles_under_its_own_weight_as_greenhill_found() -> None:
    """q L^3/EI = 7.8373. Greenhill, Proceedings of the Cambridge Philosophical Society 4 (1881).

    Tolerance 0.05 %: weight acts at the nodes of 32 elements.
    """

    def frame_at(weight: float) -> Frame:
        return cantilever(1.0, 1.0, (0.0, -1e-7), (-weight, 0.0))

    assert buckling_load(frame_at, 7.8373) == pytest.approx(7.8373, rel=5e-4)


def two_sections(force: float, tail: float) -> tuple[Frame, SectionLine, SectionLine]:
    """Outer section 0 to 5 m, clamped; inner section 5 m long from `tail`; no weight."""
    frame = Frame()
    outer = row(frame, _with(np.linspace(0, 5, 11), tail), 20e6)
    inner = row(frame, _with(np.linspace(tail, tail + 5, 11), 5.0), 8e6)
    frame.supports[outer.tail] = (True, True, True)
    joint(frame, outer, inner, tail, 5 - tail)
    frame.push(inner.front, (0.0, -force))
    return frame, outer, inner


def _with(points: np.ndarray, extra: float) -> np.ndarray:
    """Points with one more among them."""
    return np.unique(np.append(points, extra))


@BOTH
@pytest.mark.parametrize(
    ("tail", "front_pad", "rear_pad", "sink"),
    [(4.0, 50e3, 40e3, 0.1381667), (3.0, 25e3, 15e3, 0.0915833)],
)
def test_two_sections_on_rigid_pads_follow_the_closed_form(
    solver: FrameSolver, tail: float, front_pad: float, rear_pad: float, sink: float
) -> None:
    """10 kN at the tip, a thousandth of it here so that bending stays small; exact figures."""
    frame, outer, inner = two_sections(10.0, tail)
    solution = solver(frame)
    assert -solution.bars[0] == pytest.approx(front_pad / 1000, rel=1e-5)
    assert -solution.ends[inner.beams[0], 1] == pytest.approx(rear_pad / 1000, rel=1e-5)
    assert -solution.displacements[inner.front, 1] == pytest.approx(sink / 1000, rel=1e-4)
    assert solution.moments[outer.beams[0], 0] == pytest.approx(10.0 * (tail + 5), rel=1e-5)


def test_two_sections_slope_at_the_tip_as_the_closed_form() -> None:
    """26.5 mrad under 10 kN at 9 m; a thousandth of it here."""
    frame, _, inner = two_sections(10.0, 4.0)
    turn = fe_opensees.solve_frame(frame).displacements[inner.front, 2]
    assert -turn == pytest.approx(26.5e-6, rel=1e-4)


def test_a_front_pad_pushes_at_right_angles_to_the_bent_inner_section() -> None:
    """The mouth's force on the inner section has no part along its axis, far beyond small bending.

    Tolerance 0.1 %: the mouth slides along the inner section a little, which tilts the link.
    """
    frame, _, inner = two_sections(100e3, 4.0)
    solution = fe_opensees.solve_frame(frame)
    node = inner.near(1.0)
    before = next(n for n in inner.beams if frame.beams[n].last == node)
    force = solution.ends[before, 2:] + solution.ends[before + 1, :2]
    turn = solution.displacements[node, 2]
    along = force @ [math.cos(turn), math.sin(turn)]
    assert turn < -0.1
    assert abs(along) < 1e-3 * np.hypot(*force)
    assert np.hypot(*force) == pytest.approx(-solution.bars[0], rel=1e-3)


def test_plates_of_a_square_tube_add_up_by_hand() -> None:
    """Midline square of 0.4 m, 10 mm: A 0.016 m2, I = 2 (t h^3/12 + h t (h/2)^2 + h t^3/12)."""
    h, t = 0.4, 0.01
    corners = ((0.0, 0.0), (h, 0.0), (h, h), (0.0, h))
    found = plate_sum(Profile(corners=corners, thickness=(t,) * 4))
    second = 2 * (t * h**3 / 12 + h * t * (h / 2) ** 2 + h * t**3 / 12)
    assert (found.area, found.height) == pytest.approx((0.016, 0.2))
    assert (found.luffing, found.sideways) == pytest.approx((second, second))
    assert found.torsion == pytest.approx(h**3 * t)


def test_rope_tension_follows_the_tackle_formula() -> None:
    """E (1 - E^N)/(1 - E) is 3.236 for E 0.917, N 4.

    Pipeline Rules of Thumb Handbook, rigging: the printed value of its formula.
    """
    machine = random_machine(np.random.default_rng(1))
    machine = replace(machine, hoist=replace(machine.hoist, sheave_efficiency=0.917))
    assert 1000 * GRAVITY / rope_tension(machine, 1000.0, 4) == pytest.approx(3.236, rel=2e-4)


def states(seeds: range, clearance: bool = False) -> list[tuple[Machine, State]]:
    """Random machines, each in a random state."""
    found = []
    for seed in seeds:
        rng = np.random.default_rng(seed)
        machine = random_machine(rng, clearance=clearance)
        found.append((machine, random_state(machine, rng)))
    return found


@pytest.mark.parametrize("seed", range(6))
def test_finer_elements_change_nothing_that_matters(seed: int) -> None:
    """Tolerance 0.02 %: a fifth of the least that boomsim is held to."""
    machine, state = states(range(seed, seed + 1))[0]
    coarse, fine = (
        solve_boom(machine, state.fractions, state.theta, state.load, elements=n) for n in (12, 24)
    )
    assert coarse.tip_deflection == pytest.approx(fine.tip_deflection, rel=2e-4)
    assert coarse.front_pads == pytest.approx(fine.front_pads, rel=2e-4)
    for one, other in zip(coarse.sections, fine.sections, strict=True):
        assert one.largest_moment == pytest.approx(other.largest_moment, rel=2e-4)


@pytest.mark.parametrize("seed", range(6))
def test_the_moment_at_each_mouth_balances_all_that_lies_ahead(seed: int) -> None:
    """Weights, load and rope taken by hand on the deflected shape. Tolerance 0.01 %: solver."""
    machine, state = states(range(seed, seed + 1), clearance=True)[0]
    boom = boom_frame(machine, state.fractions, state.theta, state.load)
    solution = fe_opensees.solve_frame(boom.frame)
    answer = boom_answer(machine, state.theta, boom, solution)
    tails, fronts = places(machine, state.fractions)
    for i in range(1, len(tails)):
        moment = moment_ahead(boom, solution, i, boom.lines[i].near(fronts[i - 1] - tails[i]))
        assert answer.sections[i].moment_at(fronts[i - 1] - tails[i]) == pytest.approx(
            moment, rel=1e-4
        )


def moment_ahead(boom: BoomFrame, solution: FrameSolution, section: int, pivot: int) -> float:
    """Moment about a node of loads on nodes ahead of it, tension on top positive [N m].

    Of the sections further out and of this section's part in front of the pivot, with the force
    at the next section's tail where that reaches back behind the pivot.
    """
    frame = boom.frame
    moved = np.array(frame.nodes) + solution.displacements[:, :2]
    total = 0.0
    beams = [n for line in boom.lines[section + 1 :] for n in line.beams]
    own = boom.lines[section]
    at = next(n for n in own.beams if frame.beams[n].first == pivot)
    for number in [*range(at, own.beams[-1] + 1), *beams]:
        beam = frame.beams[number]
        (x1, y1), (x2, y2) = frame.nodes[beam.first], frame.nodes[beam.last]
        weight = np.array(beam.load) * math.hypot(x2 - x1, y2 - y1)
        middle = (moved[beam.first] + moved[beam.last]) / 2
        total -= _cross(middle - moved[pivot], weight)
    total -= _cross(moved[boom.head] - moved[pivot], np.array(frame.forces[boom.head][:2]))
    if section + 1 < len(boom.lines):
        hinge = boom.frame.hinges[section][0]
        if frame.nodes[hinge][0] < frame.nodes[pivot][0]:
            held = solution.ends[boom.lines[section + 1].beams[0], :2]
            total -= _cross(moved[hinge] - moved[pivot], held)
    rope = frame.bars[boom.rope]
    way = moved[rope.last] - moved[rope.first]
    return total - _cross(moved[rope.first] - moved[pivot], rope.tension * way / np.hypot(*way))


def _cross(arm: np.ndarray, force: np.ndarray) -> float:
    """Moment of a force, anticlockwise."""
    return float(arm[0] * force[1] - arm[1] * force[0])


@pytest.mark.parametrize("seed", range(6))
def test_the_cylinder_holds_the_moment_about_the_heel_pin(seed: int) -> None:
    """Push times lever is the moment of all loads on the deflected boom about the heel pin."""
    machine, state = states(range(seed, seed + 1))[0]
    boom = boom_frame(machine, state.fractions, state.theta, state.load)
    solution = fe_opensees.solve_frame(boom.frame)
    frame, moved = boom.frame, np.array(boom.frame.nodes) + solution.displacements[:, :2]
    bar = frame.bars[boom.cylinder]
    way = moved[bar.last] - moved[bar.first]
    lever = _cross(moved[bar.last], way / np.hypot(*way))
    wanted = moment_ahead(boom, solution, 0, boom.lines[0].tail)
    wanted -= _cross(moved[bar.last], np.array(frame.forces[bar.last][:2]))
    assert -solution.bars[boom.cylinder] * lever == pytest.approx(wanted, rel=1e-4)


@pytest.mark.parametrize("seed", range(6))
def test_the_boom_angle_is_that_of_the_loaded_base_section(seed: int) -> None:
    """The radius follows from head place and angle, the cylinder's pins stay where they are."""
    machine, state = states(range(seed, seed + 1))[0]
    found = solve_boom(machine, state.fractions, state.theta, state.load)
    x, y = found.head
    assert found.tip_deflection == pytest.approx(y + machine.boom.head.below)
    along = machine.heel_out + x * math.cos(state.theta) - y * math.sin(state.theta)
    assert found.radius == pytest.approx(along)


def test_play_in_the_pads_lets_the_head_sink_by_the_angle_it_allows() -> None:
    """Clearance over overlap, times the distance from the inner tail to the head.

    Tolerance 3 %: the extra sinking itself bends the boom a little more.
    """
    rng = np.random.default_rng(3)
    machine = random_machine(rng, sections=2)
    sections = machine.boom.sections
    loose_section = replace(sections[1], clearance=0.005)
    loose = replace(machine, boom=replace(machine.boom, sections=(sections[0], loose_section)))
    tight_tip, loose_tip = (
        solve_boom(one, (0.9,), 0.5, 2000.0).tip_deflection for one in (machine, loose)
    )
    tails, fronts = places(machine, (0.9,))
    turn = 0.005 / (fronts[0] - tails[1])
    reach = boom_length(machine, (0.9,)) - tails[1]
    assert tight_tip - loose_tip == pytest.approx(turn * reach, rel=0.03)


@pytest.mark.parametrize("seed", range(4))
def test_the_two_libraries_agree_on_random_booms(seed: int) -> None:
    """Tolerance 0.3 % on moments, 1 % on deflection: P-delta takes rotations as small."""
    machine, state = states(range(seed + 1, seed + 2))[0]
    one = solve_boom(machine, state.fractions, state.theta, state.load)
    other = solve_boom(
        machine, state.fractions, state.theta, state.load, elements=2, solver=fe_pynite.solve_frame
    )
    assert other.tip_deflection == pytest.approx(one.tip_deflection, rel=1e-2)
    assert other.cylinder == pytest.approx(one.cylinder, rel=3e-3)
    for a, b in zip(one.sections, other.sections, strict=True):
        assert b.largest_moment == pytest.approx(a.largest_moment, rel=3e-3)


def test_a_boom_beyond_buckling_has_no_answer() -> None:
    """Four times its elastic critical load, upright: no number may come back that looks usual."""
    machine = random_machine(np.random.default_rng(1))
    out = (1.0,) * (len(machine.boom.sections) - 1)
    try:
        found = solve_boom(machine, out, 1.3, 4e6)
    except (NoSolution, RuntimeError):
        return
    assert abs(found.tip_deflection) > 0.2 * boom_length(machine, out)
