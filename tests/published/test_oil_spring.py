"""The oil trapped in a luffing cylinder: a spring of K A/L, and a boom that sinks on it.

Bulk modulus K is pressure over the share of volume that is lost, so a column of length L under a
piston of area A gives L/(K A) for each newton. A crane of stiff bars is worked with plane
trigonometry and a root finder that knows nothing of how the program iterates.

Tolerances: rounding; of the whole crane what three rounds leave, 1e-4 of the sinking.

Source: the definition of the bulk modulus. Status: worked.
"""

from dataclasses import replace
from functools import lru_cache
from math import acos, cos, dist, hypot, pi, radians, sin, sqrt

import numpy as np
import pytest
from making import bare_machine, even_bar, invented_crane, one, set_up_by_hand
from scipy.optimize import brentq

from boomsim.gravity import GRAVITY
from boomsim.machine.machine_check import machine_faults
from boomsim.machine.model import CarrierMass, LuffingCylinder, Machine
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.trapped_oil import angle_at_length, cylinder_length, sunk_length
from boomsim.rating.load_search import Held
from boomsim.rating.overload.overload_sentences import tell_feel, tell_kept
from boomsim.rating.overload.overload_study import Overload, overload
from boomsim.rating.sinking_on_oil import Trapped

LENGTH, BORE, MODULUS = 20.0, 0.2, 1.4e9
LEAST = radians(5.0)
"""Where the cylinder is all in [rad]."""

CYLINDER = LuffingCylinder(
    base_out=1.0, base_up=0.4, attach_along=4.0, attach_below=0.5, strength=1e7, mass=0.0,
    bore=BORE, oil_modulus=MODULUS,
)  # fmt: skip
HEEL_UP = 2.0


@lru_cache
def crane(cylinder: LuffingCylinder = CYLINDER) -> Machine:
    """A weightless stiff bar, with its heel pin on the axis of rotation, on a luffing cylinder."""
    stands = CarrierMass(name="carrier", mass=20e3, x=0.0, y=0.0, z=1.0)
    made = bare_machine(even_bar(LENGTH, stiffness=1e15, pieces=2), carrier=(stands,))
    return replace(made, cylinder=cylinder, boom=replace(made.boom, least_angle=LEAST))


def pins(angle: float) -> float:
    """Distance between the cylinder's pins [m]."""
    lug = (
        4.0 * cos(angle) + 0.5 * sin(angle),
        HEEL_UP + 4.0 * sin(angle) - 0.5 * cos(angle),
    )
    return dist(lug, (1.0, 0.4))


def push(angle: float, load: float) -> float:
    """What holds a load [kg] on the bar's end: its moment over the cylinder's lever arm [N]."""
    lug = 4.0 * cos(angle) + 0.5 * sin(angle), 4.0 * sin(angle) - 0.5 * cos(angle)
    way = lug[0] - 1.0, lug[1] + HEEL_UP - 0.4
    arm = (lug[0] * way[1] - lug[1] * way[0]) / hypot(*way)
    return load * GRAVITY * LENGTH * cos(angle) / arm


def sunk_by_hand(angle: float, *, trapped: float, load: float) -> float:
    """Boom angle under a load, where another was on when the oil was trapped [rad]."""
    column = pins(angle) - pins(LEAST)
    spring = MODULUS * pi * BORE**2 / 4.0 / column

    def missing(found: float) -> float:
        more = push(found, load) - push(angle, trapped)
        return pins(found) - (pins(angle) - more / spring)

    return float(brentq(missing, LEAST, pi / 2, xtol=1e-13))


@pytest.mark.parametrize("angle", [0.1, 0.6, 1.2, 1.5])
def test_the_cylinder_is_as_long_as_its_pins_are_apart_and_the_angle_comes_back(
    angle: float,
) -> None:
    machine = crane()
    assert cylinder_length(machine, angle=angle) == pytest.approx(pins(angle), rel=1e-12)
    assert angle_at_length(machine, length=pins(angle)) == pytest.approx(angle, rel=1e-12)


def test_a_column_of_oil_gives_l_over_k_a_for_each_newton() -> None:
    angle, more = 1.0, 250e3
    column = pins(angle) - pins(LEAST)
    by_hand = pins(angle) - more * column / (MODULUS * pi * BORE**2 / 4.0)
    found = sunk_length(crane(), angle=angle, more=more)
    assert found == pytest.approx(by_hand, rel=1e-12)
    # A piston cannot go through its own bottom.
    assert sunk_length(crane(), angle=angle, more=1e9) == pytest.approx(pins(LEAST), rel=1e-12)


@pytest.mark.parametrize("angle", [0.4, 0.9, 1.3])
@pytest.mark.parametrize("load", [0.0, 2000.0, 6000.0, 9000.0])
def test_a_boom_sinks_on_its_oil_until_the_push_holds_the_load(angle: float, load: float) -> None:
    setup, trapped = set_up_by_hand(crane()), 6000.0
    boom = condense(crane(), extension=np.array([[0.0]]))
    oil = Trapped(setup, boom=boom, load=one(trapped), angle=one(angle))
    found = float(oil.under(one(load))[0, 0])
    by_hand = sunk_by_hand(angle, trapped=trapped, load=load)
    assert found - angle == pytest.approx(by_hand - angle, rel=1e-4, abs=1e-9)
    assert (found < angle) == (load > trapped)


def test_the_radius_grows_by_the_height_of_the_head_for_a_small_sinking() -> None:
    angle, setup = 1.0, set_up_by_hand(crane())
    boom = condense(crane(), extension=np.array([[0.0]]))
    kept = Held(setup, boom=boom, rated=one(6000.0), held=one(angle), hold="angle")
    before, after = (float(kept.hung(one(load)).radius[0, 0]) for load in (6000.0, 6600.0))
    sunk = angle - sunk_by_hand(angle, trapped=6000.0, load=6600.0)
    # The next term of the series, half the square of what it sinks by, over its tangent.
    assert after - before == pytest.approx(LENGTH * sin(angle) * sunk, rel=sunk)


def test_a_file_without_a_bore_keeps_the_boom_angle() -> None:
    rigid = crane(replace(CYLINDER, bore=None))
    boom = condense(rigid, extension=np.array([[0.0]]))
    oil = Trapped(set_up_by_hand(rigid), boom=boom, load=one(6000.0), angle=one(1.0))
    assert oil.under(one(60000.0)) == one(1.0)


def test_a_bore_too_small_for_the_largest_push_is_refused() -> None:
    # 10 MN on a bore of 300 mm: 141 MPa; 70 MPa need 426 mm.
    found = [f for f in machine_faults(crane(replace(CYLINDER, bore=0.3))) if "bore" in f.path]
    assert len(found) == 1
    assert "141" in found[0].says
    least = 1e3 * sqrt(1e7 / 70e6 * 4 / pi)
    assert f"{least:.0f} mm" in found[0].says
    assert not [f for f in machine_faults(crane(replace(CYLINDER, bore=0.43))) if "bore" in f.path]


@lru_cache
def past(bore: float | None, modulus: float = 1.5e9) -> Overload:
    made = invented_crane()
    cylinder = replace(made.cylinder, bore=bore, oil_modulus=modulus)
    setup = set_up_by_hand(replace(made, cylinder=cylinder))
    return overload(setup, extension=np.array([1.0, 1.0, 1.0]), radius=14.0)


def test_an_overload_says_what_the_oil_adds_to_the_radius_and_what_is_kept() -> None:
    rigid, soft = past(None), past(0.3)
    assert rigid.feel.by_oil == 0.0
    assert "oil" not in tell_feel(rigid, units="metric")
    assert f"{soft.feel.by_oil:.2f} m of it as the luffing cylinder's oil gives way" in tell_feel(
        soft, units="metric"
    )
    assert tell_kept(rigid) == "The boom angle is kept"
    assert "oil" in tell_kept(soft)
    # The rated load is the same, and hangs at the same radius: the oil was trapped under it.
    assert soft.rated == rigid.rated
    assert soft.angle == rigid.angle
    # On oil the boom sinks outwards, and tips a little earlier.
    assert soft.tipping is not None
    assert rigid.tipping is not None
    assert 0.97 < soft.tipping.load / rigid.tipping.load < 1.0


def test_oil_of_twice_the_stiffness_adds_half_as_much() -> None:
    one_by, other_by = past(0.3).feel.by_oil, past(0.3, 3e9).feel.by_oil
    # The stiffer one is raised to a slightly larger tipping load.
    assert one_by / other_by == pytest.approx(2.0, rel=0.03)


def test_a_hundredth_of_a_metre_or_less_is_not_told() -> None:
    hard = past(3.0)
    assert 0.0 < hard.feel.by_oil < 0.01
    assert "oil" not in tell_feel(hard, units="metric")


def test_the_lever_arm_by_hand_is_the_law_of_cosines() -> None:
    # What the hand calculation above is made of, once more from the triangle of the three pins.
    a, b, c = hypot(4.0, 0.5), hypot(1.0, 1.6), pins(1.0)
    area = a * b * sin(acos((a**2 + b**2 - c**2) / (2 * a * b)))
    assert push(1.0, 1.0) == pytest.approx(GRAVITY * LENGTH * cos(1.0) * c / area)
