"""A marking study: candidates with known slips, and the marks an examiner gives them by hand.

The question: F = 5.30 kN acts a = 3.30 m beyond the mouth, overlap c = 1.70 m. By hand:

    (a) M   = F a     = 5.30 * 3.30   = 17.49  -> 17.5 kN m   [1]
    (b) R_r = M / c   = 17.49 / 1.70  = 10.288 -> 10.3 kN     [1]
    (c) R_f = F + R_r = 5.30 + 10.288 = 15.588 -> 15.6 kN     [1]

Every part is right within 1 %. Marks and verdicts below were decided before the program was asked.
"""

import pytest

from boomsim.papers.family_registry import families, family_named
from boomsim.papers.marking.mark_question import QuestionMark, mark_question
from boomsim.papers.marking_policy import Policy
from boomsim.papers.paper import Question
from boomsim.papers.problems.family import AnyFamily, Family
from boomsim.papers.problems.problem_making import make_problem, problem_with

PADS = family_named("statics_pad_force")
assert isinstance(PADS, Family)
POSED = problem_with(PADS, givens={"F": "5.30 kN", "a": "3.30 m", "c": "1.70 m"})
QUESTION = Question(number=1, problem=POSED)
FINAL_ONLY = Question(number=1, problem=POSED, guided=False)


def marked(a: str = "", b: str = "", c: str = "") -> QuestionMark:
    return mark_question(QUESTION, {"1a": a, "1b": b, "1c": c}, sign="")


@pytest.mark.parametrize(
    ("answers", "marks", "verdicts"),
    [
        pytest.param(("17.5 kN m", "10.3 kN", "15.6 kN"), (1, 1, 1),
                     ("right", "right", "right"), id="everything right"),
        pytest.param(("17.5", "10.3", "15.6"), (1, 1, 1),
                     ("right", "right", "right"), id="without units, as the answer line has them"),
        pytest.param(("17490 N m", "10288 N", "15588 N"), (1, 1, 1),
                     ("right", "right", "right"), id="in newtons"),
        pytest.param(("", "", "15.6 kN"), (1, 1, 1),
                     ("credited", "credited", "right"), id="the right answer proves the way"),
        # 17.4 and 15.5 lie within 1 % of 17.49 and 15.588; 10.2 too (0.9 %).
        pytest.param(("17.4", "10.2", "15.5"), (1, 1, 1),
                     ("right", "right", "right"), id="rounded on the way"),
        # Lever arm from the tail: 5.30 * 5.00 = 26.5; then 26.5/1.70 = 15.59; 5.30 + 15.59 = 20.9.
        pytest.param(("26.5", "15.6", "20.9"), (0, 1, 1),
                     ("wrong", "carried forward", "carried forward"), id="one error, paid once"),
        # The same error, the first part left blank: the later values show it all the same.
        pytest.param(("", "15.6", "20.9"), (0, 1, 1),
                     ("blank", "carried forward", "carried forward"), id="a slip in a blank"),
        pytest.param(("", "", "20.9"), (0, 1, 1),
                     ("blank", "credited", "carried forward"), id="only its end"),
        # Forgot the force itself at the end.
        pytest.param(("17.5", "10.3", "10.3"), (1, 1, 0),
                     ("right", "right", "wrong"), id="slip in the last step"),
        pytest.param(("", "", "10.3"), (1, 1, 0),
                     ("credited", "credited", "wrong"), id="its way left out"),
        # A decimal point: 175 instead of 17.5; 175/1.70 = 103; 103 + 5.30 = 108.
        pytest.param(("175", "103", "108"), (0, 1, 1),
                     ("wrong", "carried forward", "carried forward"), id="a lost decimal point"),
        # 16 is 15.588 to two figures: right as far as it goes, and one mark less than full.
        pytest.param(("17.5", "10.3", "16"), (1, 1, 0),
                     ("right", "right", "rounded too far"), id="rounded too far"),
        # Two errors: M from the tail (26.5), then divided by the overhang: 26.5/3.30 = 8.03.
        pytest.param(("26.5", "8.03", "13.3"), (0, 0, 1),
                     ("wrong", "wrong", "carried forward"), id="two errors, each paid for once"),
        # A right second part after a wrong first one is right, however it came about.
        pytest.param(("26.5", "10.3", "15.6"), (0, 1, 1),
                     ("wrong", "right", "right"), id="right after wrong"),
        pytest.param(("12.3", "45.6", "78.9"), (0, 0, 0),
                     ("wrong", "wrong", "wrong"), id="guesses"),
        pytest.param(("", "", ""), (0, 0, 0), ("blank", "blank", "blank"), id="nothing"),
        # A moment in kN is no moment. It is refused; the rest is marked, and not credited for it.
        pytest.param(("17.5 kN", "10.3 kN", "15.6 kN"), (0, 1, 1),
                     ("refused", "right", "right"), id="a unit of something else"),
        # From a value without sense nothing is carried forward: 5.30 - 3 is not 5.30 + 10.3.
        pytest.param(("17.5", "-3", "2.3"), (1, 0, 0),
                     ("right", "wrong", "wrong"), id="a negative force"),
        pytest.param(("0", "0", "5.3"), (0, 0, 0),
                     ("wrong", "wrong", "wrong"), id="zeros earn nothing later"),
    ],
)  # fmt: skip
def test_marks_are_those_given_by_hand(
    answers: tuple[str, str, str], marks: tuple[int, ...], verdicts: tuple[str, ...]
) -> None:
    made = marked(*answers)
    assert tuple(part.status for part in made.parts) == verdicts
    assert tuple(part.marks for part in made.parts) == marks
    assert made.marks == sum(marks)


@pytest.mark.parametrize(
    ("answers", "slip"),
    [
        (("26.5", "", ""), "took the lever arm from the tail instead of the mouth"),
        (("", "", "20.9"), "took the lever arm from the tail instead of the mouth"),
        (("17.5", "10.3", "10.3"), "forgot that the front pad also carries the force itself"),
        (("17.5", "5.30", ""), "divided by the overhang instead of the overlap"),
        (("17.5", "3.5", ""), "divided by the whole length instead of the overlap"),
        (("17.5", "10.3", "4.99"), "took the force off instead of adding it"),
        (("175", "", ""), "slipped by one decimal place"),
        (("17490", "", ""), "took a unit a thousand times too small or too large"),
        (("-17.5", "", ""), "lost the sign"),
    ],
)
def test_the_likely_misconception_is_named(answers: tuple[str, str, str], slip: str) -> None:
    assert marked(*answers).slips == (slip,)


def test_a_right_answer_shows_no_misconception() -> None:
    assert marked("17.5", "10.3", "15.6").slips == ()


@pytest.mark.parametrize(
    ("answer", "marks"),
    [("15.6 kN", 3), ("10.3 kN", 2), ("20.9 kN", 2), ("77 kN", 0), ("", 0)],
)
def test_method_marks_when_only_the_answer_is_asked_for(answer: str, marks: int) -> None:
    # All three marks for the answer; two if it shows one known slip; none for anything else.
    made = mark_question(FINAL_ONLY, {"1": answer}, sign="")
    assert (made.marks, made.most) == (marks, 3)


@pytest.mark.parametrize(
    ("answer", "policy", "marks"),
    [
        # By hand: the lever arm from the tail alone is wrong; two of three steps are right.
        ("20.9 kN", {}, 2), ("20.9 kN", {"method": "none"}, 0),
        ("10.3 kN", {}, 2), ("10.3 kN", {"method": "none"}, 0),
        # 15 588 on a line for kN: newtons, everything else is right. 156: a decimal point.
        ("15588", {}, 2), ("15588", {"factor": "all"}, 0), ("156", {}, 2),
        # Twice the force is no unit.
        ("31.2", {}, 0),
        # 16 is 15.588 to two figures.
        ("16", {}, 2), ("16", {"rounding": "free"}, 3), ("16", {"rounding": "all"}, 0),
        ("15.6 kN", {"method": "none", "factor": "all", "rounding": "all"}, 3),
    ],
)  # fmt: skip
def test_a_policy_says_what_an_answer_alone_is_worth(
    answer: str, policy: dict[str, str], marks: int
) -> None:
    chosen = Policy(**policy)  # type: ignore[arg-type]
    assert mark_question(FINAL_ONLY, {"1": answer}, sign="", policy=chosen).marks == marks


def test_a_wrong_unit_is_paid_for_once_in_a_question() -> None:
    # Newtons on all three lines: 17 490, 10 288, 15 588. The last one does not follow from the
    # second, for its first summand is in kN: but the candidate has paid for the unit.
    answers = {"1a": "17490", "1b": "10288", "1c": "15588"}
    once = mark_question(QUESTION, answers, sign="")
    assert [part.marks for part in once.parts] == [0, 1, 1]
    every = mark_question(QUESTION, answers, sign="", policy=Policy(factor="all"))
    assert [part.marks for part in every.parts] == [0, 1, 0]


def test_a_strict_method_takes_nothing_from_parts_that_are_asked_for() -> None:
    answers = {"1a": "26.5", "1b": "15.6", "1c": "20.9"}
    strict = mark_question(QUESTION, answers, sign="", policy=Policy(method="none"))
    assert [part.marks for part in strict.parts] == [0, 1, 1]


def test_too_few_figures_are_mentioned_and_cost_nothing_inside_the_band() -> None:
    part = mark_question(QUESTION, {"1b": "10.3", "1a": "17.5", "1c": "15.60"}, sign="").parts
    assert [one.note for one in part] == ["", "", ""]
    short = problem_with(PADS, givens={"F": "4.0 kN", "a": "3.0 m", "c": "2.0 m"})  # M = 12 exactly
    made = mark_question(Question(number=1, problem=short), {"1a": "12"}, sign="")
    assert (made.parts[0].marks, made.parts[0].note) == (1, "give 3 significant figures")


def test_a_candidate_is_told_what_would_have_been_right() -> None:
    made = marked("26.5", "8.03", "")
    assert made.parts[0].answer == "17.5\u00a0kN\u00a0m"
    # 26.5/1.70 = 15.588: the value that the candidate's own moment leads to.
    assert made.parts[1].answer == "10.3\u00a0kN; from your earlier value 15.6\u00a0kN"


def choice(letter: str) -> QuestionMark:
    problem = problem_with(
        PADS, givens={"F": "5.30 kN", "a": "3.30 m", "c": "1.70 m"}, form="choice"
    )
    return mark_question(Question(number=4, problem=problem), {"4": letter}, sign="")


def test_a_choice_earns_half_of_the_steps_rounded_up_or_nothing() -> None:
    made = {letter: choice(letter) for letter in "ABCD"}
    assert sorted(one.marks for one in made.values()) == [0, 0, 0, 2]  # 3/2 rounded up
    right = next(letter for letter, one in made.items() if one.marks)
    assert choice(f" ({right.lower()}) ").marks == 2
    assert all(one.slips for letter, one in made.items() if letter != right)


@pytest.mark.parametrize("letter", ["E", "AB", "1", "=A"])
def test_a_letter_that_was_not_offered_is_refused(letter: str) -> None:
    assert choice(letter).parts[0].status == "refused"


@pytest.mark.parametrize(
    "family",
    [one for one in families().values() if not (isinstance(one, Family) and one.by_check)],
    ids=lambda one: one.id,
)
def test_a_right_letter_shows_no_misconception_in_any_family(family: AnyFamily) -> None:
    for seed in "abc":
        problem = make_problem(family, seed=seed, form="choice")
        made = mark_question(Question(number=1, problem=problem), {"1": problem.right}, sign="")
        assert made.marks == made.most > 0
        assert made.slips == ()
        wrong = [one for one in problem.choices if not one.right]
        assert len(wrong) >= 2
        assert all(one.slip for one in wrong)
