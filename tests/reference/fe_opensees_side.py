"""The boom pulled sideways: corotational beams in space, by OpenSeesPy.

The plane frame is taken into space. z points to the right of one who looks along the boom with
y up. The base section is clamped against turning sideways and twisting at the heel pin; the
luffing cylinder's push stays in the plane of the boom. Each front pad is a pair of links, left and
right, which also hand on the twist; a third link holds the mouth sideways.
"""

from dataclasses import dataclass

import numpy as np
from boom_frame import BoomFrame, boom_frame
from fe_opensees import prepare
from frame import RIGID_AXIAL, RIGID_BENDING, Bar, Floats, NoSolution, nodal_loads
from plates import plate_sum
from programs import program

from boomsim.machine.model import Machine, Section

ops = program("openseespy.opensees")

POISSON = 0.3
"""Poisson's ratio of steel [1]."""
RIGID_SHEAR = 1e6
"""So many times the shear area stands for a section that does not shear [1]."""
HALF_WIDTH = 0.3
"""Distance of a front pad's links from the middle [m]: alone, it sets how twist is handed on."""
STEPS = (5, 50)
"""Load steps, and more for a second try: a big step can throw the iteration off [1]."""
Place = tuple[float, float, float]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SideAnswer:
    """One state with a side load. Axes as in `BoomAnswer`, z to the right.

    Attributes
    ----------
    luffing, sideways : tuple of ndarray, each of shape (2 elements,)
        For each section, moments at both ends of its elements: positive with tension on top, and
        with tension on the left [N m]
    twist : tuple of ndarray, each of shape (elements,)
        Torsion moment [N m]
    place : tuple of ndarray, each of shape (2 elements,)
        From the section's tail [m]
    front_pads, front_sides, rear_sides : ndarray, shape (moving sections,)
        Outer on inner section: up at the mouth; to the left at the mouth; to the right at the
        tail [N]
    head : ndarray, shape (3,)
        Head sheave centre; y from the line through heel pin and cylinder [m]
    """

    luffing: tuple[Floats, ...]
    sideways: tuple[Floats, ...]
    twist: tuple[Floats, ...]
    place: tuple[Floats, ...]
    front_pads: Floats
    front_sides: Floats
    rear_sides: Floats
    head: Floats


def solve_side(
    machine: Machine,
    fractions: tuple[float, ...],
    theta: float,
    load: float,
    side: float,
    elements: int = 12,
) -> SideAnswer:
    """Solve one state with a horizontal force across the boom at the head sheave centre.

    Parameters
    ----------
    machine : Machine
    fractions : tuple of float
        [1]
    theta : float
        Boom angle [rad]
    load : float
        Gross load [kg]
    side : float
        To the right positive [N]
    elements : int
        For each length of section between supports [1]

    Returns
    -------
    SideAnswer
    """
    start = theta
    for _ in range(12):
        boom = boom_frame(machine, fractions, start, load, elements=elements)
        links = _solve(machine, boom, side)
        x, y, _ = _place(boom, boom.attach)
        chord = float(np.arctan2(y, x))
        if abs(theta - start - chord) < 1e-9:
            return _answer(boom, links, chord)
        start = theta - chord
    raise RuntimeError("The boom angle did not settle in twelve rounds.")


def _solve(machine: Machine, boom: BoomFrame, side: float) -> list[list[int]]:
    """Solve the frame in space; returns each joint's three links."""
    for steps in STEPS:
        links = _build(machine, boom)
        _load(boom, side)
        prepare(1 / steps, 1e-8)
        if ops.analyze(steps) == 0:
            return links
    raise NoSolution("OpenSees found no equilibrium: the load may be beyond buckling.")


def _build(machine: Machine, boom: BoomFrame) -> list[list[int]]:
    """Nodes, elements and supports; returns each joint's links: left, right, sideways."""
    ops.wipe()
    ops.model("basic", "-ndm", 3, "-ndf", 6)
    frame = boom.frame
    ends = {frame.bars[pad].last for pad in boom.pads}
    for tag, (x, y) in enumerate(frame.nodes):
        if tag not in ends:
            ops.node(tag, x, y, 0.0)
    ops.geomTransf("Corotational", 1, 0, 0, 1)
    ops.geomTransf("Corotational", 2, 1, 0, 0)
    _add_sections(machine, boom)
    sections = {number for line in boom.lines for number in line.beams}
    for tag, beam in enumerate(frame.beams):
        if tag not in sections and beam.last not in ends:
            _add_arm(tag, beam.first, beam.last, 1)
    for leader, follower in frame.hinges:
        ops.equalDOF(leader, follower, 1, 2, 3)
    joints = [_add_pads(boom, pad) for pad in boom.pads]
    _hold(boom)
    return joints


def _add_sections(machine: Machine, boom: BoomFrame) -> None:
    """Every section's row of beams."""
    for number, (section, line) in enumerate(
        zip(machine.boom.sections, boom.lines, strict=True), start=1
    ):
        ops.section("Elastic", number, *_stiffness(section))
        ops.beamIntegration("Lobatto", number, number, 3)
        for tag in line.beams:
            beam = boom.frame.beams[tag]
            ops.element("forceBeamColumn", tag, beam.first, beam.last, 1, number)


def _stiffness(section: Section) -> tuple[float, ...]:
    """E, A, I in the luffing plane and sideways, G, J, shares that shear upright and across."""
    sums, modulus = plate_sum(section.profile), section.material.modulus
    shear = modulus / (2 * (1 + POISSON))
    stiff = min(section.material.in_shear / shear, RIGID_SHEAR)
    shares = stiff * sums.upright / sums.area, stiff * sums.across / sums.area
    return modulus, sums.area, sums.luffing, sums.sideways, shear, sums.torsion, *shares


def _add_arm(tag: int, first: int, last: int, transform: int) -> None:
    """A rigid arm."""
    bending = (RIGID_BENDING, RIGID_BENDING, RIGID_BENDING)
    ops.element("elasticBeamColumn", tag, first, last, RIGID_AXIAL, 1.0, 1.0, *bending, transform)


def _add_pads(boom: BoomFrame, pad: int) -> list[int]:
    """Left, right and side link of a joint, on arms of the mouth and the inner section."""
    frame = boom.frame
    link = frame.bars[pad]
    mouth, contact = link.first, next(b.first for b in frame.beams if b.last == link.last)
    (x0, y0), (x1, y1) = frame.nodes[contact], frame.nodes[link.last]
    tags = []
    for z in (-HALF_WIDTH, HALF_WIDTH):
        below = _arm_to(mouth, (*frame.nodes[mouth], z), 2)
        above = _arm_to(contact, (x1, y1, z), 1)
        tags.append(_add_link(below, above))
    tags.append(_add_link(mouth, _arm_to(contact, (x0, y0, 1.0), 2)))
    return tags


def _arm_to(node: int, place: Place, transform: int) -> int:
    """A new node on a rigid arm."""
    tag = int(max(ops.getNodeTags())) + 1
    ops.node(tag, *place)
    _add_arm(max(ops.getEleTags()) + 100_000, node, tag, transform)
    return tag


def _add_link(first: int, last: int, bar: Bar | None = None) -> int:
    """A straight hinged link."""
    bar = bar or Bar(first=first, last=last)
    tag = int(max(ops.getEleTags())) + 100_000
    ops.uniaxialMaterial("Elastic", 2 * tag, bar.axial)
    if bar.tension:
        ops.uniaxialMaterial("InitStressMaterial", 2 * tag + 1, 2 * tag, bar.tension)
    ops.element("corotTruss", tag, first, last, 1.0, 2 * tag + bool(bar.tension))
    return tag


def _hold(boom: BoomFrame) -> None:
    """Heel pin, luffing cylinder and rope."""
    frame = boom.frame
    ops.fix(boom.lines[0].tail, 1, 1, 1, 1, 1, 0)
    cylinder, rope = frame.bars[boom.cylinder], frame.bars[boom.rope]
    ops.fix(cylinder.first, 1, 1, 0, 1, 1, 1)
    ops.equalDOF(cylinder.last, cylinder.first, 3)
    ops.fix(rope.last, 1, 1, 1, 1, 1, 1)
    for bar in (cylinder, rope):
        _add_link(bar.first, bar.last, bar)


def _load(boom: BoomFrame, side: float) -> None:
    """The plane loads, and the side load at the head sheave."""
    loads = nodal_loads(boom.frame)
    ops.timeSeries("Linear", 1)
    ops.pattern("Plain", 1, 1)
    for tag in np.flatnonzero(loads.any(axis=1)).tolist():
        x, y, moment = loads[tag].tolist()
        ops.load(tag, x, y, 0.0, 0.0, 0.0, moment)
    ops.load(boom.head, 0.0, 0.0, side, 0.0, 0.0, 0.0)


def _place(boom: BoomFrame, node: int) -> Floats:
    """A node's place after loading [m]."""
    start = np.array([*boom.frame.nodes[node], 0.0])
    return start + np.array(ops.nodeDisp(node)[:3], dtype=np.float64)


def _answer(boom: BoomFrame, joints: list[list[int]], chord: float) -> SideAnswer:
    """Read the program."""
    rows = [np.array([ops.eleResponse(n, "basicForce") for n in line.beams]) for line in boom.lines]
    along = [list(line.nodes) for line in boom.lines]
    links = np.array([[ops.eleResponse(n, "axialForce")[0] for n in three] for three in joints])
    tails = [ops.eleResponse(line.beams[0], "globalForce")[2] for line in boom.lines[1:]]
    x, y, z = _place(boom, boom.head)
    cos, sin = np.cos(chord), np.sin(chord)
    return SideAnswer(
        luffing=tuple(np.column_stack([row[:, 1], -row[:, 2]]).ravel() for row in rows),
        sideways=tuple(np.column_stack([row[:, 3], -row[:, 4]]).ravel() for row in rows),
        twist=tuple(row[:, 5] for row in rows),
        place=tuple(np.column_stack([row[:-1], row[1:]]).ravel() for row in along),
        front_pads=-links[:, :2].sum(axis=1),
        front_sides=-links[:, 2],
        rear_sides=np.array(tails),
        head=np.array([x * cos + y * sin, y * cos - x * sin, z]),
    )
