"""One paper of one variant: questions with their parts, answers and accepted bands."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from boomsim.papers.blueprint import Blueprint
from boomsim.papers.duplicate_questions import unlike_problem
from boomsim.papers.family_selection import choose
from boomsim.papers.numbers.amounts import result
from boomsim.papers.problems.family import Family, Step
from boomsim.papers.problems.problem import CHOICE, Problem
from boomsim.papers.problems.step_solving import close, solve
from boomsim.papers.problems.tolerance_bands import (
    asked_of,
    carried_rounding,
    result_of,
    tolerance_of,
)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Asked:
    """One answer that is wanted.

    Attributes
    ----------
    label : str
        "1a"; column of the answer sheet
    marks : int
        [1]
    """

    label: str
    step: Step
    marks: int
    system: str

    @property
    def part(self) -> str:
        """The letter alone; "" where a question has one answer."""
        return self.label.lstrip("0123456789")

    @property
    def words(self) -> str:
        """What is wanted, and how it is rounded where that is not as usual."""
        rounding = asked_of(self.step, system=self.system)
        return f"{self.step.words}, {rounding}" if rounding else self.step.words


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Question:
    """One question as it stands in a paper.

    Attributes
    ----------
    number : int
        From 1 [1]
    guided : bool
        Whether every step is asked for
    heading : str
        Title of the part that begins here; "" elsewhere
    """

    number: int
    problem: Problem
    guided: bool = True
    heading: str = ""

    @property
    def marks(self) -> int:
        """What it is worth [1]."""
        return self.problem.marks

    @property
    def is_choice(self) -> bool:
        """Whether it is answered by a letter."""
        return self.problem.form == CHOICE

    @property
    def steps(self) -> tuple[Step, ...]:
        """Steps of the worked solution."""
        family = self.problem.family
        return family.steps if isinstance(family, Family) else ()

    @property
    def asked(self) -> tuple[Asked, ...]:
        """The numbers wanted, in order; none for a choice."""
        if self.is_choice:
            return ()
        system = self.problem.system
        if not (self.guided or self._is_by_check) or len(self.steps) == 1:
            last, label = self.steps[-1], str(self.number)
            return (Asked(label=label, step=last, marks=self.marks, system=system),)
        labels = (f"{self.number}{letter}" for letter in "abcdefghij")
        return tuple(
            Asked(label=label, step=step, marks=step.marks, system=system)
            for label, step in zip(labels, self.steps, strict=False)
        )

    @property
    def _is_by_check(self) -> bool:
        """Whether all steps are asked for in any paper."""
        family = self.problem.family
        return isinstance(family, Family) and family.by_check

    @property
    def labels(self) -> tuple[str, ...]:
        """Columns of the answer sheet."""
        return (str(self.number),) if self.is_choice else tuple(one.label for one in self.asked)

    def tolerance(self, step: Step, value: float) -> float:
        """Largest relative difference from a value of a step that counts as right [1]."""
        system = self.problem.system
        return tolerance_of(step, value, system=system, carried=self._carried(step))

    def _carried(self, step: Step) -> float:
        """Lead of rounded intermediate results for which there is no answer line [1]."""
        family, values = self.problem.family, self.problem.values
        asked = {one.step.name for one in self.asked}
        unasked = [one.name for one in self.steps if one.name not in asked]
        if not isinstance(family, Family) or step.name not in asked or not unasked:
            return 0.0
        return carried_rounding(
            family, solve(family, values), step, system=self.problem.system, unasked=unasked
        )

    def ends(self, step: Step) -> tuple[float, float]:
        """Lowest and highest accepted value [SI]."""
        value = self.problem.results[step.name].value
        share = self.tolerance(step, value)
        return value * (1 - share), value * (1 + share)

    def band(self, step: Step) -> tuple[str, str]:
        """Lowest and highest accepted value, printed with one figure more than asked."""
        amount, ends = self.problem.results[step.name], self.ends(step)
        low, high = (
            result(end, amount.unit, figures=step.figures + 1).text(system=self.problem.system)
            for end in ends
        )
        return low.removesuffix(f"{amount.unit.gap}{amount.unit.shown}"), high

    def slips(self) -> dict[str, str]:
        """Return final answers that give a slip away, with the slip in words."""
        return dict(_slips_of(self))


@lru_cache(maxsize=64)  # pages ask for them several times
def _slips_of(question: Question) -> Mapping[str, str]:
    """Find what each slip leads to, as printed; what is no number or right gives nothing away."""
    problem, family = question.problem, question.problem.family
    found: dict[str, str] = {}
    if not isinstance(family, Family):
        return found
    last = family.steps[-1]
    right = problem.results[last.name].value
    near = question.tolerance(last, right)
    for slip in family.slips:
        value = solve(family, problem.values, slip=slip)[last.name]
        if value > 0 and not close(value, right, tolerance=near):
            text = result_of(last, value, system=problem.system).text(system=problem.system)
            found[text] = f"{found[text]}, or {slip.words}" if text in found else slip.words
    return found


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Paper:
    """A paper of one variant.

    Attributes
    ----------
    variant : str
        "01"
    """

    plan: Blueprint
    variant: str
    questions: tuple[Question, ...]

    @property
    def marks(self) -> int:
        """All marks [1]."""
        return sum(question.marks for question in self.questions)

    @property
    def labels(self) -> tuple[str, ...]:
        """Columns of the answer sheet."""
        return tuple(label for question in self.questions for label in question.labels)


def make_paper(plan: Blueprint, *, variant: int) -> Paper:
    """Set the paper of one variant.

    Parameters
    ----------
    variant : int
        From 0 [1]
    """
    name = variant_name(variant, count=plan.variants)
    questions: list[Question] = []
    part = -1
    for number, slot in enumerate(choose(plan, variant=variant), start=1):
        problem = unlike_problem(
            slot.family, seed=f"{plan.seed}/{name}/{number}", system=plan.units, form=slot.form,
            earlier=[one.problem for one in questions],
        )  # fmt: skip
        heading = plan.part[slot.part].title if slot.part != part else ""
        part = slot.part
        questions.append(
            Question(number=number, problem=problem, guided=slot.guided, heading=heading)
        )
    return Paper(plan=plan, variant=name, questions=tuple(questions))


def variant_name(variant: int, *, count: int) -> str:
    """Name a variant so that names sort as numbers do.

    Parameters
    ----------
    variant : int
        From 0 [1]
    count : int
        Of all variants [1]

    Examples
    --------
    >>> variant_name(0, count=5), variant_name(6, count=250)
    ('01', '007')
    """
    return str(variant + 1).zfill(max(2, len(str(count))))
