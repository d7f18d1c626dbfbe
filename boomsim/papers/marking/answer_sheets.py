"""One candidate's answers as they were read, and what was refused."""

import re
from collections.abc import Mapping
from dataclasses import dataclass

_LABEL = re.compile(r"0*([1-9]\d{0,2})\s*[.)(]?\s*([a-j]?)\)?", re.IGNORECASE)


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
    answers : mapping of str to str
        By label "1a"; blank ones are left out
    code : str
        Check code of the paper as typed; "" if none stands there
    """

    row: int
    candidate: str
    variant: str
    answers: Mapping[str, str]
    code: str = ""


def label_of(text: str) -> str:
    """Bring a column's name to the form "1a"; "" if it is no question.

    Parameters
    ----------
    text : str
        "1a", "1.a", "01 (a)"
    """
    found = _LABEL.fullmatch(text.strip()) if len(text) < 20 else None
    return f"{found[1]}{found[2].lower()}" if found else ""


_SPACES = dict.fromkeys(map(ord, "\u00a0\u2009\u202f"), " ")
"""As between a number and its unit when it is copied from a paper."""


def short(text: object) -> str:
    """Show a strange text without its strangeness.

    Returns
    -------
    str
        Printable, at most 40 characters
    """
    spaced = str(text or "")[:60].translate(_SPACES)
    plain = "".join(one if one.isprintable() else "·" for one in spaced)
    return plain if len(plain) <= 40 else f"{plain[:39]}…"


def refuse_row(refused: list[Refusal], row: int, cells: list[str], reason: str) -> None:
    """Refuse a row, naming it by its first cell."""
    name = short(cells[0]) if cells else ""
    refused.append(Refusal(row=row, candidate=name, column="", reason=reason))
