"""Why an effect takes nothing: what sets the figure, and what the effect touches instead.

The rated load is hung once more, without the effect and with it. A limit is touched when its
utilisation changes; the one that sets the figure is not, and so nothing is lost.
"""

from dataclasses import dataclass, replace

import numpy as np

from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.geometry import Array
from boomsim.rating.capacity import Rating
from boomsim.rating.lift_response import Response, respond
from boomsim.rating.limits.limit_kind import PERMISSIBLE_VALUE, STABILITY, STRENGTH, Limit
from boomsim.rating.overload.tip_over import worst_direction
from boomsim.rating.resultant import turned
from boomsim.rating.setup import EVERY_WAY, Setup

NOTHING = 5e-4
"""Share of a rated load, or change of a utilisation, that is shown as nothing [1]."""

WITHIN, BEYOND = "within the allowance", "beyond the allowance"
"""What the rule's allowances have of an effect: strength bears it already, or a part of it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reason:
    """Why an effect takes nothing at a place.

    Attributes
    ----------
    limit : Limit
        That sets the figure, and that the effect does not touch
    touches : tuple of str
        What the other limits set that it touches: `STABILITY`, `STRENGTH`, `PERMISSIBLE_VALUE`
    allowed : bool
        It would touch the limit, but the rule's allowances have it already
    slew : float or None
        Direction in which stability sets the figure [rad]
    elsewhere : bool
        It takes from stability at other slew angles
    """

    limit: Limit
    touches: tuple[str, ...]
    allowed: bool
    slew: float | None
    elsewhere: bool


def allowance_of(before: Setup, after: Setup) -> str | None:
    """Say whether the rule's allowances have all of what disturbs one of two setups.

    Parameters
    ----------
    before, after : Setup
        Without the disturbance and with it

    Returns
    -------
    str or None
        `WITHIN` or `BEYOND`; None where there are no allowances, or nothing disturbs
    """
    rule, calm, given = after.rule, before.disturbances, after.disturbances
    if rule.allowances is None or calm == given:
        return None
    return WITHIN if rule.strains(given) == rule.strains(calm) else BEYOND


def why_nothing(before: Rating, after: Setup, *, place: int, farther: float = 0.0) -> Reason | None:
    """Find out what sets the figure at a place, and what an effect touches instead.

    Parameters
    ----------
    before : Rating
        Without the effect, of shape (places, 1)
    after : Setup
        With it
    place : int
    farther : float
        Added to the radius [m]

    Returns
    -------
    Reason or None
        None where nothing is rated
    """
    number = int(before.governing[place, 0])
    if number < 0:
        return None
    limit = before.limits[number]
    # At the same slew angles, for what acts across is rated at more of them.
    setup, after = _at_one_slew(before.setup, after)
    one, other = _hung(before, setup, place), _hung(before, after, place, farther=farther)
    touched = _touched(one, other)
    stability = limit.set_by == STABILITY
    rest = {
        b.set_by for b, is_it in zip(before.limits, touched, strict=True) if is_it and b != limit
    }
    return Reason(
        limit=limit,
        touches=tuple(
            family for family in (STABILITY, STRENGTH, PERMISSIBLE_VALUE) if family in rest
        ),
        allowed=_is_allowed(before, setup, after, place=place, farther=farther)[number],
        slew=float(setup.slew[worst_direction(one)[0]]) if stability else None,
        elsewhere=bool(np.any(_changed(*(_tipping_all_around(at) for at in (one, other))))),
    )


def _hung(before: Rating, setup: Setup, place: int, *, farther: float = 0.0) -> Response:
    own = slice(place, place + 1)
    return respond(
        setup,
        boom=condense(setup.machine, extension=before.boom.layout.extension[own]),
        load=before.capacity[own],
        radius=before.radius[own] + farther,
    )


def _touched(one: Response, other: Response) -> np.ndarray:
    # Infinite without a load and with one is not touched either.
    with np.errstate(invalid="ignore"):
        return np.nan_to_num(np.abs(other.utilisation - one.utilisation)[:, 0, 0]) > NOTHING


def _is_allowed(
    before: Rating, setup: Setup, after: Setup, *, place: int, farther: float
) -> list[bool]:
    """Whether each limit would be touched if the rule had no allowances."""
    if after.rule.allowances is None:
        return [False] * len(before.limits)
    bare = [replace(s, rule=s.rule.without_allowances()) for s in (setup, after)]
    one = _hung(before, bare[0], place)
    other = _hung(before, bare[1], place, farther=farther)
    return [bool(touched) for touched in _touched(one, other)]


def _at_one_slew(before: Setup, after: Setup) -> tuple[Setup, Setup]:
    slew = np.unique(np.concatenate([before.slew, after.slew]))
    return replace(before, slew=slew), replace(after, slew=slew)


def _tipping_all_around(at: Response) -> Array:
    return np.asarray(turned(at, slew=EVERY_WAY).tipping_load.min(axis=1))


def _changed(one: Array, other: Array) -> np.ndarray:
    known = np.isfinite(one) & np.isfinite(other)
    return np.asarray(known & (np.abs(other - one) > NOTHING * np.where(known, one, 1.0)))
