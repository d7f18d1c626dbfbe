"""Use of what the whole crane is judged by: tipping, ring, cylinder and rope, worked once more."""

from math import atan2, cos, sin, sqrt, tan

import numpy as np
from rerate_cells import GRAVITY, SHARES, Bent, lifted, pressures
from rerate_masses import Placed

from boomsim.machine.model import Disturbances

Point = np.ndarray


def falling(change: Disturbances) -> Point:
    """Free fall in axes of a crane that leans: ahead, left, up [m/s2]."""
    level = cos(change.lean_across)
    return GRAVITY * np.array(
        [level * sin(change.lean), sin(change.lean_across), -level * cos(change.lean)]
    )


def blown(bent: Bent, placed: Placed, *, change: Disturbances, row: int, angle: float):
    """Wind on what the sections show: places and forces, ahead and to the left [N].

    From behind a boom that stands at an angle is pushed by sin2 of it (FEM 1.001).
    """
    behind, across = pressures(change)
    shape = bent.cells.machine.boom.wind_shape
    for part in placed.shown:
        push = shape * np.array([behind * part.wide * sin(angle) ** 2, across * part.high, 0.0])
        yield part.middle, push


def lines_of(points) -> list[tuple[Point, float]]:
    """Sides of the polygon round the supports: outward normals and distances from the axis.

    A side is a line through two supports that has all the others on one side of it.
    """
    spots = np.array(sorted(set(points)))
    found = []
    for i, a in enumerate(spots):
        for b in spots[i + 1 :]:
            way = (b - a) / np.hypot(*(b - a))
            normal = np.array([way[1], -way[0]])
            for n in (normal, -normal):
                if np.all(spots @ n <= a @ n + 1e-9):
                    found.append((n, float(a @ n)))
    kept: list[tuple[Point, float]] = []
    for n, d in found:
        if not any(np.allclose(n, m) for m, _ in kept):
            kept.append((n, d))
    return kept


def square_to(points) -> Point:
    """Slew angles that point square over a line or square away from it [rad]."""
    normals = [n for n, _ in lines_of(points)]
    return np.array([atan2(y, x) for n in normals for x, y in (n, -n)])


def rear_edge(points) -> float:
    """Half the sector over the rear, between the lines to the rear supports [rad]."""
    rear = max(x for x, _ in points)
    return min(abs(atan2(y, x)) for x, y in points if x > rear - 1e-6)


def slews(bent: Bent) -> Point | None:
    """Slew angles to try; None: all around, without a gap."""
    sector = bent.cells.sector
    if sector == "around":
        return None
    if sector == "rear":
        edge = rear_edge(bent.cells.support.points)
        square = square_to(bent.cells.support.points)
        return np.append(np.linspace(-edge, edge, 2001), square[np.abs(square) < edge])
    return np.array([float(sector)])


def tipping_load(bent: Bent, placed: Placed, row: int) -> float:
    """Least load that tips the crane about any line, at any slew angle that counts [kg].

    What turns with the boom pulls over a line by p.u, each kilogram of load by q.u, where u says
    how the boom stands to the line's normal; the rest holds with A, and d for each kilogram.
    All around, (p + T q).u is largest where u points along it: |p + T q| = A + T d.
    """
    machine = bent.cells.machine
    pull, load = leaning(bent, placed, row)
    mass = sum(m for m, _ in placed.masses) + sum(part.mass for part in machine.carrier)
    least = np.inf
    for normal, distance in lines_of(bent.cells.support.points):
        still = sum(part.mass * (normal @ [part.x, part.y]) for part in machine.carrier)
        held = mass * distance - still
        least = min(least, _tips(bent, pull, load, held=held, distance=distance, normal=normal))
    return least


def leaning(bent: Bent, placed: Placed, row: int) -> tuple[Point, Point]:
    """What turns with the boom, ahead and to its left: mass times place [kg m], and the hook's [m].

    On ground that leans things count where their plumb line meets the plane of the supports, and
    what pushes across counts by its height.
    """
    change, machine = bent.cells.given, bent.cells.machine
    lean = np.array([tan(change.lean), tan(change.lean_across)])
    pull = sum(m * (at[:2] + at[2] * lean) for m, at in placed.masses)
    pull = pull + sum(part.mass * part.z * lean for part in machine.carrier)
    angle = float(bent.given.angle[row, 0])
    for at, push in blown(bent, placed, change=change, row=row, angle=angle):
        pull = pull + push[:2] * at[2] / GRAVITY
    behind, across = pressures(change)
    aside = change.side_pull + across * change.load_area / GRAVITY
    ahead = behind * change.load_area / GRAVITY
    hook = placed.head
    return pull, hook[:2] + hook[2] * (lean + np.array([ahead, aside]))


def _tips(
    bent: Bent, pull: Point, load: Point, *, held: float, distance: float, normal: Point
) -> float:
    turns = slews(bent)
    if turns is None:
        return _tips_around(pull, load, held=held, distance=distance)
    ahead = normal[0] * np.cos(turns) + normal[1] * np.sin(turns)
    left = normal[1] * np.cos(turns) - normal[0] * np.sin(turns)
    holding = held - (pull[0] * ahead + pull[1] * left)
    lever = load[0] * ahead + load[1] * left - distance
    if holding.min() <= 0.0:
        return 0.0
    # A load over the line itself, to a micrometre, tips nothing.
    over = lever > 1e-6
    return float((holding[over] / lever[over]).min()) if over.any() else np.inf


def _tips_around(pull: Point, load: Point, *, held: float, distance: float) -> float:
    if held <= np.hypot(*pull):
        return 0.0
    reach = np.hypot(*load)
    if reach <= distance + 1e-6:
        return np.inf
    square = load @ load - distance**2
    half = pull @ load - held * distance
    rest = pull @ pull - held**2
    # rest < 0 < square: one root is above nought.
    return (-half + sqrt(half * half - square * rest)) / square


def tipping(bent: Bent, placed: Placed, row: int) -> float:
    """Share of the tipping load that the rule lets hang, used by this one."""
    load, most = float(bent.load[row]), tipping_load(bent, placed, row)
    if most <= 0.0:
        return np.inf
    if not bent.cells.ruling.test_load:
        return load / SHARES[bent.cells.support.kind] / most
    heel, reach = bent.cells.machine.heel_out, placed.head[0] - bent.cells.machine.heel_out
    boom = placed.masses[: placed.of_boom]
    at_head = sum(m * (at[0] - heel) for m, at in boom) / max(reach, 0.1)
    return (1.25 * load + 0.1 * at_head) / most


def backward(bent: Bent, placed: Placed, row: int) -> float:
    """15 % over the share of the empty crane's weight that is borne on its boom's side."""
    machine, spots = bent.cells.machine, np.array(bent.cells.support.points)
    turned = sum(m * at[0] for m, at in placed.masses)
    still = sum(part.mass * np.array([part.x, part.y]) for part in machine.carrier)
    mass = sum(m for m, _ in placed.masses) + sum(part.mass for part in machine.carrier)
    turns = slews(bent)
    if turns is None:
        square = square_to(bent.cells.support.points)
        turns = np.concatenate([square, np.radians(np.arange(0.0, 360.0, 0.5))])
    ways = np.stack([np.cos(turns), np.sin(turns)], axis=1)
    reach = spots @ ways.T
    middle = (turned + ways @ still) / mass
    share = ((middle - reach.min(axis=0)) / (reach.max(axis=0) - reach.min(axis=0))).min()
    return 0.15 / share if share > 0.0 else np.inf


def ring(bent: Bent, placed: Placed, row: int) -> float:
    """Moment of every force about the ring's middle, level part: sum of r x F [N m]."""
    machine, change = bent.cells.machine, bent.cells.borne
    middle, fall = np.array([0.0, 0.0, machine.ring.up]), falling(change)
    forces = [(at, m * fall) for m, at in placed.masses]
    hung = lifted(change) * float(bent.load[row])
    behind, across = pressures(change)
    sail = change.load_area * float(bent.load[row])
    pulled = np.array([behind * sail, across * sail + change.side_pull * GRAVITY * hung, 0.0])
    forces.append((placed.head, hung * fall + pulled))
    angle = float(bent.borne.angle[row, 0])
    forces += list(blown(bent, placed, change=change, row=row, angle=angle))
    moment = sum(np.cross(at - middle, force) for at, force in forces)
    return float(np.hypot(*moment[:2])) / machine.ring.moment


def cylinder(bent: Bent, placed: Placed, row: int) -> float:
    """Push that holds the boom's moment about its heel pin, over the permitted one."""
    machine, change = bent.cells.machine, bent.cells.borne
    fall = falling(change)
    forces = [(at, m * fall) for m, at in placed.masses[: placed.of_boom]]
    forces.append((placed.lug, machine.cylinder.mass / 2 * fall))
    hung = lifted(change) * float(bent.load[row])
    wind = pressures(change)[0] * change.load_area * float(bent.load[row])
    forces.append((placed.head, hung * fall + [wind, 0.0, 0.0]))
    rope = (placed.winch - placed.lead) * [1.0, 0.0, 1.0]
    forces.append((placed.lead, line_force(bent, hung, row) * rope / np.linalg.norm(rope)))
    angle = float(bent.borne.angle[row, 0])
    forces += list(blown(bent, placed, change=change, row=row, angle=angle))
    turning = sum(np.cross(at - placed.heel, force)[1] for at, force in forces)
    rod = placed.lug - placed.foot
    rod = rod / np.linalg.norm(rod)
    push = -turning / np.cross(placed.lug - placed.heel, rod)[1]
    return abs(float(push)) / machine.cylinder.strength


def line_force(bent: Bent, hung: float, row: int) -> float:
    """Pull in the lead line: each sheave on the way to a part passes on its share [N]."""
    efficiency = bent.cells.machine.hoist.sheave_efficiency
    passed, advantage = 1.0, 0.0
    for _ in range(bent.cells.parts[row]):
        passed *= efficiency
        advantage += passed
    return GRAVITY * hung / advantage


def line_pull(bent: Bent, row: int) -> float:
    hung = lifted(bent.cells.given) * float(bent.load[row])
    return line_force(bent, hung, row) / bent.cells.machine.hoist.line_pull
