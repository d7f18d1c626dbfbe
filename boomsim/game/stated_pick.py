"""One pick of the game: what is asked, and what is true of it."""

from dataclasses import dataclass

import numpy as np

from boomsim.mechanics.geometry import Array
from boomsim.rating.comparison.capacity_envelope import SAME
from boomsim.rating.limits.limit_kind import Limit
from boomsim.rating.setup import Setup
from boomsim.rating.strategies import letter

NONE = "N"
"""The answer that none of the ways carries the load."""

BEST, GOOD = 2, 1
"""Points for the way that carries most, and for another that carries the load too [1]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Pick:
    """A load at a radius, and some ways out to one boom length.

    Attributes
    ----------
    length, radius : float
        [m]
    load : float
        Gross, so with hook block, slings and rope in it [kg]
    extension : ndarray, shape (ways, moving sections)
        In the order of the letters [1]
    capacity : ndarray, shape (ways,)
        Rated gross load of each [kg]
    limits : tuple of Limit
        What sets each
    """

    setup: Setup
    length: float
    radius: float
    load: float
    extension: Array
    capacity: Array
    limits: tuple[Limit, ...]

    @property
    def letters(self) -> tuple[str, ...]:
        """Answers that may be given; the last is that none carries it."""
        return (*(letter(way) for way in range(len(self.capacity))), NONE)

    @property
    def best(self) -> int:
        """The way that carries most."""
        return int(np.argmax(self.capacity))

    @property
    def right(self) -> tuple[str, ...]:
        """Answers that get all points: who carries most, several where they are level."""
        if not self.carries[self.best]:
            return (NONE,)
        level = self.capacity >= self.capacity[self.best] * (1.0 - SAME)
        return tuple(letter(int(way)) for way in np.flatnonzero(level))

    @property
    def carries(self) -> np.ndarray:
        """Which ways carry the load, shape (ways,)."""
        return np.asarray(self.capacity >= self.load)

    def points(self, chosen: str) -> int:
        """Points for an answer.

        Parameters
        ----------
        chosen : str
            One of `letters`
        """
        if chosen in self.right:
            return BEST
        return GOOD if chosen != NONE and self.carries[self.letters.index(chosen)] else 0
