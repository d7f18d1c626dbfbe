"""What can be measured, and how each quantity is written in each system of units."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import TypeAlias

from boomsim.units._did_you_mean import UnitError, did_you_mean
from boomsim.units._unit_factors import COMMON

SYSTEMS = ("metric", "us")
"""Systems of units for output."""

_MARKS = {"^2": "²", "^3": "³", "^4": "⁴", "*": " ", "deg": "°", "/klb": " per 1000 lb"}


HAIR = 1e-12
"""Share of a value by which it is enlarged before it is rounded [1]."""


WHOLE_FROM = 0.9995
"""Where a unit of mass begins by rounding, over the whole number that is shown there [1]."""


def rounded(value: float, digits: int) -> str:
    """Write a number, halves away from nought: 38.65 is 38.7 however its last bit fell.

    Parameters
    ----------
    value : float
        Finite [any]
    digits : int
        Decimal places; negative rounds before the point [1]

    Returns
    -------
    str
        Thousands parted by commas
    """
    shown = round(value * (1.0 + HAIR), digits) + 0.0  # turns -0.0 into 0.0
    return f"{shown:,.{max(digits, 0)}f}"


def rounded_down(value: float, digits: int) -> str:
    """Write a number that must not read as more than it is: 59.169 is 59.16, 38.65 is 38.65.

    Parameters
    ----------
    value : float
        Finite [any]
    digits : int
        Decimal places; negative rounds before the point [1]

    Returns
    -------
    str
        Thousands parted by commas
    """
    # Half a hair for what a division loses: 7.95 t must not read as 7.94.
    whole = math.floor(Decimal(value * (1.0 + HAIR / 2)).scaleb(digits))
    return f"{Decimal(whole).scaleb(-digits):,.{max(digits, 0)}f}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Display:
    """How one quantity is written in one system.

    Attributes
    ----------
    unit : str
        A unit of :data:`boomsim.units._unit_factors.COMMON`
    digits : int
        Decimal places; negative rounds before the point [1]
    least : float
        Used when there are at least so many of the unit [1]
    """

    unit: str
    digits: int
    least: float = 0.0

    @property
    def factor(self) -> float:
        """SI value of one unit [SI unit of the quantity]."""
        return float(COMMON[self.unit][0])

    @property
    def symbol(self) -> str:
        """The unit as it is printed: "cm²" for "cm^2"."""
        symbol = self.unit
        for plain, printed in _MARKS.items():
            symbol = symbol.replace(plain, printed)
        return symbol

    def number(self, value: float) -> str:
        """Write the number alone, for a table whose heading has the unit.

        Parameters
        ----------
        value : float
            [SI unit of the quantity]

        Returns
        -------
        str
            Rounded, thousands parted by commas; "none" when not finite
        """
        if not math.isfinite(value):
            return "none"
        return rounded(value / self.factor, self.digits)

    def number_down(self, value: float) -> str:
        """Write the number alone, never more than it is: for rated figures.

        Parameters
        ----------
        value : float
            [SI unit of the quantity]

        Returns
        -------
        str
            Rounded down, thousands parted by commas; "none" when not finite
        """
        if not math.isfinite(value):
            return "none"
        return rounded_down(value / self.factor, self.digits)

    def text(self, value: float) -> str:
        """Write number and unit.

        Parameters
        ----------
        value : float
            [SI unit of the quantity]
        """
        return self._with_unit(self.number(value))

    def text_down(self, value: float) -> str:
        """Write number and unit, never more than it is: for rated figures.

        Parameters
        ----------
        value : float
            [SI unit of the quantity]
        """
        return self._with_unit(self.number_down(value))

    def _with_unit(self, number: str) -> str:
        if number == "none":
            return number
        gap = "" if self.symbol in ("", "°") else " "
        return f"{number}{gap}{self.symbol}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Quantity:
    """What a figure measures.

    Attributes
    ----------
    unit : str
        SI unit
    example : str
        How people write it
    metric, us : tuple of Display
        From small values to large ones
    """

    unit: str
    example: str
    metric: tuple[Display, ...]
    us: tuple[Display, ...]


_Rows: TypeAlias = tuple[tuple[str, int] | tuple[str, int, float], ...]

# A unit is refined below 25 of it, so that what is rounded is never more than 2 % of a load: small
# machines have their figures too.
_TABLE: tuple[tuple[str, str, str, _Rows, _Rows], ...] = (
    # Name, SI unit, an example; then by system unit, digits, and from how many of it on.
    ("length", "m", '"8.20 m" or "26.9 ft"',
     (("m", 2), ("m", 1, 9.995)), (("ft", 2), ("ft", 1, 9.995))),
    # A boom is named by its length: one rounding everywhere, so that a name read off one sheet is
    # found on the next. A tabletop model is so short that centimetres tell its booms apart.
    ("boom_length", "m", '"18.9 m" or "62 ft"',
     (("m", 2), ("m", 1, 1.995)), (("ft", 1),)),
    ("small_length", "m", '"8 mm" or "0.31 in"',
     (("mm", 1), ("mm", 0, 19.95)), (("in", 3), ("in", 2, 0.9995), ("in", 1, 1.9995))),
    ("area", "m^2", '"0.25 m2" or "2.7 ft2"',
     (("cm^2", 1), ("m^2", 2, 0.01)), (("in^2", 2), ("ft^2", 2, 0.1))),
    ("section_area", "m^2", '"120 cm2" or "18.6 in2"',
     (("cm^2", 1),), (("in^2", 2),)),
    ("section_modulus", "m^3", '"900 cm3" or "55 in3"',
     (("cm^3", 1),), (("in^3", 2),)),
    ("second_moment", "m^4", '"9000 cm4" or "216 in4"',
     (("cm^4", 1),), (("in^4", 2),)),
    ("mass", "kg", '"5 t", "800 kg" or "11000 lb"',
     (("kg", 2), ("kg", 1, 9.995), ("kg", 0, 24.95), ("t", 2, 0.9995)),
     (("lb", 2), ("lb", 1, 9.995), ("lb", 0, 24.95), ("lb", -1, 999.5))),
    ("force", "N", '"55 kN" or "12000 lbf"',
     (("N", 1), ("kN", 1, 0.99995)),
     (("lbf", 2), ("lbf", 1, 9.995), ("lbf", 0, 24.95), ("kip", 1, 9.9995))),
    ("moment", "N*m", '"900 kN m" or "660 kip ft"',
     (("N*m", 1), ("kN*m", 1, 0.99995)),
     (("lbf*ft", 2), ("lbf*ft", 1, 9.995), ("lbf*ft", 0, 24.95), ("kip*ft", 1, 9.9995))),
    ("stress", "Pa", '"690 MPa" or "100 ksi"',
     (("MPa", 1), ("MPa", 0, 9.95)), (("ksi", 2), ("ksi", 1, 9.995))),
    ("pressure", "Pa", '"250 kPa" or "36 psi"',
     (("Pa", 0), ("kPa", 0, 9.9995)), (("psi", 1),)),
    ("angle", "rad", '"62.5 deg" or "1.09 rad"',
     (("deg", 1),), (("deg", 1),)),
    ("speed", "m/s", '"9.8 m/s" or "22 mph"',
     (("m/s", 2), ("m/s", 1, 9.995)), (("ft/min", 0), ("mph", 1, 4.995))),
    ("time", "s", '"1.5 s"',
     (("s", 2), ("s", 1, 9.995)), (("s", 2), ("s", 1, 9.995))),
    ("stiffness", "N/m", '"60 MN/m" or "340 kip/in"',
     (("kN/m", 1), ("MN/m", 1, 0.99995)), (("lbf/in", 0), ("kip/in", 1, 9.9995))),
    ("density", "kg/m^3", '"7850 kg/m3" or "490 lb/ft3"',
     (("kg/m^3", 0),), (("lb/ft^3", 1),)),
    ("mass_per_length", "kg/m", '"1.2 kg/m" or "0.81 lb/ft"',
     (("kg/m", 2),), (("lb/ft", 2),)),
    ("area_per_mass", "m^2/kg", '"1.2 m2/t" or "0.0059 ft2/lb"',
     (("m^2/t", 2),), (("ft^2/klb", 2),)),
    ("share", "", '"45 %" or 0.45',
     (("%", 1), ("%", 0, 9.95)), (("%", 1), ("%", 0, 9.95))),
    ("number", "", "1.6",
     (("", 2),), (("", 2),)),
)  # fmt: skip


def _displays(rows: _Rows) -> tuple[Display, ...]:
    """Make displays of a quantity, from small values to large ones."""
    return tuple(
        Display(unit=unit, digits=digits, least=least[0] if least else 0.0)
        for unit, digits, *least in rows
    )


QUANTITIES: Mapping[str, Quantity] = {
    name: Quantity(unit=unit, example=example, metric=_displays(metric), us=_displays(us))
    for name, unit, example, metric, us in _TABLE
}
"""Every quantity that can be read and shown."""


def quantity_named(name: str) -> Quantity:
    """Look up a quantity.

    Parameters
    ----------
    name : str
        A key of `QUANTITIES`
    """
    if name not in QUANTITIES:
        raise UnitError(f'There is no quantity "{name}".{did_you_mean(name, QUANTITIES)}')
    return QUANTITIES[name]


def display(quantity: str, system: str = "metric", *, like: float = math.inf) -> Display:
    """Choose unit and digits for a column, an axis or one value.

    Parameters
    ----------
    quantity : str
        A key of `QUANTITIES`
    like : float
        A typical value, such as the largest; without it the unit for large values
        [SI unit of the quantity]
    """
    if system not in SYSTEMS:
        raise UnitError(f'Units "{system}" are not known. Choose "metric" or "us".')
    known = quantity_named(quantity)
    rows = known.metric if system == "metric" else known.us
    size = math.inf if math.isnan(like) else abs(like)
    return [row for row in rows if size >= row.least * row.factor][-1]


def show(value: float, quantity: str, system: str = "metric") -> str:
    """Write a figure with its unit.

    Parameters
    ----------
    value : float
        [SI unit of the quantity]
    quantity : str
        A key of `QUANTITIES`

    Examples
    --------
    >>> show(18.0, "length"), show(18.0, "length", "us"), show(5000.0, "mass", "us")
    ('18.0 m', '59.1 ft', '11,020 lb')
    """
    return display(quantity, system, like=value).text(value)


def outside(value: float, least: float, most: float, quantity: str) -> str:
    """Say that a figure is outside its bounds, in the units in which people give it.

    Parameters
    ----------
    value, least, most : float
        [SI unit of the quantity]
    quantity : str
        A key of `QUANTITIES`

    Examples
    --------
    >>> outside(-8000.0, 0.0, 1e7, "mass"), outside(200.0, 0.0, 0.3, "share")
    ('-8 t is outside 0 t to 10,000 t', '20,000 % is outside 0 % to 30 %')
    """
    scale = display(quantity, like=value)
    said = [scale._with_unit(f"{one / scale.factor:,.10g}") for one in (value, least, most)]
    return f"{said[0]} is outside {said[1]} to {said[2]}"


def show_rated(value: float, system: str = "metric") -> str:
    """Write a rated load with its unit, rounded down: what may be lifted is never overstated.

    Parameters
    ----------
    value : float
        [kg]

    Examples
    --------
    >>> show_rated(5229.0), show(5229.0, "mass"), show_rated(5229.0, "us")
    ('5.22 t', '5.23 t', '11,520 lb')
    """
    # A unit counts from a whole 10 or 1000 on, not from where rounding half up would reach it.
    return display("mass", system, like=value * (1.0 + HAIR) * WHOLE_FROM).text_down(value)
