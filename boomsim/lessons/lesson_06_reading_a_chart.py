"""Lesson 06: reading a chart and its bold line."""

from functools import lru_cache

import numpy as np

from boomsim.lessons.first_guess import Guess, Truth
from boomsim.lessons.lesson_01_what_a_section_is import MACHINE
from boomsim.lessons.lesson_parts import Lesson, Sheet
from boomsim.lessons.printed_figures import length_of
from boomsim.lessons.self_check import Check, told_apart
from boomsim.machine.machine_files import load_machine
from boomsim.rating.charts.chart_reading import Reading, read_chart
from boomsim.rating.charts.load_chart import Chart, stated_chart
from boomsim.rating.charts.misreadings import misreadings
from boomsim.rating.charts.reading_sentences import tell_reading
from boomsim.rating.limits.limit_sentences import sign, signs_in_words
from boomsim.rating.setup import set_up
from boomsim.rating.strategies import Configurations, configurations_of, label
from boomsim.units import FOOT, show, show_rated

RADIUS, LENGTH = 9.4, 19.5
"""What the guess asks for; neither is on the chart, but the boom can be so long [m]."""

ASKED_RADIUS, ASKED_LENGTH = 7.3, 23.1
"""What the self-check asks for; neither is on the chart, but the boom can be so long [m]."""

TOLERANCE = 0.004
"""Of the self-check: less than a step of the chart [1]."""

ROW = {"metric": 1.0, "us": 5 * float(FOOT)}
"""From row to row of the lesson's chart [m]."""


def few_ways() -> Configurations:
    """Pick a handful of boom lengths, run out from the head: the lightest section first.

    Returns
    -------
    Configurations
        One for each length
    """
    boom = load_machine(MACHINE).boom
    half, far = boom.lock_positions[1:3]
    steps = [[0, 0, 0, 0], [0, 0, 0, half], [0, 0, 0, far], [0, 0, half, far], [0, 0, far, far]]
    return configurations_of(boom, extension=np.array(steps, dtype=float))


@lru_cache(maxsize=8)
def lesson_chart(units: str, *, counterweight: str | None = None) -> Chart:
    """Rate the chart that lessons 06 and 08 read.

    Parameters
    ----------
    counterweight : str, optional
        Default: the usual one
    """
    from boomsim.machine.model import Rigging

    setup = set_up(load_machine(MACHINE), rigging=Rigging(counterweight=counterweight))
    return stated_chart(setup, configurations=few_ways(), units=units)


def gross_reading(units: str, *, radius: float, length: float) -> Reading:
    """Read the lesson's chart for the gross load, so without deductions.

    Parameters
    ----------
    radius, length : float
        [m]
    """
    return read_chart(lesson_chart(units), radius=radius, length=length, deductions=(), units=units)


def _chart_guess(units: str) -> Guess:
    reading = gross_reading(units, radius=RADIUS, length=LENGTH)
    return Guess(
        question=(
            f"The boom is {show(LENGTH, 'boom_length', units)} long and the load hangs at "
            f"{length_of(RADIUS, units)}. The chart has columns for "
            f"{_listed(reading.chart.length, units)} and a row for every "
            f"{length_of(ROW[units], units)} of radius. Which row counts, and which column?"
        ),
        parts=2,
        answers=lambda: _chart_truths(reading),
        units=units,
    )


NO_CELL = "took a place between two cells for a cell: there the chart promises nothing"


def _chart_truths(reading: Reading) -> tuple[Truth, Truth]:
    chart, beside = reading.chart, reading.beside
    assert beside is not None
    return (
        Truth(
            what="row",
            answer=reading.row_radius,
            quantity="length",
            slips={
                "took the nearest row, which is on the unsafe side":
                    float(chart.radii[reading.row - 1]),
                NO_CELL: RADIUS,
            },
        ),
        Truth(
            what="column",
            answer=reading.column_length,
            quantity="length",
            slips={
                "took the nearest column, which has the larger of the two figures":
                    float(chart.length[beside]),
                NO_CELL: LENGTH,
            },
        ),
    )  # fmt: skip


def _listed(lengths: np.ndarray, units: str) -> str:
    said = [show(float(length), "boom_length", units) for length in lengths]
    return f"{', '.join(said[:-1])} and {said[-1]}"


def _chart_check(units: str) -> Check:
    reading = gross_reading(units, radius=ASKED_RADIUS, length=ASKED_LENGTH)
    wrong = misreadings(reading)
    return Check(
        question=(
            "Read the chart for all around: a boom of "
            f"{show(ASKED_LENGTH, 'boom_length', units)}, a radius "
            f"of {length_of(ASKED_RADIUS, units)}. Which gross load does it allow?"
        ),
        answer=reading.gross,
        quantity="mass",
        slips=told_apart(
            {m.words: float(m.gross) for m in wrong}, answer=reading.gross, tolerance=TOLERANCE
        ),
        working=" ".join(tell_reading(reading, units=units)),
        tolerance=TOLERANCE,
        units=units,
    )


def _chart_sheet(units: str) -> Sheet:
    from boomsim.figures.handout.handout_drawings import figure_of_columns

    chart = lesson_chart(units)
    reading = gross_reading(units, radius=RADIUS, length=LENGTH)
    lines = range(max(reading.row - 6, 0), min(reading.row + 7, len(chart.radii)))
    ways = few_ways().extension
    names = tuple(
        f"{show(float(length), 'boom_length', units)}\n{label(way)} %"
        for length, way in zip(chart.length, ways, strict=True)
    )
    rows = []
    for row in lines:
        cells = [_cell(chart, row, k, units) for k in range(len(chart.length))]
        rows.append((length_of(float(chart.radii[row]), units), *cells))
    return Sheet(
        given=(
            "Part of a chart of the invented crane yard60: rated gross loads, all around, full "
            "outriggers. Above each boom its length and how far each moving section is out, base "
            f"side first. {signs_in_words()}"
        ),
        figure=lambda: figure_of_columns(chart.setup.machine, extension=ways, names=names),
        seen="The five booms of the chart's columns from the side, the shortest first.",
        head=("radius", *(show(float(length), "boom_length", units) for length in chart.length)),
        rows=tuple(rows),
        task=(
            "Draw the bold line: along every edge between a figure with a sign and one without. "
            "Mark the row and the column asked for."
        ),
        why="Why is there no reading between two rows or two columns?",
        because=(
            "A chart promises nothing between its cells: the configuration may change from one to "
            "the next. The next larger radius is on the safe side, and of the two figures beside "
            "the boom length the smaller one: that is not always the longer boom's."
        ),
    )


def _cell(chart: Chart, row: int, column: int, units: str) -> str:
    if chart.steps[row, column] < 0:
        return "-"
    figure = show_rated(float(chart.capacity[row, column]), units)
    return f"{figure}{sign(chart.limit(row, column))}"


CHART = Lesson(
    number="06",
    name="reading-the-chart",
    title="What does the chart say, and what is its bold line?",
    able=(
        "find the row and the column that count when neither is on the chart",
        "say what the bold line parts, and what lies on either side of it",
        "name the ways in which people misread a chart",
    ),
    machine=MACHINE,
    guess=_chart_guess,
    check=_chart_check,
    sheet=_chart_sheet,
)
