"""A moved load counts as one that hangs still: by hand on a bare crane, and by the call path."""

import json
import re
from dataclasses import replace
from math import cos, hypot, radians, sin, tan

import numpy as np
import pytest
from making import RIGID, bare_machine, even_bar, invented_crane, set_up_by_hand

import boomsim as bs
from boomsim.caution import CAUTION
from boomsim.cli import main
from boomsim.gravity import GRAVITY
from boomsim.machine.machine_files import load_machine
from boomsim.machine.model import CarrierMass
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.hoisting_factor import hoisting_factor
from boomsim.rating.dynamics.dynamics_sentences import tell_effect, tell_rope, tell_sag, tell_worst
from boomsim.rating.dynamics.dynamics_study import Dynamics, Motion, as_disturbances, dynamics
from boomsim.rating.dynamics.load_sag import rope_stiffness, sag_of
from boomsim.rating.lift.lift_study import lift
from boomsim.rating.limits.limit_kind import STABILITY, STRENGTH
from boomsim.rating.load_search import no_margin
from boomsim.rating.overload.overload_study import overload
from boomsim.rating.reeving.reeving_study import reeve
from boomsim.rating.setup import set_up

LENGTH, SPREAD, CARRIER, LOAD = 30.0, 3.0, 30_000.0, 2_000.0
"""Boom of the bare crane, its tipping lines from the axis [m], its carrier and its load [kg]."""

PLACES = {
    "yard60": ((0.0, 0.0, 0.45, 0.45), 10.0),
    "yard60, close in": ((0.0, 0.0, 0.0, 0.9), 6.0),
    "truck18": ((0.5, 0.5, 0.5), 8.0),
}


def bare() -> Dynamics:
    strong = [
        replace(section, material=replace(section.material, yield_stress=1e13))
        for section in even_bar(LENGTH, stiffness=RIGID)
    ]
    carrier = (CarrierMass(name="carrier", mass=CARRIER, x=0.0, y=0.0, z=1.0),)
    setup = set_up_by_hand(bare_machine(tuple(strong), lug=1.0, carrier=carrier))
    return dynamics(setup, extension=np.zeros(5), radius=12.0, load=LOAD)


def moved(case: str, **how) -> Dynamics:
    way, radius = PLACES[case]
    setup = set_up(load_machine(case.split(",")[0]))
    return dynamics(setup, extension=np.array(way), radius=radius, motion=Motion(**how))


def effect(found: Dynamics, key: str):
    return next(one for one in found.effects if one.key == key)


def test_a_load_swung_out_tips_a_bare_crane_as_the_sum_of_moments_by_hand_says() -> None:
    """m (R - d) + m tan a H = m' (R - d): the rope pulls the head outwards at its height H.

    Tolerance: the boom is rigid and without mass; the search is good to some 1e-7.
    Source: balance of moments. Status: worked.
    """
    found = bare()
    out = effect(found, "swung out")
    height = 2.0 + LENGTH * sin(found.angle)
    by_hand = LOAD * (1.0 + tan(found.swing_angle) * height / (12.0 - SPREAD))
    assert out.by == STABILITY
    assert out.equivalent == pytest.approx(by_hand, rel=1e-5)
    assert LENGTH * cos(found.angle) == pytest.approx(12.0, rel=1e-7)


def test_a_load_pulled_across_tips_a_bare_crane_over_the_line_between_both_pulls() -> None:
    """Down m at R, across s m at H: the moment about the axis is m sqrt(R2 + s2 H2), and the boom
    stands where it is square to a line: m (sqrt(R2 + s2 H2) - d) = m' (R - d).

    Tolerance: slew angles are tried every degree; half of one is 1 - cos 0.5 deg = 4e-5 of a lever
    a third longer than R - d.
    Source: balance of moments. Status: worked.
    """
    found = bare()
    across = effect(found, "slewing stopped")
    height = 2.0 + LENGTH * sin(found.angle)
    lever = hypot(12.0, across.sideways * height)
    by_hand = LOAD * (lever - SPREAD) / (12.0 - SPREAD)
    assert across.tips == pytest.approx(LOAD * (lever - SPREAD) / (CARRIER * SPREAD), rel=6e-5)
    assert across.equivalent >= by_hand * (1.0 - 6e-5)


def test_the_rope_stretches_as_its_parts_and_its_lead_line_by_hand() -> None:
    """EA = 3.55 x 55 kN/(0.85 x 1770 MPa) x 100 GPa = 12.978 MN; 4 parts of 10 m and a lead line of
    20 m: 1/k = (10/4 + 20/16)/EA = 3.75/12.978 MN, k = 3.4607 MN/m.

    Tolerance: five figures by hand.
    Source: springs side by side and in line. Status: worked.
    """
    found = rope_stiffness(load_machine("yard60"), 4, 10.0, 20.0)
    assert found == pytest.approx(3.4607e6, rel=5e-5)


@pytest.fixture(scope="module", params=PLACES)
def found(request) -> Dynamics:
    return moved(request.param)


def test_what_pulls_straight_down_is_the_load_times_its_factor(found):
    for one in found.effects[:4]:
        assert one.by is None
        assert one.equivalent == one.factor * found.load
        assert one.share == pytest.approx(one.factor * found.load / found.rated)
    assert found.effects[0].factor == hoisting_factor(0.5, hoist_class=2)
    assert found.load == pytest.approx(0.75 * found.rated)


def test_hanging_still_the_equivalent_load_uses_the_crane_as_much(found):
    real = no_margin(found.setup)
    for one in found.effects[4:]:
        still = lift(real, extension=found.extension, load=one.equivalent, angle=found.angle)
        utilisations = {
            utilisation.limit.key: utilisation.utilisation for utilisation in still.limits
        }
        # The search is good to some 1e-7 of the load.
        if one.by == STABILITY:
            assert utilisations["tipping"] == pytest.approx(one.tips, rel=1e-5)
        else:
            assert utilisations[one.part.key] >= one.breaks * (1.0 - 1e-5)


def test_where_it_would_tip_and_break_is_the_overload_studys_own_answer(found):
    raised = overload(found.setup, extension=found.extension, radius=found.radius)
    at = lift(found.setup, extension=found.extension, load=found.tipping, angle=found.angle)
    # The overload study keeps the angle of the rated load, ours that of three quarters of it: a
    # load hangs up to 6 % of a lever farther in there.
    assert at.tipping_load == pytest.approx(found.tipping, rel=1e-5)
    for events, ours in ((raised.tipping, found.tipping), (raised.failure, found.breaking)):
        assert ours == pytest.approx(events.load, rel=0.06)


def test_what_gives_is_what_the_head_comes_down_by(found):
    half, whole = (
        lift(found.setup, extension=found.extension, load=load, angle=found.angle)
        for load in (found.load / 2.0, found.load)
    )
    drop = 2.0 * (half.head_height - whole.head_height)
    assert found.sag.boom == pytest.approx(drop, rel=1e-6)
    assert 0.0 < found.sag.rope < found.sag.boom
    assert found.sag.floats >= 0.0


def test_the_rope_is_that_of_the_reeving(found):
    """Of the straight boom: heel pin + length sin - head's depth cos; parts of line of the boom."""
    machine, boom = found.setup.machine, found.setup.machine.boom
    height = machine.heel_up + found.length * sin(found.angle)
    height -= boom.head.below * cos(found.angle)
    reeving = reeve(found.setup, extension=found.extension, radius=found.radius)
    assert found.sag.parts == reeving.parts
    assert found.sag.rope_length == pytest.approx(height - found.motion.hook, rel=1e-9)
    # The reeving looks at the boom under its rated load, which stands a little steeper.
    of_each_part = reeving.rope.falls / reeving.parts
    assert found.sag.rope_length + found.motion.hook == pytest.approx(of_each_part, rel=0.03)
    assert found.sag.lead == pytest.approx(reeving.rope.lead, rel=0.03)
    said = f"{found.sag.parts} parts of line of {found.sag.rope_length:.1f} m"
    assert said in tell_rope(found, units="metric")


def test_the_parts_of_a_sag_add_up_as_they_are_printed(found):
    said = tell_sag(found, units="metric")
    whole, *parts = (float(one) for one in re.findall(r"([\d.]+) mm", said))
    assert sum(parts) == pytest.approx(whole, abs=1e-9)
    assert whole == pytest.approx(1000.0 * found.sag.whole, abs=0.5)


def test_a_longer_boom_gives_more_and_is_hit_less_hard():
    short = dynamics(set_up(load_machine("yard60")), extension=np.zeros(4), radius=8.0, load=5e3)
    long = dynamics(set_up(load_machine("yard60")), extension=np.ones(4), radius=8.0, load=5e3)
    assert long.sag.whole > short.sag.whole
    assert effect(long, "dropped").factor < effect(short, "dropped").factor


def test_nothing_that_does_not_move_adds_anything():
    calm = moved("truck18", speed=0.0, drop=0.0, swing=0.0)
    for one in calm.effects:
        assert one.equivalent == pytest.approx(calm.load * (2.0 if one.key == "dropped" else 1.0))


def test_an_outward_pull_is_a_wind_on_the_load_and_on_nothing_else():
    setup = set_up_by_hand(invented_crane())
    boom = condense(setup.machine, extension=np.array([[0.5, 1.0, 0.5]]))
    wind = as_disturbances(0.05, 0.0)
    found = sag_of(setup, boom=boom, load=4000.0, angle=radians(50.0), hook=2.0)
    assert found.whole > 0.0
    # 0.613 v2 a over g: the pull over the weight.
    assert 0.613 * wind.wind_speed**2 * wind.load_area / GRAVITY == pytest.approx(0.05)
    assert 0.613 * wind.wind_speed**2 < 0.01


def test_sentences_name_the_figures_of_the_study(found):
    worst = max(found.effects, key=lambda one: one.equivalent)
    said = tell_worst(found, units="metric")
    assert f"{worst.equivalent / 1000.0:.2f} t hanging still" in said
    for one in found.effects:
        told = tell_effect(one, found, units="metric")
        assert f"{one.equivalent / 1000.0:.2f} t hanging still" in told
        shares = [int(s) for s in re.findall(r"(\d+) % of (?:tipping|what)", told)]
        if one.tips < 1.0 and one.breaks < 1.0:
            assert shares[0] - 1 < 100.0 * one.tips <= shares[0] + 1e-3
            assert shares[1] - 1 < 100.0 * one.breaks <= shares[1] + 1e-3
        else:
            assert ("tip the crane" in told) == (one.tips >= 1.0)
            assert ("break something" in told) == (one.breaks >= 1.0)
        assert "first" not in told


@pytest.mark.parametrize(
    ("how", "named"),
    [({"speed": -1.0}, "--speed"), ({"stop": 0.0}, "--stop"), ({"swing": 9.0}, "--swing"),
     ({"drop": 5.0}, "--drop"), ({"hoist_class": 7}, "--hoist-class")],
)  # fmt: skip
def test_motions_that_are_none_are_refused(how, named):
    with pytest.raises(ValueError, match=named):
        moved("truck18", **how)


def test_the_command_answers_with_caution_and_sources(capsys):
    assert main(["dynamics", "truck18", "--radius", "8 m", "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert told["caution"] == CAUTION
    assert all("(" in row["source"] for row in told["effects"])
    assert {row["by"] for row in told["effects"]} <= {None, STABILITY, STRENGTH}
    assert bs.dynamics("truck18", radius=8.0).to_dict() == told
    assert main(["dynamics", "--radius", "60 m"]) == 2
    assert capsys.readouterr().out == ""
