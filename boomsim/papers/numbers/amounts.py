"""Numbers with units as a paper prints them: rounded by decimal, the same on every platform.

A given is exactly its printed number; a result is solved first and printed by significant
figures. Factors to SI are exact fractions, so the two unit systems never drift apart.
"""

import re
from dataclasses import dataclass
from decimal import ROUND_DOWN, ROUND_HALF_UP, Decimal
from fractions import Fraction
from functools import lru_cache

from boomsim.papers.numbers.printed_units import METRIC, US, Unit, unit
from boomsim.papers.paper_errors import FamilyError

_PLAIN = re.compile(r"(-?\d{1,15}(?:\.\d{1,12})?)(?: (\S{1,20}))?", re.ASCII)


@dataclass(frozen=True, slots=True, kw_only=True)
class Amount:
    """One number with its unit, as printed, and the SI value it stands for.

    Attributes
    ----------
    number : Decimal
        As printed, in `unit`
    value : float
        Of a given: exactly what is printed; of a result: before it was rounded for print [SI]
    """

    number: Decimal
    unit: Unit
    value: float

    def text(self, *, system: str = METRIC) -> str:
        """Write number and unit for people.

        Parameters
        ----------
        system : str
            "metric" or "us": how thousands are parted
        """
        return f"{grouped(self.number, system=system)}{self.unit.gap}{self.unit.shown}"

    def plain(self) -> str:
        """Write number and unit in ASCII, as the marking program reads it back."""
        return f"{self.number:f} {self.unit.name}".strip()


def given(number: Decimal, of: Unit) -> Amount:
    """Make an amount that is exactly its printed number.

    Parameters
    ----------
    number : Decimal
        [1]
    """
    return Amount(number=number, unit=of, value=float(Fraction(number) * of.factor))


def result(value: float, of: Unit, *, figures: int, down: bool = False) -> Amount:
    """Make an amount that is printed to so many significant figures.

    Parameters
    ----------
    value : float
        [SI]
    figures : int
        Significant figures [1]
    down : bool
        Whether it is never rounded up, as a rated load
    """
    number = round_figures(value / float(of.factor), figures=figures, down=down)
    return Amount(number=number, unit=of, value=value)


@lru_cache(maxsize=4096)
def read_amount(text: str) -> Amount:
    """Read a number with its unit, as :meth:`Amount.plain` writes it.

    Parameters
    ----------
    text : str
        "5.30 kN"
    """
    found = _PLAIN.fullmatch(text)
    if not found:
        raise FamilyError(f'"{text[:40]}" is no amount. Write it like "5.30 kN" or "12 kN*m".')
    return given(Decimal(found[1]), unit(found[2] or ""))


def round_figures(value: float, *, figures: int, down: bool = False) -> Decimal:
    """Round to significant figures, halves away from zero.

    The value is first cut to twelve figures, so the last bits in which two platforms may differ
    cannot turn 12.25 into 12.2 on one and 12.3 on the other.

    Parameters
    ----------
    value : float
        [1]
    figures : int
        [1]
    down : bool
        Towards zero instead

    Examples
    --------
    >>> round_figures(15.588235, figures=3), round_figures(12.249999999999998, figures=3)
    (Decimal('15.6'), Decimal('12.3'))
    """
    clean = Decimal(f"{value:.11e}")
    if not clean:
        return Decimal(0)
    way = ROUND_DOWN if down else ROUND_HALF_UP
    rounded = _quantize(clean, figures, way)
    if rounded.adjusted() > clean.adjusted():  # 9.996 became 10.00: one figure too many
        rounded = _quantize(rounded, figures, way)
    return Decimal(f"{rounded:f}")


def _quantize(number: Decimal, figures: int, way: str) -> Decimal:
    """Round at the last figure wanted."""
    return number.quantize(Decimal(1).scaleb(number.adjusted() - figures + 1), way)


def grouped(number: Decimal, *, system: str = METRIC) -> str:
    """Write a number with parted thousands: 12 500 in metric papers, 12,500 in US ones.

    Parameters
    ----------
    number : Decimal
        [1]
    """
    mark = "," if system == US else "\u202f"
    whole, _, part = f"{abs(number):f}".partition(".")
    shown = f"{int(whole):,}".replace(",", mark) if len(whole) > 4 else whole
    return ("−" if number < 0 else "") + shown + (f".{part}" if part else "")
