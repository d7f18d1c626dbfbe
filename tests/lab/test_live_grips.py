"""Taking hold of boom and load on a live page: what moves, and what stays."""

from dataclasses import replace

import numpy as np
import pytest
from lab.test_live_ways import asked, length_of

from boomsim.lab.live.live_model import Live
from boomsim.lab.live.scene_address import to_address
from boomsim.lab.live.sliding_sections import ended, next_length, slides, traded, with_length
from boomsim.lab.scene.scene import Look, Scene, first_scene, machine_of

FREE = Scene(system="free", extension=(0.2, 0.5, 0.4, 0.7), radius=11.0)
PINNED = Scene(extension=(0.0, 0.0, 0.45, 0.45), radius=9.6)


def opened(scene: Scene) -> Live:
    return Live(to_address(scene, Look()))


def head(live: Live) -> np.ndarray:
    """Where the head sheave is, (out, up) from the axis of rotation [m]."""
    at = live.answer.at
    return np.array([at.placed.head_out[0, 0], at.placed.head_up[0, 0]])


def drag(live: Live, grip: str, **where) -> dict:
    return asked(live, do="drag", grip=grip, frame=[130.0, 364.0, 15.0], **where)


# --- Sections against each other -----------------------------------------------------------------


@pytest.mark.parametrize("section", [1, 2, 3, 4])
@pytest.mark.parametrize("wanted", [0.0, 0.3, 1.0])
def test_sections_that_slide_against_each_other_leave_the_length(section, wanted):
    for scene, near in ((FREE, 1e-6), (PINNED, 0.2)):  # locks: lengths within 0.10 m count as one
        after = traded(scene, section=section, fraction=wanted)
        assert length_of("yard60", after.extension) == pytest.approx(
            length_of("yard60", scene.extension), abs=near
        )
        assert all(0.0 <= f <= 1.0 for f in after.extension)


def test_a_free_section_gets_what_it_asks_for_while_others_can_give_it():
    after = traded(FREE, section=2, fraction=0.8)
    assert after.extension[1] == pytest.approx(0.8)
    assert after.extension[0] == FREE.extension[0]  # the next one ahead gives first


def test_a_pinned_section_stops_where_it_locks():
    locks = machine_of("yard60").boom.lock_positions
    for front in np.linspace(9.0, 19.0, 21):
        for keeps in (True, False):
            after = ended(PINNED, section=3, front=float(front), keeps_length=keeps)
            assert all(min(abs(f - lock) for lock in locks) < 1e-12 for f in after.extension)


@pytest.mark.parametrize("keeps", [True, False])
@pytest.mark.parametrize("scene", [FREE, PINNED])
def test_an_end_put_where_it_is_stays(scene, keeps):
    boom = machine_of("yard60").boom
    front = boom.sections[0].length + sum(
        s.nose + s.stroke * f for s, f in zip(boom.sections[1:3], scene.extension[:2], strict=True)
    )
    after = ended(scene, section=2, front=front, keeps_length=keeps)
    assert after.extension == pytest.approx(scene.extension, abs=1e-9)


@pytest.mark.parametrize("wanted", [11.0, 13.7, 20.0, 31.0, 60.0])
def test_a_free_boom_gets_any_length_between_its_ends(wanted):
    shortest, longest = (length_of("yard60", (f,) * 4) for f in (0.0, 1.0))
    after = with_length(FREE, length=wanted)
    reached = min(max(wanted, shortest), longest)
    assert length_of("yard60", after.extension) == pytest.approx(reached, abs=1e-6)


@pytest.mark.parametrize("way", [1, -1])
def test_a_pinned_boom_goes_to_its_next_length_and_to_no_end_past_its_ends(way):
    scene, lengths = PINNED, []
    for _ in range(400):
        lengths.append(length_of("yard60", scene.extension))
        scene = next_length(scene, way=way, step=0.02)
    assert np.all(way * np.diff(lengths) >= 0.0)
    assert scene.extension == pytest.approx((1.0,) * 4 if way > 0 else (0.0,) * 4)


# --- Drags ---------------------------------------------------------------------------------------


@pytest.mark.parametrize("place", [(5.0, 20.0), (9.0, 18.0), (14.0, 14.0), (17.0, 9.0)])
def test_the_tip_goes_towards_the_pointer_and_the_length_stays(place):
    live = opened(PINNED)
    drag(live, "tip", place=place)
    heel = np.array([machine_of("yard60").heel_out, machine_of("yard60").heel_up])
    to, way = np.array(place) - heel, head(live) - heel
    off = abs(np.arctan2(to[1], to[0]) - np.arctan2(way[1], way[0]))
    # Radii are rounded to 0.1 m, and the boom bends otherwise there.
    assert off * np.hypot(*way) < 0.2
    assert live.scene.extension == PINNED.extension


@pytest.mark.parametrize("up", [10.0, 16.0, 22.0, 28.0])
def test_with_the_radius_kept_the_tip_goes_up_and_down_and_the_load_stays_where_it_is(up):
    live = opened(FREE)
    asked(live, do="move", name="keep", value="radius")
    drag(live, "tip", place=(30.0, up))
    assert head(live) == pytest.approx([FREE.radius, up], abs=0.15)


@pytest.mark.parametrize("further", [-4.0, 2.0, 5.0])
def test_with_the_angle_kept_the_boom_grows_along_itself(further):
    live = opened(FREE)
    asked(live, do="move", name="keep", value="angle")
    angle, start = live.answer.angle, head(live)
    along = np.array([np.cos(angle), np.sin(angle)])
    drag(live, "tip", place=tuple(start + further * along))
    assert live.answer.angle == pytest.approx(angle)
    assert (head(live) - start) @ along == pytest.approx(further, abs=0.1)


def test_a_drag_that_goes_on_lands_where_one_drag_would():
    """Each step says where the pointer is, not how far it went: nothing adds up."""
    once, often = opened(FREE), opened(FREE)
    for live in (once, often):
        asked(live, do="move", name="keep", value="radius")
    drag(once, "tip", place=(11.0, 24.0))
    for up in np.linspace(16.0, 24.0, 9):
        drag(often, "tip", place=(11.0, float(up)))
    assert head(often) == pytest.approx(head(once), abs=0.02)


def test_the_load_goes_sideways_to_a_radius_and_up_and_down_to_a_mass():
    live = opened(PINNED)
    drag(live, "load", place=(12.34, 1.0))
    assert live.scene.radius == pytest.approx(12.3)  # to the slider's step
    drag(live, "load", load=14_321.0)
    assert live.scene.load == pytest.approx(14_300.0)
    drag(live, "load", load=-5.0)
    assert live.scene.load == 0.0


def test_the_picture_keeps_its_scale_until_what_is_dragged_is_let_go():
    live = opened(FREE)
    before = asked(live, do="move", name="keep", value="radius")["frame"]
    during = asked(live, do="drag", grip="tip", frame=before, place=[11.0, 30.0])["frame"]
    assert during == before
    assert asked(live, do="drop")["frame"][2] < before[2]


@pytest.mark.parametrize("machine", ["yard60", "truck18", "bench"])
def test_every_grip_goes_by_the_keyboard_and_comes_back(machine):
    live = opened(first_scene(machine))
    for grip in [one["name"] for one in asked(live, do="drop")["grips"]]:
        for there, back in (("up", "down"), ("down", "up"), ("right", "left"), ("left", "right")):
            before = live.scene
            told = asked(live, do="nudge", grip=grip, key=there, large=False)
            assert told["trouble"] == "", (grip, there)
            if live.scene == before:
                continue  # it is at its end
            if grip.startswith("section") and not slides(before):
                continue  # to draw in a section that is out, those after it come in first
            asked(live, do="nudge", grip=grip, key=back, large=False)
            length = length_of(machine, live.scene.extension)
            assert length == pytest.approx(length_of(machine, before.extension), abs=0.25)
            assert live.scene.load == pytest.approx(before.load)
            # From a start between two steps the way back ends on a step.
            assert live.scene.radius == pytest.approx(before.radius, abs=0.11)
            asked(live, do="go", address=to_address(before, Look(), keep=live.keep))


def test_what_a_grip_says_is_what_the_scene_is():
    told = asked(opened(PINNED), do="drop")
    grips = {one["name"]: one for one in told["grips"]}
    assert list(grips) == ["tip", "section 1", "section 2", "section 3", "load"]
    assert grips["section 3"]["says"] == "45 % out"
    assert "rated" in grips["load"]["says"]
    for one in grips.values():
        assert one["least"] <= one["value"] <= one["most"]
    places = [np.array(one["place"]) for one in grips.values()]
    apart = [np.hypot(*(a - b)) for k, a in enumerate(places) for b in places[:k]]
    assert min(apart) >= 24.0  # a finger finds one of them


def test_where_sections_are_coupled_no_length_can_be_kept():
    live = opened(first_scene("truck18"))
    controls = {one["name"]: one for one in asked(live, do="drop")["controls"]}
    assert [value for value, _ in controls["keep"]["options"]] == ["radius", "angle"]
    assert "cannot be kept" in asked(live, do="move", name="keep", value="length")["trouble"]


def test_a_section_that_no_other_way_of_the_length_moves_says_what_to_do():
    live = opened(Scene(extension=(0.0,) * 4, radius=6.0))
    told = asked(live, do="move", name="section 2", value=0.45)
    assert "Keep the radius" in told["trouble"]
    assert live.scene.extension == (0.0,) * 4


def test_undo_and_redo_lead_back_and_forth_and_a_new_move_ends_the_way_forward():
    live = opened(PINNED)
    loads = [9_000.0, 10_000.0]
    for load in loads:
        asked(live, do="go", address=to_address(replace(PINNED, load=load), Look()))
    assert asked(live, do="undo")["redo"]
    assert live.scene.load == loads[0]
    asked(live, do="redo")
    assert live.scene.load == loads[1]
    asked(live, do="undo")
    told = asked(live, do="move", name="slew", value=20.0)
    assert not told["redo"]
    asked(live, do="redo")
    assert live.scene.load == loads[0]
