"""A chart book page by page."""

from collections.abc import Iterator
from dataclasses import replace

import numpy as np

from boomsim.figures.charts.book.book_contents import Entry
from boomsim.figures.charts.book.book_front import FRONT, front_sheets
from boomsim.figures.charts.chart_head import facts_of
from boomsim.figures.charts.chart_page import chart_sheets, columns_on_pages
from boomsim.figures.charts.chart_sizes_and_tints import FULL, Look
from boomsim.figures.charts.page_marks import Sheet
from boomsim.rating.charts.chart_book import Book, Chapter, Progress
from boomsim.rating.charts.load_chart import Chart, some_columns
from boomsim.rating.longest_boom import too_long
from boomsim.rating.setup import Setup


def book_sheets(
    book: Book,
    *,
    paper: str = "a4",
    look: Look = FULL,
    stated: bool = True,
    progress: Progress | None = None,
) -> Iterator[Sheet]:
    """Lay out a book, a page at a time.

    Parameters
    ----------
    paper : str
        "a4" or "letter"
    stated : bool
        False leaves out the charts of stated ways to extend
    progress : callable, optional
        Told how many chapters are done
    """
    counts = [_pages(chapter, paper=paper, stated=stated) for chapter in book.chapters]
    starts = [FRONT + sum(counts[:k]) for k in range(len(counts))]
    entries = [
        Entry(setup=chapter.setup, page=start)
        for chapter, start in zip(book.chapters, starts, strict=True)
    ]
    first = chart_sheets(
        _printed(book.chapters[0], stated=False)[0], units=book.units, paper=paper, look=look
    )[0]
    yield from front_sheets(book, size=(first.width, first.height), entries=entries, look=look)
    for done, (chapter, start) in enumerate(zip(book.chapters, starts, strict=True)):
        if progress:
            progress(done, len(counts))
        yield from _chapter(book, chapter, paper=paper, look=look, stated=stated, start=start)
    if progress:
        progress(len(counts), len(counts))


def _pages(chapter: Chapter, *, paper: str, stated: bool) -> int:
    return sum(len(columns_on_pages(c, paper=paper)) for c in _printed(chapter, stated=stated))


def _printed(chapter: Chapter, *, stated: bool) -> list[Chart]:
    """Charts of a chapter, without the booms that are too long for its tyres."""
    charts = [chapter.best, chapter.stated] if stated else [chapter.best]
    short = [np.flatnonzero(~too_long(chapter.setup, length=chart.length)) for chart in charts]
    return [some_columns(chart, own) for chart, own in zip(charts, short, strict=True)]


def _chapter(
    book: Book, chapter: Chapter, *, paper: str, look: Look, stated: bool, start: int
) -> Iterator[Sheet]:
    page = start
    for chart in _printed(chapter, stated=stated):
        sheets = chart_sheets(chart, units=book.units, paper=paper, look=look, first_page=page + 1)
        for sheet in sheets:
            title = chapter_name(chapter.setup) if page == start else sheet.title
            yield replace(sheet, title=title, level=1 if page == start else 2)
            page += 1


def chapter_name(setup: Setup) -> str:
    """Name a chapter by how the crane is set up."""
    facts = dict(facts_of(setup))
    return (
        f"{setup.rule.name}, {facts['standing on']}, counterweight {facts['counterweight']}, "
        f"{setup.sector}"
    )
