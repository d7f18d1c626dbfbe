"""Questions with answers to choose: the lesson's own judges, which read typed answers, agree."""

import pytest

from boomsim.lessons.choice_questions import LETTERS, choice_questions
from boomsim.lessons.lesson_order import LESSONS


@pytest.fixture(scope="module", params=[one.number for one in LESSONS])
def lesson(request):
    return next(one for one in LESSONS if one.number == request.param)


def _typed(option):
    """As a person types it, who sets no comma between thousands."""
    return (option.words or option.letter).replace(",", "")


@pytest.mark.slow
@pytest.mark.parametrize("units", ["metric", "us"])
def test_every_answer_is_judged_as_the_lesson_judges_it_when_it_is_typed(lesson, units):
    *guesses, check = choice_questions(lesson, units)
    judge = lesson.guess(units)
    for place, question in enumerate(guesses):
        for option in question.options:
            typed = [""] * judge.parts
            typed[place] = _typed(option)
            verdict = judge.against(*typed).rows[place][3]
            assert (verdict in ("as you said", "very near")) == option.right, verdict
            if option.thought:
                assert verdict.endswith(f": you probably {option.thought}")
    for option in check.options:
        verdict = lesson.check(units)(_typed(option))
        assert (verdict.right, verdict.slip or "") == (option.right, option.thought)


def test_a_question_has_one_right_answer_and_a_thought_behind_each_other(lesson):
    for question in choice_questions(lesson, "metric"):
        assert 2 <= len(question.options) <= len(LETTERS)
        assert [one.letter for one in question.options] == list(LETTERS[: len(question.options)])
        assert sum(one.right for one in question.options) == 1
        assert all(bool(one.thought) != one.right for one in question.options)
        assert question.reason.strip()


def test_the_place_of_an_answer_does_not_give_the_right_one_away():
    """A person who always chooses one letter is right by chance: at most half of the time here."""
    questions = [one for lesson in LESSONS for one in choice_questions(lesson, "metric")]
    rights = [question.right.letter for question in questions]
    assert max(rights.count(letter) for letter in LETTERS) <= len(rights) / 2


def test_beside_a_guess_there_is_no_table_which_might_answer_it(lesson):
    *guesses, check = choice_questions(lesson, "metric")
    assert not any(one.rows for one in guesses)
    assert check.rows
