"""The round values a given may take, and the short notation that names them."""

import re
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from functools import lru_cache

from boomsim.papers.numbers.printed_units import Unit, unit
from boomsim.papers.paper_errors import FamilyError

_NUMBER = r"-?\d+(?:\.\d+)?"
_RANGE = re.compile(rf"({_NUMBER}) to ({_NUMBER})(?: (.+?))? by ({_NUMBER})")
_LIST = re.compile(rf"({_NUMBER}(?:, ?{_NUMBER})*)(?: (.+))?")
_DRAWN = re.compile(rf"drawn(?: in (.+?))? by ({_NUMBER})")


@dataclass(frozen=True, slots=True, kw_only=True)
class Spread:
    """The round values a given may take.

    Attributes
    ----------
    listed : tuple of Decimal
        All of them, or () when they come from low, step and count, or from a drawing function
    low, step : Decimal
        [1]
    count : int
        0 means that the family's `draw` function gives the value [1]
    """

    unit: Unit
    listed: tuple[Decimal, ...] = ()
    low: Decimal = Decimal(0)
    step: Decimal = Decimal(1)
    count: int = 0

    def number(self, index: int) -> Decimal:
        """Value number `index`, as printed [1]."""
        return self.listed[index] if self.listed else self.low + self.step * index

    def nearest(self, value: float) -> Decimal:
        """Round a drawn SI value to the step, as printed [1]."""
        steps = Decimal(f"{value / float(self.unit.factor):.11e}") / self.step
        return steps.quantize(Decimal(1), ROUND_HALF_UP) * self.step


@lru_cache(maxsize=2048)
def spread(text: str) -> Spread:
    """Read the short notation for a given's values.

    Parameters
    ----------
    text : str
        "2 to 20 kN by 0.1", a list "4, 6, 8 m", one constant "9.81 m/s2", or
        "drawn in t by 0.05" for a value that the family's `draw` function supplies

    Examples
    --------
    >>> spread("2 to 20 kN by 0.5").count
    37
    """
    if found := _RANGE.fullmatch(text):
        return _even(*found.groups(), text=text)
    if found := _DRAWN.fullmatch(text):
        return Spread(unit=unit(found[1] or ""), step=Decimal(found[2]))
    if found := _LIST.fullmatch(text):
        values = tuple(Decimal(part.strip()) for part in found[1].split(","))
        return Spread(unit=unit(found[2] or ""), listed=values, count=len(values))
    raise FamilyError(
        f'"{text}" names no values. Write "2 to 20 kN by 0.1", "4, 6, 8 m" or "drawn in t by 0.05".'
    )


def _even(low: str, high: str, name: str | None, step: str, *, text: str) -> Spread:
    """Make evenly spaced values; both ends belong to them."""
    width, by = Decimal(high) - Decimal(low), Decimal(step)
    if not by > 0 or not width > 0 or width % by:
        raise FamilyError(
            f'"{text}": the step must be positive and lead from the low to the high end.'
        )
    low_number = Decimal(low).quantize(by) if by.as_tuple().exponent < 0 else Decimal(low)  # type: ignore[operator]
    return Spread(unit=unit(name or ""), low=low_number, step=by, count=int(width / by) + 1)
