"""Lengths of the hoist rope, on the straight boom; for one boom, or for arrays of them.

The falls are counted from the centre of the head sheaves to the ground, so that the hook can always
be set down; the hook block's own height is left out, which asks for a little too much rope. The
lead line runs straight from the winch to the boom's head.
"""

import math
from collections.abc import Iterator
from typing import TYPE_CHECKING, TypeVar

from boomsim.machine.model import Machine

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

T = TypeVar("T", float, "NDArray[np.float64]")

KEPT_TURNS = 3
"""Turns of rope that never leave the drum (common practice: two or three) [1]."""

ANGLES = 31
"""Boom angles that are looked at from the lowest to the steepest."""

HAIR = 1e-9
"""Rope that is short by so little of a part still reaches [1]."""


def head_height(machine: Machine, *, length: T, cos: T, sin: T) -> T:
    """Height of the head sheave centre above the ground.

    Parameters
    ----------
    length : float or ndarray
        Boom length [m]
    cos, sin : float or ndarray
        Of the boom angle [1]

    Returns
    -------
    float or ndarray
        heel pin + length sin - head's depth cos [m]
    """
    return length * sin - machine.boom.head.below * cos + machine.heel_up


def lead_line(machine: Machine, *, length: T, cos: T, sin: T) -> T:
    """Length of the rope from the winch to the boom's head.

    Parameters
    ----------
    length : float or ndarray
        Boom length [m]
    cos, sin : float or ndarray
        Of the boom angle [1]

    Returns
    -------
    float or ndarray
        [m]
    """
    above, hoist = machine.boom.head.rope_above, machine.hoist
    out = length * cos - above * sin + (machine.heel_out - hoist.winch_out)
    up = length * sin + above * cos + (machine.heel_up - hoist.winch_up)
    straight: T = (out * out + up * up) ** 0.5
    return straight


def kept_on_drum(machine: Machine) -> float:
    """Rope that never leaves the drum, on its first layer.

    Returns
    -------
    float
        :data:`KEPT_TURNS` turns; 0 where the drum is not known [m]
    """
    return KEPT_TURNS * math.pi * (machine.hoist.drum_diameter or 0.0)


def angles_between(low: float, high: float) -> Iterator[float]:
    """Boom angles at which the rope must reach, from the lowest to the steepest.

    Parameters
    ----------
    low, high : float
        [rad]

    Yields
    ------
    float
        [rad]
    """
    return (low + (high - low) * k / (ANGLES - 1) for k in range(ANGLES))


def most_parts(machine: Machine, *, length: float) -> float:
    """Most parts of line that the rope reaches for with one boom.

    Parameters
    ----------
    length : float
        Boom length [m]

    Returns
    -------
    float
        A whole number; infinite where the machine does not say how long its rope is [1]
    """
    if machine.hoist.rope_length is None:
        return math.inf
    given = machine.hoist.rope_length - kept_on_drum(machine)
    parts = math.inf
    for angle in angles_between(machine.boom.least_angle, machine.boom.greatest_angle):
        cos, sin = math.cos(angle), math.sin(angle)
        left = given - lead_line(machine, length=length, cos=cos, sin=sin)
        height = head_height(machine, length=length, cos=cos, sin=sin)
        parts = min(parts, math.floor(left / max(height, 1e-3) + HAIR))
    return parts
