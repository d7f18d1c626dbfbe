"""The difficulty of a problem, measured from its formulas: counted by hand."""

from collections import Counter

import pytest
from sympy import Expr, Max, Rational, cos, pi, sqrt, symbols

from boomsim.papers.family_registry import families
from boomsim.papers.problems.difficulty import effort_of, points_of

F, L, M, R, X, a, c, d, h, t, theta = symbols("F L M R X a c d h t theta")


@pytest.mark.parametrize(
    ("formulas", "points", "effort"),
    [
        # One step, one key: 1 point.
        ((F * a,), 1, 1),
        # Three steps, three keys (× / +): 3 + (3 - 1)//3 = 3.
        ((F * a, M / c, F + R), 3, 2),
        # cos is a key, × and − are two more: 2 + (3 - 1)//3 + 1 for the angle = 3.
        ((L * cos(theta), X - d), 3, 2),
        # d − X/h: a minus sign is no key of its own: − and /.
        ((d - X / h,), 1, 1),
        # Four + or − and one /: 1 + (5 - 1)//3 = 2.
        (((a + c + d - h - X) / t,), 2, 1),
        # Four of × and /, and a power: 1 + (4 - 1)//3 + 1 = 3.
        ((a * h**3 * pi / 12 * t,), 3, 2),
        # Root of a sum, one of them squared: + ... 1 + 0 + 1 = 2.
        ((sqrt(a**2 + c),), 2, 1),
        # To take the larger of two is a key: Max × + +: 1 + (4 - 1)//3 = 2.
        ((Max(a, c) * d + h + t,), 2, 1),
        ((a * d + h + t,), 1, 1),
        # Eight steps are more than the scale has.
        (tuple(F * a for _ in range(8)), 8 + 7 // 3, 5),
    ],
)
def test_points_are_those_counted_by_hand(
    formulas: tuple[Expr, ...], points: int, effort: int
) -> None:
    assert points_of(formulas) == points
    assert effort_of(formulas) == effort


def test_a_number_written_into_a_formula_is_a_key_like_a_letter() -> None:
    assert points_of((F * a / 2,)) == points_of((F * a / c,))
    assert points_of((Rational(1, 2) * F * a * c,)) == points_of((F * a * c * d,))


def test_the_scale_is_used_from_end_to_end() -> None:
    counts = Counter(family.difficulty for family in families().values())
    assert set(counts) == {1, 2, 3, 4, 5}
    assert max(counts.values()) < sum(counts.values()) / 2
