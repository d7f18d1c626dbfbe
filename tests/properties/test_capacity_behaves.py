"""What any rated capacity must do: rise with the counterweight, never fall with wider outriggers,
fall with the radius, and never come from what is no number."""

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from making import invented_crane, one

from boomsim.machine.model import Disturbances, Machine, Section
from boomsim.mechanics.boom.condense import condense
from boomsim.rating.capacity import Rating, rate
from boomsim.rating.lift_response import respond
from boomsim.rating.setup import set_up

few = settings(max_examples=12, deadline=None, derandomize=True)
CRANE = invented_crane()
RADII = np.array([5.0, 8.0, 11.0, 14.0, 17.0, 20.0, 23.0, 26.0])
fractions = st.lists(st.floats(0.0, 1.0), min_size=3, max_size=3)
ALL_OUT = [1.0, 1.0, 1.0]


def rated(
    machine: Machine, out: list[float], radius: np.ndarray = RADII, slew: str = "around"
) -> Rating:
    return rate(set_up(machine, slew=slew), extension=np.array([out]), radius=radius)


def with_counterweight(mass: float) -> Machine:
    return replace(CRANE, counterweights=(replace(CRANE.counterweights[0], mass=mass),))


def with_width(half: float) -> Machine:
    points = ((3.0, half), (-3.3, half), (-3.3, -half), (3.0, -half))
    return replace(CRANE, supports=(replace(CRANE.supports[0], points=points),))


@few
@given(fractions, st.floats(0.0, 8e3), st.floats(100.0, 1500.0))
def test_more_counterweight_lifts_more_where_stability_governs(
    out: list[float], mass: float, more: float
) -> None:
    less, greater = (
        rated(with_counterweight(mass), out),
        rated(with_counterweight(mass + more), out),
    )
    tipping = less.limits[-2]
    assert tipping.name == "tipping"
    stable = (less.governing == len(less.limits) - 2) & (less.capacity > 0)
    # 0.85 more x (arm of the counterweight behind the line)/(arm of the load beyond it), if the
    # structure does not stop it first.
    assert np.all(greater.capacity[stable] > less.capacity[stable])


def test_a_tonne_of_counterweight_is_worth_what_the_lever_says() -> None:
    # At the same load and radius: 1000 kg, 3 m behind the axis and 3 m to the tipping line over the
    # side, against a load 22 m - 3 m beyond it.
    def tipping_load(mass: float) -> float:
        machine = with_counterweight(mass)
        boom = condense(machine, extension=np.array([ALL_OUT]))
        at = respond(set_up(machine, slew=np.pi / 2), boom=boom, load=one(4e3), radius=one(22.0))
        return float(at.balance.least[0, 0])

    assert tipping_load(10e3) - tipping_load(9e3) == pytest.approx(1000.0 * 6.0 / 19.0, rel=1e-6)


@few
@given(fractions, st.floats(1.5, 4.0), st.floats(0.01, 1.0))
def test_wider_outriggers_never_lift_less(out: list[float], half: float, wider: float) -> None:
    narrow, wide = rated(with_width(half), out), rated(with_width(half + wider), out)
    both = np.isfinite(narrow.capacity)
    assert np.array_equal(both, np.isfinite(wide.capacity))
    assert np.all(wide.capacity[both] >= narrow.capacity[both] * (1 - 3e-6))


@few
@given(fractions, st.floats(6.0, 24.0), st.floats(0.05, 2.0))
def test_capacity_falls_with_the_radius_where_stability_governs(
    out: list[float], near: float, further: float
) -> None:
    rating = rated(CRANE, out, np.array([near, near + further]))
    if rating.is_stability.all() and np.isfinite(rating.capacity).all():
        assert rating.capacity[0, 1] < rating.capacity[0, 0]


@few
@given(fractions)
def test_no_configuration_lifts_more_than_the_rope_holds(out: list[float]) -> None:
    hoist, rating = CRANE.hoist, rated(CRANE, out)
    # Less than ten parts' pull without friction.
    most = hoist.line_pull * 10 / 9.80665
    assert np.all(rating.capacity[np.isfinite(rating.capacity)] < most)


@few
@given(fractions, st.floats(0.9, 0.9999))
def test_weaker_steel_never_lifts_more(out: list[float], weaker: float) -> None:
    weak = _with_sections(
        lambda s: replace(
            s, material=replace(s.material, yield_stress=weaker * s.material.yield_stress)
        )
    )
    strong, less = rated(CRANE, out).capacity, rated(weak, out).capacity
    both = np.isfinite(strong)
    assert np.all(less[both] <= strong[both] * (1 + 3e-6))


@few
@given(fractions)
def test_a_slew_angle_lifts_at_least_what_all_around_does(out: list[float]) -> None:
    around, rear = rated(CRANE, out), rated(CRANE, out, slew="rear")
    both = np.isfinite(around.capacity)
    assert np.all(rear.capacity[both] >= around.capacity[both] * (1 - 3e-6))


def _with_sections(change: Callable[[Section], Section]) -> Machine:
    sections = tuple(change(s) for s in CRANE.boom.sections)
    return replace(CRANE, boom=replace(CRANE.boom, sections=sections))


def _second(**change: float) -> Machine:
    sections = list(CRANE.boom.sections)
    sections[1] = replace(sections[1], **change)  # type: ignore[arg-type]
    return replace(CRANE, boom=replace(CRANE.boom, sections=tuple(sections)))


NAN = float("nan")
SPOILT = {
    "counterweight": with_counterweight(NAN),
    "outriggers": with_width(NAN),
    "mass of a section": _second(mass=NAN),
    "length of a section": _second(length=NAN),
    "stroke": _second(stroke=NAN),
    "play": _second(clearance=NAN),
    "heel pin": replace(CRANE, heel_out=NAN),
    "carrier": replace(CRANE, carrier=(replace(CRANE.carrier[0], mass=NAN),)),
    "winch": replace(CRANE, hoist=replace(CRANE.hoist, winch_up=NAN)),
    "line pull": replace(CRANE, hoist=replace(CRANE.hoist, line_pull=NAN)),
    "cylinder": replace(CRANE, cylinder=replace(CRANE.cylinder, strength=NAN)),
    "lug": replace(CRANE, cylinder=replace(CRANE.cylinder, attach_along=NAN)),
    "slewing ring": replace(CRANE, ring=replace(CRANE.ring, moment=NAN)),
    "head": replace(CRANE, boom=replace(CRANE.boom, head=replace(CRANE.boom.head, mass=NAN))),
    "yield stress": _with_sections(
        lambda s: replace(s, material=replace(s.material, yield_stress=NAN))
    ),
    "modulus": _with_sections(lambda s: replace(s, material=replace(s.material, modulus=NAN))),
}


@pytest.mark.parametrize("what", list(SPOILT))
@pytest.mark.filterwarnings("ignore::RuntimeWarning")
def test_no_capacity_from_a_machine_with_nan_in_it(what: str) -> None:
    try:
        rating = rated(SPOILT[what], [0.5, 0.5, 0.5])
    except ValueError:
        return
    assert np.isnan(rating.capacity).all()
    assert (rating.governing == -1).all()


@pytest.mark.parametrize("bad", [NAN, float("inf"), float("-inf")])
@pytest.mark.parametrize("what", ["wind_speed", "side_pull", "hoist_speed", "lean", "lean_across"])
@pytest.mark.filterwarnings("ignore::RuntimeWarning")
def test_no_capacity_from_a_disturbance_that_is_no_number(what: str, bad: float) -> None:
    change = Disturbances(**{what: bad})  # type: ignore[arg-type]
    try:
        rating = rate(
            set_up(CRANE, disturbances=change), extension=np.array([ALL_OUT]), radius=RADII
        )
    except ValueError:
        return
    assert np.isnan(rating.capacity).all()


@pytest.mark.parametrize("bad", [NAN, float("inf"), -1.0, 0.0])
def test_no_capacity_at_a_radius_that_is_none(bad: float) -> None:
    try:
        rating = rated(CRANE, ALL_OUT, np.array([bad, 14.0]))
    except ValueError as refused:
        assert "radius" in str(refused)
        return
    assert np.isnan(rating.capacity[0, 0])
    assert rating.capacity[0, 1] > 0.0


@pytest.mark.parametrize("bad", [NAN, float("inf"), -0.01, 1.01])
def test_an_extension_outside_nought_to_one_is_refused(bad: float) -> None:
    with pytest.raises(ValueError, match="outside 0 to 1"):
        rated(CRANE, [1.0, bad, 0.0])


@pytest.mark.parametrize("bad", [NAN, float("inf")])
def test_a_slew_angle_that_is_none_is_refused(bad: float) -> None:
    with pytest.raises(ValueError, match="slew angle"):
        set_up(CRANE, slew=bad)
