"""Allowances of a rule: strength bears them, stability and the static line pull do not.

Source: worked by hand from the machine's own figures. Status: worked.
"""

import math
from dataclasses import replace

import numpy as np
import pytest
from making import invented_crane

from boomsim.figures.setup_words import allowance_words, rule_words
from boomsim.gravity import GRAVITY
from boomsim.machine.machine_files import load_machine
from boomsim.machine.model import CALM, Disturbances
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.hoisting_factor import hoisting_factor
from boomsim.rating.allowances import USUAL_ALLOWANCES
from boomsim.rating.capacity import Rating, rate
from boomsim.rating.lift_response import respond
from boomsim.rating.limits.limit_kind import STABILITY
from boomsim.rating.rules import RULES
from boomsim.rating.setup import Setup, set_up

WAY = np.array([[0.0, 0.45, 0.45, 0.0]])
RADII = np.array([5.0, 7.0, 9.0, 12.0, 16.0])
ACTING = USUAL_ALLOWANCES.acting()


def rated(allowances: str, given: Disturbances = CALM, slew: float | str = 0.0) -> Rating:
    crane = load_machine("yard60")
    setup = set_up(crane, slew=slew, disturbances=given, allowances=allowances)
    return rate(setup, extension=WAY, radius=RADII)


def test_the_hoisting_factor_of_the_allowance_is_a_tenth() -> None:
    factor = hoisting_factor(ACTING.hoist_speed, hoist_class=ACTING.hoist_class)
    assert factor == pytest.approx(1.05 + 0.17 * 0.3)


def test_an_allowance_leaves_what_stability_sets_as_it_was() -> None:
    without, within = rated("none"), rated("rule")
    both = without.is_stability & within.is_stability
    assert both.any()
    # Both are good to some 1e-6 of themselves.
    assert within.capacity[both] == pytest.approx(without.capacity[both], rel=3e-6)


def test_an_allowance_takes_from_what_strength_sets() -> None:
    without, within = rated("none"), rated("rule")
    strong = ~without.is_stability
    assert strong.any()
    assert np.all(within.capacity[strong] < without.capacity[strong])


def test_strength_with_the_allowances_is_strength_with_the_same_disturbances_given() -> None:
    crane = load_machine("yard60")
    cell = {"load": np.array([[9000.0]]), "radius": np.array([[9.0]])}
    boom = condense(crane, extension=WAY)

    def utilisations(setup: Setup) -> dict[str, float]:
        at = respond(setup, boom=boom, load=cell["load"], radius=cell["radius"])
        wanted = (k for k in at.limits if k.set_by != STABILITY and k.name != "line pull")
        return {k.key: float(at.utilisation[at.limits.index(k), 0, 0]) for k in wanted}

    within = utilisations(set_up(crane, allowances="rule"))
    given = utilisations(set_up(crane, disturbances=ACTING))
    # The same state, reached by two searches that end at 1e-6.
    assert within == pytest.approx(given, rel=1e-4)


def test_the_static_line_pull_knows_no_allowance() -> None:
    at = {
        allowances: respond(
            set_up(load_machine("yard60"), allowances=allowances),
            boom=condense(load_machine("yard60"), extension=WAY),
            load=np.array([[9000.0]]),
            radius=np.array([[9.0]]),
        )
        for allowances in ("none", "rule")
    }
    row = [k.name for k in at["none"].limits].index("line pull")
    assert at["rule"].utilisation[row] == at["none"].utilisation[row]


@pytest.mark.parametrize(
    "given",
    [
        Disturbances(side_pull=0.02),
        Disturbances(hoist_speed=0.2, hoist_class=1),
        Disturbances(lean_across=-math.radians(0.5)),
    ],
)
def test_what_is_given_within_the_allowance_costs_no_strength(given: Disturbances) -> None:
    strains = RULES["share"].strains(given)
    assert strains == RULES["share"].strains(CALM) == ACTING


def test_what_is_given_beyond_the_allowance_counts_in_its_place() -> None:
    given = Disturbances(side_pull=0.03, wind_speed=12.0, wind_across=True)
    strains = RULES["share"].strains(given)
    assert strains == replace(ACTING, side_pull=0.03, wind_beside=12.0)
    assert RULES["share"].without_allowances().strains(given) == given


def test_the_ring_bears_the_moment_of_a_lean_by_hand() -> None:
    # Every mass has the lever of its height over the ring, times the slope.
    crane = invented_crane()
    slope, load = 0.02, np.array([[3000.0]])
    way = condense(crane, extension=np.array([[0.0, 0.0, 0.0]]))
    setup = set_up(crane, disturbances=Disturbances(lean=slope), allowances="none")
    at = respond(setup, boom=way, load=load, angle=np.array([[0.3]]))
    placed, turning = at.placed, at.placed.turning
    mass = placed.mass[:turning]
    out, up = placed.out[:, 0, 0], placed.up[:, 0, 0] - crane.ring.up
    level = mass @ out + 3000.0 * placed.head_out[0, 0]
    high = mass @ up + 3000.0 * (placed.head_up[0, 0] - crane.ring.up)
    expected = GRAVITY * (level * math.cos(slope) + high * math.sin(slope))
    row = [k.name for k in at.limits].index("slewing ring")
    # Rounding only: the same sum.
    assert at.utilisation[row, 0, 0] * crane.ring.moment == pytest.approx(expected, rel=1e-9)


def test_each_allowance_is_named_with_its_value_and_its_source() -> None:
    words = allowance_words(RULES["share"])
    for said in (
        "side pull 2.0 % of the load (SAE J1063",
        "load x 1.10",
        "wind 9.00 m/s from behind (assumed)",
        "1.20 m²/t (EN 13000",
        "out of level 0.5° ahead (assumed)",
    ):
        assert said in words
    assert "20.1 mph" in allowance_words(RULES["share"], units="us")
    assert allowance_words(RULES["share"].without_allowances()) == ""


def test_a_rule_with_allowances_says_so_and_one_without_does_not() -> None:
    ruled, bare = (
        rule_words(rule, support_kind="outriggers")
        for rule in (RULES["share"], RULES["share"].without_allowances())
    )
    assert ruled == f"{bare}, with allowances"


def test_a_choice_of_allowances_that_is_none_is_refused() -> None:
    with pytest.raises(ValueError, match="choice of allowances 'rules'"):
        set_up(load_machine("yard60"), allowances="rules")
