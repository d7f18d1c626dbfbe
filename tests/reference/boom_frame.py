"""The telescoping boom as a plane frame, from the machine's data alone.

Axes: x along the unloaded base section from the heel pin, y up from it. Section i is a row of
beam elements. Its tail is hinged to the outer section; the outer section's mouth presses on it
through a stiff link. The link stands on a rigid arm set at right angles on the inner section's
axis at the mouth, so its force stays normal to the inner section however that bends.
"""

import math
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from boom_layout import GRAVITY, Axis, from_heel, places, rope_tension, section_axes
from frame import SOFT, Bar, Beam, Floats, Frame, Point
from plates import plate_sum

from boomsim.machine.model import Machine, Section


@dataclass(frozen=True, slots=True, kw_only=True)
class SectionLine:
    """One section's row of elements.

    Attributes
    ----------
    nodes : dict of float to int
        Place along the section from its tail [m] to node number, in order
    beams : range
        Element numbers from tail to front
    """

    nodes: dict[float, int]
    beams: range

    def near(self, place: float) -> int:
        """Number of the node nearest to a place from the tail [m]."""
        return self.nodes[min(self.nodes, key=lambda s: abs(s - place))]

    @property
    def tail(self) -> int:
        """Number of the rearmost node."""
        return self.nodes[min(self.nodes)]

    @property
    def front(self) -> int:
        """Number of the foremost node."""
        return self.nodes[max(self.nodes)]


@dataclass(frozen=True, slots=True, kw_only=True)
class BoomFrame:
    """The frame and where to find things in it.

    Attributes
    ----------
    frame : Frame
    lines : tuple of SectionLine
    pads : tuple of int
        Bar number of the front pad's link, for sections 1 … n
    attach, head : int
        Node on the axis above the luffing cylinder's upper pin; head sheave centre
    cylinder, rope : int
        Bar numbers
    """

    frame: Frame
    lines: tuple[SectionLine, ...]
    pads: tuple[int, ...]
    attach: int
    head: int
    cylinder: int
    rope: int


def boom_frame(
    machine: Machine,
    fractions: tuple[float, ...],
    theta: float,
    load: float,
    parts: int | None = None,
    elements: int = 12,
    droop: tuple[float, ...] | None = None,
) -> BoomFrame:
    """Build the frame of one state.

    Parameters
    ----------
    machine : Machine
    fractions : tuple of float
        [1]
    theta : float
        Angle of the unloaded base section's axis above horizontal [rad]
    load : float
        Gross load [kg]
    parts : int or None
        Parts of line
    elements : int
        For each length of section between supports [1]
    droop : tuple of float or None
        Rotation of each moving section against the outer one before loading [rad]

    Returns
    -------
    BoomFrame
    """
    turns = (0.0, *(droop or (0.0,) * len(fractions)))
    tails, fronts = places(machine, fractions)
    weight = (-GRAVITY * math.sin(theta), -GRAVITY * math.cos(theta))
    frame = Frame()
    axes = section_axes(tails, turns)
    lines = tuple(
        _section_line(frame, section, axis, stations, weight, elements)
        for section, axis, stations in zip(
            machine.boom.sections, axes, _stations(machine, tails, fronts), strict=True
        )
    )
    pads = tuple(
        joint(frame, lines[i - 1], lines[i], tails[i] - tails[i - 1], fronts[i - 1] - tails[i])
        for i in range(1, len(lines))
    )
    head, rope = _head(frame, machine, lines[-1], axes[-1], weight, theta, (load, parts))
    attach, cylinder = _base(frame, machine, lines[0], theta, weight)
    return BoomFrame(
        frame=frame, lines=lines, pads=pads, attach=attach, head=head, cylinder=cylinder, rope=rope
    )


def _stations(machine: Machine, tails: Floats, fronts: Floats) -> list[list[float]]:
    """Places along each section where something acts, from its tail, in order [m]."""
    rows = [[0.0, section.length] for section in machine.boom.sections]
    rows[0].append(machine.cylinder.attach_along)
    for i in range(1, len(rows)):
        rows[i - 1].append(float(tails[i] - tails[i - 1]))
        rows[i].append(float(fronts[i - 1] - tails[i]))
    return [_distinct(sorted(row)) for row in rows]


def _distinct(row: list[float]) -> list[float]:
    """Drop places less than a micrometre after the one before."""
    return [s for k, s in enumerate(row) if k == 0 or s - row[k - 1] > 1e-6]


def _section_line(
    frame: Frame, section: Section, axis: Axis, stations: list[float], weight: Point, elements: int
) -> SectionLine:
    """Row of beam elements with the section's weight on them."""
    sums = plate_sum(section.profile)
    modulus, line = section.material.modulus, section.mass / section.length
    points = [
        float(s) for a, b in pairwise(stations) for s in np.linspace(a, b, elements, endpoint=False)
    ] + [stations[-1]]
    nodes = {s: frame.node(axis.at(s)) for s in points}
    start = len(frame.beams)
    for first, last in pairwise(points):
        frame.beams.append(
            Beam(
                first=nodes[first],
                last=nodes[last],
                axial=modulus * sums.area,
                bending=modulus * sums.luffing,
                shear=section.material.in_shear * sums.upright,
                load=(line * weight[0], line * weight[1]),
            )
        )
    return SectionLine(nodes=nodes, beams=range(start, len(frame.beams)))


def joint(frame: Frame, outer: SectionLine, inner: SectionLine, tail: float, overlap: float) -> int:
    """Hinge the inner section's tail; link the outer's mouth to an arm on the inner section.

    Parameters
    ----------
    frame : Frame
    outer, inner : SectionLine
    tail : float
        Place of the inner section's tail on the outer section [m]
    overlap : float
        Place of the outer section's mouth on the inner section [m]

    Returns
    -------
    int
        Number of the link, whose compression is the front pad's force
    """
    frame.hinges.append((outer.near(tail), inner.tail))
    contact = inner.near(overlap)
    (x0, y0), (x1, y1) = frame.nodes[inner.tail], frame.nodes[contact]
    cos, sin = (x1 - x0) / overlap, (y1 - y0) / overlap
    end = frame.arm(contact, (x1 - sin, y1 + cos))
    frame.bars.append(Bar(first=outer.front, last=end))
    return len(frame.bars) - 1


def _head(
    frame: Frame,
    machine: Machine,
    line: SectionLine,
    axis: Axis,
    weight: Point,
    theta: float,
    hoisted: tuple[float, int | None],
) -> tuple[int, int]:
    """Head sheave with load and head mass on it, and the lead line to the winch."""
    head, front = machine.boom.head, line.front
    along = max(line.nodes) + head.ahead
    sheave = frame.arm(front, axis.at(along, -head.below))
    frame.push(sheave, _times(weight, hoisted[0] + head.mass))
    lead = frame.arm(front, axis.at(along, head.rope_above))
    hoist = machine.hoist
    winch = frame.node(from_heel(machine, hoist.winch_out, hoist.winch_up, theta))
    frame.supports[winch] = (True, True, True)
    tension = rope_tension(machine, *hoisted)
    frame.bars.append(Bar(first=lead, last=winch, axial=SOFT, tension=tension))
    return sheave, len(frame.bars) - 1


def _base(
    frame: Frame, machine: Machine, line: SectionLine, theta: float, weight: Point
) -> tuple[int, int]:
    """Heel pin and luffing cylinder, half of whose mass hangs on its upper pin."""
    cylinder = machine.cylinder
    frame.supports[line.tail] = (True, True, False)
    attach = line.near(cylinder.attach_along)
    x, y = frame.nodes[attach]
    upper = frame.arm(attach, (x, y - cylinder.attach_below))
    frame.push(upper, _times(weight, cylinder.mass / 2))
    lower = frame.node(from_heel(machine, cylinder.base_out, cylinder.base_up, theta))
    frame.supports[lower] = (True, True, True)
    frame.bars.append(Bar(first=lower, last=upper))
    return attach, len(frame.bars) - 1


def _times(vector: Point, factor: float) -> Point:
    """A plane vector made longer."""
    return vector[0] * factor, vector[1] * factor
