"""The oil under the luffing cylinder's piston: a spring that shortens under a growing push.

With the valves closed the oil is trapped. A column of length L in a bore of area A gives K A/L
newtons for a metre (bulk modulus K = pressure over the share of volume lost), so that the boom
sinks while a load grows that nobody luffs against. The cylinder is taken to be all in at the least
boom angle: its oil is as long as it has come out since. Steel, hoses and the rod side give nothing.

Source: the definition of the bulk modulus. Status: worked. That of hydraulic oil with the air it
carries, 1.4 to 1.6 GPa: common practice, from memory.
"""

import numpy as np
from numpy.typing import ArrayLike

from boomsim.machine.model import Machine
from boomsim.mechanics.geometry import Array


def cylinder_length(machine: Machine, *, angle: ArrayLike) -> Array:
    """Distance between the luffing cylinder's pins [m].

    Parameters
    ----------
    angle : array_like
        Boom angle [rad]
    """
    to_base, to_lug, between = _triangle(machine)
    turned = np.cos(np.asarray(angle) - between)
    return np.asarray(np.sqrt(to_base**2 + to_lug**2 - 2.0 * to_base * to_lug * turned))


def angle_at_length(machine: Machine, *, length: ArrayLike) -> Array:
    """Boom angle at which the luffing cylinder is as long; see :func:`cylinder_length`.

    Parameters
    ----------
    length : array_like
        [m]

    Returns
    -------
    ndarray
        [rad]; NaN where the pins cannot be so far apart
    """
    to_base, to_lug, between = _triangle(machine)
    cos = (to_base**2 + to_lug**2 - np.asarray(length) ** 2) / (2.0 * to_base * to_lug)
    with np.errstate(invalid="ignore"):
        return np.asarray(between + np.arccos(cos))


def sunk_length(machine: Machine, *, angle: ArrayLike, more: ArrayLike) -> Array:
    """How long the luffing cylinder is once its push has grown by so much.

    Parameters
    ----------
    machine : Machine
        Whose cylinder has a bore
    angle : array_like
        Boom angle at which the oil was trapped [rad]
    more : array_like
        Push beyond that under which it was trapped; negative for less [N]

    Returns
    -------
    ndarray
        Never shorter than at the least boom angle, where the piston stands on its bottom [m]
    """
    cylinder = machine.cylinder
    assert cylinder.bore is not None
    area = np.pi * cylinder.bore**2 / 4.0
    closed = cylinder_length(machine, angle=machine.boom.least_angle)
    out = cylinder_length(machine, angle=angle) - closed
    lost = np.asarray(more) / (cylinder.oil_modulus * area)
    return np.asarray(closed + np.maximum(out * (1.0 - lost), 0.0))


def _triangle(machine: Machine) -> tuple[float, float, float]:
    """Heel pin to both pins [m], and the boom angle at which all three lie in one line [rad]."""
    cylinder = machine.cylinder
    out, up = cylinder.base_out - machine.heel_out, cylinder.base_up - machine.heel_up
    to_lug = np.hypot(cylinder.attach_along, cylinder.attach_below)
    droops = np.arctan2(cylinder.attach_below, cylinder.attach_along)
    return float(np.hypot(out, up)), float(to_lug), float(np.arctan2(up, out) + droops)
