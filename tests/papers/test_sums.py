"""Questions that add up: counted by hand, and drawn without favour."""

from collections import Counter
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boomsim.papers.exact_sums import draw, reachable
from boomsim.papers.numbers.dice import Chance

WORTHS = [(1, 1), (1, 1), (2, 1), (3, 2), (4, 2)]


def test_ways_are_those_counted_by_hand() -> None:
    ways = reachable(WORTHS, (2, 6, 4), times=1)
    # Two questions of 5 marks and difficulty 3: either of the ones with the four, or two and three.
    assert ways[2, 5, 3] == 3
    assert ways[2, 2, 2] == 1  # the two ones
    assert ways[2, 3, 2] == 2  # either of the ones with the two
    assert ways[2, 6, 3] == 1  # two and four
    assert ways[2, 6, 4] == 0  # three and four are seven
    assert ways[0, 0, 0] == 1
    assert ways[1].sum() == len(WORTHS)
    assert reachable(WORTHS, (2, 6, 4), times=2)[2, 6, 4] == 1  # the three twice


def test_every_way_is_drawn_equally_often() -> None:
    drawn = Counter(
        tuple(sorted(draw(WORTHS, (2, 5, 3), Chance("fair", seed), times=1)))
        for seed in range(3000)
    )
    assert set(drawn) == {(0, 4), (1, 4), (2, 3)}
    # Three ways, 3000 draws: 1000 each, and 130 is five standard deviations of sqrt(3000*2/9).
    assert all(abs(count - 1000) < 130 for count in drawn.values())


@given(
    worths=st.lists(st.tuples(st.integers(1, 5), st.integers(1, 5)), min_size=2, max_size=9),
    count=st.integers(1, 4),
    seed=st.integers(0, 99),
)
def test_counts_agree_with_trying_everything_and_draws_add_up(
    worths: list[tuple[int, int]], count: int, seed: int
) -> None:
    count = min(count, len(worths))
    sums = Counter(
        (count, sum(worths[k][0] for k in some), sum(worths[k][1] for k in some))
        for some in combinations(range(len(worths)), count)
    )
    most = (count, 5 * count, 5 * count)
    ways = reachable(worths, most, times=1)
    assert {wanted: ways[wanted] for wanted in sums} == sums
    assert ways[count].sum() == sum(sums.values())
    wanted = sorted(sums)[seed % len(sums)]
    chosen = draw(worths, wanted, Chance("draws", seed), times=1)
    assert len(set(chosen)) == len(chosen) == count
    assert (sum(worths[k][0] for k in chosen), sum(worths[k][1] for k in chosen)) == wanted[1:]


@pytest.mark.parametrize("seed", range(5))
def test_the_same_question_comes_again_only_where_it_may(seed: int) -> None:
    chosen = draw([(1, 1), (2, 2)], (4, 6, 6), Chance("again", seed), times=2)
    assert sorted(chosen) == [0, 0, 1, 1]
