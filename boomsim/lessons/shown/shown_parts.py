"""What a lesson shows is made of: named views, sliders over a picture, exercises."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from boomsim.lessons.first_guess import Guess
from boomsim.lessons.lesson_display import Panel, Picture, picture
from boomsim.lessons.lesson_sliders import Slides

if TYPE_CHECKING:
    from boomsim.face.study_result import Result


class Stack:
    """Several things shown one below the other."""

    def __init__(self, *parts: object) -> None:
        self.parts = parts

    def __repr__(self) -> str:
        return "\n".join(map(repr, self.parts))

    def _repr_html_(self) -> str:
        return "".join(part._repr_html_() for part in self.parts)  # type: ignore[attr-defined]


class Told:
    """What a study found, told in a system of units.

    Parameters
    ----------
    found : Result
    units : str
        "metric" or "us"
    """

    def __init__(self, found: "Result", units: str) -> None:
        self._text = str(found.text(units))

    def __repr__(self) -> str:
        return self._text

    def _repr_html_(self) -> str:
        from boomsim.reports.html_of_text import html_of

        return (
            '<details style="max-width:60em;margin:0.5em 0"><summary>The whole account</summary>'
            f"{html_of(self._text)}</details>"
        )


def drawn(found: "Result", units: str) -> Picture:
    """Draw what a study of the face found; its one-line summary is the text alternative.

    Parameters
    ----------
    found : Result
    units : str
        "metric" or "us"
    """
    words = repr(found).removeprefix("<boomsim ").removesuffix(">")
    return picture(found.plot(units), f"{words[0].upper()}{words[1:]}.")


@dataclass(frozen=True, slots=True, kw_only=True)
class Exercise:
    """A study of the face that is guessed about first.

    Attributes
    ----------
    guess : Guess
    call : str
        How the study is asked, as somebody types it
    study : callable
        Asks it
    units : str
        "metric" or "us"
    """

    guess: Guess
    call: str
    study: "Callable[[], Result]"
    units: str

    def answer(self, *guesses: str) -> Stack:
        """Set guesses beside what the model says, and tell the study.

        Parameters
        ----------
        *guesses : str
            In the order asked
        """
        asked = Panel(words=(self.guess.question,), mark="question")
        again = Panel(words=(f"Ask it yourself, with other values: {self.call}",))
        return Stack(asked, self.guess.against(*guesses), *self.told().parts, again)

    def told(self) -> Stack:
        """Draw the study and tell it, without a guess."""
        found = self.study()
        return Stack(drawn(found, self.units), Told(found, self.units))


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What one lesson shows.

    Attributes
    ----------
    views : Mapping of str to callable
        Units -> Table, Panel, Picture or Stack
    live : callable
        Units -> sliders over a picture
    exercises : Mapping of str to callable
        Units -> Exercise
    """

    views: Mapping[str, Callable[[str], object]]
    live: Callable[[str], Slides]
    exercises: Mapping[str, Callable[[str], Exercise]] = field(default_factory=dict)
