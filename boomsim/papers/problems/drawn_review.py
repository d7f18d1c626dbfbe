"""What an editor would say about problems drawn from a family: one right answer, clearly so."""

from collections import Counter
from collections.abc import Iterator
from itertools import combinations, product

from boomsim.papers.language.question_words import in_plain
from boomsim.papers.numbers.dice import Chance
from boomsim.papers.numbers.printed_units import METRIC, US
from boomsim.papers.paper_errors import FamilyError
from boomsim.papers.problems.family import AnyFamily, ChoiceFamily, Family, Slip
from boomsim.papers.problems.problem import CHOICE, NUMERIC, Problem
from boomsim.papers.problems.problem_making import TRIES, WIDEST, draw_givens, make_problem
from boomsim.papers.problems.step_solving import close, holds, solve
from boomsim.papers.problems.tolerance_bands import (
    final_tolerance,
    result_of,
    slips_taken_for_right,
)

ENOUGH = 100
"""Draws after which each of four options should have been right [1]."""

WAYS = tuple(product((METRIC, US), (NUMERIC, CHOICE)))


def draw_complaints(family: AnyFamily, *, draws: int) -> Iterator[str]:
    """Draw problems and look at them.

    Parameters
    ----------
    family : Family or ChoiceFamily
    draws : int
        [1]

    Yields
    ------
    str
        Each complaint once, with the seed of its first draw
    """
    said: Counter[str] = Counter()
    rights: Counter[int] = Counter()
    for seed in range(draws):
        system, form = WAYS[seed % len(WAYS)]
        try:
            problem = make_problem(family, seed=f"{seed}", system=system, form=form)
        except FamilyError as error:
            yield str(error)
            return
        if isinstance(family, ChoiceFamily):
            places = _right_places(family, seed, system)
            rights.update(dict(enumerate(places)))
        for words in problem_complaints(problem):
            said[words] += 1
            if said[words] == 1:
                yield f"{words} (seed {seed}, {system}, {form})"
    for place, count in rights.items():
        if draws >= ENOUGH and not count:
            yield f"option {place + 1} was never right in {draws} draws"


def _right_places(family: ChoiceFamily, seed: int, system: str) -> list[int]:
    """1 for the right option and 0 for the others, as the family writes them."""
    dice = Chance("right", seed, family.id, system)
    for attempt in range(TRIES):
        child = dice.child(attempt)
        givens, _ = draw_givens(family, child, system=system)
        values = {name: amount.value for name, amount in givens.items()}
        posed = family.pose(child, values) if holds(family, values) else None
        if posed is not None:
            return [int(one.right) for one in posed.options]
    return []


def problem_complaints(problem: Problem) -> Iterator[str]:
    """Find what is wrong with one problem."""
    texts = [in_plain(choice.text) for choice in problem.choices]
    if len(set(texts)) < len(texts):
        yield "two choices read the same"
    if problem.choices and sum(choice.right for choice in problem.choices) != 1:
        yield "not exactly one choice is right"
    if isinstance(problem.family, Family):
        yield from _answers(problem, problem.family)


def _answers(problem: Problem, family: Family) -> Iterator[str]:
    """Look at the answer among what the slips lead to."""
    values, system = problem.values, problem.system
    truth = solve(family, values)
    if final_tolerance(family, truth, system=system) > WIDEST:
        yield "rounded intermediate results hide too much of the answer"
    if problem.form == CHOICE:
        yield from _choices(problem, family)
    else:
        taken = slips_taken_for_right(family, values, system=system)
        yield from (f'who "{slip.words}" is right as well' for slip in taken)
    for slip in family.slips:
        if _is_safer(family, slip, problem) and not slip.safer:
            yield f'who "{slip.words}" is on the safe side of the answer'


def _is_safer(family: Family, slip: Slip, problem: Problem) -> bool:
    """Whether a slip leads to the safe side, as far as print shows it."""
    last = family.steps[-1]
    right, wrong = problem.results[last.name], solve(family, problem.values, slip=slip)[last.name]
    if not family.safe or not wrong > 0:
        return False
    printed = result_of(last, wrong, system=problem.system).number
    return printed < right.number if family.safe == "less" else printed > right.number


def _choices(problem: Problem, family: Family) -> Iterator[str]:
    """No choice lies within the band of another one."""
    near = final_tolerance(family, solve(family, problem.values), system=problem.system)
    numbers = [_number(in_plain(choice.text)) for choice in problem.choices]
    for one, other in combinations(numbers, 2):
        if close(one, other, tolerance=2.0 * near):
            yield f"the choices {one:g} and {other:g} cannot be told apart"


def _number(text: str) -> float:
    """Number of a printed amount [its unit]."""
    digits = text.split("\u00a0")[0].replace("\u202f", "").replace(",", "")
    return float(digits.rstrip("°").replace("−", "-"))
