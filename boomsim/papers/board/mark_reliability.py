"""How far the marks of a paper agree with themselves: Cronbach's alpha and its interval.

Alpha is the share of the variance of total marks that the questions have in common (L. J. Cronbach,
1951). Its 95 % interval is that of L. S. Feldt (1965): (1 − true)/(1 − found) is F-distributed with
n − 1 and (n − 1)(k − 1) degrees of freedom for n candidates and k questions.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from boomsim.papers.board.f_quantiles import f_quantile
from boomsim.papers.marking.class_figures import LEAST

LEVEL = 0.95


@dataclass(frozen=True, slots=True, kw_only=True)
class Reliability:
    """Reliability of a paper.

    Attributes
    ----------
    alpha, low, high : float
        Cronbach's alpha and the ends of its 95 % interval [1]
    error : float
        Standard error of one candidate's total, in marks [1]
    questions, candidates : int
        [1]
    """

    alpha: float
    low: float
    high: float
    error: float
    questions: int
    candidates: int


def reliability(marks: Sequence[Sequence[float]]) -> Reliability | str:
    """Find alpha and its interval.

    Parameters
    ----------
    marks : sequence of sequence of float
        By candidate, then by question; all have the same questions

    Returns
    -------
    Reliability or str
        A sentence that says why it cannot be told
    """
    count = len(marks)
    if count < LEAST:
        return f"Reliability cannot be told from {_so_many(count)}; it takes at least {LEAST}."
    questions = len(marks[0])
    if questions < 2:
        return "Reliability cannot be told from one question; it takes at least two."
    whole = variance([math.fsum(one) for one in marks])
    if not whole > 1e-18:
        return "Reliability cannot be told: all candidates have the same total."
    own = math.fsum(variance([one[place] for one in marks]) for place in range(questions))
    alpha = questions / (questions - 1) * (1.0 - own / whole)
    low, high = feldt(alpha, candidates=count, questions=questions)
    return Reliability(
        alpha=alpha, low=low, high=high, error=math.sqrt(whole * (1.0 - alpha)),
        questions=questions, candidates=count,
    )  # fmt: skip


def feldt(alpha: float, *, candidates: int, questions: int) -> tuple[float, float]:
    """Ends of Feldt's 95 % interval.

    Parameters
    ----------
    alpha : float
        [1]
    candidates, questions : int
        At least two of each [1]

    Returns
    -------
    float, float
        [1]
    """
    above, below = candidates - 1, (candidates - 1) * (questions - 1)
    tail = (1.0 - LEVEL) / 2
    ends = (f_quantile(one, above, below) for one in (1.0 - tail, tail))
    low, high = (1.0 - (1.0 - alpha) * end for end in ends)
    return low, high


def variance(values: Sequence[float]) -> float:
    """Variance with n − 1 in the denominator.

    Parameters
    ----------
    values : sequence of float
        At least two
    """
    mean = math.fsum(values) / len(values)
    return math.fsum((value - mean) ** 2 for value in values) / (len(values) - 1)


def _so_many(count: int) -> str:
    """Number of candidates in words."""
    return "1 candidate" if count == 1 else f"{count or 'no'} candidates"
