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

PARTED = r"""() => {
  const found = [];
  for (const cell of document.querySelectorAll('.jp-OutputArea td, .jp-OutputArea th')) {
    const walk = document.createTreeWalker(cell, NodeFilter.SHOW_TEXT);
    while (walk.nextNode()) {
      const at = place => {
        const range = document.createRange();
        range.setStart(walk.currentNode, place);
        range.setEnd(walk.currentNode, place + 1);
        return range.getBoundingClientRect().top;
      };
      for (const one of walk.currentNode.data.matchAll(/\d[ \u00a0](?=%|(m|t|kg|kN|kPa)\b)/g))
        if (Math.abs(at(one.index) - at(one.index + 2)) > 4) found.push(cell.textContent);
    }
  }
  return found;
}"""
"""Cells in which a unit stands on another line than its figure."""


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


def test_in_a_narrow_window_every_figure_of_a_table_keeps_its_unit_beside_it(browser, lab):
    page = browser.new_page(viewport={"width": 700, "height": 900})
    notebook = with_guess(OF_LESSONS[8])
    lift = 'import boomsim as bs\nbs.lift("yard60", extension="45,45,45,0", radius=10, load=5000)'
    code = next(cell for cell in reversed(notebook["cells"]) if cell["cell_type"] == "code")
    code["source"] = lift
    (lab.folder / "narrow.ipynb").write_text(json.dumps(notebook), encoding="utf-8")
    lab.run(page, "narrow.ipynb")
    page.locator("th", has_text="luffing cylinder").first.wait_for()
    assert page.locator("td", has_text="kN").count() > 5
    assert page.evaluate(PARTED) == []
    lab.shut(page)
    page.close()


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


def typed(page, cell, guess):
    """Type a guess into the first quotes of a cell, with the keyboard, and run the cell."""
    source = page.evaluate(
        """cell => {
          const content = window.jupyterapp.shell.currentWidget.content;
          content.activeCellIndex = content.widgets.findIndex(
            one => one.model.sharedModel.source.includes(cell));
          content.mode = 'edit';
          content.activeCell.editor.focus();
          return content.activeCell.model.sharedModel.source;
        }""",
        cell,
    )
    page.keyboard.press("Control+End")
    for _ in range(len(source) - source.index('=""') - len('="')):
        page.keyboard.press("ArrowLeft")
    page.keyboard.type(guess)
    page.keyboard.press("Control+Enter")


def test_a_guess_typed_with_the_keyboard_opens_the_lesson_and_an_exercise_is_told_its_thought(
    browser, lab
):
    page = browser.new_page()
    shutil.copyfile(OF_LESSONS[7], lab.folder / "typed.ipynb")
    page.goto(lab.address("typed.ipynb"))
    lab.start(page)
    page.locator("[data-mime-type='application/vnd.jupyter.stderr']").wait_for(timeout=60_000)
    typed(page, "this.predict(", "20.0 t")
    page.get_by_text("Written down. Now run on and see.").wait_for(timeout=20_000)
    page.evaluate("() => window.jupyterapp.commands.execute('notebook:run-all-below')")
    page.locator("img.lesson-picture").first.wait_for(timeout=60_000)
    told = page.locator(".lesson-table").first.inner_text()
    assert "you probably took the gross load for the net load" in told
    typed(page, "this.exercise(", "yes")
    thought = page.get_by_text("you probably took the load for all that hangs")
    thought.wait_for(timeout=30_000)
    assert page.get_by_text("The whole account").count() == 1
    lab.shut(page)
    page.close()
