"""Figures as a lesson prints them, and as whoever reckons with what is printed has them."""

import re

from boomsim.gravity import GRAVITY
from boomsim.units import display, parse, show, show_rated


def length_of(value: float, units: str) -> str:
    """Write a length to the centimetre however long it is, so that it can be reckoned with.

    Parameters
    ----------
    value : float
        [m]
    """
    return display("length", units, like=0.0).text(value)


def lengths_of(words: str, units: str) -> str:
    """Write the metres of a refusal, which the model says in SI, as a lesson does.

    Examples
    --------
    >>> lengths_of("The nearest lengths are 19.50 m and 22.30 m.", "us")
    'The nearest lengths are 63.98 ft and 73.16 ft.'
    """
    return re.sub(r"(\d+\.\d+) m\b", lambda found: length_of(float(found[1]), units), words)


def as_said(value: float, quantity: str, units: str) -> float:
    """Round a figure as it is printed, so that reckoning with what is printed comes out even.

    Parameters
    ----------
    value : float
        [SI unit of the quantity]
    quantity : str
        A key of `boomsim.units.QUANTITIES`

    Returns
    -------
    float
        [SI unit of the quantity]
    """
    return parse(show(value, quantity, units).replace(",", ""), quantity)


SCHOOL_GRAVITY = 9.81
"""As a class divides by it; the model's own is a little less [m/s2]."""


def divide(units: str) -> str:
    """Say how a moment becomes a tipping load."""
    if units == "us":
        return "Divide the moment by the load's lever arm: the tipping load (1 kip is 1,000 lbf)."
    return (
        f"Divide the moment by the load's lever arm and by g ({SCHOOL_GRAVITY:g} m/s²): the "
        "tipping load."
    )


def divided(moment: float, lever: float, units: str) -> float:
    """Divide as :func:`divide` says, so that a class gets the figure on the answer sheet [kg].

    Parameters
    ----------
    moment : float
        As it is printed [N m]
    lever : float
        As it is printed [m]
    """
    return moment / (lever * (GRAVITY if units == "us" else SCHOOL_GRAVITY))


def rated_as_said(value: float, units: str) -> float:
    """Round a rated load down as it is printed, so that reckoning with it comes out even [kg].

    Parameters
    ----------
    value : float
        [kg]
    """
    return parse(show_rated(value, units).replace(",", ""), "mass")
