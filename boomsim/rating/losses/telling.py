"""What eats capacity, in words."""

from boomsim.rating.limits.kind import STABILITY, Limit
from boomsim.rating.losses.study import Taker
from boomsim.units import show


def tell_taker(taker: Taker, *, units: str) -> str:
    """Name a taker with its amount: "downhill ahead 1.0°".

    Parameters
    ----------
    taker : Taker
    units : str
        "metric" or "us"

    Returns
    -------
    str
    """
    if taker.amount is None or taker.quantity is None:
        return taker.words
    return f"{taker.words} {show(taker.amount, taker.quantity, units)}"


def tell_governing(limit: Limit | None) -> str:
    """Say what a place is rated by.

    Parameters
    ----------
    limit : Limit or None

    Returns
    -------
    str
    """
    if limit is None:
        return "out of reach"
    return "stability" if limit.set_by == STABILITY else limit.words
