"""A lesson that is open in a notebook: it asks first, and shows nothing before there is a guess."""

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.lessons.first_guess import FIRST, NOTED, Guess, GuessFirst
from boomsim.lessons.lesson_display import Panel, Picture, Table
from boomsim.lessons.lesson_order import lesson_named
from boomsim.lessons.lesson_parts import Lesson
from boomsim.lessons.lesson_sliders import Slides
from boomsim.lessons.self_check import Check
from boomsim.lessons.shown.shown_parts import Exercise, Shown, Stack, drawn
from boomsim.units import SYSTEMS, all_in_words, did_you_mean

if TYPE_CHECKING:
    from boomsim.face.study_result import Result


class Open:
    """A lesson that is open in a notebook."""

    def __init__(self, *, lesson: Lesson, units: str) -> None:
        self.lesson, self.units = lesson, units
        self._made: tuple[str, ...] = ()
        self._kept: dict[str, Any] = {}

    @property
    def question(self) -> Panel:
        """What is to be guessed before anything is run."""
        words = f"Lesson {self.lesson.number}, with the invented machine {self.lesson.machine}."
        return Panel(words=(self._guess.question,), mark="guess", small=f"{words} {CAUTION}")

    @property
    def _guess(self) -> Guess:
        return self.lesson.guess(self.units)

    def predict(self, *guesses: str, **named: str) -> Panel:
        """Stop the notebook until something is guessed; the answer is not worked out before.

        Parameters
        ----------
        *guesses, **named : str
            In the order asked; a name says only what is asked
        """
        made = (*guesses, *named.values())
        self._guess.want(*made)
        self._made = made
        return Panel(words=(NOTED,), mark="guess")

    def compare(self, *guesses: str) -> Table:
        """Set what was guessed beside what the model says.

        Parameters
        ----------
        *guesses : str
            In the order asked; default: those of :meth:`predict`
        """
        if not guesses:
            self._want()
        made = self._guess.against(*(guesses or self._made))
        return Table(head=made.head, rows=made.rows, small=f"{made.small} {CAUTION}".strip())

    def show(self, *names: str, **given: Any) -> Stack:
        """Show tables, pictures and sentences of this lesson.

        Parameters
        ----------
        *names : str
            Of its views
        **given : object
            For a view that asks for something, such as readings

        Raises
        ------
        GuessFirst
            If nothing has been guessed
        ValueError
            If there is no such view
        """
        self._want()
        made: list[object] = []
        for name in names:
            shown = _found(self._shown.views, name, what="view")(self.units, **given)
            made.extend(shown.parts if isinstance(shown, Stack) else (shown,))
        return Stack(*(_worded(one, self.units) for one in made))

    def draw(self, found: "Result") -> Picture:
        """Draw what a study of ``import boomsim as bs`` found.

        Parameters
        ----------
        found : Result
            Such as ``bs.compare("yard60")``
        """
        self._want()
        return drawn(found, self.units)

    @property
    def live(self) -> Slides:
        """Sliders over a picture; the same ones as long as the lesson is open."""
        self._want()
        if "live" not in self._kept:
            self._kept["live"] = self._shown.live(self.units)
        made: Slides = self._kept["live"]
        return made

    def exercise(self, name: str, *guesses: str, **named: str) -> Panel | Stack:
        """Ask something more; the answer comes with a guess only.

        Parameters
        ----------
        name : str
            Of an exercise of this lesson
        *guesses, **named : str
            In the order asked; all empty: the question
        """
        self._want()
        asked: Exercise = _found(self._shown.exercises, name, what="exercise")(self.units)
        made = (*guesses, *named.values())
        if not all(str(guess).strip() for guess in made or ("",)):
            return Panel(words=(asked.guess.question,), mark="guess", small=FIRST)
        return asked.answer(*made)

    @property
    def check(self) -> Check:
        """The self-check at the end."""
        if "check" not in self._kept:
            self._kept["check"] = self.lesson.check(self.units)
        made: Check = self._kept["check"]
        return made

    @property
    def _shown(self) -> Shown:
        from boomsim.lessons.shown.shown_in_order import shown_of

        return shown_of(self.lesson.number)

    def _want(self) -> None:
        if not self._made:
            raise GuessFirst(FIRST)

    def __repr__(self) -> str:
        return f"Lesson {self.lesson.number}. {self._guess.question} {CAUTION}"

    def _repr_html_(self) -> str:
        return self.question._repr_html_()


def _worded(shown: Any, units: str) -> Any:
    return all_in_words(shown, units) if isinstance(shown, Table | Panel) else shown


def _found(among: Mapping[str, Any], name: str, *, what: str) -> Any:
    if name in among:
        return among[name]
    hint = did_you_mean(str(name), list(among))
    listed = ", ".join(among) or "none"
    raise ValueError(f"This lesson has no {what} {str(name)[:40]!r}.{hint} It has: {listed}.")


def lesson(number: str, *, units: str = "metric") -> Open:
    """Open a lesson.

    Parameters
    ----------
    number : str
        "02", or its name, such as "same-length"

    Raises
    ------
    ValueError
        If there is no such lesson or system of units
    """
    if units not in SYSTEMS:
        raise ValueError(f'Units "{units}" are not known. Choose "metric" or "us".')
    return Open(lesson=lesson_named(number), units=units)
