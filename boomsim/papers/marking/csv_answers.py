"""Answers from a CSV file, each line read by itself."""

import csv
from collections import Counter
from collections.abc import Iterator

from boomsim.files.file_errors import FileError
from boomsim.files.text_reading import UTF_16, text_of
from boomsim.papers.marking.answer_sheets import Refusal, Sheet, label_of, refuse_row, short
from boomsim.papers.paper_errors import PaperError

NAMED, CODE = ("candidate", "variant"), "code"
"""Columns that are no questions; sheets without the code are read, too."""

MOST_CELLS = 500
LONGEST_ROW = 6
"""Lines that one row may have, if a name in it has line breaks [1]."""


def csv_rows(data: bytes, name: str, refused: list[Refusal]) -> Iterator[Sheet]:
    """Read a CSV file line by line."""
    lines = _lines(data, name)
    head, mark = _header(lines[0] if lines else b"", name)
    labels = {place: label for place, one in enumerate(head) if (label := label_of(one))}
    strange = [one for one in head if one not in (*NAMED, CODE) and not label_of(one)]
    for one in strange:
        reason = "this column is no question; its cells are not marked"
        refused.append(Refusal(row=1, candidate="heading", column=short(one), reason=reason))
    for row, line in rows_of(lines[1:], mark, count=len(head)):
        cells = _cells(line, mark, row, refused)
        if cells is None or not any(cell.strip() for cell in cells):
            continue
        if len(cells) > len(head):
            refuse_row(refused, row, cells, f"has {len(cells)} cells and the heading {len(head)}")
            continue
        cells += [""] * (len(head) - len(cells))
        yield Sheet(
            row=row,
            candidate=cells[head.index("candidate")],
            variant=cells[head.index("variant")].strip(),
            code=cells[head.index(CODE)] if CODE in head else "",
            answers={label: cells[p] for p, label in labels.items() if cells[p].strip()},
        )


def rows_of(lines: list[bytes], mark: str, *, count: int) -> Iterator[tuple[int, bytes]]:
    """Put lines together that a quotation mark holds together: a name with a line break in it.

    Parameters
    ----------
    lines : list of bytes
        Below the heading
    mark : str
        Between cells
    count : int
        Cells of the heading [1]

    Yields
    ------
    (int, bytes)
        Line of the file in which the row begins, and the row. Where it is not certain that the
        lines are one row, each comes as its first cell and an open quotation mark: it is refused
    """
    place = 0
    while place < len(lines):
        taken = _lines_of_row(lines, place, mark, count)
        if taken:
            yield place + 2, b" ".join(lines[place : place + taken])
        else:  # the lines up to the partner are all in doubt: none of them is a row by itself
            taken = _until_partner(lines, place)
            for row, line in enumerate(lines[place : place + taken], start=place + 2):
                name = line.partition(mark.encode())[0].replace(b'"', b"")
                yield row, name + mark.encode() + b'"'
        place += taken


def _is_open(line: bytes) -> bool:
    """Whether a quotation mark waits for its partner."""
    return line.count(b'"') % 2 == 1


def _until_partner(lines: list[bytes], place: int) -> int:
    """How many lines lie from an open quotation mark to its partner; 1 if it has none near."""
    for number, line in enumerate(lines[place + 1 : place + LONGEST_ROW], start=2):
        if _is_open(line):
            return number
    return 1


def _lines_of_row(lines: list[bytes], place: int, mark: str, count: int) -> int:
    """How many lines make the row that begins here; 0 where that is not certain [1]."""
    if not _is_open(lines[place]):
        return 1
    number = _until_partner(lines, place)
    if number == 1:
        return 1  # no partner at all: this row alone is refused
    row = lines[place : place + number]
    return number if _is_one_cell(row, mark) and _count_of(row, mark) == count else 0


def _is_one_cell(row: list[bytes], mark: str) -> bool:
    """Whether the lines break inside one cell, with nothing in it that parts cells."""
    first, *between, last = (line.decode("utf-8", "replace") for line in row)
    opens = first.rpartition(mark)[2].lstrip().startswith('"')
    return opens and not any(mark in part for part in (*between, last.partition('"')[0]))


def _count_of(row: list[bytes], mark: str) -> int:
    """Count the cells of lines that are one row; 0 if they cannot be parted [1]."""
    text = b" ".join(row).decode("utf-8", "replace")
    try:
        return len(next(csv.reader([text], delimiter=mark, strict=True), []))
    except csv.Error:
        return 0


def _lines(data: bytes, name: str) -> list[bytes]:
    """Cut the file at line ends; UTF-16, which some spreadsheets write, is turned into UTF-8."""
    if data[:2] in UTF_16:
        try:
            data = text_of(data, name=name).encode("utf-8")
        except FileError as error:
            raise PaperError(str(error)) from None
    return data.removeprefix(b"\xef\xbb\xbf").splitlines()


def _header(line: bytes, name: str) -> tuple[list[str], str]:
    """Read the heading and find what parts its cells."""
    for mark in (",", ";", "\t"):
        try:
            cells = next(csv.reader([line.decode("utf-8")], delimiter=mark, strict=True), [])
        except (UnicodeDecodeError, csv.Error):
            continue
        head = [cell.strip().lower() for cell in cells]
        if set(NAMED) <= set(head) and len(head) <= MOST_CELLS:
            labels = Counter(label_of(one) or one for one in head)
            twice = [label for label, count in labels.items() if count > 1]
            if twice:
                raise PaperError(
                    f"{name} has the column {', '.join(map(short, twice))} twice. Keep one of them."
                )
            return head, mark
    raise PaperError(
        f"{name} needs a first line with the columns candidate, variant and the questions, "
        "parted by commas, semicolons or tabs, in UTF-8. Use the sheet that came with the papers."
    )


def _cells(line: bytes, mark: str, row: int, refused: list[Refusal]) -> list[str] | None:
    """Part one line into cells."""
    try:
        text = line.decode("utf-8")
    except UnicodeDecodeError:
        shown = short(line[:200].decode("utf-8", "replace").split(mark)[0])
        reason = "is not UTF-8 text; save the file as CSV UTF-8"
        refused.append(Refusal(row=row, candidate=shown, column="", reason=reason))
        return None
    usual = csv.field_size_limit(max(len(text) + 1, 131072))
    try:
        return next(csv.reader([text], delimiter=mark, strict=True), [])
    except csv.Error:
        refuse_row(refused, row, text[:200].split(mark), "has a quotation mark without its partner")
        return None
    finally:
        csv.field_size_limit(usual)
