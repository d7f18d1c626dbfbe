"""Factors of the common units, so that pint stays unloaded in everyday use.

pint remains the authority: a test holds every entry against it. Factors are exact fractions,
so that "9 mm" is read as the float nearest to 0.009, which 9 * 0.001 is not.
"""

import math
from collections.abc import Mapping
from fractions import Fraction

from boomsim.gravity import STANDARD_GRAVITY

POUND = Fraction("0.45359237")
FOOT = Fraction("0.3048")
INCH = Fraction("0.0254")
"""Exactly, by the agreement of 1959 [kg], [m]."""

_LBF = POUND * STANDARD_GRAVITY

COMMON: Mapping[str, tuple[Fraction, str]] = {
    "m": (Fraction(1), "m"),
    "mm": (Fraction(1, 1000), "m"),
    "cm": (Fraction(1, 100), "m"),
    "km": (Fraction(1000), "m"),
    "ft": (FOOT, "m"),
    "in": (INCH, "m"),
    "m^2": (Fraction(1), "m^2"),
    "cm^2": (Fraction(1, 10**4), "m^2"),
    "mm^2": (Fraction(1, 10**6), "m^2"),
    "ft^2": (FOOT**2, "m^2"),
    "in^2": (INCH**2, "m^2"),
    "m^3": (Fraction(1), "m^3"),
    "cm^3": (Fraction(1, 10**6), "m^3"),
    "in^3": (INCH**3, "m^3"),
    "m^4": (Fraction(1), "m^4"),
    "cm^4": (Fraction(1, 10**8), "m^4"),
    "in^4": (INCH**4, "m^4"),
    "kg": (Fraction(1), "kg"),
    "g": (Fraction(1, 1000), "kg"),
    "t": (Fraction(1000), "kg"),
    "lb": (POUND, "kg"),
    "short_ton": (2000 * POUND, "kg"),
    "N": (Fraction(1), "N"),
    "kN": (Fraction(1000), "N"),
    "MN": (Fraction(10**6), "N"),
    "lbf": (_LBF, "N"),
    "kip": (1000 * _LBF, "N"),
    "N*m": (Fraction(1), "N*m"),
    "kN*m": (Fraction(1000), "N*m"),
    "MN*m": (Fraction(10**6), "N*m"),
    "lbf*ft": (_LBF * FOOT, "N*m"),
    "kip*ft": (1000 * _LBF * FOOT, "N*m"),
    "Pa": (Fraction(1), "Pa"),
    "kPa": (Fraction(1000), "Pa"),
    "MPa": (Fraction(10**6), "Pa"),
    "GPa": (Fraction(10**9), "Pa"),
    "N/mm^2": (Fraction(10**6), "Pa"),
    "psi": (_LBF / INCH**2, "Pa"),
    "ksi": (1000 * _LBF / INCH**2, "Pa"),
    "rad": (Fraction(1), "rad"),
    "deg": (Fraction(math.pi) / 180, "rad"),
    "°": (Fraction(math.pi) / 180, "rad"),
    "m/s": (Fraction(1), "m/s"),
    "km/h": (Fraction(10, 36), "m/s"),
    "mph": (5280 * FOOT / 3600, "m/s"),
    "ft/s": (FOOT, "m/s"),
    "ft/min": (FOOT / 60, "m/s"),
    "m/min": (Fraction(1, 60), "m/s"),
    "s": (Fraction(1), "s"),
    "N/m": (Fraction(1), "N/m"),
    "kN/m": (Fraction(1000), "N/m"),
    "MN/m": (Fraction(10**6), "N/m"),
    "kN/mm": (Fraction(10**6), "N/m"),
    "lbf/in": (_LBF / INCH, "N/m"),
    "kip/in": (1000 * _LBF / INCH, "N/m"),
    "kg/m^3": (Fraction(1), "kg/m^3"),
    "lb/ft^3": (POUND / FOOT**3, "kg/m^3"),
    "kg/m": (Fraction(1), "kg/m"),
    "g/m": (Fraction(1, 1000), "kg/m"),
    "lb/ft": (POUND / FOOT, "kg/m"),
    "m^2/kg": (Fraction(1), "m^2/kg"),
    "m^2/t": (Fraction(1, 1000), "m^2/kg"),
    "ft^2/lb": (FOOT**2 / POUND, "m^2/kg"),
    "ft^2/klb": (FOOT**2 / (1000 * POUND), "m^2/kg"),
    "%": (Fraction(1, 100), ""),
    "": (Fraction(1), ""),
}
"""Factor to SI, and the SI unit."""

ALIASES: Mapping[str, str] = {
    "metre": "m",
    "metres": "m",
    "meter": "m",
    "meters": "m",
    "foot": "ft",
    "feet": "ft",
    "inch": "in",
    "inches": "in",
    "tonne": "t",
    "tonnes": "t",
    "lbs": "lb",
    "kips": "kip",
    "degree": "deg",
    "degrees": "deg",
    "percent": "%",
}
"""Other ways of writing them."""
