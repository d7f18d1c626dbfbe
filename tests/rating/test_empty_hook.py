"""Where the crane turns over with nothing but hook block and slings on the rope."""

import json
import re
from dataclasses import replace
from math import acos

import numpy as np
import pytest

from boomsim.cli import main
from boomsim.machine.machine_files import load_machine
from boomsim.machine.model import CarrierMass, Machine, Rigging
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.geometry import layout
from boomsim.rating.empty_hook.empty_hook_sentences import (
    hanging_words,
    plain_empty_hook,
    tell_empty_hook,
)
from boomsim.rating.empty_hook.empty_hook_study import empty_hook
from boomsim.rating.lift_response import respond
from boomsim.rating.setup import Setup, set_up
from tests.making import RIGID, bare_machine, even_bar, invented_crane
from tests.reeving_by_hand import head_by_hand, parts_by_hand

LENGTH, SPREAD = 30.0, 3.0
"""Boom of the bare crane, and its tipping lines from the axis [m]."""

CARRIER, BAR, HOOK = 6_000.0, 50.0, 400.0
"""Masses of its carrier [kg], of a metre of its boom [kg/m], of its hook block [kg]."""


def bare_crane(**changes: object) -> Machine:
    sections = even_bar(LENGTH, stiffness=RIGID, line_mass=BAR)
    carrier = (CarrierMass(name="carrier", mass=CARRIER, x=0.0, y=0.0, z=1.0),)
    return replace(bare_machine(sections, carrier=carrier), **{"hook_block": HOOK, **changes})


def nested(machine: Machine) -> np.ndarray:
    return np.zeros((1, len(machine.boom.sections) - 1))


def hanging_by_hand(machine: Machine, *, extension: np.ndarray, angle: float) -> float:
    """Hook block, slings and each fall from the straight boom's head to the ground [kg]."""
    length = float(layout(machine.boom, extension=extension).boom_length[0])
    parts = parts_by_hand(machine, length=length, most=machine.hoist.parts[-1])
    falls = parts * head_by_hand(machine, length=length, angle=angle)
    return machine.hook_block + machine.slings + falls * machine.hoist.rope_mass


def balance(setup: Setup, *, extension: np.ndarray, angle: float) -> float:
    """Least tipping load with hook block and slings on the rope, over what hangs there [1]."""
    load = hanging_by_hand(setup.machine, extension=extension, angle=angle)
    at = respond(
        setup,
        boom=condense(setup.machine, extension=extension),
        load=np.array([[load]]),
        angle=np.array([[angle]]),
    )
    return float(at.balance.least[0, 0]) / load


def far_out(machine: Machine, **rigging: str) -> tuple[Setup, np.ndarray]:
    out = np.ones((1, len(machine.boom.sections) - 1))
    return set_up(machine, rigging=Rigging(**rigging)), out


def test_a_bare_crane_turns_over_where_the_sum_of_moments_by_hand_is_nought() -> None:
    """M d = m L (R/2 - d) + H (R - d): carrier, an even rigid boom from the axis, the hook block.

    Tolerance: the bar's stiffness (1e15 N m2) bends it by less than 1e-8 of its length, and the
    angle is found between three rounds of trials to some 1e-6 rad, which is 1e-4 m of radius.
    Source: balance of moments. Status: worked.
    """
    bar = BAR * LENGTH
    by_hand = SPREAD * (CARRIER + bar + HOOK) / (bar / 2 + HOOK)
    found = empty_hook(set_up(bare_crane()), extension=nested(bare_crane()))
    assert found.radius[0] == pytest.approx(by_hand, abs=1e-4)
    assert found.angle[0] == pytest.approx(acos(by_hand / LENGTH), abs=1e-5)


@pytest.mark.parametrize("name", ["yard60", "truck18"])
def test_at_the_least_angle_hook_block_and_slings_are_the_load_that_tips(name: str) -> None:
    machine = load_machine(name)
    setup, out = far_out(machine, counterweight=machine.counterweights[-1].name)
    setup = replace(setup, counterweight=replace(setup.counterweight, mass=0.0))
    found = empty_hook(setup, extension=out)
    assert found.turns_over[0], "without its counterweight the longest boom turns the crane over"
    angle = float(found.angle[0])
    # The tipping load is a quotient of moments: 1e-5 rad of the angle make some 1e-3 of it.
    assert balance(setup, extension=out, angle=angle) == pytest.approx(1.0, abs=2e-3)
    assert balance(setup, extension=out, angle=angle + 0.01) > 1.0
    assert balance(setup, extension=out, angle=angle - 0.01) < 1.0


def test_a_crane_that_stands_with_its_boom_level_never_turns_over_and_nothing_is_said() -> None:
    heavy = (CarrierMass(name="carrier", mass=1e6, x=0.0, y=0.0, z=1.0),)
    machine = bare_crane(carrier=heavy)
    found = empty_hook(set_up(machine), extension=nested(machine))
    assert not found.turns_over[0] and found.stands[0]
    assert not found.lies_over(radius=1e3)[0] and not found.lies_over(angle=-1.0)[0]
    assert tell_empty_hook(found, units="metric") == ""
    assert plain_empty_hook(found)["least_boom_angle"] is None


def test_a_crane_that_cannot_stand_at_its_steepest_is_said_to_stand_nowhere() -> None:
    machine = bare_crane(carrier=(CarrierMass(name="c", mass=1.0, x=0.0, y=0.0, z=1.0),))
    boom = replace(machine.boom, greatest_angle=0.5, least_angle=0.0)
    machine = replace(machine, boom=boom)
    found = empty_hook(set_up(machine), extension=nested(machine))
    assert not found.stands[0]
    assert found.lies_over(radius=0.1)[0] and found.lies_over(angle=0.5)[0]
    assert "at every boom angle" in tell_empty_hook(found, units="metric")


def test_counterweight_support_and_sector_move_where_it_turns_over() -> None:
    """Less to hold it down, or a worse direction among those asked for, brings it nearer."""
    setup, out = far_out(invented_crane())

    def radius(**changes: object) -> float:
        return float(empty_hook(replace(setup, **changes), extension=out).radius[0])

    light = replace(setup.counterweight, mass=0.0)
    none = radius(counterweight=light)
    assert none < radius()
    narrow = replace(setup.support, points=tuple((x, 0.6 * y) for x, y in setup.support.points))
    assert radius(counterweight=light, support=narrow) < none
    rear = set_up(invented_crane(), slew="rear").slew
    assert radius(counterweight=light, slew=rear) > none


@pytest.mark.parametrize("units", ["metric", "us"])
def test_the_sentence_is_rounded_to_the_safe_side(units: str) -> None:
    machine = bare_crane()
    found = empty_hook(set_up(machine), extension=nested(machine))
    said = tell_empty_hook(found, units=units)
    metre = 1.0 if units == "metric" else 0.3048
    radius = float(re.findall(r"from ([\d.]+) (?:m|ft) outwards", said)[0]) * metre
    angle = np.radians(float(re.findall(r"below (\d+)°", said)[0]))
    assert found.radius[0] - 0.1 * metre < radius <= found.radius[0]
    assert found.angle[0] <= angle < found.angle[0] + np.radians(1.0)
    assert "without any margin" in said


def test_what_hangs_is_named() -> None:
    machine = invented_crane()
    assert hanging_words(machine, mass=400.0, units="metric") == (
        "With the empty hook (hook block and slings, 400 kg)"
    )
    alone = hanging_words(replace(machine, slings=0.0), mass=350.0, units="metric")
    assert "(hook block, 350 kg)" in alone
    bare = replace(machine, slings=0.0, hook_block=0.0)
    assert hanging_words(bare, mass=0.0, units="metric") == "With nothing on the rope"
    heavy = replace(machine.hoist, rope_mass=1.0)
    assert hanging_words(replace(machine, hoist=heavy), mass=480.0, units="metric") == (
        "With the empty hook (hook block, slings and rope, 480 kg)"
    )
    roped = hanging_words(replace(bare, hoist=heavy), mass=80.0, units="metric")
    assert roped == "With nothing but its own rope hanging (80 kg)"


def answer_of(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    assert main(list(words)) == 0
    told = capsys.readouterr()
    assert told.err == ""
    return told.out


LONG = ("--counterweight", "none", "--extension", "100,100,100,100")


@pytest.mark.parametrize(
    "words",
    [
        ("lift", "yard60", *LONG, "--radius", "35 m", "--load", "0 t"),
        ("lift", "yard60", *LONG, "--angle", "10 deg"),
        ("around", "yard60", *LONG, "--radius", "35 m", "--load", "1 t"),
        ("around", "truck18", "--load", "8 t"),
    ],
)
@pytest.mark.filterwarnings("error")
def test_a_crane_on_its_side_is_told_in_words_and_not_in_infinities(
    capsys: pytest.CaptureFixture[str], words: tuple[str, ...]
) -> None:
    said = answer_of(capsys, *words)
    assert not re.search(r"\b(inf|nan)\b", said)
    assert "turns over" in said


def test_lift_says_the_least_boom_angle_whether_or_not_it_lies_beyond(
    capsys: pytest.CaptureFixture[str],
) -> None:
    for place in (("--angle", "79 deg"), ("--angle", "10 deg")):
        said = " ".join(answer_of(capsys, "lift", "yard60", *LONG, *place).split())
        assert re.search(
            r"turns over from [\d.]+ m outwards.*never lower this boom below \d+°", said
        )
        lies = place[1] == "10 deg"
        assert ("lie on its side" in said) == lies
        assert ("none: the crane turns over with the empty hook" in said) == lies


def test_lift_and_around_tell_programs_the_same_place(capsys: pytest.CaptureFixture[str]) -> None:
    machine = load_machine("yard60")
    setup, out = far_out(machine, counterweight="none")
    found = empty_hook(setup, extension=out)
    for command in ("lift", "around"):
        words = (command, "yard60", *LONG, "--radius", "20 m", "--json")
        told = json.loads(answer_of(capsys, *words))["empty_hook"]
        assert told["greatest_radius"] == pytest.approx(float(found.radius[0]))
        assert told["least_boom_angle"] == pytest.approx(float(found.angle[0]))
        hung = hanging_by_hand(machine, extension=out, angle=float(found.angle[0]))
        assert told["load"] == pytest.approx(hung)


def test_a_load_that_tips_the_crane_every_way_still_gives_a_picture(
    capsys: pytest.CaptureFixture[str], tmp_path: object
) -> None:
    target = f"{tmp_path}/around.svg"
    answer_of(capsys, "around", "truck18", "--load", "8 t", "--figure", target)
    with open(target, encoding="utf-8") as file:
        assert file.read().lstrip().startswith("<?xml")
