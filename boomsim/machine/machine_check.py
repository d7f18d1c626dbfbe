"""What cannot be in a whole machine: the luffing cylinder, the ways to stand, the names."""

import math
from collections.abc import Iterator, Sequence

from boomsim.machine.boom_check import overlap_left
from boomsim.machine.file_faults import Fault
from boomsim.machine.hoist_rope import most_parts
from boomsim.machine.model import Hoist, Machine, Support
from boomsim.units import show

LEAST_LEVER = 0.1
"""Smallest lever arm of the cylinder about the heel pin, over the upper pin's distance [1]."""

MOST_PRESSURE = 70e6
"""Oil pressures beyond this are a slip of the pen: cranes work at some 25 to 35 MPa [Pa]."""

INSIDE = 1e-3
"""A support this far inside the line between its neighbours still lies on it [m]."""


def machine_faults(machine: Machine) -> Iterator[Fault]:
    """Say what does not go together among the parts of a machine."""
    yield from _lever_faults(machine)
    yield from _bore_faults(machine)
    yield from _attach_faults(machine)
    yield from _longest_boom_faults(machine)
    yield from _rope_faults(machine)
    for part in ("carrier", "superstructure", "counterweights", "supports"):
        yield from names_faults([item.name for item in getattr(machine, part)], part + "[{}].name")


def names_faults(names: Sequence[str], path: str) -> Iterator[Fault]:
    """Say which names are there twice.

    Parameters
    ----------
    path : str
        Where a name stands, with {} for its number
    """
    for i, name in enumerate(names):
        if name in names[:i]:
            yield Fault(path=path.format(i), says=f'"{name}" is there twice. Change one of them.')


def hoist_faults(hoist: Hoist) -> Iterator[Fault]:
    """Say what does not go together about a hoist."""
    yield from names_faults([str(n) for n in hoist.parts], "parts[{}]")
    if (hoist.rope_length is None) != (hoist.drum_diameter is None):
        given, lacks = "rope_length", "drum_diameter"
        if hoist.rope_length is None:
            given, lacks = lacks, given
        says = (
            f"This is missing: {given} is there, and how much rope the drum gives out takes both. "
            f"Give it, or take {given} out."
        )
        yield Fault(path=lacks, says=says)


def support_faults(support: Support) -> Iterator[Fault]:
    """Say why supports hold nothing up."""
    yield from _tyre_key_faults(support)
    hull = convex_hull(support.points)
    if len(hull) < 3:
        says = "The points lie on one line or on one spot. Give at least three that do not."
        yield Fault(path="points", says=says)
        return
    for i, point in enumerate(support.points):
        if point in support.points[:i]:
            yield Fault(path=f"points[{i}]", says="This point is there twice. Move one of them.")
        elif support.kind == "outriggers" and _depth(point, hull) > INSIDE:
            says = "This point lies inside the others, so they form no convex shape. Move it out."
            yield Fault(path=f"points[{i}]", says=says)
    if not _depth((0.0, 0.0), hull) > INSIDE:
        yield Fault(
            path="points",
            says="The axis of rotation, x = 0 and y = 0, is not inside the supports, so the crane "
            "would fall over by itself. Move them round it.",
        )


def _tyre_key_faults(support: Support) -> Iterator[Fault]:
    """Refuse on outriggers what only tyres have."""
    for key in ("strength", "longest_boom"):
        if support.kind == "outriggers" and getattr(support, key) is not None:
            says = 'This is for a support of kind "tyres". Take it out, or change the kind.'
            yield Fault(path=key, says=says)


def lever_arm(machine: Machine, *, angle: float) -> float:
    """Lever arm of the luffing cylinder about the heel pin, positive when a push raises the boom.

    Parameters
    ----------
    angle : float
        Boom angle [rad]

    Returns
    -------
    float
        Heel to upper pin, crossed with the cylinder's direction [m]
    """
    cylinder, cos, sin = machine.cylinder, math.cos(angle), math.sin(angle)
    along, below = cylinder.attach_along, cylinder.attach_below
    out, up = along * cos + below * sin, along * sin - below * cos
    du = machine.heel_out + out - cylinder.base_out
    dv = machine.heel_up + up - cylinder.base_up
    return (out * dv - up * du) / max(math.hypot(du, dv), 1e-9)


def convex_hull(points: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    """Corners of the convex hull, anticlockwise from above with x to the right.

    Parameters
    ----------
    points : sequence of (float, float)
        [m]

    Returns
    -------
    list of (float, float)
        [m]
    """
    ordered = sorted(set(points))
    return _half_hull(ordered)[:-1] + _half_hull(ordered[::-1])[:-1]


def _half_hull(ordered: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    """Lower side of the hull of points sorted by x (Andrew's monotone chain)."""
    half: list[tuple[float, float]] = []
    for point in ordered:
        while len(half) > 1 and _left_of(half[-2], half[-1], point) <= 1e-9:
            half.pop()
        half.append(point)
    return half


def _left_of(a: tuple[float, float], b: tuple[float, float], c: tuple[float, float]) -> float:
    """Twice the area of a triangle, positive when c is to the left of the way from a to b [m2]."""
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _depth(point: tuple[float, float], hull: Sequence[tuple[float, float]]) -> float:
    """How far inside a hull a point is; negative outside [m]."""
    sides = zip(hull, [*hull[1:], hull[0]], strict=True)
    return min(_left_of(a, b, point) / math.dist(a, b) for a, b in sides)


def _lever_faults(machine: Machine) -> Iterator[Fault]:
    """Refuse a cylinder that cannot raise the boom somewhere in its range."""
    boom, cylinder = machine.boom, machine.cylinder
    span = boom.greatest_angle - boom.least_angle
    steps = [boom.least_angle + k / 40 * span for k in range(41)]
    worst = min(steps, key=lambda angle: lever_arm(machine, angle=angle))
    arm, needed = lever_arm(machine, angle=worst), LEAST_LEVER * cylinder.attach_along
    if not arm >= needed:
        yield Fault(
            path="cylinder",
            says=f"At a boom angle of {show(worst, 'angle')} its lever arm about the heel pin is "
            f"{show(arm, 'length')} and must be {show(needed, 'length')} or more"
            f"{', for a push would lower the boom' if arm < 0 else ''}. "
            "Lower or move base_out, base_up, or raise attach_below.",
        )


def _bore_faults(machine: Machine) -> Iterator[Fault]:
    """Say that no cylinder of such a bore pushes so hard."""
    cylinder = machine.cylinder
    if cylinder.bore is None:
        return
    pressure = cylinder.strength / (math.pi * cylinder.bore**2 / 4.0)
    if pressure > MOST_PRESSURE:
        least = math.sqrt(cylinder.strength / MOST_PRESSURE * 4.0 / math.pi)
        yield Fault(
            path="cylinder.bore",
            says=f"A bore of {show(cylinder.bore, 'small_length')} needs "
            f"{show(pressure, 'stress')} for the largest push of "
            f"{show(cylinder.strength, 'force')}; no more than {show(MOST_PRESSURE, 'stress')} is "
            f"believed. Give {show(least, 'small_length')} or more, or a smaller push.",
        )


def _attach_faults(machine: Machine) -> Iterator[Fault]:
    """Refuse an upper pin where the base section carries the pads of the next."""
    base, first = machine.boom.sections[:2]
    most = base.length - overlap_left(first)
    if machine.cylinder.attach_along > most:
        yield Fault(
            path="cylinder.attach_along",
            says=f"The upper pin is {show(machine.cylinder.attach_along, 'length')} from the heel "
            f"pin, where section 1 still lies inside when fully out. Give {show(most, 'length')} "
            "or less.",
        )


def _longest_boom_faults(machine: Machine) -> Iterator[Fault]:
    """Refuse a longest boom on tyres that not even the retracted boom keeps to."""
    shortest = _retracted(machine)
    for i, support in enumerate(machine.supports):
        if support.longest_boom is not None and support.longest_boom < shortest:
            yield Fault(
                path=f"supports[{i}].longest_boom",
                says=f"The boom is {show(shortest, 'length')} long with all sections in, so that "
                "nothing would be rated. Give that or more.",
            )


def _retracted(machine: Machine) -> float:
    """Boom length with all sections in [m]."""
    base, *moving = machine.boom.sections
    return base.length + sum(section.nose for section in moving) + machine.boom.head.ahead


def _rope_faults(machine: Machine) -> Iterator[Fault]:
    """Refuse a rope with which the hook cannot be set down below the longest boom."""
    hoist = machine.hoist
    longest = _retracted(machine) + sum(section.stroke for section in machine.boom.sections[1:])
    if most_parts(machine, length=longest) < min(hoist.parts):
        assert hoist.rope_length is not None
        parts = "1 part" if min(hoist.parts) == 1 else f"{min(hoist.parts)} parts"
        yield Fault(
            path="hoist.rope_length",
            says=f"With {show(hoist.rope_length, 'length')} of rope the hook does not come down to "
            f"the ground in {parts} of line below the longest boom, {show(longest, 'length')}. "
            "Give more rope, or fewer parts.",
        )
