"""Candidates' answers from a CSV or JSON file: data that may be wrong or hostile in any way.

Each line is read by itself, so an unfinished quotation mark or a stray encoding spoils one row
and no other. What cannot be read is refused with its row, name and column; nothing is evaluated.
"""

import csv
import json
import re
import unicodedata
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from boomsim.files.errors import FileError
from boomsim.files.reading import UTF_16, read_bytes, text_of
from boomsim.papers.errors import PaperError

LARGEST_FILE = 100_000_000
LONGEST_NAME = 80
MOST_CELLS = 500
_LABEL = re.compile(r"0*([1-9]\d{0,2})\s*[.)(]?\s*([a-j]?)\)?", re.IGNORECASE)
_FORMULA = ("=", "+", "-", "@", "\t", "\r", "|", "%")


@dataclass(frozen=True, slots=True, kw_only=True)
class Refusal:
    """Something that could not be read.

    Attributes
    ----------
    row : int
        Line of the file, or place in the list, from 1 [1]
    candidate : str
        As far as it could be read; shortened
    column : str
        "" for the whole row
    reason : str
    """

    row: int
    candidate: str
    column: str
    reason: str

    def __str__(self) -> str:
        """Row, name, column and reason in one sentence."""
        where = f", column {self.column}" if self.column else ""
        return f"Row {self.row} ({self.candidate or 'no name'}){where}: {self.reason.rstrip('.')}."


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """One candidate's answers.

    Attributes
    ----------
    row : int
        [1]
    candidate, variant : str
    answers : mapping of str to str
        By label "1a"; blank ones are left out
    """

    row: int
    candidate: str
    variant: str
    answers: Mapping[str, str]


def read_answers(path: str | Path) -> tuple[list[Sheet], list[Refusal]]:
    """Read all answers of a class.

    Parameters
    ----------
    path : str or Path
        CSV with the columns candidate, variant, 1a, 1b, 2 …; or JSON: a list of objects with
        "candidate", "variant" and "answers"

    Returns
    -------
    list of Sheet, list of Refusal

    Raises
    ------
    PaperError
        If the file as a whole cannot be read
    """
    source = Path(path)
    try:
        data = read_bytes(source, most=LARGEST_FILE)
    except FileError as error:
        raise PaperError(str(error)) from None
    refused: list[Refusal] = []
    reader = _json_rows if _looks_like_json(source, data) else _csv_rows
    sheets = [_named(sheet, refused) for sheet in reader(data, source.name, refused)]
    return _without_twins([one for one in sheets if one], refused), refused


def _looks_like_json(source: Path, data: bytes) -> bool:
    """By name, or by how it begins."""
    return source.suffix.lower() == ".json" or data.lstrip(b"\xef\xbb\xbf \r\n\t")[:1] in (
        b"[",
        b"{",
    )


def _csv_rows(data: bytes, name: str, refused: list[Refusal]) -> Iterator[Sheet]:
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
            _refuse(refused, row, cells, f"has {len(cells)} cells and the heading {len(head)}")
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
                raise PaperError(f"{name} has the column {', '.join(map(short, twice))} twice.")
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
        _refuse(refused, row, text[:200].split(mark), "has a quotation mark without its partner")
        return None
    finally:
        csv.field_size_limit(usual)


def _json_rows(data: bytes, name: str, refused: list[Refusal]) -> Iterator[Sheet]:
    """Read a JSON list. Numbers stay text, so no size of number does any harm."""
    try:
        rows = json.loads(
            data.removeprefix(b"\xef\xbb\xbf").decode("utf-8"),
            parse_int=str, parse_float=str, parse_constant=str, object_pairs_hook=_pairs,
        )  # fmt: skip
    except (ValueError, RecursionError) as error:
        raise PaperError(f"{name} is not JSON: {str(error)[:80]}.") from None
    if not isinstance(rows, list):
        raise PaperError(f"{name} needs a list of objects with candidate, variant and answers.")
    for row, one in enumerate(rows, start=1):
        if sheet := _json_row(row, one, refused):
            yield sheet


class _Twice(str):
    """Marks a name that stands twice in one object."""


def _pairs(pairs: list[tuple[str, object]]) -> dict[str, object]:
    """Make an object; a repeated name keeps neither value."""
    counts = Counter(name for name, _ in pairs)
    return {name: value if counts[name] == 1 else _Twice("twice") for name, value in pairs}


def _json_row(row: int, one: object, refused: list[Refusal]) -> Sheet | None:
    """One candidate of a JSON file."""
    fields = one if isinstance(one, dict) else {}
    name, variant, answers = (fields.get(key) for key in ("candidate", "variant", "answers"))
    if not isinstance(name, str) or not isinstance(variant, str) or not isinstance(answers, dict):
        reason = "needs candidate, variant and answers, each once"
        refused.append(Refusal(row=row, candidate=short(name), column="", reason=reason))
        return None
    kept: dict[str, str] = {}
    for column, value in answers.items():
        label = label_of(column)
        if not label or label in kept or not isinstance(value, str) or isinstance(value, _Twice):
            reason = "is no question, stands twice or has no text or number for an answer"
            refused.append(
                Refusal(row=row, candidate=short(name), column=short(column), reason=reason)
            )
        elif value.strip():
            kept[label] = value
    return Sheet(row=row, candidate=name, variant=variant.strip(), answers=kept)


def label_of(text: str) -> str:
    """Bring a column's name to the form "1a"; "" if it is no question.

    Parameters
    ----------
    text : str
        "1a", "1.a", "01 (a)"

    Returns
    -------
    str
    """
    found = _LABEL.fullmatch(text.strip()) if len(text) < 20 else None
    return f"{found[1]}{found[2].lower()}" if found else ""


def _named(sheet: Sheet, refused: list[Refusal]) -> Sheet | None:
    """Refuse a row whose name is none, or is meant to be run by a spreadsheet."""
    name = " ".join(sheet.candidate.split())
    reason = ""
    if not name:
        reason = "has no name"
    elif len(name) > LONGEST_NAME:
        reason = f"has a name of {len(sheet.candidate)} characters; at most {LONGEST_NAME} are read"
    elif sheet.candidate.startswith(_FORMULA):
        reason = "has a name that a spreadsheet would run as a formula"
    elif any(unicodedata.category(one) in ("Cc", "Cf", "Co", "Cs", "Cn") for one in name):
        reason = "has characters in its name that cannot be seen"
    if reason:
        refused.append(Refusal(row=sheet.row, candidate=short(name), column="", reason=reason))
        return None
    return Sheet(row=sheet.row, candidate=name, variant=sheet.variant, answers=sheet.answers)


def _without_twins(sheets: list[Sheet], refused: list[Refusal]) -> list[Sheet]:
    """Nobody is marked twice: of two rows with one name neither is taken."""
    rows: dict[str, list[int]] = {}
    for sheet in sheets:
        rows.setdefault(_key(sheet.candidate), []).append(sheet.row)
    kept = []
    for sheet in sheets:
        same = rows[_key(sheet.candidate)]
        if len(same) == 1:
            kept.append(sheet)
            continue
        reason = (
            f"this candidate has the rows {', '.join(map(str, same))}; none is marked, keep one"
        )
        refused.append(
            Refusal(row=sheet.row, candidate=short(sheet.candidate), column="", reason=reason)
        )
    return kept


def _key(name: str) -> str:
    """Names that look alike are one."""
    return unicodedata.normalize("NFKC", name).casefold()


_SPACES = dict.fromkeys(map(ord, "\u00a0\u2009\u202f"), " ")
"""As between a number and its unit when it is copied from a paper."""


def short(text: object) -> str:
    """Show a strange text without its strangeness.

    Parameters
    ----------
    text : object

    Returns
    -------
    str
        Printable, at most 40 characters
    """
    spaced = str(text or "")[:60].translate(_SPACES)
    plain = "".join(one if one.isprintable() else "·" for one in spaced)
    return plain if len(plain) <= 40 else f"{plain[:39]}…"


def _refuse(refused: list[Refusal], row: int, cells: list[str], reason: str) -> None:
    """Refuse a row, naming it by its first cell."""
    name = short(cells[0]) if cells else ""
    refused.append(Refusal(row=row, candidate=name, column="", reason=reason))
