"""What eats capacity, and what a kilogram costs."""

from dataclasses import replace
from functools import lru_cache

import numpy as np
import pytest
from making import invented_crane, set_up_by_hand

from boomsim.machine.model import Machine, TurningMass
from boomsim.mechanics.hoisting_factor import hoisting_factor
from boomsim.rating.capacity import rate
from boomsim.rating.chart_places import Places
from boomsim.rating.losses.capacity_effects import Amounts
from boomsim.rating.losses.losses_study import Losses, losses
from boomsim.rating.losses.mass_sensitivity import Sensitivity, sensitivity
from boomsim.rating.losses.short_outrigger import short_outrigger, shorter_support
from boomsim.rating.setup import Setup
from boomsim.rating.setup_variants import with_disturbances

PLACES = Places(
    extension=np.array([[0.0, 0.0, 0.0], [0.5, 0.5, 0.5], [1.0, 1.0, 1.0]]),
    radius=np.array([5.0, 14.0, 28.0]),
)
STRUCTURAL, MIDDLE, STABILITY = 0, 1, 2


def crane() -> Machine:
    made = invented_crane()
    full = made.supports[0]
    half = replace(full, name="half", points=tuple((x, 0.6 * y) for x, y in full.points))
    light = TurningMass(name="light", mass=5e3, out=-3.0, up=1.8)
    return replace(made, supports=(full, half), counterweights=(*made.counterweights, light))


def setup() -> Setup:
    return set_up_by_hand(crane())


@lru_cache
def found(amounts: Amounts | None = None) -> Losses:
    return losses(setup(), places=PLACES, amounts=amounts or Amounts())


def loss(result: Losses, name: str) -> np.ndarray:
    names = [effect.name for effect in result.effects]
    return result.loss[names.index(name)]


def test_the_chosen_places_are_of_both_kinds() -> None:
    families = [limit.set_by for limit in found().governing if limit]
    assert families[STRUCTURAL] != "stability"
    assert families[STABILITY] == "stability"


def test_nothing_that_disturbs_a_lift_adds_to_it() -> None:
    # A sway sideways brings the head nearer by its square: a few parts in 100,000.
    result = found()
    assert np.all(result.loss >= -1e-4 * result.capacity)


NAMES = (
    "lean",
    "lean across",
    "side pull",
    "wind",
    "wind across",
    "hoisting",
    "counterweight",
    "outrigger",
    "soft ground",
    "farther",
    "together",
)


def test_every_effect_is_there_once() -> None:
    assert tuple(effect.name for effect in found().effects) == NAMES


@pytest.mark.parametrize(
    "name", ["lean", "lean across", "side pull", "wind", "hoisting", "farther"]
)
def test_twice_as_much_takes_more(name: str) -> None:
    usual = Amounts()
    doubled = Amounts(
        lean=2 * usual.lean,
        side_pull=2 * usual.side_pull,
        wind=2 * usual.wind,
        hoist_speed=2 * usual.hoist_speed,
        farther=2 * usual.farther,
        soft=usual.soft / 2,
    )
    once, twice = loss(found(), name), loss(found(doubled), name)
    assert np.all(twice >= once - 1e-4 * found().capacity)
    assert twice.max() > once.max()


@pytest.mark.slow
def test_softer_ground_takes_more() -> None:
    soft, softer = Amounts(soft=0.2), Amounts(soft=0.05)
    assert np.all(loss(found(softer), "soft ground") > loss(found(soft), "soft ground"))


def test_no_amount_takes_nothing() -> None:
    none = Amounts(
        lean=0.0, side_pull=0.0, wind=0.0, load_area=0.0, hoist_speed=0.0, farther=0.0, soft=1.0
    )
    result = found(none)
    for name in ("lean", "lean across", "side pull", "wind", "hoisting", "farther", "together"):
        assert loss(result, name) == pytest.approx(0.0, abs=2e-6 * result.capacity.max())


def test_lifting_off_costs_the_hoisting_factor_where_strength_governs() -> None:
    # P phi2 = P0 where the load makes all of the stress; own weight and deflection: 2 %.
    factor = hoisting_factor(0.3, hoist_class=2)
    share = loss(found(), "hoisting")[STRUCTURAL] / found().capacity[STRUCTURAL]
    assert share == pytest.approx(1.0 - 1.0 / factor, abs=0.02)


def test_lifting_off_hardly_touches_a_stability_rating() -> None:
    # The rule counts the load at rest; only the deflection grows.
    assert loss(found(), "hoisting")[STABILITY] < 0.02 * found().capacity[STABILITY]


def test_a_counterweight_that_is_short_costs_nothing_where_strength_governs() -> None:
    lost = loss(found(), "counterweight")
    assert lost[STRUCTURAL] == pytest.approx(0.0, abs=1e-6 * found().capacity[STRUCTURAL])
    assert lost[STABILITY] > 0.1 * found().capacity[STABILITY]


def test_a_short_outrigger_moves_one_corner_only() -> None:
    full = setup().support
    half = shorter_support(setup())
    assert half is not None
    made = short_outrigger(full, shorter=half, which=2)
    assert [p == q for p, q in zip(made.points, full.points, strict=True)] == [
        True,
        True,
        False,
        True,
    ]
    assert made.points[2] == half.points[2]


def test_one_metre_farther_is_the_chart_s_next_row() -> None:
    beyond = rate(setup(), extension=PLACES.extension, radius=PLACES.radius[:, None] + 1.0)
    taken = found().effects[NAMES.index("farther")].capacity
    assert taken == pytest.approx(beyond.capacity[:, 0])


def test_all_at_once_takes_more_than_each() -> None:
    together = loss(found(), "together")
    for name in ("lean", "side pull", "wind", "hoisting"):
        assert np.all(together > loss(found(), name) - 1e-6 * found().capacity)


def test_a_machine_without_other_choices_has_fewer_effects() -> None:
    result = losses(set_up_by_hand(invented_crane()), places=PLACES)
    names = [effect.name for effect in result.effects]
    assert "counterweight" not in names
    assert "outrigger" not in names


@pytest.mark.parametrize("field", ["lean", "side_pull", "wind", "hoist_speed", "soft", "farther"])
@pytest.mark.parametrize("value", [float("nan"), -1.0, 1e6])
def test_an_amount_out_of_range_is_refused(field: str, value: float) -> None:
    with pytest.raises(ValueError, match="Give a value inside"):
        losses(setup(), places=PLACES, amounts=replace(Amounts(), **{field: value}))


def test_a_place_out_of_reach_is_refused() -> None:
    far = Places(extension=PLACES.extension, radius=np.array([5.0, 14.0, 90.0]))
    with pytest.raises(ValueError, match="Choose a radius that it reaches"):
        losses(setup(), places=far)


def test_a_place_where_nothing_may_be_lifted_is_refused() -> None:
    # A weight on the wrong side: the crane turns over with an empty hook.
    wrong = TurningMass(name="wrong", mass=9e3, out=6.0, up=1.8)
    over = set_up_by_hand(replace(crane(), counterweights=(wrong,)))
    far = Places(extension=PLACES.extension[2:], radius=np.array([31.0]))
    assert rate(over, extension=far.extension, radius=far.radius).capacity[0, 0] == 0.0
    with pytest.raises(ValueError, match=r"Nothing may be lifted .* Choose a smaller radius"):
        losses(over, places=far)


@lru_cache
def costs(rule: str = "share") -> Sensitivity:
    return sensitivity(set_up_by_hand(crane(), rule=rule), places=PLACES)


@pytest.mark.parametrize("rule", ["share", "test-load"])
def test_the_stability_sum_and_machines_rated_anew_agree(rule: str) -> None:
    # The sum leaves the deflection as it is: 2 % of a kilogram at most.
    result = costs(rule)
    assert result.is_stability[STABILITY]
    by_sum, anew = result.by_sum[:, STABILITY], result.by_rating[:, STABILITY]
    assert by_sum == pytest.approx(anew, abs=0.02)
    assert np.abs(by_sum).max() > 0.5


def test_a_slope_is_the_difference_of_two_machines_rated_in_full() -> None:
    machine, name = crane(), costs().name.index("section 3")
    heavy = machine.boom.sections[3]
    rated = []
    for share in (-0.02, 0.02):
        changed = replace(heavy, mass=heavy.mass * (1 + share))
        boom = replace(machine.boom, sections=(*machine.boom.sections[:3], changed))
        other = set_up_by_hand(replace(machine, boom=boom))
        found = rate(other, extension=PLACES.extension, radius=PLACES.radius[:, None])
        rated.append(found.capacity[:, 0])
    in_full = (rated[1] - rated[0]) / (0.04 * heavy.mass)
    # Each rating is good to 1e-6 of some 30 t, the step is 40 kg of mass.
    assert costs().by_rating[name] == pytest.approx(in_full, abs=2e-3)


def test_where_strength_governs_there_is_no_stability_sum() -> None:
    result = costs()
    assert np.all(np.isnan(result.by_sum[:, STRUCTURAL]))
    assert np.all(np.isfinite(result.best))


def test_a_kilogram_costs_more_the_farther_out_it_lies() -> None:
    slope = costs().best[:5, STABILITY]
    assert np.all(np.diff(slope) < 0.0)


def test_a_kilogram_at_the_head_costs_as_much_as_it_hangs_there() -> None:
    # A kilogram of head takes 0.85 kg of rated load at 85 % of tipping.
    head = costs().name.index("head")
    assert costs().by_sum[head, STABILITY] == pytest.approx(-0.85, abs=0.005)


def test_a_kilogram_of_counterweight_gives_where_stability_governs_only() -> None:
    weight = costs().best[costs().name.index("counterweight")]
    assert weight[STABILITY] > 0.1
    assert weight[STRUCTURAL] == pytest.approx(0.0, abs=1e-3)


def test_a_heavier_section_never_gives_capacity_where_strength_governs() -> None:
    assert np.all(costs().by_rating[:4, STRUCTURAL] < 1e-3)


def test_a_pull_across_is_tried_at_every_slew_angle() -> None:
    calm = setup()
    pulled = with_disturbances(calm, side_pull=0.02)
    by_name = set_up_by_hand(crane(), disturbances=replace(calm.disturbances, side_pull=0.02))
    assert len(pulled.slew) > len(calm.slew)
    assert pulled.slew.tolist() == by_name.slew.tolist()
    assert with_disturbances(pulled, side_pull=0.0).slew.tolist() == calm.slew.tolist()
    # Square to a line a pull across turns nothing over. Here the worst is a degree from square, so
    # that hardly anything is lost: the cosine of two degrees, which a step leaves, is 6e-4 off one.
    lost = loss(found(), "side pull")[STABILITY] / found().capacity[STABILITY]
    assert 0.0 < lost < 6e-4
