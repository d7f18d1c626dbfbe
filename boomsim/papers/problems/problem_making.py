"""From a family and a seed to one problem: drawn, solved, checked by the call path."""

import math
from collections.abc import Mapping
from dataclasses import replace

from boomsim.papers.numbers.amounts import Amount, given, read_amount
from boomsim.papers.numbers.dice import Chance
from boomsim.papers.numbers.printed_units import METRIC
from boomsim.papers.paper_errors import FamilyError
from boomsim.papers.problems.choice_mixing import mixed_choices
from boomsim.papers.problems.family import (
    AnyFamily,
    ChoiceFamily,
    Drawn,
    Family,
    Posed,
)
from boomsim.papers.problems.family_in_trade_words import worded
from boomsim.papers.problems.problem import CHOICE, NUMERIC, Choice, Problem
from boomsim.papers.problems.step_solving import close, holds, is_usual, solve
from boomsim.papers.problems.tolerance_bands import (
    final_tolerance,
    result_of,
    slips_taken_for_right,
)
from boomsim.units import all_in_words

TRIES = 200
WIDEST = 0.04
"""Where rounded intermediate results hide more than that of an answer, it is drawn again [1]."""


def make_problem(
    family: AnyFamily, *, seed: str, system: str = METRIC, form: str = NUMERIC
) -> Problem:
    """Draw a problem.

    Parameters
    ----------
    family : Family or ChoiceFamily
    form : str
        "numeric" or "choice"; a :class:`ChoiceFamily` is always a choice, and what is marked check
        by check never

    Raises
    ------
    FamilyError
        When no sensible draw is found, or the call path contradicts the answer
    """
    if isinstance(family, Family) and family.by_check:
        form = NUMERIC
    family = worded(family, system)
    dice = Chance(seed, family.id, system)
    for attempt in range(TRIES):
        problem = _attempt(family, dice.child(attempt), seed=seed, system=system, form=form)
        if problem is not None:
            return problem
    raise FamilyError(
        f'Family "{family.id}", seed "{seed}": no sensible {form} problem in {TRIES} draws. '
        "Widen its values, loosen its `where`, or give it slips that lead to other answers."
    )


def problem_with(
    family: Family, *, givens: Mapping[str, str], system: str = METRIC, form: str = NUMERIC
) -> Problem:
    """Pose a problem with chosen numbers, such as those of a published example.

    Parameters
    ----------
    givens : mapping of str to str
        By letter: ``{"F": "5.30 kN"}``

    Raises
    ------
    FamilyError
        If the numbers make no sensible problem, or the call path contradicts the answer
    """
    amounts = {name: read_amount(text) for name, text in givens.items()}
    family = worded(family, system)
    problem = Problem(family=family, system=system, form=form, seed="chosen", givens=amounts)
    solved = _solved(problem, family, Chance("chosen", family.id))
    if solved is None:
        raise FamilyError(f'Family "{family.id}": these givens make no sensible problem.')
    _confirm(solved, family)
    return solved


def _attempt(
    family: AnyFamily, dice: Chance, *, seed: str, system: str, form: str
) -> Problem | None:
    """Draw once; None if the draw is no good."""
    givens, drawn = draw_givens(family, dice, system=system)
    if len(givens) < len(family.givens):
        return None
    problem = Problem(
        family=family, system=system, form=form, seed=seed,
        givens=givens, words=drawn.words, table=all_in_words(drawn.table, system),
    )  # fmt: skip
    if isinstance(family, ChoiceFamily):
        return _posed(problem, family, dice)
    if not is_usual(family, solve(family, problem.values)):
        return None
    solved = _solved(problem, family, dice)
    if solved is None or _is_unclear(solved, family):
        return None
    _confirm(solved, family)
    return solved


def _is_unclear(problem: Problem, family: Family) -> bool:
    """Whether a known slip would pass for the right answer, or rounding hides too much of it."""
    values, system = solve(family, problem.values), problem.system
    if final_tolerance(family, values, system=system) > WIDEST:
        return True
    taken = slips_taken_for_right(family, problem.values, system=system)
    return problem.form != CHOICE and any(True for _ in taken)


def draw_givens(family: AnyFamily, dice: Chance, *, system: str) -> tuple[dict[str, Amount], Drawn]:
    """Throw the dice for all givens, and let the family supply what comes from the call path.

    Returns
    -------
    dict of str to Amount, Drawn
        A value that the family could not supply (NaN: an empty cell of a chart) is left out
    """
    spreads = {one.name: one.spread(system) for one in family.givens}
    givens = {
        name: given(values.number(dice.integer(values.count)), values.unit)
        for name, values in spreads.items()
        if values.count
    }
    drawn = Drawn()
    if isinstance(family, Family) and family.draw:
        drawn = family.draw(dice, system, {name: one.value for name, one in givens.items()})
    late = {
        name: given(spreads[name].nearest(value), spreads[name].unit)
        for name, value in drawn.values.items()
        if math.isfinite(value)
    }
    known = givens | late
    return {name: known[name] for name in spreads if name in known}, drawn


def _solved(problem: Problem, family: Family, dice: Chance) -> Problem | None:
    """Solve a numeric family; None if an answer is absurd."""
    values = solve(family, problem.values)
    if not all(values[step.name] > 0 for step in family.steps) or not holds(family, values):
        return None
    results = {
        step.name: result_of(step, values[step.name], system=problem.system)
        for step in family.steps
    }
    solved = replace(problem, results=results)
    if problem.form != CHOICE:
        return solved
    choices = mixed_choices(solved, family, dice)
    return replace(solved, choices=choices) if choices else None


def _confirm(problem: Problem, family: Family) -> None:
    """Hold the answer against the call path."""
    answer, other = problem.results[family.steps[-1].name].value, family.check(problem.values)
    if not close(answer, other, tolerance=family.agreement):
        raise FamilyError(
            f'Family "{family.id}", seed "{problem.seed}": the steps give {answer:.6g} and the '
            f"call path {other:.6g} [SI], further apart than the stated {family.agreement:.2g}. "
            "Correct the formula or the check, or state the simplification with a wider agreement."
        )


def _posed(problem: Problem, family: ChoiceFamily, dice: Chance) -> Problem | None:
    """Pose a choice family; None if its numbers are not sensible."""
    if not holds(family, problem.values):
        return None
    posed = family.pose(dice, problem.values)
    if posed is None:
        return None
    posed = all_in_words(posed, problem.system)
    problem = replace(problem, form=CHOICE, words=posed.words, table=posed.table)
    _confirm_choice(family, problem, posed)
    choices = tuple(
        Choice(
            letter="ABCDEF"[place],
            text=problem.pieces(one.text),
            right=one.right,
            slip="" if one.right else one.slip,
        )
        for place, one in enumerate(dice.shuffled(posed.options))
    )
    return replace(problem, choices=choices, because=posed.because)


def _confirm_choice(family: ChoiceFamily, problem: Problem, posed: Posed) -> None:
    """Hold the right option against the call path."""
    right = [place for place, option in enumerate(posed.options) if option.right]
    found = family.check(problem.values, posed)
    if right != [found]:
        raise FamilyError(
            f'Family "{family.id}", seed "{problem.seed}": option {right} is marked right, but the '
            f"call path says option {found}. Correct `pose` or `check`."
        )
