"""What bends a boom, by cause: every part by itself, in the state that strength is judged by."""

import re
from dataclasses import replace

import numpy as np
import pytest
from making import invented_crane, set_up_by_hand
from numpy.random import Generator, default_rng

from boomsim.gravity import GRAVITY
from boomsim.machine.model import CALM, Disturbances
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.hoisting_factor import hoisting_factor
from boomsim.rating.comparison.bending_causes import moment_by_cause
from boomsim.rating.comparison.comparison_sentences import tell_account
from boomsim.rating.comparison.difference_account import account
from boomsim.rating.comparison.whole_percents import whole_percents
from boomsim.rating.lift_response import Response, respond
from boomsim.rating.limits.limit_kind import STABILITY
from boomsim.rating.setup import Setup, set_up

CRANE = invented_crane()


def some_setup(dice: Generator) -> Setup:
    given = Disturbances(
        lean=dice.uniform(-0.03, 0.03),
        side_pull=dice.uniform(0.0, 0.04),
        wind_speed=dice.uniform(0.0, 14.0),
        load_area=1e-3,
        hoist_speed=dice.uniform(0.0, 0.5),
    )
    return set_up(
        CRANE,
        rule=str(dice.choice(["share", "limit-states"])),
        allowances=str(dice.choice(["none", "rule"])),
        disturbances=given if dice.random() < 0.7 else CALM,
    )


def some_response(dice: Generator) -> Response:
    boom = condense(CRANE, extension=dice.uniform(0.0, 1.0, (1, 3)))
    load, angle = dice.uniform(0.0, 4000.0, (1, 1)), dice.uniform(0.4, 1.3, (1, 1))
    return respond(some_setup(dice), boom=boom, load=load, angle=angle)


@pytest.mark.parametrize("seed", range(12))
def test_the_causes_add_up_to_the_moment_that_strength_is_judged_by(seed: int) -> None:
    at = some_response(default_rng(seed))
    assert at.factored.converged.all()
    moments = at.factored_forces.moment[0, :, 0]
    for station in range(0, len(moments), 2):
        parts = moment_by_cause(at, station)
        # Sums of the same numbers in another order: rounding of the largest.
        most = max((abs(part) for part in parts.values()), default=0.0)
        assert sum(parts.values()) == pytest.approx(moments[station], abs=1e-9 * max(most, 1.0))


@pytest.mark.parametrize("rule", ["share", "limit-states"])
def test_a_hoisting_factor_and_a_partial_factor_are_in_the_load_s_part(rule: str) -> None:
    # By hand: a straight, stiff boom at the mouth of the last section: weight times arm.
    change = Disturbances(hoist_speed=0.4)
    stiff = replace(
        CRANE,
        boom=replace(
            CRANE.boom,
            sections=tuple(
                replace(s, clearance=0.0, material=replace(s.material, modulus=1e17))
                for s in CRANE.boom.sections
            ),
        ),
    )
    setup = set_up_by_hand(stiff, rule=rule, disturbances=change)
    boom = condense(stiff, extension=np.ones((1, 3)))
    at = respond(setup, boom=boom, load=np.array([[3000.0]]), angle=np.array([[0.7]]))
    station = 3 * 9 + int(boom.stations.at_mouth[0, 3]) % 9
    last, head = stiff.boom.sections[3], stiff.boom.head
    place = float(boom.stations.position[0, 3].reshape(-1)[station % 9])
    along = last.length - place + head.ahead
    arm = along * np.cos(0.7) + head.below * np.sin(0.7)
    factor = hoisting_factor(0.4, hoist_class=2) * setup.rule.strength.live
    by_hand = -factor * 3000.0 * GRAVITY * arm
    assert moment_by_cause(at, station)["load"] == pytest.approx(by_hand, rel=1e-6)


@pytest.mark.parametrize("seed", range(40))
def test_whole_percents_add_up_to_a_hundred_and_are_never_a_whole_one_off(seed: int) -> None:
    dice = default_rng(seed)
    parts = {str(k): float(part) for k, part in enumerate(dice.normal(1.0, 2.0, 5))}
    whole = sum(parts.values())
    shown = whole_percents(parts)
    assert sum(shown.values()) == 100
    for name, part in parts.items():
        assert abs(shown.get(name, 0) - 100.0 * part / whole) < 1.0


def test_nothing_has_no_shares() -> None:
    assert whole_percents({"load": 0.0}) == {}


@pytest.mark.parametrize("allowances", ["none", "rule"])
@pytest.mark.parametrize("seed", range(6))
def test_what_is_said_of_a_moment_adds_up_to_a_hundred_percent(seed: int, allowances: str) -> None:
    dice = default_rng(seed)
    setup = replace(
        some_setup(dice), rule=set_up(CRANE, allowances=allowances).rule, disturbances=CALM
    )
    found = account(setup, extension=dice.uniform(0.3, 1.0, 3), radius=7.0)
    assert found is not None
    assert found.limit.set_by != STABILITY
    assert found.gave_way is not None
    assert found.gave_way.place is not None
    utilisation, moment = (
        tell_account("x", found, units="metric")
        .split(" the utilisation is made up of ")[1]
        .split(";")
    )
    for said in (utilisation, moment):
        sums = said.replace("- ", "-")
        percents = [
            int(sign + number) * (-1 if minus else 1)
            for minus, sign, number in re.findall(r"(?:( -)[a-z ]+ )?(-?)(\d+) %", sums)
        ]
        assert sum(percents) == 100
