"""What the crane covers of the ground, seen from above: where no load can hang beside it.

Only pins, supports and the masses' places are data; the rest is in proportion to them, and pictures
draw the crane by the same measures.
"""

import itertools
from math import copysign, inf

from boomsim.machine.model import Machine, Support

Edge = tuple[tuple[float, float], tuple[float, float]]
"""Two ends (x, y) in carrier axes [m]."""


def axles(machine: Machine) -> tuple[list[float], float]:
    """Where the wheels are, and how large they are drawn.

    Returns
    -------
    list of float
        x of each axle; empty for a machine without tyres [m]
    float
        Radius; 0 without tyres [m]
    """
    places = sorted({x for s in machine.supports if s.kind == "tyres" for x, _ in s.points})
    if not places:
        return [], 0.0
    gaps = [b - a for a, b in itertools.pairwise(places)]
    return places, min(0.42 * machine.ring.up, 0.46 * min(gaps, default=inf))


def chassis_ends(machine: Machine) -> tuple[float, float]:
    """Front and rear end of the chassis.

    Returns
    -------
    float, float
        Least and greatest x [m]
    """
    jacks = [x for s in machine.supports if s.kind == "outriggers" for x, _ in s.points]
    places, edge = [*axles(machine)[0], *jacks], 0.12 * machine.heel_up
    return min(places) - edge, max(places) + edge


def half_width(machine: Machine) -> float:
    """Half the carrier's width.

    Returns
    -------
    float
        [m]
    """
    tyres = [abs(y) for s in machine.supports if s.kind == "tyres" for _, y in s.points]
    widest = max(abs(y) for s in machine.supports for _, y in s.points)
    return max(tyres) * 1.15 if tyres else 0.6 * widest


def turntable_front(machine: Machine) -> float:
    """How far the superstructure, which turns with the boom, reaches out under it.

    Returns
    -------
    float
        Slewing ring, luffing cylinder's foot and masses ahead, whichever is farthest [m]
    """
    ahead = [machine.cylinder.base_out, *(mass.out for mass in machine.superstructure)]
    return max(max(ahead) + 0.12 * machine.heel_up, 0.28 * machine.heel_up)


def edges(machine: Machine, support: Support) -> list[Edge]:
    """Edges of the carrier, and outriggers that are out beside it, seen from above.

    Returns
    -------
    list of ((float, float), (float, float))
        Outriggers from the carrier's edge to the float [m]
    """
    half = half_width(machine)
    front, rear = chassis_ends(machine)
    corners = [(front, -half), (rear, -half), (rear, half), (front, half)]
    outline = list(itertools.pairwise([*corners, corners[0]]))
    if support.kind != "outriggers":
        return outline
    return [*outline, *(((x, copysign(half, y)), (x, y)) for x, y in support.points)]
