"""Figures as a lesson prints them, and as whoever reckons with what is printed has them."""

from boomsim.units import display, parse, show, show_rated


def length_of(value: float, units: str) -> str:
    """Write a length to the centimetre however long it is, so that it can be reckoned with.

    Parameters
    ----------
    value : float
        [m]
    units : str

    Returns
    -------
    str
    """
    return display("length", units, like=0.0).text(value)


def as_said(value: float, quantity: str, units: str) -> float:
    """Round a figure as it is printed, so that reckoning with what is printed comes out even.

    Parameters
    ----------
    value : float
        [SI unit of the quantity]
    quantity : str
        A key of `boomsim.units.QUANTITIES`
    units : str

    Returns
    -------
    float
        [SI unit of the quantity]
    """
    return parse(show(value, quantity, units).replace(",", ""), quantity)


def rated_as_said(value: float, units: str) -> float:
    """Round a rated load down as it is printed, so that reckoning with it comes out even.

    Parameters
    ----------
    value : float
        [kg]
    units : str

    Returns
    -------
    float
        [kg]
    """
    return parse(show_rated(value, units).replace(",", ""), "mass")
