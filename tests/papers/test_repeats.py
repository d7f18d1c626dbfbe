"""A paper asks nothing twice."""

import pytest

from boomsim.papers.blueprint import make_blueprint
from boomsim.papers.duplicate_questions import TRIES, are_alike, unlike_problem
from boomsim.papers.family_registry import family_named
from boomsim.papers.language.question_words import in_plain
from boomsim.papers.paper import Paper, make_paper
from boomsim.papers.problems.problem_making import make_problem


def paper_of(family: str, *, questions: int, seed: str) -> Paper:
    part = {"families": [family], "questions": questions}
    plan = {"title": "One family", "minutes": 60, "form": "mixed", "seed": seed, "part": [part]}
    return make_paper(make_blueprint(plan), variant=0)


@pytest.mark.parametrize("seed", "abcdef")
def test_no_cell_of_a_chart_is_read_twice(seed: str) -> None:
    # The chart has some twenty cells; of six questions two would often share one by chance.
    paper = paper_of("charts_gross_to_net", questions=6, seed=seed)
    cells = [question.problem.shown("G") for question in paper.questions]
    assert len(set(cells)) == 6


@pytest.mark.parametrize("seed", "abcdef")
def test_no_question_answered_in_words_is_asked_twice(seed: str) -> None:
    paper = paper_of("charts_what_governs", questions=6, seed=seed)
    problems = [question.problem for question in paper.questions]
    texts = [in_plain(one.pieces(one.family.text)) for one in problems]
    assert len(set(texts)) == 6


def test_a_family_that_has_nothing_else_repeats_itself_in_the_end() -> None:
    family = family_named("charts_what_governs")
    every = [make_problem(family, seed=str(seed)) for seed in range(400)]
    drawn = unlike_problem(family, seed="x", system="metric", form="choice", earlier=every)
    assert drawn.seed == f"x/{TRIES - 1}"
    assert any(are_alike(drawn, one) for one in every)


def test_the_first_problem_keeps_the_seed_of_the_paper() -> None:
    paper = paper_of("geometry_radius", questions=2, seed="spring")
    assert [one.problem.seed for one in paper.questions] == ["spring/01/1", "spring/01/2"]
