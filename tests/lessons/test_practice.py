"""Practice in a notebook: endless problems, hints, feedback that names the likely slip."""

import pytest

from boomsim.lessons.practice import Practice


def test_a_seed_gives_the_same_problems_and_the_next_one_is_another() -> None:
    one, other = Practice("pad forces", seed=4), Practice("pad forces", seed=4)
    assert str(one) == str(other)
    first = str(one)
    one.next()
    assert str(one) != first
    assert len({str(Practice("pad forces")) for _ in range(5)}) == 5  # without a seed: new ones


def test_the_right_answer_is_right_and_a_slip_is_named() -> None:
    lesson = Practice("statics_pad_force", seed=1)
    results = lesson.question.problem.results
    assert lesson.answer(results["R_f"].plain()).right
    wrong = lesson.answer(results["R_r"].plain())
    assert not wrong.right
    assert "forgot that the front pad also carries the force itself" in wrong.said
    assert results["R_f"].text() not in wrong.said  # trying again must make sense


def test_steps_can_be_answered_too() -> None:
    lesson = Practice("statics_pad_force", seed=1)
    results = lesson.question.problem.results
    assert lesson.answer("", a=results["M"].plain()).said == "Right so far."
    assert "Moment at the mouth: not right" in lesson.answer("", a="1 kN m").said


def test_an_answer_that_cannot_be_read_is_explained() -> None:
    lesson = Practice("statics_pad_force", seed=1)
    assert "is not a force" in lesson.answer("12 m").said
    assert "comma" in lesson.answer("12,5").said
    assert "comma" not in Practice("statics_pad_force", seed=1, locale="de").answer("12,5").said
    assert "Give an answer" in lesson.answer("").said


def test_hints_lead_from_the_idea_to_the_numbers() -> None:
    lesson = Practice("statics_pad_force", seed=1)
    given = [lesson.hint() for _ in range(12)]
    assert given[:2] == ["Multiply the force by its distance from the mouth.", "M = F a"]
    assert lesson.question.problem.results["M"].text() in given[2]
    assert given[-1] == given[8]  # three hints for each of three steps; the last one stays


def test_a_choice_is_answered_by_its_letter() -> None:
    lesson = Practice("strategy_own_weight", seed=2)
    right = lesson.question.problem.right
    assert lesson.answer(right).right
    wrong = next(letter for letter in "ABCD" if letter != right)
    assert lesson.answer(wrong).said.startswith("Not right. You probably ")
    assert lesson.hint().endswith(".")


def test_the_fields_of_a_notebook_judge_what_is_typed() -> None:
    widgets = pytest.importorskip("ipywidgets")
    lesson = Practice("statics_pad_force", seed=1)
    box = lesson.widget()
    fields = [one for one in box.children if isinstance(one, widgets.Text)]
    check, hint, following = next(c for c in box.children if isinstance(c, widgets.HBox)).children
    said, hinted = box.children[-3:-1]
    assert [field.description for field in fields] == [step.words for step in lesson.question.steps]
    fields[-1].value = lesson.question.problem.results["R_f"].plain()
    check.click()
    assert 'data-kind="right"' in said.value
    hint.click()
    hint.click()
    assert "Multiply the force" in hinted.value  # the first hint stays when the second comes
    assert hinted.value.count("<li>") == 2
    assert 'data-kind="right"' in said.value
    before = lesson.text
    following.click()
    assert lesson.text != before
    assert said.value == hinted.value == ""
    assert "not for planning a lift" in box.children[-1].value


def test_a_text_that_arrives_after_the_key_or_the_click_is_checked_too(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    widgets = pytest.importorskip("ipywidgets")
    clock = [100.0]
    monkeypatch.setattr("time.monotonic", lambda: clock[0])
    lesson = Practice("statics_pad_force", seed=1)
    box = lesson.widget()
    field = [one for one in box.children if isinstance(one, widgets.Text)][-1]
    said, check = box.children[-3], box.children[-4].children[0]
    right = lesson.question.problem.results["R_f"].plain()
    field._handle_custom_msg({"event": "submit"}, [])  # Enter; the text comes a moment later
    assert said.value == ""
    field.value = right
    assert 'data-kind="right"' in said.value
    clock[0] += 60.0
    field.value = "1 kN"  # the field is left, and nobody has asked
    assert 'data-kind="right"' in said.value
    check.click()
    assert 'data-kind="wrong"' in said.value
    field.value = right  # typed before that click
    assert 'data-kind="right"' in said.value


def test_an_error_behind_a_button_is_shown_and_not_swallowed() -> None:
    pytest.importorskip("ipywidgets")
    lesson = Practice("statics_pad_force", seed=1)
    box = lesson.widget()
    lesson.hint = lambda: 1 / 0  # type: ignore[method-assign, assignment, return-value]
    buttons = box.children[-4].children
    buttons[1].click()
    assert 'data-kind="error"' in box.children[-3].value
    assert "ZeroDivisionError" in box.children[-3].value
    buttons[0].click()
    assert "boomsim-practice-error" not in box.children[-3]._dom_classes
