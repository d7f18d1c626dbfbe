"""Who rounds as the paper asks loses nothing; who is a step of the chart off, does."""

import itertools

import pytest

from boomsim.papers.family_registry import families, family_named
from boomsim.papers.marking.mark_question import mark_question
from boomsim.papers.numbers.amounts import round_figures
from boomsim.papers.paper import Question
from boomsim.papers.problems.family import Family, Step
from boomsim.papers.problems.problem import Problem
from boomsim.papers.problems.problem_making import make_problem
from boomsim.papers.problems.step_solving import evaluate
from boomsim.papers.problems.tolerance_bands import asked_figures, asked_of

NUMERIC = [one for one in families().values() if isinstance(one, Family)]
ALONE = [one for one in NUMERIC if not one.by_check]
"""Those of which the answer alone may be asked for."""
SEEDS = 50


def named(family: Family) -> str:
    return family.id


@pytest.fixture(scope="module")
def drawn(request: pytest.FixtureRequest) -> list[tuple[int, Problem]]:
    """Problems of one family in both unit systems, with their seeds."""
    return [
        (seed, make_problem(request.param, seed=f"{seed}", system=system))
        for seed, system in itertools.product(range(SEEDS), ("metric", "us"))
    ]


def rounded(value: float, step: Step, *, system: str, figures: int) -> str:
    """A value as a candidate writes it, in the unit of the answer line."""
    number = value / float(step.unit(system).factor)
    if by := step.by(system):
        return f"{round(number / float(by)) * float(by):.4f}"
    return f"{round_figures(number, figures=figures):f}"


@pytest.mark.slow
@pytest.mark.parametrize("drawn", NUMERIC, ids=named, indirect=True)
def test_answers_with_the_figures_that_are_asked_for_earn_all_marks(
    drawn: list[tuple[int, Problem]],
) -> None:
    for _, problem in drawn:
        question = Question(number=1, problem=problem)
        answers = {
            one.label: rounded(
                problem.results[one.step.name].value, one.step, system=problem.system,
                figures=asked_figures(one.step),
            )
            for one in question.asked
        }  # fmt: skip
        made = mark_question(question, answers, sign=".")
        assert [part.status for part in made.parts] == ["right"] * len(made.parts), answers
        assert made.marks == made.most


@pytest.mark.slow
@pytest.mark.parametrize("drawn", ALONE, ids=named, indirect=True)
def test_intermediate_results_rounded_to_three_figures_lose_nothing(
    drawn: list[tuple[int, Problem]],
) -> None:
    """Where the answer alone is asked for, nobody is told to how many figures to work."""
    for seed, problem in drawn:
        family, system = problem.family, problem.system
        assert isinstance(family, Family)
        values, text = dict(problem.values), ""
        for step in family.steps:
            exact = evaluate(step.formula, values)
            figures = asked_figures(step) if step is family.steps[-1] else 3
            text = rounded(exact, step, system=system, figures=figures)
            kept = exact if step.is_reading else float(text) * float(step.unit(system).factor)
            values[step.name] = kept
        question = Question(number=1, problem=problem, guided=False)
        assert mark_question(question, {"1": text}, sign=".").marks == question.marks, (seed, text)


@pytest.mark.parametrize("name", ["charts_reading", "charts_gross_to_net"])
@pytest.mark.parametrize("way", [-1, 1])
def test_a_figure_one_step_of_the_chart_away_is_wrong(name: str, way: int) -> None:
    family = family_named(name)
    assert isinstance(family, Family)
    for seed in range(SEEDS):
        problem = make_problem(family, seed=f"{seed}")
        question = Question(number=1, problem=problem, guided=False)
        last = family.steps[-1]
        off = problem.results[last.name].value + way * 50.0  # the chart's step is 0.05 t
        answer = f"{off / 1000:.2f} t"
        assert mark_question(question, {"1": answer}, sign=".").parts[-1].status == "wrong"


def test_a_figure_of_a_chart_that_was_rounded_to_three_figures_costs_one_mark() -> None:
    # 18.35 t written as 18.4 t would be a rated load rounded up.
    family = family_named("charts_gross_to_net")
    problems = (make_problem(family, seed=f"{seed}") for seed in range(400))
    problem = next(one for one in problems if one.results["N"].number > 10 and
                   f"{one.results['N'].number}"[-1] == "5")  # fmt: skip
    question = Question(number=1, problem=problem, guided=False)
    whole = mark_question(question, {"1": f"{problem.results['N'].value / 1000:.2f}"}, sign=".")
    marked = mark_question(question, {"1": f"{problem.results['N'].value / 1000:.1f}"}, sign=".")
    assert (marked.parts[-1].status, marked.parts[-1].note) == (
        "rounded too far",
        "give it to 0.05 t",
    )
    assert (whole.marks, marked.marks) == (whole.most, whole.most - 1)


@pytest.mark.parametrize("name", ["stability_rated_by_share", "stability_rated_by_test_load"])
def test_a_rated_load_is_printed_rounded_down_and_accepted_so(name: str) -> None:
    for seed in range(SEEDS):
        problem = make_problem(family_named(name), seed=f"{seed}")
        rated = problem.results["P"]
        assert float(rated.number) <= rated.value / float(rated.unit.factor) * (1 + 1e-9)
        label = next(one.label for one in Question(number=1, problem=problem).asked
                     if one.step.name == "P")  # fmt: skip
        down = f"{round_figures(float(rated.number), figures=3, down=True):f}"
        made = mark_question(Question(number=1, problem=problem), {label: down}, sign=".")
        assert next(one for one in made.parts if one.label == label).status == "right"


def test_an_answer_line_says_what_is_not_usual() -> None:
    steps = {name: family_named(name).steps[-1] for name in (  # type: ignore[union-attr]
        "charts_reading", "deflection_loaded_radius", "statics_pad_force")}  # fmt: skip
    said = {name: asked_of(step, system="us") for name, step in steps.items()}
    assert said == {
        "charts_reading": "to 100 lb",
        "deflection_loaded_radius": "to 4 figures",
        "statics_pad_force": "",
    }
