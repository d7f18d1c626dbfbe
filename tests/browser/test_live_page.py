"""The live page, opened as a file in a real browser without a network: model, numbers, controls.

Wants the runtime that a live page carries: its folder named in BOOMSIM_RUNTIME (docs/live.md says
what to fetch). What the page is made of is tried without it in tests/lab/test_live.py.
"""

import json
import os
from itertools import pairwise
from random import Random

import pytest
from lab.scenes_to_try import by_command, by_compare, random_scene
from lab.test_live_ways import compared_scene, hook_mass, shows

from boomsim.classroom.lesson_scenes import lesson_scene
from boomsim.cli import main
from boomsim.lab.live.live_model import Live
from boomsim.lab.live.scene_address import to_address
from boomsim.lab.scene.scene import Look, Scene, first_scene, machine_of
from boomsim.lessons.lesson_order import lesson_named
from boomsim.machine.machine_files import builtin_text
from boomsim.rating.comparison.comparison_study import demonstration
from boomsim.units import show, show_rated

pytestmark = pytest.mark.browser

READY = "() => document.getElementById('state').textContent.startsWith('Ready')"
SCENES = [range(30), pytest.param(range(30, 200), marks=pytest.mark.long)]
"""Random scenes; tests/lab/ asks the same model of many more without a browser."""

LARGEST = 12_000_000
"""A page of more is too large to mail [bytes]."""

PHONE = {"is_mobile": True, "has_touch": True}

CLOSE = 3e-5
"""The explorer's search for a rated load is this close; see tests/lab/test_same_numbers.py."""


@pytest.fixture(scope="module")
def file(tmp_path_factory):
    folder = os.environ.get("BOOMSIM_RUNTIME")
    if not folder:
        pytest.skip("no runtime for live pages at hand: name its folder in BOOMSIM_RUNTIME")
    path = tmp_path_factory.mktemp("live") / "live.html"
    words = ["page", "--live", str(path), "--runtime", folder]
    assert main([*words, "--address", "https://example.org/crane.html"]) == 0
    assert path.stat().st_size < LARGEST
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
    return open_at(390, 844, **PHONE)


@pytest.fixture(scope="module")
def lying(open_at):
    return open_at(844, 390, **PHONE)


ANSWERED = """before => {
  const {asked, whole} = document.body.dataset;
  return asked !== before && whole === asked && location.hash === '#' + shown.address;
}"""


def after(page, act):
    """Do something and wait until the page has answered it, in the address line too."""
    before = page.evaluate("document.body.dataset.asked")
    act()
    page.wait_for_function(ANSWERED, arg=before, timeout=60_000)


GO = """where => {
  if (location.hash === '#' + where) ask({do: 'go', address: where});
  else location.hash = where;
}"""


def go(page, scene: Scene) -> dict[str, str]:
    """Open a scene by its address, and read the numbers that are shown."""
    address = to_address(scene, Look())
    after(page, lambda: page.evaluate(GO, address))
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


@pytest.mark.parametrize("scenes", SCENES, ids=len)
def test_random_scenes_have_the_same_words_and_numbers_in_the_browser_and_here(scenes, desk):
    """One model asked the same things in the same order, in two interpreters."""
    here = Live(layout="desk")
    for number in scenes:
        scene = random_scene(number)
        shown = go(desk, scene)
        address = to_address(scene, Look())
        told = json.loads(here.ask(json.dumps({"do": "go", "address": address})))
        here.rest()
        assert text(desk, "trouble") == told["trouble"]
        assert shown == {key: value for key, _, value in told["numbers"]}, address
        assert text(desk, "headline") == " ".join(
            part for part in (told["headline"], told["remark"]) if part
        )


@pytest.mark.parametrize("scenes", SCENES, ids=len)
def test_random_scenes_have_the_numbers_of_the_command_to_the_printed_digit(scenes, desk):
    for number in scenes:
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
    after(desk, lambda: desk.locator('[name="keep"]').select_option(label="the radius"))
    press(desk, "section 4", "ArrowRight")
    assert numbers(desk)["length"] != before["length"]


def test_undo_goes_back_and_the_address_follows(desk):
    go(desk, Scene())
    before = desk.url
    press(desk, "slew", "ArrowRight")
    assert desk.url != before
    after(desk, lambda: desk.locator("#undo").click())
    assert desk.url == before


STEPPED = """async () => {
  const written = history.replaceState.bind(history);
  const input = document.querySelector('[name="load"]');
  let times = 0;
  history.replaceState = (...given) => { times++; written(...given); };
  for (let k = 0; k < 40; k++) {
    input.value = Number(input.value) + Number(input.step);
    const answered = new Promise(done => new MutationObserver((_, one) => {
      one.disconnect();
      done();
    }).observe(document.body, {attributes: true, attributeFilter: ['data-whole']}));
    input.dispatchEvent(new Event('input'));
    await answered;
  }
  await new Promise(done => setTimeout(done, 400));
  history.replaceState = written;
  return {times, hash: location.hash, address: shown.address};
}"""


def test_a_slider_that_moves_on_writes_its_address_once_it_stands(desk):
    """A browser may refuse more than a hundred addresses in half a minute, and each takes time."""
    go(desk, Scene())
    told = desk.evaluate(STEPPED)
    # A step takes some 30 ms; on a machine that is busy a pause may be taken for the end.
    assert 1 <= told["times"] <= 10
    assert told["hash"] == f"#{told['address']}"


def test_a_link_opens_its_scene(open_at):
    scene = Scene(machine="bench", system="free", extension=(0.25, 0.5), radius=0.6, load=1.5)
    page = open_at(address="#" + to_address(scene, Look(units="us")))
    assert page.locator('[name="machine"]').evaluate("one => one.value") == "bench"
    assert numbers(page)["load"] == show(1.5, "mass", "us")


def test_the_code_on_a_printed_sheet_opens_its_lift(desk, tmp_path, capsys):
    """Read by a reader that is not ours, as a phone's camera does."""
    pdfium, zxing = pytest.importorskip("pypdfium2"), pytest.importorskip("zxingcpp")
    pytest.importorskip("typst")
    line = ["handouts", str(tmp_path), "--no-answers", "--address", "https://example.org/c.html"]
    assert main([*line, "--lesson", "05", "--lesson", "08", "--lesson", "10"]) == 0
    for path in sorted(tmp_path.glob("*.pdf")):
        sheet = pdfium.PdfDocument(path)[0].render(scale=200 / 72).to_pil()
        [link] = [one.text for one in zxing.read_barcodes(sheet)]
        scene = lesson_scene(lesson_named(path.stem[:2]))
        state = link.removeprefix("https://example.org/c.html#")
        after(desk, lambda where=state: desk.evaluate(GO, where))
        assert text(desk, "trouble") == ""
        shown = numbers(desk)
        assert shown["load"] == show(scene.load, "mass")
        assert shown["radius"] == show(scene.radius, "length")
        assert desk.locator('[name="machine"]').evaluate("one => one.value") == scene.machine
        # Where sections cannot slide against each other the page adds what is kept instead.
        assert desk.evaluate("location.hash").removesuffix("&keep=radius") == f"#{state}"


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


# --- The main job --------------------------------------------------------------------------------


def ways(page) -> list[dict]:
    """What the cards show, in their order."""
    return page.evaluate(
        """() => [...document.querySelectorAll('.way')].map(one => ({extension: one.way.extension,
             carries: one.querySelector('.carries').textContent,
             pressed: one.getAttribute('aria-pressed')}))"""
    )


def compared(page, numbers) -> int:
    """Compare the cards of random scenes with `compare --json`; how many could be."""
    tried = 0
    for number in numbers:
        scene = compared_scene(number)
        go(page, scene)
        shown = ways(page)
        told = by_compare(scene, [tuple(w["extension"]) for w in shown]) if shown else None
        if told is None:
            continue
        tried += 1
        hook = hook_mass(scene)
        for way, capacity in zip(shown, told, strict=True):
            assert shows(capacity, way["carries"], hook=hook), (number, way)
    return tried


def test_the_ways_of_random_scenes_carry_what_compare_says_to_the_printed_digit(desk):
    assert compared(desk, range(40)) >= 30


@pytest.mark.long
def test_the_ways_of_five_hundred_random_scenes_carry_what_compare_says(desk):
    assert compared(desk, range(40, 850)) >= 500


def test_the_question_and_its_answer_are_seen_first_without_scrolling_or_unfolding(open_at):
    for width, height, more in ((1280, 800, {}), (390, 844, PHONE), (844, 390, PHONE)):
        page = open_at(width, height, **more)
        page.wait_for_function("() => document.getElementById('because').textContent")
        for one in ("#question", ".way >> nth=0", ".way >> nth=2", "#because", "#stage svg"):
            box = page.locator(one).bounding_box()
            assert box["y"] >= 0, one
            assert box["y"] + box["height"] <= height + 1, one
        assert page.locator("#because").text_content().startswith("At ")


def test_a_way_that_is_pressed_becomes_the_boom(desk):
    go(desk, Scene())
    other = next(k for k, one in enumerate(ways(desk)) if one["pressed"] == "false")
    after(desk, lambda: desk.locator(".way").nth(other).click())
    assert ways(desk)[other]["pressed"] == "true"


# --- Taking hold of it ---------------------------------------------------------------------------


def middle(page, grip: str) -> tuple[float, float]:
    box = page.locator(f'[data-grip="{grip}"]').bounding_box()
    return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2


def drag(page, grip: str, right: float, down: float) -> None:
    """Take hold, go in ten steps, let go, and wait until the page is still."""
    page.locator(f'[data-grip="{grip}"]').scroll_into_view_if_needed()
    x, y = middle(page, grip)
    page.mouse.move(x, y)
    page.mouse.down()
    for k in range(1, 11):
        page.mouse.move(x + right * k / 10, y + down * k / 10)
    after(page, page.mouse.up)
    still(page)


def still(page) -> None:
    page.wait_for_function("() => !busy && !wishes.length", timeout=60_000)


@pytest.mark.parametrize(("right", "down"), [(-50, -25), (30, 20)])
def test_the_tip_follows_the_mouse(right, down, desk):
    go(desk, Scene(radius=9.6))
    x, y = middle(desk, "tip")
    drag(desk, "tip", right, down)
    now = middle(desk, "tip")
    # On a circle about the heel pin, and in steps of 0.1 m: some 2 px.
    assert abs(now[0] - x - right) < 12
    assert abs(now[1] - y - down) < 12


def test_the_load_follows_a_finger(phone):
    go(phone, Scene(radius=9.6, load=8000.0))
    before, (x, y) = numbers(phone), middle(phone, "load")
    client = phone.context.new_cdp_session(phone)

    def touch(kind: str, points: list) -> None:
        client.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})

    touch("touchStart", [{"x": x, "y": y}])
    for k in range(1, 9):
        touch("touchMove", [{"x": x + 8 * k, "y": y}])
    after(phone, lambda: touch("touchEnd", []))
    still(phone)
    assert abs(middle(phone, "load")[0] - x - 64) < 6
    assert numbers(phone)["radius"] != before["radius"]
    assert numbers(phone)["load"] == before["load"]


def test_a_section_dragged_out_draws_another_in_and_the_length_stays(desk):
    go(desk, Scene(radius=9.6))
    before = numbers(desk)["length"]
    drag(desk, "section 3", 40, -60)
    assert numbers(desk)["length"] == before
    assert "extension=0,0,0.9,0" in desk.url


def test_a_drag_is_one_step_back(desk):
    go(desk, Scene(radius=9.6, load=9000.0))
    before = desk.url
    drag(desk, "load", 90, 0)
    assert desk.url != before
    after(desk, lambda: desk.keyboard.press("Control+z"))
    assert desk.url == before
    after(desk, lambda: desk.keyboard.press("Control+y"))
    assert desk.url != before


def test_every_grip_has_a_name_a_state_a_place_for_the_keyboard_and_a_focus_that_is_seen(desk):
    go(desk, Scene(radius=9.6))
    desk.locator(".way").last.focus()
    for grip in ("tip", "section 1", "section 2", "section 3", "load"):
        desk.keyboard.press("Tab")
        if desk.evaluate("document.activeElement.id") == "raise":
            desk.keyboard.press("Tab")
        told = desk.evaluate(
            """() => { const one = document.activeElement, style = getComputedStyle(one);
              return {grip: one.dataset.grip, role: one.getAttribute('role'),
                name: one.getAttribute('aria-label'), state: one.getAttribute('aria-valuetext'),
                outline: style.outlineStyle, wide: parseFloat(style.outlineWidth)}; }"""
        )
        assert told["grip"] == grip
        assert told["role"] == "slider"
        assert told["name"]
        assert told["state"] in text(desk, "said")
        assert told["outline"] != "none"
        assert told["wide"] >= 2


def test_arrow_keys_move_a_grip_and_it_keeps_the_focus(desk):
    go(desk, Scene(radius=9.6, load=8000.0))
    before = numbers(desk)
    grip = desk.locator('[data-grip="load"]')
    grip.focus()
    after(desk, lambda: desk.keyboard.press("ArrowRight"))
    after(desk, lambda: desk.keyboard.press("PageUp"))
    now = numbers(desk)
    assert now["radius"] != before["radius"]
    assert now["load"] != before["load"]
    assert desk.evaluate("document.activeElement.dataset.grip") == "load"


# --- Past the rated load -------------------------------------------------------------------------

TIPPED = Scene(extension=(0.0, 0.0, 0.45, 0.45), radius=9.6, load=23_000.0)
AT_THE_END = """() => { const one = document.getElementById('moment');
  return !document.getElementById('past').hidden && Number(one.value) >= Number(one.max); }"""


def shown_past(page) -> int:
    return int(page.locator("#past").get_attribute("data-shown"))


def test_a_load_that_tips_it_makes_it_tip_and_back_leads_to_the_lift(desk):
    go(desk, TIPPED)
    desk.wait_for_selector("#past:not([hidden])", timeout=60_000)
    desk.wait_for_function(AT_THE_END, timeout=120_000)
    desk.wait_for_function(
        "() => document.querySelector('#pastview [data-lean]')?.dataset.lean > 15"
    )
    happened = desk.locator("#order .happened").all_text_contents()
    assert "lifts" in happened[0]
    assert "the crane tips" in happened[-1]
    assert not desk.locator("#lift").is_visible()
    desk.locator("#back").click()
    assert desk.locator("#lift").is_visible()
    assert desk.evaluate("document.activeElement.id") == "raise"


def test_it_can_be_stopped_and_gone_through_by_hand(desk):
    go(desk, Scene(extension=(0.0, 0.0, 0.0, 0.9), radius=4.0, load=20_000.0))
    desk.locator("#raise").click()
    desk.wait_for_function(
        "() => document.getElementById('past').dataset.shown > 2", timeout=60_000
    )
    desk.locator("#play").click()
    stopped = shown_past(desk)
    desk.wait_for_timeout(900)  # longer than one picture stands
    assert shown_past(desk) == stopped
    desk.locator("#moment").press("End")
    desk.wait_for_function(AT_THE_END)
    assert "still standing" in text(desk, "note")
    desk.keyboard.press("Escape")
    assert not desk.locator("#past").is_visible()


def test_with_reduced_motion_nothing_goes_by_itself(open_at):
    page = open_at(reduced_motion="reduce", address="#" + to_address(TIPPED, Look()))
    page.wait_for_selector("#past:not([hidden])", timeout=60_000)
    first = shown_past(page)
    page.wait_for_timeout(1200)
    assert shown_past(page) == first
    assert text(page, "play") == "Next step"
    page.locator("#play").click()
    assert shown_past(page) > first


def test_below_the_rated_load_nothing_happens_unless_asked(desk):
    go(desk, Scene(radius=9.6, load=8000.0))
    desk.wait_for_timeout(1500)
    assert not desk.locator("#past").is_visible()


# --- Sizes, dark, print, links -------------------------------------------------------------------


@pytest.mark.parametrize("held", ["phone", "lying"])
def test_on_a_phone_every_slider_is_seen_together_with_the_picture(held, request):
    page = request.getfixturevalue(held)
    high = page.viewport_size["height"]
    go(page, Scene(radius=9.6, load=8000.0))
    names = page.locator("input[type=range]").evaluate_all("all => all.map(one => one.name)")
    shut = [name for name in names if not name or page.locator(f'[name="{name}"]').is_hidden()]
    assert len(names) - len(shut) == 8
    for name in set(names) - set(shut):
        slider = page.locator(f'[name="{name}"]')
        slider.evaluate("one => one.scrollIntoView({block: 'end'})")
        picture, box = page.locator("#stage svg").bounding_box(), slider.bounding_box()
        assert picture["y"] >= 0
        assert picture["height"] > (200 if held == "phone" else 130)
        assert picture["y"] + picture["height"] <= high + 1
        beside = box["x"] + box["width"] <= picture["x"]
        assert beside or picture["y"] + picture["height"] <= box["y"]
        assert box["y"] >= 0
        assert box["y"] + box["height"] <= high + 1  # a page scrolls by whole pixels


@pytest.mark.parametrize("size", [(360, 640), (390, 844), (844, 390), (1280, 800), (1920, 1080)])
def test_nothing_runs_out_sideways_and_the_caution_is_in_sight(size, open_at):
    page = open_at(*size)
    assert page.evaluate("document.documentElement.scrollWidth - window.innerWidth") <= 0
    caution = page.locator("body > .caution")
    assert "not for planning a lift" in caution.text_content()
    box = caution.bounding_box()
    assert 0 <= box["y"] <= size[1] - box["height"]


def test_for_a_class_all_of_it_is_on_one_screen_and_large(open_at):
    page = open_at(1920, 1080)
    after(page, lambda: page.locator("#present").click())
    for one in ("#question", ".way >> nth=2", "#because", "#stage svg", '[name="load"]'):
        box = page.locator(one).bounding_box()
        assert box["y"] >= 0
        assert box["y"] + box["height"] <= 1080, one
    size = page.locator(".way .carries").first.evaluate("one => getComputedStyle(one).fontSize")
    assert float(size.removesuffix("px")) >= 30
    assert not page.locator('[name="machine"]').is_visible()
    page.locator("#raise").click()
    page.wait_for_selector("#pastview svg", timeout=60_000)
    for one in ("#pastview svg", "#felt", "#account", '[name="load"]'):
        box = page.locator(one).bounding_box()
        assert box["y"] + box["height"] <= 1080, one
    page.locator("#back").click()
    after(page, lambda: page.locator("#present").click())
    assert page.locator('[name="machine"]').is_visible()


def ground(page) -> list[int]:
    colour = page.evaluate("getComputedStyle(document.body).backgroundColor")
    return [int(one) for one in colour[4:-1].split(",")]


def test_a_dark_room_gets_a_dark_page_and_a_switch_turns_it(open_at):
    page = open_at(color_scheme="dark")
    assert max(ground(page)) < 64
    assert "invert" in page.locator("#stage svg").evaluate("one => getComputedStyle(one).filter")
    page.locator("#theme").click()
    assert min(ground(page)) > 200
    assert page.locator("#theme").get_attribute("aria-pressed") == "false"


def test_print_keeps_ways_picture_and_caution_on_one_sheet_and_leaves_the_controls_out(desk):
    go(desk, Scene(radius=9.6, load=8000.0))
    desk.emulate_media(media="print")
    for kept in ("#question", "#stage svg", "body > .caution"):
        assert desk.locator(kept).is_visible()
    for left in ("#controls", "#tools", "#grips", "#raise"):
        assert not desk.locator(left).is_visible()
    made = desk.pdf(format="A4", print_background=False)
    assert made.count(b"/Type /Page\n") + made.count(b"/Type /Page/") == 1
    desk.emulate_media(media="null")


def test_a_dark_page_is_printed_on_white_and_upright_whatever_the_printer_is_set_to(desk):
    pdfium = pytest.importorskip("pypdfium2")
    go(desk, Scene(radius=9.6, load=8000.0))
    desk.locator("#theme").click()
    made = desk.pdf(landscape=True, prefer_css_page_size=True, print_background=True)
    desk.locator("#theme").click()
    sheets = pdfium.PdfDocument(made)
    assert len(sheets) == 1
    assert sheets[0].get_height() > sheets[0].get_width()
    shown = sheets[0].render().to_pil().convert("L")
    corners = [(2, 2), (shown.width - 3, 2), (2, shown.height - 3), (40, shown.height // 2)]
    assert [shown.getpixel(one) for one in corners] == [255] * 4


HEADS = """() => Array.from(document.querySelectorAll('[data-view="limits"] text.xs'), one => {
  const box = one.getBoundingClientRect();
  return [Math.round(box.top), box.left, box.right, one.textContent];
}).filter(([, , , words]) => words)"""


def test_no_head_of_the_limits_runs_into_the_next(desk):
    go(desk, Scene())
    heads = sorted(desk.evaluate(HEADS))
    assert len(heads) > 10
    for (top, _, right, words), (other, left, _, more) in pairwise(heads):
        assert other > top or left >= right, (words, more)


def test_the_link_of_a_scene_begins_where_the_page_will_lie_and_has_a_code(desk):
    go(desk, Scene(radius=9.6, load=8000.0))
    desk.locator("#link").click()
    desk.wait_for_selector("#code path", state="attached", timeout=60_000)
    link = desk.locator("#address").input_value()
    assert link == "https://example.org/crane.html#" + desk.url.split("#")[1]
    side = int(desk.locator("#code").get_attribute("viewBox").split()[2])
    segno = pytest.importorskip("segno")
    matrix = segno.make(link, error="m", micro=False).matrix
    assert side == len(matrix) + 8
    dark = desk.locator("#code path").get_attribute("d").count("M")
    assert dark == sum(sum(row) for row in matrix)
    desk.locator("#shut").click()


SHOWN_ANEW = """async () => {
  const still = () => new Promise(done => {
    const wait = setInterval(() => {
      const {asked, whole} = document.body.dataset;
      if (busy || wishes.length || whole !== asked) return;
      clearInterval(wait);
      done();
    }, 5);
  });
  const pictures = () => ['stage', 'below'].map(one => at(one).cloneNode(true));
  const stands = () => JSON.stringify(Array.from(rows.values(), one => one.input.value));
  const [changed, before] = [pictures(), stands()];
  for (const layout of ['phone', 'desk']) { ask({do: 'look', layout}); await still(); }
  const whole = pictures();
  return {same: changed.map((one, place) => one.isEqualNode(whole[place])),
          sliders: before === stands()};
}"""
"""Another layout and back draws everything anew."""

PUT = """([name, share]) => {
  const input = document.querySelector(`[name="${name}"]`);
  input.value = Number(input.min) + share * (input.max - input.min);
  input.dispatchEvent(new Event('input'));
}"""


def test_a_picture_that_was_changed_mark_by_mark_is_the_one_that_is_drawn_anew(desk):
    drawn = Random(12)
    go(desk, Scene())
    for _ in range(12):
        for name in drawn.choices(["load", "radius", "angle", "slew", "section 3"], k=3):
            given = [name, drawn.random()]
            after(desk, lambda given=given: desk.evaluate(PUT, given))
        assert desk.evaluate(SHOWN_ANEW) == {"same": [True, True], "sliders": True}
    go(desk, Scene())
