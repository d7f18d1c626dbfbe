"""A load kept while the boom is lowered: how far it may go, and where it would break or tip."""

import json
import re
from dataclasses import replace
from math import acos, degrees, radians

import numpy as np
import pytest

from boomsim.cli import main
from boomsim.machine.machine_files import load_machine
from boomsim.machine.model import CarrierMass, Machine
from boomsim.mechanics.boom.condense import condense
from boomsim.rating.capacity import rate
from boomsim.rating.empty_hook.empty_hook_study import empty_hook
from boomsim.rating.limits.limit_sentences import WHAT_SETS
from boomsim.rating.overload.failure_loads import Ends, ends_of
from boomsim.rating.path.lowering_sentences import tell_lowering, tell_what_sets
from boomsim.rating.path.lowering_study import Lowering, lower
from boomsim.rating.setup import Setup, set_up
from tests.making import RIGID, bare_machine, even_bar, invented_crane, set_up_by_hand

LENGTH, SPREAD = 30.0, 3.0
"""Boom of the bare crane, and its tipping lines from the axis [m]."""

CARRIER, BAR, LOAD = 12_000.0, 50.0, 1_500.0
"""Masses of its carrier [kg], of a metre of its boom [kg/m], of what hangs on it [kg]."""

LIFTS = {
    "stability sets it": ("yard60", (0.0, 0.0, 0.0, 0.9), 12e3),
    "the slewing ring sets it": ("yard60", (0.0, 0.0, 0.0, 0.0), 39e3),
    "strength sets it": ("yard60", (0.0, 0.0, 0.0, 0.9), 22e3),
    "the longest boom": ("yard60", (1.0, 1.0, 1.0, 1.0), 2e3),
    "a truck": ("truck18", (0.5, 0.5, 0.5), 3e3),
}


def bare_crane() -> Machine:
    """A rigid bar on its heel pin over the axis of rotation, too strong to break."""
    strong = [
        replace(section, material=replace(section.material, yield_stress=1e13))
        for section in even_bar(LENGTH, stiffness=RIGID, line_mass=BAR)
    ]
    carrier = (CarrierMass(name="carrier", mass=CARRIER, x=0.0, y=0.0, z=1.0),)
    return bare_machine(tuple(strong), lug=1.0, carrier=carrier)


def lowered(case: str) -> Lowering:
    name, extension, load = LIFTS[case]
    return lower(set_up(load_machine(name)), extension=np.array(extension), load=load)


def ends_at(found: Lowering, radius: float, setup: Setup | None = None) -> Ends:
    """What ends a load that is raised at a radius that is kept: the overload study's own search."""
    setup = setup or found.setup
    return ends_of(
        setup,
        boom=condense(setup.machine, extension=found.extension),
        rated=np.array([[found.load]]),
        held=np.array([[radius]]),
        near=np.array([[found.load]]),
        hold="radius",
    )


def test_a_bare_crane_may_be_lowered_as_far_as_the_sum_of_moments_by_hand_says() -> None:
    """M d = m (R/2 - d) + (W/s) (R - d): carrier, an even rigid bar from the axis, the load W that
    is a share s of what tips the crane: 0.85 where it is as much as is rated, 1 where it tips.

    Tolerance: the bar (1e15 N m2) bends by less than 1e-8 of its length and the way is searched to
    some 1e-9 of itself; the rest is rounding.
    Source: balance of moments. Status: worked.
    """
    bar = BAR * LENGTH
    setup, start = set_up_by_hand(bare_crane()), radians(85.0)
    found = lower(setup, extension=np.zeros(5), load=LOAD, angle=start)
    for mark, share in ((found.marks.rated, 0.85), (found.marks.tips, 1.0)):
        wanted = LOAD / share
        by_hand = SPREAD * (CARRIER + bar + wanted) / (bar / 2 + wanted)
        assert mark is not None
        assert mark.place.radius == pytest.approx(by_hand, rel=1e-6)
        assert mark.place.angle == pytest.approx(acos(by_hand / LENGTH), rel=1e-6)
        assert mark.limit.name == "tipping"
    assert found.marks.fails is None


@pytest.mark.parametrize("case", LIFTS)
def test_where_the_way_must_end_the_load_is_the_one_that_a_chart_rates_there(case: str) -> None:
    found = lowered(case)
    rated = found.marks.rated
    assert rated is not None
    there = rate(found.setup, extension=found.extension, radius=np.array([rated.place.radius]))
    # A rated load is good to a millionth of its use, and falls with the radius by some tenths a
    # metre: 1e-5 of it is far below what is printed.
    assert there.capacity[0, 0] == pytest.approx(found.load, rel=1e-5)
    assert there.limit(0, 0) == rated.limit
    assert there.angle[0, 0] == pytest.approx(rated.place.angle, abs=1e-5)


@pytest.mark.parametrize("case", LIFTS)
def test_where_it_is_said_to_tip_the_overload_study_finds_that_load_to_tip_it(case: str) -> None:
    found = lowered(case)
    tips = found.marks.tips
    assert tips is not None
    ends = ends_at(found, tips.place.radius)
    assert ends.tipping[0, 0] == pytest.approx(found.load, rel=1e-5)
    assert (found.marks.fails is None) or found.marks.fails.place.at < tips.place.at
    assert ends.failure[0, 0] > found.load, "and nothing breaks there before it tips"


def heavy(name: str) -> Setup:
    """The same crane on a carrier that nothing tips."""
    machine = load_machine(name)
    block = CarrierMass(name="block", mass=190e3, x=0.0, y=0.0, z=0.5)
    return set_up(replace(machine, carrier=(*machine.carrier, block)))


def test_a_boom_on_a_carrier_that_nothing_tips_breaks_where_the_overload_study_breaks_it() -> None:
    extension, load = np.array([0.9, 0.9, 0.9, 0.9]), 12e3
    found = lower(heavy("yard60"), extension=extension, load=load)
    fails = found.marks.fails
    assert fails is not None
    ends = ends_at(found, fails.place.radius)
    # Yield, crushing and buckling grow faster than the load: 1e-4 of it is the search's own step.
    assert ends.failure[0, 0] == pytest.approx(load, rel=1e-4)
    assert ends.limits[ends.gives_way[0, 0]].key == fails.limit.key
    said = tell_lowering(found, units="metric")
    assert f"something would break at {fails.place.radius - 0.005:.3g}"[:-1] in said
    assert fails.limit.words in said


@pytest.mark.parametrize("case", LIFTS)
def test_the_sentence_is_true_to_the_last_figure(case: str) -> None:
    """At the radius and at the angle that are said the load is rated; a step beyond, no more."""
    found = lowered(case)
    said = tell_lowering(found, units="metric")
    angle, radius, tips = (
        float(figure)
        for figure in re.findall(
            r"to ([\d.]+)°, ([\d.]+) m radius:.* tip at ([\d.]+) m radius", said
        )[0]
    )
    step = 10.0 ** -len(f"{radius:g}".partition(".")[2])
    radii = np.array([radius, radius + step])
    rated = rate(found.setup, extension=found.extension, radius=radii).capacity[0]
    assert rated[0] >= found.load > rated[1]
    assert found.marks.rated is not None
    assert angle - 0.1 < degrees(found.marks.rated.place.angle) <= angle
    assert ends_at(found, tips).tipping[0, 0] >= found.load
    assert WHAT_SETS[found.marks.rated.limit.set_by] in tell_what_sets(found.marks.rated)


def test_a_load_that_is_rated_everywhere_may_be_lowered_all_the_way() -> None:
    setup = set_up(load_machine("yard60"))
    found = lower(setup, extension=np.zeros(4), load=5e3)
    assert found.marks.rated is None
    assert rate(setup, extension=np.zeros((1, 4)), radius=np.array([10.1])).capacity[0, 0] > 5e3
    assert "rated all the way down, to 0.0°" in tell_lowering(found, units="metric")


def test_past_the_rated_load_all_the_way_down_a_load_may_neither_tip_the_crane_nor_break_it():
    found = lower(set_up(load_machine("yard60")), extension=np.array([0, 0, 0.45, 0.45]), load=8e3)
    said = tell_lowering(found, units="metric")
    assert said.endswith("even all the way down nothing would break and it would not tip.")
    at = ends_at(found, found.end.radius)
    least = rate(found.setup, extension=found.extension, radius=np.array([found.end.radius]))
    assert least.capacity[0, 0] < 8e3 < min(at.tipping[0, 0], at.failure[0, 0])


def test_a_load_that_is_too_much_where_the_way_begins_must_not_be_lowered_at_all() -> None:
    setup, extension = set_up(load_machine("yard60")), np.zeros(4)
    found = lower(setup, extension=extension, load=30e3, radius=9.0)
    assert rate(setup, extension=extension, radius=np.array([9.0])).capacity[0, 0] < 30e3
    assert found.farthest is None
    assert "must not be lowered" in tell_lowering(found, units="metric")


def test_the_empty_hook_lowered_tips_where_the_study_of_the_empty_hook_says() -> None:
    crane = invented_crane()
    light = replace(set_up_by_hand(crane).counterweight, mass=0.0)
    setup = replace(set_up_by_hand(crane), counterweight=light)
    extension = np.ones(3)
    alone = empty_hook(setup, extension=extension)
    found = lower(setup, extension=extension, load=crane.hook_block + crane.slings)
    assert found.marks.tips is not None
    # Both searches end between two angles some 1e-6 rad apart.
    assert found.marks.tips.place.angle == pytest.approx(float(alone.angle[0]), abs=1e-5)


def test_where_the_way_begins_moves_nothing_of_what_is_met() -> None:
    setup, extension = set_up(load_machine("yard60")), np.array([0.0, 0.0, 0.0, 0.9])
    from_above = lower(setup, extension=extension, load=12e3)
    from_half = lower(setup, extension=extension, load=12e3, angle=radians(60.0))
    assert from_above.marks.rated is not None
    assert from_half.marks.rated is not None
    places = from_above.marks.rated.place, from_half.marks.rated.place
    assert places[0].radius == pytest.approx(places[1].radius, abs=1e-6)


def test_the_command_tells_prints_and_draws(tmp_path, capsys: pytest.CaptureFixture[str]) -> None:
    way = ["lower", "yard60", "--extension", "0,0,0,90", "--load", "12 t"]
    picture = tmp_path / "lower.svg"
    assert main([*way, "--figure", str(picture)]) == 0
    out = capsys.readouterr().out
    assert out.startswith("With 12.00 t this boom is rated down to ")
    assert picture.stat().st_size > 5_000
    assert main([*way, "--json"]) == 0
    answer = json.loads(capsys.readouterr().out)
    assert answer["schema"] == "boomsim.lower/4"
    assert answer["rated"]["radius"] < answer["tips"]["radius"]
    # Down to where the load is as much as is rated, each place carries it; beyond, none does.
    for angle, capacity in zip(answer["way"]["angle"], answer["way"]["capacity"], strict=True):
        if capacity is not None:
            assert (capacity > 12e3) is (angle > answer["rated"]["angle"])


REFUSED = {
    "less than the hook": (["--load", "300 kg"], "hook block, slings and rope are a part of it"),
    "below the boom's range": (["--load", "3 t", "--angle", "-20 deg"], "Begin in between"),
    "out of reach": (["--load", "3 t", "--radius", "40 m"], "Begin at another radius"),
    "too long for the tyres": (
        ["--load", "3 t", "--support", "tyres", "--extension", "90,90,0,0"],
        "On tyres the boom may be at most",
    ),
}


@pytest.mark.parametrize("case", REFUSED)
def test_bad_input_is_refused_in_one_line(case: str, capsys: pytest.CaptureFixture[str]) -> None:
    words, said = REFUSED[case]
    assert main(["lower", "yard60", *words]) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert said in told.err
    assert len(told.err.strip().splitlines()) == 1
