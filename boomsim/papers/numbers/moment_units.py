"""Moments as people of the trade write them: kNm, t·m, ft-lb, kip-ft, k-ft.

A tonne-metre is a mass times an arm. As a moment it is what a tonne weighs, times a metre:
standard gravity stands between them. A pound is read as a force, as everywhere in US answers.
"""

import re
from collections.abc import Mapping
from fractions import Fraction

from boomsim.gravity import STANDARD_GRAVITY
from boomsim.units import FOOT, INCH, POUND

_G = STANDARD_GRAVITY
_LBF = POUND * _G
_N = Fraction(1)

FORCES: Mapping[str, Fraction] = {
    "N": _N, "daN": 10 * _N, "kN": 1000 * _N, "KN": 1000 * _N, "MN": 10**6 * _N,
    "kg": _G, "kgf": _G, "t": 1000 * _G, "tf": 1000 * _G, "tonne": 1000 * _G,
    "lb": _LBF, "lbs": _LBF, "lbf": _LBF, "pound": _LBF, "pounds": _LBF,
    "k": 1000 * _LBF, "kip": 1000 * _LBF, "kips": 1000 * _LBF,
}  # fmt: skip
"""What pulls, of metric and US papers [N]."""

ARMS: Mapping[str, Fraction] = {
    "m": _N, "cm": _N / 100, "mm": _N / 1000, "metre": _N, "metres": _N, "meter": _N, "meters": _N,
    "ft": FOOT, "foot": FOOT, "feet": FOOT, "in": INCH, "inch": INCH, "inches": INCH,
}  # fmt: skip
"""How far away [m]."""

_BETWEEN = r"\s*[-–·⋅*.]?\s*"
_APART = r"(?:\s*[-–·⋅*.]\s*|\s+)"
_SI_FORCE, _SI_ARM = r"(N|daN|[kK]N|MN|kgf?|tf?|tonne)", r"([cm]?m|metres?|meters?)"
_US_FORCE, _US_ARM = r"(lb[sf]?|pounds?|kips?|\bk\b)", r"(ft|foot|feet|in|inch|inches)"
_SI = re.compile(rf"{_SI_FORCE}{_BETWEEN}{_SI_ARM}|{_SI_ARM}{_APART}{_SI_FORCE}")
_US = re.compile(rf"{_US_FORCE}{_BETWEEN}{_US_ARM}|{_US_ARM}{_BETWEEN}{_US_FORCE}")


def moment_unit(name: str) -> Fraction | None:
    """Find the size of a unit of moment [N m].

    Parameters
    ----------
    name : str
        "kNm", "t·m", "ft-lb", "k-ft"; "mN" and "mt", which mean something else, are none

    Examples
    --------
    >>> float(moment_unit("t·m"))
    9806.65
    """
    found = _SI.fullmatch(name) or _US.fullmatch(name.lower())
    if not found:
        return None
    force, arm, arm_first, force_last = found.groups()
    return FORCES[force or force_last] * ARMS[arm or arm_first]
