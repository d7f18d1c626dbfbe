"""Scenes in which the crane would lie on its side: explorer and page say so and draw none."""

import json
import re
from dataclasses import replace

import numpy as np
import pytest

from boomsim.lab.page.page_file import page
from boomsim.lab.page.page_states import page_data, ways_of
from boomsim.lab.scene.scene import Scene, setup_of
from boomsim.lab.solve.capacity_curve import curve
from boomsim.lab.solve.solved_scene import answer
from boomsim.lab.views.draw_scene import draw
from boomsim.lab.views.scene_sentences import headline
from boomsim.lab.views.side_elevation import drawn_shape
from boomsim.rating.empty_hook.empty_hook_sentences import tell_empty_hook
from boomsim.rating.empty_hook.empty_hook_study import empty_hook
from boomsim.rating.strategies import configurations_of

LONG = (1.0, 1.0, 1.0, 1.0)
SCENE = Scene(
    machine="yard60", counterweight="none", extension=LONG, held="angle", angle=0.2, load=1000.0
)


@pytest.mark.parametrize("units", ["metric", "us"])
def test_the_explorer_says_what_lift_says(units: str) -> None:
    found = answer(SCENE)
    bare = empty_hook(setup_of(SCENE), extension=np.array(LONG))
    assert found.lies and not found.solved
    assert headline(found, units=units) == tell_empty_hook(bare, units=units) != ""


def test_a_boom_is_never_drawn_lower_than_the_crane_stands() -> None:
    found = answer(SCENE)
    heel, front = drawn_shape(found).axis[0, 0], drawn_shape(found).axis[-1, -1]
    drawn = np.arctan2(*(front - heel)[::-1])
    assert drawn == pytest.approx(float(found.empty_hook.angle[0]), abs=1e-6)
    assert 'data-part="load"' not in draw(SCENE)


def test_a_step_above_the_least_angle_the_lift_is_shown_and_a_step_below_it_is_not() -> None:
    least = float(answer(SCENE).empty_hook.angle[0])
    above, below = (replace(SCENE, angle=least + step) for step in (1e-3, -1e-3))
    assert answer(above).solved and not answer(above).lies
    assert answer(below).lies


def test_the_capacity_curve_ends_where_the_crane_turns_over() -> None:
    setup = setup_of(SCENE)
    made = curve(setup, LONG, 1.0)
    end = float(answer(SCENE).empty_hook.radius[0])
    assert made.radius.max() > end
    assert np.isnan(made.capacity[made.radius >= end]).all()
    assert np.isfinite(made.capacity[made.radius < end]).any()


@pytest.mark.slow
def test_the_page_draws_no_way_that_lies_on_its_side_and_says_why() -> None:
    boom = setup_of(SCENE).machine.boom
    ways = ways_of(SCENE, configurations_of(boom, extension=np.array([LONG, (0.0, *LONG[1:])])))
    told = page_data(ways)
    lies = np.array(told["lies"])
    assert lies[0].any() and not lies[0].all()
    for way, states in enumerate(told["states"]):
        for radius, state in enumerate(states):
            assert not (lies[way, radius] and state)
    assert "turns over" in told["never"][0]
    kept = re.search(r'<script[^>]*id="data"[^>]*>(.*?)</script>', page(ways), re.DOTALL)
    assert kept and json.loads(kept[1].replace("<\\/", "</"))["never"] == told["never"]
