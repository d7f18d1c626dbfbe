"""What eats capacity: one disturbance at a time, and what the chart would then have to say.

Each taker changes the setup (or the radius) a little and the place is rated anew. The boom angle is
the one set without the taker, as an operator sets it who does not know of it.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.mechanics.geometry import Array
from boomsim.rating.capacity import Rating
from boomsim.rating.limits.kind import Limit
from boomsim.rating.losses.soft_ground import on_soft_ground
from boomsim.rating.losses.takers import (
    USUAL,
    Amounts,
    Taking,
    check_amounts,
    last_takings,
    takings,
)
from boomsim.rating.places import Places, governing_of, rate_places
from boomsim.rating.setup import Setup


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Taker:
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
    capacity : ndarray, shape (places,)
        What is left [kg]
    governing : tuple of (Limit or None)
        With it
    """

    name: str
    words: str
    amount: float | None
    quantity: str | None
    capacity: Array
    governing: tuple[Limit | None, ...]


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Losses:
    """What each taker costs at each place.

    Attributes
    ----------
    setup : Setup
    places : Places
    length : ndarray, shape (places,)
        Boom length [m]
    capacity : ndarray, shape (places,)
        Before any taker [kg]
    governing : tuple of (Limit or None)
    takers : tuple of Taker
    """

    setup: Setup
    places: Places
    length: Array
    capacity: Array
    governing: tuple[Limit | None, ...]
    takers: tuple[Taker, ...]

    @property
    def loss(self) -> Array:
        """Capacity that each taker takes, shape (takers, places) [kg]."""
        left = np.array([taker.capacity for taker in self.takers])
        return np.asarray(self.capacity - left)

    @property
    def share(self) -> Array:
        """The same over the capacity, shape (takers, places) [1]."""
        with np.errstate(divide="ignore", invalid="ignore"):
            return np.asarray(self.loss / self.capacity)


def losses(setup: Setup, *, places: Places, amounts: Amounts = USUAL) -> Losses:
    """Rate every place with every taker, one at a time.

    Parameters
    ----------
    setup : Setup
    places : Places
    amounts : Amounts

    Returns
    -------
    Losses

    Raises
    ------
    ValueError
        If an amount is outside its range, or a place has no rated load.
    """
    check_amounts(amounts)
    before = rate_places(setup, places)
    blank = np.isnan(before.capacity[:, 0])
    if np.any(blank):
        which = int(np.argmax(blank))
        raise ValueError(
            f"There is no rated load at a radius of {places.radius[which]:.2f} m with a boom of "
            f"{before.boom.layout.boom_length[which]:.2f} m. Choose a radius that it reaches."
        )
    takers = [
        *(_taken(taking, places) for taking in takings(setup, amounts)),
        _soft(setup, places, before, amounts.soft),
        *(_taken(taking, places) for taking in last_takings(setup, amounts)),
    ]
    return Losses(
        setup=setup,
        places=places,
        length=before.boom.layout.boom_length,
        capacity=before.capacity[:, 0],
        governing=governing_of(before),
        takers=tuple(takers),
    )


def _taken(taking: Taking, places: Places) -> Taker:
    ratings = [rate_places(setup, places, farther=taking.farther) for setup in taking.setups]
    left = np.array([np.nan_to_num(r.capacity[:, 0]) for r in ratings])
    worst = np.argmin(left, axis=0)
    cell = np.arange(left.shape[1])
    return Taker(
        name=taking.name,
        words=taking.words,
        amount=taking.amount,
        quantity=taking.quantity,
        capacity=left[worst, cell],
        governing=tuple(governing_of(ratings[worst[k]])[k] for k in cell),
    )


def _soft(setup: Setup, places: Places, before: Rating, soft: float) -> Taker:
    found = [
        on_soft_ground(setup, places, place=k, firm=before, soft=soft)
        for k in range(len(places.radius))
    ]
    return Taker(
        name="soft ground",
        words="soft under the boom's side, stiffness",
        amount=soft,
        quantity="share",
        capacity=np.array([capacity for capacity, _ in found]),
        governing=tuple(limit for _, limit in found),
    )
