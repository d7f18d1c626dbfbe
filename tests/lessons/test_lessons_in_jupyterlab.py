"""Every lesson in a real browser on a real JupyterLab, as an apprentice sees it."""

import json
import shutil

import pytest
from notebook_files import ALL, OF_LESSONS, name, with_guess

from boomsim.caution import CAUTION
from boomsim.lessons.first_guess import FIRST
from boomsim.lessons.lesson_order import lesson_named

pytestmark = [pytest.mark.browser, pytest.mark.slow]

WIDE = """() => Array.from(document.querySelectorAll('.jp-Cell-outputWrapper'))
  .filter(box => box.scrollWidth > box.clientWidth + 1).length"""
DRAWN = """() => Array.from(document.querySelectorAll('img.lesson-picture'))
  .every(picture => picture.complete && picture.naturalWidth > 0 && picture.alt)"""


@pytest.fixture
def opened(browser, lab):
    """Open a notebook and run it to its end."""
    context = browser.new_context(viewport={"width": 1280, "height": 800})
    page = context.new_page()
    faults = []
    page.on("pageerror", lambda fault: faults.append(str(fault)))

    def run(path):
        (lab.folder / path.name).write_text(json.dumps(with_guess(path)), encoding="utf-8")
        lab.run(page, path.name)
        return page

    yield run
    lab.shut(page)
    context.close()
    assert faults == []


@pytest.mark.parametrize("path", ALL, ids=name)
def test_it_runs_to_its_end_and_everything_is_seen(path, opened):
    page = opened(path)
    page.wait_for_function(DRAWN, timeout=30_000)
    assert page.locator("[data-mime-type='application/vnd.jupyter.error']").count() == 0
    assert page.locator("[data-mime-type='application/vnd.jupyter.stderr']").count() == 0
    assert all(not text.strip() for text in page.locator(".lesson-trouble").all_inner_texts())
    assert page.evaluate(WIDE) == 0
    assert CAUTION in " ".join(page.locator(".jp-Notebook").inner_text().split())


def test_a_slider_moved_with_the_keyboard_changes_the_picture(opened):
    page = opened(OF_LESSONS[0])
    handle = page.locator(".lesson-slider-section-4 .noUi-handle").first
    picture = page.locator(".lesson-slides img")
    before = picture.get_attribute("alt")
    handle.focus()
    page.keyboard.press("ArrowRight")
    page.wait_for_function(
        "before => document.querySelector('.lesson-slides img').alt !== before",
        arg=before,
        timeout=20_000,
    )
    assert "(0, 0, 0, 1)" in picture.get_attribute("alt")


def test_an_answer_typed_into_the_check_is_judged(opened):
    page = opened(OF_LESSONS[3])
    check = lesson_named("04").check("metric")
    (rear,) = [check.said(value) for words, value in check.slips.items() if "rear pad" in words]
    page.evaluate(
        """answer => {
          const cells = window.jupyterapp.shell.currentWidget.content.widgets;
          const asked = cells.find(cell => cell.model.sharedModel.source === 'this.check("")');
          asked.model.sharedModel.setSource(`this.check("${answer}")`);
          window.jupyterapp.shell.currentWidget.content.activeCellIndex = cells.indexOf(asked);
          return window.jupyterapp.commands.execute('notebook:run-cell');
        }""",
        rear,
    )
    verdict = page.locator(".lesson-slip")
    verdict.wait_for(timeout=20_000)
    assert "You probably found the rear pad" in verdict.inner_text()


def test_run_all_stops_at_a_missing_guess_with_one_sentence(browser, lab):
    page = browser.new_page()
    shutil.copyfile(OF_LESSONS[1], lab.folder / "unguessed.ipynb")
    page.goto(lab.address("unguessed.ipynb"))
    lab.start(page)
    stopped = page.locator("[data-mime-type='application/vnd.jupyter.stderr']")
    stopped.wait_for(timeout=60_000)
    assert stopped.inner_text().strip() == FIRST
    assert page.locator("img.lesson-picture").count() == 0
    lab.shut(page)
    page.close()
