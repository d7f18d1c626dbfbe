"""What it takes to push a section out under load: weight along the boom, rope, and friction.

The section moves slowly, with everything that is in it, its head and its load. What its tail gets
from behind balances what the lock would hold (all weights and the rope, along the outer section)
and the friction of its own pads at the mouth and at the tail. The rope is paid out with the line
pull of hoisting.
"""

from dataclasses import replace

import numpy as np

from boomsim.machine.model import Machine
from boomsim.mechanics.boom.internal_forces import Forces
from boomsim.mechanics.geometry import Array
from boomsim.rating.limits.limit_kind import (
    MOVING_SECTIONS,
    PERMISSIBLE,
    PERMISSIBLE_VALUE,
    Case,
    Kind,
)
from boomsim.rating.limits.strengths import strengths
from boomsim.rating.rules import Rule
from boomsim.rating.setup import Setup

FRICTION = 0.1
"""Of a greased pad on steel: assumed [1]."""

MOST_FRICTION = 0.5
"""More than this no pad has that slides [1]."""

PUSH = "push"
"""Name of the limit."""


def push_out(forces: Forces, *, friction: float) -> Array:
    """Force that moves each section out, along the outer one.

    Parameters
    ----------
    friction : float
        Coefficient of friction of its pads [1]

    Returns
    -------
    ndarray, shape (configurations, sections, cells)
        Zero for the base section; negative where it would slide out by itself [N]
    """
    return forces.lock + friction * _pressed(forces)


def _pressed(forces: Forces) -> Array:
    """How hard a section's pads press at mouth and tail together [N]."""
    front = np.hypot(forces.front_pad, forces.front_pad_side)
    pressed = np.array(front + np.hypot(forces.rear_pad, forces.rear_pad_side))
    pressed[:, 0] = 0.0
    return pressed


def permissible_push(machine: Machine, *, rule: Rule) -> Array:
    """Largest push on each section: what a drive may hold under the rule, or the cylinder's.

    Returns
    -------
    ndarray, shape (sections,)
        Infinite for the base section, which nothing pushes [N]

    Raises
    ------
    ValueError
        If sections lock with pins and the file does not say how hard the cylinder pushes.
    """
    found = np.array(strengths(machine, rule=rule).lock)
    cylinder = machine.boom.telescope_cylinder
    for number in range(1, len(found)):
        if _has_drive(machine, number):
            continue
        if cylinder is None or cylinder.push is None:
            raise ValueError(
                f"{machine.name}: no drive moves section {number}, and the file does not say how "
                'hard a telescope cylinder pushes. Write push, such as push = "240 kN", under '
                "[boom.telescope_cylinder]."
            )
        found[number] = cylinder.push
    return found


def _has_drive(machine: Machine, number: int) -> bool:
    lock = machine.boom.sections[number].lock
    return lock is not None and lock.kind == "drive"


def with_push(setup: Setup, *, moving: tuple[int, ...], friction: float) -> Setup:
    """Judge a setup also by the push that moves some of its sections.

    Parameters
    ----------
    moving : tuple of int
        Numbers of the sections that move, from 1
    friction : float
        [1]

    Returns
    -------
    Setup
        With one more kind of limit, the last
    """
    return replace(setup, kinds=(*setup.kinds, push_kind(moving=moving, friction=friction)))


def push_kind(*, moving: tuple[int, ...], friction: float) -> Kind:
    """Make the limit of the push; it is used by sections that move and by no other.

    Parameters
    ----------
    friction : float
        [1]
    """

    def utilisation(case: Case) -> Array:
        machine = case.machine
        most = permissible_push(machine, rule=case.rule)
        wanted = np.moveaxis(push_out(case.factored_forces, friction=friction), 1, 0)
        by_cylinder = np.moveaxis(push_out(case.forces, friction=friction), 1, 0)
        found = np.zeros_like(wanted)
        for number in moving:
            own = wanted if _has_drive(machine, number) else by_cylinder
            found[number] = own[number] / most[number]
        # No equilibrium is no number, for sections too that stand still.
        return np.asarray(found[1:] + 0.0 * wanted[1:])

    return Kind(
        name=PUSH,
        words="the push that moves",
        short="push",
        code="d",
        utilisation=utilisation,
        of=MOVING_SECTIONS,
        set_by=PERMISSIBLE_VALUE,
        passed=PERMISSIBLE,
    )


def checked_friction(value: float) -> float:
    """Refuse what is no coefficient of friction of a pad that slides.

    Parameters
    ----------
    value : float
        [1]
    """
    if not 0.0 <= value <= MOST_FRICTION:
        raise ValueError(
            f"--friction: {value:g} is no coefficient of friction of a pad that slides. Give 0 to "
            f"{MOST_FRICTION:g}, such as {FRICTION:g}."
        )
    return value
