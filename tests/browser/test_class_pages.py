"""A vote between real browser pages, and a lesson's page that was opened as a file."""

import os
import subprocess
import sys
from io import BytesIO
from pathlib import Path

import pytest

from boomsim.classroom.pages.lesson_folder import lesson_folder
from boomsim.lessons.choice_questions import choice_questions
from boomsim.lessons.lesson_order import lesson_named

pytestmark = pytest.mark.browser

LESSON = lesson_named("02")
ROOT = Path(__file__).resolve().parents[2]
CONNECTED = "() => document.getElementById('line').textContent === 'connected'"
VOTES = "count => document.getElementById('votes').textContent === String(count)"


@pytest.fixture(scope="module")
def served():
    """A class of its own process, and the addresses that it says."""
    pytest.importorskip("tornado")
    words = [sys.executable, "-m", "boomsim", "class", "--port", "0", "--lesson", "02"]
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    server = subprocess.Popen(words, stdout=subprocess.PIPE, text=True, env=environment)
    try:
        said = {}
        while "Instructor" not in said:
            line = server.stdout.readline()
            assert line, "the server has ended"
            name, _, address = line.partition(":")
            said[name.strip()] = address.strip()
        yield said
    finally:
        server.terminate()
        assert server.wait(20) == 0


@pytest.fixture
def opened(browser):
    """Opens pages, each in a browser of its own; none may complain."""
    contexts, faults = [], []

    def open_page(address, width=390, height=844, **more):
        context = browser.new_context(viewport={"width": width, "height": height}, **more)
        contexts.append(context)
        page = context.new_page()
        page.on("pageerror", lambda fault: faults.append(str(fault)))
        page.on("console", lambda said: faults.append(said.text) if said.type == "error" else None)
        page.goto(address)
        return page

    yield open_page
    for context in contexts:
        context.close()
    assert faults == []


def test_a_class_votes_and_sees_it_on_the_board_and_then_the_answer(served, opened):
    question = choice_questions(LESSON, "metric")[1]
    board = opened(served["Projector"], 1920, 1080)
    teacher = opened(served["Instructor"], 1280, 800)
    phones = [opened(served["Students"], is_mobile=True, has_touch=True) for _ in range(3)]
    for page in (board, teacher, *phones):
        page.wait_for_function(CONNECTED)
    assert "#" not in teacher.url  # the token has left the address line
    teacher.select_option("#choose", question.key)
    teacher.click("[data-do=open]")
    for page, letter in zip(phones, "CCA", strict=True):
        page.click(f'button[data-letter="{letter}"]:enabled')
    board.wait_for_function(VOTES, arg=3)
    assert board.locator(".bar").count() == 0
    assert "model says" not in board.inner_text("main")
    teacher.wait_for_selector(".share")
    teacher.click("[data-do=show]")
    board.wait_for_selector(".bar")
    assert board.locator('[data-letter="C"] .share').inner_text().startswith("2")
    teacher.click("[data-do=tell]")
    board.wait_for_selector(".right")
    assert board.locator(".right").get_attribute("data-letter") == question.right.letter == "A"
    assert question.reason in board.inner_text("#answer")
    phones[0].wait_for_selector(".right")
    thought = next(one.thought for one in question.options if one.letter == "C")
    assert phones[0].inner_text("#said") == f"Not as you said: you probably {thought}."
    phones[2].wait_for_selector(".right")
    assert phones[2].inner_text("#said") == "As you said."
    for page, width in ((board, 1920), (phones[0], 390)):
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        assert "not for planning a lift" in page.inner_text("body > .caution")


def test_a_page_that_is_loaded_anew_is_the_same_voter(served, opened):
    teacher = opened(served["Instructor"], 1280, 800)
    phone = opened(served["Students"])
    phone.wait_for_function(CONNECTED)
    teacher.wait_for_function(CONNECTED)
    teacher.click("[data-do=open]")
    phone.click('button[data-letter="A"]:enabled')
    teacher.wait_for_function(VOTES, arg=1)
    phone.reload()
    phone.click('button[data-letter="B"]:enabled')
    phone.wait_for_function("() => document.getElementById('said').textContent.includes('is B')")
    teacher.wait_for_timeout(1200)  # longer than news and counts take
    assert teacher.inner_text("#votes") == "1"
    assert teacher.locator('[data-letter="B"] .share').inner_text().startswith("1")


@pytest.fixture(scope="module")
def page_file(tmp_path_factory):
    pytest.importorskip("mistune")
    folder = tmp_path_factory.mktemp("lessons")
    made = lesson_folder((LESSON,), units="metric", runtime=None, compiler=None)
    for name, content in made.items():
        (folder / name).write_bytes(content)
    return folder / f"{LESSON.file}.html"


@pytest.mark.parametrize("size", [(390, 844), (844, 390), (1920, 1080)])
def test_a_lesson_goes_on_only_after_every_part_is_chosen(opened, page_file, size):
    page = opened(page_file.as_uri(), *size, offline=True)
    first, _, check = choice_questions(LESSON, "metric")
    assert page.is_disabled("#go")
    page.check("input[name=guess-0][value=C]")
    assert page.is_disabled("#go")
    assert page.inner_text("#rest") == ""
    page.check("input[name=guess-1][value=B]")
    page.click("#go")
    page.wait_for_selector("#checked", state="attached")
    told = page.inner_text("#verdicts")
    assert f"{first.asked}: you said C; the model says {first.right.letter}. As you said." in told
    assert "you probably expected the middle way" in told
    assert page.is_disabled("input[name=guess-0][value=A]")
    wrong = next(one for one in check.options if not one.right)
    page.check(f"input[name=check][value={wrong.letter}]")
    assert wrong.thought in page.inner_text("#checked")
    page.check(f"input[name=check][value={check.right.letter}]")
    assert page.inner_text("#checked") == f"Right. {check.reason}"
    assert page.evaluate("document.documentElement.scrollWidth") <= size[0]


def test_a_lesson_on_paper_holds_no_answer_before_a_guess(opened, page_file):
    page = opened(page_file.as_uri(), offline=True)
    page.emulate_media(media="print")
    told = page.inner_text("body")
    assert "Summary" not in told
    assert "not for planning a lift" in told


def test_the_crane_is_live_in_a_folder_that_was_opened_as_files(opened, tmp_path):
    """Wants the runtime of a live page, as tests/browser/test_live_page.py does."""
    from PIL import Image

    from boomsim.classroom.lesson_scenes import lesson_address
    from boomsim.lab.live.bytecode import find_compiler
    from boomsim.lab.live.python_runtime import read_runtime

    zxingcpp = pytest.importorskip("zxingcpp")
    place = os.environ.get("BOOMSIM_RUNTIME")
    if not place:
        pytest.skip("no runtime for live pages at hand: name its folder in BOOMSIM_RUNTIME")
    lessons, runtime = (lesson_named("08"),), read_runtime(place)
    made = lesson_folder(
        lessons,
        units="metric",
        runtime=runtime,
        compiler=find_compiler(),
        address="https://example.org/lessons/",
    )
    for name, content in made.items():
        (tmp_path / name).write_bytes(content)
    page = opened((tmp_path / "08-gross-to-net.html").as_uri(), 1280, 800, offline=True)
    page.check("input[name=guess-0][value=A]")
    page.click("#go")
    page.click("#crane")
    frame = page.wait_for_selector("iframe").content_frame()
    ready = "() => document.getElementById('state').textContent.startsWith('Ready')"
    frame.wait_for_function(ready, timeout=120_000)
    link = f"https://example.org/lessons/crane.html#{lesson_address(lessons[0], units='metric')}"
    assert page.inner_text(".code a") == link
    shot = Image.open(BytesIO(page.locator(".code svg").screenshot()))
    assert [one.text for one in zxingcpp.read_barcodes(shot)] == [link]
    # The scene in the frame is the one that the link names.
    assert frame.evaluate("location.hash") == f"#{link.partition('#')[2]}"
    before = frame.inner_html("#stage")
    frame.locator('input[name="load"]').press("ArrowRight")
    frame.wait_for_function(
        "before => document.getElementById('stage').innerHTML !== before", arg=before
    )
