"""Choices give nothing away: neither by their size nor by an option that never is right."""

from collections import Counter
from functools import cache

import pytest

from boomsim.papers.family_registry import families
from boomsim.papers.language.question_words import in_plain
from boomsim.papers.problems.family import Family
from boomsim.papers.problems.problem_making import make_problem

NUMERIC = [one for one in families().values() if isinstance(one, Family) and not one.by_check]
SEEDS = 120


@cache
def best_guess(family: Family) -> float:
    """Share of problems that who always picks the same rank by size has right."""
    ranks: Counter[int] = Counter()
    for seed in range(SEEDS):
        problem = make_problem(family, seed=f"{seed}", form="choice")
        sizes = {one.letter: number(in_plain(one.text)) for one in problem.choices}
        ranks[sorted(sizes, key=lambda letter: sizes[letter]).index(problem.right)] += 1
    return max(ranks.values()) / SEEDS


def number(text: str) -> float:
    return float(text.split("\u00a0")[0].replace("\u202f", "").rstrip("°"))


@pytest.mark.slow
@pytest.mark.parametrize("family", NUMERIC, ids=lambda one: one.id)
def test_nobody_guesses_the_answer_of_a_family_by_its_size(family: Family) -> None:
    # Of two ranks that are thrown evenly one comes up in 61 of 100 with odds of a few percent.
    assert best_guess(family) < 0.62


@pytest.mark.slow
def test_a_guess_by_size_is_hardly_better_than_one_in_three() -> None:
    # Blind chance is one in four; slips that lie on one side leave three ranks.
    assert sum(map(best_guess, NUMERIC)) / len(NUMERIC) < 0.42
