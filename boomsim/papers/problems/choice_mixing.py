"""The answer among wrong ones that known slips lead to, so that its size gives nothing away.

How many of the wrong choices are smaller than the answer is thrown first, among what the slips
allow. Where they lie on one side of it alone, a factor of two stands in on the other.
"""

from collections.abc import Iterable, Iterator, Sequence

from sympy import Integer

from boomsim.papers.language.question_words import Piece
from boomsim.papers.numbers.amounts import Amount
from boomsim.papers.numbers.dice import Chance
from boomsim.papers.problems.family import Family, Slip
from boomsim.papers.problems.problem import Choice, Problem
from boomsim.papers.problems.step_solving import close, solve
from boomsim.papers.problems.tolerance_bands import final_tolerance, result_of, tolerance_of

CHOICES = 4
APART = 3.0
"""Two choices differ by at least so many tolerances of the answer."""

NO_FACTOR = ("deg", "%")
"""Of an angle or a share twice as much is often absurd, and gives itself away."""

_Wrong = tuple[Amount, Slip]


def mixed_choices(problem: Problem, family: Family, dice: Chance) -> tuple[Choice, ...]:
    """Mix the answer with what known slips lead to.

    Parameters
    ----------
    problem : Problem
        Solved

    Returns
    -------
    tuple of Choice
        () if too few stand apart
    """
    right = problem.results[family.steps[-1].name]
    wrong = list(_wrong(problem, family, dice.shuffled(family.slips)))
    near = _apart(problem, family)
    below = _spread((one for one in wrong if one[0].number < right.number), right, near)
    above = _spread((one for one in wrong if one[0].number > right.number), right, near)
    most = CHOICES - 1
    places = [n for n in range(CHOICES) if n <= len(below) and most - n <= len(above)]
    if not places:
        return ()
    smaller = dice.pick(places)
    kept = [(right, None), *below[:smaller], *above[: most - smaller]]
    return tuple(
        Choice(letter="ABCDEF"[place], text=(Piece(text=amount.text(system=problem.system)),),
               right=slip is None, slip=slip.words if slip else "")
        for place, (amount, slip) in enumerate(dice.shuffled(kept))
    )  # fmt: skip


def _wrong(problem: Problem, family: Family, slips: Sequence[Slip]) -> Iterator[_Wrong]:
    """What slips lead to, in their order; then, as a stopgap, twice and half of the answer."""
    last, values = family.steps[-1], problem.values
    for slip in slips:
        value = solve(family, values, slip=slip)[last.name]
        if value > 0:
            yield result_of(last, value, system=problem.system), slip
    if last.unit(problem.system).name in NO_FACTOR or family.safe:
        return
    right = problem.results[last.name].value
    for factor, words in ((0.5, "lost a factor of 2"), (2.0, "counted something twice")):
        stopgap = Slip(last.letter, Integer(0), words)
        yield result_of(last, factor * right, system=problem.system), stopgap


def _apart(problem: Problem, family: Family) -> float:
    """Least relative difference of two choices [1]."""
    last, system = family.steps[-1], problem.system
    values = solve(family, problem.values)
    own = tolerance_of(last, values[last.name], system=system)
    return max(APART * own, 2.0 * final_tolerance(family, values, system=system))


def _spread(wrong: Iterable[_Wrong], right: Amount, near: float) -> list[_Wrong]:
    """Keep those that stand apart from the answer and from each other as they are printed."""
    kept: list[_Wrong] = []
    for amount, slip in wrong:
        others = (right, *(one for one, _ in kept))
        if not any(close(float(amount.number), float(o.number), tolerance=near) for o in others):
            kept.append((amount, slip))
    return kept
