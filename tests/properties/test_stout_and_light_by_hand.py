"""Built stout or light: strength and stability by hand, from the hollow rectangle and the lever.

A boom that does not bend, so that every lever is the drawn one, and a rope that pulls nothing.
"""

from dataclasses import replace
from math import atan2, cos, hypot, pi, sin, sqrt

import numpy as np
import pytest
from making import NO_ROPE, invented_crane, set_up_by_hand

from boomsim.gravity import GRAVITY
from boomsim.machine.model import Machine, Profile
from boomsim.machine.plate_thickness import with_plates
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.boom.stations import PER_SECTION
from boomsim.mechanics.sections.section_properties import properties
from boomsim.rating.capacity import rate
from boomsim.rating.lift_response import respond
from boomsim.rating.limits.limit_table import KINDS

FACTORS = (0.7, 0.8, 1.3, 1.6)
OUT = np.array([[1.0, 1.0, 1.0]])
RIGID = 1e18
"""Young's modulus of a steel that does not bend [Pa]."""

HEIGHT, WIDTH, PLATE = 0.75, 0.61, 0.007
"""Section 1 of the invented crane: outside, its top and webs; its bottom is 1.2 times so [m]."""


def stiff_crane() -> Machine:
    crane = invented_crane()
    sections = tuple(
        replace(s, clearance=0.0, material=replace(s.material, modulus=RIGID))
        for s in crane.boom.sections
    )
    return replace(
        crane,
        boom=replace(crane.boom, sections=sections),
        hoist=replace(crane.hoist, parts=(NO_ROPE,), line_pull=1e9, sheave_efficiency=1.0),
    )


def hollow_rectangle(factor: float) -> tuple[float, float, float]:
    """Area, second moment and smaller section modulus of section 1 [m2], [m4], [m3]."""
    B, H, t, b = WIDTH, HEIGHT, factor * PLATE, 1.2 * factor * PLATE
    w, h, e = B - 2 * t, H - t - b, (b - t) / 2  # the hole, and how far up its middle lies
    A = B * H - w * h
    y = -w * h * e / A  # of the centroid, from the middle of the outside
    I = B * H**3 / 12 - (w * h**3 / 12 + w * h * e**2) - A * y**2  # noqa: E741
    return A, I, I / (H / 2 + abs(y))


def profile(factor: float) -> Profile:
    return with_plates(stiff_crane(), factor=factor).boom.sections[1].profile


@pytest.mark.parametrize("factor", FACTORS)
def test_a_section_is_the_hollow_rectangle_of_its_outside_and_its_plates(factor: float) -> None:
    A, I, W = hollow_rectangle(factor)  # noqa: E741
    made = properties(profile(factor))
    assert made.area == pytest.approx(A, rel=1e-9)
    assert made.i_y == pytest.approx(I, rel=1e-9)
    assert min(made.modulus_top, made.modulus_bottom) == pytest.approx(W, rel=1e-9)


@pytest.mark.parametrize("factor", FACTORS)
def test_area_and_second_moment_of_a_thin_wall_grow_as_its_thickness(factor: float) -> None:
    # Thin-walled theory: both in proportion to t. What is left is of the order of the change of
    # thickness over the width: the wall grows inwards, and the second moment goes with the cube of
    # the midline's size. So no more than three times (f - 1) t / B on the second moment.
    left = 3 * abs(factor - 1.0) * 1.2 * PLATE / WIDTH
    thin, thick = properties(profile(1.0)), properties(profile(factor))
    for name in ("area", "i_y", "i_z"):
        ratio = getattr(thick, name) / getattr(thin, name)
        assert ratio == pytest.approx(factor, rel=left), name
        # It lags behind, as the wall grows inwards, and by no rounding.
        assert abs(ratio - 1.0) < abs(factor - 1.0), name


def at_mouth(machine: Machine) -> tuple[float, float]:
    """Lever of the load about the base section's mouth, and the own weight's moment there.

    Everything out and level: there only section 1 crosses the mouth [m], [kg m].
    """
    base, *moving = machine.boom.sections
    front = mouth = base.length
    moment = 0.0
    for section in moving:
        front += section.nose + section.stroke
        ahead = front - mouth  # of this front
        beyond = min(section.length, ahead)  # so much of it lies beyond the mouth
        moment += section.mass * beyond / section.length * (ahead - beyond / 2)
    lever = front - mouth + machine.boom.head.ahead
    return lever, moment + machine.boom.head.mass * lever


@pytest.mark.parametrize("factor", (1.0, *FACTORS))
def test_load_that_bends_to_yield_grows_by_the_section_modulus_less_the_own_weight(
    factor: float,
) -> None:
    machine = with_plates(stiff_crane(), factor=factor)
    lever, own = at_mouth(machine)
    allowed = 690e6 / 1.5
    load = (allowed * hollow_rectangle(factor)[2] / GRAVITY - own) / lever
    setup = set_up_by_hand(machine)
    at = respond(
        setup,
        boom=condense(machine, extension=OUT),
        load=np.array([[load]]),
        angle=np.zeros((1, 1)),
    )
    own_stations = slice(PER_SECTION, 2 * PER_SECTION)
    bends = np.abs(at.factored_forces.moment[0, own_stations, 0]).max()
    shape = properties(machine.boom.sections[1].profile)
    stress = bends / min(shape.modulus_top, shape.modulus_bottom)
    # A rope with 100,000 parts, and steel that is rigid but for a millionth.
    assert stress == pytest.approx(allowed, rel=1e-4)


def test_a_stout_boom_gains_less_than_its_plates_by_what_it_weighs_more() -> None:
    thin, thick = (with_plates(stiff_crane(), factor=f) for f in (1.0, 1.3))
    lever, own = at_mouth(thin)
    _, more = at_mouth(thick)
    allowed = 690e6 / 1.5 / GRAVITY
    loads = [(allowed * hollow_rectangle(f)[2] - o) / lever for f, o in ((1.0, own), (1.3, more))]
    assert loads[1] > loads[0]
    plates_alone = 1.3 * (loads[0] + own / lever) - own / lever
    # What is missing is the added own weight, but for how the second moment lags behind thickness.
    lag = (1.3 * hollow_rectangle(1.0)[2] - hollow_rectangle(1.3)[2]) * allowed / lever
    assert plates_alone - loads[1] == pytest.approx((more - own) / lever + lag, rel=1e-9)


RADIUS, LINE = 18.0, 3.3
"""Of the load, and of the front tipping line, both from the axis of rotation [m]."""


def straight_places(machine: Machine) -> list[float]:
    """Middle of each section from the axis of rotation, the straight boom's head at RADIUS [m]."""
    base, *moving = machine.boom.sections
    front, middles = base.length, [base.length / 2]
    for section in moving:
        front += section.nose + section.stroke
        middles.append(front - section.length / 2)
    along, below = front + machine.boom.head.ahead, machine.boom.head.below
    reach, slant = RADIUS - machine.heel_out, hypot(along, below)
    # along cos + below sin = reach
    angle = atan2(sqrt(slant**2 - reach**2), reach) + atan2(below, along)
    assert along * cos(angle) + below * sin(angle) == pytest.approx(reach)
    return [machine.heel_out + middle * cos(angle) for middle in middles]


@pytest.mark.parametrize("factor", FACTORS)
def test_tipping_load_falls_by_the_added_weights_moment_over_the_lever(factor: float) -> None:
    old = stiff_crane()
    new = with_plates(old, factor=factor)
    tips = []
    for machine in (old, new):
        # Strength is left out: what is asked is at which load the crane tips.
        setup = replace(
            set_up_by_hand(machine, slew=pi), kinds=tuple(k for k in KINDS if k.name == "tipping")
        )
        tips.append(rate(setup, extension=OUT[0], radius=np.array([RADIUS])).tipping_load[0, 0])
    added = [b.mass - a.mass for a, b in zip(old.boom.sections, new.boom.sections, strict=True)]
    moment = sum(mass * (out - LINE) for mass, out in zip(added, straight_places(old), strict=True))
    # The rating is searched for to a millionth.
    assert tips[0] - tips[1] == pytest.approx(moment / (RADIUS - LINE), rel=1e-4)
