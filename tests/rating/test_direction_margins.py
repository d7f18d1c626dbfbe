"""One load all around the crane: its room in each direction, by hand and by the call path."""

import re
from dataclasses import replace

import numpy as np
import pytest
from making import RIGID, bare_machine, even_bar, set_up_by_hand

import boomsim as bs
from boomsim.machine.machine_files import load_machine
from boomsim.machine.model import CarrierMass
from boomsim.rating.around.centres_of_gravity import hung_at
from boomsim.rating.around.direction_margins import Margins, margins
from boomsim.rating.around.margin_sentences import percent_of_rated, tell_margins, times
from boomsim.rating.around.slew_study import around
from boomsim.rating.capacity import rate
from boomsim.rating.lift.lift_study import lift
from boomsim.rating.setup import Setup, set_up
from boomsim.rating.setup_variants import with_sector

WAY = np.array([1.0, 0.5, 0.0])


def room(setup: Setup, extension: np.ndarray, radius: float, load: float) -> Margins:
    found = around(setup, extension=extension, radius=np.array([radius]))
    return margins(found, hung_at(found.setup, extension=extension, load=load, radius=radius))


def truck(load: float) -> Margins:
    return room(set_up(load_machine("truck18")), WAY, 12.0, load)


def test_a_bare_crane_on_four_jacks_has_the_room_that_the_sum_of_moments_by_hand_says() -> None:
    """About the line x = 3: M d = m' (R cos slew - d), and the like about the other three.

    Tolerance: a rigid boom without mass; rounding.
    Source: balance of moments. Status: worked.
    """
    carrier_mass, load, radius, spread = 12_000.0, 1_500.0, 15.0, 3.0
    strong = [
        replace(section, material=replace(section.material, yield_stress=1e13))
        for section in even_bar(30.0, stiffness=RIGID)
    ]
    carrier = (CarrierMass(name="carrier", mass=carrier_mass, x=0.0, y=0.0, z=1.0),)
    setup = set_up_by_hand(bare_machine(tuple(strong), lug=1.0, carrier=carrier))
    found = room(setup, np.zeros(5), radius, load)
    lever = radius * np.maximum(np.abs(np.cos(found.slew)), np.abs(np.sin(found.slew))) - spread
    by_hand = carrier_mass * spread / (load * lever)
    assert found.tips == pytest.approx(by_hand, rel=1e-6)
    assert found.share == pytest.approx(1.0 / (0.85 * by_hand), rel=1e-5)
    # 2040 kg are rated square to a line and 1.5 t hang: all around.
    assert found.spans == ((-np.pi, np.pi),)


@pytest.mark.parametrize("degrees", [0.0, 60.0, 90.0, 180.0, -120.0])
def test_each_direction_is_what_a_lift_and_a_rating_there_say(degrees: float) -> None:
    found = truck(3000.0)
    place = int(np.argmin(np.abs(found.slew - np.radians(degrees))))
    there = with_sector(set_up(load_machine("truck18")), slew=float(found.slew[place]))
    alone = lift(there, extension=WAY, load=3000.0, radius=12.0)
    assert found.tips[place] == pytest.approx(alone.tipping_load / 3000.0, rel=1e-9)
    rated = rate(there, extension=WAY, radius=np.array([12.0])).capacity[0, 0]
    # Both searches are good to some 1e-6 of themselves.
    assert found.share[place] == pytest.approx(3000.0 / rated, rel=4e-6)


@pytest.mark.parametrize("load", [3000.0, 3100.0, 3200.0, 3300.0])
def test_the_ends_of_a_span_are_where_the_rated_load_is_this_load(load: float) -> None:
    found = truck(load)
    assert found.spans
    for begin, end in found.spans:
        assert begin < end
        for edge, inwards in ((begin, 1.0), (end, -1.0)):
            for step, inside in ((inwards, True), (-inwards, False)):
                angle = float(np.angle(np.exp(1j * (edge + step * np.radians(1.5)))))
                there = with_sector(set_up(load_machine("truck18")), slew=angle)
                rated = rate(there, extension=WAY, radius=np.array([12.0])).capacity[0, 0]
                assert (rated >= load) == inside
    covered = sum(end - begin for begin, end in found.spans)
    # Slew angles stand five degrees apart, or nearer where something changes.
    shown = np.trapezoid(found.rated.astype(float), found.slew)
    assert covered == pytest.approx(shown, abs=np.radians(5.0) * 2 * len(found.spans))


def test_a_load_that_is_rated_all_around_nowhere_or_in_places_is_told_so() -> None:
    assert "all around" in tell_margins(truck(2000.0), units="metric")
    assert truck(9000.0).spans == ()
    assert "whichever way" in tell_margins(truck(9000.0), units="metric")
    said = tell_margins(truck(3000.0), units="metric")
    begin, end = (int(x) for x in re.findall(r"points (-?\d+)° to (-?\d+)°", said)[0])
    low, high = np.degrees(truck(3000.0).spans[0])
    assert low <= begin < low + 1.0
    assert high - 1.0 < end <= high


def test_the_sentence_names_most_and_least_room() -> None:
    found = truck(3000.0)
    said = tell_margins(found, units="us")
    assert f"{times(float(found.tips.max()))} to tipping" in said
    assert f"{times(float(found.tips.min()))} to tipping" in said
    assert "least over the front" in said


def test_shares_round_up_and_times_round_down() -> None:
    assert percent_of_rated(0.9801) == "99 %"
    assert percent_of_rated(1.0 + 1e-6) == "100 %"
    assert percent_of_rated(float("inf")) == "nothing rated"
    assert times(1.159) == "1.15 times"
    assert times(float("inf")) == "never"


def test_the_answer_of_the_command_has_the_room_in_it() -> None:
    found = bs.around("truck18", extension=WAY, radius=12.0, load=3000.0)
    told = found.to_dict()["margins"]
    assert told["load"] == 3000.0
    assert len(told["share_of_rated"]) == len(found.to_dict()["slew"])
    said = " ".join(found.text().split())
    assert tell_margins(found.study.margins, units="metric") in said
    circles = [
        patch
        for ax in found.plot().axes
        for patch in ax.patches
        if getattr(patch, "radius", None) == 3.0 and patch.get_linewidth() == 1.3
    ]
    assert len(circles) == 1
