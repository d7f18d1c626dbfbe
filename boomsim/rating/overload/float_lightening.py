"""Where a float goes light before it ends, and where none does.

The same load over a corner lightens the float across from it long before the crane tips; over the
front or over a side two floats are left, which share what is left, and neither need go light.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.mechanics.geometry import Array
from boomsim.rating.around.float_loads import float_loads, lift_utilisation, slews_of
from boomsim.rating.around.slew_directions import over
from boomsim.rating.load_search import NEARLY, load_at_one
from boomsim.rating.overload.overload_events import Raised


@dataclass(frozen=True, slots=True, kw_only=True)
class Lightening:
    """What happens to the lightest float with the boom over one part of the carrier, until it ends.

    Attributes
    ----------
    where : str
        "over the front", squarely, or "over the rear left corner", anywhere between two of these
    slew : float
        Where it happens first [rad]
    load : float
        At which a float carries nothing any more; infinite where none comes to that [kg]
    multiple : float
        Of the rated load [1]
    """

    where: str
    slew: float
    load: float
    multiple: float


def lightenings(raised: Raised, *, until: float) -> tuple[Lightening, ...]:
    """Raise the load at every slew angle of the sector.

    Parameters
    ----------
    raised : Raised
    until : float
        Load that ends it [kg]

    Returns
    -------
    tuple of Lightening
        One for each part of the sector that people have a word for
    """
    slew = slews_of(raised.real)
    load = _lift_off(raised, slew, until)
    # In the very moment in which it ends is too late to be felt.
    load = np.where(load < NEARLY * until, load, np.inf)
    where = np.array([over(float(angle)) for angle in slew])
    found = []
    for words in dict.fromkeys(where.tolist()):
        own = np.flatnonzero(where == words)
        first = own[int(np.argmin(load[own]))]
        found.append(
            Lightening(
                where=words,
                slew=float(slew[first]),
                load=float(load[first]),
                multiple=float(load[first]) / raised.rated,
            )
        )
    return tuple(found)


def _lift_off(raised: Raised, slew: Array, until: float) -> Array:
    """Load at which a float carries nothing at each slew angle, shape (slews,) [kg]."""

    def utilisation_of(hung: Array) -> Array:
        loads = float_loads(raised.hung(hung), slew=slew)
        return np.diagonal(lift_utilisation(loads)[:, 0], axis1=0, axis2=1)[None, None]

    low = np.zeros((1, len(slew)))
    met = load_at_one(utilisation_of, low=low, high=low + until, first=low + until / 2)
    return np.asarray(met[0])
