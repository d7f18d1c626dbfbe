"""What a lesson is made of: its question, a guess, a self-check and a sheet for the table."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import wraps
from typing import TYPE_CHECKING, TypeVar

from boomsim.lessons.first_guess import Guess
from boomsim.lessons.self_check import Check
from boomsim.units import all_in_words

if TYPE_CHECKING:
    from matplotlib.figure import Figure


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


Part = TypeVar("Part")


def _worded(make: Callable[[str], Part]) -> Callable[[str], Part]:
    @wraps(make)
    def worded(units: str) -> Part:
        return all_in_words(make(units), units)

    return worded


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
        Units -> :class:`boomsim.lessons.self_check.Check`
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

    def __post_init__(self) -> None:
        """Say what the three tell in the words that go with the units they are asked for."""
        for name in ("guess", "check", "sheet"):
            object.__setattr__(self, name, _worded(getattr(self, name)))

    @property
    def file(self) -> str:
        """Name of its notebook, without the ending."""
        return f"{self.number}-{self.name}"
