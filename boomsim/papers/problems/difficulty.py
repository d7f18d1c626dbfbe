"""How difficult a numeric problem is, measured from its formulas before anyone has sat it."""

from functools import lru_cache

from sympy import Add, Expr, Function, Mul, Pow, S
from sympy.core.function import Application

EASIEST, HARDEST = 1, 5
ENDS = (2, 3, 5, 7)
"""Most points of difficulty 1, 2, 3 and 4; more is 5. They part our families about evenly [1]."""


@lru_cache(maxsize=1024)
def effort_of(formulas: tuple[Expr, ...]) -> int:
    """Measure the difficulty of a chain of steps.

    One point for each step; one more for every three operations after the first; one more when
    an angle function, a power or a root occurs; points are then put on a scale of five. A
    convention of this project: after a class has sat the paper, the facility in the report is
    the better measure.

    Parameters
    ----------
    formulas : tuple of Expr
        Of the steps

    Returns
    -------
    int
        From 1 (one formula, numbers in) to 5 [1]
    """
    return EASIEST + sum(points_of(formulas) > end for end in ENDS)


@lru_cache(maxsize=1024)
def points_of(formulas: tuple[Expr, ...]) -> int:
    """Count the points of a chain of steps [1].

    Parameters
    ----------
    formulas : tuple of Expr
        Of the steps
    """
    operations = sum(_operations(formula) for formula in formulas)
    curved = any(_is_curved(formula) for formula in formulas)
    return len(formulas) + max(operations - 1, 0) // 3 + curved


@lru_cache(maxsize=4096)
def letters_of(formula: Expr) -> frozenset[str]:
    """Names of all letters in a formula."""
    return frozenset(str(letter) for letter in formula.free_symbols)


def _operations(formula: Expr) -> int:
    """Count the key presses between numbers on a calculator; a minus sign is none more."""
    parts = [part for part in formula.args if part != S.NegativeOne]
    own = len(parts) - 1 if isinstance(formula, Add | Mul) else 0
    return own + sum(_operations(part) for part in formula.args) + isinstance(formula, Application)


def _is_curved(formula: Expr) -> bool:
    """Whether an angle function, a power or a root occurs; a plain division does not count."""
    return bool(formula.atoms(Function)) or any(
        power.exp != S.NegativeOne for power in formula.atoms(Pow)
    )
