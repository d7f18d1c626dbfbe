"""Candidates' answers from a CSV or JSON file: data that may be wrong or hostile in any way.

Each line is read by itself, so an unfinished quotation mark or a stray encoding spoils one row
and no other. What cannot be read is refused with its row, name and column; nothing is evaluated.
"""

import unicodedata
from dataclasses import replace
from pathlib import Path

from boomsim.files.file_errors import FileError
from boomsim.files.text_reading import read_bytes
from boomsim.papers.marking.answer_sheets import Refusal, Sheet, short
from boomsim.papers.marking.csv_answers import csv_rows
from boomsim.papers.marking.json_answers import json_rows
from boomsim.papers.paper_errors import PaperError

LARGEST_FILE = 100_000_000
LONGEST_NAME = 80
_FORMULA = ("=", "+", "-", "@", "\t", "\r", "|", "%")


def read_answers(path: str | Path) -> tuple[list[Sheet], list[Refusal]]:
    """Read all answers of a class.

    Parameters
    ----------
    path : str or Path
        CSV with the columns candidate, variant, code, 1a, 1b, 2 …; or JSON: a list of objects with
        "candidate", "variant", "code" and "answers"

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
    reader = json_rows if _looks_like_json(source, data) else csv_rows
    sheets = [_named(sheet, refused) for sheet in reader(data, source.name, refused)]
    return _without_twins([one for one in sheets if one], refused), refused


def _looks_like_json(source: Path, data: bytes) -> bool:
    """By name, or by how it begins."""
    return source.suffix.lower() == ".json" or data.lstrip(b"\xef\xbb\xbf \r\n\t")[:1] in (
        b"[",
        b"{",
    )


def _named(sheet: Sheet, refused: list[Refusal]) -> Sheet | None:
    """Refuse a row whose name is none, or is meant to be run by a spreadsheet."""
    name = " ".join(sheet.candidate.split())
    reason = ""
    if not name:
        reason = "has no name; write one in the column candidate"
    elif len(name) > LONGEST_NAME:
        reason = f"has a name of {len(sheet.candidate)} characters; at most {LONGEST_NAME} are read"
    elif sheet.candidate.startswith(_FORMULA):
        reason = "has a name that a spreadsheet would run as a formula; begin it with a letter"
    elif any(unicodedata.category(one) in ("Cc", "Cf", "Co", "Cs", "Cn") for one in name):
        reason = "has characters in its name that cannot be seen; type it again"
    if reason:
        refused.append(Refusal(row=sheet.row, candidate=short(name), column="", reason=reason))
        return None
    return replace(sheet, candidate=name)


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
