"""How to read the charts of a book, with a worked example from its first chart."""

from collections.abc import Iterator

import numpy as np

from boomsim.figures.charts.book.book_lines import LARGE, text_lines
from boomsim.figures.charts.cell_text import numbers_of
from boomsim.figures.charts.chart_sizes_and_tints import BODY, LINE, MARGIN, TITLE
from boomsim.figures.charts.page_marks import POINT, Fill, Mark, Place, Words, box, rule
from boomsim.figures.charts.typeface import broken
from boomsim.figures.colours_and_lines import FAINT, QUIET, STEEL
from boomsim.rating.charts.chart_book import Book, Chapter
from boomsim.rating.charts.chart_reading import Reading, read_chart
from boomsim.rating.charts.misreadings import misreadings
from boomsim.rating.charts.reading_sentences import tell_reading
from boomsim.units import show

STEPS = (
    "Choose the chart for the sector, the counterweight, the supports and the rule that hold.",
    "Go down to the radius, measured with the load on. Between two rows take the next larger.",
    "Go across to the boom length. Between two columns take the smaller of the two figures. A "
    "chart of the best ways lists under the column from which radius on it uses which way.",
    "The figure is the gross load. Compare it with what the rope carries in the parts of line that "
    "are reeved.",
    "Subtract hook block, slings and whatever else hangs on the head: the net load is left.",
    "On the tinted side of the bold line strength or a maker's permissible value sets the figure, "
    "on the other side stability does. Neither figure may be passed.",
)
"""How the trade reads a chart (common practice, no source)."""


def reading_marks(book: Book, size: Place) -> Iterator[Mark]:
    """Draw the page that tells how the trade reads a chart, with a worked example.

    Parameters
    ----------
    size : (float, float)
        Width and height of the page [mm]
    """
    width, height = size
    lying = width > height
    half = (width - 2 * MARGIN - 10.0) / 2 if lying else width - 2 * MARGIN
    yield Words(MARGIN, MARGIN + 6.0, "How to read these charts", LARGE + 4.0, bold=True)
    down = MARGIN + 14.0
    for k, step in enumerate(STEPS):
        yield Words(MARGIN, down + 0.85 * LINE * TITLE * POINT, f"{k + 1}", TITLE, bold=True)
        lines = broken(step, width=half - 7.0, size=TITLE)
        yield from text_lines(lines, MARGIN + 7.0, down, TITLE)
        down += len(lines) * LINE * TITLE * POINT + 1.8
    reading = example(book.chapters[0])
    left, top = (MARGIN + half + 10.0, MARGIN + 14.0) if lying else (MARGIN, down + 6.0)
    yield from _example(book, reading, left=left, top=top, width=half)


def _example(
    book: Book, reading: Reading, *, left: float, top: float, width: float
) -> Iterator[Mark]:
    numbers = numbers_of(reading.chart, units=book.units)
    asked = (
        f"A radius of {show(reading.radius, 'length', book.units)} and a boom of "
        f"{show(reading.length, 'length', book.units)}, on the first chart of this book"
    )
    down = top
    for text, bold in ((asked, True), (" ".join(tell_reading(reading, units=book.units)), False)):
        lines = broken(text, width=width, size=TITLE, bold=bold)
        yield from text_lines(lines, left, down, TITLE, bold=bold)
        down += len(lines) * LINE * TITLE * POINT + 1.5
    down += 3.0
    yield Words(left, down + 3.0, "Read wrongly, it would be", BODY, colour=QUIET)
    right = left + width
    head = f"net load, {numbers.mass}"
    yield Words(right, down + 3.0, head, BODY, align="right", colour=QUIET)
    down += 4.4
    yield rule(left, down, width, width=0.5, colour=QUIET)
    unit = reading.chart.step / numbers.scale
    for wrong in misreadings(reading):
        lines = broken(f"if the reader {wrong.words}", width=width - 22.0, size=BODY)
        yield from text_lines(lines, left, down + 0.8, BODY)
        value = f"{wrong.net / unit:,.{numbers.decimals}f}"
        danger = wrong.net > reading.net
        base = down + 0.8 + 0.85 * LINE * BODY * POINT
        yield Words(right, base, value, BODY, align="right", bold=danger)
        down += len(lines) * LINE * BODY * POINT + 1.4
        yield rule(left, down, width, width=0.25, colour=FAINT)
    right_words = f"{reading.net / unit:,.{numbers.decimals}f}"
    base = down + 1.2 + 0.85 * LINE * BODY * POINT
    yield Fill(points=box(left, down, width, 5.2), colour=STEEL)
    yield Words(left + 1.0, base, "read rightly", BODY, bold=True)
    yield Words(right, base, right_words, BODY, align="right", bold=True)
    beyond = down + 8.0
    told = "In bold: figures that would allow more than the chart does."
    yield from text_lines([told], left, beyond, BODY, colour=QUIET)


def example(chapter: Chapter) -> Reading:
    """Choose a radius between two rows and a length between two columns to read.

    Returns
    -------
    Reading
        In the middle of the chart, near the bold line where there is one
    """
    chart = chapter.best
    column = len(chart.length) // 2
    rated = np.flatnonzero(chart.steps[:, column] > 0)
    structural = [int(r) for r in rated if chart.structural[r, column]]
    row = (structural or [int(rated[len(rated) // 3])])[-1]
    radius, length = float(chart.radii[row]), float(chart.length[column])
    if row > 0:
        radius -= 0.4 * float(chart.radii[row] - chart.radii[row - 1])
    if column > 0:
        length -= 0.4 * float(chart.length[column] - chart.length[column - 1])
    return read_chart(chart, radius=radius, length=length)
