"""All lessons, in order."""

from boomsim.lab.lessons.breaks import BREAKS
from boomsim.lab.lessons.chart import CHART
from boomsim.lab.lessons.half import HALF
from boomsim.lab.lessons.losses import LOSSES
from boomsim.lab.lessons.net import NET
from boomsim.lab.lessons.parts import Lesson
from boomsim.lab.lessons.same_length import SAME_LENGTH
from boomsim.lab.lessons.section import SECTION
from boomsim.lab.lessons.strong import STRONG
from boomsim.lab.lessons.tabletop import BENCH
from boomsim.lab.lessons.turns_over import TURNS_OVER
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
