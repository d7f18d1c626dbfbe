"""Scenes held side by side, and the account of their difference."""

import re
from decimal import Decimal

import numpy as np
import pytest

from boomsim.lab.scene.scene import Scene, setup_of
from boomsim.lab.solve.solved_scene import answer
from boomsim.lab.views.held_scenes import apart, difference_rows, written
from boomsim.lab.widgets.explorer import Explorer
from boomsim.rating.comparison.difference_account import account, difference
from boomsim.units import show_rated

WAYS = ((0.0, 0.0, 0.0, 0.9), (0.0, 0.0, 0.45, 0.45), (0.9, 0.0, 0.0, 0.0))


@pytest.fixture
def explorer() -> Explorer:
    made = Explorer(Scene(radius=15.0, load=6000.0))
    for way in WAYS:
        made.go_to(Scene(extension=way, radius=15.0, load=6000.0))
        made.buttons["hold"].click()
    yield made
    made.check()


def parts_of(explorer: Explorer) -> dict[str, float]:
    found = re.findall(r'data-part-name="([^"]*)" data-kg="([^"]*)"', explorer.panel.held.value)
    return {name: float(value) for name, value in found}


def test_three_are_held_and_a_fourth_is_refused_in_words(explorer):
    assert 'data-held="3"' in explorer.panel.held.value
    assert explorer.buttons["hold"].disabled
    with pytest.raises(ValueError, match="Let them go first"):
        explorer.hold()


def test_the_held_capacities_are_the_rated_ones(explorer):
    shown = re.findall(r'data-held-capacity="([^"]*)"', explorer.panel.held.value)
    setup = setup_of(explorer.scene)
    for way, one in zip(WAYS, shown, strict=True):
        told = account(setup, extension=np.array(way), radius=15.0)
        assert np.isclose(float(one), told.capacity, rtol=1e-5)


def test_the_parts_of_a_difference_add_up_to_it(explorer):
    explorer.buttons["pair"].value = (0, 2)
    parts = parts_of(explorer)
    total = parts.pop("A less C")
    assert np.isclose(sum(parts.values()), total, atol=0.01)


def test_the_difference_is_the_one_that_the_commands_explain(explorer):
    explorer.buttons["pair"].value = (0, 2)
    setup = setup_of(explorer.scene)
    first, second = (account(setup, extension=np.array(WAYS[k]), radius=15.0) for k in (0, 2))
    told, parts = difference(first, second, radius=15.0), parts_of(explorer)
    assert np.isclose(parts["A less C"], told.total, atol=0.01)
    assert np.isclose(parts["section 1"], told.by_part["section 1"], atol=0.01)


def test_held_scenes_follow_the_radius_or_stay_at_their_own(explorer):
    explorer.sliders["radius"].value = 12.0
    following = explorer.panel.held.value
    explorer.buttons["alike"].value = False
    own = explorer.panel.held.value
    assert "at 12.0 m" in following
    assert "at 15.0 m" in own


def test_letting_go_clears_them(explorer):
    explorer.buttons["drop"].click()
    assert explorer.panel.held.value == ""
    assert explorer.held == ()
    assert explorer.buttons["pair"].layout.display == "none"


def test_the_capacity_curves_of_held_scenes_are_in_the_chart(explorer):
    for letter in "ABC":
        assert re.search(rf'<text class="s e b"[^>]*>{letter}</text>', explorer.svg())


def test_another_machine_is_held_at_its_own_radius(explorer):
    explorer.choices["machine"].value = "bench"
    assert 'data-held="3"' in explorer.panel.held.value


def test_the_figures_of_a_difference_are_in_one_unit_and_add_up_as_they_are_written():
    live = answer(Scene(radius=8.0, load=5000.0))
    other = answer(Scene(extension=WAYS[2], radius=8.0, load=5000.0))
    found = apart(live, other)
    assert found is not None
    rows = difference_rows(found, ["A", "B"])
    for units, unit in (("metric", "t"), ("us", "lb")):
        said = [text.replace("−", "-").replace(",", "") for text in written(found, rows, units)]
        assert {text.split()[1] for text in said} == {unit}
        *parts, total = (Decimal(text.split()[0]) for text in said)
        assert sum(parts) == total
        rated = [
            Decimal(show_rated(one.capacity, units).split()[0].replace(",", ""))
            for one in (live, other)
        ]
        assert total == rated[0] - rated[1]
