"""How difficult a numeric problem is, measured from its formulas before anyone has sat it."""

from functools import lru_cache

from sympy import Add, Expr, Function, Mul, Pow, S

EASIEST, HARDEST = 1, 5


@lru_cache(maxsize=1024)
def effort_of(formulas: tuple[Expr, ...]) -> int:
    """Measure the difficulty of a chain of steps.

    One for each step; one more for every three operations after the first; one more when an
    angle function, a power or a root occurs; at most five. A convention of this project: after a
    class has sat the paper, the facility in the report is the better measure.

    Parameters
    ----------
    formulas : tuple of Expr
        Of the steps

    Returns
    -------
    int
        From 1 (one formula, numbers in) to 5 [1]
    """
    operations = sum(_operations(formula) for formula in formulas)
    curved = any(_is_curved(formula) for formula in formulas)
    points = len(formulas) + max(operations - 1, 0) // 3 + curved
    return max(EASIEST, min(HARDEST, points))


@lru_cache(maxsize=4096)
def letters_of(formula: Expr) -> frozenset[str]:
    """Names of all letters in a formula.

    Parameters
    ----------
    formula : Expr

    Returns
    -------
    frozenset of str
    """
    return frozenset(str(letter) for letter in formula.free_symbols)


def _operations(formula: Expr) -> int:
    """Count the key presses between numbers on a calculator."""
    own = len(formula.args) - 1 if isinstance(formula, Add | Mul) else 0
    return own + sum(_operations(part) for part in formula.args) + isinstance(formula, Function)


def _is_curved(formula: Expr) -> bool:
    """Whether an angle function, a power or a root occurs; a plain division does not count."""
    return bool(formula.atoms(Function)) or any(
        power.exp != S.NegativeOne for power in formula.atoms(Pow)
    )
