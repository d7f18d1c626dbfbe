"""``Practice`` in a real JupyterLab, as a learner uses it: type, check, ask for hints, go on."""

import json

import pytest

from boomsim.lessons.practice import Practice

pytestmark = pytest.mark.browser

TOPIC, SEED = "pad forces", 3
CELLS = (
    f'from boomsim.lessons.practice import Practice\nPractice("{TOPIC}", seed={SEED})',
    'broken = Practice("pad forces", seed=3)\nbroken.hint = lambda: 1 / 0\nbroken',
)
BOX = ".boomsim-practice"


@pytest.fixture(scope="module")
def page(browser, lab):
    cells = [
        {
            "cell_type": "code", "id": f"cell-{place}", "source": source,
            "metadata": {}, "outputs": [], "execution_count": None,
        }
        for place, source in enumerate(CELLS)
    ]  # fmt: skip
    kernel = {"name": "python3", "display_name": "Python 3", "language": "python"}
    notebook = {
        "cells": cells, "metadata": {"kernelspec": kernel}, "nbformat": 4, "nbformat_minor": 5,
    }  # fmt: skip
    (lab.folder / "practice.ipynb").write_text(json.dumps(notebook), encoding="utf-8")
    context = browser.new_context(viewport={"width": 1280, "height": 900})
    page = context.new_page()
    page.faults = []
    page.on("pageerror", lambda fault: page.faults.append(str(fault)))
    lab.run(page, "practice.ipynb")
    page.locator(BOX).nth(1).wait_for()
    yield page
    assert page.faults == []
    lab.shut(page)
    context.close()


@pytest.fixture
def box(page):
    return page.locator(BOX).first


def press(box, name: str) -> None:
    box.get_by_role("button", name=name).click()


def said(box, kind: str) -> str:
    line = box.locator(f".boomsim-practice-said [data-kind={kind}]")
    line.wait_for()
    return line.inner_text()


def mirror(page, box) -> Practice:
    """The same lesson in our own process, led to the problem that is on the screen."""
    lesson = Practice(TOPIC, seed=SEED)
    shown = box.locator(".boomsim-practice-text").inner_text()
    for _ in range(40):
        numbers = [lesson.question.problem.shown(name) for name in lesson.question.problem.givens]
        if all(number in shown for number in numbers):
            return lesson
        lesson.next()
    raise AssertionError(f"no problem of this lesson reads: {shown}")


def answers(page, box) -> list[str]:
    question = mirror(page, box).question
    return [question.problem.results[one.step.name].plain() for one in question.asked]


def fill(box, texts: list[str]) -> None:
    for place, text in enumerate(texts):
        box.locator(f".boomsim-practice-answer-{place + 1} input").fill(text)


def test_the_problem_is_there_with_its_drawing_and_named_fields(page, box):
    assert box.locator("svg[role=img]").first.get_attribute("aria-label")
    for asked in mirror(page, box).question.asked:
        assert box.get_by_label(asked.step.words, exact=True).is_visible()
    assert "not for planning a lift" in box.inner_text()


def test_right_answers_are_told_so_at_once(page, box):
    fill(box, answers(page, box))
    press(box, "Check")
    assert said(box, "right") == "✓ Right."


def test_a_wrong_answer_is_explained_and_not_given_away(page, box):
    right = answers(page, box)
    fill(box, [*right[:-1], "1 kN"])
    press(box, "Check")
    told = said(box, "wrong")
    assert "not right" in told.lower()
    assert right[-1].split()[0] not in told


def test_an_answer_that_cannot_be_read_is_explained(page, box):
    right = answers(page, box)
    fill(box, [*right[:-1], "12 m"])
    press(box, "Check")
    box.locator(".boomsim-practice-said", has_text="is not a force").wait_for()


def test_enter_in_a_field_checks(page, box):
    fill(box, answers(page, box))
    place = len(answers(page, box))
    box.locator(f".boomsim-practice-answer-{place} input").press("Enter")
    assert said(box, "right") == "✓ Right."


def test_hints_come_one_by_one_and_stay(page, box):
    wanted = mirror(page, box).hints
    lines = box.locator(".boomsim-practice-hints li")
    for count in range(1, len(wanted) + 1):
        press(box, "Hint")
        lines.nth(count - 1).wait_for()
        assert lines.count() == count
    assert lines.first.inner_text() == wanted[0]
    press(box, "Hint")
    box.get_by_text("That is all there is.").wait_for()
    assert lines.count() == len(wanted)


def test_the_supply_does_not_end_and_each_problem_begins_empty(page, box):
    text = box.locator(".boomsim-practice-text")
    seen = {text.inner_text()}
    for _ in range(12):
        before = text.inner_text()
        fill(box, ["1"])
        press(box, "Next problem")
        page.wait_for_function(
            "before => { const text = document.querySelector('.boomsim-practice-text');"
            " return text && text.innerText && text.innerText !== before; }",
            arg=before,
        )
        seen.add(text.inner_text())
        assert box.locator(".boomsim-practice-answer-1 input").input_value() == ""
        assert box.locator(".boomsim-practice-hints li").count() == 0
    assert len(seen) == 13
    fill(box, answers(page, box))
    press(box, "Check")
    assert said(box, "right") == "✓ Right."


def test_a_fault_of_ours_is_seen_and_the_lesson_goes_on(page):
    box = page.locator(BOX).nth(1)
    press(box, "Hint")
    assert "ZeroDivisionError" in said(box, "error")
    assert box.locator(".boomsim-practice-error").count() == 1
    fill(box, answers(page, box))
    press(box, "Check")
    assert said(box, "right") == "✓ Right."
    assert box.locator(".boomsim-practice-error").count() == 0
