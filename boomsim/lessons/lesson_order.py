"""All lessons, in order."""

from collections.abc import Iterable

from boomsim.lessons.lesson_01_what_a_section_is import SECTION
from boomsim.lessons.lesson_02_same_length import SAME_LENGTH
from boomsim.lessons.lesson_03_why_not_half import HALF
from boomsim.lessons.lesson_04_strong_close_in import STRONG
from boomsim.lessons.lesson_05_turns_over import TURNS_OVER
from boomsim.lessons.lesson_06_reading_a_chart import CHART
from boomsim.lessons.lesson_07_breaks_or_tips import BREAKS
from boomsim.lessons.lesson_08_gross_to_net import NET
from boomsim.lessons.lesson_09_what_eats_capacity import LOSSES
from boomsim.lessons.lesson_10_tabletop import BENCH
from boomsim.lessons.lesson_parts import Lesson
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


def lessons_named(numbers: Iterable[str] | None) -> tuple[Lesson, ...]:
    """Find several lessons, each once, in the order given; all where none is named."""
    return tuple(dict.fromkeys(map(lesson_named, numbers or ()))) or LESSONS
