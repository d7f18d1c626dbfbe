"""Whose moments, whose weights: accounts, centres of gravity and slopes when something pushes."""

from cmath import exp
from dataclasses import replace
from math import cos, radians, sin

import numpy as np
import pytest
from making import NO_ROPE, invented_crane, set_up_by_hand

from boomsim.machine.model import Disturbances, Machine, Rigging
from boomsim.machine.shapes.box import box
from boomsim.mechanics.boom.condense import condense
from boomsim.rating.around.centres_of_gravity import centres
from boomsim.rating.chart_places import Places, governing_of, rate_places
from boomsim.rating.charts.chart_book import make_book
from boomsim.rating.comparison.difference_account import Account, account
from boomsim.rating.lift_response import Response, respond
from boomsim.rating.limits.limit_kind import STRENGTH
from boomsim.rating.losses.mass_sensitivity import sensitivity
from boomsim.rating.strategies import configurations_of

OUT = np.array([1.0, 1.0, 1.0])
FAR = Places(extension=OUT[None], radius=np.array([24.0]))
PULLED = Disturbances(side_pull=0.03)


def ropeless() -> Machine:
    """A crane whose hoist rope pulls at nothing, its cylinder in the axis of the boom."""
    crane = invented_crane()
    return replace(
        crane,
        hoist=replace(crane.hoist, parts=(NO_ROPE,), sheave_efficiency=1.0),
        cylinder=replace(crane.cylinder, attach_below=0.0),
    )


def accounted(
    machine: Machine, radius: float, change: Disturbances, slew: float | str = "around"
) -> Account:
    setup = set_up_by_hand(machine, disturbances=change, slew=slew)
    found = account(setup, extension=OUT, radius=radius)
    assert found is not None
    return found


@pytest.mark.parametrize("slew", ["around", 0.3, 2.9, -1.2])
def test_a_pull_sideways_is_neither_wind_nor_lean(slew: float | str) -> None:
    # It is the load that is pulled, so the righting moment is the masses' own, swayed as they are.
    found = accounted(invented_crane(), 24.0, PULLED, slew)
    assert "wind and lean" not in found.parts
    leaning = accounted(invented_crane(), 24.0, Disturbances(lean=0.01), slew)
    assert "wind and lean" in leaning.parts


@pytest.mark.parametrize("radius", [6.0, 12.0])
def test_without_rope_and_lug_all_bending_comes_from_the_load_and_the_boom(radius: float) -> None:
    gave_way = accounted(ropeless(), radius, Disturbances()).gave_way
    assert gave_way is not None
    assert gave_way.section
    assert gave_way.moment is not None
    causes = gave_way.causes
    # What is left of the lead line is a hundred-thousandth of the load.
    left = abs(sum(causes.get(name, 0.0) for name in ("hoist rope", "cylinder lug")))
    assert left < 1e-3 * abs(gave_way.moment)
    assert causes["load"] + causes["own weight"] == pytest.approx(gave_way.moment, rel=1e-3)
    # Both bend the boom downwards.
    assert causes["load"] < 0.0
    assert causes["own weight"] < 0.0


def swayed(change: Disturbances, machine: Machine | None = None) -> Response:
    crane = machine or invented_crane()
    setup = set_up_by_hand(crane, disturbances=change)
    boom = condense(crane, extension=OUT[None])
    return respond(setup, boom=boom, load=np.array([[2000.0]]), angle=np.array([[0.9]]))


@pytest.mark.parametrize("slew", [0.0, 0.7, -2.0])
def test_a_swayed_load_hangs_where_the_turned_head_is(slew: float) -> None:
    at = swayed(PULLED)
    load = centres(at, slew=slew)[-1]
    # Out and left as one complex number, turned by the slew angle.
    place = complex(at.placed.head_out[0, 0], at.placed.head_left[0, 0]) * exp(1j * slew)
    assert load.name == "load"
    assert abs(at.placed.head_left[0, 0]) > 0.01
    assert (load.x, load.y) == pytest.approx((place.real, place.imag))


def test_centres_of_the_groups_add_up_to_the_centre_of_the_crane() -> None:
    at, slew = swayed(PULLED), 0.7
    found = centres(at, slew=slew)[:-1]
    placed, turning = at.placed, at.placed.turning
    out = placed.mass[:turning] @ placed.out[:, 0, 0]
    left = placed.mass[:turning] @ placed.left[:, 0, 0]
    x = out * cos(slew) - left * sin(slew) + placed.mass[turning:] @ placed.x
    y = out * sin(slew) + left * cos(slew) + placed.mass[turning:] @ placed.y
    assert sum(c.mass for c in found) == pytest.approx(placed.mass.sum())
    assert sum(c.mass * c.x for c in found) == pytest.approx(x)
    assert sum(c.mass * c.y for c in found) == pytest.approx(y)


def test_what_has_no_mass_has_no_centre() -> None:
    crane = invented_crane()
    none = replace(crane.counterweights[0], mass=0.0)
    found = centres(swayed(PULLED, replace(crane, counterweights=(none,))), slew=0.0)
    assert [c.name for c in found] == ["boom", "superstructure", "carrier", "load"]


@pytest.mark.parametrize(
    "change",
    [
        Disturbances(lean=radians(2.0)),
        Disturbances(lean_across=radians(2.0)),
        Disturbances(side_pull=0.05),
    ],
)
def test_the_stability_sum_and_machines_rated_anew_agree_when_something_pushes(
    change: Disturbances,
) -> None:
    result = sensitivity(set_up_by_hand(invented_crane(), disturbances=change), places=FAR)
    assert result.is_stability[0]
    # The sum leaves the deflection as it is: 2 % of a kilogram at most.
    assert result.by_sum == pytest.approx(result.by_rating, abs=0.02)


def test_the_first_limit_of_the_list_can_govern_like_any_other() -> None:
    crane = invented_crane()
    base = crane.boom.sections[0]
    # Thick plates of soft steel: they yield before they buckle.
    thick = box(0.85, width=0.70, top=0.02, bottom=0.02, web=0.02)
    soft = replace(base, profile=thick, material=replace(base.material, yield_stress=80e6))
    weak = replace(crane, boom=replace(crane.boom, sections=(soft, *crane.boom.sections[1:])))
    near = Places(extension=OUT[None], radius=np.array([10.0]))
    setup = set_up_by_hand(weak, rigging=Rigging(parts=10))
    (limit,) = governing_of(rate_places(setup, near))
    assert limit is not None
    assert (limit.set_by, limit.name, limit.section) == (STRENGTH, "stress", 0)
    # A book counts such a cell too.
    ways = configurations_of(weak.boom, extension=near.extension)
    assert make_book([setup], configurations=ways, radii=near.radius).rated == 1
    # And a place out of reach has none.
    away = Places(extension=OUT[None], radius=np.array([60.0]))
    assert governing_of(rate_places(setup, away)) == (None,)
