"""The hoist rope: how many parts the drum's rope reaches for, how much is out, what hangs of it.

Lengths are taken on the straight boom. The falls are counted from the centre of the head sheaves to
the ground, so that the hook can always be set down; the hook block's own height is left out, which
asks for a little too much rope. The lead line runs straight from the winch to the boom's head.
"""

import math

import numpy as np
from numpy.typing import ArrayLike, NDArray

from boomsim.machine.model import Machine

Array = NDArray[np.float64]

KEPT_TURNS = 3
"""Turns of rope that never leave the drum (common practice: two or three) [1]."""

ANGLES = 31
"""Boom angles that are looked at from the lowest to the steepest."""


def head_height(machine: Machine, *, length: ArrayLike, angle: ArrayLike) -> Array:
    """Height of the head sheave centre above the ground, on the straight boom.

    Parameters
    ----------
    machine : Machine
    length : array_like
        Boom length [m]
    angle : array_like
        Boom angle; broadcast with `length` [rad]

    Returns
    -------
    ndarray
        heel pin + length sin - head's depth cos [m]
    """
    up = np.asarray(length) * np.sin(angle) - machine.boom.head.below * np.cos(angle)
    return np.asarray(machine.heel_up + up)


def lead_line(machine: Machine, *, length: ArrayLike, angle: ArrayLike) -> Array:
    """Length of the rope from the winch to the boom's head.

    Parameters
    ----------
    machine : Machine
    length : array_like
        Boom length [m]
    angle : array_like
        Boom angle; broadcast with `length` [rad]

    Returns
    -------
    ndarray
        [m]
    """
    along, above = np.asarray(length), machine.boom.head.rope_above
    out = machine.heel_out + along * np.cos(angle) - above * np.sin(angle)
    up = machine.heel_up + along * np.sin(angle) + above * np.cos(angle)
    return np.hypot(out - machine.hoist.winch_out, up - machine.hoist.winch_up)


def kept_on_drum(machine: Machine) -> float:
    """Rope that never leaves the drum, on its first layer.

    Parameters
    ----------
    machine : Machine

    Returns
    -------
    float
        :data:`KEPT_TURNS` turns; 0 where the drum is not known [m]
    """
    return KEPT_TURNS * math.pi * (machine.hoist.drum_diameter or 0.0)


def parts_reached(machine: Machine, *, length: ArrayLike) -> Array:
    """Most parts of line that the rope reaches for, with the hook on the ground at any boom angle.

    The whole number below (rope - lead line - kept turns)/(height of the head), at the boom angle
    at which that is least.

    Parameters
    ----------
    machine : Machine
    length : array_like, shape (configurations,)
        Boom length [m]

    Returns
    -------
    ndarray, shape (configurations,)
        Whole numbers; infinite where the machine does not say how long its rope is [1]
    """
    lengths = np.atleast_1d(np.asarray(length, dtype=float))
    if machine.hoist.rope_length is None:
        return np.full(lengths.shape, np.inf)
    angle = np.linspace(machine.boom.least_angle, machine.boom.greatest_angle, ANGLES)
    place = {"length": lengths[:, None], "angle": angle}
    left = machine.hoist.rope_length - kept_on_drum(machine) - lead_line(machine, **place)
    height = np.maximum(head_height(machine, **place), 1e-3)
    return np.asarray(np.floor((left / height).min(axis=1) + 1e-9))


def parts_reeved(machine: Machine, *, length: ArrayLike, most: int) -> NDArray[np.int_]:
    """Parts of line that each boom is reeved in: as many as are wanted, if the rope reaches.

    Parameters
    ----------
    machine : Machine
    length : array_like, shape (configurations,)
        Boom length [m]
    most : int
        Parts that are wanted [1]

    Returns
    -------
    ndarray of int, shape (configurations,)
        The largest of the machine's numbers of parts that is neither above `most` nor more than
        the rope reaches for [1]
    """
    offered = np.array(sorted(parts for parts in machine.hoist.parts if parts <= most))
    reached = parts_reached(machine, length=length)
    return np.asarray(offered[np.maximum(np.searchsorted(offered, reached, side="right") - 1, 0)])


def falls_mass(machine: Machine, *, parts: ArrayLike, length: ArrayLike, angle: ArrayLike) -> Array:
    """Mass of the rope between head and hook, with the hook on the ground.

    Parameters
    ----------
    machine : Machine
    parts : array_like
        Parts of line [1]
    length : array_like
        Boom length; broadcast with `parts` and `angle` [m]
    angle : array_like
        Boom angle [rad]

    Returns
    -------
    ndarray
        parts x rope's mass by length x height of the head; 0 where that mass is not given [kg]
    """
    height = np.maximum(head_height(machine, length=length, angle=angle), 0.0)
    return np.asarray(np.asarray(parts) * machine.hoist.rope_mass * height)
