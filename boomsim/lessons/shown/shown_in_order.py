"""What each lesson shows, by its number."""

from functools import cache

from boomsim.lessons.shown.shown_parts import Shown


@cache
def shown_of(number: str) -> Shown:
    """Find what a lesson shows; imported when first asked for, since pictures take long to import.

    Parameters
    ----------
    number : str
        "01" and so on
    """
    from boomsim.lessons.shown.lesson_01_shown import SHOWN as SECTION
    from boomsim.lessons.shown.lesson_02_shown import SHOWN as SAME_LENGTH
    from boomsim.lessons.shown.lesson_03_shown import SHOWN as HALF
    from boomsim.lessons.shown.lesson_04_shown import SHOWN as STRONG
    from boomsim.lessons.shown.lesson_05_shown import SHOWN as TURNS_OVER
    from boomsim.lessons.shown.lesson_06_shown import SHOWN as CHART
    from boomsim.lessons.shown.lesson_07_shown import SHOWN as BREAKS
    from boomsim.lessons.shown.lesson_08_shown import SHOWN as NET
    from boomsim.lessons.shown.lesson_09_shown import SHOWN as LOSSES
    from boomsim.lessons.shown.lesson_10_shown import SHOWN as BENCH

    every = SECTION, SAME_LENGTH, HALF, STRONG, TURNS_OVER, CHART, BREAKS, NET, LOSSES, BENCH
    return dict(zip((f"{k:02d}" for k in range(1, 11)), every, strict=True))[number]
