"""What eats capacity: one disturbance at a time, and what the chart would then have to say.

Each effect changes the setup (or the radius) a little and the place is rated again. The boom angle
is the one set without the effect, as an operator sets it who does not know of it.

Derived in docs/theory.md, section 11.
"""

from dataclasses import dataclass, replace
from functools import partial

import numpy as np

from boomsim.files.work_progress import Told, counted
from boomsim.mechanics.geometry import Array, layout
from boomsim.rating.capacity import Rating
from boomsim.rating.chart_places import Places, governing_of, rate_places
from boomsim.rating.empty_hook.less_than_the_hook import refuse_under_hook, under_hook
from boomsim.rating.limits.limit_kind import Limit
from boomsim.rating.longest_boom import refuse_too_long
from boomsim.rating.losses.capacity_effects import (
    Amounts,
    AskedEffect,
    asked_effects,
    check_amounts,
    last_effects,
    usual_amounts,
)
from boomsim.rating.losses.losses_reasons import NOTHING, Reason, allowance_of, why_nothing
from boomsim.rating.losses.soft_ground import on_soft_ground
from boomsim.rating.setup import Setup

SOFT = "soft ground"
"""Name of the effect of the ground under the boom's side."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Effect:
    """One thing that eats capacity.

    Attributes
    ----------
    name : str
        Stable key
    words : str
        How it reads, without its amount
    amount : float or None
        [SI unit of the quantity]
    quantity : str or None
        In `boomsim.units.QUANTITIES`
    before, capacity : ndarray, shape (places,)
        What is rated without it, in the direction in which it is counted, and what is left [kg]
    governing : tuple of (Limit or None)
        With it
    why : tuple of (Reason or None)
        Where it takes nothing
    allowance : str or None
        `WITHIN` or `BEYOND` what the rule's allowances have of it; None where they have none
    slew : ndarray, shape (places,), or None
        Where it is counted in one direction, whatever the sector asked for [rad]
    corners : tuple of str
        The support that it is about at each place; empty where it is about none
    """

    name: str
    words: str
    amount: float | None
    quantity: str | None
    before: Array
    capacity: Array
    governing: tuple[Limit | None, ...]
    why: tuple[Reason | None, ...]
    allowance: str | None = None
    slew: Array | None = None
    corners: tuple[str, ...] = ()

    @property
    def loss(self) -> Array:
        """Capacity lost to it, shape (places,) [kg]."""
        return np.asarray(self.before - self.capacity)

    @property
    def share(self) -> Array:
        """The same over what is rated without it; 0 where nothing is, shape (places,) [1]."""
        return np.asarray(self.loss / np.where(self.before > 0.0, self.before, np.inf))


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Losses:
    """What each effect costs at each place.

    Attributes
    ----------
    setup : Setup
    places : Places
    length : ndarray, shape (places,)
        Boom length [m]
    capacity : ndarray, shape (places,)
        Before any effect [kg]
    governing : tuple of (Limit or None)
    effects : tuple of Effect
    """

    setup: Setup
    places: Places
    length: Array
    capacity: Array
    governing: tuple[Limit | None, ...]
    effects: tuple[Effect, ...]

    @property
    def loss(self) -> Array:
        """Capacity lost to each effect, shape (effects, places) [kg]."""
        return np.array([effect.loss for effect in self.effects])

    @property
    def share(self) -> Array:
        """The same over what is rated without it, shape (effects, places) [1]."""
        return np.array([effect.share for effect in self.effects])


def losses(
    setup: Setup,
    *,
    places: Places,
    amounts: Amounts | None = None,
    only: str | None = None,
    told: Told | None = None,
) -> Losses:
    """Rate every place with every effect, one at a time.

    Parameters
    ----------
    setup : Setup
    places : Places
    amounts : Amounts, optional
        Default: the usual ones
    only : str, optional
        Name of the one effect that is wanted; default: all of them
    told : callable, optional
        Hears what is done

    Raises
    ------
    ValueError
        If an amount is outside its range, or a place has no rated load.
    """
    amounts = usual_amounts(setup.machine) if amounts is None else amounts
    check_amounts(amounts)
    lengths = layout(setup.machine.boom, extension=places.extension).boom_length
    refuse_too_long(setup, length=lengths)
    before = rate_places(setup, places)
    _refuse_blank(before, places)
    refuse_under_hook(before)
    first, last = (
        {one.name: partial(_taken, setup, one, places, before) for one in of(setup, amounts)}
        for of in (asked_effects, last_effects)
    )
    soft = {SOFT: partial(_soft, setup, places, before, amounts.soft)}
    works = [work for name, work in (first | soft | last).items() if only in (None, name)]
    effects = [work() for work in counted(works, what="rating again", told=told)]
    return Losses(
        setup=setup,
        places=places,
        length=before.boom.layout.boom_length,
        capacity=before.capacity[:, 0],
        governing=governing_of(before),
        effects=tuple(effects),
    )


def _refuse_blank(before: Rating, places: Places) -> None:
    """There must be something to lose."""
    blank = ~(before.capacity[:, 0] > 0.0)
    if not np.any(blank):
        return
    which = int(np.argmax(blank))
    radius, length = places.radius[which], before.boom.layout.boom_length[which]
    limit = governing_of(before)[which]
    if limit is None:
        raise ValueError(
            f"There is no rated load at a radius of {radius:.2f} m with a boom of "
            f"{length:.2f} m. Choose a radius that it reaches."
        )
    raise ValueError(
        f"Nothing may be lifted at a radius of {radius:.2f} m with a boom of {length:.2f} m: "
        f"{limit.words} is used up without a load. Choose a smaller radius."
    )


def _taken(setup: Setup, asked: AskedEffect, places: Places, unchanged: Rating) -> Effect:
    before = [rate_places(one, places) for one in asked.against] or [unchanged]
    after = [rate_places(one, places, farther=asked.farther) for one in asked.setups]
    had, left = (np.array([_left_to_lift(r) for r in each]) for each in (before, after))
    cell = np.arange(len(places.radius))
    lost = had - left
    # The first of those that are as bad: two corners that mirror each other differ by a rounding.
    worst = np.argmax(lost >= lost.max(axis=0) - NOTHING * had.max(axis=0), axis=0)
    own = worst if asked.against else 0 * worst
    counted = [after[n].setup for n in worst]
    found = Effect(
        name=asked.name,
        words=asked.words,
        amount=asked.amount,
        quantity=asked.quantity,
        before=had[own, cell],
        capacity=left[worst, cell],
        governing=tuple(
            governing_of(after[n])[k] if left[n, k] > 0.0 else None for k, n in enumerate(worst)
        ),
        why=(),
        allowance=allowance_of(setup, counted[0]),
        slew=np.array([one.slew[0] for one in counted]) if asked.against else None,
        corners=tuple(asked.corners[n] for n in worst) if asked.corners else (),
    )
    return _explained(found, [before[n] for n in own], counted, farther=asked.farther)


def _left_to_lift(rating: Rating) -> Array:
    """Rated load of every place; 0 where it is less than hangs there already [kg]."""
    capacity = np.nan_to_num(rating.capacity[:, 0])
    return np.where(under_hook(rating)[:, 0], 0.0, capacity)


def _explained(
    effect: Effect, before: list[Rating], after: list[Setup], *, farther: float = 0.0
) -> Effect:
    """Say why it takes nothing, where it does."""
    nothing = np.abs(effect.share) < NOTHING
    why = tuple(
        why_nothing(before[k], after[k], place=k, farther=farther) if nothing[k] else None
        for k in range(len(nothing))
    )
    return replace(effect, why=why)


def _soft(setup: Setup, places: Places, before: Rating, soft: float) -> Effect:
    found = [
        on_soft_ground(setup, places, place=k, firm=before, soft=soft)
        for k in range(len(places.radius))
    ]
    effect = Effect(
        name=SOFT,
        words="soft ground under the boom's side, stiffness",
        amount=soft,
        quantity="share",
        before=before.capacity[:, 0],
        capacity=np.array([one.capacity for one in found]),
        governing=tuple(one.limit for one in found),
        why=(),
    )
    return _explained(effect, [before] * len(found), [one.setup for one in found])
