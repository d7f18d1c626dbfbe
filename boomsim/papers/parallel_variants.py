"""How equally hard the variants of a paper are: by effort, and for simulated candidates.

The simulated candidates of :mod:`boomsim.papers.simulated_candidates` answer the papers with their
numbers, and their answers are marked as any others are.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from boomsim.papers.marking.mark_question import mark_question
from boomsim.papers.paper import Paper, Question
from boomsim.papers.problems.family import Family, Slip
from boomsim.papers.problems.step_solving import solve
from boomsim.papers.problems.tolerance_bands import result_of
from boomsim.papers.simulated_candidates import COUNT, believed, points

LOOKED_AT = 10
"""Variants that simulated candidates answer, evenly among all: marking takes its time [1]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Hardness:
    """How equally hard variants are.

    Attributes
    ----------
    variants : int
        All [1]
    effort : tuple of int
        Least and most points of effort over all variants [1]
    looked_at : int
        Variants that simulated candidates answered [1]
    means : tuple of float
        Their mean marks in each of these variants [1]
    marks : int
        Of the paper [1]
    """

    variants: int
    effort: tuple[int, int]
    looked_at: int
    means: tuple[float, ...]
    marks: int

    @property
    def ends(self) -> tuple[float, float]:
        """Least and most mean marks to a tenth, so that a reader finds their difference."""
        return round(min(self.means), 1), round(max(self.means), 1)

    def __str__(self) -> str:
        """Say it in two sentences."""
        (low, high), (least, most) = self.effort, self.ends
        effort = f"{low}" if low == high else f"{low} to {high}"
        which = (
            "each variant" if self.looked_at == self.variants
            else f"each of {self.looked_at} of {self.variants} variants"
        )  # fmt: skip
        return (
            f"Every variant takes {effort} points of effort. {COUNT} simulated candidates with "
            f"named misconceptions earn {least:.1f} to {most:.1f} of {self.marks} marks on "
            f"average in {which}: a spread of {most - least:.1f}."
        )


def hardness(papers: Sequence[Paper]) -> Hardness:
    """Find how equally hard variants are.

    Parameters
    ----------
    papers : sequence of Paper
        All variants of one blueprint
    """
    efforts = [sum(points(one.problem.family) for one in paper.questions) for paper in papers]
    count = min(LOOKED_AT, len(papers))
    places = sorted({round(n * (len(papers) - 1) / max(count - 1, 1)) for n in range(count)})
    return Hardness(
        variants=len(papers), effort=(min(efforts), max(efforts)), looked_at=len(places),
        means=tuple(mean_marks(papers[place]) for place in places), marks=papers[0].marks,
    )  # fmt: skip


def mean_marks(paper: Paper) -> float:
    """Mean marks of the simulated candidates in one variant [1]."""
    return sum(_mean(one, paper) for one in paper.questions)


def _mean(question: Question, paper: Paper) -> float:
    """Mean marks of one question."""
    family = question.problem.family
    if question.is_choice or not isinstance(family, Family):
        return _of_choice(question)
    slips = {slip.words: slip for slip in family.slips}
    shown = believed(family.id, tuple(slips))
    earned = {words: _marks(question, family, slips[words], paper) for words in set(shown) if words}
    return sum(earned.get(words, question.marks) for words in shown) / COUNT


def _of_choice(question: Question) -> float:
    """Who has the misconception of an offered choice takes it, and loses its marks."""
    slips = tuple(sorted(one.slip for one in question.problem.choices if not one.right))
    shown = believed(question.problem.family.id, slips)
    return question.marks * sum(not words for words in shown) / COUNT


def _marks(question: Question, family: Family, slip: Slip, paper: Paper) -> float:
    """Marks of an answer that shows one misconception; what has no sense is left blank."""
    problem = question.problem
    values = solve(family, problem.values, slip=slip)
    answers = {
        asked.label: result_of(asked.step, values[asked.step.name], system=problem.system).plain()
        for asked in question.asked
        if values[asked.step.name] > 0
    }
    return mark_question(question, answers, sign=".", policy=paper.plan.marking).marks
