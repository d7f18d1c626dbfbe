"""Whether a formula is dimensionally right: kilograms, metres and seconds on both sides."""

from collections.abc import Mapping
from fractions import Fraction

from sympy import Abs, Add, Expr, Function, Max, Min, Mul, Pow, Symbol

from boomsim.papers.paper_errors import FamilyError

Dimension = tuple[Fraction, Fraction, Fraction]

_NONE: Dimension = (Fraction(0), Fraction(0), Fraction(0))
_BASE: Mapping[str, tuple[int, int, int]] = {
    "": (0, 0, 0), "rad": (0, 0, 0), "m": (0, 1, 0), "m^2": (0, 2, 0), "m^3": (0, 3, 0),
    "m^4": (0, 4, 0), "kg": (1, 0, 0), "kg*m": (1, 1, 0), "kg/m": (1, -1, 0), "kg/m^3": (1, -3, 0),
    "m/s": (0, 1, -1), "m/s^2": (0, 1, -2), "N": (1, 1, -2), "N*m": (1, 2, -2), "N/m": (1, 0, -2),
    "N*m^2": (1, 3, -2), "Pa": (1, -1, -2),
}  # fmt: skip


def dimension_of_unit(si: str) -> Dimension:
    """Exponents of kilogram, metre and second in an SI unit.

    Parameters
    ----------
    si : str
        "N*m"

    Returns
    -------
    tuple of Fraction
        [1]
    """
    mass, length, time = _BASE[si]
    return Fraction(mass), Fraction(length), Fraction(time)


def dimension_of(formula: Expr, letters: Mapping[str, Dimension]) -> Dimension:
    """Work out the dimension of a formula.

    Parameters
    ----------
    letters : mapping of str to tuple of Fraction
        Dimension of each letter [1]

    Returns
    -------
    tuple of Fraction
        [1]

    Raises
    ------
    FamilyError
        If unlike things are added, or a function is taken of something with a dimension
    """
    if isinstance(formula, Symbol):
        return letters[str(formula)]
    parts = [dimension_of(part, letters) for part in formula.args]
    if isinstance(formula, Mul):
        return _sum(parts)
    if isinstance(formula, Pow) and formula.exp.is_number:
        power = Fraction(str(formula.exp))
        return parts[0][0] * power, parts[0][1] * power, parts[0][2] * power
    if isinstance(formula, Add | Min | Max | Abs):
        return _same(formula, parts)
    if isinstance(formula, Function | Pow):
        return _same(formula, [*parts, _NONE])
    return _NONE


def _sum(parts: list[Dimension]) -> Dimension:
    """Exponents of a product."""
    return (
        sum((part[0] for part in parts), Fraction(0)),
        sum((part[1] for part in parts), Fraction(0)),
        sum((part[2] for part in parts), Fraction(0)),
    )


def _same(formula: Expr, parts: list[Dimension]) -> Dimension:
    """All parts must be alike."""
    if any(part != parts[0] for part in parts):
        raise FamilyError(f"{formula} puts unlike things together: their dimensions differ.")
    return parts[0]
