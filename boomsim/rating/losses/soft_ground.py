"""Soft ground under one side: the load leans the crane, the lean carries the load farther out."""

from dataclasses import dataclass, replace

import numpy as np

from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.stability.support_reactions import support_reactions
from boomsim.rating.around.float_loads import float_loads
from boomsim.rating.capacity import Rating
from boomsim.rating.chart_places import Places, governing_of, rate_places
from boomsim.rating.lift_response import respond
from boomsim.rating.limits.limit_kind import Limit
from boomsim.rating.overload.tip_over import worst_direction
from boomsim.rating.setup import Setup
from boomsim.rating.setup_variants import with_disturbances

SOFT_TRIES = 12
"""Trials of lean and load."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class OnSoftGround:
    """One place, rated on soft ground.

    Attributes
    ----------
    capacity : float
        [kg]
    setup : Setup
        Turned to where it would tip, with the lean that the load makes
    """

    capacity: float
    limit: Limit | None
    setup: Setup


def on_soft_ground(
    setup: Setup, places: Places, *, place: int, firm: Rating, soft: float
) -> OnSoftGround:
    """Rate one place whose load makes the crane lean, the lean and the load in agreement.

    lean -> capacity -> lean: a smaller load leans less, so the trials close in from both sides.
    """
    own = slice(place, place + 1)
    one = Places(extension=places.extension[own], radius=places.radius[own])
    boom = condense(setup.machine, extension=one.extension)
    most, limit = float(firm.capacity[place, 0]), governing_of(firm)[place]
    aimed = _aimed(setup, boom, load=most, radius=one.radius)
    capacity, leaning = most, aimed
    for trial in range(SOFT_TRIES):
        lean = soft_lean(aimed, boom=boom, load=capacity, radius=float(one.radius[0]), soft=soft)
        if not np.isfinite(lean):
            return OnSoftGround(capacity=0.0, limit=limit, setup=leaning)
        leaning = with_disturbances(aimed, lean=aimed.disturbances.lean + lean)
        rating = rate_places(leaning, one)
        now, limit = float(np.nan_to_num(rating.capacity[0, 0])), governing_of(rating)[0]
        if abs(now - capacity) <= 1e-5 * max(capacity, 1.0):
            break
        # Halved steps settle what plain ones may not, on ground as soft as that.
        capacity = now if trial < SOFT_TRIES // 2 else (now + capacity) / 2
    if not capacity < most:
        capacity, limit = most, governing_of(firm)[place]
    return OnSoftGround(capacity=capacity, limit=limit, setup=leaning)


def _aimed(setup: Setup, boom: Condensed, *, load: float, radius: Array) -> Setup:
    """Turn the setup to where the crane would tip."""
    at = respond(setup, boom=boom, load=np.array([[load]]), radius=radius[None])
    return replace(setup, slew=setup.slew[[worst_direction(at)[0]]])


def soft_lean(setup: Setup, *, boom: Condensed, load: float, radius: float, soft: float) -> float:
    """Lean towards the boom when the floats on its side stand on soft ground.

    Parameters
    ----------
    setup : Setup
        With one slew angle
    boom : Condensed
        Of one configuration
    load : float
        Gross load [kg]
    radius : float
        [m]
    soft : float
        Stiffness of those floats over their usual one [1]

    Returns
    -------
    float
        NaN where the crane tips [rad]
    """
    at = respond(setup, boom=boom, load=np.array([[load]]), radius=np.array([[radius]]))
    loads = float_loads(at, slew=setup.slew)
    ahead = np.array([np.cos(setup.slew[0]), np.sin(setup.slew[0])])
    boom_side = np.array(setup.support.points) @ ahead > 1e-9
    stiffness = setup.support.stiffness * np.where(boom_side, soft, 1.0)
    # A float sinks by its force over its own stiffness, so an array does as well as one value.
    uneven = replace(setup.support, stiffness=stiffness)  # type: ignore[arg-type]
    sunk = support_reactions(uneven, weight=loads.weight, x=loads.x, y=loads.y)
    return float(sunk.lean_x[0, 0, 0] * ahead[0] + sunk.lean_y[0, 0, 0] * ahead[1])
