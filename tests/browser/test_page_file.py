"""The page for home or a phone, opened as a file in a real browser at desk and phone widths."""

from itertools import pairwise

import pytest

from boomsim.lab.page.page_file import page as page_of
from boomsim.lab.page.page_states import ways_of
from boomsim.lab.scene.scene import Scene, setup_of
from boomsim.rating.comparison.comparison_study import demonstration

pytestmark = pytest.mark.browser

SIZES = [(1280, 800), (390, 844)]


@pytest.fixture(scope="module")
def file(tmp_path_factory):
    scene = Scene(machine="bench", system="free", extension=(0.0, 0.0))
    ways = ways_of(scene, demonstration(setup_of(scene).machine.boom))
    path = tmp_path_factory.mktemp("page") / "ways.html"
    path.write_text(page_of(ways), encoding="utf-8")
    return path


@pytest.fixture(params=SIZES, ids=["desk", "phone"])
def page(request, browser, file):
    context = browser.new_context(
        viewport={"width": request.param[0], "height": request.param[1]}, offline=True
    )
    page, asked = context.new_page(), []
    page.on("request", lambda one: asked.append(one.url))
    faults = []
    page.on("pageerror", lambda fault: faults.append(str(fault)))
    page.on("console", lambda said: faults.append(said.text) if said.type == "error" else None)
    page.goto(file.as_uri())
    yield page
    assert faults == []
    assert asked == [file.as_uri()]
    context.close()


def capacities(page) -> list[str]:
    return page.locator(".way .carries").all_inner_texts()


def test_it_opens_from_a_file_and_shows_a_lift(page):
    page.wait_for_selector("#picture svg .edge")
    assert len(capacities(page)) == 3
    assert "carries" in page.locator("#first").inner_text()
    assert "not for planning a lift" in page.locator(".caution").first.inner_text()


def test_the_radius_slider_changes_capacities_and_picture(page):
    before, radius = capacities(page), page.locator("#picture").get_attribute("data-radius")
    page.locator("#radius").focus()
    page.keyboard.press("ArrowRight")
    page.wait_for_function(
        "before => document.getElementById('picture').dataset.radius !== before", arg=radius
    )
    assert capacities(page) != before
    page.locator("#nearer").click()
    assert capacities(page) == before


def test_another_way_is_chosen_with_mouse_or_keys(page):
    page.locator(".way").nth(1).click()
    assert page.locator("#picture").get_attribute("data-way") == "B"
    page.keyboard.press("ArrowDown")
    assert page.locator("#picture").get_attribute("data-way") == "C"
    assert page.locator("#pair").inner_text().startswith("Why C and")


def test_the_parts_of_the_difference_are_drawn(page):
    rows = page.locator("#parts tr")
    assert rows.count() >= 2
    assert rows.last.inner_text().startswith("A less")


def test_nothing_runs_out_sideways_or_over_its_neighbour(page):
    wide = page.evaluate("document.documentElement.scrollWidth - window.innerWidth")
    assert wide <= 0
    names = ("#ask", "#ways", "main > .caution", "#because")
    boxes = [page.locator(name).bounding_box() for name in names]
    for above, below in pairwise(boxes):
        assert above["y"] + above["height"] <= below["y"] + 1


def test_moving_the_slider_moves_nothing_else(page):
    places = "['#ask', '#ways', '#picture', '#because']"
    measure = f"{places}.map(n => document.querySelector(n).getBoundingClientRect().top)"
    before = page.evaluate(measure)
    page.locator("#radius").focus()
    for _ in range(4):
        page.keyboard.press("ArrowRight")
        assert page.evaluate(measure) == before
