"""Answers from a CSV file, each line read by itself."""

import csv
from collections import Counter
from collections.abc import Iterator

from boomsim.files.errors import FileError
from boomsim.files.reading import UTF_16, text_of
from boomsim.papers.errors import PaperError
from boomsim.papers.marking.sheets import Refusal, Sheet, label_of, refuse_row, short

MOST_CELLS = 500


def csv_rows(data: bytes, name: str, refused: list[Refusal]) -> Iterator[Sheet]:
    """Read a CSV file line by line."""
    lines = _lines(data, name)
    head, mark = _header(lines[0] if lines else b"", name)
    labels = {place: label for place, one in enumerate(head) if (label := label_of(one))}
    strange = [one for one in head if one not in ("candidate", "variant") and not label_of(one)]
    for one in strange:
        reason = "this column is no question; its cells are not marked"
        refused.append(Refusal(row=1, candidate="heading", column=short(one), reason=reason))
    for row, line in enumerate(lines[1:], start=2):
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
            answers={label: cells[p] for p, label in labels.items() if cells[p].strip()},
        )


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
        if {"candidate", "variant"} <= set(head) and len(head) <= MOST_CELLS:
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
