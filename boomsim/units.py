"""The edge of the program: text with units in, SI numbers inside, text with units out.

pint is the authority on units and is loaded only when a unit is not among the common ones in
`COMMON`; a test holds that table against pint. Our own number pattern comes first, because pint
alone reads "9,8 m" as 98 m, takes "ton" for 907 kg and lets a bare "5" pass.
"""

import difflib
import math
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pint import UnitRegistry

SYSTEMS = ("metric", "us")
"""Systems of units for output."""


class UnitError(ValueError):
    """A figure that cannot be read: says what, which value, what is needed and the way out."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Display:
    """How one quantity is written in one system.

    Attributes
    ----------
    symbol : str
        Unit behind the number
    unit : str
        The same unit as `parse` reads it
    digits : int
        Decimal places; negative rounds before the point [1]
    from_ : float
        Used for values at least this large [SI unit of the quantity]
    """

    symbol: str
    unit: str
    digits: int
    from_: float = 0.0

    @property
    def factor(self) -> float:
        """SI value of one unit [SI unit of the quantity]."""
        return float(_factor(self.unit)[0])

    def number(self, value: float) -> str:
        """Write the number alone, without its unit.

        Parameters
        ----------
        value : float
            [SI unit of the quantity]

        Returns
        -------
        str
            Rounded; with a thousands comma in US customary and metric alike
        """
        if not math.isfinite(value):
            return "none"
        shown = round(value / self.factor, self.digits) + 0.0  # -0.0 becomes 0.0
        return f"{shown:,.{max(self.digits, 0)}f}"

    def text(self, value: float) -> str:
        """Write number and unit.

        Parameters
        ----------
        value : float
            [SI unit of the quantity]

        Returns
        -------
        str
        """
        gap = "" if self.symbol in ("", "°") else " "
        return f"{self.number(value)}{gap}{self.symbol}" if math.isfinite(value) else "none"


@dataclass(frozen=True, slots=True, kw_only=True)
class Quantity:
    """What a figure measures: its SI unit, how people write it, and how it is shown."""

    unit: str
    example: str
    metric: tuple[Display, ...]
    us: tuple[Display, ...]


def _tiers(*tiers: tuple[str, str, int, float]) -> tuple[Display, ...]:
    """Build displays from (symbol, unit, digits, from) rows, smallest values first."""
    return tuple(Display(symbol=s, unit=u, digits=d, from_=f) for s, u, d, f in tiers)


def _one(symbol: str, unit: str, digits: int) -> tuple[Display, ...]:
    """Build the only display of a quantity."""
    return _tiers((symbol, unit, digits, 0.0))


_FT, _LB, _KIP = 0.3048, 0.45359237, 4448.2216152605

QUANTITIES: Mapping[str, Quantity] = {
    "length": Quantity(
        unit="m",
        example='"8.20 m" or "26.9 ft"',
        metric=_tiers(("m", "m", 2, 0.0), ("m", "m", 1, 9.995)),
        us=_tiers(("ft", "ft", 2, 0.0), ("ft", "ft", 1, 9.995 * _FT)),
    ),
    "small_length": Quantity(
        unit="m",
        example='"8 mm" or "0.31 in"',
        metric=_tiers(("mm", "mm", 1, 0.0), ("mm", "mm", 0, 0.02)),
        us=_tiers(("in", "in", 3, 0.0), ("in", "in", 1, 0.0508)),
    ),
    "area": Quantity(
        unit="m^2",
        example='"0.25 m2" or "2.7 ft2"',
        metric=_one("m²", "m^2", 2),
        us=_one("ft²", "ft^2", 2),
    ),
    "section_area": Quantity(
        unit="m^2",
        example='"120 cm2" or "18.6 in2"',
        metric=_one("cm²", "cm^2", 1),
        us=_one("in²", "in^2", 2),
    ),
    "section_modulus": Quantity(
        unit="m^3",
        example='"900 cm3" or "55 in3"',
        metric=_one("cm³", "cm^3", 1),
        us=_one("in³", "in^3", 2),
    ),
    "second_moment": Quantity(
        unit="m^4",
        example='"9000 cm4" or "216 in4"',
        metric=_one("cm⁴", "cm^4", 1),
        us=_one("in⁴", "in^4", 2),
    ),
    "mass": Quantity(
        unit="kg",
        example='"5 t", "800 kg" or "11000 lb"',
        metric=_tiers(("kg", "kg", 2, 0.0), ("kg", "kg", 0, 9.995), ("t", "t", 2, 999.5)),
        us=_tiers(
            ("lb", "lb", 2, 0.0),
            ("lb", "lb", 0, 9.995 * _LB),
            ("lb", "lb", -1, 999.5 * _LB),
        ),
    ),
    "force": Quantity(
        unit="N",
        example='"55 kN" or "12000 lbf"',
        metric=_tiers(("N", "N", 1, 0.0), ("kN", "kN", 1, 999.5)),
        us=_tiers(("lbf", "lbf", 0, 0.0), ("kip", "kip", 1, 9999.5 * _KIP / 1000)),
    ),
    "moment": Quantity(
        unit="N*m",
        example='"900 kN m" or "660 kip ft"',
        metric=_tiers(("N m", "N*m", 1, 0.0), ("kN m", "kN*m", 1, 999.5)),
        us=_tiers(("lbf ft", "lbf*ft", 0, 0.0), ("kip ft", "kip*ft", 1, 9999.5 * _KIP * _FT / 1000)),
    ),
    "stress": Quantity(
        unit="Pa",
        example='"690 MPa" or "100 ksi"',
        metric=_tiers(("MPa", "MPa", 1, 0.0), ("MPa", "MPa", 0, 9.95e6)),
        us=_tiers(("ksi", "ksi", 2, 0.0), ("ksi", "ksi", 1, 9.995 * 6894757.2932)),
    ),
    "pressure": Quantity(
        unit="Pa",
        example='"250 kPa" or "36 psi"',
        metric=_tiers(("Pa", "Pa", 0, 0.0), ("kPa", "kPa", 0, 9995.0)),
        us=_one("psi", "psi", 1),
    ),
    "angle": Quantity(
        unit="rad",
        example='"62.5 deg" or "1.09 rad"',
        metric=_one("°", "deg", 1),
        us=_one("°", "deg", 1),
    ),
    "speed": Quantity(
        unit="m/s",
        example='"9.8 m/s" or "22 mph"',
        metric=_one("m/s", "m/s", 2),
        us=_tiers(("ft/min", "ft/min", 0, 0.0), ("mph", "mph", 1, 2.2352)),
    ),
    "stiffness": Quantity(
        unit="N/m",
        example='"60 MN/m" or "340 kip/in"',
        metric=_tiers(("kN/m", "kN/m", 1, 0.0), ("MN/m", "MN/m", 1, 9.995e5)),
        us=_tiers(("lbf/in", "lbf/in", 0, 0.0), ("kip/in", "kip/in", 1, 9999.5 * 175.12683524)),
    ),
    "density": Quantity(
        unit="kg/m^3",
        example='"7850 kg/m3" or "490 lb/ft3"',
        metric=_one("kg/m³", "kg/m^3", 0),
        us=_one("lb/ft³", "lb/ft^3", 1),
    ),
    "area_per_mass": Quantity(
        unit="m^2/kg",
        example='"1.2 m2/t" or "0.0059 ft2/lb"',
        metric=_one("m²/t", "m^2/t", 2),
        us=_one("ft²/lb", "ft^2/lb", 5),
    ),
    "share": Quantity(
        unit="",
        example='"46.5 %" or 0.465',
        metric=_tiers(("%", "%", 1, 0.0), ("%", "%", 0, 0.0995)),
        us=_tiers(("%", "%", 1, 0.0), ("%", "%", 0, 0.0995)),
    ),
    "number": Quantity(unit="", example="1.6", metric=_one("", "", 2), us=_one("", "", 2)),
}
"""Every quantity that can be read and shown."""

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
"""Common units, so that pint stays unloaded: factor to SI, and the SI unit. Tested against pint."""

_NUMBER = re.compile(r"([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,2})?)\s*(.*)", re.ASCII)
_COMMA = re.compile(r"[+-]?[\d.\s]*,\s*\d", re.ASCII)
_NOT_FINITE = re.compile(r"[+-]?\s*(nan|inf)", re.IGNORECASE)
_NAME = r"[A-Za-zµμ°%_]+(?:\^-?[1-4])?"
_UNIT = re.compile(rf"{_NAME}(?:[*/]{_NAME})*")
_CLEAR_TONS = re.compile(r"(newton|tonne|short_ton|long_ton|metric_ton)s?")
_LONGEST = 80


def parse(value: object, quantity: str, *, what: str = "") -> float:
    """Read a figure with its unit.

    Parameters
    ----------
    value : str or number
        "41.8 ft"; a plain number only where the quantity is a share [1]
    quantity : str
        A key of `QUANTITIES`
    what : str
        Name of the figure for the error message

    Returns
    -------
    float
        [SI unit of the quantity]

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


def show(value: float, quantity: str, system: str = "metric") -> str:
    """Write a figure with its unit.

    Parameters
    ----------
    value : float
        [SI unit of the quantity]
    quantity : str
        A key of `QUANTITIES`
    system : str
        "metric" or "us"

    Returns
    -------
    str

    Examples
    --------
    >>> show(18.0, "length"), show(18.0, "length", "us"), show(5000.0, "mass", "us")
    ('18.0 m', '59.1 ft', '11,020 lb')
    """
    return display(quantity, system, like=value).text(value)


def display(quantity: str, system: str = "metric", *, like: float = math.inf) -> Display:
    """Choose the unit and digits for a column, an axis or one value.

    Parameters
    ----------
    quantity : str
        A key of `QUANTITIES`
    system : str
        "metric" or "us"
    like : float
        A typical value; the unit for large values without it [SI unit of the quantity]

    Returns
    -------
    Display
    """
    if system not in SYSTEMS:
        raise UnitError(f'Units "{system}" are not known. Choose "metric" or "us".')
    known = quantity_named(quantity)
    tiers = known.metric if system == "metric" else known.us
    size = math.inf if math.isnan(like) else abs(like)
    return [tier for tier in tiers if size >= tier.from_][-1]


def quantity_named(name: str) -> Quantity:
    """Look up a quantity.

    Parameters
    ----------
    name : str
        A key of `QUANTITIES`

    Returns
    -------
    Quantity
    """
    if name not in QUANTITIES:
        raise UnitError(f'There is no quantity "{name}".{did_you_mean(name, QUANTITIES)}')
    return QUANTITIES[name]


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """Suggest the nearest known word.

    Parameters
    ----------
    word : str
    known : iterable of str

    Returns
    -------
    str
        ' Did you mean "…"?' or nothing
    """
    near = difflib.get_close_matches(word[:60], list(known), n=1, cutoff=0.6)
    return f' Did you mean "{near[0]}"?' if near else ""


def _plain(value: object, quantity: str) -> str:
    """Let a bare number through as text where it needs no unit."""
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise UnitError(f"{_short(value)} is not a figure. {_write(quantity)}")
    if quantity_named(quantity).unit:
        raise UnitError(f"{_short(value)} has no unit. {_write(quantity)}")
    if isinstance(value, int) and abs(value) > 10**9:
        raise UnitError(f"{_short(value)} is out of all proportion. {_write(quantity)}")
    return repr(value)


@lru_cache(maxsize=4096)
def _parse(text: str, quantity: str) -> float:
    """Read number and unit of a text that may be wrong in any way."""
    number, unit = _split(text.strip().replace("−", "-"), quantity)
    if not unit and quantity_named(quantity).unit:
        raise UnitError(f"{_short(text)} has no unit. {_write(quantity)}")
    factor, base = _factor_of(unit, text, quantity)
    if base != _si(quantity):
        raise UnitError(f"{_short(text)} is not {_article(quantity)}. {_write(quantity)}")
    return float(Fraction(number) * factor)


def _split(text: str, quantity: str) -> tuple[str, str]:
    """Part number from unit, refusing every notation that could be misread."""
    if len(text) > _LONGEST:
        raise UnitError(f"{_short(text)} is too long for a figure. {_write(quantity)}")
    if _NOT_FINITE.match(text):
        raise UnitError(f"{_short(text)} is not a finite number. {_write(quantity)}")
    if _COMMA.match(text):
        raise UnitError(
            f"{_short(text)} has a comma in its number, which may mean a decimal point or thousands. "
            f'Write "9.8" with a point and "11000" without a separator. {_write(quantity)}'
        )
    found = _NUMBER.fullmatch(text)
    if not found:
        raise UnitError(f"{_short(text)} does not begin with a number. {_write(quantity)}")
    number, unit = found.groups()
    if unit[:1].isdigit() or unit[:1] in ("_", "'"):
        raise UnitError(f"{_short(text)} has a gap or mark inside its number. {_write(quantity)}")
    return number, tidy_unit(unit)


def tidy_unit(unit: str) -> str:
    """Bring the ways of writing one unit to one form.

    Parameters
    ----------
    unit : str
        "N m", "N·m", "kg/m3", "in²"

    Returns
    -------
    str
        "N*m", "N*m", "kg/m^3", "in^2"
    """
    unit = unit.strip().replace("**", "^").replace("²", "^2").replace("³", "^3").replace("⁴", "^4")
    unit = re.sub(r"\s*([*/^·⋅])\s*", r"\1", unit).replace("·", "*").replace("⋅", "*")
    return re.sub(r"(?<=[A-Za-z])(-?\d)", r"^\1", re.sub(r"\s+", "*", unit))


def _factor_of(unit: str, text: str, quantity: str) -> tuple[Fraction, str]:
    """Find a unit's factor, or say why there is none."""
    if "ton" in _CLEAR_TONS.sub("", unit.lower()):
        raise UnitError(
            f'{_short(text)}: "ton" means three different masses. Write t for 1000 kg or '
            f"short_ton for 2000 lb; a force needs kN or lbf. {_write(quantity)}"
        )
    try:
        return _factor(unit)
    except UnitError:
        names = [name for name, (_, si) in COMMON.items() if name and si == _si(quantity)]
        hint = did_you_mean(unit, names)
        raise UnitError(
            f'{_short(text)} has the unit "{unit[:20]}", which is not known.{hint} {_write(quantity)}'
        ) from None


@lru_cache(maxsize=1024)
def _factor(unit: str) -> tuple[Fraction, str]:
    """Factor to SI and the SI unit of a tidied unit: from the table, else from pint."""
    if unit in COMMON:
        return COMMON[unit]
    if not _UNIT.fullmatch(unit):
        raise UnitError(unit)
    return _ask_pint(unit)


def _ask_pint(unit: str) -> tuple[Fraction, str]:
    """Ask pint for a unit that is not in the table."""
    import pint

    try:
        one = registry().Quantity(1.0, registry().parse_units(unit)).to_base_units()
        base = {name: float(str(power)) for name, power in one.unit_items()}
    except (pint.PintError, AttributeError, KeyError, TypeError, ValueError, ArithmeticError):
        raise UnitError(unit) from None
    for quantity in QUANTITIES.values():
        if base == _base_of(quantity.unit) and math.isfinite(one.magnitude):
            return Fraction(one.magnitude), quantity.unit
    return Fraction(1), f"something else: {unit}"


@lru_cache(maxsize=64)
def _base_of(unit: str) -> dict[str, float]:
    """Base units of a quantity's SI unit, as pint counts them."""
    one = registry().Quantity(1.0, registry().parse_units(unit)).to_base_units()
    return {name: float(str(power)) for name, power in one.unit_items()}


@lru_cache(maxsize=1)
def registry() -> "UnitRegistry[float]":
    """Return the one unit registry; made on first use, for it takes a fifth of a second.

    Returns
    -------
    pint.UnitRegistry
    """
    from pint import UnitRegistry

    return UnitRegistry(cache_folder=None)


def _si(quantity: str) -> str:
    """SI unit of a quantity."""
    return quantity_named(quantity).unit


def _write(quantity: str) -> str:
    """Say how a figure of this quantity is written."""
    return f"Write it like {quantity_named(quantity).example}."


def _article(quantity: str) -> str:
    """Name a quantity with its article."""
    word = quantity.replace("_", " ")
    return f"an {word}" if word[0] in "aeiou" else f"a {word}"


def _short(value: object) -> str:
    """Quote a value, but not a page of it."""
    text = value if isinstance(value, str) else repr(value) if not isinstance(value, int) else None
    if text is None:
        text = str(value) if abs(int(value)) < 10**40 else "a huge integer"  # type: ignore[call-overload]
    text = " ".join(text.split())
    quoted = f'"{text[:40]}…"' if len(text) > 40 else f'"{text}"'
    return quoted
