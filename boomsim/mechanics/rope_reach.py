"""How many parts of line the rope on the drum reaches for, and what the rope weighs below the head.

The hook must come down to the ground at every boom angle: a crane is reeved once for a boom length,
and not again for each radius.
"""

from functools import lru_cache

import numpy as np
from numpy.typing import ArrayLike, NDArray

from boomsim.machine.hoist_rope import HAIR, angles_between, head_height, kept_on_drum, lead_line
from boomsim.machine.model import Machine
from boomsim.mechanics.geometry import Array


def parts_reached(machine: Machine, *, length: ArrayLike) -> Array:
    """Most parts of line that the rope reaches for, with the hook on the ground at any boom angle.

    The whole number below (rope - lead line - kept turns)/(height of the head), at the boom angle
    at which that is least.

    Parameters
    ----------
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
    cos, sin = _directions(machine.boom.least_angle, machine.boom.greatest_angle)
    given = machine.hoist.rope_length - kept_on_drum(machine)
    long = lengths[:, None]
    left = given - lead_line(machine, length=long, cos=cos, sin=sin)
    height = np.maximum(head_height(machine, length=long, cos=cos, sin=sin), 1e-3)
    return np.asarray(np.floor((left / height).min(axis=1) + HAIR))


@lru_cache(maxsize=32)
def _directions(low: float, high: float) -> tuple[Array, Array]:
    angle = np.array([*angles_between(low, high)])
    return np.cos(angle), np.sin(angle)


def parts_reeved(machine: Machine, *, length: ArrayLike, most: int) -> NDArray[np.int_]:
    """Parts of line that each boom is reeved in: as many as are wanted, if the rope reaches.

    Parameters
    ----------
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
    long = np.asarray(length, dtype=float)
    height = head_height(machine, length=long, cos=np.cos(angle), sin=np.sin(angle))
    return np.asarray(np.asarray(parts) * machine.hoist.rope_mass * np.maximum(height, 0.0))
