"""What the floats carry and press into the ground, at any slew angle and any load."""

from dataclasses import dataclass

import numpy as np

from boomsim.machine.model import Support
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.stability.support_reactions import (
    Reactions,
    ground_pressure,
    support_reactions,
)
from boomsim.rating.lift_response import Response
from boomsim.rating.resultant import resultant, turned
from boomsim.rating.setup import Setup, rear_sector

STEP = np.radians(5.0)
"""Between slew angles where a whole circle is wanted [rad]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class FloatLoads:
    """What the supports carry. Shapes (slews, configurations, cells), supports in front.

    Attributes
    ----------
    slew : ndarray, shape (slews,)
        [rad]
    weight : ndarray
        Of crane and load [N]
    x, y : ndarray
        Where their resultant meets the ground, carrier axes [m]
    reactions : Reactions
        On elastic floats that push and cannot pull
    bonded : ndarray, shape (supports, …)
        What each would carry if it could pull as well: the first to come below zero lifts [N]
    lean : ndarray
        Of the carrier, downhill in the direction of the boom, from the sinking floats [rad]
    """

    slew: Array
    weight: Array
    x: Array
    y: Array
    reactions: Reactions
    bonded: Array
    lean: Array

    @property
    def lightest(self) -> Array:
        """Least reaction of all supports; 0 once one has lifted, NaN once the crane tips [N]."""
        return np.asarray(self.reactions.force.min(axis=0))


def slews_of(setup: Setup, *, step: float = STEP) -> Array:
    """Slew angles through a setup's sector, in even steps with the setup's own among them.

    Parameters
    ----------
    setup : Setup
    step : float
        [rad]

    Returns
    -------
    ndarray, shape (slews,)
        Rising, from -180 to 180 degrees at most; a single slew angle stays one [rad]
    """
    if len(setup.slew) == 1:
        return setup.slew
    edge = rear_sector(setup.support)
    half = edge if setup.sector == "over the rear" else np.pi
    even = np.linspace(-half, half, 2 * round(half / step) + 1)
    jacks = np.array([np.arctan2(y, x) for x, y in setup.support.points])
    wanted = np.concatenate([even, setup.slew, jacks[np.abs(jacks) <= half]])
    _, first = np.unique(np.round(wanted, 9), return_index=True)
    return np.asarray(wanted[first])


def float_loads(at: Response, *, slew: Array) -> FloatLoads:
    """Share crane and load among the supports.

    Parameters
    ----------
    at : Response
    slew : ndarray, shape (slews,)
        [rad]
    """
    slew = np.atleast_1d(np.asarray(slew, dtype=float))
    weight, x, y = resultant(at, balance=turned(at, slew=slew))
    support = at.setup.support
    reactions = support_reactions(support, weight=weight, x=x, y=y)
    ahead = np.cos(slew)[:, None, None], np.sin(slew)[:, None, None]
    return FloatLoads(
        slew=slew,
        weight=weight,
        x=x,
        y=y,
        reactions=reactions,
        bonded=bonded_reactions(support, weight=weight, x=x, y=y),
        lean=reactions.lean_x * ahead[0] + reactions.lean_y * ahead[1],
    )


def bonded_reactions(support: Support, *, weight: Array, x: Array, y: Array) -> Array:
    """Share a resultant among equal springs that can push and pull, under a rigid carrier.

    F_s = k (a + b x_s + c y_s) with the sums of force and moment met; k drops out.

    Parameters
    ----------
    support : Support
    weight : ndarray
        [N]
    x, y : ndarray
        Where it acts, carrier axes [m]

    Returns
    -------
    ndarray, shape (supports, …)
        Below zero where the support would have to pull [N]
    """
    points = np.array(support.points)
    columns = np.concatenate([np.ones((len(points), 1)), points], axis=1)
    share = columns @ np.linalg.inv(columns.T @ columns)
    return np.asarray(np.einsum("sk,k...->s...", share, np.stack([weight, weight * x, weight * y])))


def lift_utilisation(loads: FloatLoads) -> Array:
    """How near the lightest support is to lifting: 1 - n F_least / W, one when it lifts.

    Returns
    -------
    ndarray, shape (slews, configurations, cells)
        [1]
    """
    return np.asarray(1.0 - len(loads.bonded) * loads.bonded.min(axis=0) / loads.weight)


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class GroundLoads:
    """Largest reaction and ground pressure at each slew angle, on mats of one size.

    Attributes
    ----------
    loads : FloatLoads
        Of one configuration and one cell
    force, pressure : ndarray, shape (supports, slews)
        [N], [Pa]
    area : float
        Of each mat [m2]
    """

    loads: FloatLoads
    force: Array
    pressure: Array
    area: float


def ground_loads(at: Response, *, slew: Array, mat: float | None = None) -> GroundLoads:
    """Reactions and ground pressure of one lift through a range of slew angles.

    Parameters
    ----------
    at : Response
        Of one configuration and one cell
    slew : ndarray, shape (slews,)
        [rad]
    mat : float, optional
        Area of the mat under each float; default: the float itself [m2]

    Raises
    ------
    ValueError
        If the mat has no area, or less than the float on it.
    """
    area = mat_area(at.setup.support, mat=mat)
    loads = float_loads(at, slew=slew)
    force = loads.reactions.force[:, :, 0, 0]
    return GroundLoads(
        loads=loads, force=force, pressure=ground_pressure(force, area=area), area=area
    )


def mat_area(support: Support, *, mat: float | None) -> float:
    """Area that presses on the ground.

    Parameters
    ----------
    support : Support
    mat : float or None
        [m2]

    Returns
    -------
    float
        [m2]

    Raises
    ------
    ValueError
        If the mat is smaller than the float, which then stands over its edge.
    """
    if mat is None:
        return support.area
    if not support.area <= mat < 100.0:
        raise ValueError(
            f"A mat of {mat:g} m2 does not carry a float of {support.area:g} m2. Give the area of "
            f"one mat, from {support.area:g} m2 to 100 m2."
        )
    return mat
