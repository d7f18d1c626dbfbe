"""From candidate numbers to names: for the gradebook alone, so that reports can be shown around."""

import csv
import io
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from boomsim.papers.board.cut_score import Judgements, cut_of
from boomsim.papers.board.typed_tables import read_table
from boomsim.papers.marking.answer_sheets import short
from boomsim.papers.marking.mark_class import Marked
from boomsim.papers.marking.marks_tables import harmless
from boomsim.papers.paper_errors import PaperError


@dataclass(frozen=True, slots=True, kw_only=True)
class Roster:
    """Who has which candidate number.

    Attributes
    ----------
    names : mapping of str to str
        By number as written in the roster
    """

    names: Mapping[str, str]

    def name(self, candidate: str) -> str | None:
        """Name behind a number; None if the roster does not have it."""
        plain = {_plain(number): name for number, name in self.names.items()}
        return plain.get(_plain(candidate))


def read_roster(path: str | Path) -> Roster:
    """Read a roster.

    Parameters
    ----------
    path : str or Path
        CSV with the columns candidate and name
    """
    typed = read_table(path, needed=("candidate", "name"), what="roster")
    names: dict[str, str] = {}
    for line, row in typed.rows:
        number, name = row["candidate"], " ".join(row["name"].split())
        if not number or not name:
            raise PaperError(f"{typed.name}, line {line}, lacks a candidate number or a name.")
        if _plain(number) in map(_plain, names):
            raise PaperError(
                f'{typed.name} has the candidate number "{short(number)}" twice. One number is one '
                "person."
            )
        names[number] = name
    return Roster(names=names)


def _plain(number: str) -> str:
    """Spreadsheets turn 007 into 7."""
    text = number.strip().casefold()
    return text.lstrip("0") or "0" if text.isdigit() else text


def gradebook(marked: Marked, *, roster: Roster | None, judged: Judgements | None) -> str:
    """Write what goes into a gradebook, one row a candidate.

    Parameters
    ----------
    roster : Roster or None
        With it the names stand beside the numbers; who has handed in nothing has a row, too
    judged : Judgements or None
        With them there is a result

    Returns
    -------
    str
        CSV
    """
    buffer = io.StringIO()
    writer = csv.writer(buffer, lineterminator="\n")
    head = ["candidate", *["name"] * (roster is not None), "marks", "of", "percent"]
    writer.writerow([*head, *["result"] * (judged is not None), "provisional"])
    seen = set()
    for one in marked.candidates:
        seen.add(_plain(one.candidate))
        named = [harmless(roster.name(one.candidate) or "")] if roster else []
        result = []
        if judged:
            passed = one.marks >= cut_of(judged, one).passes_at
            result = ["pass" if passed else "fail"]
        percent = f"{100 * one.marks / one.most:.1f}"
        marks = [one.marks, one.most, percent, *result, "yes" if one.unread else "no"]
        writer.writerow([harmless(one.candidate), *named, *marks])
    for number, name in roster.names.items() if roster else ():
        if _plain(number) not in seen:
            blanks = [""] * (4 + (judged is not None))
            writer.writerow([harmless(number), harmless(name), *blanks])
    return buffer.getvalue()


def strangers(marked: Marked, roster: Roster) -> tuple[list[str], list[str]]:
    """Find who is missing on either side.

    Returns
    -------
    list of str, list of str
        Candidates who are not in the roster, and numbers of the roster without marks
    """
    here = {_plain(one.candidate) for one in marked.candidates}
    unknown = [one.candidate for one in marked.candidates if roster.name(one.candidate) is None]
    return unknown, [number for number in roster.names if _plain(number) not in here]
