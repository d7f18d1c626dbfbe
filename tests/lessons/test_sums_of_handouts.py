"""Whoever reckons with what a handout prints gets the figure on the answer sheet."""

import re

import pytest

from boomsim.lessons.lesson_order import LESSONS
from boomsim.lessons.lesson_parts import Blank

BY_NUMBER = {lesson.number: lesson for lesson in LESSONS}


def number(text):
    """Figure as printed: in kip ft, ft or lb, in kN m, m or t."""
    figure, unit = re.fullmatch(r"(-?[\d,.]+) (.*)", text).groups()
    return float(figure.replace(",", "")), unit


def plain(cell):
    return cell.text if isinstance(cell, Blank) else cell


def tips(moment, lever, units):
    """The division that the sheet asks for, rounded as its answer is printed."""
    (value, unit), (arm, _) = number(moment), number(lever)
    if units == "us":
        assert unit == "kip ft"
        return f"{round(1000.0 * value / arm, -1):,.0f} lb"
    assert unit == "kN m"
    return f"{value / (arm * 9.81):.2f} t"


@pytest.mark.parametrize("units", ["metric", "us"])
def test_the_moments_of_handout_05_add_up_and_give_its_tipping_loads(units):
    sheet = BY_NUMBER["05"].sheet(units)
    for row in sheet.rows:
        _, *groups, lever, whole, load = map(plain, row)
        total = sum(number(one)[0] for one in groups)
        assert number(whole)[0] == pytest.approx(total, abs=1e-6)
        assert load == tips(whole, lever, units)


@pytest.mark.parametrize("units", ["metric", "us"])
def test_the_self_check_of_handout_05_asks_about_a_row_of_its_table(units):
    lesson = BY_NUMBER["05"]
    side = next(row for row in lesson.sheet(units).rows if row[0] == "over the side")
    assert plain(side[-2]) in lesson.check(units).question
    lever, load = plain(side[-3]), plain(side[-1])
    arms = re.findall(r"(?:line lies|hangs) ([\d.]+)", lesson.check(units).question)
    assert float(arms[1]) - float(arms[0]) == pytest.approx(number(lever)[0], abs=0.051)
    assert load == tips(plain(side[-2]), lever, units)


@pytest.mark.parametrize("units", ["metric", "us"])
def test_the_moment_over_the_lever_of_handout_07_is_its_tipping_load(units):
    for row in BY_NUMBER["07"].sheet(units).rows:
        _, _, _, moment, lever, load, _ = map(plain, row)
        assert load == tips(moment, lever, units)


def test_handout_03_names_the_lock_position_and_no_half():
    from boomsim.machine.machine_files import load_machine

    lesson = BY_NUMBER["03"]
    lock = load_machine(lesson.machine).boom.lock_positions[1]
    question = lesson.guess("metric").question
    assert f"every section {100 * lock:g} % out" in question
    assert "half" not in question and "half" not in lesson.title


def test_handout_06_says_what_stands_above_its_booms():
    assert "how far each moving section is out" in BY_NUMBER["06"].sheet("metric").given
