"""Starting guesses, interpolated between a few solved states.

The rotations of a configuration are a smooth function of load and boom angle (or radius), so that
a polynomial through a few dozen solved states meets all others to some 1e-7 of themselves, and one
sweep proves them. Where the function is not smooth (a pad that changes sides within its play) the
polynomial is a start like any other, and sweeps do the rest.

Derived in docs/theory.md, section 3.
"""

from dataclasses import replace
from functools import cache

import numpy as np

from boomsim.mechanics.boom.fixed_point_iteration import relax
from boomsim.mechanics.boom.load_cases import AtStations, Lifts
from boomsim.mechanics.boom.luffing_plane import LuffingPlane
from boomsim.mechanics.geometry import Array

BY_ANGLE, BY_LOAD = 10, 5
"""States to pass through: that many boom angles or radii, that many loads."""

MANY = 20 * BY_ANGLE * BY_LOAD
"""Cells of a configuration from which on the few solved states are paid back."""

FINE = 1e-8
"""Tolerance of the few: far below that of the many."""

SOON = 15
"""Sweeps in which the few must converge; a boom that takes longer is near its critical load, where
a polynomial does not follow it."""


class Between:
    """A polynomial through a few solved states of each configuration.

    Parameters
    ----------
    lifts : Lifts
        All cells, whose least and greatest loads and angles the few span
    """

    def __init__(self, lifts: Lifts) -> None:
        self.held, self.load = _Span(lifts.held), _Span(lifts.load)
        x, y, fit = _places()
        few, self.holds = _solved(replace(lifts, held=self.held.value(x), load=self.load.value(y)))
        self.through = few @ fit

    def start(self, lifts: Lifts, *, out: Array) -> None:
        """Rotations to start from, shape (configurations, K, cells) [rad]."""
        x, y = self.held.place(lifts.held), self.load.place(lifts.load)
        np.matmul(self.through, _terms(x, y), out=out)


def between(lifts: Lifts) -> Between | None:
    """Find a polynomial where it pays: none if cells are few, or one of the few has no solution."""
    if lifts.load.shape[1] < MANY:
        return None
    found = Between(lifts)
    return found if found.holds else None


def _solved(few: Lifts) -> tuple[Array, bool]:
    """Rotations, and whether all have converged within reach."""
    room = AtStations.empty(few)
    plane = LuffingPlane(few, room)
    room.rotation[...] = plane.start()
    found = relax(plane.turned, start=room.rotation, tolerance=FINE, most=SOON)
    return found.rotation, bool((found.converged & plane.reaches).all())


@cache
def _places() -> tuple[Array, Array, Array]:
    """Places of the few from -1 to 1, close at the ends, and what fits a polynomial to them."""
    angles, loads = (np.cos(np.pi * np.arange(n) / (n - 1)) for n in (BY_ANGLE, BY_LOAD))
    x, y = np.repeat(angles, BY_LOAD)[None], np.tile(loads, BY_ANGLE)[None]
    return x, y, np.linalg.inv(_terms(x, y)[0])


class _Span:
    """From the least to the greatest value of each configuration, mapped to -1 to 1."""

    def __init__(self, values: Array) -> None:
        least, most = (pick(values, axis=1, keepdims=True) for pick in (np.min, np.max))
        self.middle, half = (most + least) / 2, (most - least) / 2
        self.half = np.where(half > 0.0, half, 1.0)

    def place(self, values: Array) -> Array:
        return np.asarray((values - self.middle) / self.half)

    def value(self, places: Array) -> Array:
        return np.asarray(self.middle + self.half * places)


def _terms(x: Array, y: Array) -> Array:
    """Products of Chebyshev polynomials of two places, shape (configurations, terms, cells)."""
    of_x, of_y = _chebyshev(x, BY_ANGLE), _chebyshev(y, BY_LOAD)
    both = of_x[:, :, None] * of_y[:, None]
    return both.reshape(len(x), -1, x.shape[1])


def _chebyshev(x: Array, count: int) -> Array:
    """T_0 to T_(count-1): T_n = 2 x T_(n-1) - T_(n-2)."""
    found = np.ones((len(x), count, x.shape[1]))
    found[:, 1] = x
    for n in range(2, count):
        found[:, n] = 2.0 * x * found[:, n - 1] - found[:, n - 2]
    return found
