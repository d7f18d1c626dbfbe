"""Past the rated load on a live page: what `boomsim overload` says, in its order."""

import contextlib
import io
import json
import re
from dataclasses import replace

import numpy as np
import pytest
from lab.test_live_ways import asked

from boomsim.cli import main
from boomsim.figures.side.bent_axis import bent
from boomsim.lab.live.failing_boom import (
    DROPS,
    FOLDS,
    LOWERS,
    SLIDES,
    SWAYS,
    TEARS,
    WHOLE_BOOM,
    Way,
    fallen,
    way_of,
)
from boomsim.lab.live.live_model import Live
from boomsim.lab.live.posed_crane import Pose, sheave_of
from boomsim.lab.live.scene_address import to_address
from boomsim.lab.scene.scene import Look, Scene, first_scene, machine_of, setup_of
from boomsim.mechanics.boom.condense import condense
from boomsim.rating.lift_response import respond
from boomsim.rating.limits.limit_kind import GIVES_WAY, Limit
from boomsim.rating.limits.limit_table import KINDS
from boomsim.rating.limits.ultimate_values import with_ultimates
from boomsim.units import show

TIPS = Scene(extension=(0.0, 0.0, 0.45, 0.45), radius=9.6, load=23_000.0)
BREAKS = Scene(extension=(0.0, 0.0, 0.0, 0.9), radius=4.0, load=52_000.0)
SIDEWAYS = replace(TIPS, rated_for="here", slew=round(np.pi / 2, 9))
MACHINES = [first_scene(name) for name in ("truck18", "bench")]


def told(scene: Scene, layout: str = "desk") -> dict:
    return asked(Live(to_address(scene, Look()), layout=layout), do="past")["past"]


def by_command(scene: Scene) -> dict:
    """What the command says of the same lift."""
    slew = f"{scene.slew!r} rad" if scene.rated_for == "here" else scene.rated_for
    words = ["overload", scene.machine, "--json", "--radius", f"{scene.radius!r} m"]
    words += ["--extension", ",".join(repr(100 * f) for f in scene.extension), f"--slew={slew}"]
    out = io.StringIO()
    with contextlib.redirect_stdout(out):
        assert main(words) == 0
    return json.loads(out.getvalue())


@pytest.mark.slow
@pytest.mark.parametrize("scene", [TIPS, BREAKS, SIDEWAYS, *MACHINES])
def test_the_events_are_the_commands_in_its_order_with_its_loads(scene):
    mine, theirs = told(scene), by_command(scene)
    assert [one["kind"] for one in mine["order"]] == [one["kind"] for one in theirs["events"]]
    for one, other in zip(mine["order"], theirs["events"], strict=True):
        assert one["load"] == show(other["load"], "mass")
        assert other["words"] in one["words"]
    first = "It tips first" if theirs["warns"] else "It breaks first"
    assert mine["said"][0].startswith(first)


@pytest.mark.parametrize("scene", [TIPS, BREAKS, SIDEWAYS, *MACHINES])
def test_the_load_rises_to_the_end_and_what_is_felt_is_the_studys(scene):
    mine, theirs = told(scene), by_command(scene)
    felt, rising = theirs["feel"], mine["frames"][: mine["rising"]]
    ends = min(one for one in (theirs["failure"], theirs["tipping"]) if one is not None)
    assert rising[-1]["load"] == show(ends, "mass")
    step = (len(felt["load"]) - 1) // (len(rising) - 1)
    for number, one in enumerate(rising):
        assert one["load"] == show(felt["load"][number * step], "mass")
        assert one["radius"] == show(felt["radius"][number * step], "length")
    rated = mine["frames"][mine["rated"]]["load"]
    assert rated == show(next(x for x in felt["load"][::step] if x >= theirs["rated"]), "mass")


@pytest.mark.parametrize("scene", [TIPS, BREAKS, SIDEWAYS, *MACHINES])
def test_an_event_has_happened_from_its_own_load_on_and_what_ends_it_ends_it(scene):
    mine, theirs = told(scene), by_command(scene)
    ends = min(one for one in (theirs["failure"], theirs["tipping"]) if one is not None)
    felt = theirs["feel"]["load"][:: (len(theirs["feel"]["load"]) - 1) // (mine["rising"] - 1)]
    for one, event in zip(mine["order"], theirs["events"], strict=True):
        if event["load"] > ends:
            assert one["from"] is None
        elif event["load"] == ends:
            assert one["from"] == mine["rising"]
        else:
            assert felt[one["from"]] >= event["load"] * (1.0 - 1e-5)
            assert one["from"] == 0 or felt[one["from"] - 1] < event["load"]


@pytest.mark.parametrize(("load", "ends"), [(8_000.0, False), (21_900.0, False), (22_100.0, True)])
def test_it_ends_by_itself_only_under_a_load_that_ends_it(load, ends):
    """It tips under 22.01 t by the command; the rated load is 18.78 t."""
    assert told(replace(TIPS, load=load))["ends"] == ends


def test_a_crane_that_tips_leans_farther_in_every_picture_about_its_own_tipping_line():
    """Over the rear the line joins the rear floats: where they stand is in the machine file."""
    live, story = Live(to_address(TIPS, Look())), told(TIPS)
    frame = asked(live, do="drop")["frame"]
    rear = max(x for x, _ in machine_of("yard60").supports[0].points)
    leans = []
    for number in range(story["rising"] - 1, len(story["frames"]), 4):
        picture = asked(live, do="frame", number=number)["frame"]
        lean, x, y = re.search(r'data-lean="([-\d.]+)" transform="rotate\([-\d.]+ ([\d.]+) ([\d.]+)', picture).groups()  # fmt: skip # noqa: E501
        assert float(x) == pytest.approx(frame[0] + rear * frame[2], abs=0.1)
        assert float(y) == pytest.approx(frame[1], abs=0.1)
        leans.append(float(lean))
    assert leans[0] == 0.0
    assert np.all(np.diff(leans) > 0.0)
    assert leans[-1] > 15.0


def test_while_it_goes_over_the_moment_that_pulls_it_grows_and_none_holds_it():
    """Arms shorten and heights move out as it leans, so nothing brings it back."""
    story = told(TIPS)
    notes = [one["note"] for one in story["frames"][story["rising"] :]]
    pulls = [float(re.search(r"([\d,.]+) kN m pull", one)[1].replace(",", "")) for one in notes]
    assert np.all(np.diff(pulls) > 0.0)
    assert not any("hold it" in one for one in notes)


def test_where_it_breaks_first_the_carrier_stands_in_every_picture():
    live, story = Live(to_address(BREAKS, Look())), told(BREAKS)
    for number in range(story["rising"], len(story["frames"]), 3):
        assert 'data-lean="0.00"' in asked(live, do="frame", number=number)["frame"]
        assert "the carrier is still standing" in story["frames"][number]["note"]


def test_nothing_that_is_felt_is_said_of_a_crane_that_is_falling():
    for scene in (TIPS, BREAKS):
        story = told(scene)
        assert {one["light"] for one in story["frames"][story["rising"] :]} == {"–"}
        assert {one["radius"] for one in story["frames"][story["rising"] :]} == {"–"}


def test_where_nothing_may_be_lifted_there_is_one_sentence():
    story = told(replace(TIPS, radius=60.0))
    assert list(story) == ["trouble"]
    assert story["trouble"]


@pytest.mark.parametrize("layout", ["desk", "phone", "wall"])
def test_every_layout_has_its_pictures(layout):
    live = Live(to_address(BREAKS, Look()), layout=layout)
    for number in (0, 20, 99):
        picture = asked(live, do="frame", number=number)["frame"]
        assert picture.count("<svg") == picture.count("</svg>") == 1
        assert ('data-view="plan"' in picture) == (layout != "phone")
        assert "nan" not in picture


# --- Shapes of what gives way --------------------------------------------------------------------


def lifted(scene: Scene):
    setup = setup_of(scene)
    boom = condense(setup.machine, extension=np.array(scene.extension))
    return respond(setup, boom=boom, load=np.array([[scene.load]]), radius=np.array([[scene.radius]]))  # fmt: skip # noqa: E501


def shape_of(at):
    return bent(at.boom, angle=float(at.state.angle[0, 0]), rotation=at.state.rotation[0, :, 0])


def test_every_kind_that_can_give_way_has_its_own_way_to_go():
    """No new limit goes without: it folds where it is used most, or is named."""
    at = lifted(replace(TIPS, load=8_000.0))
    for kind in with_ultimates(KINDS):
        if kind.passed != GIVES_WAY:
            continue
        section = None if kind.of == "whole" else 3
        way = way_of(Limit(kind=kind, section=section), at)
        if section is None:
            assert kind.name in WHOLE_BOOM, kind.name
        elif way.how == FOLDS:
            tail, front = at.boom.layout.tail[0, 3], at.boom.layout.front[0, 3]
            assert tail - 1e-9 <= way.place <= front + 1e-9
        else:
            assert (way.how, kind.name) == (SLIDES, "lock")


@pytest.mark.parametrize("share", [0.0, 0.4, 1.0])
def test_a_fold_leaves_what_lies_before_it_and_bends_nothing_beyond_it(share):
    at = lifted(replace(TIPS, load=8_000.0))
    before = shape_of(at)
    place = float(at.boom.layout.front[0, 2]) + 1.0
    after = fallen(Way(how=FOLDS, section=3, place=place), at, share)
    along = at.boom.layout.tail[0][:, None] + before.along
    stays = along <= place
    assert np.array_equal(after.axis[stays], before.axis[stays])
    beyond = ~stays[4]
    steps = [
        np.linalg.norm(np.diff(one.axis[4][beyond], axis=0), axis=1) for one in (before, after)
    ]
    assert steps[1] == pytest.approx(steps[0])
    assert (after.sheave[1] < before.sheave[1]) == (share > 0.0)


def test_other_ways_to_go_end_where_they_must():
    at = lifted(replace(TIPS, load=8_000.0))
    before = shape_of(at)
    heel = np.array([at.boom.machine.heel_out, at.boom.machine.heel_up])
    lowered = fallen(Way(how=LOWERS), at, 1.0)
    assert np.linalg.norm(lowered.sheave - heel) == pytest.approx(
        np.linalg.norm(before.sheave - heel)
    )
    drawn_in = fallen(Way(how=SLIDES, section=3), at, 1.0)
    stroke = machine_of("yard60").boom.sections[3].stroke
    assert np.linalg.norm(drawn_in.sheave - before.sheave) == pytest.approx(0.45 * stroke)
    swayed = fallen(Way(how=SWAYS), at, 1.0)
    assert swayed.sheave[1] < before.sheave[1]
    for how in (DROPS, TEARS):  # the boom keeps its shape: the load, or the whole of it, goes
        assert np.array_equal(fallen(Way(how=how), at, 1.0).axis, before.axis)


def test_a_lean_turns_the_head_about_the_tipping_line_and_the_rope_hangs_plumb():
    """Rotation by hand: 30 degrees clockwise about (3, 0)."""
    shape = shape_of(lifted(replace(TIPS, load=8_000.0)))
    pose = Pose(shape=shape, slew=0.0, about=3.0, lean=np.pi / 6, rope=5.0)
    x, y = shape.sheave - (3.0, 0.0)
    expected = [3.0 + x * 3**0.5 / 2 + y / 2, y * 3**0.5 / 2 - x / 2]
    assert sheave_of(pose) == pytest.approx(expected)
