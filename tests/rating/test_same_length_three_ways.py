"""The question that started the project, on the demonstration machine.

What must come out is common practice, no source: nested heavy sections are strongest close in, the
lightest section far out leaves most far out, half and half lies between and deflects least.
"""

import numpy as np
import pytest

from boomsim.machine.machine_files import load_machine
from boomsim.rating.comparison.comparison_study import best_of, compare, deflections, demonstration
from boomsim.rating.comparison.difference_account import account, difference
from boomsim.rating.limits.limit_kind import STABILITY
from boomsim.rating.setup import set_up

LIGHT, HALVES, HEAVY = 0, 1, 2


@pytest.fixture(scope="module")
def compared():
    machine = load_machine("yard60")
    return compare(set_up(machine), configurations=demonstration(machine.boom))


def rated(compared):
    return np.flatnonzero(np.all(compared.rating.capacity > 0.0, axis=0))


def test_the_three_configurations_have_one_length(compared):
    assert np.ptp(compared.configurations.length) < 1e-9


def test_close_in_the_nested_heavy_ones_carry_most_and_the_light_one_would_break(compared):
    near = rated(compared)[0]
    order = np.argsort(-compared.rating.capacity[:, near])
    assert list(order) == [HEAVY, HALVES, LIGHT]
    governing = compared.rating.limits[compared.rating.governing[LIGHT, near]]
    assert governing.set_by != STABILITY


def test_far_out_the_light_one_carries_most_and_all_would_tip(compared):
    far = rated(compared)[-1]
    order = np.argsort(-compared.rating.capacity[:, far])
    assert list(order) == [LIGHT, HALVES, HEAVY]
    assert compared.rating.is_stability[:, far].all()


def test_there_is_a_crossover_and_its_capacities_meet(compared):
    assert compared.crossovers
    for crossover in compared.crossovers:
        pair = compared.configurations.extension[[crossover.before, crossover.after]]
        both = [
            account(compared.setup, extension=row, radius=crossover.radius).capacity for row in pair
        ]
        # Two rounds of twenty points and a straight line: some millimetres of radius.
        assert both[0] == pytest.approx(both[1], rel=1e-3)
        assert both[0] == pytest.approx(crossover.capacity, rel=1e-3)


def test_half_and_half_deflects_less_than_the_light_one_at_equal_load(compared):
    load, _, down = deflections(compared)
    assert load > 0.0
    assert down[HALVES] < down[LIGHT]


@pytest.mark.parametrize("radius", [4.0, 9.0, 16.0])
def test_the_parts_of_a_difference_add_up_to_the_whole(compared, radius):
    rows = compared.configurations.extension
    accounts = [account(compared.setup, extension=row, radius=radius) for row in rows]
    for first in range(3):
        for second in range(first + 1, 3):
            apart = difference(accounts[first], accounts[second], radius=radius)
            whole = sum(apart.by_part.values()) + sum(apart.by_structure)
            # Rounding of a sum of terms of up to 1e6 kg.
            assert whole == pytest.approx(apart.total, abs=1e-6)


def test_the_shift_of_a_section_is_worth_its_weight_by_hand(compared):
    """Far out, moving section 4 by its stroke costs its mass x shift/lever x the rule's share."""
    radius = 16.0
    rows = compared.configurations.extension
    light, heavy = (account(compared.setup, extension=rows[i], radius=radius) for i in (0, 2))
    apart = difference(light, heavy, radius=radius)
    machine = compared.setup.machine
    # Section 1's centre lies 0.9 strokes further out in HEAVY, horizontally by cos(boom angle).
    angle = compared.rating.angle[HEAVY, list(compared.radii).index(radius)]
    shift = 0.9 * machine.boom.sections[1].stroke * np.cos(angle)
    lever = radius - max(abs(x) for x, _ in compared.setup.support.points)
    pushed = machine.boom.telescope_cylinder  # a share of it goes out with section 1
    moving = machine.boom.sections[1].mass + pushed.mass * pushed.moving_share
    by_hand = 0.85 * moving * shift / lever
    # Deflection and the small difference of boom angles move the centre by centimetres: 2 %.
    assert apart.by_part["section 1"] == pytest.approx(by_hand, rel=0.02)


def test_components_and_causes_of_what_gave_way_add_up(compared):
    near = account(compared.setup, extension=compared.configurations.extension[LIGHT], radius=5.0)
    gave = near.gave_way
    assert sum(gave.components.values()) == pytest.approx(1.0, abs=1e-5)
    # The arms are stretched by the last sweep's strains, the forces by those of one before it.
    assert sum(gave.causes.values()) == pytest.approx(gave.moment, rel=1e-8)


def test_no_winner_is_named_where_nobody_reaches():
    capacity = np.array([[np.nan, 3.0, 0.0], [np.nan, 2.0, 0.0]])
    assert list(best_of(capacity)) == [-1, 0, -1]


def test_a_boom_truck_compares_its_two_ways_of_going_out():
    machine = load_machine("truck18")
    compared = compare(set_up(machine), configurations=demonstration(machine.boom))
    assert set(compared.configurations.system) == {"synchronised", "sequenced"}
    assert np.isfinite(compared.rating.capacity).any()


def test_the_bench_model_is_rated_in_all_three_ways_a_free_boom_stands_for():
    machine = load_machine("bench")
    compared = compare(
        set_up(machine),
        configurations=demonstration(machine.boom),
        radii=np.array([0.3, 0.5]),
    )
    assert len(compared.configurations.extension) == 3
    assert np.isfinite(compared.rating.capacity).any()
