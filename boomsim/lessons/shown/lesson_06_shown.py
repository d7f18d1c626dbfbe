"""What lesson 06 shows: the chart, how it is read and misread, where its bold line goes."""

from boomsim.figures.charts.chart_page import chart_sheets
from boomsim.figures.charts.sheet_figure import figure_of_sheet
from boomsim.lessons.lesson_01_what_a_section_is import MACHINE
from boomsim.lessons.lesson_06_reading_a_chart import (
    LENGTH,
    RADIUS,
    gross_reading,
    lesson_chart,
)
from boomsim.lessons.lesson_display import Panel, Picture, Table, picture, table
from boomsim.lessons.lesson_sliders import Slides
from boomsim.lessons.printed_figures import length_of
from boomsim.lessons.shown.shown_parts import Shown
from boomsim.machine.machine_files import load_machine
from boomsim.rating.charts.bold_line import crossings
from boomsim.rating.charts.chart_reading import read_chart
from boomsim.rating.charts.misreadings import misreadings
from boomsim.rating.charts.reading_sentences import tell_reading
from boomsim.units import show

NOT_THERE = ((45.0, LENGTH), (RADIUS, 43.5), (24.0, LENGTH))
"""Radii and boom lengths that the chart has no figure for, each the machine can have [m]."""


def chart(units: str, *, counterweight: str | None = None) -> Picture:
    """Draw the chart.

    Parameters
    ----------
    units : str
    counterweight : str, optional
        Default: the usual one
    """
    made = lesson_chart(units, counterweight=counterweight)
    words = f"A load chart with its bold line, counterweight {made.setup.counterweight.name}."
    return picture(figure_of_sheet(chart_sheets(made, units=units)[0]), words)


def reading(units: str) -> Panel:
    """Say how the chart is read."""
    found = gross_reading(units, radius=RADIUS, length=LENGTH)
    return Panel(words=tuple(tell_reading(found, units=units)))


def misread(units: str) -> Table:
    """List the ways to get it wrong."""
    found = gross_reading(units, radius=RADIUS, length=LENGTH)
    rows = [(m.words, show(float(m.gross), "mass", units)) for m in misreadings(found)]
    return table("this misreading … | gives", *rows, capacity=True)


def bold_line(units: str) -> Table:
    """Count how often the bold line is crossed down each column."""
    made = lesson_chart(units)
    times = crossings(made)
    rows = [(show(float(x), "boom_length", units), times[k]) for k, x in enumerate(made.length)]
    return table("boom length | bold line crossed on the way down", *rows)


def not_there(units: str) -> Panel:
    """Ask for what is not on the chart."""
    said = []
    for radius, length in NOT_THERE:
        asked = f"{length_of(radius, units)} with {length_of(length, units)} of boom"
        try:
            found = read_chart(lesson_chart(units), radius=radius, length=length, units=units)
            told = tell_reading(found, units=units)[-1]
            said.append(f"{asked}: {told[0].lower()}{told[1:]}")
        except ValueError as refused:
            # In which order a command wants them has no place in a notebook.
            said.append(f"{str(refused).partition(';')[0].rstrip('.')}.")
    return Panel(words=tuple(said))


def live(units: str) -> Slides:
    """Put slabs of counterweight on and see where the bold line goes."""
    names = [one.name for one in load_machine(MACHINE).counterweights[::-1]]

    def view(slabs_of_counterweight: int) -> Picture:
        return chart(units, counterweight=names[slabs_of_counterweight])

    most = len(names) - 1
    return Slides(view, slabs_of_counterweight=(0, most, 1, most))


SHOWN = Shown(
    views={
        "the chart": chart,
        "how it is read": reading,
        "how it is misread": misread,
        "the bold line": bold_line,
        "what is not there": not_there,
    },
    live=live,
)
