"""The tackle of the hoist rope: what its parts of line carry for each newton at the winch."""

from functools import cache

import numpy as np
from numpy.typing import NDArray

from boomsim.mechanics.geometry import Array


@cache
def tackle_advantage(parts: int, *, sheave_efficiency: float) -> float:
    """Load over lead-line pull, E (1 - E^N)/(1 - E), the lead line over one more sheave.

    Parameters
    ----------
    parts : int
        Parts of line N [1]
    sheave_efficiency : float
        Of one sheave E [1]

    Returns
    -------
    float
        Advantage [1]

    Notes
    -----
    Source: wire-rope and rigging handbooks; E = 0.917 and N = 4 give 3.236. Without friction the
    advantage is N.
    """
    efficiency = sheave_efficiency
    return sum(efficiency**k for k in range(1, parts + 1))


def tackle_advantages(parts: NDArray[np.int_], *, sheave_efficiency: float) -> Array:
    """Load over lead-line pull of several tackles.

    Parameters
    ----------
    parts : ndarray of int
        Parts of line of each [1]
    sheave_efficiency : float
        Of one sheave [1]

    Returns
    -------
    ndarray
        Advantages by :func:`tackle_advantage`, of the shape of `parts` [1]
    """
    reeved, place = np.unique(parts, return_inverse=True)
    found = [tackle_advantage(int(n), sheave_efficiency=sheave_efficiency) for n in reeved]
    return np.array(found)[place].reshape(np.shape(parts))
