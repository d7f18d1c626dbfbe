"""Text with a unit in, an SI number out."""

import math
import re
from fractions import Fraction
from functools import lru_cache
from typing import TYPE_CHECKING

from boomsim.units._did_you_mean import UnitError, did_you_mean, quoted
from boomsim.units._quantities import QUANTITIES, quantity_named
from boomsim.units._unit_factors import ALIASES, COMMON

if TYPE_CHECKING:
    from pint import UnitRegistry

LONGEST = 80
"""Longest text that can be a figure [characters]."""

_NUMBER = re.compile(r"([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?)\s*(.*)", re.ASCII)
_COMMA = re.compile(r"[+-]?[\d.\s]*,\s*\d", re.ASCII)
_NOT_FINITE = re.compile(r"[+-]?\s*(nan|inf)", re.IGNORECASE)
_NAME = r"[A-Za-zµμ°%_]+(?:\^-?[1-4])?"
_UNIT = re.compile(rf"{_NAME}(?:[*/]{_NAME}){{0,5}}")
_CLEAR_TONS = re.compile(r"(newton|tonne|short_ton|long_ton|metric_ton)s?")


def parse(value: object, quantity: str, *, what: str = "") -> float:
    """Read a figure with its unit.

    Parameters
    ----------
    value : str or number
        "41.8 ft"; a plain number only where the quantity has no unit
    quantity : str
        A key of :data:`boomsim.units.QUANTITIES`
    what : str
        Name of the figure, put before the message

    Returns
    -------
    float
        The float nearest to the figure [SI unit of the quantity]

    Raises
    ------
    UnitError
        Says what is wrong with which value, and how to write it

    Examples
    --------
    >>> parse("41.8 ft", "length")
    12.74064
    """
    try:
        return _parse(value if isinstance(value, str) else _plain(value, quantity), quantity)
    except UnitError as error:
        raise UnitError(f"{what}: {error}" if what else str(error)) from None


def _plain(value: object, quantity: str) -> str:
    """Let a bare number through as text where it needs no unit."""
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise UnitError(f"{quoted(value)} is not a figure. {_write(quantity)}")
    if quantity_named(quantity).unit:
        raise UnitError(f"{quoted(value)} has no unit. {_write(quantity)}")
    if isinstance(value, int) and abs(value) > 10**30:
        raise UnitError(f"{quoted(value)} is unreasonably large. {_write(quantity)}")
    return repr(value)


@lru_cache(maxsize=4096)
def _parse(text: str, quantity: str) -> float:
    """Read number and unit of a text that may be wrong in any way."""
    number, unit = _split(text.strip().replace("−", "-"), quantity)
    if not unit and quantity_named(quantity).unit:
        raise UnitError(f"{quoted(text)} has no unit. {_write(quantity)}")
    factor, base = _factor_of(unit, text, quantity)
    if base != quantity_named(quantity).unit:
        raise UnitError(f"{quoted(text)} is not {_article(quantity)}. {_write(quantity)}")
    try:
        return float(Fraction(number) * factor)
    except OverflowError:
        raise UnitError(f"{quoted(text)} is too large a number. {_write(quantity)}") from None


def _split(text: str, quantity: str) -> tuple[str, str]:
    """Part number from unit, refusing every notation that could be misread."""
    if len(text) > LONGEST:
        raise UnitError(f"{quoted(text)} is too long for a figure. {_write(quantity)}")
    if _NOT_FINITE.match(text):
        raise UnitError(f"{quoted(text)} is not a finite number. {_write(quantity)}")
    if _COMMA.match(text):
        raise UnitError(
            f"{quoted(text)} has a comma in its number, which may mean a decimal point or "
            f'thousands. Write "9.8" with a point and "11000" without a mark. {_write(quantity)}'
        )
    found = _NUMBER.fullmatch(text)
    if not found:
        raise UnitError(f"{quoted(text)} does not begin with a number. {_write(quantity)}")
    number, unit = found.groups()
    if re.match(r"[\d_']", unit):
        raise UnitError(f"{quoted(text)} has a gap or mark inside its number. {_write(quantity)}")
    return number, tidy_unit(unit)


def tidy_unit(unit: str) -> str:
    """Bring the ways of writing one unit to one form.

    Parameters
    ----------
    unit : str
        "N m", "N·m", "kg/m3", "in²", "ft² per 1000 lb"

    Returns
    -------
    str
        "N*m", "N*m", "kg/m^3", "in^2", "ft^2/klb"
    """
    unit = re.sub(r"\s+per\s+1000\s+lb$", "/klb", unit.strip())
    unit = unit.replace("**", "^").replace("²", "^2").replace("³", "^3").replace("⁴", "^4")
    unit = re.sub(r"\s*([*/^·⋅])\s*", r"\1", unit).replace("·", "*").replace("⋅", "*")
    unit = re.sub(r"(?<=[A-Za-z])(-?\d)", r"^\1", re.sub(r"\s+", "*", unit))
    return ALIASES.get(unit, unit)


def _factor_of(unit: str, text: str, quantity: str) -> tuple[Fraction, str]:
    """Find a unit's factor, or say why there is none."""
    if "ton" in _CLEAR_TONS.sub("", unit.lower()):
        raise UnitError(
            f'{quoted(text)}: "ton" means three different masses. Write t for 1000 kg or '
            f"short_ton for 2000 lb; a force needs kN or lbf. {_write(quantity)}"
        )
    found = _factor(unit)
    if found is None:
        names = [name for name, (_, si) in COMMON.items() if si == quantity_named(quantity).unit]
        raise UnitError(
            f"{quoted(text)} has the unit {quoted(unit)}, which is not known."
            f"{did_you_mean(unit, names)} {_write(quantity)}"
        )
    return found


@lru_cache(maxsize=1024)
def _factor(unit: str) -> tuple[Fraction, str] | None:
    """Factor to SI and the SI unit of a tidied unit: from the table, else from pint."""
    if unit in COMMON:
        return COMMON[unit]
    return _ask_pint(unit) if _UNIT.fullmatch(unit) else None


def _ask_pint(unit: str) -> tuple[Fraction, str] | None:
    """Ask pint for a unit that is not in the table."""
    from pint import PintError

    try:
        factor, base = _in_base_units(unit)
    except (PintError, AttributeError, KeyError, TypeError, ValueError, ArithmeticError):
        return None
    if not math.isfinite(factor):
        return None
    same = (q.unit for q in QUANTITIES.values() if _in_base_units(q.unit)[1] == base)
    return Fraction(factor), next(same, f"not supported: {unit}")


def _in_base_units(unit: str) -> tuple[float, dict[str, float]]:
    """Size of a unit in pint's base units, and which these are; pint counts radians among them."""
    one = registry().Quantity(1.0, registry().parse_units(unit)).to_base_units()
    return float(one.magnitude), {name: float(str(power)) for name, power in one.unit_items()}


@lru_cache(maxsize=1)
def registry() -> "UnitRegistry[float]":
    """Return the one unit registry, made on first use, for it takes a fifth of a second."""
    from pint import UnitRegistry

    return UnitRegistry(cache_folder=None)


def _write(quantity: str) -> str:
    """Say how a figure of this quantity is written."""
    return f"Write it like {quantity_named(quantity).example}."


def _article(quantity: str) -> str:
    """Name a quantity with its article."""
    word = quantity.replace("_", " ")
    return f"an {word}" if word[0] in "aeiou" else f"a {word}"
