"""The title page of a chart book."""

from collections.abc import Iterator

import numpy as np

from boomsim.caution import CAUTION
from boomsim.figures.charts.book.book_lines import HUGE, LARGE, text_lines
from boomsim.figures.charts.chart_sizes_and_tints import LINE, MARGIN, TINT, TITLE, Look
from boomsim.figures.charts.page_marks import POINT, Fill, Mark, Place, Stroke, Words, box
from boomsim.figures.charts.typeface import broken
from boomsim.figures.colours_and_lines import GLASS, INK, LOAD, QUIET
from boomsim.rating.charts.bold_line import bold_edges, paths
from boomsim.rating.charts.chart_book import Book
from boomsim.rating.charts.load_chart import Chart
from boomsim.units import show


def title_marks(book: Book, size: Place, look: Look) -> Iterator[Mark]:
    """Draw the title page, with the first chart of the book, figures left out, as its ornament.

    Parameters
    ----------
    size : (float, float)
        Width and height of the page [mm]
    """
    width, height = size
    left, top = MARGIN + 8.0, 0.26 * height
    lying = width > height
    room = (0.40 if lying else 0.9) * width
    yield Words(left, top, book.machine.name, HUGE, bold=True)
    note = f"Chart book – {look.note}" if look.note else "Chart book"
    yield Words(left, top + 9.0, note, LARGE, colour=LOAD if look.note else INK)
    told = broken(book.machine.title, width=room - left, size=TITLE)
    yield from text_lines(told, left, top + 14.0, TITLE, colour=QUIET)
    down = top + 22.0 + len(told) * LINE * TITLE * POINT
    yield from text_lines(_counts(book), left, down, TITLE)
    down += 6.0 + 4 * LINE * TITLE * POINT
    warned = broken(CAUTION, width=room - left - 8.0, size=TITLE, bold=True)
    high = len(warned) * LINE * TITLE * POINT
    yield Fill(points=box(left, down, 1.2, high), colour=LOAD)
    yield from text_lines(warned, left + 4.0, down, TITLE, bold=True)
    chart = book.chapters[0].best
    if lying:
        yield from _ornament(
            chart, left=0.46 * width, top=0.14 * height, width=0.48 * width, height=0.68 * height,
            bold_line=look.bold_line,
        )  # fmt: skip
    else:
        yield from _ornament(
            chart, left=left, top=0.62 * height, width=width - 2 * left, height=0.28 * height,
            bold_line=look.bold_line,
        )  # fmt: skip


def _counts(book: Book) -> list[str]:
    lengths = len(book.chapters[0].best.length)
    return [
        f"{len(book.chapters)} ways to set it up",
        f"{len(book.configurations.length)} ways to extend its boom, {lengths} boom lengths",
        f"{len(book.radii)} radii, {show(float(book.radii[0]), 'length', book.units)} to "
        f"{show(float(book.radii[-1]), 'length', book.units)}",
        f"{book.rated:,} rated cells",
    ]


def _ornament(
    chart: Chart, *, left: float, top: float, width: float, height: float, bold_line: bool
) -> Iterator[Mark]:
    rows, columns = chart.rated.shape
    w, h = width / columns, height / rows
    for r, c in np.argwhere(chart.rated):
        tint = TINT if bold_line and chart.structural[r, c] else GLASS
        place = box(left + c * w + 0.1, top + r * h + 0.1, w - 0.2, h - 0.2)
        yield Fill(points=place, colour=tint)
    for path in paths(bold_edges(chart)) if bold_line else ():
        yield Stroke(points=[(left + c * w, top + r * h) for r, c in path], width=2.2)
