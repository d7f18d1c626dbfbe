"""Guesses set beside what the model says."""

import pytest

from boomsim.lab.lessons import lesson
from boomsim.lab.lessons.contents import LESSONS
from boomsim.lab.lessons.parts import NOTHING, Guess, Truth, as_said, length_of

GUESS = Guess(
    question="?",
    truths=(Truth(what="who", answer="C"), Truth(what="where", answer=2.25, quantity="length")),
)


def verdicts(*guesses):
    return [row[-1] for row in GUESS.against(*guesses).rows]


@pytest.mark.parametrize(
    ("who", "where", "said"),
    [
        ("C", "2.25 m", ["as you said", "very near"]),
        (" c. ", "7.4 ft", ["as you said", "very near"]),
        ("A", "4.5 m", ["not as you said", "100 % too much"]),
        ("", "1.125 m", ["-", "50 % too little"]),
    ],
)
def test_a_guess_is_judged_by_what_it_is(who, where, said):
    assert verdicts(who, where) == said


def test_a_guess_without_a_unit_is_told_so_and_the_table_still_comes():
    assert "has no unit" in verdicts("C", "2.25")[1]


def test_an_empty_guess_is_answered_with_a_nudge():
    assert NOTHING in repr(GUESS.against("", ""))
    assert NOTHING not in repr(GUESS.against("C", ""))


def test_one_guess_too_few_is_refused_with_what_is_needed():
    with pytest.raises(ValueError, match="2 parts and you gave 1"):
        GUESS.against("C")


def exact(truth):
    """A truth as somebody who knew it would write it."""
    if isinstance(truth.answer, str):
        return truth.answer
    return f"{truth.answer!r} {'m' if truth.quantity == 'length' else 'kg'}"


@pytest.mark.parametrize("one", LESSONS, ids=lambda one: one.number)
@pytest.mark.parametrize("units", ["metric", "us"])
def test_every_lesson_can_be_compared_with_its_own_truth(one, units):
    opened = lesson(one.number, units=units)
    truths = one.guess(units).truths
    made = opened.compare(*map(exact, truths))
    assert {row[-1] for row in made.rows} <= {"as you said", "very near"}
    assert "?" in opened.question.words[0]


def test_unknown_units_are_refused():
    with pytest.raises(ValueError, match='"metric" or "us"'):
        lesson("01", units="imperial")


def test_lengths_to_reckon_with_keep_their_centimetres():
    assert length_of(10.35, "metric") == "10.35 m"


def test_what_is_printed_is_what_is_reckoned_with():
    assert as_said(10912.4, "mass", "metric") == 10910.0
    # 10912.4 kg are 24057.7 lb, printed as 24,060 lb.
    assert as_said(10912.4, "mass", "us") == pytest.approx(24060 * 0.45359237, rel=1e-12)
