"""Two markers of one sitting compared: how far they agree, and where they do not."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from boomsim.papers.board.marker_agreement import agreement, kappa
from boomsim.papers.board.typed_tables import Typed, read_table
from boomsim.papers.marking.answer_sheets import label_of, short
from boomsim.papers.paper_errors import PaperError

Marks = Mapping[tuple[str, str], int]
"""By candidate and question [1]."""
_WHOLE = re.compile(r"\d{1,4}")


@dataclass(frozen=True, slots=True, kw_only=True)
class Disagreement:
    """One mark on which two markers differ."""

    question: str
    candidate: str
    one: int
    other: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Agreed:
    """How far two markers agree on some marks.

    Attributes
    ----------
    question : str
        "" for all questions together
    count : int
        Marks that both gave [1]
    share : float
        Of them the same [1]
    kappa : float or None
        None where both gave one and the same mark throughout
    harder : float
        How many marks the second gave less than the first, on average [1]
    """

    question: str
    count: int
    share: float
    kappa: float | None
    harder: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared:
    """Two files of marks side by side.

    Attributes
    ----------
    disagreements : tuple of Disagreement
        By question, then in the order of the first file
    single : tuple of str
        Candidates whom only one of the two has marked
    """

    whole: Agreed
    questions: tuple[Agreed, ...]
    disagreements: tuple[Disagreement, ...]
    single: tuple[str, ...]


def compare_markers(one: str | Path, other: str | Path) -> Compared:
    """Compare two files of marks.

    Parameters
    ----------
    one, other : str or Path
        CSV with the column candidate and a column for each question, as marks.csv of a report is

    Raises
    ------
    PaperError
        If a file cannot be read, or the two have nothing in common
    """
    first, second = _marks(one), _marks(other)
    shared = [place for place in first if place in second]
    if not shared:
        raise PaperError(
            f"{Path(one).name} and {Path(other).name} have no candidate and question in common. "
            "Compare two files of marks of one sitting."
        )
    questions = sorted({question for _, question in shared}, key=_order)
    people = dict.fromkeys(candidate for candidate, _ in [*first, *second])
    both = {candidate for candidate, _ in shared}
    return Compared(
        whole=_agreed("", shared, first, second),
        questions=tuple(
            _agreed(q, [place for place in shared if place[1] == q], first, second)
            for q in questions
        ),
        disagreements=tuple(
            Disagreement(question=q, candidate=who, one=first[who, q], other=second[who, q])
            for q in questions
            for who, asked in shared
            if asked == q and first[who, q] != second[who, q]
        ),
        single=tuple(candidate for candidate in people if candidate not in both),
    )  # fmt: skip


def _order(label: str) -> tuple[int, str]:
    """Questions by number, then by letter."""
    digits = label.rstrip("abcdefghij")
    return int(digits), label


def _agreed(
    question: str, places: Sequence[tuple[str, str]], first: Marks, second: Marks
) -> Agreed:
    """Agreement on some marks."""
    pairs = [(first[place], second[place]) for place in places]
    return Agreed(
        question=question, count=len(pairs), share=agreement(pairs), kappa=kappa(pairs),
        harder=sum(one - other for one, other in pairs) / len(pairs),
    )  # fmt: skip


def _marks(path: str | Path) -> Marks:
    """Read one marker's marks; blank cells are marks not given."""
    typed = read_table(path, needed=("candidate",), what="file of marks")
    columns = {label: head for head in typed.head if (label := label_of(head))}
    found: dict[tuple[str, str], int] = {}
    seen: set[str] = set()
    for line, row in typed.rows:
        who = row["candidate"].lstrip("'")
        if not who or who in seen:
            twice = f'has the candidate "{short(who)}" twice' if who else "has no candidate"
            raise PaperError(f"{typed.name}, line {line}, {twice}. Each has one line.")
        seen.add(who)
        cells = ((label, row[head]) for label, head in columns.items() if row[head])
        found |= {(who, label): _mark(typed, line, label, text) for label, text in cells}
    return found


def _mark(typed: Typed, line: int, label: str, text: str) -> int:
    """Read one mark."""
    if not _WHOLE.fullmatch(text):
        raise PaperError(
            f'{typed.name}, line {line}, question {label}: "{short(text)}" is no mark. Write a '
            "whole number, or leave the cell empty."
        )
    return int(text)
