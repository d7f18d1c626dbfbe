"""The live page, opened as a file in a real browser without a network: model, numbers, controls.

Wants the runtime that a live page carries: its folder named in BOOMSIM_RUNTIME (docs/live.md says
what to fetch). What the page is made of is tried without it in tests/lab/test_live.py.
"""

import json
import os

import pytest
from lab.scenes_to_try import by_command, random_scene

from boomsim.cli import main
from boomsim.lab.live.live_model import Live
from boomsim.lab.live.scene_address import to_address
from boomsim.lab.scene.scene import Look, Scene, first_scene, machine_of
from boomsim.machine.machine_files import builtin_text
from boomsim.rating.comparison.comparison_study import demonstration
from boomsim.units import show, show_rated

pytestmark = pytest.mark.browser

READY = "() => document.getElementById('state').textContent.startsWith('Ready')"
MANY = 60

CLOSE = 3e-5
"""The explorer's search for a rated load is this close; see tests/lab/test_same_numbers.py."""


@pytest.fixture(scope="module")
def file(tmp_path_factory):
    folder = os.environ.get("BOOMSIM_RUNTIME")
    if not folder:
        pytest.skip("no runtime for live pages at hand: name its folder in BOOMSIM_RUNTIME")
    path = tmp_path_factory.mktemp("live") / "live.html"
    assert main(["page", "--live", str(path), "--runtime", folder]) == 0
    return path


@pytest.fixture(scope="module")
def open_at(browser, file):
    """Opens the page at a size and waits for its model; whatever it asks of a network fails."""
    opened = []

    def open_page(width=1280, height=800, *, address="", **more):
        context = browser.new_context(
            viewport={"width": width, "height": height}, offline=True, **more
        )
        page, asked, faults = context.new_page(), [], []
        page.on("request", lambda one: asked.append(one.url))
        page.on("pageerror", lambda fault: faults.append(str(fault)))
        page.on("console", lambda said: faults.append(said.text) if said.type == "error" else None)
        page.goto(file.as_uri() + address)
        opened.append((context, asked, faults))
        page.wait_for_function(READY, timeout=120_000)
        return page

    yield open_page
    for context, asked, faults in opened:
        assert faults == []
        assert [one.split("#")[0] for one in asked if not one.startswith("blob:")] == [
            file.as_uri()
        ]
        context.close()


@pytest.fixture(scope="module")
def desk(open_at):
    return open_at()


@pytest.fixture(scope="module")
def phone(open_at):
    return open_at(390, 844, is_mobile=True, has_touch=True)


def after(page, act):
    """Do something and wait until the page has answered it."""
    before = page.evaluate("document.body.dataset.asked")
    act()
    page.wait_for_function(
        "before => document.body.dataset.asked !== before", arg=before, timeout=60_000
    )


def go(page, scene: Scene) -> dict[str, str]:
    """Open a scene by its address, and read the numbers that are shown."""
    address = to_address(scene, Look())
    after(page, lambda: page.evaluate("where => { location.hash = where; }", address))
    return numbers(page)


def numbers(page) -> dict[str, str]:
    return page.evaluate(
        """() => Object.fromEntries([...document.querySelectorAll('#numbers [data-number]')]
             .map(one => [one.dataset.number, one.querySelector('dd').textContent]))"""
    )


def press(page, name: str, key: str) -> None:
    after(page, lambda: page.locator(f'[name="{name}"]').press(key))


def text(page, name: str) -> str:
    return page.locator(f"#{name}").text_content()


def test_random_scenes_have_the_same_words_and_numbers_in_the_browser_and_here(desk):
    """One model asked the same things in the same order, in two interpreters."""
    here = Live(layout="desk")
    for number in range(MANY):
        scene = random_scene(number)
        shown = go(desk, scene)
        address = to_address(scene, Look())
        told = json.loads(here.ask(json.dumps({"do": "go", "address": address})))
        assert text(desk, "trouble") == told["trouble"]
        assert shown == {key: value for key, _, value in told["numbers"]}, address
        assert text(desk, "headline") == " ".join(
            part for part in (told["headline"], told["remark"]) if part
        )


def test_random_scenes_have_the_numbers_of_the_command_to_the_printed_digit(desk):
    for number in range(MANY):
        scene = random_scene(number, legal=True)
        told, shown = by_command(scene), go(desk, scene)
        if told is None or told["lies_over"]:
            assert shown["radius"] == shown["angle"] == "–"
            continue
        assert shown["radius"] == show(told["radius"], "length")
        assert shown["angle"] == show(told["boom_angle"], "angle")
        assert shown["length"] == show(told["boom_length"], "boom_length")
        assert shown["height"] == show(told["head_height"], "length")
        capacity = told["capacity"]
        near = [capacity * (1.0 + d) for d in (-CLOSE, 0.0, CLOSE)] if capacity is not None else []
        assert shown["capacity"] in ([show_rated(one) for one in near] or ["–"])


@pytest.mark.parametrize("radius", [8.0, 12.0, 16.0])
def test_the_ways_of_one_length_carry_what_compare_says(radius, desk, capsys):
    ways = demonstration(machine_of("yard60").boom)
    assert main(["compare", "--json", "--radii", f"{radius} m"]) == 0
    told = json.loads(capsys.readouterr().out)["configurations"]
    for row, system, one in zip(ways.extension, ways.system, told, strict=True):
        extension = tuple(float(f) for f in row)
        shown = go(desk, Scene(extension=extension, system=system, radius=radius))
        assert shown["capacity"] == show_rated(one["capacity"][0])


def test_the_first_picture_is_there_before_the_model_and_the_model_draws_the_same(browser, file):
    context = browser.new_context(viewport={"width": 1280, "height": 800}, offline=True)
    page = context.new_page()
    page.goto(file.as_uri(), wait_until="commit")
    page.wait_for_selector("#stage svg")
    early, words = page.locator("#stage").inner_html(), text(page, "state")
    page.wait_for_function(READY, timeout=120_000)
    assert not words.startswith("Ready")
    assert page.locator("#stage").inner_html() == early
    context.close()


def test_arrow_keys_move_a_slider_and_the_picture_answers(desk):
    go(desk, Scene())
    before = numbers(desk)
    press(desk, "load", "ArrowRight")
    assert numbers(desk)["load"] != before["load"]
    press(desk, "section 4", "ArrowRight")
    assert numbers(desk)["length"] != before["length"]


def test_undo_goes_back_and_the_address_follows(desk):
    go(desk, Scene())
    before = desk.url
    press(desk, "slew", "ArrowRight")
    assert desk.url != before
    after(desk, lambda: desk.locator("#undo").click())
    assert desk.url == before


def test_a_link_opens_its_scene(open_at):
    scene = Scene(machine="bench", system="free", extension=(0.25, 0.5), radius=0.6, load=1.5)
    page = open_at(address="#" + to_address(scene, Look(units="us")))
    assert page.locator('[name="machine"]').evaluate("one => one.value") == "bench"
    assert numbers(page)["load"] == show(1.5, "mass", "us")


def test_a_link_that_names_what_is_not_there_says_so_and_shows_the_start(open_at):
    page = open_at(address="#machine=yard61")
    assert "yard61" in text(page, "trouble")
    assert numbers(page)["load"] == show(first_scene("yard60").load, "mass")


def test_a_machine_file_of_ones_own_is_opened_and_a_wrong_one_is_refused(desk):
    mine = builtin_text("truck18").replace('name = "truck18"', 'name = "mine"')
    for name, words in (("mine.toml", mine), ("wrong.toml", mine.replace("[hoist]", "[hoisst]"))):
        picked = {"name": name, "mimeType": "text/plain", "buffer": words.encode()}
        after(desk, lambda p=picked: desk.locator("#file").set_input_files(p))
        assert desk.locator('[name="machine"]').evaluate("one => one.value") == "mine.toml"
        assert ("hoisst" in text(desk, "trouble")) == (name == "wrong.toml")
    assert numbers(desk)["load"] == show(first_scene("truck18").load, "mass")


def test_on_a_phone_every_slider_is_seen_together_with_the_picture(phone):
    names = phone.locator("input[type=range]").evaluate_all("all => all.map(one => one.name)")
    shut = [name for name in names if phone.locator(f'[name="{name}"]').is_hidden()]
    assert len(names) - len(shut) == 8
    for name in set(names) - set(shut):
        slider = phone.locator(f'[name="{name}"]')
        slider.evaluate("one => one.scrollIntoView({block: 'end'})")
        picture, held = phone.locator("#stage svg").bounding_box(), slider.bounding_box()
        assert picture["y"] >= 0
        assert picture["height"] > 200
        assert picture["y"] + picture["height"] <= held["y"]
        assert held["y"] + held["height"] <= 844 + 1  # a page scrolls by whole pixels


@pytest.mark.parametrize("size", [(390, 844), (844, 390), (1280, 800), (1920, 1080)])
def test_nothing_runs_out_sideways_and_the_caution_is_in_sight(size, open_at):
    page = open_at(*size)
    assert page.evaluate("document.documentElement.scrollWidth - window.innerWidth") <= 0
    seen = page.locator("body > .caution")
    caution = seen if seen.is_visible() else page.locator("#stage .caution").first
    assert "not for planning a lift" in caution.text_content()
    box = caution.bounding_box()
    assert 0 <= box["y"] <= size[1] - box["height"]


def test_a_dark_room_gets_a_dark_page(open_at):
    page = open_at(color_scheme="dark")
    ground = page.evaluate("getComputedStyle(document.body).backgroundColor")
    assert max(int(one) for one in ground[4:-1].split(",")) < 64
    assert "invert" in page.locator("#stage svg").evaluate("one => getComputedStyle(one).filter")


def test_print_keeps_picture_and_caution_and_leaves_the_controls_out(desk):
    desk.emulate_media(media="print")
    assert desk.locator("#stage svg").is_visible()
    assert not desk.locator("#controls").is_visible()
    desk.emulate_media(media="screen")
