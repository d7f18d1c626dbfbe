"""Which ways out of one boom length a chart can have a column for."""

import numpy as np

from boomsim.machine.boom_systems import BOOM_SYSTEMS
from boomsim.machine.model import Boom
from boomsim.mechanics.geometry import Array, layout
from boomsim.rating.strategies import configurations_of_length

ON_THE_WAY = 0.01
"""A typed extension this near to a way of the boom's is on it [1]."""


def legal_ways(boom: Boom, *, extension: Array) -> Array | None:
    """Tell whether a boom can be so far out, and which other ways of the same length it has.

    Parameters
    ----------
    extension : ndarray, shape (moving sections,)
        [1]

    Returns
    -------
    ndarray, shape (others, moving sections), or None
        The other ways; None where the extension is none of the boom's [1]
    """
    length = float(layout(boom, extension=extension[None]).boom_length[0])
    ways = configurations_of_length(boom, length=length).extension
    own = np.max(np.abs(ways - extension), axis=1) <= ON_THE_WAY
    free = any(
        BOOM_SYSTEMS[name].path is None and not BOOM_SYSTEMS[name].locks for name in boom.systems
    )
    return ways[~own] if own.any() or free else None
