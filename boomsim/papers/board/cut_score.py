"""Where to draw the line: a cut score from judged question difficulties.

The method is that of W. H. Angoff (1971), for questions of several marks in the extended form
(R. K. Hambleton and B. S. Plake, 1995). Each judge thinks of a candidate who only just deserves to
pass and says, for each question, which percentage of its marks such candidates would earn on
average. A judge's cut score is the sum over the questions; the cut score is the mean over judges.
"""

import math
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from boomsim.papers.board.item_analysis import Item, keyed
from boomsim.papers.board.mark_reliability import variance
from boomsim.papers.board.typed_tables import Typed, read_table
from boomsim.papers.marking.answer_sheets import short
from boomsim.papers.marking.mark_class import CandidateMark
from boomsim.papers.paper_errors import PaperError

METHOD = "Angoff (1971), extended to questions of several marks (Hambleton and Plake, 1995)"
_PERCENT = re.compile(r"(\d{1,3}(?:\.\d{1,6})?)\s*%?")


@dataclass(frozen=True, slots=True, kw_only=True)
class Judgements:
    """What judges think that a candidate who only just passes would earn.

    Attributes
    ----------
    shares : mapping of str to tuple of float
        By question, then by judge [1]
    """

    judges: tuple[str, ...]
    shares: Mapping[str, tuple[float, ...]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """A cut score of one set of questions.

    Attributes
    ----------
    by_judge : tuple of float
        Marks [1]
    most : int
        Of the paper [1]
    """

    by_judge: tuple[float, ...]
    most: int

    @property
    def marks(self) -> float:
        """Mean over the judges [1]."""
        return math.fsum(self.by_judge) / len(self.by_judge)

    @property
    def passes_at(self) -> int:
        """Least whole marks that reach the cut score [1]."""
        return math.ceil(self.marks - 1e-9)

    @property
    def error(self) -> float | None:
        """Standard error over judges, in marks; None with one judge [1]."""
        if len(self.by_judge) < 2:
            return None
        return math.sqrt(variance(self.by_judge) / len(self.by_judge))


def read_judgements(path: str | Path, found: Sequence[Item]) -> Judgements:
    """Read what judges think: a row a judge, a column a question.

    Parameters
    ----------
    path : str or Path
        CSV with the column judge, and one for each question by its number or its family; cells in
        per cent of the question's marks

    Raises
    ------
    PaperError
    """
    typed = read_table(path, needed=("judge",), what="table of judgements")
    if not typed.rows:
        raise PaperError(f"{typed.name} has no judge. Write a line for each.")
    columns = {one.key: _column(typed, one) for one in found}
    _refuse_strange(typed, set(columns.values()))
    judges = tuple(row["judge"] for _, row in typed.rows)
    twins = [one for one in judges if judges.count(one) > 1]
    if twins:
        raise PaperError(f'{typed.name} has the judge "{short(twins[0])}" twice. Keep one line.')
    shares = {
        key: tuple(_share(typed, line, row, column) for line, row in typed.rows)
        for key, column in columns.items()
    }
    return Judgements(judges=judges, shares=shares)


def _column(typed: Typed, one: Item) -> str:
    """Find the column of a question."""
    for name in (one.numbers, one.key.lower()):
        if name and name in typed.head:
            return name
    wanted = one.numbers or f"{one.key}, as variants number it differently"
    raise PaperError(
        f"{typed.name} has no judgement of question {wanted}. Add a column with that heading."
    )


def _refuse_strange(typed: Typed, known: set[str]) -> None:
    """Refuse a column that is no question: a mistyped number would shift the cut score."""
    strange = [one for one in typed.head if one not in known and one != "judge"]
    if strange:
        raise PaperError(
            f'{typed.name}: no question of this paper is "{short(strange[0])}". Take out the '
            "column."
        )


def _share(typed: Typed, line: int, row: Mapping[str, str], column: str) -> float:
    """Read one judgement."""
    text = row[column]
    where = f"{typed.name}, line {line}, question {column}"
    read = _PERCENT.fullmatch(text)
    if not read or float(read[1]) > 100:
        raise PaperError(
            f'{where}: "{short(text)}" is no percentage. Write 0 to 100, the share of the marks '
            "that candidates who only just pass would earn on average."
        )
    if 0 < float(read[1]) <= 1 and "%" not in text:
        raise PaperError(
            f'{where}: "{short(text)}" could be a share or a percentage. Write 60 for 60 per cent, '
            "or 1% for one per cent."
        )
    return float(read[1]) / 100


def cut_of(judged: Judgements, one: CandidateMark) -> Cut:
    """Add up the judgements of a candidate's own questions."""
    own = [(judged.shares[key], mark.most) for key, mark in keyed(one.questions)]
    sums = tuple(
        math.fsum(shares[judge] * most for shares, most in own)
        for judge in range(len(judged.judges))
    )
    return Cut(by_judge=sums, most=one.most)
