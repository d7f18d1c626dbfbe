"""The page of the game, played in a real browser with the network off."""

import json

import pytest

from boomsim.caution import CAUTION
from boomsim.cli import main

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def game(tmp_path_factory):
    file = tmp_path_factory.mktemp("game") / "game.html"
    assert main(["game", "yard60", "--picks", "4", "--seed", "12", "--page", str(file)]) == 0
    text = file.read_text(encoding="utf-8")
    data = json.loads(text.split('id="data">')[1].split("</script>")[0])
    return file, data


@pytest.mark.parametrize("size", [(1280, 800), (390, 844), (844, 390), (1920, 1080)])
def test_a_game_is_played_through_by_keyboard(browser, game, size):
    file, data = game
    page = browser.new_page(viewport={"width": size[0], "height": size[1]})
    page.context.set_offline(True)
    page.goto(file.as_uri())
    assert CAUTION in page.inner_text("body")
    got = 0
    for number, pick in enumerate(data["picks"]):
        assert page.inner_text("#count") == f"Pick {number + 1} of 4"
        assert not page.is_visible("#verdict"), "nothing is told before a choice"
        chosen = pick["options"][number % len(pick["options"])]
        page.keyboard.press(chosen["letter"].lower())
        got += chosen["points"]
        assert page.inner_text("#first").startswith(chosen["first"])
        assert page.inner_text("#score") == f"{got} of {2 * (number + 1)} points"
        assert page.inner_text("#why") == f"Why: {chosen['why']}"
        assert page.evaluate("document.documentElement.scrollWidth") <= size[0]
        page.keyboard.press("Enter")
    assert page.inner_text("#asked") == f"{got} of 8 points"
    page.keyboard.press("Enter")
    assert page.inner_text("#count") == "Pick 1 of 4"
    page.close()


def test_a_choice_is_final(browser, game):
    page = browser.new_page()
    page.goto(game[0].as_uri())
    page.keyboard.press("b")
    first = page.inner_text("#first")
    page.keyboard.press("a")
    assert page.inner_text("#first") == first
    page.close()
