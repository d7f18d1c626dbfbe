"""One state of the boom solved by a finite-element library, and its answers in plain words."""

import math
from dataclasses import dataclass

import fe_opensees
import numpy as np
from boom_frame import BoomFrame, boom_frame
from boom_layout import places
from frame import Floats, Frame, FrameSolution, FrameSolver

from boomsim.machine.model import Machine


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SectionAnswer:
    """Forces in one section, at both ends of each of its elements.

    Attributes
    ----------
    place : ndarray, shape (2 elements,)
        From the section's tail [m]
    moment : ndarray, shape (2 elements,)
        In the luffing plane, positive with tension on top [N m]
    axial : ndarray, shape (2 elements,)
        Along the deflected axis, tension positive [N]
    """

    place: Floats
    moment: Floats
    axial: Floats

    def moment_at(self, place: float) -> float:
        """Bending moment at the element end nearest to a place from the tail [N m]."""
        return float(self.moment[np.argmin(abs(self.place - place))])

    @property
    def largest_moment(self) -> float:
        """The bending moment of largest size, with its sign [N m]."""
        return float(self.moment[np.argmax(abs(self.moment))])


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class BoomAnswer:
    """One state. The base frame has x from the heel pin to the axis above the cylinder, loaded.

    Attributes
    ----------
    sections : tuple of SectionAnswer
    front_pads : ndarray, shape (moving sections,)
        Outer section's mouth on the inner section, normal to the inner, upwards positive [N]
    rear_pads : ndarray, shape (moving sections,)
        Outer section on the inner section's tail, normal to the outer, downwards positive [N]
    locks : ndarray, shape (moving sections,)
        Outer section on the inner section's tail along the outer, towards the head positive [N]
    cylinder : float
        Push of the luffing cylinder, compression positive [N]
    head : (float, float)
        Head sheave centre in the base frame [m]
    tip_deflection : float
        Of the head sheave centre across the base section, negative downwards [m]
    radius : float
        From the axis of rotation to the hoist line [m]
    """

    sections: tuple[SectionAnswer, ...]
    front_pads: Floats
    rear_pads: Floats
    locks: Floats
    cylinder: float
    head: tuple[float, float]
    tip_deflection: float
    radius: float


def solve_boom(
    machine: Machine,
    fractions: tuple[float, ...],
    theta: float,
    load: float,
    parts: int | None = None,
    elements: int = 12,
    solver: FrameSolver = fe_opensees.solve_frame,
) -> BoomAnswer:
    """Solve one state.

    Parameters
    ----------
    machine : Machine
    fractions : tuple of float
        How far each moving section is out, base side first [1]
    theta : float
        Boom angle: line from heel pin to axis above the cylinder's pin, loaded [rad]
    load : float
        Gross load [kg]
    parts : int or None
        Parts of line; None for the usual number
    elements : int
        For each length of section between supports [1]
    solver : callable
        Frame to FrameSolution

    Returns
    -------
    BoomAnswer
        [m, N]
    """
    start, droop = theta, _droop(machine, fractions, np.full(len(fractions), 1.0))
    for _ in range(12):
        boom = boom_frame(machine, fractions, start, load, parts, elements, droop)
        solution = solver(boom.frame)
        chord = _chord(boom, solution)
        settled = _droop(machine, fractions, _directions(boom, solution))
        if abs(theta - chord - start) < 1e-9 and settled == droop:
            return boom_answer(machine, theta, boom, solution)
        start, droop = theta - chord, settled
    raise RuntimeError("The boom angle or the pads' contact did not settle in twelve rounds.")


def _droop(machine: Machine, fractions: tuple[float, ...], directions: Floats) -> tuple[float, ...]:
    """Rotation of each moving section in its play: clearance over overlap [rad]."""
    tails, fronts = places(machine, fractions)
    overlaps = fronts[:-1] - tails[1:]
    play = [section.clearance for section in machine.boom.sections[1:]]
    return tuple(float(turn) for turn in -np.array(play) / overlaps * directions)


def _directions(boom: BoomFrame, solution: FrameSolution) -> Floats:
    """1 where the inner section hangs forward over its pads, -1 backward, 0 if it lies on both."""
    front, rear, _ = _pad_forces(boom, solution)
    return np.asarray((np.sign(front) + np.sign(rear)) / 2)


def _chord(boom: BoomFrame, solution: FrameSolution) -> float:
    """Angle of heel pin to axis above the cylinder in the frame's own axes [rad]."""
    x, y = _place(boom.frame, solution, boom.attach)
    return math.atan2(y, x)


def _place(frame: Frame, solution: FrameSolution, node: int) -> Floats:
    """A node's place after loading [m]."""
    return np.asarray(np.array(frame.nodes[node]) + solution.displacements[node, :2])


def _pad_forces(boom: BoomFrame, solution: FrameSolution) -> tuple[Floats, Floats, Floats]:
    """Front pads, rear pads and locks as in `BoomAnswer` [N]."""
    front = -solution.bars[list(boom.pads)]
    hinges = [_hinge_force(boom, solution, i) for i in range(1, len(boom.lines))]
    return front, -np.array([across for _, across in hinges]), np.array([a for a, _ in hinges])


def _hinge_force(boom: BoomFrame, solution: FrameSolution, inner: int) -> tuple[float, float]:
    """Of the outer section on the inner's tail, along the outer's deflected axis and across [N]."""
    line = boom.lines[inner]
    outer_node, _ = boom.frame.hinges[inner - 1]
    force = solution.ends[line.beams[0], :2]
    angle = _start_angle(boom, inner - 1) + solution.displacements[outer_node, 2]
    angle += _sheared(boom, inner - 1, outer_node, solution)
    cos, sin = math.cos(angle), math.sin(angle)
    return float(force @ [cos, sin]), float(force @ [-sin, cos])


def _sheared(boom: BoomFrame, section: int, node: int, solution: FrameSolution) -> float:
    """By how much shear turns the axis away from the cross-section, just inboard of a node [rad].

    An element's chord less the mean rotation of its ends.
    """
    frame = boom.frame
    beam = next(b for b in (frame.beams[n] for n in boom.lines[section].beams) if b.last == node)
    x, y = _place(frame, solution, beam.last) - _place(frame, solution, beam.first)
    turned = solution.displacements[[beam.first, beam.last], 2].mean()
    return float(math.atan2(y, x) - _start_angle(boom, section) - turned)


def _start_angle(boom: BoomFrame, section: int) -> float:
    """A section's angle before loading [rad]."""
    line = boom.lines[section]
    (x1, y1), (x2, y2) = boom.frame.nodes[line.tail], boom.frame.nodes[line.front]
    return math.atan2(y2 - y1, x2 - x1)


def boom_answer(
    machine: Machine, theta: float, boom: BoomFrame, solution: FrameSolution
) -> BoomAnswer:
    """Put the answers into words; x is turned onto the loaded chord.

    Parameters
    ----------
    machine : Machine
    theta : float
        Boom angle [rad]
    boom : BoomFrame
    solution : FrameSolution

    Returns
    -------
    BoomAnswer
    """
    front, rear, locks = _pad_forces(boom, solution)
    x, y = _turned(_place(boom.frame, solution, boom.head), -_chord(boom, solution))
    return BoomAnswer(
        sections=tuple(_section_answer(boom, n, solution) for n in range(len(boom.lines))),
        front_pads=front,
        rear_pads=rear,
        locks=locks,
        cylinder=float(-solution.bars[boom.cylinder]),
        head=(x, y),
        tip_deflection=y + machine.boom.head.below,
        radius=machine.heel_out + x * math.cos(theta) - y * math.sin(theta),
    )


def _turned(place: Floats, angle: float) -> tuple[float, float]:
    """A plane vector turned anticlockwise."""
    cos, sin = math.cos(angle), math.sin(angle)
    return float(place[0] * cos - place[1] * sin), float(place[0] * sin + place[1] * cos)


def _section_answer(boom: BoomFrame, number: int, solution: FrameSolution) -> SectionAnswer:
    """Forces at both ends of every element of a section."""
    line = boom.lines[number]
    along = list(line.nodes)
    place = np.column_stack([along[:-1], along[1:]])
    rows = list(line.beams)
    axial = np.array([_end_axial(boom.frame, solution, row) for row in rows])
    moment = solution.moments[rows].copy()
    if number > 0:
        ahead = rows.index(_element_ahead_of_mouth(boom, number))
        moment[ahead - 1, 1] = moment[ahead, 0]
    return SectionAnswer(place=place.ravel(), moment=moment.ravel(), axial=axial.ravel())


def _element_ahead_of_mouth(boom: BoomFrame, number: int) -> int:
    """The section's element that starts where the outer section's mouth touches it.

    As the sections bend, the mouth slides some tenths of a millimetre along the inner section, so
    its force shows as a small step in moment there. The value ahead of the step is the one kept.
    """
    frame, link = boom.frame, boom.frame.bars[boom.pads[number - 1]]
    contact = next(beam.first for beam in frame.beams if beam.last == link.last)
    return next(n for n in boom.lines[number].beams if frame.beams[n].first == contact)


def _end_axial(frame: Frame, solution: FrameSolution, row: int) -> Floats:
    """Axial force at both ends of an element, along its deflected chord, tension positive [N]."""
    beam = frame.beams[row]
    way = _place(frame, solution, beam.last) - _place(frame, solution, beam.first)
    way /= np.hypot(*way)
    first, last = solution.ends[row, :2], solution.ends[row, 2:]
    return np.array([-(first @ way), last @ way])
