"""The class of 45 minutes."""

import re
from html import escape, unescape
from itertools import pairwise

import pytest

from boomsim.caution import CAUTION
from boomsim.lessons.class_plan import (
    LENGTH,
    SCENES,
    right_guesses,
    scene_named,
    script,
    timetable,
    wrong_answers,
    wrong_guesses,
)
from boomsim.lessons.class_screen import SCRIPT, Screen
from boomsim.lessons.lesson_order import LESSONS, lesson_named
from boomsim.machine.machine_files import load_machine
from boomsim.units import in_words


def test_the_scenes_fill_the_class_and_the_clock_runs_through():
    assert sum(scene.minutes for scene in SCENES) == LENGTH == 45
    clocks = [tuple(map(int, row[1].split(" to "))) for row in timetable().rows]
    assert clocks[0][0] == 0
    assert clocks[-1][1] == LENGTH
    assert all(a[1] == b[0] for a, b in pairwise(clocks))


@pytest.mark.parametrize("scene", SCENES, ids=lambda scene: scene.name)
def test_a_scene_asks_expects_wrong_answers_and_has_a_point(scene):
    lesson_named(scene.lesson)
    told = repr(script(scene.name))
    assert scene.ask in told
    assert scene.point in told
    assert len(scene.wrong) >= 1
    assert all(reply in told for _, reply in scene.wrong)
    assert not re.search(r"\d", scene.ask + scene.point + "".join(sum(scene.wrong, ())))


@pytest.mark.parametrize("lesson", LESSONS, ids=lambda lesson: lesson.number)
def test_expected_wrong_answers_are_those_that_the_check_knows(lesson):
    rows = wrong_answers(lesson.number).rows
    check = lesson.check("metric")
    assert rows[0] == ("is right", check.exact)
    assert {words for words, _ in rows[1:]} == set(check.slips)


@pytest.mark.parametrize("lesson", LESSONS, ids=lambda lesson: lesson.number)
@pytest.mark.parametrize("units", ["metric", "us"])
def test_expected_wrong_guesses_get_the_thought_that_the_lesson_tells_them(lesson, units):
    guess = lesson.guess(units)
    asked = [truth.what for truth in guess.truths]
    for what, wrong, thought in wrong_guesses(lesson.number, units=units).rows:
        mine = ["" for _ in asked]
        mine[asked.index(what)] = wrong.replace(",", "")
        assert guess.against(*mine).rows[asked.index(what)][-1].endswith(f"probably {thought}")


def test_the_sections_are_nearly_of_one_length_and_not_of_one_mass():
    sections = load_machine("yard60").boom.sections[1:]
    lengths, masses = ([getattr(s, name) for s in sections] for name in ("length", "mass"))
    assert max(lengths) < 1.1 * min(lengths)
    assert max(masses) > 2.0 * min(masses)


def test_what_the_model_says_to_a_guess_is_there_for_the_instructor():
    assert [row[1] for row in right_guesses("02").rows] == ["C", "A"]


def test_a_scene_that_is_none_is_refused():
    with pytest.raises(ValueError, match="There is no scene 'Lunch'"):
        scene_named("Lunch")


@pytest.mark.parametrize("units", ["metric", "us"])
def test_the_script_is_a_page_of_its_own_and_the_screen_says_none_of_it(tmp_path, units):
    screen = Screen(units=units)
    told = repr(screen.script(tmp_path))
    # Spaces that keep a figure's unit beside it are spaces to a reader.
    page = (tmp_path / SCRIPT).read_text(encoding="utf-8").replace("\u00a0", " ")
    assert SCRIPT in told
    assert CAUTION in unescape(page)
    for scene in SCENES:
        for said in (scene.ask, scene.point, *(reply for _, reply in scene.wrong)):
            assert escape(in_words(said, units)) in page
            assert said not in told
    for one in LESSONS:
        for words, _ in wrong_answers(one.number, units=units).rows:
            assert escape(in_words(words, units)) in page


def test_what_the_screen_does_not_have_is_refused_with_what_it_has():
    with pytest.raises(ValueError, match=r"nothing called 'the curve'\. Did you mean"):
        Screen().show("the curve")
    with pytest.raises(ValueError, match="not known"):
        Screen(units="imperial")
