"""The whole weight of crane and load, and where it meets the ground. All float loads follow."""

import numpy as np

from boomsim.gravity import GRAVITY
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.stability.overturning import Overturning, overturning, zero_moment_point
from boomsim.rating.lift_response import Response


def turned(at: Response, *, slew: Array) -> Overturning:
    """Balance of a response at other slew angles; the boom itself does not feel them.

    Parameters
    ----------
    slew : ndarray, shape (slews,)
        [rad]
    """
    return overturning(
        at.boom,
        placed=at.placed,
        state=at.state,
        support=at.setup.support,
        slew=slew,
        disturbances=at.setup.disturbances,
    )


def resultant(at: Response, *, balance: Overturning) -> tuple[Array, Array, Array]:
    """Weight of crane and load, and where it meets the ground with wind, lean and pull in it.

    Parameters
    ----------
    balance : Overturning
        Of this response, at the slew angles that are asked for: see :func:`turned`

    Returns
    -------
    weight, x, y : ndarray, shape (slews, configurations, cells)
        [N], carrier axes [m]
    """
    weight = GRAVITY * (at.placed.mass.sum() + at.state.load)
    x, y = zero_moment_point(balance, weight=weight, load=at.state.load)
    return np.broadcast_to(weight, x.shape), x, y
