"""Balance of every section as a free body, worked out anew from what a solved state says.

Nothing here calls the mechanics: positions come from the state's rotations and from what its
forces stretch, weights from the machine, and forces of pads, locks and cylinder from what the
mechanics returned. All vectors are in axes of the base section, (along, above) [m] or [N]; one
configuration, one cell.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.integrate import cumulative_simpson

from boomsim.machine.model import Machine, Section
from boomsim.mechanics.boom.boom_state import State
from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.boom.internal_forces import Forces

Floats = NDArray[np.float64]
GRAVITY = 9.80665
FINE = 81
"""Points along each of a section's three segments."""


@dataclass(frozen=True, eq=False)
class Curve:
    """A section's deflected axis: places along it, direction and position there."""

    place: Floats
    rotation: Floats
    point: Floats

    def at(self, place: float) -> Floats:
        """Position of a place along the section [m]."""
        return np.array([np.interp(place, self.place, self.point[:, k]) for k in (0, 1)])

    def normal(self, place: float) -> Floats:
        """Unit vector across the axis."""
        turn = self._turn(place)
        return np.array([-np.sin(turn), np.cos(turn)])

    def tangent(self, place: float) -> Floats:
        """Unit vector along the axis."""
        turn = self._turn(place)
        return np.array([np.cos(turn), np.sin(turn)])

    def _turn(self, place: float) -> float:
        """Rotation; where a pad presses and shear turns the axis in a step, just inboard of it."""
        return float(np.interp(place - 1e-9, self.place, self.rotation))

    def centre(self) -> Floats:
        """Centre of gravity of a mass spread evenly [m]."""
        length = self.place[-1]
        place = self.place.reshape(-1, FINE)
        return np.array(
            [_summed(self.point[:, k].reshape(-1, FINE), place)[-1] / length for k in (0, 1)]
        )


def curves(boom: Condensed, state: State) -> list[Curve]:
    """Deflected axes of all sections; each starts on the outer one's axis.

    Parameters
    ----------
    boom : Condensed
    state : State

    Returns
    -------
    list of Curve
    """
    made: list[Curve] = []
    for number, section in enumerate(boom.machine.boom.sections):
        stations = boom.stations.position[0, number]
        own = slice(9 * number, 9 * number + 9)
        place, turn = _parabolas(stations, state.rotation[0, own, 0])
        _, longer = _parabolas(stations, 1.0 + strains(boom, state, section, own))
        start = np.zeros(2)
        if number:
            tail = boom.layout.tail[0, number] - boom.layout.tail[0, number - 1]
            start = made[-1].at(float(tail))
        ways = longer * np.cos(turn), longer * np.sin(turn)
        point = np.stack([_summed(way, place) for way in ways], axis=1)
        made.append(Curve(place=place.ravel(), rotation=turn.ravel(), point=start + point))
    return made


def strains(boom: Condensed, state: State, section: Section, own: slice) -> Floats:
    """Of a section's axis at its stations, from the force along it there."""
    along = state.force_along[0, own, 0] * np.cos(state.rotation[0, own, 0])
    along = along + state.force_above[0, own, 0] * np.sin(state.rotation[0, own, 0])
    if not own.start:
        along = along + boom.stations.in_overlap[0, own, 0] * state.lug_along[0, 0]
    whole, hole = (_area(section, side * 0.5) for side in (1.0, -1.0))
    return np.asarray(along / (section.material.in_tension * (whole - hole)))


def _area(section: Section, out: float) -> float:
    """Area inside a line that runs `out` of a plate's thickness outside the midline [m2]."""
    shape = section.profile
    z, y = np.array(shape.corners).T
    way = np.stack([np.roll(z, -1) - z, np.roll(y, -1) - y])
    way /= np.hypot(*way)
    turn = np.sign(np.sum(z * np.roll(y, -1) - np.roll(z, -1) * y))
    # Each plate moved outwards, and cut with the one before it.
    normal = turn * np.stack([way[1], -way[0]])
    reach = normal[0] * z + normal[1] * y + out * np.array(shape.thickness)
    before = np.roll(normal, 1, axis=1)
    bottom = before[0] * normal[1] - before[1] * normal[0]
    z, y = (
        (np.roll(reach, 1) * normal[1] - reach * before[1]) / bottom,
        (before[0] * reach - normal[0] * np.roll(reach, 1)) / bottom,
    )
    return float(abs(np.sum(z * np.roll(y, -1) - np.roll(z, -1) * y)) / 2)


def sideways(boom: Condensed, state: State) -> list[Floats]:
    """How far to the left each section's axis lies, at the places of its curve [m].

    Parameters
    ----------
    boom : Condensed
    state : State

    Returns
    -------
    list of ndarray
    """
    made: list[tuple[Floats, Floats]] = []
    for number in range(len(boom.machine.boom.sections)):
        turns = state.rotation_side[0, 9 * number : 9 * number + 9, 0]
        place, turn = _parabolas(boom.stations.position[0, number], turns)
        start = 0.0
        if number:
            tail = boom.layout.tail[0, number] - boom.layout.tail[0, number - 1]
            start = float(np.interp(tail, *made[-1]))
        made.append((place.ravel(), start + _summed(np.sin(turn), place)))
    return [left for _, left in made]


def _parabolas(stations: Floats, turns: Floats) -> tuple[Floats, Floats]:
    """Rotation between the stations: a parabola through the three of each segment.

    Shape (segments, FINE): where a pad presses, shear turns the axis in a step.
    """
    places, values = [], []
    for k in range(0, 9, 3):
        start, end = stations[k], stations[k + 2]
        if end - start < 1e-12:
            continue
        share = np.linspace(0.0, 1.0, FINE)
        first, middle, last = turns[k : k + 3]
        value = (
            first * (1 - share) * (1 - 2 * share)
            + middle * 4 * share * (1 - share)
            + last * share * (2 * share - 1)
        )
        places.append(start + share * (end - start))
        values.append(value)
    return np.array(places), np.array(values)


def _summed(way: Floats, place: Floats) -> Floats:
    """Integral from the tail, segment after segment, in one row."""
    each = cumulative_simpson(way, x=place, axis=1, initial=0.0)
    before = np.concatenate([[0.0], np.cumsum(each[:-1, -1])])
    return np.asarray((each + before[:, None]).ravel())


@dataclass(frozen=True, eq=False)
class Force:
    """A force and where it acts."""

    vector: Floats
    point: Floats

    def moment(self, about: Floats) -> float:
        """Moment, curling the boom up positive [N m]."""
        arm = self.point - about
        return float(arm[0] * self.vector[1] - arm[1] * self.vector[0])


def outer_loads(boom: Condensed, state: State) -> list[Force]:
    """What hangs on the head: load, head and the pull of the hoist rope."""
    machine, axis = boom.machine, curves(boom, state)[-1]
    length, head = float(axis.place[-1]), machine.boom.head
    front, along, across = axis.at(length), axis.tangent(length), axis.normal(length)
    sheave = front + head.ahead * along - head.below * across
    rope = front + head.ahead * along + head.rope_above * across
    angle = float(state.angle[0, 0])
    turn = np.array([[np.cos(angle), np.sin(angle)], [-np.sin(angle), np.cos(angle)]])
    winch = turn @ np.array(
        [machine.hoist.winch_out - machine.heel_out, machine.hoist.winch_up - machine.heel_up]
    )
    way = (winch - rope) / np.hypot(*(winch - rope))
    hung = float(state.load[0, 0]) + head.mass
    return [
        Force(vector=hung * gravity(state), point=sheave),
        Force(vector=float(state.line_pull[0, 0]) * way, point=rope),
    ]


def gravity(state: State) -> Floats:
    """Acceleration of free fall [m/s2]."""
    angle = float(state.angle[0, 0])
    return -GRAVITY * np.array([np.sin(angle), np.cos(angle)])


def at_heel(boom: Condensed, state: State) -> float:
    """Moment about the heel pin of all but the cylinder's push, curling up positive [N m]."""
    cylinder = boom.machine.cylinder
    lug = np.array([cylinder.attach_along, -cylinder.attach_below])
    half = Force(vector=cylinder.mass / 2 * gravity(state), point=lug)
    acting = [half, *weights(boom, state), *outer_loads(boom, state)]
    return sum(force.moment(np.zeros(2)) for force in acting)


def weights(boom: Condensed, state: State) -> list[Force]:
    """Weight of each section at its centre of gravity."""
    sections = boom.machine.boom.sections
    return [
        Force(vector=section.mass * gravity(state), point=axis.centre())
        for section, axis in zip(sections, curves(boom, state), strict=True)
    ]


def joint(boom: Condensed, state: State, forces: Forces, number: int) -> list[Force]:
    """What the outer section does to a moving one: front pad, rear pad, lock.

    The front pad stands at the outer section's mouth, slides on the inner one and presses across
    its axis; rear pad and lock hold across and along the outer section's axis.
    """
    outer, axis = curves(boom, state)[number - 1 : number + 1]
    mouth = float(boom.layout.overlap[0, number])
    place = float(boom.layout.tail[0, number] - boom.layout.tail[0, number - 1])
    front, rear, lock = (
        float(f[0, number, 0]) for f in (forces.front_pad, forces.rear_pad, forces.lock)
    )
    return [
        Force(vector=front * axis.normal(mouth), point=outer.at(float(outer.place[-1]))),
        Force(vector=-rear * outer.normal(place), point=axis.at(0.0)),
        Force(vector=lock * outer.tangent(place), point=axis.at(0.0)),
    ]


def free_body(boom: Condensed, state: State, forces: Forces, number: int) -> list[Force]:
    """All that acts on one moving section."""
    acting = [weights(boom, state)[number], *joint(boom, state, forces, number)]
    if number + 1 < len(boom.machine.boom.sections):
        reactions = joint(boom, state, forces, number + 1)
        return acting + [Force(vector=-f.vector, point=f.point) for f in reactions]
    return acting + outer_loads(boom, state)


def cylinder_arm(machine: Machine, angle: float) -> float:
    """Lever arm of the luffing cylinder about the heel pin [m]."""
    cylinder = machine.cylinder
    cos, sin = np.cos(angle), np.sin(angle)
    lug = np.array(
        [
            cylinder.attach_along * cos + cylinder.attach_below * sin,
            cylinder.attach_along * sin - cylinder.attach_below * cos,
        ]
    )
    base = np.array([cylinder.base_out - machine.heel_out, cylinder.base_up - machine.heel_up])
    way = (lug - base) / np.hypot(*(lug - base))
    return float(lug[0] * way[1] - lug[1] * way[0])
