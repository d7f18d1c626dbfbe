"""What is wrong with a family is found before a candidate finds it."""

from dataclasses import replace

import pytest
from sympy import Symbol, symbols

from boomsim.papers.numbers.dice import Chance
from boomsim.papers.paper_errors import FamilyError
from boomsim.papers.problems.family import ChoiceFamily, Family, Given, Option, Posed, Slip, Step
from boomsim.papers.problems.family_review import complaints
from boomsim.papers.problems.problem_making import TRIES, make_problem

F, a, M = symbols("F a M")

LEVER = Family(
    id="lever",
    topic="statics",
    title="A lever",
    text="A force {F=} acts {a=} from the pin. What is its moment?",
    assume="The lever is weightless.",
    givens=(
        Given(F, "force", metric="2 to 20 kN by 0.5", us="500 to 4500 lbf by 50"),
        Given(a, "arm", metric="1 to 3 m by 0.1", us="3 to 9 ft by 0.5"),
    ),
    steps=(Step(M, F * a, "moment", "Multiply.", metric="kN m", us="lbf ft"),),
    slips=(
        Slip(M, F * a / 2, "halved the arm"),
        Slip(M, 2 * F * a, "doubled the force"),
        Slip(M, 3 * F * a, "took three forces"),
    ),
    check=lambda given: given["F"] * given["a"],
)


def test_the_pattern_of_these_tests_is_without_fault() -> None:
    assert complaints(LEVER) == []
    assert make_problem(LEVER, seed="1", form="choice").right in "ABCD"


def test_givens_are_thrown_in_their_order_from_the_seed() -> None:
    # Papers handed out stay reproducible: this is the whole recipe, 37 forces and 21 arms.
    dice = Chance("spring/01/1", "lever", "metric", 0)
    force, arm = 2 + 0.5 * dice.integer(37), 1 + 0.1 * dice.integer(21)
    givens = make_problem(LEVER, seed="spring/01/1").givens
    assert float(givens["F"].number) == force
    assert float(givens["a"].number) == pytest.approx(arm, rel=1e-12)  # 0.1 is not exact in binary


def test_a_formula_that_contradicts_the_call_path_stops_the_paper() -> None:
    wrong = replace(LEVER, check=lambda given: 1.001 * given["F"] * given["a"])
    with pytest.raises(FamilyError, match="call path"):
        make_problem(wrong, seed="1")
    stated = replace(wrong, agreement=2e-3)  # a stated simplification of 0.2 % explains 0.1 %
    assert make_problem(stated, seed="1").results["M"].value > 0


def test_a_call_path_without_an_answer_stops_the_paper() -> None:
    with pytest.raises(FamilyError, match="nan"):
        make_problem(replace(LEVER, check=lambda _: float("nan")), seed="1")


@pytest.mark.parametrize("form", ["numeric", "choice"])
def test_a_slip_that_passes_for_the_right_answer_is_never_asked(form: str) -> None:
    near = replace(LEVER, slips=tuple(Slip(M, F * a * (1 + n / 500), "x") for n in (1, 2, 3)))
    with pytest.raises(FamilyError, match=f"{TRIES} draws"):
        make_problem(near, seed="1", form=form)


def test_an_answer_that_is_not_positive_is_never_printed() -> None:
    short = Symbol("b")
    family = replace(
        LEVER,
        givens=(
            *LEVER.givens,
            Given(short, "short arm", metric="1 to 3 m by 0.1", us="3 to 9 ft by 0.5"),
        ),
        steps=(Step(M, F * (a - short), "moment", "Multiply.", metric="kN m", us="lbf ft"),),
        check=lambda given: given["F"] * (given["a"] - given["b"]),
    )
    for seed in range(50):
        assert make_problem(family, seed=str(seed)).results["M"].value > 0


def test_a_demand_on_the_numbers_is_kept() -> None:
    family = replace(LEVER, where=(a > 2,))
    assert all(make_problem(family, seed=str(n)).givens["a"].value > 2 for n in range(30))


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"topic": "magic"}, "topic"),
        ({"text": "A force {F=}. What is its moment?"}, "a is neither"),
        ({"assume": "weightless"}, "full sentence"),
        ({"text": "A force {F=} acts {a} from the pin. What is its moment?"}, "does not introduce"),
        ({"slips": LEVER.slips[:2]}, "2 slips"),
        ({"slips": (*LEVER.slips, Slip(M, 4 * F * a, "doubled the force"))}, "two slips"),
        ({"slips": (*LEVER.slips, Slip(M, F, "forgot the arm"))}, "dimension"),
        ({"slips": (*LEVER.slips, Slip(Symbol("Q"), F * a, "strayed"))}, "in no step"),
        ({"steps": (Step(M, F + a, "moment", "Add.", metric="kN m", us="lbf ft"),)}, "unlike"),
        ({"steps": (Step(M, F * a, "moment", "Multiply.", metric="kN", us="lbf"),)}, "dimension"),
        (
            {"steps": (Step(M, F * a, "moment", "Multiply.", metric="kN m", us="lbf"),)},
            "differently",
        ),
        (
            {"steps": (Step(M, F * Symbol("z"), "m", "Do.", metric="kN m", us="lbf ft"),)},
            "not known by",
        ),
        ({"where": (symbols("p", positive=True) > -1,)}, "already decided"),
        ({"picture": lambda *_: "<svg/>"}, "seen"),
    ],
)
def test_an_editor_finds_the_fault(change: dict[str, object], said: str) -> None:
    assert any(said in words for words in complaints(replace(LEVER, **change)))  # type: ignore[arg-type]


def test_a_gap_in_the_wording_is_refused() -> None:
    family = replace(LEVER, text="A force {F=} acts {b=} from the pin, {a=}. What is its moment?")
    problem = make_problem(family, seed="1")
    with pytest.raises(FamilyError, match="b"):
        problem.pieces(family.text)


def test_a_choice_that_the_call_path_does_not_confirm_stops_the_paper() -> None:
    options = (Option("yes", right=True), Option("no", slip="said no"))
    family = ChoiceFamily(
        id="yes", topic="strategy", title="Yes", text="Is it {F}?", assume="It is.",
        givens=LEVER.givens, difficulty=1,
        pose=lambda *_: Posed(options=options, because="It is."), check=lambda *_: 1,
    )  # fmt: skip
    with pytest.raises(FamilyError, match="option 1"):
        make_problem(family, seed="1")
    dead = complaints(replace(family, check=lambda *_: 0), draws=100)
    assert [words.partition(": ")[2] for words in dead] == ["option 2 was never right in 100 draws"]


def test_a_slip_on_the_safe_side_has_to_say_so() -> None:
    """Half a capacity is safe: who answers so is wrong for another reason, and the slip says it."""
    safe = replace(LEVER, safe="less")
    assert any('"halved the arm" is on the safe side' in words for words in complaints(safe))
    told = (replace(LEVER.slips[0], safer=True), *LEVER.slips[1:])
    assert complaints(replace(safe, slips=told)) == []
    assert any("needs to be" in words for words in complaints(replace(LEVER, safe="up")))


def test_a_family_without_a_sensible_problem_is_complained_about() -> None:
    near = replace(LEVER, slips=tuple(Slip(M, F * a * (1 + n / 500), f"{n}") for n in (1, 2, 3)))
    assert any("no sensible numeric problem" in words for words in complaints(near))
    wrong = replace(LEVER, check=lambda given: 1.001 * given["F"] * given["a"])
    assert any("call path" in words for words in complaints(wrong))


def test_rounded_intermediate_results_must_not_hide_the_answer() -> None:
    """M - N of two near moments: three figures of each leave nothing of their difference."""
    m, n = symbols("m n")
    family = replace(
        LEVER,
        steps=(
            Step(m, F * a, "one", "Multiply.", metric="kN m", us="lbf ft"),
            Step(n, 0.99 * F * a, "other", "Multiply.", metric="kN m", us="lbf ft"),
            Step(M, m - n, "difference", "Subtract.", metric="kN m", us="lbf ft"),
        ),
        check=lambda given: 0.01 * given["F"] * given["a"],
    )
    assert any("no sensible" in words for words in complaints(family))
