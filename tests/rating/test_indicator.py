"""A simulated load-moment indicator: right where it was told right, and blind where it says so."""

import json
import re
from dataclasses import replace
from math import cos, hypot, radians, sin

import numpy as np
import pytest
from making import RIGID, bare_machine, even_bar, set_up_by_hand

import boomsim as bs
from boomsim.caution import CAUTION
from boomsim.cli import main
from boomsim.machine.machine_files import load_machine
from boomsim.machine.model import CarrierMass
from boomsim.mechanics.boom.condense import condense
from boomsim.rating.capacity import rate
from boomsim.rating.indicator.indicator_conditions import Amounts
from boomsim.rating.indicator.indicator_formula import (
    cylinder_lever,
    lead_line_lever,
    measure,
    shown,
    straight_lever,
)
from boomsim.rating.indicator.indicator_sentences import WHY, percent, tell_row, tell_worst
from boomsim.rating.indicator.indicator_study import LESS, MORE, RIGHT, Indicated, indicate
from boomsim.rating.lift_response import respond
from boomsim.rating.setup import set_up

LIFTS = {
    "yard60": ((0.0, 0.0, 0.45, 0.45), 10.0),
    "yard60, close in": ((0.0, 0.0, 0.0, 0.9), 6.0),
    "truck18": ((1.0, 0.5, 0.0), 6.0),
}


@pytest.fixture(scope="module", params=LIFTS)
def found(request) -> Indicated:
    way, radius = LIFTS[request.param]
    setup = set_up(load_machine(request.param.split(",")[0]))
    return indicate(setup, extension=np.array(way), radius=radius)


def rows(found: Indicated) -> dict:
    return {row.condition.key: row for row in found.rows}


@pytest.mark.parametrize("degrees", [20.0, 45.0, 70.0])
def test_on_a_bare_rigid_boom_it_finds_the_load_that_hangs(degrees: float) -> None:
    """F h = m g X by hand, with h the distance of the cylinder's line from the heel pin.

    Tolerance: the boom is rigid and has no rope to speak of; a hundred-thousandth of the load
    pulls along it.
    Source: balance of moments. Status: worked.
    """
    sections = even_bar(20.0, stiffness=RIGID, line_mass=40.0)
    carrier = (CarrierMass(name="carrier", mass=1e5, x=0.0, y=0.0, z=1.0),)
    machine = bare_machine(tuple(sections), lug=3.0, carrier=carrier)
    setup, angle = set_up_by_hand(machine), radians(degrees)
    boom = condense(machine, extension=np.zeros((1, 5)))
    at = respond(setup, boom=boom, load=np.array([[1234.0]]), angle=np.array([[angle]]))
    sensors = measure(at)
    upper, lower = (3.0 * cos(angle), 3.0 * sin(angle)), (1.0, -1.5)
    area = abs(upper[0] * lower[1] - upper[1] * lower[0])
    by_hand = area / hypot(upper[0] - lower[0], upper[1] - lower[1])
    assert cylinder_lever(machine, angle=angle) == pytest.approx(by_hand, rel=1e-12)
    weight = 9.80665 * cos(angle) * (1234.0 * 20.0 + 40.0 * 20.0 * 10.0)
    assert sensors.push * by_hand == pytest.approx(weight, rel=1e-4)
    made = shown(setup, extension=np.zeros(5), sensors=sensors, teach=500.0)
    assert made.load == pytest.approx(1234.0, rel=1e-4)
    assert made.radius == pytest.approx(20.0 * cos(angle), rel=1e-6)


def test_levers_of_a_straight_boom_by_hand() -> None:
    """yard60 at 60 degrees, 20 m: X = 20 cos 60 + 0.25 sin 60 = 10.2165 m. The lead line runs from
    (20 cos 60 - 0.4 sin 60, 20 sin 60 + 0.4 cos 60) = (9.6536, 17.5205) to the winch, 1.10 m behind
    the heel pin and 0.50 m above it: its distance from the pin is
    |(-1.1)(-17.0205) - 0.5 (-10.7536)|/20.1329 = 24.0994/20.1329 = 1.1970 m, above it.

    Tolerance: five figures by hand.
    Source: plane geometry. Status: worked.
    """
    machine = load_machine("yard60")
    angle = radians(60.0)
    assert straight_lever(machine, length=20.0, angle=angle) == pytest.approx(10.2165, abs=6e-5)
    assert lead_line_lever(machine, length=20.0, angle=angle) == pytest.approx(1.1970, abs=1e-4)


def test_told_right_it_shows_the_load_to_a_percent_and_the_radius_to_a_centimetre(found):
    row = rows(found)["as told"]
    assert row.shown.load == pytest.approx(found.load, rel=0.01)
    assert row.shown.radius == pytest.approx(found.radius, abs=0.01)
    assert row.utilisation == pytest.approx(0.9)
    assert row.verdict == RIGHT


def test_what_it_cannot_feel_leaves_every_sensor_as_it_was(found):
    plain = rows(found)["as told"]
    for key in ("counterweight", "outriggers"):
        assert rows(found)[key].sensors == plain.sensors
    for key in ("side pull", "wind across", "leaning across"):
        row = rows(found)[key]
        # Second order of a small angle: the boom bends sideways and its base leans.
        assert row.sensors.push == pytest.approx(plain.sensors.push, rel=2e-3)
        assert row.sensors.angle == plain.sensors.angle
        assert row.utilisation >= plain.utilisation * (1.0 - 1e-9)


def test_each_reason_is_what_the_figures_show(found):
    told, by_key = rows(found)["as told"], rows(found)
    ignored = by_key["bending ignored"]
    assert ignored.shown.radius < told.shown.radius
    assert ignored.shown.load > told.shown.load
    lower = by_key["leaning ahead"]
    assert lower.sensors.angle < told.sensors.angle
    assert lower.shown.radius > told.shown.radius
    for key in ("wind from behind", "swinging out"):
        assert by_key[key].sensors.push > told.sensors.push
        assert by_key[key].shown.load > told.shown.load
    fewer = by_key["parts of line"]
    assert fewer.sensors.push < told.sensors.push
    assert fewer.shown.load < told.shown.load
    other = by_key["way out"]
    assert other.sensors.length == pytest.approx(told.sensors.length, abs=0.051)
    assert not np.allclose(other.condition.extension, other.condition.told)


def test_what_is_comes_from_the_rating_with_the_condition_in_it(found):
    for row in found.rows:
        if row.condition.swung:
            continue
        rated = rate(
            row.condition.actual,
            extension=row.condition.extension,
            radius=np.array([found.radius]),
        ).capacity[0, 0]
        # The same search twice.
        assert row.utilisation == pytest.approx(found.load / rated, rel=1e-9)


def test_verdicts_say_which_way_it_errs_and_the_worst_is_named(found):
    for row in found.rows:
        apart = row.shown_utilisation - row.utilisation
        assert row.verdict == (RIGHT if abs(apart) <= 0.03 else MORE if apart > 0.0 else LESS)
    short = [row for row in found.rows if row.verdict == LESS]
    worst = max(short, key=lambda row: row.utilisation - row.shown_utilisation)
    said = tell_worst(found, units="metric")
    assert (
        f"shows {percent(worst.shown_utilisation)} and it is {percent(worst.utilisation)}" in said
    )


def test_sentences_name_the_figures(found):
    for row in found.rows:
        said = tell_row(row, found, units="metric")
        assert said.endswith(WHY[row.condition.key])
        told = [int(share) for share in re.findall(r", (\d+) %; it is (\d+) %", said)[0]]
        assert told == pytest.approx(
            [100.0 * row.shown_utilisation, 100.0 * row.utilisation], abs=1.0
        )
        assert "nan" not in said


def test_more_than_all_of_a_rated_load_never_reads_as_all_of_it():
    assert percent(1.002) == "101 %"
    assert percent(1.0) == "100 %"
    assert percent(float("inf")) == "not rated"
    assert percent(float("nan")) == "blank"


def test_a_crane_without_other_choices_has_no_wrong_entries():
    machine = load_machine("truck18")
    hoist = replace(machine.hoist, parts=machine.hoist.parts[:1])
    alone = replace(
        machine,
        hoist=hoist,
        counterweights=machine.counterweights[-1:],
        supports=machine.supports[:1],
    )
    found = indicate(set_up(alone), extension=np.zeros(3), radius=6.0)
    assert not {"way out", "counterweight", "outriggers", "parts of line"} & set(rows(found))


@pytest.mark.parametrize(
    ("amounts", "named"),
    [({"side_pull": 0.5}, "--side-pull"), ({"lean": 1.0}, "--lean"), ({"wind": -1.0}, "--wind"),
     ({"swing": float("nan")}, "--swing")],
)  # fmt: skip
def test_amounts_that_are_none_are_refused(amounts, named):
    with pytest.raises(ValueError, match=named):
        indicate(
            set_up(load_machine("truck18")),
            extension=np.zeros(3),
            radius=6.0,
            amounts=Amounts(**amounts),
        )


def test_a_place_without_a_rating_and_an_empty_hook_are_refused():
    setup = set_up(load_machine("truck18"))
    with pytest.raises(ValueError, match="no chart there"):
        indicate(setup, extension=np.zeros(3), radius=30.0)
    # Hook block, slings and seven falls of 11.3 m weigh 247 kg.
    with pytest.raises(ValueError, match="empty hook"):
        indicate(setup, extension=np.zeros(3), radius=6.0, load=248.5)


def test_the_command_answers_with_the_caution(capsys):
    assert main(["indicator", "truck18", "--radius", "8 m", "--wind", "9 m/s", "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert told["caution"] == CAUTION
    assert {row["verdict"] for row in told["conditions"]} <= {RIGHT, LESS, MORE}
    assert bs.indicator("truck18", radius=8.0, wind=9.0).to_dict() == told
