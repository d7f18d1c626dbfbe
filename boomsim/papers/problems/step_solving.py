"""A family's formulas as plain functions: solve a chain, with or without a slip in it.

A step that cannot be evaluated (a root of a negative number, a division by nothing) gives NaN,
and so does every step that needs it. Nothing here ever sees text from outside.
"""

import math
from collections.abc import Callable, Mapping
from functools import lru_cache

from sympy import Expr, lambdify
from sympy.core.relational import Relational

from boomsim.papers.problems.family import AnyFamily, Family, Slip, Values

NAN = float("nan")
_Function = Callable[..., object]


def solve(family: Family, givens: Values, *, slip: Slip | None = None) -> dict[str, float]:
    """Work through all steps.

    Parameters
    ----------
    givens : mapping of str to float
        By letter [SI]
    slip : Slip or None
        Goes wrong in one step, the later ones follow

    Returns
    -------
    dict of str to float
        Givens and steps by letter [SI]
    """
    values = dict(givens)
    for name, letters, function in _chain(family, slip):
        values[name] = _guarded(function, [values[letter] for letter in letters])
    return values


@lru_cache(maxsize=4096)
def _chain(family: Family, slip: Slip | None) -> tuple[tuple[str, tuple[str, ...], _Function], ...]:
    """Compile the steps of a family once: name, letters and function of each."""
    formulas = (
        slip.formula if slip is not None and slip.step == step.letter else step.formula
        for step in family.steps
    )
    compiled = map(_compiled, formulas)
    return tuple((step.name, *one) for step, one in zip(family.steps, compiled, strict=True))


def evaluate(formula: Expr, values: Values) -> float:
    """Evaluate one formula.

    Parameters
    ----------
    values : mapping of str to float
        By letter [SI]

    Returns
    -------
    float
        NaN where it has no real, finite value [SI]
    """
    letters, function = _compiled(formula)
    return _guarded(function, [values[name] for name in letters])


def holds(family: AnyFamily, values: Values) -> bool:
    """Whether everything that a family demands of its numbers is so.

    Parameters
    ----------
    family : Family or ChoiceFamily
    values : mapping of str to float
        By letter [SI]
    """
    return _all_hold(family.where, values)


def is_usual(family: Family, values: Values) -> bool:
    """Whether numbers are such as the trade has.

    Parameters
    ----------
    values : mapping of str to float
        By letter [SI]
    """
    return _all_hold(family.usual, values)


def _all_hold(relations: tuple[Relational, ...], values: Values) -> bool:
    """Whether all relations hold; each is compiled once."""
    compiled = map(_compiled, relations)
    return all(_guarded(f, [values[n] for n in names]) for names, f in compiled)


@lru_cache(maxsize=4096)
def _compiled(formula: Expr | Relational) -> tuple[tuple[str, ...], _Function]:
    """Turn our own formula into a Python function of floats."""
    letters = sorted(formula.free_symbols, key=str)
    return tuple(map(str, letters)), lambdify(letters, formula, modules="math")


def _guarded(function: _Function, arguments: list[float]) -> float:
    """Call it; whatever is not a finite real number becomes NaN."""
    try:
        value = function(*arguments)
    except (ArithmeticError, ValueError):
        return NAN
    real = isinstance(value, int | float) and math.isfinite(value)
    return float(value) if real else NAN  # type: ignore[arg-type]


def close(one: float, other: float, *, tolerance: float) -> bool:
    """Whether two values agree within a relative tolerance; NaN agrees with nothing.

    Parameters
    ----------
    one, other : float
        [SI]
    tolerance : float
        Of the larger size of the two [1]
    """
    return abs(one - other) <= tolerance * max(abs(one), abs(other))


def needed_by(family: Family, name: str) -> frozenset[str]:
    """Letters of all earlier steps that a step rests on, directly or through others.

    Parameters
    ----------
    name : str
        Letter of the step
    """
    by_name: Mapping[str, frozenset[str]] = {step.name: step.needs for step in family.steps}
    found: set[str] = set()
    waiting = [name]
    while waiting:
        fresh = by_name[waiting.pop()] & by_name.keys() - found
        found |= fresh
        waiting += fresh
    return frozenset(found)
