"""Decision questions: answered again from what is printed, by rules of our own."""

import re
from typing import Any

import pytest
from sympy import symbols

from boomsim.papers.blueprint import make_blueprint
from boomsim.papers.family_registry import family_named
from boomsim.papers.language.first_failing_check import first_over
from boomsim.papers.language.formula_markup import LATEX, PLAIN
from boomsim.papers.language.formula_printing import in_letters
from boomsim.papers.language.question_words import in_plain
from boomsim.papers.marking.mark_question import mark_question
from boomsim.papers.paper import Question, make_paper
from boomsim.papers.paper_errors import BlueprintError
from boomsim.papers.problems.family import Family
from boomsim.papers.problems.problem import Problem
from boomsim.papers.problems.problem_making import make_problem
from boomsim.papers.problems.step_solving import evaluate

PICK, PLAN, ORDER = (
    family_named(f"decisions_{name}") for name in ("may_i_lift", "error_in_plan", "order_of_checks")
)
SEEDS = [(str(seed), ("metric", "us")[seed % 2]) for seed in range(30)]


def printed(problem: Problem, name: str) -> float:
    """A given's number as it stands in the text."""
    return float(problem.givens[name].number)


def read_chart(problem: Problem) -> float:
    """Read the printed chart from the words of the question."""
    text = in_plain(problem.pieces(problem.family.text))
    ways, outriggers, sectors, *rows = problem.table.rows
    wanted = (
        re.search(r'sections are out "([a-z ]+)"', text)[1],
        "half" if "beams are half out" in text else "full",
        "all around" if re.search("(slewed|swung) from the rear", text) else "rear",
    )
    heads = list(zip(ways[1:], outriggers[1:], sectors[1:], strict=True))
    far = max(printed(problem, "R_1"), printed(problem, "R_2"))
    row = next(one for one in rows if float(one[0].split()[0]) >= far)
    return float(row[1 + heads.index(wanted)].replace(",", "").replace("\u202f", ""))


@pytest.mark.parametrize(("seed", "system"), SEEDS)
def test_a_pick_is_decided_as_its_printed_figures_say(seed: str, system: str) -> None:
    problem = make_problem(PICK, seed=seed, system=system)
    have = {name: printed(problem, name) for name in problem.givens}
    utilisations = (
        (have["m"] + have["m_b"] + have["m_s"]) / read_chart(problem),
        have["v"] / have["v_0"],
        have["P"] / have["b"] ** 2 / have["q_0"],
    )
    failing = [
        number for number, utilisation in enumerate(utilisations, start=1) if utilisation > 1
    ]
    assert int(problem.results["D"].number) == (failing or [4])[0]
    assert float(problem.results["C"].number) == read_chart(problem)
    shown = [float(problem.results[name].number) / 100 for name in "uwg"]
    # Printed to three figures: of 1.00 to 9.99 these hide 0.005, of 0.1 to 0.999 less.
    assert shown == pytest.approx(utilisations, abs=0.0051)


def test_each_of_the_four_verdicts_comes_up() -> None:
    found = {int(make_problem(PICK, seed=s, system=u).results["D"].number) for s, u in SEEDS}
    assert found == {1, 2, 3, 4}


def answers(problem: Problem, **changed: str) -> dict[str, str]:
    question = Question(number=1, problem=problem)
    right = {one.step.name: problem.results[one.step.name].plain() for one in question.asked}
    return {one.label: (right | changed)[one.step.name] for one in question.asked}


def pick_with(verdict: int) -> Problem:
    seeds = (make_problem(PICK, seed=str(seed)) for seed in range(60))
    return next(one for one in seeds if int(one.results["D"].number) == verdict)


def marked(problem: Problem, **changed: str) -> Any:
    return mark_question(Question(number=1, problem=problem), answers(problem, **changed), sign="")


def test_every_check_has_marks_of_its_own() -> None:
    made = marked(pick_with(2))
    assert (made.marks, made.most) == (8, 8)
    assert [part.most for part in made.parts] == [1] * 8
    assert {part.label for part in made.parts} == {f"1{letter}" for letter in "abcdefgh"}


def test_who_forgets_the_rigging_loses_that_mark_and_is_judged_by_the_own_figures() -> None:
    """The candidate takes the load for gross: use and verdict follow from it, and stand."""
    problem = pick_with(1)
    load, rated = printed(problem, "m"), float(problem.results["C"].number)
    utilisation = f"{100 * load / rated:.4g} %"
    passes = load <= rated
    others = [float(problem.results[name].number) for name in "wg"]
    own = 1 if not passes else next((n for n, w in enumerate(others, 2) if w > 100), 4)
    made = marked(problem, G=f"{load} t", u=utilisation, D=f"{own}")
    assert made.marks == 7
    assert made.slips == ("forgot that hook block and slings are part of the gross load",)


def test_a_verdict_against_the_own_figures_earns_nothing() -> None:
    problem = pick_with(3)
    made = marked(problem, D="4")
    assert made.marks == 7
    assert "looked at the load alone" in made.slips


def test_a_guessed_verdict_earns_its_own_mark_and_proves_nothing() -> None:
    for verdict in (1, 2, 3, 4):
        question = Question(number=1, problem=pick_with(verdict))
        made = mark_question(question, {"1h": f"{verdict}"}, sign="")
        assert made.marks == 1


def test_a_right_verdict_needs_one_figure_only() -> None:
    made = marked(pick_with(4))
    assert made.parts[-1].note == ""
    assert made.parts[-1].given == "4"


@pytest.mark.parametrize(("seed", "system"), SEEDS)
def test_the_first_wrong_line_of_a_plan_is_the_one_that_is_asked_for(
    seed: str, system: str
) -> None:
    problem = make_problem(PLAN, seed=seed, system=system)
    have = {name: printed(problem, name) for name in problem.givens}
    texts = [row[2].split("\u00a0")[0] for row in problem.table.rows[1:]]
    told = [float(text.replace(",", "").replace("\u202f", "")) for text in texts]
    rated, gross, _, area, pressed, _ = told
    # Each line from the printed lines before it: only the one with the mistake does not follow.
    follows = (
        have["C_2"], have["m"] + have["m_b"] + have["m_s"], 100 * gross / rated,
        have["b"] ** 2, have["P"] / area, 100 * pressed / have["q_0"],
    )  # fmt: skip
    # Printed to four figures, each of at most two numbers hides half a thousandth.
    wrong = [n for n, (one, other) in enumerate(zip(told, follows, strict=True), start=1)
             if one != pytest.approx(other, rel=2e-3)]  # fmt: skip
    assert wrong == [int(problem.results["E"].number)]


def test_a_mistake_is_made_in_every_line_at_times() -> None:
    found = {int(make_problem(PLAN, seed=f"{n}").results["E"].number) for n in range(60)}
    assert found == {1, 2, 3, 4, 5, 6}


NEEDS = {
    "add hook block": ("find out what",),
    "read the rated": ("measure the radius", "find the column"),
    "compare the gross": ("add hook block", "read the rated"),
    "find the largest float": ("add hook block", "measure the radius"),
    "compare the pressure": ("find the largest float",),
}
"""What an action needs, by how each begins."""


def is_possible(order: str, said: dict[str, str]) -> bool:
    words = [said[letter] for letter in order.split(", ")]
    for place, one in enumerate(words):
        needs = next((n for start, n in NEEDS.items() if one.startswith(start)), ())
        if not all(any(w.startswith(need) for w in words[:place]) for need in needs):
            return False
    return len(set(words)) == 8


@pytest.mark.parametrize("seed", range(40))
def test_one_order_is_possible_and_the_others_are_not(seed: int) -> None:
    problem = make_problem(ORDER, seed=str(seed))
    said = dict(part.split(": ") for part in problem.words["actions"].split("; "))
    possible = [one.letter for one in problem.choices
                if is_possible(in_plain(one.text), said)]  # fmt: skip
    assert possible == [problem.right]


def test_the_first_utilisation_over_one_is_found_and_printed() -> None:
    u, w = symbols("u w")
    formula = first_over(u, w)
    assert [evaluate(formula, {"u": a, "w": b}) for a, b in ((2, 2), (1, 2), (1, 1))] == [1, 2, 3]
    assert in_letters(formula, ("u", "w"), PLAIN) == "first over 100 % of(u, w)"
    assert r"\text{first over 100 \% of}" in in_letters(formula, ("u", "w"), LATEX)


PLAN_OF = {"title": "x", "minutes": 5, "part": [{"topics": ["decisions"], "questions": 3}]}


@pytest.mark.parametrize("guided", [True, False])
def test_checks_are_asked_one_by_one_in_every_paper(guided: bool) -> None:
    paper = make_paper(make_blueprint(PLAN_OF | {"form": "mixed", "guided": guided}), variant=0)
    asked = {q.problem.family.id: len(q.asked) for q in paper.questions}
    assert asked == {PICK.id: 8, PLAN.id: 6, ORDER.id: 0}


def test_a_paper_of_choices_has_the_order_only_and_refuses_the_others_by_name() -> None:
    paper = make_paper(make_blueprint(PLAN_OF | {"form": "choice"}), variant=0)
    assert {q.problem.family.id for q in paper.questions} == {ORDER.id}
    part = [{"families": [PICK.id], "questions": 1}]
    with pytest.raises(BlueprintError, match="marked check by check"):
        make_paper(make_blueprint(PLAN_OF | {"form": "choice", "part": part}), variant=0)


def test_a_slip_that_spoils_a_figure_is_named() -> None:
    assert isinstance(PICK, Family)
    problem = pick_with(4)
    for slip in PICK.slips:
        if str(slip.step) in "CGuwpg":
            step = next(one for one in PICK.steps if one.letter == slip.step)
            truth = {name: amount.value for name, amount in problem.results.items()}
            wrong = evaluate(slip.formula, problem.values | truth)
            if wrong > 0:
                unit = step.unit("metric")
                text = f"{wrong / float(unit.factor):.6g} {unit.name}"
                assert slip.words in marked(problem, **{step.name: text}).slips
