"""From which radius on a load hangs beside the crane and not over it: where charts begin."""

from math import dist

import numpy as np

from boomsim.machine.footprint import Edge, edges, half_width, turntable_front
from boomsim.machine.model import Machine, Support
from boomsim.mechanics.geometry import Array
from boomsim.rating.setup import Setup, rear_sector

OVER_THE_MACHINE = "a load as wide as the carrier would hang over the machine itself"
"""After "within a radius of 2.42 m"."""


def nearest_radius(setup: Setup) -> float:
    """Radius within which no load hangs clear of the machine, whichever way it is slewed.

    Returns
    -------
    float
        Of the direction in the sector in which the least of the machine is under the boom [m]
    """
    return float(hangs_clear(setup.machine, setup.support, slew=_directions(setup)).min())


def _directions(setup: Setup) -> Array:
    """Every degree of the sector; the one slew angle where it is one."""
    if len(setup.slew) == 1:
        return setup.slew
    half = rear_sector(setup.support) if setup.sector == "over the rear" else np.pi
    return np.linspace(-half, half, 361)


def hangs_clear(machine: Machine, support: Support, *, slew: Array) -> Array:
    """Radius from which on a load hangs beside the machine.

    The load is taken as wide as the carrier, which is about as wide as a container (2.44 m, ISO
    668, from memory). It clears the carrier, outriggers that are out, and what turns with the boom.

    Parameters
    ----------
    machine : Machine
    support : Support
        How it stands
    slew : ndarray
        0 over the rear [rad]

    Returns
    -------
    ndarray
        From the axis of rotation to the middle of the load, shape of `slew` [m]
    """
    half = half_width(machine)
    clear = [_leaves(edge, slew=slew, by=half) for edge in edges(machine, support)]
    return np.asarray(np.maximum(np.max(clear, axis=0), turntable_front(machine) + half))


def _leaves(edge: Edge, *, slew: Array, by: float) -> Array:
    """Where a ray from the axis of rotation has left an edge behind by a distance; 0 if always."""
    ray = np.array([np.cos(slew), np.sin(slew)])
    one, other = np.array(edge)
    length = dist(*edge)
    along = (other - one) / length if length else np.array([1.0, 0.0])
    across = np.array([-along[1], along[0]])
    found = [_leaves_disc(end, ray=ray, radius=by) for end in (one, other)]
    for side in (-by, by):
        with np.errstate(divide="ignore", invalid="ignore"):
            at = (one @ across + side) / (across @ ray)
            place = at * (along @ ray) - one @ along
        found.append(np.where((at > 0.0) & (place >= 0.0) & (place <= length), at, 0.0))
    return np.asarray(np.max(found, axis=0))


def _leaves_disc(middle: Array, *, ray: Array, radius: float) -> Array:
    """Where a ray from the axis of rotation leaves a disc; 0 if it misses it [m]."""
    along = middle @ ray
    inside = radius**2 - middle @ middle + along**2
    leaves = along + np.sqrt(np.maximum(inside, 0.0))
    return np.asarray(np.where((inside >= 0.0) & (leaves > 0.0), leaves, 0.0))
