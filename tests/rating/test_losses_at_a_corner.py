"""An outrigger set short counts over its own corner, and each nothing has a reason that is true."""

import re
from dataclasses import replace
from functools import lru_cache

import numpy as np
import pytest
from making import invented_crane

from boomsim.machine.model import CALM, Machine, Rigging, TurningMass
from boomsim.machine.part_names import support_names
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.stability.tipping_lines import tipping_lines
from boomsim.rating.capacity import rate
from boomsim.rating.chart_places import Places
from boomsim.rating.lift_response import respond
from boomsim.rating.limits.limit_kind import STABILITY, STRENGTH
from boomsim.rating.losses.capacity_effects import Amounts
from boomsim.rating.losses.losses_reasons import BEYOND, NOTHING, WITHIN
from boomsim.rating.losses.losses_sentences import (
    lettered_reasons,
    tell_corners,
    tell_lettered,
    tell_loss,
    tell_reason,
)
from boomsim.rating.losses.losses_study import Effect, Losses, losses
from boomsim.rating.losses.short_outrigger import moved_directions, short_outrigger, shorter_support
from boomsim.rating.setup import Setup, set_up
from boomsim.rating.setup_variants import with_disturbances, with_sector, with_support

PLACES = Places(
    extension=np.array([[0.0, 0.0, 0.0], [0.5, 0.5, 0.5], [1.0, 1.0, 1.0]]),
    radius=np.array([5.0, 14.0, 28.0]),
)
NEAR, FAR = 0, 2


def crane(*, ahead: float = 0.0) -> Machine:
    """The invented crane with a shorter stand; its front jacks may stand nearer to the axis."""
    made = invented_crane()
    full = made.supports[0]
    full = replace(full, points=tuple((x + ahead * (x < 0.0), y) for x, y in full.points))
    half = replace(full, name="half", points=tuple((x, 0.8 * y) for x, y in full.points))
    light = TurningMass(name="light", mass=5e3, out=-3.0, up=1.8)
    return replace(made, supports=(full, half), counterweights=(*made.counterweights, light))


@lru_cache
def found(slew: float | str = "around", allowances: str = "none", ahead: float = 0.0) -> Losses:
    setup = set_up(crane(ahead=ahead), slew=slew, allowances=allowances)
    return losses(setup, places=PLACES)


def effect(result: Losses, name: str) -> Effect:
    return next(one for one in result.effects if one.name == name)


def test_a_short_outrigger_moves_the_two_lines_that_run_to_it() -> None:
    setup = set_up(crane())
    half = shorter_support(setup)
    assert half is not None
    for which, place in enumerate(setup.support.points):
        short = short_outrigger(setup.support, shorter=half, which=which)
        slews = moved_directions(setup.support, short)
        assert len(slews) == 2
        # By hand: one still runs across the carrier, the other no longer along it.
        along = np.radians(0.0 if place[0] > 0.0 else 180.0)
        assert min(abs(np.angle(np.exp(1j * (s - along)))) for s in slews) < 1e-9
        jack = short.points[which]
        far = next(p for p in setup.support.points if p[0] != place[0] and p[1] == place[1])
        run = np.array(far) - np.array(jack)
        square = [abs(float(run @ [np.cos(s), np.sin(s)])) for s in slews]
        assert min(square) < 1e-9


@pytest.mark.parametrize("slew", ["around", "rear", 0.0, np.pi])
def test_a_short_outrigger_costs_the_same_whatever_the_sector_asked_for(slew: float | str) -> None:
    one, other = (effect(found(s), "outrigger") for s in ("around", slew))
    # The same ratings again; each is good to 1e-6 of itself.
    assert one.capacity == pytest.approx(other.capacity, rel=1e-5)
    assert one.before == pytest.approx(other.before, rel=1e-5)


def test_the_corner_that_counts_is_rated_before_and_after_in_its_own_direction() -> None:
    result = found()
    setup, short = result.setup, effect(result, "outrigger")
    assert short.slew is not None
    half = shorter_support(setup)
    assert half is not None
    for k, (slew, corner) in enumerate(zip(short.slew, short.corners, strict=True)):
        which = support_names(setup.support).index(corner)
        there = with_sector(setup, slew=float(slew))
        narrow = with_support(there, short_outrigger(setup.support, shorter=half, which=which))
        had, left = (
            float(
                rate(s, extension=PLACES.extension[k], radius=PLACES.radius[k : k + 1]).capacity[
                    0, 0
                ]
            )
            for s in (there, narrow)
        )
        assert (short.before[k], short.capacity[k]) == pytest.approx((had, left), rel=1e-5)


def test_no_other_jack_set_short_costs_more_square_to_a_line() -> None:
    result = found()
    setup, short = result.setup, effect(result, "outrigger")
    half = shorter_support(setup)
    assert half is not None
    place = {"extension": PLACES.extension[FAR], "radius": PLACES.radius[FAR:]}
    worst = 0.0
    for which in range(4):
        narrow = replace(setup, support=short_outrigger(setup.support, shorter=half, which=which))
        for normal in tipping_lines(narrow.support).normal:
            slew = float(np.arctan2(normal[1], normal[0]))
            had, left = (
                rate(with_sector(s, slew=slew), **place).capacity[0, 0] for s in (setup, narrow)
            )
            worst = max(worst, float(had - left))
    # Ratings are good to 1e-6 of themselves; corners that differ by less than is shown count alike.
    assert short.loss[FAR] == pytest.approx(worst, abs=NOTHING * short.before[FAR])


def test_where_the_front_sets_the_figure_a_short_outrigger_still_costs_over_its_corner() -> None:
    # With the front jacks close to the axis the least of all around is over the front, whose line
    # a short outrigger leaves where it was.
    result = found(ahead=1.6)
    assert result.governing[FAR] is not None
    assert result.governing[FAR].set_by == STABILITY
    half = shorter_support(result.setup)
    assert half is not None
    narrow = with_support(
        result.setup, short_outrigger(result.setup.support, shorter=half, which=0)
    )
    around = rate(narrow, extension=PLACES.extension[FAR], radius=PLACES.radius[FAR:]).capacity
    assert around[0, 0] == pytest.approx(result.capacity[FAR], rel=1e-5)
    assert effect(result, "outrigger").share[FAR] > 0.05


def test_what_is_said_of_the_corner_names_it_with_its_direction_and_rated_load() -> None:
    said = tell_corners(found(), units="metric")
    short = effect(found(), "outrigger")
    for corner in short.corners:
        assert f"{corner} short" in said
    assert said.count(" before") == len(PLACES.radius)
    alone = losses(set_up(invented_crane()), places=PLACES)
    assert tell_corners(alone, units="metric") == ""


@pytest.mark.parametrize("allowances", ["none", "rule"])
@pytest.mark.parametrize("slew", ["around", "rear", 0.5])
def test_there_is_a_reason_where_nothing_is_lost_and_only_there(
    allowances: str, slew: float | str
) -> None:
    result = found(slew, allowances)
    for one in result.effects:
        for k, why in enumerate(one.why):
            assert (why is not None) is bool(abs(one.share[k]) < NOTHING)
            said = tell_loss(one, k, units="metric")
            assert (said in ("nothing", WITHIN)) is (why is not None)
            assert bool(tell_reason(one, k)) is (said == "nothing")


def hung(setup: Setup, place: int, load: float) -> dict[str, float]:
    """Use of every limit under a load, and whether stability has a say in it."""
    boom = condense(setup.machine, extension=PLACES.extension[place : place + 1])
    radius = PLACES.radius[place : place + 1][None]
    at = respond(setup, boom=boom, load=np.array([[load]]), radius=radius)
    return {limit.key: float(at.utilisation[k, 0, 0]) for k, limit in enumerate(at.limits)}


def test_what_is_said_to_touch_stability_only_changes_no_utilisation_of_strength() -> None:
    result = found()
    said = "strength sets this figure; a short outrigger affects stability only"
    assert tell_reason(effect(result, "outrigger"), NEAR) == said
    limit = result.governing[NEAR]
    assert limit is not None
    assert limit.set_by == STRENGTH
    one = effect(result, "outrigger")
    assert one.slew is not None
    there = with_sector(result.setup, slew=float(one.slew[NEAR]))
    which = support_names(there.support).index(one.corners[NEAR])
    half = shorter_support(there)
    assert half is not None
    narrow = with_support(there, short_outrigger(there.support, shorter=half, which=which))
    full, short = (hung(s, NEAR, float(one.before[NEAR])) for s in (there, narrow))
    changed = {name for name in full if abs(full[name] - short[name]) > NOTHING}
    assert changed == {"tipping", "backward"}  # all that is about stability


def test_what_takes_nothing_over_the_front_takes_something_at_another_slew_angle() -> None:
    result = found(ahead=1.6)
    one = effect(result, "side pull")
    said = tell_reason(one, FAR)
    assert said == (
        "stability sets this figure, over the front, and a side pull takes nothing from it there; "
        "at other slew angles it does"
    )
    place = {"extension": PLACES.extension[FAR], "radius": PLACES.radius[FAR:]}
    # Beside the corner a pull across turns the load over the nearest line.
    for slew, is_lost in ((np.pi, False), (np.radians(150.0), True), (np.radians(-150.0), True)):
        calm = with_sector(result.setup, slew=slew)
        pulled = [with_disturbances(calm, side_pull=p) for p in (0.02, -0.02)]
        had = rate(calm, **place).tipping_load[0, 0]
        left = min(float(rate(s, **place).tipping_load[0, 0]) for s in pulled)
        assert bool(had - left > NOTHING * had) is is_lost


def test_a_reason_is_written_once_and_every_nothing_has_its_letter() -> None:
    result = found()
    notes = lettered_reasons(result)
    assert list(notes.values()) == sorted(set(notes.values()))
    used = set()
    for one in result.effects:
        for k in range(len(PLACES.radius)):
            said = tell_lettered(one, k, notes=notes, units="metric")
            used |= set(re.findall(r"nothing \(([a-z])\)", said))
            assert said != "nothing"
    assert used == set(notes.values())


def test_within_the_allowance_nothing_is_lost_and_beyond_it_only_what_is_beyond() -> None:
    machine = crane()
    bare, within = (set_up(machine, allowances=a) for a in ("none", "rule"))
    allowed = within.rule.strains(CALM)
    inside = replace(Amounts(), side_pull=allowed.side_pull / 2)
    outside = replace(Amounts(), side_pull=2 * allowed.side_pull)
    few, much = (
        effect(losses(within, places=PLACES, amounts=a), "side pull") for a in (inside, outside)
    )
    assert (few.allowance, much.allowance) == (WITHIN, BEYOND)
    assert tell_loss(few, NEAR, units="metric") == WITHIN
    assert few.loss[NEAR] == pytest.approx(0.0, abs=1e-5 * few.before[NEAR])
    assert tell_loss(much, NEAR, units="metric").endswith(f", {BEYOND}")
    # What is left is what bears the whole pull: the allowance and the pull do not add up.
    whole = replace(allowed, side_pull=outside.side_pull)
    given = rate(
        set_up(machine, disturbances=whole, allowances="none"),
        extension=PLACES.extension[NEAR],
        radius=PLACES.radius[: NEAR + 1],
    )
    assert much.capacity[NEAR] == pytest.approx(float(given.capacity[0, 0]), rel=1e-4)
    # Without allowances the same pull is all lost, and nobody speaks of an allowance.
    alone = effect(losses(bare, places=PLACES, amounts=outside), "side pull")
    assert alone.allowance is None
    assert alone.share[NEAR] > much.share[NEAR]
    assert "allowance" not in tell_loss(alone, NEAR, units="metric")


def test_stability_knows_no_allowance() -> None:
    one = effect(found(allowances="rule"), "lean")
    limit = one.governing[FAR]
    assert limit is not None
    assert limit.set_by == STABILITY
    assert "allowance" not in tell_loss(one, FAR, units="metric")


def test_the_static_line_pull_knows_no_allowance_either() -> None:
    setup = set_up(crane(), rigging=Rigging(parts=1), allowances="rule")
    bare = set_up(crane(), rigging=Rigging(parts=1), allowances="none")
    one, other = (effect(losses(s, places=PLACES), "hoisting") for s in (setup, bare))
    limit = one.governing[NEAR]
    assert limit is not None
    assert limit.name == "line pull"
    assert one.allowance == BEYOND
    # All of the hoisting factor is lost, with the allowances as without them.
    assert one.loss[NEAR] == pytest.approx(other.loss[NEAR], rel=1e-4)
    assert "allowance" not in tell_loss(one, NEAR, units="metric")


def test_jacks_are_named_by_corner_and_tyres_by_axle() -> None:
    jacks = invented_crane().supports[0]
    assert support_names(jacks) == ("rear right", "front right", "front left", "rear left")
    six = replace(jacks, points=(*jacks.points, (0.2, 3.0), (0.2, -3.0)))
    assert support_names(six)[-2:] == ("middle right", "middle left")
    tyres = replace(
        jacks,
        kind="tyres",
        points=((-3.0, -1.0), (-3.0, 1.0), (1.5, -1.0), (1.5, -0.7), (1.5, 1.0)),
    )
    assert support_names(tyres) == (
        "axle 1 left",
        "axle 1 right",
        "axle 2 left 1",
        "axle 2 left 2",
        "axle 2 right",
    )
    three = replace(jacks, points=((-2.0, 0.0), (2.0, 1.5), (2.0, -1.5)))
    assert support_names(three) == ("front middle", "rear right", "rear left")
