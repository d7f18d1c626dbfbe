"""Rated capacity where one nearby is known: loads about it, tried in one call.

The same question as :func:`boomsim.rating.capacity.rate` asks (at which load does the most used
limit reach one?) of the same :func:`boomsim.rating.response.respond`; a search that starts beside
the answer needs one call where a search from nothing needs six.
"""

import numpy as np

from boomsim.mechanics.geometry import Array
from boomsim.rating.capacity import Rating
from boomsim.rating.response import Response

TRIALS = np.array([0.97, 0.99, 0.997, 1.0, 1.003, 1.01, 1.03])
"""Shares of the guess that are tried: closest where it most likely lies [1]."""


def guess(known: Rating, *, radius: float) -> float:
    """Capacity at a radius from those at its neighbours.

    Capacity falls about as one over the lever arm, so its reciprocal is nearly straight.

    Parameters
    ----------
    known : Rating
        One configuration, radii growing
    radius : float
        [m]

    Returns
    -------
    float
        NaN where the neighbours have none [kg]
    """
    radii, capacity = known.radius[0], known.capacity[0]
    if not radii[0] <= radius <= radii[-1]:
        return np.nan
    after = int(np.clip(np.searchsorted(radii, radius), 1, len(radii) - 1))
    near, far = capacity[after - 1], capacity[after]
    if not (near > 0.0 and far > 0.0):
        return np.nan
    share = (radius - radii[after - 1]) / (radii[after] - radii[after - 1])
    return float(1.0 / ((1.0 - share) / near + share / far))


def crossing(tried: Response, *, first: int) -> tuple[float, int] | None:
    """Load at which the most used limit reaches one, and which limit that is.

    Parameters
    ----------
    tried : Response
        One configuration; cells from `first` on at one radius, loads growing
    first : int
        Cell to begin with

    Returns
    -------
    (float, int) or None
        Load [kg] and index of the limit; None if these cells do not enclose it
    """
    load, use = tried.state.load[0, first:], tried.use[:, 0, first:]
    worst = use.max(axis=0)
    if np.isnan(worst).any() or not (worst[0] <= 1.0 < worst[-1]):
        return None
    if not (tried.state.converged[0, first:].all() and tried.in_range[0, first:].all()):
        return None
    below = int(np.flatnonzero(worst <= 1.0)[-1])
    three = slice(max(below - 1, 0), max(below - 1, 0) + 3)
    passing = np.flatnonzero(use[:, below + 1] > 1.0)
    meets = [_inverse(use[k, three], load[three]) for k in passing]
    best = int(np.argmin(meets))
    if not load[below] <= meets[best] <= load[below + 1]:
        return None
    return float(meets[best]), int(passing[best])


def _inverse(use: Array, load: Array) -> float:
    """Load at which a use is one: the parabola through three points, the load over the use."""
    u, (a, b, c) = use - 1.0, load
    if len(np.unique(use)) < 3:
        return np.nan
    return float(
        a * u[1] * u[2] / ((u[0] - u[1]) * (u[0] - u[2]))
        + b * u[0] * u[2] / ((u[1] - u[0]) * (u[1] - u[2]))
        + c * u[0] * u[1] / ((u[2] - u[0]) * (u[2] - u[1]))
    )
