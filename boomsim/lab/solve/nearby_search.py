"""Rated capacities where ones nearby are known: loads about them, all tried in one call.

The same question as :func:`boomsim.rating.capacity.rate` asks (at which load does the most used
limit reach one?) of the same :func:`boomsim.rating.lift_response.respond`; a search that starts
beside the answer needs one call where a search from nothing needs six. What these trials do not
enclose is left to `rate`.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.mechanics.geometry import Array
from boomsim.rating.lift_response import Response
from boomsim.rating.setup import Setup

TRIALS = np.array([0.93, 0.98, 0.995, 1.0, 1.005, 1.02, 1.07])
"""Shares of the guess that are tried: closest where it most likely lies [1]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Found:
    """A rated capacity.

    Attributes
    ----------
    capacity : float
        NaN where the boom angle there is not allowed [kg]
    limit : int
        That governs; -1 where there is no capacity
    """

    capacity: float
    limit: int


def goes(setup: Setup) -> bool:
    """Whether capacities may be found so: not on tyres, which a load can relieve as well.

    A crane that rests too hard on a tyre without any load is rated nothing, though a load about a
    guess may be found to bear.
    """
    return setup.support.strength is None


def guesses(radii: Array, capacity: Array, wanted: Array) -> Array:
    """Guess capacities from those at neighbouring radii.

    Capacity falls about as one over the lever arm, so its reciprocal is nearly straight; it is
    drawn on by no more than one step beyond the ends.

    Parameters
    ----------
    radii, capacity : ndarray, shape (n,)
        Known, radii growing [m], [kg]
    wanted : ndarray, shape (m,)
        Radii to guess at [m]

    Returns
    -------
    ndarray, shape (m,)
        NaN where there is nothing to go by [kg]
    """
    good = capacity > 0.0
    if good.sum() < 2:
        return np.full(wanted.shape, np.nan)
    x, y = radii[good], 1.0 / capacity[good]
    k = np.clip(np.searchsorted(x, wanted), 1, len(x) - 1)
    step = x[k] - x[k - 1]
    share = (wanted - x[k - 1]) / step
    drawn = y[k - 1] + share * (y[k] - y[k - 1])
    near = (share > -1.01) & (share < 2.01) & (drawn > 0.0)
    return np.where(near, 1.0 / np.where(near, drawn, 1.0), np.nan)


def crossings(tried: Response, *, first: int, row: int = 0) -> list[Found | None]:
    """Read capacities off trials, radius by radius.

    Parameters
    ----------
    tried : Response
        Its cells from `first` on are `TRIALS` at one radius after another
    first : int
        Cell to begin with
    row : int
        Configuration to read

    Returns
    -------
    list of Found or None
        None where the trials do not enclose the capacity
    """
    shape = (-1, len(TRIALS))
    load = tried.state.load[row, first:].reshape(shape)
    utilisation = tried.utilisation[:, row, first:].reshape(len(tried.utilisation), *load.shape)
    worst = utilisation.max(axis=0)
    sound = tried.state.converged[row, first:].reshape(shape).all(axis=1)
    sound &= (worst[:, 0] <= 1.0) & (worst[:, -1] > 1.0)
    allowed = tried.in_range[row, first:].reshape(shape)
    return [
        _crossing(load[i], utilisation[:, i], worst[i], allowed[i]) if sound[i] else None
        for i in range(len(load))
    ]


def _crossing(load: Array, utilisation: Array, worst: Array, allowed: Array) -> Found | None:
    below = int(np.flatnonzero(worst <= 1.0)[-1])
    if allowed[below] != allowed[below + 1]:
        return None
    if not allowed[below]:
        return Found(capacity=np.nan, limit=-1)
    begin = max(below - 1, 0)
    three = slice(begin, begin + 3)
    passing = np.flatnonzero(utilisation[:, below + 1] > 1.0).tolist()
    meets = [_inverse(utilisation[k, three].tolist(), load[three].tolist()) for k in passing]
    best = min(range(len(meets)), key=lambda k: meets[k])
    if not load[below] <= meets[best] <= load[below + 1]:
        return None
    return Found(capacity=meets[best], limit=passing[best])


def _inverse(utilisation: list[float], load: list[float]) -> float:
    """Load at which a utilisation is one: the parabola through three points, the load over it."""
    (u, v, w), (a, b, c) = (one - 1.0 for one in utilisation), load
    if len({u, v, w}) < 3:
        return float("nan")
    return (
        a * v * w / ((u - v) * (u - w))
        + b * u * w / ((v - u) * (v - w))
        + c * u * v / ((w - u) * (w - v))
    )
