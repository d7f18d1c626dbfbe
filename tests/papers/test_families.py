"""Every family, over many seeds: sensible, unambiguous, and confirmed by the call path."""

import itertools

import pytest

from boomsim.papers.family_registry import families, find_families
from boomsim.papers.paper import Question
from boomsim.papers.problems.choice_mixing import CHOICES
from boomsim.papers.problems.family import AnyFamily, ChoiceFamily, Family
from boomsim.papers.problems.family_review import complaints
from boomsim.papers.problems.problem import Problem
from boomsim.papers.problems.problem_making import make_problem
from boomsim.papers.sketches.sketch_svg import Sketch

EVERY = list(families().values())


def named(family: AnyFamily) -> str:
    return family.id


@pytest.mark.slow
@pytest.mark.parametrize("family", EVERY, ids=named)
def test_an_editor_has_no_complaints(family: AnyFamily, request) -> None:
    """Nor about problems drawn from it: a hundred of each, and two thousand with -m long.

    No known slip passes for the right answer, none leads to the safe side of it unless it says so,
    no choice lies in the band of another, and rounding hides no more than a few percent.
    """
    assert complaints(family, draws=request.config.getoption("--seeds")) == []


@pytest.mark.slow
@pytest.mark.long
@pytest.mark.parametrize("family", EVERY, ids=named)
def test_an_editor_has_no_complaints_about_two_thousand_problems(family: AnyFamily) -> None:
    assert complaints(family, draws=2000) == []


@pytest.mark.slow
@pytest.mark.parametrize("family", EVERY, ids=named)
def test_problems_are_sensible_over_many_seeds(family: AnyFamily) -> None:
    for seed in range(60):
        look_at(family, seed)


def look_at(family: AnyFamily, seed: int) -> None:
    """Draw one problem; the call path is asked in `make_problem` and stops it on disagreement."""
    system, form = [*itertools.product(("metric", "us"), ("numeric", "choice"))][seed % 4]
    problem = make_problem(family, seed=str(seed), system=system, form=form)
    assert all(amount.value > 0 for amount in problem.results.values())
    assert all(amount.number > 0 for amount in problem.results.values())
    words = "".join(piece.letter or piece.text for piece in problem.pieces(family.text))
    assert not set("{}") & set(words)
    assert "  " not in words
    look_at_choices(problem)


def look_at_choices(problem: Problem) -> None:
    if problem.form == "choice":
        slips = [choice.slip for choice in problem.choices if not choice.right]
        assert all(slips)
        assert len(set(slips)) == len(slips)
    if problem.form == "choice" and isinstance(problem.family, Family):
        assert len(problem.choices) == CHOICES


@pytest.mark.slow
@pytest.mark.parametrize(
    "family", [one for one in EVERY if isinstance(one, Family) and not one.by_check], ids=named
)
def test_the_right_choice_stands_anywhere(family: Family) -> None:
    places = [make_problem(family, seed=str(n), form="choice").right for n in range(80)]
    assert set(places) == set("ABCD")


@pytest.mark.parametrize("family", [one for one in EVERY if one.picture], ids=named)
def test_pictures_stay_inside_their_frame(family: AnyFamily) -> None:
    problem = make_problem(family, seed="7")
    assert problem.picture.startswith("<svg")
    assert problem.picture == make_problem(family, seed="7").picture
    assert "nan" not in problem.picture


@pytest.mark.slow
@pytest.mark.parametrize("family", EVERY, ids=named)
def test_slips_that_are_printed_are_never_the_right_answer(family: AnyFamily) -> None:
    for seed in range(20):
        problem = make_problem(family, seed=str(seed))
        question = Question(number=1, problem=problem)
        if isinstance(family, ChoiceFamily):
            assert question.slips() == {}
        else:
            assert problem.shown(family.steps[-1].name) not in question.slips()


def test_families_are_found_by_topic_and_by_words() -> None:
    assert find_families("statics_pad_force") == find_families("Pad forces of a section")
    assert find_families("pad force")[0].id == "statics_pad_force"
    assert {one.topic for one in find_families("geometry")} == {"geometry"}


def test_an_unknown_topic_names_the_known_ones() -> None:
    with pytest.raises(ValueError, match="statics"):
        find_families("thermodynamics")


def test_a_sketch_is_upside_down_on_paper() -> None:
    # y counts upwards for the author and downwards in SVG: 10 up in a height of 30 is 20 down.
    assert 'y1="20"' in Sketch(50, height=30).line((0, 10), (5, 10)).svg()
