"""The explorer, the figures and the commands give the same numbers for the same scene.

The capacity is found by another search than `rate` uses, to the same closeness (1e-6 of itself);
where a limit has a kink inside its last interval it may be off by some 1e-5, a hundredth of the
last figure shown. Everything else is the same call and agrees to rounding.
"""

import math
import re
from xml.etree import ElementTree

import numpy as np
import pytest
from scenes_to_try import by_command, random_scene

from boomsim.figures.side.side_figure import figure_of_lift
from boomsim.lab.scene.scene import Scene, setup_of
from boomsim.lab.scene.scene_changes import follow
from boomsim.lab.solve.capacity_curve import curve
from boomsim.lab.solve.solved_scene import answer
from boomsim.lab.widgets.explorer import Explorer
from boomsim.rating.capacity import rate
from boomsim.rating.lift.lift_study import lift
from boomsim.rating.parts_reeved import hanging_mass
from boomsim.units import show, show_rated

CLOSE = 3e-5
EXACT = 1e-9
MANY = range(36)


@pytest.fixture(scope="module")
def explorer() -> Explorer:
    return Explorer()


@pytest.mark.parametrize("number", MANY)
def test_a_random_scene_has_the_same_numbers_in_explorer_and_command(number, explorer):
    scene = random_scene(number, legal=True)
    explorer.go_to(scene)
    found, told = explorer.answer, by_command(scene)
    # A crane on its side is no lift to show; the command tells its forces, and that it lies.
    none = told is None or told["lies_over"]
    assert none == (not found.solved)
    assert found.lies == (told is not None and told["lies_over"])
    if none:
        return
    at = found.at
    assert at is not None
    assert np.isclose(float(at.state.angle[0, 0]), told["boom_angle"], rtol=EXACT)
    assert np.isclose(float(at.radius[0, 0]), told["radius"], rtol=EXACT)
    assert np.isclose(float(at.placed.head_up[0, 0]), told["head_height"], rtol=EXACT)
    assert np.isclose(float(at.tip_deflection[0, 0]), told["tip_deflection"], rtol=1e-6)
    utilisations = {
        limit.key: utilisation
        for limit, utilisation in zip(at.limits, at.utilisation[:, 0, 0], strict=True)
    }
    for one in told["limits"]:
        known = math.inf if one["utilisation"] is None else one["utilisation"]
        assert np.isclose(utilisations[one["name"]], known, rtol=1e-6, atol=1e-9), one["name"]
    if told["capacity"] is None:
        assert np.isnan(found.capacity)
    else:
        assert np.isclose(found.capacity, told["capacity"], rtol=CLOSE, atol=1e-9)
    assert (found.first.key if found.first else None) == told["capacity_governing"]


@pytest.mark.parametrize("number", MANY)
def test_the_numbers_in_the_picture_are_those_of_the_lift(number, explorer):
    scene = random_scene(number)
    explorer.go_to(scene)
    picture = ElementTree.fromstring(explorer.svg())
    shown = {e.get("data-number"): e.text for e in picture.iter() if e.get("data-number")}
    held = {scene.held: getattr(scene, scene.held)}
    try:
        told = lift(setup_of(scene), extension=np.array(scene.extension), load=scene.load, **held)
    except ValueError as refusal:
        assert explorer.answer.trouble == str(refusal)
        assert shown["radius"] == shown["deflection"] == "–"
        return
    assert shown["load"] == show(told.load, "mass")
    if told.lies_over:
        assert explorer.answer.lies
        assert shown["radius"] == shown["angle"] == shown["capacity"] == "–"
        return
    assert shown["radius"] == show(told.radius, "length")
    assert shown["angle"] == show(told.boom_angle, "angle")
    assert shown["length"] == show(told.boom_length, "boom_length")
    assert shown["height"] == show(told.head_height, "length")
    if not math.isfinite(told.capacity):
        assert shown["capacity"] == "–"
    else:
        near = [show_rated(told.capacity * (1.0 + d)) for d in (-CLOSE, 0.0, CLOSE)]
        assert shown["capacity"] in near


@pytest.mark.parametrize("number", range(0, 36, 6))
def test_the_figure_of_the_lift_shows_the_same_radius_and_angle(number):
    scene = random_scene(number)
    found = answer(scene)
    if not found.solved or found.at is None:
        pytest.skip("no lift, no figure")
    figure = figure_of_lift(found.at)
    words = " ".join(text.get_text() for ax in figure.axes for text in ax.texts)
    for value, quantity in (
        (float(found.at.radius[0, 0]), "length"),
        (float(found.at.state.angle[0, 0]), "angle"),
    ):
        assert show(value, quantity) in words


def test_the_cells_of_the_small_chart_are_rated_capacities(explorer):
    explorer.go_to(Scene())
    words = re.search(r'data-view="chart" aria-label="([^"]*)"', explorer.svg()).group(1)
    told = re.findall(r"([\d.]+) m ([\d.,]+) t", words)
    assert len(told) >= 5
    for radius, tonnes in told:
        at = lift(
            setup_of(Scene()), extension=np.array(Scene().extension), load=0.0, radius=float(radius)
        )
        # The radius is read back from three figures, which moves the capacity by up to 2 %.
        assert np.isclose(1000 * float(tonnes.replace(",", "")), at.capacity, rtol=0.02)


def test_what_the_trials_do_not_enclose_is_rated_from_nothing(monkeypatch):
    from boomsim.lab.solve import nearby_search as near

    scene = random_scene(3, legal=True)
    usual = answer(scene).capacity
    monkeypatch.setattr(near, "crossings", lambda tried, *, first: [None])
    again = answer.__wrapped__(scene)
    assert np.isclose(again.capacity, usual, rtol=CLOSE, equal_nan=True)


def fallen(setup, scene, told):
    """Where the hook alone turns the crane over, whatever `rate` says: there a curve has a gap."""
    out = np.array(scene.extension)
    length = told.boom.layout.boom_length
    hooks = hanging_mass(setup, length=length, angle=told.angle)[0]
    return [
        bool(np.isfinite(capacity))
        and lift(setup, extension=out, load=float(hook), radius=float(radius)).tipping_load <= hook
        for radius, capacity, hook in zip(told.radius[0], told.capacity[0], hooks, strict=True)
    ]


@pytest.mark.parametrize("number", range(8))
def test_a_curve_that_begins_beside_another_is_the_rated_one(number):
    """Whatever curve came before, the next one says what `rate` says."""
    first, then = random_scene(number), random_scene(number + 30)
    curve(setup_of(first), first.extension, 1.0)
    setup = setup_of(then)
    found = curve.__wrapped__(setup, then.extension, 1.0)
    told = rate(setup, extension=np.array(then.extension), radius=found.radius)
    expected = np.where(fallen(setup, then, told), np.nan, told.capacity[0])
    assert np.allclose(found.capacity, expected, rtol=1e-4, atol=1e-9, equal_nan=True)
    carried = told.capacity[0] > 0.0
    assert np.array_equal(found.tips[carried], told.is_stability[0][carried])


def test_held_scenes_that_follow_stand_at_the_live_radius():
    live, held = Scene(radius=14.0, load=5000.0), Scene(extension=(0.9, 0.0, 0.0, 0.0))
    together = follow(held, live=live)
    assert together.radius == 14.0
    assert together.load == 5000.0
    assert together.extension == held.extension
