"""What is guessed before anything is run: the question, its answers, the thought behind a slip."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field

from boomsim.lessons.lesson_display import Table, percent, table
from boomsim.lessons.printed_figures import length_of
from boomsim.units import UnitError, parse, show

NOTHING = "Nothing written down: guess first, for it is the guess that makes the answer stick."
FIRST = "Write your guess between the quotes above, then run this cell again and go on from here."
NOTED = "Written down. Now run on and see."

NEAR, SAME = 0.05, 0.02
"""Shares by which a guessed figure may be off and still be very near, or a known slip [1]."""


class GuessFirst(Exception):
    """Stops a notebook, with one sentence and no traceback, where a guess is missing."""

    def _render_traceback_(self) -> list[str]:
        """Say to IPython all that it is to show."""
        return [str(self)]


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
    slips : Mapping of str to (str, tuple of str, or float)
        What somebody may have thought, after "you probably …", and what guesses it leads to [SI
        unit of the quantity]
    near : float
        Share by which a guessed figure may be off and still be very near [1]

    Raises
    ------
    ValueError
        If a slip leads to the answer
    """

    what: str
    answer: str | float
    quantity: str = ""
    slips: Mapping[str, str | tuple[str, ...] | float] = field(default_factory=dict)
    near: float = NEAR

    def __post_init__(self) -> None:
        """Refuse to blame somebody who is right."""
        for words, wrong in self.wrong_guesses():
            if self.is_near(wrong, self.answer, within=self.near):
                raise ValueError(
                    f'The slip "{words}" of "{self.what}" leads to {wrong}, which is right. Leave '
                    "it out or ask for another case."
                )

    def wrong_guesses(self) -> Iterator[tuple[str, str | float]]:
        """Pair each thought with one guess that it leads to.

        Yields
        ------
        str, and str or float
            [SI unit of the quantity]
        """
        for words, wrong in self.slips.items():
            for one in wrong if isinstance(wrong, tuple) else (wrong,):
                yield words, one

    @staticmethod
    def is_near(guess: str | float, other: str | float, *, within: float) -> bool:
        """Tell whether two words, or two figures, are the same.

        Parameters
        ----------
        within : float
            Share by which a figure may differ [1]
        """
        if isinstance(guess, str) or isinstance(other, str):
            return _plain(str(guess)) == _plain(str(other))
        return abs(guess - other) <= within * abs(other)

    def thought(self, guess: str | float) -> str:
        """Find what probably led to a wrong guess.

        Parameters
        ----------
        guess : str or float
            [SI unit of the quantity]

        Returns
        -------
        str
            After the verdict; empty where nothing is known
        """
        for words, wrong in self.wrong_guesses():
            if self.is_near(guess, wrong, within=min(SAME, self.near)):
                return f": you probably {words}"
        return ""


def _plain(word: str) -> str:
    """Take a guess as it is meant: "4." for "section 4", "Base" for "base section"."""
    return word.casefold().strip(" .").removeprefix("section ").removesuffix(" section")


@dataclass(frozen=True, slots=True, kw_only=True)
class Guess:
    """What the learner predicts before anything is run.

    Attributes
    ----------
    parts : int
        How many guesses it asks for
    answers : callable
        Works out what each part is held against: not before somebody has guessed
    """

    question: str
    parts: int
    answers: Callable[[], tuple[Truth, ...]]
    units: str = "metric"

    @property
    def truths(self) -> tuple[Truth, ...]:
        """What each part is held against."""
        return self.answers()

    def want(self, *guesses: str) -> None:
        """Stop where a guess is missing.

        Parameters
        ----------
        *guesses : str
            One for each part, in the order asked

        Raises
        ------
        GuessFirst
            If one is empty
        """
        self._count(guesses)
        if not all(str(guess).strip() for guess in guesses):
            raise GuessFirst(FIRST)

    def against(self, *guesses: str) -> Table:
        """Set guesses beside what the model says.

        Parameters
        ----------
        *guesses : str
            One for each part, in the order asked

        Raises
        ------
        ValueError
            If there are more or fewer guesses than parts
        """
        self._count(guesses)
        rows = [self._row(t, str(g).strip()) for t, g in zip(self.truths, guesses, strict=True)]
        made = table("asked | you wrote | the model says | so", *rows)
        return made if any(guesses) else Table(head=made.head, rows=made.rows, small=NOTHING)

    def _count(self, guesses: tuple[str, ...]) -> None:
        if len(guesses) != self.parts:
            raise ValueError(
                f"The question has {self.parts} parts and you gave {len(guesses)} guesses. "
                "Give one for each, in the order asked."
            )

    def _row(self, truth: Truth, guess: str) -> tuple[str, str, str, str]:
        said = said_of(truth, self.units)
        if not guess:
            return truth.what, "-", said, "-"
        return truth.what, guess, said, self._verdict(truth, guess)

    def _verdict(self, truth: Truth, guess: str) -> str:
        if isinstance(truth.answer, str):
            if truth.is_near(guess, truth.answer, within=truth.near):
                return "as you said"
            return f"not as you said{truth.thought(guess)}"
        try:
            value = parse(guess, truth.quantity)
        except UnitError as error:
            return str(error)
        if truth.is_near(value, truth.answer, within=truth.near):
            return "very near"
        apart = value / truth.answer - 1.0
        way = "much" if apart > 0 else "little"
        return f"{percent(abs(apart))} too {way}{truth.thought(value)}"


def said_of(truth: Truth, units: str) -> str:
    """Write what a guess is held against."""
    if isinstance(truth.answer, str):
        return truth.answer
    if truth.quantity == "length":
        return length_of(truth.answer, units)
    return show(truth.answer, truth.quantity, units)
