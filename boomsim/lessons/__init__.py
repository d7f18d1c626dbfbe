"""What a lesson's notebook imports: open the lesson, show tables and pictures, check yourself."""

from dataclasses import dataclass

from boomsim.caution import CAUTION
from boomsim.lessons.first_guess import NOTED, Guess
from boomsim.lessons.lesson_display import Panel, Table
from boomsim.lessons.lesson_display import percent as percent
from boomsim.lessons.lesson_display import picture as picture
from boomsim.lessons.lesson_display import table as table
from boomsim.lessons.lesson_display import tell as tell
from boomsim.lessons.lesson_order import LESSONS as LESSONS
from boomsim.lessons.lesson_order import lesson_named
from boomsim.lessons.lesson_parts import Lesson
from boomsim.lessons.lesson_sliders import Slides as Slides
from boomsim.lessons.printed_figures import length_of as length_of
from boomsim.lessons.self_check import Check as Check
from boomsim.lessons.self_check import Verdict as Verdict
from boomsim.units import SYSTEMS


@dataclass(frozen=True, slots=True, kw_only=True)
class Open:
    """A lesson that is open in a notebook.

    Attributes
    ----------
    lesson : Lesson
    units : str
        "metric" or "us"
    """

    lesson: Lesson
    units: str

    @property
    def question(self) -> Panel:
        """What is to be guessed before anything is run."""
        return Panel(words=(self._guess.question,), mark="guess")

    @property
    def _guess(self) -> Guess:
        return self.lesson.guess(self.units)

    def predict(self, *guesses: str) -> Panel:
        """Stop the notebook until something is guessed; the answer is not worked out before.

        Parameters
        ----------
        *guesses : str
            In the order asked
        """
        self._guess.want(*guesses)
        return Panel(words=(NOTED,), mark="guess")

    def compare(self, *guesses: str) -> Table:
        """Set what was guessed beside what the model says.

        Parameters
        ----------
        *guesses : str
            In the order asked
        """
        made = self._guess.against(*guesses)
        return Table(head=made.head, rows=made.rows, small=f"{made.small} {CAUTION}".strip())

    @property
    def check(self) -> Check:
        """The self-check at the end."""
        return self.lesson.check(self.units)

    def __repr__(self) -> str:
        return f"Lesson {self.lesson.number}. {CAUTION}"

    def _repr_html_(self) -> str:
        words = f"Lesson {self.lesson.number}, with the invented machine {self.lesson.machine}."
        return Panel(words=(words,), small=CAUTION)._repr_html_()


def lesson(number: str, *, units: str = "metric") -> Open:
    """Open a lesson.

    Parameters
    ----------
    number : str
        "02", or its name, such as "same-length"
    units : str
        "metric" or "us"

    Raises
    ------
    ValueError
        If there is no such lesson or system of units
    """
    if units not in SYSTEMS:
        raise ValueError(f'Units "{units}" are not known. Choose "metric" or "us".')
    return Open(lesson=lesson_named(number), units=units)
