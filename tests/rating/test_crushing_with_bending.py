"""Crushing with bending, EN 1993-1-5:2006 eq. (7.2), as a limit of the boom.

The equation and the sums of 4.6 are worked here on their own, from pad forces and from the moment
about the mouth that the rear pad makes over the overlap. Source: EN 1993-1-5:2006. Status:
second-hand (the formula), worked (the numbers).
"""

from dataclasses import replace

import numpy as np
import pytest
from making import set_up_by_hand

from boomsim.gravity import GRAVITY
from boomsim.machine.machine_files import load_machine
from boomsim.mechanics.boom.condense import condense
from boomsim.rating.capacity import rate
from boomsim.rating.lift_response import bear, respond
from boomsim.rating.limits.crushing_with_bending import CRUSHING_WITH_BENDING
from boomsim.rating.limits.limit_table import KINDS

HALVES = np.array([[0.0, 0.0, 0.45, 0.45]])


def used(response, name: str, section: int) -> float:
    row = [limit.key for limit in response.limits].index(f"{name} {section}")
    return float(response.utilisation[row, 0, 0])


@pytest.mark.parametrize("out", [0.45, 0.7])
@pytest.mark.parametrize("radius", [6.0, 12.0])
def test_the_limit_is_the_equation_worked_by_hand(out, radius):
    section = 4  # nothing is in it that presses on it inside its overlap
    machine = load_machine("yard60")
    machine = replace(machine, boom=replace(machine.boom, systems=("free",)))
    setup = set_up_by_hand(machine)
    boom = condense(machine, extension=HALVES * out / 0.45)
    load, cell = np.array([[8000.0]]), np.array([[radius]])
    at = respond(setup, boom=boom, load=load, radius=cell)
    one, strong = machine.boom.sections[section], bear(setup)
    overlap = boom.layout.overlap[0, section]
    # Free body of the part inside the overlap: rear pad times overlap, and its own weight, which
    # pulls the tail down and so helps the pad at the mouth to bend it up.
    inside = one.mass * overlap / one.length * GRAVITY * np.cos(at.state.angle[0, 0])
    moment = at.forces.rear_pad[0, section, 0] * overlap + inside * overlap / 2
    thrust = -at.forces.axial[0, boom.stations.at_mouth[0, section], 0]
    made, stress = strong.effective[section], strong.stress[section]
    bent = max(moment, moment + thrust * made.shift) / (made.drooping.modulus * stress)
    eta_1 = thrust / (made.area * stress) + bent
    eta_2 = at.forces.front_pad[0, section, 0] / strong.crushing[section]
    # The overlap is itself bent, by less than a hundredth of its length: 1 % of the moment.
    by_hand = (eta_2 + 0.8 * eta_1) / 1.4
    assert used(at, "crushing with bending", section) == pytest.approx(by_hand, rel=0.015)


def test_it_sets_figures_that_neither_limit_alone_would():
    setup = set_up_by_hand(load_machine("yard60"))
    without = replace(setup, kinds=tuple(k for k in KINDS if k is not CRUSHING_WITH_BENDING))
    extension, radius = np.eye(4) * 0.9, np.array([5.0, 8.0, 11.0])
    alone, both = (rate(s, extension=extension, radius=radius).capacity for s in (without, setup))
    assert np.all(both <= alone * (1 + 1e-6))
    assert np.any(both < 0.98 * alone)


def test_a_lock_carries_nothing_while_its_section_stands_on_its_stop():
    machine = load_machine("yard60")
    boom = condense(machine, extension=HALVES)
    at = respond(
        set_up_by_hand(machine), boom=boom, load=np.array([[8000.0]]), radius=np.array([[6.0]])
    )
    assert [used(at, "lock", i) for i in (1, 2)] == [0.0, 0.0]
    # The thrust of what is outboard, by hand: load, head and section 4 along the boom, and the
    # rope that runs from the head back to the winch; more than the first three alone.
    outboard = 8000.0 + machine.boom.head.mass + machine.boom.sections[4].mass
    along = outboard * GRAVITY * np.sin(at.state.angle[0, 0])
    lock = machine.boom.sections[4].lock.strength / setup_factor(machine)
    assert used(at, "lock", 4) > along / lock


def setup_factor(machine) -> float:
    return set_up_by_hand(machine).rule.strength.resistance
