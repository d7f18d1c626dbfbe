"""Small tables that an examiner types: judgements, rosters, marks; every fault is named."""

import csv
import io
from collections import Counter
from dataclasses import dataclass
from pathlib import Path

from boomsim.files.file_errors import FileError
from boomsim.files.text_reading import read_bytes, text_of
from boomsim.papers.marking.answer_sheets import short
from boomsim.papers.paper_errors import PaperError

LARGEST_FILE = 20_000_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Typed:
    """A table with a heading.

    Attributes
    ----------
    name : str
        Of the file
    head : tuple of str
        As typed, without spaces around
    rows : tuple of (int, dict of str to str)
        Line of the file, and the cells by heading; lines without a word are left out
    """

    name: str
    head: tuple[str, ...]
    rows: tuple[tuple[int, dict[str, str]], ...]


def read_table(path: str | Path, *, needed: tuple[str, ...], what: str) -> Typed:
    """Read a table whose cells are parted by commas, semicolons or tabs.

    Parameters
    ----------
    needed : tuple of str
        Headings that must be there, in small letters
    what : str
        "a roster", for the error message

    Raises
    ------
    PaperError
        If it is no such table
    """
    source = Path(path)
    try:
        text = text_of(read_bytes(source, most=LARGEST_FILE), name=source.name)
    except FileError as error:
        raise PaperError(str(error)) from None
    for mark in (",", ";", "\t"):
        lines = _lines(text.removeprefix("\ufeff"), mark)
        head = tuple(cell.strip() for cell in lines[0]) if lines else ()
        if set(needed) <= {one.lower() for one in head}:
            return _typed(source.name, head, lines[1:])
    raise PaperError(
        f"{source.name} is no {what}: it needs a first line with {' and '.join(needed)}, parted by "
        "commas, semicolons or tabs."
    )


def _lines(text: str, mark: str) -> list[list[str]]:
    """Part a text into cells; [] where a quotation mark has no partner."""
    try:
        return list(csv.reader(io.StringIO(text, newline=""), delimiter=mark, strict=True))
    except csv.Error:
        return []


def _typed(name: str, head: tuple[str, ...], lines: list[list[str]]) -> Typed:
    """Put cells under their headings."""
    lower = tuple(one.lower() for one in head)
    twice = [one for one, count in Counter(lower).items() if count > 1]
    if twice:
        raise PaperError(f'{name} has the column "{short(twice[0])}" twice. Keep one of them.')
    rows = []
    for number, cells in enumerate(lines, start=2):
        if not any(cell.strip() for cell in cells):
            continue
        if len(cells) > len(head):
            raise PaperError(
                f"{name}, line {number}, has {len(cells)} cells and the heading {len(head)}. "
                "Put a cell with a comma into quotation marks."
            )
        filled = [*cells, *[""] * (len(head) - len(cells))]
        rows.append((number, {h: c.strip() for h, c in zip(lower, filled, strict=True)}))
    return Typed(name=name, head=lower, rows=tuple(rows))
