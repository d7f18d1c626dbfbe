"""Where less is rated than hangs on the empty hook already: no load is rated there."""

from dataclasses import replace

import numpy as np

from boomsim.rating.capacity import Rating
from boomsim.rating.empty_hook.empty_hook_sentences import under_hook_words
from boomsim.rating.parts_reeved import hanging_mass
from boomsim.units import show


def under_hook(rating: Rating) -> np.ndarray:
    """Which cells rate less than hook block, slings and falls weigh, or nothing at all.

    Returns
    -------
    ndarray of bool, shape (configurations, cells)
        False out of reach
    """
    length = rating.boom.layout.boom_length
    hangs = hanging_mass(rating.setup, length=length, angle=rating.angle)
    with np.errstate(invalid="ignore"):
        return np.asarray(rating.capacity < hangs)


def blank_under_hook(rating: Rating) -> Rating:
    """Leave no rated load where less could hang than hangs there already."""
    less = under_hook(rating)
    if not np.any(less):
        return rating
    return replace(
        rating,
        capacity=np.where(less, np.nan, rating.capacity),
        governing=np.where(less, -1, rating.governing),
    )


def refuse_under_hook(rating: Rating) -> None:
    """Refuse a place where no load is rated beside what hangs there already.

    Raises
    ------
    ValueError
        Names the first such place, and the way out.
    """
    places = np.argwhere(under_hook(rating))
    if not len(places):
        return
    way, cell = places[0]
    radius = show(float(rating.radius[way, cell]), "length")
    length = show(float(rating.boom.layout.boom_length[way]), "boom_length")
    raise ValueError(
        f"At a radius of {radius} with {length} of boom "
        f"{under_hook_words(rating.setup.machine).replace(' here', '')}: no load is left to hang "
        "on it. Choose a smaller radius."
    )
