"""A lesson's guesses and self-check as questions with a few answers to choose among.

The right answer stands among those that known slips lead to, so that each choice tells a thought.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from boomsim.lessons.first_guess import Truth, said_of
from boomsim.lessons.lesson_parts import Blank, Lesson

LETTERS = "ABCDEF"
"""So many answers a class can take in; the slips that a lesson names first go before the others."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """One answer to choose.

    Attributes
    ----------
    thought : str
        What probably led to it, after "you probably …"; empty where it is right
    """

    letter: str
    words: str
    right: bool
    thought: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoiceQuestion:
    """One question with its answers.

    Attributes
    ----------
    key : str
        Such as "02-guess-1" or "02-check"
    lesson : str
        Number of the lesson
    title : str
        The lesson's question
    asked : str
        Which part of the words is asked for; empty for all
    options : tuple of Option
        In an order that says nothing: words by the alphabet, figures by size
    reason : str
        Why the right one is right
    given : str
        What the table shows
    rows : tuple of tuple of str
        The table of the lesson's sheet, without what is to be filled in; none beside a guess, which
        it might answer
    """

    key: str
    lesson: str
    title: str
    words: str
    asked: str
    options: tuple[Option, ...]
    reason: str
    given: str = ""
    head: tuple[str, ...] = ()
    rows: tuple[tuple[str, ...], ...] = ()

    @property
    def right(self) -> Option:
        """The answer of the model."""
        return next(one for one in self.options if one.right)


def choice_questions(lesson: Lesson, units: str) -> tuple[ChoiceQuestion, ...]:
    """Make a lesson's questions; works their answers out.

    Returns
    -------
    tuple of ChoiceQuestion
        One for each part of the guess, then the self-check
    """
    return (*_guesses(lesson, units), _check(lesson, units))


def _guesses(lesson: Lesson, units: str) -> Iterator[ChoiceQuestion]:
    guess, sheet = lesson.guess(units), lesson.sheet(units)
    for number, truth in enumerate(guess.truths, start=1):
        yield ChoiceQuestion(
            key=f"{lesson.number}-guess-{number}",
            lesson=lesson.number,
            title=lesson.title,
            words=guess.question,
            asked=truth.what,
            options=_options(_of_truth(truth, units)),
            reason=f"{sheet.why} {sheet.because}",
        )


def _check(lesson: Lesson, units: str) -> ChoiceQuestion:
    check, sheet = lesson.check(units), lesson.sheet(units)
    found = [(check.answer, check.exact, "")]
    found += [(value, check.said(value), words) for words, value in check.slips.items()]
    return ChoiceQuestion(
        key=f"{lesson.number}-check",
        lesson=lesson.number,
        title=lesson.title,
        words=check.question,
        asked="",
        options=_options(found),
        reason=f"{check.working} The answer is {check.exact}.",
        given=sheet.given,
        head=sheet.head,
        rows=tuple(tuple("" if isinstance(c, Blank) else c for c in row) for row in sheet.rows),
    )


Found = tuple[str | float, str, str]
"""What an answer is ordered by, its words, and the thought behind it."""


def _of_truth(truth: Truth, units: str) -> list[Found]:
    found: list[Found] = [(truth.answer, said_of(truth, units), "")]
    for thought, wrong in truth.wrong_guesses():
        found.append((wrong, said_of(replace(truth, answer=wrong, slips={}), units), thought))
    return found


def _options(found: Sequence[Found]) -> tuple[Option, ...]:
    """The right one, which comes first, and the first slips that read differently."""
    kept: dict[str, Found] = {}
    for one in found:
        if one[1] not in kept and len(kept) < len(LETTERS):
            kept[one[1]] = one
    right = found[0][1]
    ordered = sorted(kept.values(), key=lambda one: (isinstance(one[0], str), one[0]))
    # Ways that are called A, B and C already are voted for by their own letters.
    named = all(one[1] in LETTERS for one in ordered)
    return tuple(
        Option(
            letter=words if named else LETTERS[k],
            words="" if named else words,
            right=words == right,
            thought=thought,
        )
        for k, (_, words, thought) in enumerate(ordered)
    )
