"""What the marks of a class say about the questions: facility and discrimination.

Facility is the mean share of the marks; near 1 a question was easy. Discrimination is the
correlation between a question's marks and the marks for the rest of the paper; near 0 a question
does not tell those who know from those who do not, below 0 look at the question itself.
"""

import math
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from boomsim.papers.marking.mark_question import QuestionMark

NAN = float("nan")
FEW = 10
"""With fewer candidates the figures say little [1]."""
LEAST = 4
"""Fewest candidates of whom a correlation says anything: below, it has no interval (Fisher) [1]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class QuestionFigures:
    """One question over a class.

    Attributes
    ----------
    name : str
        "3", or the id of the family where variants have different ones
    count : int
        Candidates who had it [1]
    facility : float
        Mean share of its marks [1]
    discrimination : float
        Correlation with the rest of the paper; NaN where nothing varies, or too few had it [1]
    slips : tuple of (str, int)
        Misconceptions, the most frequent first, and how many candidates had them
    """

    name: str
    title: str
    count: int
    facility: float
    discrimination: float
    slips: tuple[tuple[str, int], ...]


def class_figures(papers: Sequence[Sequence[QuestionMark]]) -> tuple[QuestionFigures, ...]:
    """Work out the figures of every question.

    Parameters
    ----------
    papers : sequence of sequence of QuestionMark
        By candidate
    """
    names = _names(papers)
    groups: dict[str, list[tuple[QuestionMark, float]]] = {}
    for paper in papers:
        whole = sum(mark.marks for mark in paper)
        most = sum(mark.most for mark in paper)
        for mark in paper:
            others = most - mark.most
            rest = (whole - mark.marks) / others if others else NAN
            groups.setdefault(names(mark), []).append((mark, rest))
    return tuple(_figures(name, marks) for name, marks in groups.items())


class _names:
    """Names questions by number, or by family where a number has several."""

    def __init__(self, papers: Sequence[Sequence[QuestionMark]]) -> None:
        pairs = {(mark.number, mark.family) for paper in papers for mark in paper}
        self.same = len({number for number, _ in pairs}) == len(pairs)

    def __call__(self, mark: QuestionMark) -> str:
        return str(mark.number) if self.same else mark.family


def _figures(name: str, marks: Sequence[tuple[QuestionMark, float]]) -> QuestionFigures:
    """Figures of one question."""
    shares = [mark.marks / mark.most for mark, _ in marks]
    slips = Counter(slip for mark, _ in marks for slip in dict.fromkeys(mark.slips))
    return QuestionFigures(
        name=name,
        title=marks[0][0].title,
        count=len(marks),
        facility=math.fsum(shares) / len(shares),
        discrimination=discrimination(shares, [rest for _, rest in marks]),
        slips=tuple(sorted(slips.items(), key=lambda item: (-item[1], item[0]))),
    )


def discrimination(shares: Sequence[float], rests: Sequence[float]) -> float:
    """Correlate a question with the rest of the paper, if enough candidates had it.

    Parameters
    ----------
    shares, rests : sequence of float
        Of the marks of the question and of all others, by candidate [1]

    Returns
    -------
    float
        NaN for fewer than `LEAST`, and where nothing varies [1]
    """
    return correlation(shares, rests) if len(shares) >= LEAST else NAN


def correlation(one: Sequence[float], other: Sequence[float]) -> float:
    """Pearson's correlation.

    Returns
    -------
    float
        NaN where one of them does not vary [1]

    Examples
    --------
    >>> correlation([0, 1, 2], [5, 7, 9])
    1.0
    """
    count = len(one)
    if count < 2:
        return NAN
    mean, mean_other = math.fsum(one) / count, math.fsum(other) / count
    off = [value - mean for value in one]
    off_other = [value - mean_other for value in other]
    spread = math.fsum(x * x for x in off) * math.fsum(y * y for y in off_other)
    if not spread > 1e-18:
        return NAN
    return math.fsum(x * y for x, y in zip(off, off_other, strict=True)) / math.sqrt(spread)
