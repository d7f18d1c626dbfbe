"""Hibbeler, Engineering Mechanics: Statics. Review problem R4-1: the load that brings the moment at
a boom's foot to its limit (inputs read second-hand). Problem 5-26 of the 14th edition: the angle at
which a truck crane tips (from memory).

Source: Hibbeler, Statics. Status: from memory.
"""

from dataclasses import replace
from math import asin, cos, degrees, hypot, pi, radians, sin

import numpy as np
import pytest
from making import BARE_HEAD, NO_ROPE, RIGID, bare_machine, kilograms, one, stiff_section

from boomsim.gravity import GRAVITY
from boomsim.machine.model import CarrierMass, Support
from boomsim.mechanics.boom.boom_state import State, solve_state
from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.boom.internal_forces import section_forces
from boomsim.mechanics.stability.masses import masses
from boomsim.mechanics.stability.overturning import Overturning, overturning
from boomsim.mechanics.stability.support_reactions import Reactions, support_reactions

FOOT, POUND = 0.3048, 0.45359237 * GRAVITY  # [m], [N]


class TestBoomFoot:
    """R4-1: boom of 800 lb, centre of gravity at 16 ft, 30 ft long at 30 degrees; the load hangs
    2 ft beyond its head; 20 kip ft at the foot: 319 lb (318.6). Status: second-hand."""

    angle = radians(30.0)

    def boom(self, lug: float) -> Condensed:
        # An even bar has its centre of gravity at 16 ft when it is 32 ft long; the head then is
        # where the load hangs, 30 cos 30 + 2 ft from the foot horizontally and as high as 32 ft.
        short = (32.0 - 30.0) * cos(self.angle) - 2.0
        head = replace(
            BARE_HEAD,
            ahead=-short * cos(self.angle) * FOOT,
            below=-short * sin(self.angle) * FOOT,
        )
        bar = stiff_section(32.0 * FOOT, stiffness=RIGID, mass=800.0 * POUND / GRAVITY)
        return condense(bare_machine((bar,), head=head, lug=lug), extension=np.zeros((1, 0)))

    def lifted(self, boom: Condensed, pounds: float) -> State:
        return solve_state(
            boom, load=kilograms(pounds * POUND), parts=NO_ROPE, angle=one(self.angle)
        )

    def test_the_load_hangs_two_feet_beyond_the_head(self) -> None:
        state = self.lifted(self.boom(1e-5), 319.0)
        out = state.head_along * cos(self.angle) - state.head_above * sin(self.angle)
        assert out[0, 0] / FOOT == pytest.approx(30.0 * cos(self.angle) + 2.0, rel=1e-9)

    def test_319_pounds_bring_the_foot_to_20_kip_feet(self) -> None:
        boom = self.boom(1e-5)
        forces = section_forces(boom, state=self.lifted(boom, 318.6))
        # 318.6 has four figures, and the load's share of the moment is less than half.
        assert -forces.moment.min() / (POUND * FOOT) == pytest.approx(20e3, rel=1e-4)
        forces = section_forces(boom, state=self.lifted(boom, 319.0))
        assert -forces.moment.min() / (POUND * FOOT) == pytest.approx(20e3, rel=1e-3)

    def test_the_luffing_cylinder_balances_the_same_moment_about_the_foot(self) -> None:
        boom = self.boom(10.0 * FOOT)
        state = self.lifted(boom, 318.6)
        push = section_forces(boom, state=state).cylinder[0, 0]
        machine = boom.machine
        # 318.6 has four figures.
        pin = np.array([cos(self.angle), sin(self.angle)]) * 10.0 * FOOT
        cylinder = machine.cylinder
        base = np.array([cylinder.base_out - machine.heel_out, cylinder.base_up - machine.heel_up])
        line = (pin - base) / hypot(*(pin - base))
        arm = pin[0] * line[1] - pin[1] * line[0]
        assert push * arm / (POUND * FOOT) == pytest.approx(20e3, rel=1e-4)


class TestTruckCrane:
    """5-26: truck of 18 Mg with its centre 1 m inside the outriggers B, boom of 1.8 Mg with its
    foot 2 m inside them and its centre 6 m along, load of 1.2 Mg 12.25 m along; outriggers A and B
    4 m apart. Each A carries 29.4 - 31.3 sin(angle from the vertical) kN, each B
    73.6 + 31.3 sin; it tips at 70.3 degrees."""

    support = Support(
        name="outriggers",
        kind="outriggers",
        points=((2.0, 2.0), (2.0, -2.0), (-2.0, 2.0), (-2.0, -2.0)),
        stiffness=1e7,
        area=0.25,
    )

    def boom(self) -> Condensed:
        bar = stiff_section(12.0, stiffness=RIGID, mass=1800.0)
        truck = CarrierMass(name="truck", mass=18e3, x=1.0, y=0.0, z=1.0)
        machine = bare_machine(
            (bar,), head=replace(BARE_HEAD, ahead=0.25), support=self.support, carrier=(truck,)
        )
        return condense(machine, extension=np.zeros((1, 0)))

    def balance(self, from_vertical: float) -> Overturning:
        boom = self.boom()
        state = solve_state(
            boom, load=one(1200.0), parts=NO_ROPE, angle=one(pi / 2 - from_vertical)
        )
        placed = masses(boom, state=state, counterweight=boom.machine.counterweights[0])
        return overturning(
            boom, placed=placed, state=state, support=self.support, slew=np.array([0.0])
        )

    def carried(self, from_vertical: float) -> Reactions:
        # Moments about the boom's foot, which is on the axis of rotation.
        weight = (18e3 + 1800.0 + 1200.0) * GRAVITY
        out = (18e3 * 1.0 + (1800.0 * 6.0 + 1200.0 * 12.25) * sin(from_vertical)) / 21e3
        return support_reactions(self.support, weight=one(weight), x=one(out), y=one(0.0))

    def test_it_tips_at_70_3_degrees(self) -> None:
        exact = asin((18.0 * 1 + 1.8 * 2 + 1.2 * 2) / (1.8 * 6 + 1.2 * 12.25))
        assert degrees(exact) == pytest.approx(70.3, abs=0.06)  # 70.25 rounds to either
        assert self.balance(exact).least[0, 0] == pytest.approx(1200.0, rel=1e-6)
        assert self.balance(radians(69.8)).least[0, 0] > 1200.0
        assert self.balance(radians(70.8)).least[0, 0] < 1200.0

    def test_the_outriggers_carry_what_the_book_says(self) -> None:
        # Book: g 9.81, three figures.
        for angle in map(radians, (0.0, 20.0, 45.0, 65.0)):
            force = self.carried(angle).force[:, 0, 0] / 1e3
            assert force[2:] == pytest.approx([29.4 - 31.3 * sin(angle)] * 2, abs=0.08)
            assert force[:2] == pytest.approx([73.6 + 31.3 * sin(angle)] * 2, abs=0.15)

    def test_its_rear_outriggers_lift_at_the_same_angle(self) -> None:
        assert not self.carried(radians(70.2)).tipped.any()
        assert self.carried(radians(70.3)).tipped.all()
