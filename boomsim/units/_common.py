"""Factors of the common units, so that pint stays unloaded in everyday use.

pint remains the authority: a test holds every entry against it. Factors are exact fractions,
so that "9 mm" is read as the float nearest to 0.009, which 9 * 0.001 is not.
"""

import math
from collections.abc import Mapping
from fractions import Fraction

_POUND = Fraction("0.45359237")
_FOOT = Fraction("0.3048")
_INCH = Fraction("0.0254")
_GRAVITY = Fraction("9.80665")
_LBF = _POUND * _GRAVITY

COMMON: Mapping[str, tuple[Fraction, str]] = {
    "m": (Fraction(1), "m"),
    "mm": (Fraction(1, 1000), "m"),
    "cm": (Fraction(1, 100), "m"),
    "km": (Fraction(1000), "m"),
    "ft": (_FOOT, "m"),
    "in": (_INCH, "m"),
    "m^2": (Fraction(1), "m^2"),
    "cm^2": (Fraction(1, 10**4), "m^2"),
    "mm^2": (Fraction(1, 10**6), "m^2"),
    "ft^2": (_FOOT**2, "m^2"),
    "in^2": (_INCH**2, "m^2"),
    "m^3": (Fraction(1), "m^3"),
    "cm^3": (Fraction(1, 10**6), "m^3"),
    "in^3": (_INCH**3, "m^3"),
    "m^4": (Fraction(1), "m^4"),
    "cm^4": (Fraction(1, 10**8), "m^4"),
    "in^4": (_INCH**4, "m^4"),
    "kg": (Fraction(1), "kg"),
    "g": (Fraction(1, 1000), "kg"),
    "t": (Fraction(1000), "kg"),
    "lb": (_POUND, "kg"),
    "short_ton": (2000 * _POUND, "kg"),
    "N": (Fraction(1), "N"),
    "kN": (Fraction(1000), "N"),
    "MN": (Fraction(10**6), "N"),
    "lbf": (_LBF, "N"),
    "kip": (1000 * _LBF, "N"),
    "N*m": (Fraction(1), "N*m"),
    "kN*m": (Fraction(1000), "N*m"),
    "MN*m": (Fraction(10**6), "N*m"),
    "lbf*ft": (_LBF * _FOOT, "N*m"),
    "kip*ft": (1000 * _LBF * _FOOT, "N*m"),
    "Pa": (Fraction(1), "Pa"),
    "kPa": (Fraction(1000), "Pa"),
    "MPa": (Fraction(10**6), "Pa"),
    "GPa": (Fraction(10**9), "Pa"),
    "N/mm^2": (Fraction(10**6), "Pa"),
    "psi": (_LBF / _INCH**2, "Pa"),
    "ksi": (1000 * _LBF / _INCH**2, "Pa"),
    "rad": (Fraction(1), "rad"),
    "deg": (Fraction(math.pi) / 180, "rad"),
    "°": (Fraction(math.pi) / 180, "rad"),
    "m/s": (Fraction(1), "m/s"),
    "km/h": (Fraction(10, 36), "m/s"),
    "mph": (5280 * _FOOT / 3600, "m/s"),
    "ft/s": (_FOOT, "m/s"),
    "ft/min": (_FOOT / 60, "m/s"),
    "m/min": (Fraction(1, 60), "m/s"),
    "s": (Fraction(1), "s"),
    "N/m": (Fraction(1), "N/m"),
    "kN/m": (Fraction(1000), "N/m"),
    "MN/m": (Fraction(10**6), "N/m"),
    "kN/mm": (Fraction(10**6), "N/m"),
    "lbf/in": (_LBF / _INCH, "N/m"),
    "kip/in": (1000 * _LBF / _INCH, "N/m"),
    "kg/m^3": (Fraction(1), "kg/m^3"),
    "lb/ft^3": (_POUND / _FOOT**3, "kg/m^3"),
    "m^2/kg": (Fraction(1), "m^2/kg"),
    "m^2/t": (Fraction(1, 1000), "m^2/kg"),
    "ft^2/lb": (_FOOT**2 / _POUND, "m^2/kg"),
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
