"""The units that papers print, with exact factors to SI.

Reading a candidate's units is :func:`boomsim.units.parse`'s affair; a test holds this table
against it.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from math import pi

from boomsim.gravity import STANDARD_GRAVITY
from boomsim.papers.paper_errors import FamilyError
from boomsim.units import FOOT, INCH, POUND, QUANTITIES, did_you_mean, tidy_unit

METRIC, US = "metric", "us"

_LBF = POUND * STANDARD_GRAVITY
_KIP = 1000 * _LBF
_ONE = Fraction(1)

FACTORS: Mapping[str, Mapping[str, Fraction]] = {
    "": {"": _ONE, "%": _ONE / 100},
    "rad": {"deg": Fraction(pi) / 180},
    "m": {"m": _ONE, "cm": _ONE / 100, "mm": _ONE / 1000, "ft": FOOT, "in": INCH},
    "m^2": {"m^2": _ONE, "cm^2": _ONE / 10**4, "mm^2": _ONE / 10**6,
            "ft^2": FOOT**2, "in^2": INCH**2},
    "m^3": {"cm^3": _ONE / 10**6, "in^3": INCH**3},
    "m^4": {"cm^4": _ONE / 10**8, "in^4": INCH**4},
    "kg": {"kg": _ONE, "t": _ONE * 1000, "lb": POUND},
    "kg*m": {"kg*m": _ONE, "t*m": _ONE * 1000, "lb*ft": POUND * FOOT},
    "kg/m": {"kg/m": _ONE, "lb/ft": POUND / FOOT},
    "kg/m^3": {"kg/m^3": _ONE, "lb/ft^3": POUND / FOOT**3},
    "m/s^2": {"m/s^2": _ONE, "ft/s^2": FOOT},
    "m/s": {"m/s": _ONE, "km/h": _ONE / Fraction("3.6"), "ft/s": FOOT, "mph": 5280 * FOOT / 3600,
            "m/min": _ONE / 60, "ft/min": FOOT / 60},
    "N": {"N": _ONE, "kN": _ONE * 1000, "MN": _ONE * 10**6, "lbf": _LBF, "kip": _KIP},
    "N*m": {"N*m": _ONE, "kN*m": _ONE * 1000, "MN*m": _ONE * 10**6, "lbf*ft": _LBF * FOOT,
            "kip*ft": _KIP * FOOT, "kip*in": _KIP * INCH},
    "N/m": {"N/m": _ONE, "kN/m": _ONE * 1000, "MN/m": _ONE * 10**6, "lbf/ft": _LBF / FOOT,
            "kip/ft": _KIP / FOOT, "lbf/in": _LBF / INCH, "kip/in": _KIP / INCH},
    "N*m^2": {"kN*m^2": _ONE * 1000, "MN*m^2": _ONE * 10**6, "kip*ft^2": _KIP * FOOT**2,
              "kip*in^2": _KIP * INCH**2},
    "Pa": {"Pa": _ONE, "kPa": _ONE * 1000, "MPa": _ONE * 10**6, "GPa": _ONE * 10**9,
           "N/mm^2": _ONE * 10**6, "kN/m^2": _ONE * 1000, "psi": _LBF / INCH**2,
           "ksi": _KIP / INCH**2, "lbf/ft^2": _LBF / FOOT**2},
}  # fmt: skip
"""Units by their SI unit: SI value of one [SI]."""

_UNITS = {name: (factor, si) for si, units in FACTORS.items() for name, factor in units.items()}
_UP = {"^2": "²", "^3": "³", "^4": "⁴", "*": "\u00a0"}  # a no-break space between units


@dataclass(frozen=True, slots=True, kw_only=True)
class Unit:
    """A unit a paper prints.

    Attributes
    ----------
    name : str
        Tidied, as :func:`boomsim.units.parse` reads it
    factor : Fraction
        SI value of one unit
    si : str
        Its SI unit; "" for a plain number or a share
    """

    name: str
    factor: Fraction
    si: str

    @property
    def shown(self) -> str:
        """As printed: "kN m", "cm³", "°"; "" for a plain number."""
        text = "°" if self.name == "deg" else self.name
        for plain, printed in _UP.items():
            text = text.replace(plain, printed)
        return text

    @property
    def gap(self) -> str:
        """What stands between number and unit: a no-break space, but nothing before a degree."""
        return "" if self.shown in ("", "°") else "\u00a0"

    @property
    def quantity(self) -> str:
        """Name under which :func:`boomsim.units.parse` reads it, or ""."""
        if self.si == "":
            return "share"
        return next((name for name, known in QUANTITIES.items() if known.unit == self.si), "")


@lru_cache(maxsize=512)
def unit(name: str) -> Unit:
    """Look up a unit.

    Parameters
    ----------
    name : str
        "kN m", "cm3", "deg", "%", "" …

    Examples
    --------
    >>> unit("kN m").factor, unit("cm3").shown
    (Fraction(1000, 1), 'cm³')
    """
    tidy = tidy_unit(name)
    if tidy not in _UNITS:
        raise FamilyError(f'The unit "{name}" is not known to papers.{did_you_mean(tidy, _UNITS)}')
    factor, si = _UNITS[tidy]
    return Unit(name=tidy, factor=factor, si=si)
