"""Where along a way something is first used up."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from boomsim.mechanics.geometry import Array

POINTS = (61, 13, 13, 13)
"""Places tried in each round; the next goes between the last that is short of one and the first
that is not. After four the straight line between two of them is good to some 1e-9 of the way."""

UtilisationsAt = Callable[[Array], Array]
"""From places along a way, shape (places,), to shape (rows, places); NaN: no equilibrium."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Crossing:
    """Where it is, and what is used up there.

    Attributes
    ----------
    at : float
        The place [unit of the way]
    row : int
        Of the utilisations; -1 where the boom finds no equilibrium any more
    """

    at: float
    row: int


def first_beyond(utilisations_at: UtilisationsAt, *, start: float, end: float) -> Crossing | None:
    """Go along a way until one of some utilisations comes to one.

    Parameters
    ----------
    utilisations_at : callable
    start, end : float
        Of the way, in either direction [unit of the way]

    Returns
    -------
    Crossing or None
        None where nothing is used up as far as the end
    """
    near, far = start, end
    for points in POINTS:
        at = np.linspace(near, far, points)
        utilisation = utilisations_at(at)
        worst = np.where(np.isnan(utilisation), np.inf, utilisation).max(axis=0)
        beyond = np.flatnonzero(worst >= 1.0)
        if not len(beyond):
            return None
        k = int(beyond[0])
        if k == 0:
            return Crossing(at=float(at[0]), row=_row(utilisation[:, 0]))
        near, far = float(at[k - 1]), float(at[k])
    below, above = worst[k - 1], worst[k]
    share = (1.0 - below) / (above - below) if np.isfinite(above) else 0.0
    return Crossing(at=near + share * (far - near), row=_row(utilisation[:, k]))


def _row(utilisation: Array) -> int:
    return -1 if np.isnan(utilisation).any() else int(np.argmax(utilisation))
