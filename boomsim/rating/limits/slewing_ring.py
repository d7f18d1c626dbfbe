"""Slewing ring: moment of all that turns, and of the load, about the axis of rotation."""

import numpy as np

from boomsim.gravity import GRAVITY
from boomsim.machine.model import CALM
from boomsim.mechanics.external_loads import gravity_in_base, gusts
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.hoisting_factor import hoisting_factor
from boomsim.mechanics.stability.overturning import wind_on_sections
from boomsim.rating.limits.limit_kind import PERMISSIBLE, PERMISSIBLE_VALUE, Case, Kind, Ultimate


def ring_moment(case: Case) -> Array:
    """Moment at the ring's height of weights, load, wind and side pull, on ground that leans.

    Along the boom and across it, the load times its hoisting factor; both planes as a vector.

    Returns
    -------
    ndarray, shape (configurations, cells)
        [N m]
    """
    at, change, high = case.strained_placed, case.strains, case.machine.ring.up
    mass = at.mass[: at.turning]
    phi = hoisting_factor(change.hoist_speed, hoist_class=change.hoist_class)
    weight = GRAVITY * phi * case.strained.load
    ahead, level, left = gravity_in_base(1.0, 0.0, lean=change.lean, lean_across=change.lean_across)
    hook = at.head_up - high
    outwards = -level * np.tensordot(mass, at.out, axes=1) + weight * at.head_out * -level / GRAVITY
    aside = -level * np.tensordot(mass, at.left, axes=1) + weight * at.head_left * -level / GRAVITY
    if change == CALM:
        return np.abs(outwards)
    lifted = np.tensordot(mass, at.up - high, axes=1)
    outwards = outwards + ahead * lifted + weight * hook * ahead / GRAVITY
    aside = aside + left * lifted + weight * hook * (left / GRAVITY + change.side_pull)
    behind, across = gusts(change)
    for pressure, is_across in ((behind, False), (across, True)):
        push, height = wind_on_sections(
            case.boom, state=case.strained, pressure=pressure, across=is_across
        )
        turning = np.sum(push * (height - high), axis=0)
        turning = turning + pressure * change.load_area * case.strained.load * hook
        if is_across:
            aside = aside + turning
        else:
            outwards = outwards + turning
    return np.hypot(outwards, aside)


def _utilisation(case: Case) -> Array:
    return ring_moment(case) / case.machine.ring.moment


SLEWING_RING = Kind(
    name="slewing ring",
    words="the slewing ring",
    short="slewing ring",
    code="s",
    utilisation=_utilisation,
    boom_alone=False,
    set_by=PERMISSIBLE_VALUE,
    passed=PERMISSIBLE,
    ultimate=Ultimate(times=1.75, words="the slewing ring tears"),
)
