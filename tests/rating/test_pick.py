"""May I make this pick? Each check can fail, each can be open, and no answer is leave to lift."""

import json
import re
from dataclasses import replace
from math import radians

import numpy as np
import pytest
from reeving_by_hand import falls_by_hand, head_by_hand, parts_by_hand

import boomsim as bs
from boomsim.caution import CAUTION
from boomsim.cli import main
from boomsim.gravity import GRAVITY
from boomsim.machine.machine_files import load_machine
from boomsim.rating.capacity import rate
from boomsim.rating.lift.lift_study import lift
from boomsim.rating.pick.pick_asked import Asked, slews
from boomsim.rating.pick.pick_checks import BEYOND, NOTED, UNKNOWN, WITHIN
from boomsim.rating.pick.pick_sentences import NO_LEAVE, tell_check, tell_verdict
from boomsim.rating.pick.pick_study import Pick, pick
from boomsim.rating.setup import set_up

WAY = (0.0, 0.0, 0.45, 0.45)
ALL_KNOWN = Asked(
    radius=9.8,
    load=12_000.0,
    swing=(0.0, radians(90.0)),
    wind=6.0,
    load_area=1e-3,
    level=radians(0.3),
    bearing=300e3,
    mat=1.5,
    block=25_000.0,
)
"""A pick that is within by every check."""

PERMISSION = re.compile(
    r"\b(safe(ly)?|go ahead|you may|may be lifted|allowed|approved?|permission|permitted|ok(ay)?|"
    r"cleared|good to go)\b",
    re.IGNORECASE,
)
"""Words that sound like leave to lift."""

FAILS = {
    "radius": {"radius": 17.4, "load": 500.0},
    "sector": {"sector": "rear"},
    "ground": {"bearing": 150e3},
    "wind": {"wind": 9.5},
    "level": {"level": radians(0.6)},
    "chart": {"load": 17_500.0, "mat": 3.0},
    "block": {"block": 12_000.0},
}
"""What makes a check fail."""

OPEN = {"ground": "bearing", "wind": "wind", "level": "level", "block": "block"}
"""What leaves a check open when nobody has looked."""


def judged(way=WAY, name="yard60", **changes) -> Pick:
    return pick(
        set_up(load_machine(name)), extension=np.array(way), asked=replace(ALL_KNOWN, **changes)
    )


def states(found: Pick) -> dict[str, str]:
    return {check.key: check.state for check in found.checks}


def told(found: Pick, units: str = "metric") -> str:
    from boomsim.reports.pick_report import as_text

    return " ".join(as_text(found, units=units).split())


def test_a_pick_is_within_only_by_every_check():
    found = judged()
    assert found.state == WITHIN
    assert set(states(found).values()) == {WITHIN, NOTED}
    assert list(states(found)) == [
        "radius", "way out", "sector", "supports", "ground", "deductions", "wind", "level", "chart",
        "rope", "block",
    ]  # fmt: skip


@pytest.mark.parametrize(("key", "changes"), FAILS.items())
def test_each_check_can_fail_and_is_named(key, changes):
    found = judged(**changes)
    assert states(found)[key] == BEYOND
    assert found.state == BEYOND
    title = next(check.title for check in found.checks if check.key == key)
    said = tell_verdict(found, units="metric")
    assert said.startswith("On this model: not within, by the check of the ")
    assert f"the {title}" in said


@pytest.mark.parametrize(("key", "name"), OPEN.items())
def test_what_nobody_has_looked_at_leaves_the_pick_undecided(key, name):
    found = judged(**{name: None})
    assert states(found)[key] == UNKNOWN
    assert found.state == UNKNOWN
    assert "undecided" in tell_verdict(found, units="metric")


def test_too_few_parts_of_line_and_a_way_that_the_boom_has_not_fail():
    setup = replace(set_up(load_machine("yard60")), parts=2)
    found = pick(setup, extension=np.array(WAY), asked=ALL_KNOWN)
    assert states(found)["rope"] == BEYOND
    assert states(judged((0.3, 0.9, 0.0), "truck18", radius=7.0, load=500.0))["way out"] == BEYOND
    assert states(judged((0.4, 0.4, 0.4), "truck18", radius=7.0, load=500.0))["way out"] == WITHIN


def test_floats_that_lift_on_the_way_are_listed_as_one_speaks():
    found = judged(way=(0, 0, 0, 0.9), radius=9.4, load=15_300.0, swing=None)
    force = found.found.ground.force
    assert [bool(np.any(one <= 0.0)) for one in force] == [True] * 4
    four = "On the way front left, front right, rear right and rear left would leave the ground"
    assert four in told(found)


def test_a_load_that_turns_the_crane_over_fails_by_the_outriggers():
    found = judged(load=30_000.0, radius=11.0)
    assert states(found)["supports"] == BEYOND
    assert states(found)["ground"] == BEYOND
    assert found.tips_at < 1.0


@pytest.mark.parametrize("units", ["metric", "us"])
@pytest.mark.parametrize("changes", [{}, {"wind": None}, {"load": 17_500.0}, FAILS["radius"]])
def test_no_answer_reads_as_leave_to_lift(changes, units):
    said = told(judged(**changes), units)
    verdict = said.split(NO_LEAVE)[0]
    assert NO_LEAVE in said
    assert said.endswith(CAUTION)
    assert not PERMISSION.search(said.replace(CAUTION, "")), PERMISSION.search(said)
    assert verdict.startswith("On this model:")


def gross_by_hand(found: Pick) -> float:
    """12 t, 550 kg of hook block and slings, and the falls from the straight boom's head [kg]."""
    machine, length = found.setup.machine, float(found.found.boom.layout.boom_length[0])
    height = head_by_hand(machine, length=length, angle=found.found.angle)
    parts = parts_by_hand(machine, length=length, most=found.setup.parts)
    return 12_550.0 + parts * height * machine.hoist.rope_mass


def test_the_radius_grows_by_what_the_boom_bends_between_the_empty_hook_and_the_load():
    found = judged()
    setup = set_up(load_machine("yard60"))
    length = found.found.boom.layout.boom_length[0]
    rope = falls_by_hand(setup.machine, length=length, radius=9.8, most=setup.parts)
    empty = lift(setup, extension=np.array(WAY), load=550.0 + rope, radius=9.8)
    gross = gross_by_hand(found)
    full = lift(setup, extension=np.array(WAY), load=gross, angle=empty.boom_angle)
    # Two searches of the same angle, each to some 1e-9.
    assert found.found.radius == pytest.approx(full.radius, abs=1e-6)
    assert found.found.growth > 0.05


def test_the_chart_is_read_for_the_grown_radius_at_the_next_larger_row():
    found = judged(radius=9.95)
    assert found.found.radius > 10.0
    reading = found.found.reading
    assert reading is not None
    assert reading.row_radius == 11.0
    rated = rate(found.setup, extension=np.array(WAY), radius=np.array([11.0])).capacity[0, 0]
    assert 0.0 <= rated - reading.cell < 50.0
    assert "radius grows" in {wrong.key for wrong in found.mistakes}


def test_floats_carry_the_whole_weight_and_press_it_on_their_mats():
    """Source: sum of the weights. Status: worked."""
    found = judged()
    machine, ground = found.setup.machine, found.found.ground
    assert ground is not None
    own = sum(machine.boom.section_masses) + machine.boom.head.mass + machine.cylinder.mass
    own += sum(part.mass for part in (*machine.carrier, *machine.superstructure))
    weight = GRAVITY * (own + found.setup.counterweight.mass + gross_by_hand(found))
    # Sums of the same masses: rounding only.
    assert ground.force.sum(axis=0) == pytest.approx(weight, rel=1e-9)
    assert found.found.pressure == pytest.approx(ground.force.max() / 1.5, rel=1e-12)


def test_the_swing_is_looked_at_all_the_way_and_over_its_corners():
    setup = set_up(load_machine("yard60"))
    passed = np.degrees(slews(setup, ALL_KNOWN))
    assert passed[0] == 0.0
    assert passed[-1] == pytest.approx(90.0)
    assert np.diff(passed).max() <= 1.0 + 1e-9
    corner = np.degrees(np.arctan2(2.9, 2.15))
    assert np.abs(passed - corner).min() < 1e-9
    # Through the front, written beyond a half turn.
    assert np.degrees(slews(setup, replace(ALL_KNOWN, swing=(2.0, 4.0)))[-1]) == pytest.approx(
        np.degrees(4.0)
    )


def test_a_swing_within_the_rear_sector_takes_its_chart_and_one_out_of_it_does_not():
    assert judged(swing=(radians(-40.0), radians(40.0))).setup.sector == "over the rear"
    assert judged(swing=(radians(-40.0), radians(60.0))).setup.sector == "all around"
    assert judged(swing=None).setup.sector == "all around"


def test_what_mistakes_would_have_given_is_more_than_the_chart_holds():
    found = judged(radius=9.95)
    assert {"forgot deductions", "radius misread"} <= {wrong.key for wrong in found.mistakes}
    reading = found.found.reading
    assert reading is not None
    assert all(wrong.net > reading.net for wrong in found.mistakes)


def test_the_margin_is_the_tipping_load_with_wind_and_lean_over_the_gross_load():
    found = judged()
    calm = judged(wind=0.0, level=0.0)
    assert found.tips_at < calm.tips_at
    at = lift(
        replace(found.setup, slew=slews(found.setup, ALL_KNOWN)),
        extension=np.array(WAY),
        load=gross_by_hand(found),
        angle=found.found.angle,
    )
    assert calm.tips_at == pytest.approx(at.tipping_load / gross_by_hand(found), rel=1e-9)


@pytest.mark.slow
def test_every_check_has_a_sentence_that_is_one():
    for changes in ({}, *FAILS.values(), *({name: None} for name in OPEN.values())):
        found = judged(**changes)
        for check in found.checks:
            said = tell_check(check, found.found, units="metric")
            assert said[0].isupper() or said[0] in "(0123456789"
            assert said.endswith(".")
            assert "nan" not in said


@pytest.mark.parametrize(
    ("changes", "named"),
    [
        ({"radius": -1.0}, "--radius"),
        ({"load": 0.0}, "--load"),
        ({"wind": 100.0}, "--wind"),
        ({"level": -0.1}, "--level"),
        ({"bearing": 1.0}, "--bearing"),
        ({"mat": 0.01}, "mat of"),
        ({"radius": 60.0}, "cannot hang its hook"),
        ({"swing": (0.0, 1.0, 2.0)}, "no swing"),
    ],
)
def test_figures_that_nobody_can_have_measured_are_refused(changes, named):
    with pytest.raises(ValueError, match=named):
        judged(**changes)


def test_the_command_answers_as_json_and_refuses_without_a_word_on_standard_output(capsys):
    words = ["pick", "--extension", "0,0,45,45", "--radius", "9.8 m", "--load", "12 t"]
    assert main([*words, "--json"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert found["caution"] == CAUTION
    assert found["state"] == UNKNOWN
    assert [row["check"] for row in found["checks"]] == list(states(judged()))
    assert main([*words, "--wind", "strong"]) == 2
    assert capsys.readouterr().out == ""


def test_the_face_reads_text_and_numbers_alike():
    one = bs.pick(radius="9.8 m", load="12 t", extension="0,0,45,45", slew="0 deg, 90 deg")
    other = bs.pick(radius=9.8, load=12_000.0, extension=WAY, slew=(0.0, radians(90.0)))
    assert one.to_dict() == other.to_dict()
    assert [row["state"] for row in one.rows()].count(UNKNOWN) == 4
