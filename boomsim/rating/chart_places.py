"""A few places on a chart: pairs of a configuration and a radius, rated together."""

from dataclasses import dataclass

from boomsim.mechanics.geometry import Array
from boomsim.rating.capacity import Rating, rate
from boomsim.rating.limits.limit_kind import Limit
from boomsim.rating.setup import Setup


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Places:
    """Pairs of a configuration and a radius.

    Attributes
    ----------
    extension : ndarray, shape (places, moving sections)
        [1]
    radius : ndarray, shape (places,)
        [m]
    """

    extension: Array
    radius: Array


def rate_places(setup: Setup, places: Places, *, farther: float = 0.0) -> Rating:
    """Rate pairs of configuration and radius.

    Parameters
    ----------
    farther : float
        Added to every radius [m]

    Returns
    -------
    Rating
        Arrays of shape (places, 1)
    """
    return rate(setup, extension=places.extension, radius=places.radius[:, None] + farther)


def governing_of(rating: Rating) -> tuple[Limit | None, ...]:
    """Governing limit of every place of :func:`rate_places`."""
    return tuple(rating.limits[g] if g >= 0 else None for g in rating.governing[:, 0])
