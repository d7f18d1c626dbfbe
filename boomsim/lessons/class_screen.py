"""The class of 45 minutes: what its screen shows, and the instructor's script on another page."""

from collections.abc import Callable
from html import escape
from pathlib import Path

from boomsim.caution import CAUTION
from boomsim.files.whole_files import write_whole
from boomsim.lessons.class_plan import (
    SCENES,
    right_guesses,
    script,
    timetable,
    wrong_answers,
    wrong_guesses,
)
from boomsim.lessons.lesson_02_same_length import ways
from boomsim.lessons.lesson_07_breaks_or_tips import FAR, NEAR, past_rated
from boomsim.lessons.lesson_display import Panel, Picture, Table, picture
from boomsim.lessons.lesson_order import LESSONS, lesson_named
from boomsim.lessons.self_check import Check
from boomsim.lessons.shown.shown_parts import Stack
from boomsim.units import SYSTEMS, all_in_words, did_you_mean

SCRIPT = "script-for-the-instructor.html"
"""Name of the page with the script."""

FRAME = """<!doctype html>
<html lang="en"><meta charset="utf-8"><title>{title}</title>
<style>body{{font:16px/1.5 system-ui,sans-serif;max-width:60em;margin:2em auto;padding:0 1em}}
h2{{margin-top:1.6em}}</style>
<h1>{title}</h1>
{body}
<p><small>{caution}</small></p>
</html>
"""


class Screen:
    """What the class sees: pictures and questions, and no word of the script.

    Raises
    ------
    ValueError
        If there is no such system of units
    """

    def __init__(self, *, units: str = "metric") -> None:
        if units not in SYSTEMS:
            raise ValueError(f'Units "{units}" are not known. Choose "metric" or "us".')
        self.units = units

    @property
    def timetable(self) -> Table:
        """The scenes with their clock."""
        return timetable()

    def script(self, folder: str | Path = ".") -> Panel:
        """Write the instructor's script into a page of its own.

        Parameters
        ----------
        folder : str or Path
            Where the page is written
        """
        page = write_whole(Path(folder) / SCRIPT, script_page(self.units).encode())
        words = f"The script is in {page.name}. Open it on your own screen, not on the projector."
        return Panel(words=(words,))

    def show(self, *names: str) -> Stack:
        """Show pictures, questions and tables of the class.

        Parameters
        ----------
        *names : str
            Keys of `SHOWN`

        Raises
        ------
        ValueError
            If there is no such thing
        """
        made = []
        for name in names:
            if name not in SHOWN:
                hint = did_you_mean(str(name), list(SHOWN))
                raise ValueError(
                    f"The class has nothing called {str(name)[:40]!r}.{hint} It has: "
                    f"{', '.join(SHOWN)}."
                )
            one = SHOWN[name](self.units)
            told = isinstance(one, Table | Panel)
            made.append(all_in_words(one, self.units) if told else one)
        return Stack(*made)


def _question(units: str) -> Panel:
    return Panel(words=(lesson_named("02").guess(units).question,), mark="guess")


def _booms(units: str) -> Picture:
    from boomsim.figures.handout.handout_drawings import figure_of_ways

    setup, found = ways()
    out = found.configurations.extension
    figure = figure_of_ways(
        setup.machine, extension=out, radius=18.0, capacity=60_000.0, units=units
    )
    return picture(figure, "Three booms of one length, and empty axes.")


def _curves(units: str) -> Picture:
    from boomsim.figures.comparison.comparison_figure import figure_of_comparison

    figure = figure_of_comparison(ways()[1], units=units)
    return picture(figure, "Rated load over radius for three ways.")


def _right(units: str) -> Table:
    return right_guesses("02", units=units)


def _kilograms(units: str) -> Picture:
    from boomsim.lessons.shown.lesson_02_shown import in_kilograms

    return in_kilograms(units)


def _moments(units: str) -> Picture:
    from boomsim.lessons.shown.lesson_04_shown import moments

    return moments(units)


def _overload(radius: float, words: str) -> Callable[[str], Picture]:
    def drawn(units: str) -> Picture:
        from boomsim.figures.overload.overload_figure import figure_of_overload

        figure = figure_of_overload(past_rated(radius), units=units)
        return picture(figure, f"What happens {words} as the load grows.")

    return drawn


def _check(units: str) -> Check:
    return lesson_named("05").check(units)


SHOWN: dict[str, Callable[[str], object]] = {
    "the question": _question,
    "three booms": _booms,
    "the curves": _curves,
    "who was right": _right,
    "the difference in kilograms": _kilograms,
    "the moment of each section": _moments,
    "overload close in": _overload(NEAR, "close in"),
    "overload far out": _overload(FAR, "far out"),
    "the self-check": _check,
}
"""What the screen can show."""


def script_page(units: str = "metric") -> str:
    """Set the script: scene by scene, then the wrong guesses and answers to expect.

    Returns
    -------
    str
        HTML that needs no network
    """
    parts = [all_in_words(timetable(), units)._repr_html_()]
    for scene in SCENES:
        parts += [f"<h2>{escape(scene.name)}</h2>", _html(script(scene.name), units)]
    for one in LESSONS:
        parts += [
            f"<h2>{escape(f'{one.number} {one.title}')}</h2>",
            _html(wrong_guesses(one.number, units=units), units),
            _html(wrong_answers(one.number, units=units), units),
        ]
    title = "The instructor’s script"
    return FRAME.format(title=title, body="\n".join(parts), caution=escape(CAUTION))


def _html(shown: Table, units: str) -> str:
    told: Table = all_in_words(shown, units)
    return Table(head=told.head, rows=told.rows)._repr_html_()
