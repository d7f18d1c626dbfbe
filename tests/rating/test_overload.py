"""Past the rated load: what must come out whatever the machine."""

from dataclasses import replace
from functools import lru_cache

import numpy as np
import pytest
from making import invented_crane, set_up_by_hand

from boomsim.gravity import GRAVITY
from boomsim.machine.machine_files import load_machine
from boomsim.mechanics.stability.support_reactions import support_reactions
from boomsim.rating.around.float_loads import float_loads
from boomsim.rating.around.slew_directions import direction
from boomsim.rating.lift.lift_study import lift
from boomsim.rating.lift_response import Response
from boomsim.rating.limits.limit_table import limits_of
from boomsim.rating.load_search import NO_MARGIN, Held, load_at_one, no_margin
from boomsim.rating.overload.overload_events import Event
from boomsim.rating.overload.overload_study import Overload, overload
from boomsim.rating.overload.tip_over import net_moment
from boomsim.rating.setup import set_up

OUT, IN = np.array([1.0, 1.0, 1.0]), np.array([0.0, 0.0, 0.0])
FAR, NEAR = 22.0, 8.0


@lru_cache
def study(
    far: bool = True, hold: str = "angle", rule: str = "share", slew: float | str = "around"
) -> Overload:
    setup = set_up_by_hand(invented_crane(), rule=rule, slew=slew)
    return overload(setup, extension=OUT, radius=FAR if far else NEAR, hold=hold)


def hung(result: Overload, load: float) -> Response:
    """One load on the lift as it was raised."""
    held = result.angle if result.hold == "angle" else result.radius
    rated, held = np.array([[result.rated]]), np.array([[held]])
    kept = Held(no_margin(result.setup), boom=result.boom, rated=rated, held=held, hold=result.hold)
    return kept.hung(np.array([[load]]))


def event(result: Overload, name: str) -> Event:
    return next(e for e in result.events if e.name == name)


def test_at_the_tipping_load_nothing_is_left_of_the_righting_moment() -> None:
    for hold in ("angle", "radius"):
        result = study(hold=hold)
        assert result.tipping is not None
        at = hung(result, result.tipping.load)
        left, whole = net_moment(at).min(), np.abs(at.balance.righting).max()
        # The load is good to 1e-7 of itself.
        assert abs(left) < 1e-6 * whole


def test_an_85_percent_rating_tips_at_its_reciprocal_when_the_radius_is_kept() -> None:
    result = study(hold="radius")
    assert result.governing.name == "tipping"
    assert result.tipping is not None
    # The boom bends a little more under the larger load, so its own weight is nearer: 0.3 %.
    assert result.tipping.multiple == pytest.approx(1 / 0.85, rel=3e-3)


def test_at_a_kept_angle_the_radius_grows_and_the_crane_tips_earlier() -> None:
    kept, grown = study(hold="radius"), study(hold="angle")
    assert kept.tipping is not None
    assert grown.tipping is not None
    assert grown.tipping.load < kept.tipping.load
    assert np.all(np.diff(grown.feel.radius) > 0.0)
    assert np.ptp(kept.feel.radius) < 1e-6


def test_the_rated_load_hangs_at_the_wanted_radius() -> None:
    result = study()
    assert hung(result, result.rated).radius[0, 0] == pytest.approx(FAR, abs=1e-6)


def test_events_come_in_the_order_of_their_loads_and_each_uses_its_limit_up() -> None:
    for far in (True, False):
        result = study(far=far)
        loads = [e.load for e in result.events]
        assert loads == sorted(loads)
        for found in result.events:
            if found.limit is None:
                continue
            names = [limit.key for limit in result.limits]
            used = hung(result, found.load).utilisation[names.index(found.limit.key), 0, 0]
            assert used == pytest.approx(1.0, abs=1e-5)
            assert found.multiple == pytest.approx(found.load / result.rated)


def test_nothing_has_happened_before_the_first_event_of_its_kind() -> None:
    result = study(far=False)
    assert result.failure is not None
    before = result.load < result.failure.load * (1 - 1e-6)
    rows = np.array([limit.kind.passed == "gives way" for limit in result.limits])
    assert np.all(result.utilisation[rows][:, before] < 1.0)


def test_all_limits_but_one_are_passed_by_a_growing_load() -> None:
    silent = {limit.name for limit in limits_of(invented_crane()) if limit.kind.passed is None}
    # A crane that falls over backwards does so without a load.
    assert silent == {"backward"}


def test_real_strength_knows_no_factor() -> None:
    strength = NO_MARGIN.strength
    factors = (strength.resistance, strength.buckling, strength.dead, strength.live)
    assert factors == (1.0, 1.0, 1.0, 1.0)


def test_which_rule_rates_the_crane_does_not_change_what_happens_at_a_kept_radius() -> None:
    one, other = study(hold="radius"), study(hold="radius", rule="limit-states")
    assert one.tipping is not None
    assert other.tipping is not None
    assert one.rated != pytest.approx(other.rated)
    assert one.tipping.load == pytest.approx(other.tipping.load, rel=1e-6)
    assert one.failure is not None
    assert other.failure is not None
    assert one.failure.load == pytest.approx(other.failure.load, rel=1e-5)


def test_near_in_it_breaks_and_far_out_it_tips() -> None:
    near, far = study(far=False), study()
    assert not near.warns
    assert far.warns
    assert near.first is near.failure
    assert far.first is far.tipping


def test_a_section_gives_way_at_about_the_rule_s_factor_where_it_governs() -> None:
    # Rated at yield/1.5. The boom's own weight stays as it is, so the load may grow by more; the
    # second-order part grows faster than the load and takes some of that back.
    result = study(far=False, hold="radius")
    assert result.failure is not None
    assert result.failure.limit == result.governing
    assert result.failure.multiple == pytest.approx(1.5, rel=0.1)


def test_the_lightest_float_gets_lighter_until_it_leaves_the_ground_at_tipping() -> None:
    feel = study().feel
    assert np.all(np.diff(feel.lightest) < 0.0)
    assert feel.lightest[0] > 0.0
    # Square over a side of the polygon both floats behind it lift together, at tipping.
    assert feel.lightest[-1] < 1e-4 * feel.lightest[0]


def test_the_carrier_leans_towards_the_load_and_the_head_comes_down() -> None:
    feel = study().feel
    assert feel.lean[0] == feel.droop[0] == 0.0
    assert np.all(np.diff(feel.lean) > 0.0)
    assert np.all(np.diff(feel.droop) > 0.0)


def test_softer_floats_lean_in_proportion() -> None:
    crane = invented_crane()
    soft = replace(crane, supports=(replace(crane.supports[0], stiffness=6e6),))
    found = overload(set_up_by_hand(soft), extension=OUT, radius=FAR)
    # Ten times as soft; the floats' forces do not change.
    assert found.feel.lean[-1] == pytest.approx(10 * study().feel.lean[-1], rel=1e-6)
    assert found.feel.lightest == pytest.approx(study().feel.lightest, abs=1.0)


def test_floats_carry_crane_and_load() -> None:
    result = study()
    at = hung(result, result.rated)
    loads = float_loads(at, slew=np.radians(np.arange(-180.0, 181.0, 15.0)))
    whole = GRAVITY * (at.placed.mass.sum() + result.rated)
    assert loads.reactions.force.sum(axis=0) == pytest.approx(whole, rel=1e-9)
    assert loads.bonded.sum(axis=0) == pytest.approx(whole, rel=1e-9)


def test_a_float_lifts_over_a_corner_before_the_crane_tips() -> None:
    result = study()
    lifted = event(result, "float")
    assert result.tipping is not None
    assert lifted.slew is not None
    assert lifted.place is not None
    assert 0.0 < lifted.load < result.tipping.load
    # It is the float behind the boom.
    assert np.cos(lifted.slew) * lifted.place[0] + np.sin(lifted.slew) * lifted.place[1] < 0.0


def test_at_the_load_at_which_a_float_lifts_it_carries_nothing_and_just_before_it_carries() -> None:
    result = study()
    lifted = event(result, "float")
    assert lifted.slew is not None
    index = result.setup.support.points.index(lifted.place)  # type: ignore[arg-type]
    for share, up in ((0.99, False), (1.01, True)):
        at = hung(result, share * lifted.load)
        loads = float_loads(at, slew=np.array([lifted.slew]))
        found = support_reactions(result.setup.support, weight=loads.weight, x=loads.x, y=loads.y)
        assert bool(found.lifted[index, 0, 0, 0]) is up
        assert not found.tipped.any()


def test_once_it_leans_at_the_tipping_load_it_does_not_come_back() -> None:
    fallen = study().fall
    assert fallen is not None
    at_tipping = 2
    assert np.all(fallen.moment[at_tipping, 1:] < 0.0)
    assert np.all(np.diff(fallen.moment[at_tipping]) < 0.0)
    assert fallen.no_return[at_tipping] == pytest.approx(0.0, abs=1e-6)


def test_below_the_tipping_load_there_is_a_lean_from_which_it_does_not_come_back() -> None:
    fallen = study().fall
    assert fallen is not None
    # Loads rise, so that lean shrinks; there the moment is nought and beyond it turns over.
    assert np.all(np.diff(fallen.no_return[:3]) < 0.0)
    for k in (0, 1):
        crossed = np.interp(-fallen.no_return[k], -fallen.lean[::-1], fallen.moment[k, ::-1])
        assert abs(crossed) < 1e-3 * fallen.moment[k, 0]
        assert np.all(fallen.moment[k, fallen.lean > fallen.no_return[k] + 1e-3] < 0.0)


def test_a_leaning_crane_is_a_rigid_body_on_its_tipping_line() -> None:
    # Free body by hand: turn every mass about the line, take moments with the load hanging plumb.
    result = study()
    fallen = result.fall
    assert fallen is not None
    load, lean = float(fallen.load[0]), float(fallen.lean[40])
    at = hung(result, load)
    line = at.balance.lines
    normal, distance = line.normal[fallen.line], line.distance[fallen.line]
    ahead = normal @ [np.cos(fallen.slew), np.sin(fallen.slew)]
    placed = at.placed
    turning = placed.turning
    inside = np.concatenate(
        [
            distance - ahead * placed.out[:, 0, 0],
            distance - placed.x * normal[0] - placed.y * normal[1],
        ]
    )
    up = np.concatenate([placed.up[:, 0, 0], placed.z])
    assert len(inside) == len(placed.mass) == turning + len(placed.z)
    arms = inside * np.cos(lean) - up * np.sin(lean)
    hook = (ahead * placed.head_out[0, 0] - distance) * np.cos(lean)
    hook += placed.head_up[0, 0] * np.sin(lean)
    by_hand = GRAVITY * (placed.mass @ arms - load * hook)
    assert fallen.moment[0, 40] == pytest.approx(by_hand, rel=1e-9)


def test_over_the_other_side_the_same_happens() -> None:
    right, left = study(slew=np.pi / 2), study(slew=-np.pi / 2)
    assert right.tipping is not None
    assert left.tipping is not None
    assert right.rated == pytest.approx(left.rated)
    assert right.tipping.load == pytest.approx(left.tipping.load)
    assert right.feel.lightest == pytest.approx(left.feel.lightest, abs=1e-3)


def test_where_no_load_can_tip_the_crane_it_breaks() -> None:
    result = overload(set_up_by_hand(invented_crane()), extension=IN, radius=2.5, hold="radius")
    assert result.tipping is None
    assert result.fall is None
    assert result.failure is not None
    assert result.ratio == 0.0
    assert not result.warns


def test_loads_are_found_by_secants_however_the_utilisation_bends() -> None:
    # Known roots: w, w^2 and sqrt(w) come to one at the given loads; the last never does.
    root = np.array([[3.0, 70.0, 500.0, 1e9]])

    def utilisation_of(load: np.ndarray) -> np.ndarray:
        return np.stack([load / root, (load / root) ** 2, np.sqrt(load / root) * 0.9])

    found = load_at_one(
        utilisation_of, low=np.zeros((1, 4)), high=np.full((1, 4), 1e4), first=np.full((1, 4), 10.0)
    )
    assert found[0, :3] == pytest.approx(root[0, :3], rel=1e-6)
    assert np.isinf(found[0, 3])


def test_a_load_without_equilibrium_is_a_collapse_and_uses_nothing_else_up() -> None:
    def utilisation_of(load: np.ndarray) -> np.ndarray:
        return np.where(load > 42.0, np.nan, load / 100.0)[None]

    found = load_at_one(
        utilisation_of,
        low=np.zeros((1, 2)),
        high=np.full((1, 2), 1e4),
        first=np.full((1, 2), 10.0),
        collapse=np.array([[True, False]]),
    )
    assert found[0, 0] == pytest.approx(42.0, rel=1e-6)
    assert np.isinf(found[0, 1])


@pytest.mark.parametrize(
    ("radius", "hold", "said"),
    [
        (80.0, "angle", "reaches from about"),
        (FAR, "rope", "Hold angle or radius"),
        (-3.0, "angle", "must be above 0 m, from the axis of rotation, and one of these is -3 m"),
    ],
)
def test_what_cannot_be_is_refused_in_one_sentence(radius: float, hold: str, said: str) -> None:
    with pytest.raises(ValueError, match=said):
        overload(set_up_by_hand(invented_crane()), extension=OUT, radius=radius, hold=hold)


def test_the_crane_tips_in_the_direction_in_which_a_lift_has_least_left() -> None:
    # Between the rated and the tipping load the boom of this truck bends so far out that another
    # line comes to the fore.
    # On rigid oil, for a lift is given its boom angle, and an overload sinks below it.
    truck = load_machine("truck18")
    machine = replace(truck, cylinder=replace(truck.cylinder, bore=None))
    setup, out = set_up(machine), np.array([1.0, 0.5, 0.0])
    found = overload(setup, extension=out, radius=9.0)
    assert found.tipping is not None
    at = lift(setup, extension=out, load=found.tipping.load, angle=found.angle)
    least = max(at.margins, key=lambda margin: margin.overturning_ratio)
    assert least.overturning_ratio == pytest.approx(
        1.0, abs=2e-3
    )  # the lift is solved for its own deflection
    assert direction(found.tipping.slew or 0.0) == "over the rear"
    assert least.name == "rear left to rear right"
