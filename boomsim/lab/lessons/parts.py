"""What a lesson is made of: its question, a guess, a self-check and a sheet for the table."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from boomsim.lab.lessons.check import Check
from boomsim.lab.lessons.show import Table, percent, table
from boomsim.units import UnitError, display, parse, show

if TYPE_CHECKING:
    from matplotlib.figure import Figure

NOTHING = "Nothing written down: guess first, for it is the guess that makes the answer stick."


@dataclass(frozen=True, slots=True, kw_only=True)
class Truth:
    """What one part of a guess is held against.

    Attributes
    ----------
    what : str
        Which part, such as "at 6 m"
    answer : str or float
        A word or letter, or a figure [SI unit of the quantity]
    quantity : str
        A key of `boomsim.units.QUANTITIES`; empty for words
    """

    what: str
    answer: str | float
    quantity: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Guess:
    """What the learner predicts before anything is run.

    Attributes
    ----------
    question : str
    truths : tuple of Truth
    units : str
        "metric" or "us"
    """

    question: str
    truths: tuple[Truth, ...]
    units: str = "metric"

    def against(self, *guesses: str) -> Table:
        """Set guesses beside what the model says.

        Parameters
        ----------
        *guesses : str
            One for each part, in the order asked

        Returns
        -------
        Table

        Raises
        ------
        ValueError
            If there are more or fewer guesses than parts
        """
        if len(guesses) != len(self.truths):
            raise ValueError(
                f"The question has {len(self.truths)} parts and you gave {len(guesses)} guesses. "
                "Give one for each, in the order asked."
            )
        rows = [self._row(t, str(g).strip()) for t, g in zip(self.truths, guesses, strict=True)]
        made = table("asked | you wrote | the model says | so", *rows)
        return made if any(guesses) else Table(head=made.head, rows=made.rows, small=NOTHING)

    def _row(self, truth: Truth, guess: str) -> tuple[str, str, str, str]:
        said = said_of(truth, self.units)
        if not guess:
            return truth.what, "-", said, "-"
        return truth.what, guess, said, self._verdict(truth, guess)

    def _verdict(self, truth: Truth, guess: str) -> str:
        if isinstance(truth.answer, str):
            same = guess.casefold().strip(" .") == truth.answer.casefold()
            return "as you said" if same else "not as you said"
        try:
            value = parse(guess, truth.quantity)
        except UnitError as error:
            return str(error)
        apart = value / truth.answer - 1.0
        if abs(apart) < 0.05:
            return "very near"
        return f"{percent(abs(apart))} too {'much' if apart > 0 else 'little'}"


def length_of(value: float, units: str) -> str:
    """Write a length to the centimetre however long it is, so that it can be reckoned with.

    Parameters
    ----------
    value : float
        [m]
    units : str

    Returns
    -------
    str
    """
    return display("length", units, like=0.0).text(value)


def as_said(value: float, quantity: str, units: str) -> float:
    """Round a figure as it is printed, so that reckoning with what is printed comes out even.

    Parameters
    ----------
    value : float
        [SI unit of the quantity]
    quantity : str
        A key of `boomsim.units.QUANTITIES`
    units : str

    Returns
    -------
    float
        [SI unit of the quantity]
    """
    return parse(show(value, quantity, units).replace(",", ""), quantity)


def said_of(truth: Truth, units: str) -> str:
    """Write what a guess is held against.

    Parameters
    ----------
    truth : Truth
    units : str

    Returns
    -------
    str
    """
    if isinstance(truth.answer, str):
        return truth.answer
    if truth.quantity == "length":
        return length_of(truth.answer, units)
    return show(truth.answer, truth.quantity, units)


@dataclass(frozen=True, slots=True, kw_only=True)
class Blank:
    """A field of a sheet's table that the learner fills in; `text` is for the instructor."""

    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """What a handout shows besides question, guess and self-check.

    Attributes
    ----------
    given : str
        What the learner must know
    figure : callable
        Makes the figure, without a title
    seen : str
        Text alternative of the figure
    head : tuple of str
    rows : tuple of tuple of (str or Blank)
        Table to fill in
    task : str
        What to do with figure and table
    why : str
        To be answered in a sentence
    because : str
        That sentence, for the instructor
    """

    given: str
    figure: "Callable[[], Figure]"
    seen: str
    head: tuple[str, ...]
    rows: tuple[tuple[str | Blank, ...], ...]
    task: str
    why: str
    because: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Lesson:
    """One lesson: one question.

    Attributes
    ----------
    number : str
        "01" and so on: its place in the order
    name : str
        Stable key, and the name of its notebook
    title : str
        The question
    able : tuple of str
        After "You will be able to"
    machine : str
        Built-in machine that it is about
    guess : callable of str
        Units -> :class:`Guess`
    check : callable of str
        Units -> :class:`boomsim.lab.lessons.check.Check`
    sheet : callable of str
        Units -> :class:`Sheet`
    """

    number: str
    name: str
    title: str
    able: tuple[str, str, str]
    machine: str
    guess: Callable[[str], Guess]
    check: Callable[[str], Check]
    sheet: Callable[[str], Sheet]

    @property
    def file(self) -> str:
        """Name of its notebook, without the ending."""
        return f"{self.number}-{self.name}"
