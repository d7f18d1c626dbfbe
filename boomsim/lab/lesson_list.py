"""All lessons, in order."""

from boomsim.lab.lesson_breaks import BREAKS
from boomsim.lab.lesson_chart import CHART
from boomsim.lab.lesson_half import HALF
from boomsim.lab.lesson_losses import LOSSES
from boomsim.lab.lesson_net import NET
from boomsim.lab.lesson_parts import Lesson
from boomsim.lab.lesson_same_length import SAME_LENGTH
from boomsim.lab.lesson_section import SECTION
from boomsim.lab.lesson_strong import STRONG
from boomsim.lab.lesson_tabletop import BENCH
from boomsim.lab.lesson_turns_over import TURNS_OVER
from boomsim.units import did_you_mean

LESSONS = (
    SECTION, SAME_LENGTH, HALF, STRONG, TURNS_OVER, CHART, BREAKS, NET, LOSSES, BENCH,
)  # fmt: skip
"""In the order in which they build on one another."""


def lesson_named(number: str) -> Lesson:
    """Find a lesson.

    Parameters
    ----------
    number : str
        "02" or "2", or the name, such as "same-length"

    Returns
    -------
    Lesson

    Raises
    ------
    ValueError
        If there is none; says which there are
    """
    wanted = str(number).strip().casefold()
    for lesson in LESSONS:
        if wanted in (lesson.number, lesson.number.lstrip("0"), lesson.name, lesson.file):
            return lesson
    listed = ", ".join(f"{one.number} {one.name}" for one in LESSONS)
    hint = did_you_mean(wanted, [one.name for one in LESSONS])
    raise ValueError(f"There is no lesson {str(number)[:40]!r}.{hint} Choose one of: {listed}.")
