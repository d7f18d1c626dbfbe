"""Practice in the notebook: an endless supply of problems, hints step by step, feedback at once.

>>> from boomsim.lessons.practice import Practice
>>> lesson = Practice("pad forces", seed=1)
>>> lesson.hint()
'Multiply the force by its distance from the mouth.'

As the last line of a notebook cell, ``Practice("pad forces")`` shows itself with fields to type in.
"""

import os
from typing import Any

from boomsim.lessons.practice_feedback import Feedback, feedback_on
from boomsim.papers.family_registry import find_families
from boomsim.papers.language.formula_markup import PLAIN
from boomsim.papers.language.formula_printing import in_letters, in_numbers, letter
from boomsim.papers.language.question_words import in_plain
from boomsim.papers.marking.mark_question import mark_question
from boomsim.papers.numbers.dice import Chance
from boomsim.papers.numbers.number_reading import decimal_sign
from boomsim.papers.numbers.printed_units import METRIC
from boomsim.papers.paper import Question
from boomsim.papers.problems.family import Step
from boomsim.papers.problems.problem import CHOICE, NUMERIC
from boomsim.papers.problems.problem_making import make_problem


class Practice:
    """Problems of one topic, one after the other.

    Parameters
    ----------
    topic : str
        A topic, a family's id, or words of its title: "statics", "pad forces"
    form : str
        "numeric" or "choice"
    seed : str, int or None
        The same seed gives the same problems; None gives new ones every time
    locale : str or None
        In which numbers are typed, such as "de"
    """

    def __init__(
        self,
        topic: str,
        *,
        units: str = METRIC,
        form: str = NUMERIC,
        seed: str | int | None = None,
        locale: str | None = None,
    ) -> None:
        self.families = find_families(topic)
        self.units, self.form = units, form
        self._sign = decimal_sign(locale, system=units)
        self._seed = str(seed) if seed is not None else os.urandom(8).hex()
        self._count = 0
        self.question = self._next()

    def next(self) -> Question:
        """Go to the next problem."""
        self.question = self._next()
        return self.question

    @property
    def text(self) -> str:
        """The problem in plain words."""
        problem = self.question.problem
        parts = problem.pieces(f"{problem.family.text} {problem.family.assume}")
        choices = [f"{one.letter}  {in_plain(one.text)}" for one in problem.choices]
        return "\n".join([in_plain(parts), *choices])

    def answer(self, text: str = "", **parts: str) -> Feedback:
        """Judge an answer.

        Parameters
        ----------
        text : str
            The final answer, "15.6 kN", or the letter of a choice
        **parts : str
            Intermediate steps by letter or part: ``answer("15.6 kN", a="17.5 kN m")``
        """
        labels = self.question.labels
        answers = {labels[-1]: text} if text else {}
        for name, value in parts.items():
            answers[f"{self.question.number}{name.strip('()').lower()}"] = value
        marked = mark_question(self.question, answers, sign=self._sign).parts
        names = {step.name: step.words for step in self.question.steps}
        return feedback_on([part for part in marked if part.given], names, end=labels[-1])

    def hint(self) -> str:
        """Say what the next step does; then, with each call, show its formula and its numbers."""
        hints = self.hints
        shown = hints[min(self._hinted, len(hints) - 1)]
        self._hinted += 1
        return shown

    @property
    def hints(self) -> tuple[str, ...]:
        """All hints of this problem, from the faintest to the whole solution."""
        problem = self.question.problem
        if not self.question.steps:
            return (str(problem.family.assume), in_plain(problem.pieces(problem.because)))
        return tuple(hint for step in self.question.steps for hint in self._leads(step))

    def _leads(self, step: Step) -> tuple[str, ...]:
        """What to do, the formula, and the formula with its numbers."""
        problem, name = self.question.problem, letter(step.name, PLAIN)
        formula = f"{name} = {in_letters(step.formula, problem.letters, PLAIN)}"
        if step.is_reading:
            return (step.does, f"{name} = {problem.shown(step.name)}")
        numbers = in_numbers(step.formula, problem.letters, PLAIN, shown=problem.shown)
        return (step.does, formula, f"{name} = {numbers} = {problem.shown(step.name)}")

    def _next(self) -> Question:
        """Draw a problem."""
        self._count += 1
        self._hinted = 0
        dice = Chance(self._seed, self._count)
        family = dice.pick(self.families)
        problem = make_problem(
            family, seed=f"{self._seed}/{self._count}", system=self.units, form=self.form
        )
        return Question(number=1, problem=problem, guided=True)

    @property
    def is_choice(self) -> bool:
        """Whether the problem at hand is answered by a letter."""
        return self.question.problem.form == CHOICE

    def _ipython_display_(self) -> None:
        """Show fields and buttons in a notebook; plain text where there are no widgets."""
        try:
            from boomsim.lessons.practice_widget import show
        except ImportError:
            print(self.text)
            return
        show(self)

    def __repr__(self) -> str:
        """Write the problem itself."""
        return self.text

    def widget(self) -> Any:
        """Build the fields and buttons without showing them."""
        from boomsim.lessons.practice_widget import build

        return build(self)
