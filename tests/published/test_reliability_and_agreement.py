"""Alpha with Feldt's interval, and Cohen's kappa, against examples that others have worked.

Each test names its source and how it was had.
"""

import numpy as np
import pytest
from scipy.stats import f

from boomsim.papers.board.f_quantiles import f_quantile
from boomsim.papers.board.mark_reliability import Reliability, feldt, reliability
from boomsim.papers.board.marker_agreement import kappa

FIFTEEN = """
3 5 7 2 6 1 4 2 6 5 4 4 5 6 4
2 4 3 4 5 2 3 4 5 4 3 2 5 5 3
4 6 5 3 6 3 5 4 5 6 5 3 6 5 5
1 3 5 3 5 4 3 3 5 4 2 2 2 4 5
4 5 6 2 4 2 5 7 1 3 5 5 3 2 3
5 1 4 2 4 5 2 2 6 5 3 3 3 2 1
1 2 3 2 4 2 1 2 5 3 2 4 2 1 3
4 5 3 6 6 3 2 4 2 1 3 2 4 4 2
3 5 6 6 7 5 4 6 3 7 4 3 4 6 3
2 5 5 3 5 2 3 5 2 2 1 4 5 5 4
"""
"""Ten questions by line, fifteen people by column."""


def test_alpha_of_ten_questions_and_fifteen_people_is_as_a_statistics_library_prints_it() -> None:
    """The library's handbook prints alpha 0.59172 and the interval 0.195 to 0.84.

    Its data were read; the two figures are from memory, printed to so many figures.

    Source: Data set and example of the handbook of the Python library pingouin, after
    real-statistics.com. Status: from memory.
    """
    marks = np.array([line.split() for line in FIFTEEN.split("\n") if line], dtype=float).T
    found = reliability(marks.tolist())
    assert isinstance(found, Reliability)
    assert found.alpha == pytest.approx(0.59172, abs=5e-6)
    assert (found.low, found.high) == pytest.approx((0.195, 0.840), abs=5e-4)


def test_alpha_of_four_people_and_three_questions_is_as_by_hand() -> None:
    """Rows 1 1 1, 1 1 0, 1 0 0, 0 0 0: a scale on which each who has a harder one has the easier.

    Variances with n - 1: 1/4, 1/3, 1/4, in sum 5/6; totals 3 2 1 0 have 5/3.
    Alpha = 3/2 (1 - (5/6)/(5/3)) = 3/2 · 1/2 = 3/4. Exact but for the last bits of a float.

    Source: Cronbach (1951), worked by hand. Status: worked.
    """
    found = reliability([[1, 1, 1], [1, 1, 0], [1, 0, 0], [0, 0, 0]])
    assert isinstance(found, Reliability)
    assert found.alpha == pytest.approx(0.75, rel=1e-12)
    # Standard error of a total: sqrt(5/3) sqrt(1 - 3/4).
    assert found.error == pytest.approx((5 / 3) ** 0.5 / 2, rel=1e-12)


@pytest.mark.parametrize(
    ("share", "above", "below", "printed"),
    [(0.95, 4, 10, 3.48), (0.95, 1, 10, 4.96), (0.975, 10, 20, 2.77), (0.95, 10, 10, 2.98)],
)
def test_quantiles_are_those_of_printed_f_tables(
    share: float, above: int, below: int, printed: float
) -> None:
    """Printed to two decimals.

    Source: F tables of statistics textbooks. Status: from memory.
    """
    assert f_quantile(share, above, below) == pytest.approx(printed, abs=0.005)


def test_quantiles_are_those_of_a_statistics_library() -> None:
    """Over classes of 2 to 201 and papers of 2 to 60 questions; both work to some ten figures.

    Source: scipy.stats.f. Status: reference program.
    """
    for people in (2, 4, 15, 201):
        for questions in (2, 10, 60):
            above, below = people - 1, (people - 1) * (questions - 1)
            for share in (0.025, 0.5, 0.975):
                found = f_quantile(share, above, below)
                assert found == pytest.approx(f.ppf(share, above, below), rel=1e-9)


@pytest.mark.slow
def test_the_interval_holds_the_true_reliability_95_times_of_100() -> None:
    """Marks are ability plus luck, each of variance 1, in 8 questions: 8/(8 + 1) is true.

    Of 2000 classes of 20, 95 % are 1900 with a standard error of sqrt(2000·0.95·0.05) = 9.7;
    four of these either way, and the dice are always the same.

    Source: Feldt (1965), of which this is the claim. Status: worked.
    """
    dice = np.random.default_rng(1965)
    held = 0
    for _ in range(2000):
        marks = dice.standard_normal((20, 1)) + dice.standard_normal((20, 8))
        own = marks.var(axis=0, ddof=1).sum() / marks.sum(axis=1).var(ddof=1)
        low, high = feldt(8 / 7 * (1 - own), candidates=20, questions=8)
        held += low <= 8 / 9 <= high
    assert held == pytest.approx(1900, abs=39)


def test_kappa_of_fifty_proposals_is_two_fifths() -> None:
    """Two readers of 50 grant proposals: both yes 20, both no 15, apart 5 and 10.

    Agreed 35/50 = 0.7; by chance 0.5·0.6 + 0.5·0.4 = 0.5; (0.7 - 0.5)/(1 - 0.5) = 0.4. Exact.

    Source: A common textbook example of Cohen's kappa. Status: from memory.
    """
    pairs = [("yes", "yes")] * 20 + [("yes", "no")] * 5 + [("no", "yes")] * 10
    assert kappa(pairs + [("no", "no")] * 15) == pytest.approx(0.4, rel=1e-12)


@pytest.mark.parametrize(
    ("apart", "printed"), [((45, 15, 25, 15), 0.1304), ((25, 35, 5, 35), 0.2593)]
)
def test_equal_agreement_may_be_worth_less(apart: tuple[int, ...], printed: float) -> None:
    """Both tables agree in 60 of 100; by chance 0.54 and 0.46 would. Printed to four decimals.

    (0.60 - 0.54)/0.46 = 0.1304 and (0.60 - 0.46)/0.54 = 0.2593.

    Source: A common textbook example of Cohen's kappa. Status: from memory.
    """
    kinds = (("yes", "yes"), ("yes", "no"), ("no", "yes"), ("no", "no"))
    pairs = [pair for pair, count in zip(kinds, apart, strict=True) for _ in range(count)]
    assert kappa(pairs) == pytest.approx(printed, abs=5e-5)
