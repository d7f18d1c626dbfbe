"""The explorer in a real browser on a real JupyterLab: what a hand on the mouse sees."""

import shutil
from pathlib import Path

import pytest

pytestmark = pytest.mark.browser

NOTEBOOK = Path(__file__).resolve().parents[2] / "notebooks" / "explorer.ipynb"
PICTURE = ".boomsim-picture svg"


@pytest.fixture(scope="module")
def page(browser, lab):
    shutil.copyfile(NOTEBOOK, lab.folder / NOTEBOOK.name)
    context = browser.new_context(viewport={"width": 1280, "height": 800})
    page = context.new_page()
    page.faults = []
    page.on("pageerror", lambda fault: page.faults.append(str(fault)))
    lab.run(page, NOTEBOOK.name)
    page.wait_for_selector(PICTURE)
    yield page
    lab.shut(page)
    context.close()


@pytest.fixture(autouse=True)
def nothing_went_wrong(page):
    yield
    assert page.locator(".boomsim-error").inner_text().strip() == ""
    assert page.faults == []


def handle(page, name: str):
    return page.locator(f".boomsim-{name} .noUi-handle").first


def shown(page, what: str) -> str:
    return page.locator(PICTURE).get_attribute(f"data-{what}")


def changed(page, what: str, before: str) -> str:
    page.wait_for_function(
        "([what, before]) => document.querySelector('.boomsim-picture svg')"
        ".getAttribute('data-' + what) !== before",
        arg=[what, before],
        timeout=20_000,
    )
    return shown(page, what)


def test_dragging_the_load_slider_changes_the_picture(page):
    before = shown(page, "load")
    box = handle(page, "load").bounding_box()
    page.mouse.move(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
    page.mouse.down()
    page.mouse.move(box["x"] + 40, box["y"] + box["height"] / 2, steps=8)
    page.mouse.up()
    assert float(changed(page, "load", before)) > float(before)


def test_the_arrow_keys_move_a_slider_by_its_step(page):
    before = shown(page, "radius")
    handle(page, "radius").focus()
    page.keyboard.press("ArrowRight")
    assert float(changed(page, "radius", before)) == pytest.approx(float(before) + 0.1, abs=1e-6)


def test_a_pinned_section_jumps_to_its_next_lock_position(page):
    before = shown(page, "extension")
    handle(page, "section-1").focus()
    page.keyboard.press("ArrowRight")
    assert changed(page, "extension", before).split()[0] == "0.45"


def test_following_sliders_do_not_move_the_boom_by_being_rounded(page):
    """The angle slider stands at the nearest tenth of a degree; the radius is held all the same."""
    assert page.locator(".boomsim-keep select").input_value() == "the radius"
    before = shown(page, "radius")
    handle(page, "load").focus()
    load = shown(page, "load")
    page.keyboard.press("ArrowRight")
    changed(page, "load", load)
    page.wait_for_timeout(300)
    assert shown(page, "radius") == before


def test_every_slider_handle_has_a_name_of_its_own(page):
    names = page.eval_on_selector_all(
        ".boomsim-stage .noUi-handle", "all => all.map(one => one.getAttribute('aria-label'))"
    )
    assert len(names) == 9
    assert all(names)
    assert len(set(names)) == len(names)


def test_the_picture_keeps_its_size_from_scene_to_scene(page):
    load = shown(page, "load")
    handle(page, "load").focus()
    measure = f"""() => {{
      const box = document.querySelector('{PICTURE}').getBoundingClientRect();
      return [box.left, box.width, box.height];
    }}"""
    before = page.evaluate(measure)
    for _ in range(5):
        page.keyboard.press("PageUp")
    changed(page, "load", load)
    assert page.evaluate(measure) == before


def test_holding_a_scene_and_reading_it_as_code(page):
    page.get_by_role("button", name="Hold this").click()
    page.wait_for_selector(".boomsim-held svg[data-held='1']")
    page.get_by_role("button", name="As code").click()
    page.wait_for_selector(".boomsim-lines")
    assert page.locator(".boomsim-lines").inner_text().startswith("from boomsim.lab import")
    page.get_by_role("button", name="Clear").click()
    page.wait_for_selector(".boomsim-held svg", state="detached")


def test_the_arrow_keys_step_through_the_scenes(page):
    page.get_by_text("Scenes", exact=True).click()
    before = shown(page, "extension")
    page.locator(".boomsim-scenes select").focus()
    page.keyboard.press("Home")
    assert changed(page, "extension", before) == "0 0 0 0.9"
    page.keyboard.press("ArrowDown")
    assert changed(page, "extension", "0 0 0 0.9") == "0 0 0.45 0.45"
    page.keyboard.press("ArrowDown")
    assert changed(page, "extension", "0 0 0.45 0.45") == "0.9 0 0 0"


def test_a_button_is_pressed_with_the_keyboard(page):
    for key in ("Enter", "Space"):
        before = shown(page, "load")
        handle(page, "load").focus()
        page.keyboard.press("PageUp")
        moved = changed(page, "load", before)
        page.get_by_role("button", name="Undo").focus()
        page.keyboard.press(key)
        assert changed(page, "load", moved) == before


def test_no_words_of_the_picture_run_out_of_it(page):
    out = page.evaluate(
        """() => {
          const svg = document.querySelector('.boomsim-picture svg');
          const box = svg.getBoundingClientRect();
          return [...svg.querySelectorAll('text')].filter(one => {
            const own = one.getBoundingClientRect();
            return own.left < box.left - 1 || own.right > box.right + 1 || own.top < box.top - 1
              || own.bottom > box.bottom + 1;
          }).map(one => one.textContent);
        }"""
    )
    assert out == []
