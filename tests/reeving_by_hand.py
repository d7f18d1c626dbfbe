"""Reeving counted out by hand, with nothing of the package but a machine's numbers."""

from math import acos, atan2, cos, hypot, pi, radians, sin

from boomsim.machine.model import Machine

TURNS_KEPT = 3


def head_by_hand(machine: Machine, *, length: float, angle: float) -> float:
    """Height of the head sheave centre above the ground [m]."""
    along = machine.heel_up + length * sin(angle)
    return along - machine.boom.head.below * cos(angle)


def lead_by_hand(machine: Machine, *, length: float, angle: float) -> float:
    """From the winch to the sheave on top of the head, straight [m]."""
    above = machine.boom.head.rope_above
    x = machine.heel_out + length * cos(angle) - above * sin(angle)
    z = machine.heel_up + length * sin(angle) + above * cos(angle)
    return hypot(x - machine.hoist.winch_out, z - machine.hoist.winch_up)


def rope_by_hand(machine: Machine, *, parts: int, length: float, angle: float) -> float:
    """Rope for so many parts with the hook on the ground, what stays on the drum with it [m]."""
    assert machine.hoist.drum_diameter is not None
    kept = TURNS_KEPT * pi * machine.hoist.drum_diameter
    falls = parts * head_by_hand(machine, length=length, angle=angle)
    return kept + lead_by_hand(machine, length=length, angle=angle) + falls


def parts_by_hand(machine: Machine, *, length: float, most: int) -> int:
    """Most parts for which the rope is enough at every half degree that the boom can have."""
    if machine.hoist.rope_length is None:
        return max(n for n in machine.hoist.parts if n <= most)
    boom, enough = machine.boom, min(machine.hoist.parts)
    halves = range(round(2 * (boom.greatest_angle - boom.least_angle) / radians(1.0)) + 1)
    angles = [*(boom.least_angle + radians(0.5 * k) for k in halves), boom.greatest_angle]
    for parts in sorted(n for n in machine.hoist.parts if n <= most):
        needs = [rope_by_hand(machine, parts=parts, length=length, angle=a) for a in angles]
        if max(needs) <= machine.hoist.rope_length:
            enough = parts
    return enough


def straight_angle_by_hand(machine: Machine, *, length: float, radius: float) -> float:
    """Boom angle at which the straight boom's head is at a radius: L cos a + below sin a [rad]."""
    below, reach = machine.boom.head.below, radius - machine.heel_out
    upright = acos(max(-1.0, min(1.0, reach / hypot(length, below)))) + atan2(below, length)
    return min(max(upright, machine.boom.least_angle), machine.boom.greatest_angle)


def falls_by_hand(machine: Machine, *, length: float, radius: float, most: int) -> float:
    """Mass of the falls below the straight boom's head at a radius [kg]."""
    angle = straight_angle_by_hand(machine, length=length, radius=radius)
    parts = parts_by_hand(machine, length=length, most=most)
    height = head_by_hand(machine, length=length, angle=angle)
    return parts * height * machine.hoist.rope_mass
