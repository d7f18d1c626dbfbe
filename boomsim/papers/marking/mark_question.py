"""Marking one question: right, following from an own earlier value, or showing a known slip.

The rules an examiner would use by hand, in the order in which they are tried for each part:

1. the value is right within the tolerance: all its marks;
2. it follows from the candidate's own earlier values: all its marks, the error is paid for once;
3. it is right as far as it goes, but rounded too far: one mark less;
4. it is what a known slip leads to: no marks for that part, and the slip is named;
5. it is wrong by a unit alone, a power of ten, 9.81 or 12: one mark less, once in a question
   (:mod:`boomsim.papers.marking.unit_slips`).

A policy may be stricter or milder, see :class:`boomsim.papers.marking_policy.Policy`.

A blank part is credited when a later value that rests on it earns its marks, or shows a known
slip elsewhere: the candidate must have had it. The number of a check proves nothing: it can be
guessed.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from boomsim.papers.marking.unit_slips import UNIT_SLIPS, slip_by_factor
from boomsim.papers.marking_policy import USUAL, Policy
from boomsim.papers.numbers.number_reading import Number, read_number
from boomsim.papers.paper import Asked, Question
from boomsim.papers.paper_errors import AnswerError
from boomsim.papers.problems.family import Family, Slip, Step
from boomsim.papers.problems.problem import Problem
from boomsim.papers.problems.step_solving import close, evaluate, needed_by, solve
from boomsim.papers.problems.tolerance_bands import asked_figures, asked_of, result_of

RIGHT, CARRIED, ROUNDED, CREDITED = "right", "carried forward", "rounded too far", "credited"
WRONG, BLANK, REFUSED = "wrong", "blank", "refused"


@dataclass(frozen=True, slots=True, kw_only=True)
class PartMark:
    """What one answer earned.

    Attributes
    ----------
    label : str
        "1a"; "" for a step that was not asked for
    letter : str
        Of the step; "" for a choice
    given : str
        As the candidate wrote it; "" if blank
    status : str
        "right", "carried forward", "rounded too far", "credited", "wrong", "blank" or "refused"
    marks, most : int
        [1]
    slip : str
        Likely misconception, or ""
    note : str
        Anything else the candidate should know, or ""
    answer : str
        What would have been right
    """

    label: str
    letter: str
    given: str
    status: str
    marks: int
    most: int
    slip: str = ""
    note: str = ""
    answer: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class QuestionMark:
    """What one question earned.

    Attributes
    ----------
    number : int
        [1]
    family : str
        Id of the problem family
    """

    number: int
    family: str
    title: str
    parts: tuple[PartMark, ...]

    @property
    def marks(self) -> int:
        """Earned [1]."""
        return sum(part.marks for part in self.parts)

    @property
    def most(self) -> int:
        """Could be earned [1]."""
        return sum(part.most for part in self.parts)

    @property
    def slips(self) -> tuple[str, ...]:
        """Likely misconceptions."""
        return tuple(part.slip for part in self.parts if part.slip)


def mark_question(
    question: Question, answers: Mapping[str, str], *, sign: str, policy: Policy = USUAL
) -> QuestionMark:
    """Mark one question.

    Parameters
    ----------
    answers : mapping of str to str
        By label; other labels are ignored
    sign : str
        From :func:`boomsim.papers.numbers.number_reading.decimal_sign`
    """
    family = question.problem.family
    if question.is_choice or not isinstance(family, Family):
        parts: tuple[PartMark, ...] = (_choice(question, answers.get(str(question.number), "")),)
    else:
        parts = _Marking(question, family, answers, sign, policy).parts()
    return QuestionMark(number=question.number, family=family.id, title=family.title, parts=parts)


def _choice(question: Question, text: str) -> PartMark:
    """Mark a letter."""
    problem, most = question.problem, question.marks
    letter = text.strip().strip("().:").upper()
    offered = {one.letter: one for one in problem.choices}
    blank = PartMark(
        label=str(question.number), letter="", given=text.strip()[:40], status=BLANK,
        marks=0, most=most, answer=problem.right,
    )  # fmt: skip
    if not letter:
        return blank
    if letter not in offered:
        note = f"is none of {', '.join(offered)}"
        return replace(blank, status=REFUSED, note=note)
    right = offered[letter].right
    return replace(
        blank, status=RIGHT if right else WRONG, marks=most * right, slip=offered[letter].slip
    )


class _Marking:
    """The marking of one numeric question, step by step.

    `own` holds what the candidate has, step by step: the given value where there is one, else what
    follows from the candidate's earlier values.
    """

    def __init__(
        self,
        question: Question,
        family: Family,
        answers: Mapping[str, str],
        sign: str,
        policy: Policy,
    ) -> None:
        self.policy = policy
        self.paid: set[float] = set()  # factors of units that have cost a mark already
        self.family, self.question = family, question
        self.problem: Problem = question.problem
        self.asked: dict[str, Asked] = {one.step.name: one for one in question.asked}
        self.answers, self.sign = answers, sign
        self.truth = solve(family, self.problem.values)
        self.own = dict(self.problem.values)
        self.marks: dict[str, PartMark] = {}

    def parts(self) -> tuple[PartMark, ...]:
        """Mark all steps in order, then credit what blanks deserve."""
        for step in self.family.steps:
            self.marks[step.name] = self._step(step)
        return tuple(self.marks[step.name] for step in self.family.steps)

    def _step(self, step: Step) -> PartMark:
        """Mark one step."""
        asked = self.asked.get(step.name)
        text = self.answers.get(asked.label, "").strip() if asked else ""
        expected = evaluate(step.formula, self.own)
        mark = PartMark(
            label=asked.label if asked else "", letter=step.name, given=text[:40],
            status=BLANK, marks=0, most=step.marks, answer=self._answer(step, expected),
        )  # fmt: skip
        self.own[step.name] = expected
        if not text:
            return mark
        try:
            number = read_number(
                text, unit=step.unit(self.problem.system), sign=self.sign, letter=step.name
            )
        except AnswerError as error:
            return replace(mark, status=REFUSED, note=str(error))
        if number.value > 0:
            self.own[step.name] = number.value
        return self._value(step, mark, number, expected)

    def _answer(self, step: Step, expected: float) -> str:
        """Return the right value, and what the candidate's own earlier values would have led to."""
        truth = self.truth[step.name]
        text, own = self._printed(step, truth), self._printed(step, expected)
        differs = own and not close(truth, expected, tolerance=self._near(step, truth))
        return f"{text}; from your earlier value {own}" if differs else text

    def _printed(self, step: Step, value: float) -> str:
        """Return a value as the paper would print it; "" for none."""
        system = self.problem.system
        if not value > 0:
            return ""
        return result_of(step, value, system=system).text(system=system)

    def _near(self, step: Step, value: float) -> float:
        """Largest relative difference from a value that counts as right [1]."""
        return self.question.tolerance(step, value)

    def _value(self, step: Step, mark: PartMark, number: Number, expected: float) -> PartMark:
        """Mark a value that could be read."""
        truth = self.truth[step.name]
        note = _figures(step, number, self.problem.system)
        full = replace(mark, marks=step.marks, note=note)
        if close(number.value, truth, tolerance=self._near(step, truth)):
            self._credit(self._proved_by(step))
            return replace(full, status=RIGHT)
        if close(number.value, expected, tolerance=self._near(step, expected)):
            self._credit(self._proved_by(step))
            return replace(full, status=CARRIED if self._has_erred(step) else RIGHT)
        if self._is_rounded(step, number, (truth, expected)):
            return self._rounded(step, full)
        return self._slipped(step, mark, number.value)

    def _rounded(self, step: Step, full: PartMark) -> PartMark:
        """Take for a value that is rounded too far what the policy takes."""
        if self.policy.rounding == "all":
            return replace(full, status=ROUNDED, marks=0)
        self._credit(self._proved_by(step))
        less = int(self.policy.rounding == "one mark")
        return replace(full, status=ROUNDED, marks=max(step.marks - less, 0))

    def _is_rounded(self, step: Step, number: Number, targets: tuple[float, ...]) -> bool:
        """Whether a value is right as far as it goes; what reads like a slip is none."""
        hidden = any(_hides(number, target) for target in targets)
        if step.nearest[0]:
            own = [slip for slip in self.family.slips if slip.step == step.letter]
            return hidden and not any(
                self._fits(slip.formula, self.own, step, number.value) for slip in own
            )
        return hidden and number.figures < asked_figures(step)

    def _has_erred(self, step: Step) -> bool:
        """Whether any value this step rests on was wrong."""
        needed = needed_by(self.family, step.name)
        return any(self.marks[name].status in (WRONG, ROUNDED, CARRIED) for name in needed)

    def _slipped(self, step: Step, mark: PartMark, value: float) -> PartMark:
        """Find the slip that leads to a wrong value."""
        wrong = replace(mark, status=WRONG)
        for slip in self.family.slips:
            if slip.step == step.letter and self._fits(slip.formula, self.own, step, value):
                if self._keeps_method:
                    self._credit(frozenset() if step.whole else self._behind(slip))
                return replace(wrong, slip=slip.words)
        for slip in self.family.slips:
            if self._is_hidden(slip, step, value):
                if not self._keeps_method:
                    return replace(wrong, slip=slip.words)
                self._credit(needed_by(self.family, step.name) - {str(slip.step)})
                at = self.marks[str(slip.step)]
                self.marks[str(slip.step)] = replace(at, slip=slip.words)
                return replace(mark, status=CARRIED, marks=step.marks)
        return self._by_a_factor(step, wrong, value)

    @property
    def _keeps_method(self) -> bool:
        """Whether a slip leaves the marks of other steps: always where they are asked for."""
        return len(self.asked) > 1 or self.policy.method != "none"

    def _by_a_factor(self, step: Step, wrong: PartMark, value: float) -> PartMark:
        """Name a factor that is known by itself; that of a unit is paid for once."""
        truth = self.truth[step.name]
        factor, words = slip_by_factor(value, truth=truth, tolerance=self._near(step, truth))
        # A lost half or sign is an error of thought.
        of_a_unit = words in UNIT_SLIPS.values()
        if not of_a_unit or self.policy.factor == "all":
            return replace(wrong, slip=words)
        self._credit(self._proved_by(step))
        if factor in self.paid:
            return replace(wrong, status=CARRIED, marks=step.marks)
        self.paid.add(factor)
        return replace(wrong, marks=max(step.marks - 1, 0), slip=words)

    def _fits(self, formula: object, values: Mapping[str, float], step: Step, value: float) -> bool:
        """Whether a formula leads to this value."""
        wrong = evaluate(formula, values)
        return close(wrong, value, tolerance=self._near(step, wrong))

    def _is_hidden(self, slip: Slip, step: Step, value: float) -> bool:
        """Whether a slip in an earlier blank step explains this value."""
        name = str(slip.step)
        if name not in needed_by(self.family, step.name) or self.marks[name].status != BLANK:
            return False
        values = dict(self.problem.values)
        for earlier in self.family.steps:
            given = self.marks.get(earlier.name)
            if given is not None and given.status not in (BLANK, REFUSED):
                values[earlier.name] = self.own[earlier.name]
            else:
                formula = slip.formula if earlier.name == name else earlier.formula
                values[earlier.name] = evaluate(formula, values)
            if earlier.name == step.name:
                break
        wrong = values[step.name]
        return close(wrong, value, tolerance=self._near(step, wrong))

    def _behind(self, slip: Slip) -> frozenset[str]:
        """Return steps that a slip's formula rests on."""
        direct = {str(one) for one in slip.formula.free_symbols} & {
            s.name for s in self.family.steps
        }
        return frozenset(direct).union(*(needed_by(self.family, name) for name in direct))

    def _proved_by(self, step: Step) -> frozenset[str]:
        """Letters that a right value proves; a verdict proves nothing, for it can be guessed."""
        return frozenset() if step.whole else needed_by(self.family, step.name)

    def _credit(self, names: frozenset[str]) -> None:
        """Credit blank steps that a later value proves."""
        for name in names:
            mark = self.marks[name]
            if mark.status == BLANK and not mark.slip:
                self.marks[name] = replace(mark, status=CREDITED, marks=mark.most)


def _hides(number: Number, target: float) -> bool:
    """Whether a value is what a target rounds to, with one significant figure left at least.

    One figure is left if the last one counts no more than what rounds up to it: 0.95 makes 1.
    """
    one_figure = 2.0 * 0.95 * number.half_step <= target
    return one_figure and abs(number.value - target) <= number.half_step


def _figures(step: Step, number: Number, system: str) -> str:
    """Tell a candidate whose answer has too few figures."""
    if by := step.by(system):
        coarse = number.half_step > 0.5 * float(by) * float(step.unit(system).factor) * 1.01
        return f"give it {asked_of(step, system=system)}" if coarse else ""
    figures = asked_figures(step)
    return f"give {figures} significant figures" if number.figures < figures else ""
