"""The finite-element models are themselves checked, against closed forms and printed values.

Sources beside each test. AISC: Specification for Structural Steel Buildings, ANSI/AISC 360,
Commentary to Chapter C, benchmark problems (the set without shear deformation).

Source: The finite-element models, checked themselves. Status: worked.
"""

import math
from collections.abc import Callable
from functools import partial
from itertools import pairwise

import fe_opensees
import fe_pynite
import numpy as np
import pytest
from boom_frame import SectionLine, joint
from frame import Beam, Frame, FrameSolver
from plates import plate_sum

from boomsim.machine.model import Profile

INCH, KIP = 0.0254, 4448.2216152605
STIFF = 1e12
BOTH = pytest.mark.parametrize("solver", [fe_opensees.solve_frame, fe_pynite.solve_frame])


def row(
    frame: Frame, points: np.ndarray, bending: float, load: tuple[float, float] = (0.0, 0.0)
) -> SectionLine:
    """A straight row of beams along x, with little stretch."""
    nodes = {float(x - points[0]): frame.node((x, 0.0)) for x in points}
    start, numbers = len(frame.beams), list(nodes.values())
    for a, b in pairwise(numbers):
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
    """AISC case 2: 1 kip across, 28 ft. Tolerance 0.6 %: three printed figures. Status: read."""
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
    """AISC case 1: 0.2 kip/ft on 28 ft. Tolerance 0.6 %: three printed figures. Status: read."""
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
    """3 (tan u - u)/u^3: Timoshenko & Gere, Theory of Elastic Stability, 1.11. Figures exact.

    Status: read.
    """
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
    Status: from memory.
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
    Status: from memory.
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

    Tolerance 0.05 %: weight acts at the nodes of 32 elements. Status: read.
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
