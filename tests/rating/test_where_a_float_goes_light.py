"""Where a float goes light before it ends, and where none does: the events by direction."""

import re
from dataclasses import replace
from functools import lru_cache

import numpy as np
import pytest
from making import invented_crane

from boomsim.rating.around.float_loads import float_loads, lift_utilisation, slews_of
from boomsim.rating.around.slew_directions import over
from boomsim.rating.lift_response import Response
from boomsim.rating.load_search import FLOAT, Held, no_margin
from boomsim.rating.overload.float_lightening import Lightening
from boomsim.rating.overload.overload_sentences import tell_event, tell_feel, tell_lightening
from boomsim.rating.overload.overload_study import Overload, overload
from boomsim.rating.setup import set_up

OUT = np.array([1.0, 1.0, 1.0])
FAR, NEAR = 22.0, 8.0
CRANE = invented_crane()
TYRES = replace(CRANE.supports[0], name="tyres", kind="tyres", stiffness=1e6)


@lru_cache
def study(radius: float, slew: float | str = "around") -> Overload:
    return overload(set_up(CRANE, slew=slew), extension=OUT, radius=radius)


def hung(result: Overload, load: float) -> Response:
    rated, angle = np.array([[result.rated]]), np.array([[result.angle]])
    kept = Held(
        no_margin(result.setup), boom=result.boom, rated=rated, held=angle, hold=result.hold
    )
    return kept.hung(np.array([[load]]))


@pytest.mark.parametrize("radius", [FAR, NEAR])
def test_at_its_load_the_lightest_float_carries_nothing_and_before_it_every_one_does(
    radius: float,
) -> None:
    result = study(radius)
    assert result.first is not None
    slew = slews_of(result.setup)
    where = np.array([over(float(angle)) for angle in slew])
    assert set(where) == {one.where for one in result.lightens}
    for one in result.lightens:
        if not np.isfinite(one.load):
            # A hair before the end every float still presses, at every angle of that part.
            used = lift_utilisation(float_loads(hung(result, 0.998 * result.first.load), slew=slew))
            assert used[where == one.where].max() < 1.0
            continue
        there = float_loads(hung(result, one.load), slew=np.array([one.slew]))
        # The load is good to 1e-7 of itself.
        assert abs(there.bonded.min()) < 1e-5 * float(there.weight[0, 0, 0])
        before = float_loads(hung(result, 0.999 * one.load), slew=slew[where == one.where])
        assert before.bonded.min() > 0.0
        assert one.multiple == pytest.approx(one.load / result.rated)


@pytest.mark.parametrize("radius", [FAR, NEAR])
def test_the_first_of_them_is_the_float_of_the_events(radius: float) -> None:
    result = study(radius)
    lifted = next(event for event in result.events if event.kind == FLOAT)
    # Two searches for the same load, each good to 1e-7.
    assert min(one.load for one in result.lightens) == pytest.approx(lifted.load, rel=1e-5)
    assert re.match(r"the (front|rear) (left|right) float lifts, ", tell_event(lifted))


def test_over_a_corner_a_float_goes_light_and_squarely_over_the_front_none_does() -> None:
    # A machine that is symmetric right and left: over the front the two rear floats are alike, and
    # go light in the moment in which it tips.
    found = {one.where: one.load for one in study(FAR).lightens}
    assert np.isinf(found["over the front"])
    assert np.isinf(found["over the rear"])
    assert np.isfinite(found["over the front left corner"])


@pytest.mark.parametrize("radius", [FAR, NEAR])
@pytest.mark.parametrize("slew", ["around", "rear", 0.0])
def test_every_part_of_the_sector_is_told_once_with_its_own_multiple(
    radius: float, slew: float | str
) -> None:
    result = study(radius, slew)
    said = tell_lightening(result)
    whole = said
    for row in ("front", "rear"):
        both = f"over the {row} left corner and over the {row} right corner"
        whole = whole.replace(f"over either {row} corner", both)
    whole = whole.replace("over either side", "over the left side and over the right side")
    for one in result.lightens:
        assert whole.count(one.where) >= 1
    told = {float(number) for number in re.findall(r"at ([\d.]+) times", said)}
    light = [one for one in result.lightens if np.isfinite(one.load)]
    assert told == {round(one.multiple, 2) for one in light}
    assert ("none does" in said or "no float" in said) is (len(light) < len(result.lightens))


def test_left_and_right_are_told_apart_where_they_differ() -> None:
    result = study(FAR)

    def at(where: str, load: float) -> Lightening:
        return Lightening(where=where, slew=0.0, load=load, multiple=load / result.rated)

    pair = (at("over the left side", np.inf), at("over the right side", 1.5 * result.rated))
    said = tell_lightening(replace(result, lightens=pair))
    assert said == (
        "Before that a float goes light over the right side at 1.50 times the rated load; over the "
        "left side none does."
    )
    none = tell_lightening(replace(result, lightens=(pair[0],)))
    assert none == "Before that no float goes light in any direction."
    empty = replace(result, lightens=(at("over the right side", 0.0),))
    assert tell_lightening(empty) == (
        "Before that a float goes light over the right side without any load."
    )


def test_on_tyres_it_is_a_tyre_and_no_lean_is_told_that_small_angles_cannot_mean() -> None:
    setup = set_up(replace(CRANE, supports=(TYRES,)))
    result = overload(setup, extension=OUT, radius=FAR)
    assert "a tyre goes light" in tell_lightening(result)
    assert "the lightest tyre goes from" in tell_feel(result, units="metric")
    far = replace(result, feel=replace(result.feel, lean=result.feel.lean + 1.0))
    assert "leans more than 10° on its tyres" in tell_feel(far, units="metric")
