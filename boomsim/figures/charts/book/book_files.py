"""All files of a chart book: written beside their places, then put there together."""

import json
import re
from collections.abc import Callable
from pathlib import Path

from boomsim.figures.charts.book.book_html import book_html
from boomsim.figures.charts.book.book_pages import book_sheets
from boomsim.figures.charts.chart_sizes_and_tints import ANSWERS, CLASS, FULL, Look
from boomsim.figures.charts.pdf_writer import write_pdf
from boomsim.files.folder_lock import only_writer
from boomsim.files.whole_files import room_in
from boomsim.rating.charts.chart_book import Book
from boomsim.rating.charts.chart_tables import plain_book, write_csv

Told = Callable[[str, int, int], None]
"""Told what is being written, and how many of how many parts are done."""


def write_book(
    book: Book,
    folder: Path,
    *,
    paper: str = "a4",
    class_version: bool = False,
    progress: Told | None = None,
) -> list[Path]:
    """Write a book as PDF, HTML, CSV and JSON.

    Parameters
    ----------
    folder : Path
        Made if there is none
    paper : str
        "a4" or "letter"
    class_version : bool
        Also a PDF without bold line and shading, and its answer sheet
    progress : callable, optional

    Returns
    -------
    list of Path
        What was written; an interrupted run leaves nothing
    """
    name = f"{_stem(book.machine.name)}-charts"
    told = progress or (lambda *_: None)
    with only_writer(folder), room_in(folder) as part:
        _pdf(book, part / f"{name}.pdf", paper=paper, look=FULL, told=told)
        if class_version:
            _pdf(book, part / f"{name}-class.pdf", paper=paper, look=CLASS, told=told)
            _pdf(book, part / f"{name}-answers.pdf", paper=paper, look=ANSWERS, told=told)
        _tables(book, part / name, told=told)
        return [file.replace(folder / file.name) for file in sorted(part.iterdir())]


def _stem(name: str) -> str:
    """Make a machine's name one of a file: "../mine 1/2" stays in its folder."""
    return re.sub(r"[^\w ,'()+-]", "-", name).strip() or "machine"


def _pdf(book: Book, path: Path, *, paper: str, look: Look, told: Told) -> None:
    sheets = book_sheets(
        book,
        paper=paper,
        look=look,
        stated=look is FULL,
        progress=lambda done, of: told(path.name, done, of),
    )
    with path.open("wb") as file:
        write_pdf(sheets, file, title=f"Chart book of {book.machine.name}")


def _tables(book: Book, path: Path, *, told: Told) -> None:
    told(f"{path.name}.html", 0, 1)
    path.with_name(f"{path.name}.html").write_text(book_html(book), encoding="utf-8")
    told(f"{path.name}.csv", 0, 1)
    with path.with_name(f"{path.name}.csv").open("w", encoding="utf-8", newline="") as file:
        write_csv((c.stated for c in book.chapters), file, units=book.units)
    told(f"{path.name}.json", 0, 1)
    with path.with_name(f"{path.name}.json").open("w", encoding="utf-8") as file:
        json.dump(plain_book(book), file, separators=(",", ":"), allow_nan=False)
