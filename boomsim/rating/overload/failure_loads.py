"""Loads at which the first part gives way and at which the crane tips, many cells at once."""

from dataclasses import dataclass

import numpy as np

from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.geometry import Array
from boomsim.rating.limits.limit_kind import GIVES_WAY, TIPS, Limit
from boomsim.rating.load_search import (
    Held,
    largest_load,
    load_at_one,
    most_used,
    no_margin,
    rows_of,
)
from boomsim.rating.setup import Setup


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Ends:
    """What ends each lift as its load is raised. Shapes (configurations, cells).

    Attributes
    ----------
    failure, tipping : ndarray
        Loads of the first structural failure and of tipping; infinite where never [kg]
    gives_way : ndarray of int
        Index into `limits` of what fails first
    limits : tuple of Limit
        Of the setup without margins: those that it is rated by come first
    """

    failure: Array
    tipping: Array
    gives_way: np.ndarray
    limits: tuple[Limit, ...]


def ends_of(
    setup: Setup,
    *,
    boom: Condensed,
    rated: Array,
    held: Array,
    near: Array,
    hold: str = "angle",
) -> Ends:
    """Raise the load without any margin until something gives way, and until the crane tips.

    Parameters
    ----------
    setup : Setup
    boom : Condensed
        Of `c` configurations
    rated : ndarray, shape (c, cells)
        Rated loads [kg]
    held : ndarray, shape (c, cells)
        What is kept: boom angles with the rated loads on [rad], or loaded radii [m]
    near : ndarray, shape (c, cells)
        Tipping loads, roughly: where the search starts [kg]
    hold : str
        "angle" or "radius"
    """
    real = no_margin(setup)
    most = np.maximum(largest_load(real), 10.0 * rated)
    hung = Held(real, boom=boom, rated=rated, held=held, hold=hold).hung
    limits = hung(rated).limits
    breaks, tips = (rows_of(limits, kind) for kind in (GIVES_WAY, TIPS))

    def meet(mask: np.ndarray, first: Array, collapse: bool) -> Array:
        def utilisation_of(load: Array) -> Array:
            return np.asarray(hung(load).utilisation[mask])

        low = np.zeros_like(first)
        return load_at_one(utilisation_of, low=low, high=most, first=first, collapse=collapse)

    failure = meet(breaks, 1.5 * rated, True)
    tipping = meet(tips, np.where(np.isfinite(near), near, rated), False)
    utilisation = hung(np.minimum(failure, most)).utilisation
    return Ends(
        failure=failure,
        tipping=tipping,
        gives_way=most_used(utilisation, limits=limits, rows=breaks),
        limits=limits,
    )
