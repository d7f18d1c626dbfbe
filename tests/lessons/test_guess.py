"""Guesses set beside what the model says."""

import pytest

from boomsim.lessons import lesson
from boomsim.lessons.first_guess import FIRST, NOTHING, Guess, GuessFirst, Truth
from boomsim.lessons.lesson_order import LESSONS, lesson_named
from boomsim.lessons.printed_figures import as_said, length_of

GUESS = Guess(
    question="?",
    parts=2,
    answers=lambda: (
        Truth(
            what="who",
            answer="C",
            slips={"expected the middle way": "B", "thought of weight": ("A", "section 4")},
        ),
        Truth(what="where", answer=2.25, quantity="length", slips={"halved it": 1.125}),
    ),
)


def verdicts(*guesses):
    return [row[-1] for row in GUESS.against(*guesses).rows]


@pytest.mark.parametrize(
    ("who", "where", "said"),
    [
        ("C", "2.25 m", ["as you said", "very near"]),
        (" c. ", "7.4 ft", ["as you said", "very near"]),
        ("D", "4.5 m", ["not as you said", "100 % too much"]),
        ("", "1.0 m", ["-", "56 % too little"]),
        (
            "b",
            "1.12 m",
            [
                "not as you said: you probably expected the middle way",
                "50 % too little: you probably halved it",
            ],
        ),
        ("4", "2.3 m", ["not as you said: you probably thought of weight", "very near"]),
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
    return written(truth.answer, truth.quantity)


def written(value, quantity):
    if isinstance(value, str):
        return value
    return f"{value!r} {'m' if quantity == 'length' else 'kg'}"


each = pytest.mark.parametrize("one", LESSONS, ids=lambda one: one.number)
both = pytest.mark.parametrize("units", ["metric", "us"])


@each
@both
def test_every_lesson_can_be_compared_with_its_own_truth(one, units):
    opened = lesson(one.number, units=units)
    truths = one.guess(units).truths
    assert one.guess(units).parts == len(truths)
    made = opened.compare(*map(exact, truths))
    assert {row[-1] for row in made.rows} <= {"as you said", "very near"}
    assert "?" in opened.question.words[0]


@each
@both
def test_a_wrong_guess_is_told_the_thought_that_probably_led_to_it(one, units):
    guess = one.guess(units)
    for k, truth in enumerate(guess.truths):
        assert truth.slips
        for words, wrong in truth.slips.items():
            for value in wrong if isinstance(wrong, tuple) else (wrong,):
                mine = ["" for _ in guess.truths]
                mine[k] = written(value, truth.quantity)
                assert guess.against(*mine).rows[k][-1].endswith(f": you probably {words}")


CHOICES = {
    "02": "A B C",
    "03": "A B C",
    "04": "base 1 2 3 4",
    "05": "front side rear",
    "07": "breaks tips",
    "09": "A B C",
    "10": "A B C",
}


@pytest.mark.parametrize("number", CHOICES)
def test_every_wrong_choice_is_told_a_thought(number):
    guess = lesson_named(number).guess("metric")
    for k, truth in enumerate(guess.truths):
        if truth.quantity:
            continue
        said = []
        for choice in CHOICES[number].split():
            mine = ["" for _ in guess.truths]
            mine[k] = choice
            said.append(guess.against(*mine).rows[k][-1])
        assert said.count("as you said") == 1
        assert sum(": you probably " in words for words in said) == len(said) - 1


def test_nothing_is_worked_out_before_there_is_a_guess(monkeypatch):
    def too_early(self):
        raise AssertionError("The answer was worked out.")

    monkeypatch.setattr(Guess, "truths", property(too_early))
    for one in LESSONS:
        opened = lesson(one.number)
        assert opened.question.words
        for mine in ([""] * one.guess("metric").parts, [" "] * one.guess("metric").parts):
            with pytest.raises(GuessFirst, match="Write your guess"):
                opened.predict(*mine)
        assert "Written down" in repr(opened.predict(*["x"] * one.guess("metric").parts))


def test_a_missing_guess_is_shown_as_one_sentence_without_a_traceback():
    assert GuessFirst(FIRST)._render_traceback_() == [FIRST]
    assert FIRST.count(".") == 1


def test_a_thought_that_leads_to_the_answer_is_refused():
    with pytest.raises(ValueError, match="which is right"):
        Truth(what="who", answer="section 4", slips={"slept": "4"})
    with pytest.raises(ValueError, match="which is right"):
        Truth(what="where", answer=2.25, quantity="length", slips={"slept": 2.3})


def test_unknown_units_are_refused():
    with pytest.raises(ValueError, match='"metric" or "us"'):
        lesson("01", units="imperial")


def test_lengths_to_reckon_with_keep_their_centimetres():
    assert length_of(10.35, "metric") == "10.35 m"


def test_what_is_printed_is_what_is_reckoned_with():
    assert as_said(10912.4, "mass", "metric") == 10910.0
    # 10912.4 kg are 24057.7 lb, printed as 24,060 lb.
    assert as_said(10912.4, "mass", "us") == pytest.approx(24060 * 0.45359237, rel=1e-12)
