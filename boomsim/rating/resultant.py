"""The whole weight of crane and load, and where it meets the ground."""

import numpy as np

from boomsim.mechanics.geometry import Array
from boomsim.mechanics.loads import GRAVITY
from boomsim.rating.response import Response


def resultant(at: Response, *, slew: Array) -> tuple[Array, Array, Array]:
    """Weight of crane and load, and where it meets the ground plane, at slew angles.

    Parameters
    ----------
    at : Response
        Of one configuration and one cell
    slew : ndarray, shape (slews,)
        [rad]

    Returns
    -------
    weight, x, y : ndarray, shape (slews,)
        [N], carrier axes [m]
    """
    placed, change = at.placed, at.setup.disturbances
    load = float(at.state.load[0, 0])
    turning = placed.mass[: placed.turning]
    carrier = placed.mass[placed.turning :]
    out = placed.out[:, 0, 0] + placed.up[:, 0, 0] * np.tan(change.lean)
    left = placed.left[:, 0, 0] + placed.up[:, 0, 0] * np.tan(change.lean_across)
    hook_up = placed.head_up[0, 0]
    moment_out = turning @ out + load * (placed.head_out[0, 0] + hook_up * np.tan(change.lean))
    moment_left = turning @ left + load * (
        placed.head_left[0, 0] + hook_up * (np.tan(change.lean_across) + change.side_pull)
    )
    cos, sin = np.cos(slew), np.sin(slew)
    sunk_out = carrier @ placed.z * np.tan(change.lean)
    sunk_left = carrier @ placed.z * np.tan(change.lean_across)
    total = placed.mass.sum() + load
    x = (
        carrier @ placed.x + cos * (moment_out + sunk_out) - sin * (moment_left + sunk_left)
    ) / total
    y = (
        carrier @ placed.y + sin * (moment_out + sunk_out) + cos * (moment_left + sunk_left)
    ) / total
    return np.full_like(cos, GRAVITY * total), x, y
