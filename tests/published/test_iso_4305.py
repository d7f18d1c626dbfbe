"""ISO 4305, mobile cranes, determination of stability (from memory): the tipping load T is at least
1.25 P + 0.1 F, F the boom's weight referred to the head. So P = (T - 0.1 F)/1.25.

Source: ISO 4305. Status: from memory.
"""

from dataclasses import replace
from math import radians

import numpy as np
import pytest
from making import (
    BARE_HEAD,
    NO_ROPE,
    RIGID,
    bare_machine,
    invented_crane,
    one,
    set_up_by_hand,
    stiff_section,
)

from boomsim.machine.model import CarrierMass
from boomsim.mechanics.boom.condense import condense
from boomsim.rating.capacity import rate
from boomsim.rating.lift_response import respond
from boomsim.rating.limits.tipping import boom_at_head, rated_share
from boomsim.rating.rules import RULES, SHARE_OF_TIPPING, TEST_LOAD

TIPPING, REFERRED = 88.636e3, 34.286e3  # T and F [N]


def test_the_worked_figures() -> None:
    # Arithmetic: (88.636 - 3.4286)/1.25 = 68.166 kN; 85 % of 88.636 is 75.341 kN.
    tipping, at_head = np.array(TIPPING), np.array(REFERRED)
    rated = rated_share(TEST_LOAD, tipping_load=tipping, support_kind="outriggers", at_head=at_head)
    assert rated == pytest.approx(68.166e3, abs=0.5)
    share = rated_share(
        SHARE_OF_TIPPING, tipping_load=tipping, support_kind="outriggers", at_head=at_head
    )
    assert share == pytest.approx(75.341e3, abs=0.5)


def test_the_rated_load_is_always_below_four_fifths_of_the_tipping_load() -> None:
    tipping = np.array([5e3, 50e3, 500e3])
    rated = rated_share(
        TEST_LOAD, tipping_load=tipping, support_kind="outriggers", at_head=np.array(100.0)
    )
    assert np.all(rated < 0.80 * tipping)


def test_the_boom_referred_to_the_head_is_its_weight_times_foot_to_centre_over_foot_to_head() -> (
    None
):
    # An even bar of 3 t, 12 m long, head 0.5 m beyond it: F = 3000 x 6/12.5 at any angle,
    # to rounding.
    bar = stiff_section(12.0, stiffness=RIGID, mass=3000.0)
    truck = CarrierMass(name="truck", mass=20e3, x=0.0, y=0.0, z=1.0)
    machine = bare_machine((bar,), head=replace(BARE_HEAD, ahead=0.5), carrier=(truck,))
    setup = set_up_by_hand(machine, rule="test-load")
    assert setup.parts == NO_ROPE
    at = respond(
        setup,
        boom=condense(machine, extension=np.zeros((1, 0))),
        load=one(1000.0),
        angle=np.array([[radians(10.0), radians(40.0), radians(70.0)]]),
    )
    at_head = boom_at_head(setup.machine, placed=at.placed)
    assert at_head[0] == pytest.approx(3000.0 * 6.0 / 12.5, rel=1e-6)


def test_a_rated_crane_has_its_test_load_in_hand() -> None:
    machine = invented_crane()
    setup = set_up_by_hand(machine, rule="test-load")
    rating = rate(setup, extension=np.array([[1.0, 1.0, 1.0]]), radius=np.array([20.0, 24.0]))
    assert rating.is_stability.all()
    at = respond(setup, boom=rating.boom, load=rating.capacity, radius=rating.radius)
    at_head = boom_at_head(setup.machine, placed=at.placed)
    # The capacity is searched to a millionth of itself.
    assert 1.25 * rating.capacity + 0.1 * at_head == pytest.approx(at.balance.least, rel=2e-6)


def test_the_rule_says_where_it_comes_from() -> None:
    assert "ISO 4305" in RULES["test-load"].stability.source
