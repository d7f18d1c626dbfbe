"""No problem twice in one paper, nor one that is answered by the same cell of a chart."""

from collections.abc import Iterable

from boomsim.papers.language.question_words import in_plain
from boomsim.papers.problems.family import AnyFamily, Family
from boomsim.papers.problems.problem import Problem
from boomsim.papers.problems.problem_making import make_problem

TRIES = 20
"""After so many a repeated problem is taken: a family may have no other one [1]."""


def unlike_problem(
    family: AnyFamily, *, seed: str, system: str, form: str, earlier: Iterable[Problem]
) -> Problem:
    """Draw a problem that the paper does not have yet.

    Parameters
    ----------
    family : Family or ChoiceFamily
    seed : str
        Of the first try; later ones count on behind it
    system, form : str
        As for :func:`boomsim.papers.problems.problem_making.make_problem`
    earlier : iterable of Problem
        Those before it in the paper
    """
    same = [one for one in earlier if one.family is family]
    for again in range(TRIES):
        own = f"{seed}/{again}" if again else seed
        problem = make_problem(family, seed=own, system=system, form=form)
        if not any(are_alike(problem, one) for one in same):
            break
    return problem


def are_alike(one: Problem, other: Problem) -> bool:
    """Whether two problems of one family ask for the same.

    Returns
    -------
    bool
        True if what is read off a chart, or the answer, is the same; for a question answered in
        words, if its text is
    """
    if isinstance(one.family, Family):
        last = one.family.steps[-1]
        told = [step for step in one.family.steps if not step.whole]  # numbers of checks are few
        names = [step.name for step in told if step.is_reading or step is last]
        return any(one.shown(name) == other.shown(name) for name in names)
    texts = [in_plain(problem.pieces(problem.family.text)) for problem in (one, other)]
    return texts[0] == texts[1]
