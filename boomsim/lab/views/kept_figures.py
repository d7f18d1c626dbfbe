"""Figures with units, kept: from one step of a slider to the next most of them stay."""

from functools import lru_cache

from boomsim.units import show


@lru_cache(maxsize=4096)
def say(value: float, quantity: str, units: str) -> str:
    """Write a figure as :func:`boomsim.units.show` does.

    Parameters
    ----------
    value : float
        [SI unit of the quantity]
    """
    return show(value, quantity, units)
