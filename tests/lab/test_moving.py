"""Moving the controls: what a person does with mouse or arrow keys, done as `slider.value`."""

import math
from dataclasses import replace

import numpy as np
import pytest
from reeving_by_hand import parts_by_hand

from boomsim.lab.scene.scene import Look, Scene
from boomsim.lab.widgets.explorer import Explorer, explore
from boomsim.machine.machine_files import load_machine
from boomsim.mechanics.geometry import layout

TWO_HALVES = (0.0, 0.0, 0.45, 0.45)


@pytest.fixture
def explorer() -> Explorer:
    made = Explorer(Scene())
    yield made
    made.check()


def test_it_opens_with_a_lift_below_its_rated_load(explorer):
    assert explorer.answer.solved
    assert 0.0 < explorer.answer.used < 1.0


@pytest.mark.parametrize("machine", ["yard60", "truck18", "bench"])
def test_every_machine_opens_half_loaded(machine):
    made = explore(machine)
    made.check()
    assert 0.3 < made.answer.used < 0.9


def test_moving_the_load_changes_the_picture_and_nothing_else(explorer):
    before = explorer.svg()
    explorer.sliders["load"].value = 9.5
    assert explorer.scene == Scene(load=9500.0)
    assert explorer.svg() != before
    assert 'data-load="9500"' in explorer.svg()


def test_holding_the_radius_the_angle_slider_follows_the_load(explorer):
    explorer.sliders["load"].value = 1.0
    light = explorer.sliders["angle"].value
    explorer.sliders["load"].value = 20.0
    assert explorer.sliders["radius"].value == 10.0
    # A heavier load bends the boom further, so it must be raised to keep the radius.
    assert explorer.sliders["angle"].value > light


def test_holding_the_angle_the_radius_slider_follows_the_load(explorer):
    explorer.choices["held"].value = "angle"
    explorer.sliders["load"].value = 1.0
    light = explorer.sliders["radius"].value
    explorer.sliders["load"].value = 20.0
    assert explorer.scene.held == "angle"
    assert explorer.sliders["radius"].value > light


def test_changing_what_is_kept_leaves_the_boom_where_it_is(explorer):
    angle = float(explorer.answer.at.state.angle[0, 0])
    explorer.choices["held"].value = "angle"
    assert math.isclose(explorer.scene.angle, angle)
    explorer.choices["held"].value = "radius"
    assert math.isclose(explorer.scene.radius, 10.0, rel_tol=1e-6)


def test_moving_the_angle_keeps_the_angle_from_then_on(explorer):
    explorer.sliders["angle"].value = 40.0
    assert explorer.scene.held == "angle"
    assert math.isclose(explorer.scene.angle, math.radians(40.0), rel_tol=1e-9)
    assert explorer.choices["held"].value == "angle"


def test_a_pinned_section_stops_at_lock_positions_only(explorer):
    offered = [value for _, value in explorer.sliders["section 1"].options]
    assert offered == [0.0, 0.45, 0.9, 1.0]
    explorer.sliders["section 1"].value = 0.9
    assert explorer.scene.extension == (0.9, 0.0, 0.45, 0.45)


def test_freed_sections_stop_anywhere_and_snap_back_when_pinned_again(explorer):
    explorer.choices["system"].value = "free"
    explorer.sliders["section 1"].value = 40.0
    assert explorer.scene.extension == (0.4, 0.0, 0.45, 0.45)
    explorer.choices["system"].value = "pinned"
    assert explorer.scene.extension == (0.45, 0.0, 0.45, 0.45)


def test_synchronised_sections_move_together():
    explorer = explore("truck18")
    explorer.choices["system"].value = "synchronised"
    explorer.sliders["section 2"].value = 30.0
    assert explorer.scene.extension == (0.3, 0.3, 0.3)
    assert explorer.sliders["section 1"].value == 30.0
    explorer.check()


def test_sequenced_sections_move_one_after_another():
    explorer = explore("truck18")
    explorer.choices["system"].value = "sequenced"
    explorer.sliders["section 2"].value = 30.0
    assert explorer.scene.extension == (1.0, 0.3, 0.0)
    explorer.sliders["section 1"].value = 80.0
    assert explorer.scene.extension == (0.8, 0.0, 0.0)
    explorer.check()


def test_changing_the_system_keeps_the_boom_length():
    explorer = explore("truck18")
    explorer.choices["system"].value = "sequenced"
    long = float(explorer.answer.boom.layout.boom_length[0])
    explorer.choices["system"].value = "synchronised"
    assert math.isclose(float(explorer.answer.boom.layout.boom_length[0]), long, rel_tol=1e-6)


def test_counterweight_support_and_parts_reach_the_setup(explorer):
    explorer.choices["counterweight"].value = "none"
    explorer.choices["support"].value = "tyres"
    explorer.choices["parts"].value = 4
    setup = explorer.answer.setup
    assert (setup.counterweight.name, setup.support.name, setup.parts) == ("none", "tyres", 4)


def test_allowances_can_be_chosen_and_take_from_what_strength_sets(explorer):
    explorer.sliders["radius"].value = 5.0
    allowed = explorer.answer.capacity
    assert explorer.choices["allowances"].value == "rule"
    assert explorer.answer.first.set_by == "strength"
    explorer.choices["allowances"].value = "none"
    assert explorer.answer.capacity > allowed
    explorer.buttons["undo"].click()
    assert explorer.choices["allowances"].value == "rule"
    assert explorer.answer.capacity == allowed


def test_less_counterweight_carries_less_where_the_crane_tips_first(explorer):
    explorer.sliders["radius"].value = 15.0
    heavy = explorer.answer.capacity
    assert explorer.answer.first.set_by == "stability"
    explorer.choices["counterweight"].value = "none"
    assert explorer.answer.capacity < heavy


def test_rated_for_this_slew_angle_the_slew_slider_changes_the_capacity(explorer):
    """All around is the least favourable of the directions square to the tipping lines."""
    explorer.sliders["radius"].value = 15.0
    around = explorer.answer.capacity
    explorer.choices["rated_for"].value = "here"
    found = []
    for degrees in (-180.0, -90.0, 0.0, 90.0):
        explorer.sliders["slew"].value = degrees
        found.append(explorer.answer.capacity)
    assert math.isclose(min(found), around, rel_tol=1e-5)
    assert max(found) > 1.05 * around


def test_us_units_change_what_is_shown_and_not_the_scene(explorer):
    before, capacity = explorer.scene, explorer.answer.capacity
    explorer.choices["units"].value = "us"
    assert explorer.scene == before
    assert math.isclose(explorer.answer.capacity, capacity, rel_tol=1e-5)
    assert abs(explorer.sliders["load"].value - 8000.0 / 0.45359237) <= 100.0
    explorer.sliders["load"].value = 20000.0
    assert math.isclose(explorer.scene.load, 20000 * 0.45359237, rel_tol=1e-9)


def test_an_unreachable_radius_is_said_and_is_no_error(explorer):
    explorer.sliders["radius"].value = 18.0
    assert "cannot put its head at a radius of 18.00 m" in explorer.svg()
    assert explorer.errors == []


@pytest.mark.parametrize("share", [0.0, 0.02, 0.5, 0.98, 1.0])
def test_the_angle_slider_shows_the_angle_that_is_drawn(explorer, share):
    radius = explorer.sliders["radius"]
    radius.value = radius.min + share * (radius.max - radius.min)
    drawn = math.degrees(explorer.answer.angle)
    # A slider stands on its nearest step.
    assert abs(explorer.sliders["angle"].value - drawn) <= 0.51 * explorer.sliders["angle"].step


@pytest.mark.parametrize("out", [(0.0,) * 4, TWO_HALVES, (1.0,) * 4])
def test_four_fifths_of_the_radius_slider_are_where_the_boom_can_be(explorer, out):
    for k, fraction in enumerate(out, start=1):
        explorer.sliders[f"section {k}"].value = fraction
    explorer.sliders["radius"].value = 0.5 * sum(_reach(explorer))
    near, far = _reach(explorer)
    radius = explorer.sliders["radius"]
    assert (far - near) / (radius.max - radius.min) > 0.8
    assert radius.min <= near + radius.step and far - radius.step <= radius.max


def _reach(explorer) -> tuple[float, float]:
    """Radii at the steepest and the lowest boom angle of a straight boom [m]."""
    machine, length = explorer.answer.setup.machine, explorer.answer.boom.layout.boom_length[0]
    angles = machine.boom.greatest_angle, machine.boom.least_angle
    near, far = (machine.heel_out + float(length) * math.cos(angle) for angle in angles)
    return near, far


def test_a_radius_that_the_boom_no_longer_reaches_stays_on_its_slider(explorer):
    explorer.sliders["radius"].value = 16.0
    for k in (3, 4):
        explorer.sliders[f"section {k}"].value = 0.0
    assert explorer.sliders["radius"].value == 16.0 <= explorer.sliders["radius"].max


def test_a_browser_that_rounds_a_following_slider_to_its_step_moves_nothing(explorer):
    """noUiSlider writes the nearest step back into the model; that is nobody's move."""
    angle = explorer.sliders["angle"]
    angle.value = angle.value + 0.4 * angle.step
    assert explorer.scene == Scene()


def test_a_moved_slider_is_never_written_back_for_the_noise_of_its_last_digits(explorer):
    """The correction would reach the browser after the next key press, and undo that."""
    slider, written = explorer.sliders["load"], []
    slider.observe(lambda change: written.append(change["new"]), names="value")
    slider.value = 8.100000000000001
    assert written == [8.100000000000001]
    assert explorer.scene.load == 8100.0


def test_undo_takes_back_one_drag_at_a_time(explorer):
    for tonnes in (8.5, 9.0, 9.5):
        explorer.sliders["load"].value = tonnes
    explorer.sliders["section 1"].value = 0.9
    explorer.buttons["undo"].click()
    assert explorer.scene == Scene(load=9500.0)
    explorer.buttons["undo"].click()
    assert explorer.scene == Scene()
    explorer.buttons["undo"].click()
    assert explorer.scene == Scene()


def test_two_drags_of_one_slider_some_time_apart_are_undone_one_by_one():
    from boomsim.lab.scene.undo_history import History

    time = [0.0]
    history = History(clock=lambda: time[0])
    history.left(Scene(load=1.0), by="load")
    time[0] = 0.5
    history.left(Scene(load=2.0), by="load")
    time[0] = 5.0
    history.left(Scene(load=3.0), by="load")
    assert history.back() == Scene(load=3.0)
    assert history.back() == Scene(load=1.0)
    assert history.back() is None


def test_reset_goes_back_to_the_start_and_can_be_undone(explorer):
    explorer.sliders["load"].value = 9.5
    explorer.buttons["reset"].click()
    assert explorer.scene == Scene()
    explorer.buttons["undo"].click()
    assert explorer.scene == Scene(load=9500.0)


def test_undo_brings_back_another_machine_with_its_sliders(explorer):
    explorer.choices["machine"].value = "bench"
    assert "section 3" not in explorer.sliders
    explorer.buttons["undo"].click()
    assert explorer.scene == Scene()
    assert "section 4" in explorer.sliders


def test_what_eats_capacity_takes_some_of_it(explorer):
    calm = explorer.answer.capacity
    for name, value in (("wind_speed", 12.0), ("lean", 2.0), ("side_pull", 3.0)):
        explorer.sliders[name].value = value
        assert explorer.answer.capacity < calm, name
        explorer.sliders[name].value = 0.0
        assert math.isclose(explorer.answer.capacity, calm, rel_tol=1e-6)


def test_the_bending_is_drawn_true_or_many_times_over(explorer):
    assert 'data-part="bend"' in explorer.svg()
    explorer.choices["exaggeration"].value = 20.0
    assert "bend × 20" in explorer.svg()
    explorer.choices["exaggeration"].value = 1.0
    assert 'data-part="bend"' not in explorer.svg()


def test_large_type_shows_the_chosen_view_beside_the_crane(explorer):
    assert explorer.buttons["beside"].layout.display == "none"
    explorer.buttons["large"].value = True
    explorer.buttons["beside"].value = "plan"
    assert explorer.look == Look(projector=True, beside="plan")
    assert 'data-view="plan"' in explorer.svg()
    assert 'data-view="limits"' not in explorer.svg()


def test_a_fault_in_a_handler_is_shown_in_the_panel_and_fails_the_check(explorer, monkeypatch):
    from boomsim.lab.widgets import explorer as module

    def broken(*_, **__):
        raise ZeroDivisionError("a fault made for this test")

    with monkeypatch.context() as patch:
        patch.setattr(module, "picture", broken)
        explorer.sliders["load"].value = 9.5
    assert "a fault made for this test" in explorer.panel.error.value
    assert 'role="alert"' in explorer.panel.error.value
    assert explorer.scene == Scene(), "a scene that cannot be drawn is not gone to"
    assert explorer.sliders["load"].value == 8.0
    with pytest.raises(RuntimeError, match="a fault made for this test"):
        explorer.check()
    explorer.errors.clear()
    explorer.sliders["load"].value = 9.0
    assert explorer.panel.error.value == ""


def test_every_slider_has_a_label_a_class_of_its_own_and_room_for_the_arrow_keys(explorer):
    for name, slider in explorer.sliders.items():
        assert slider.description, name
        assert any(c.startswith("boomsim-") for c in slider._dom_classes), name
        if hasattr(slider, "step"):
            assert (slider.max - slider.min) / slider.step <= 1500, name


def test_a_scene_with_the_sections_near_their_locks_is_brought_to_them():
    explorer = Explorer(Scene(extension=(0.0, 0.0, 0.4501, 0.449)))
    assert explorer.scene.extension == TWO_HALVES
    explorer.check()


def test_a_scene_that_a_pinned_boom_cannot_hold_is_refused():
    with pytest.raises(ValueError, match=r"cannot lock at 30 %"):
        Explorer(Scene(extension=(0.3, 0.0, 0.0, 0.0)))


def test_capacity_does_not_depend_on_the_load_that_hangs(explorer):
    found = []
    for tonnes in (0.0, 5.0, 30.0):
        explorer.sliders["load"].value = tonnes
        found.append(explorer.answer.capacity)
    assert np.ptp(found) < 1e-6 * found[0]


def test_thicker_plates_give_strength_and_take_stability(explorer):
    explorer.go_to(Scene(extension=(0.0, 0.0, 0.0, 0.9), radius=10.0, load=8000.0))
    thin = explorer.answer
    explorer.sliders["plates"].value = 1.3
    assert explorer.scene.plates == 1.3
    stout = explorer.answer
    assert "plates x 1.3" in explorer.svg()
    # As it is, strength sets this figure; built stout, stability does, and it is a larger one.
    assert thin.first.set_by == "strength"
    assert stout.first.set_by == "stability"
    assert stout.capacity > thin.capacity
    explorer.sliders["radius"].value = 16.0
    far_stout = explorer.answer.capacity
    explorer.sliders["plates"].value = 1.0
    assert explorer.answer.first.set_by == "stability"
    assert explorer.answer.capacity > far_stout


def test_plates_are_undone_like_any_other_move(explorer):
    explorer.sliders["plates"].value = 1.3
    explorer.buttons["undo"].click()
    assert explorer.scene == Scene()
    assert explorer.sliders["plates"].value == 1.0


def test_a_held_light_boom_stays_light_beside_a_stout_one(explorer):
    explorer.sliders["plates"].value = 0.8
    explorer.hold()
    light = explorer.answer.capacity
    explorer.sliders["plates"].value = 1.3
    assert f'data-held-capacity="{light:.3f}"' in explorer.panel.held.value
    assert explorer.answer.capacity != pytest.approx(light, rel=1e-3)


def test_plates_that_do_not_fit_are_refused_and_the_slider_goes_back():
    made = explore("bench")
    made.sliders["plates"].value = 1.5
    assert "plates x 1.4 fits" in made.panel.error.value
    assert made.scene.plates == 1.0
    assert made.sliders["plates"].value == 1.0


def test_another_machine_begins_with_its_own_plates(explorer):
    explorer.sliders["plates"].value = 1.3
    explorer.choices["machine"].value = "truck18"
    assert explorer.scene.plates == 1.0
    assert explorer.sliders["plates"].value == 1.0


@pytest.mark.parametrize("plates", [0.5, 1.9, float("nan"), "1.3", True])
def test_a_scene_with_no_such_plates_is_refused(plates):
    with pytest.raises(ValueError, match="plates"):
        Explorer(Scene(plates=plates))


def test_the_parts_of_line_that_are_offered_are_those_the_rope_reaches_for():
    """By hand: what is left of the rope after lead line and kept turns, over the head's height."""
    made = Explorer(Scene())
    machine = load_machine("yard60")
    for extension in ((0.0, 0.0, 0.45, 0.45), (1.0, 1.0, 1.0, 1.0)):
        made.go_to(replace(made.scene, extension=extension))
        length = float(layout(machine.boom, extension=np.array(extension)).boom_length[0])
        reached = parts_by_hand(machine, length=length, most=12)
        offered = made.choices["parts"].options
        assert max(offered) == reached
        assert made.choices["parts"].value == reached
    assert made.scene.parts is None
    made.check()
