"""The ways of one length on a live page: which are shown, and that they carry what compare says."""

import json
from dataclasses import replace

import numpy as np
import pytest
from lab.scenes_to_try import by_compare, random_scene

from boomsim.lab.live.live_model import Live
from boomsim.lab.live.scene_address import to_address
from boomsim.lab.live.ways_side_by_side import MOST, chosen
from boomsim.lab.scene.scene import Look, Scene, first_scene, machine_of, setup_of
from boomsim.rating.comparison.comparison_study import demonstration
from boomsim.rating.parts_reeved import hanging_mass
from boomsim.units import show_rated

CLOSE = 3e-5
"""The explorer's search for a rated load is this close; see tests/lab/test_same_numbers.py."""


def asked(live: Live, **asked) -> dict:
    return json.loads(live.ask(json.dumps(asked)))


def length_of(machine: str, extension) -> float:
    """Boom length by the sum of what stands out of what: no call of the model."""
    boom = machine_of(machine).boom
    out = zip(boom.sections[1:], extension, strict=True)
    return boom.sections[0].length + sum(s.nose + s.stroke * f for s, f in out) + boom.head.ahead


def compared_scene(number: int) -> Scene:
    """A scene that the command can be asked of: built as it is, at a radius."""
    return replace(random_scene(number, legal=True), held="radius", plates=1.0)


def hook_mass(scene: Scene) -> float:
    """What hangs on the scene's empty hook, with the rope that is out: at most [kg]."""
    length = length_of(scene.machine, scene.extension)
    steep = machine_of(scene.machine).boom.greatest_angle
    return float(hanging_mass(setup_of(scene), length=length, angle=[[steep]])[0, 0])


def kilograms(shown: str) -> float:
    """Mass that a page shows, in metric units [kg]."""
    figure, unit = shown.split()
    return float(figure.replace(",", "")) * {"kg": 1.0, "t": 1000.0}[unit]


def shows(capacity: float | None, shown: str, *, hook: float) -> bool:
    """Whether a page shows a capacity to the printed digit, as near as its search is.

    Where less is rated than the `hook` weighs that hangs there, compare leaves the figure out, and
    the page tells it; or the crane lies on its side with nothing on it, and the page has no lift.
    """
    if capacity is None:
        return shown == "–" or kilograms(shown) < hook
    if shown == "–":
        return capacity < hook
    return shown in [show_rated(capacity * (1.0 + d)) for d in (-CLOSE, 0.0, CLOSE)]


@pytest.mark.slow
@pytest.mark.parametrize("block", range(4))
def test_the_ways_of_random_scenes_carry_what_compare_says_to_the_printed_digit(block):
    live, tried = Live(), 0
    for number in range(15 * block, 15 * (block + 1)):
        scene = compared_scene(number)
        told = asked(live, do="go", address=to_address(scene, Look()))
        extensions = [tuple(way["extension"]) for way in told["ways"]]
        capacities = by_compare(scene, extensions) if extensions else None
        if capacities is None:  # the crane lies over there, or the boom may not be so long
            continue
        tried += 1
        for way, capacity in zip(told["ways"], capacities, strict=True):
            hook = hook_mass(scene)
            assert shows(capacity, way["carries"], hook=hook), (number, way["label"])
    assert tried >= 8


def test_the_demonstration_shows_its_own_three_ways():
    told = asked(Live(), do="drop")
    ways = demonstration(machine_of("yard60").boom)
    assert [way["extension"] for way in told["ways"]] == ways.extension.tolist()


@pytest.mark.parametrize("number", range(0, 60, 3))
def test_all_ways_shown_are_of_one_length_and_the_boom_is_out_by_one_of_them(number):
    scene = compared_scene(number)
    ways = [extension for extension, _ in chosen(scene)]
    assert 1 <= len(ways) <= MOST
    assert scene.extension in ways
    lengths = [length_of(scene.machine, way) for way in ways]
    assert max(lengths) - min(lengths) <= 0.2  # each within 0.10 m of the scene's


def test_no_letter_changes_its_meaning_when_another_way_is_taken():
    live = Live()
    before = asked(live, do="drop")["ways"]
    for number, way in enumerate(before):
        after = asked(live, do="way", number=number)["ways"]
        assert [one["label"] for one in after] == [one["label"] for one in before]
        assert [one["present"] for one in after] == [one is way for one in before]


def test_what_is_missing_to_the_best_adds_up_as_it_is_written():
    """Rated loads as written: 18.78 - 16.25 = 2.53."""
    tried = 0
    for number in range(0, 45, 3):
        address = to_address(compared_scene(number), Look())
        ways = asked(Live(), do="go", address=address)["ways"]
        steps = [round(100 * float(w["carries"][:-2])) for w in ways if w["carries"][-2:] == " t"]
        if len(steps) < 2 or len(steps) < len(ways) or min(steps) <= 0:
            continue
        tried += 1
        for way, one in zip(ways, steps, strict=True):
            less = round(100 * float(way["less"].removesuffix(" t"))) if way["less"] else 0
            assert less == max(steps) - one
    assert tried >= 5


def test_the_reasons_speak_of_the_best_and_the_least_and_their_parts_add_up():
    live = Live()
    ways = asked(live, do="drop")["ways"]
    told = asked(live, do="why")["why"]
    best = next(one for one in ways if one["best"])
    least = min(ways, key=lambda one: one["share"])
    assert f"{best['letter']} ({best['label']}) carries {best['carries']}" in told["sentence"]
    assert least["less"] in told["sentence"]
    *parts, total = told["parts"]
    assert total[2] == f"+{least['less']}"

    def hundredths(figure: str) -> int:
        return round(100 * float(figure.replace("−", "-").removesuffix(" t")))

    assert sum(hundredths(part[2]) for part in parts) == hundredths(total[2])


def test_without_another_way_of_its_length_a_boom_stands_alone_and_gives_no_reasons():
    live = Live(to_address(Scene(extension=(0.0,) * 4, radius=6.0), Look()))
    told = asked(live, do="drop")
    assert len(told["ways"]) == 1
    assert "only this way" in told["title"]
    assert asked(live, do="why")["why"]["sentence"] == ""


def test_ghosts_are_drawn_for_the_other_ways_and_not_for_the_boom_itself():
    told = asked(Live(), do="drop")
    drawn = {
        one["letter"] for one in told["ways"] if f'data-ghost="{one["letter"]}"' in told["stage"]
    }
    assert drawn == {one["letter"] for one in told["ways"] if not one["present"]}


def test_far_out_and_over_on_its_side_there_is_nothing_to_compare():
    scene = replace(first_scene(), radius=400.0)
    told = asked(Live(), do="go", address=to_address(scene, Look()))
    assert all(one["carries"] == "–" for one in told["ways"])
    assert not any(one["best"] for one in told["ways"])
    assert np.isfinite(told["frame"]).all()
