"""The first pages of a chart book: title, contents, and how to read it."""

from collections.abc import Iterator, Sequence

from boomsim.figures.charts.book.book_contents import Entry, contents_marks
from boomsim.figures.charts.book.book_how_to_read import reading_marks
from boomsim.figures.charts.book.book_lines import foot_marks
from boomsim.figures.charts.book.book_title import title_marks
from boomsim.figures.charts.chart_sizes_and_tints import Look
from boomsim.figures.charts.page_marks import Place, Sheet
from boomsim.rating.charts.chart_book import Book

FRONT = 3
"""Pages before the first chart [1]."""


def front_sheets(
    book: Book, *, size: Place, entries: Sequence[Entry], look: Look
) -> Iterator[Sheet]:
    """Lay out the first pages.

    Parameters
    ----------
    size : (float, float)
        Width and height of the pages [mm]
    """
    name = book.machine.name
    pages = (
        (f"Chart book of {name}", title_marks(book, size, look)),
        ("Contents", contents_marks(size, entries)),
        ("How to read these charts", reading_marks(book, size)),
    )
    for title, marks in pages:
        drawn = (*marks, *foot_marks(size))
        yield Sheet(width=size[0], height=size[1], marks=drawn, title=title, level=1)
