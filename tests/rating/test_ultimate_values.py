"""An overload can end with the ring, the cylinder or the rope: at assumed multiples of what is
permitted.

Source: worked by hand from the machine's own figures; the multiples are assumed. Status: worked.
"""

from dataclasses import replace

import numpy as np
import pytest
from making import invented_crane

from boomsim.gravity import GRAVITY
from boomsim.machine.model import Machine, Rigging
from boomsim.mechanics.rope_tackle import tackle_advantage
from boomsim.rating.capacity import rate
from boomsim.rating.charts.load_chart import stated_chart
from boomsim.rating.lift_response import Response
from boomsim.rating.limits.limit_kind import GIVES_WAY, PERMISSIBLE, Kind
from boomsim.rating.limits.limit_table import KINDS
from boomsim.rating.limits.ultimate_values import ultimate_of, with_ultimates
from boomsim.rating.limits.wear_pads import FRONT_PAD
from boomsim.rating.load_search import Held, no_margin
from boomsim.rating.overload.overload_map import overload_map
from boomsim.rating.overload.overload_sentences import tell_ultimates, tell_verdict
from boomsim.rating.overload.overload_study import Overload, overload
from boomsim.rating.setup import Setup, set_up
from boomsim.rating.strategies import configurations_of

OUT = np.array([1.0, 1.0, 1.0])
RADIUS = 12.0
CRANE = invented_crane()
WEAK: dict[str, Machine] = {
    "slewing ring": replace(CRANE, ring=replace(CRANE.ring, moment=3e5)),
    "luffing cylinder": replace(CRANE, cylinder=replace(CRANE.cylinder, strength=5e5)),
    "line pull": replace(CRANE, hoist=replace(CRANE.hoist, line_pull=4e3)),
}
"""The invented crane with one part far too weak."""

TIMES = {"slewing ring": 1.75, "luffing cylinder": 1.6, "line pull": 3.55}
ENDS = {
    "slewing ring": "the slewing ring tears",
    "luffing cylinder": "the luffing cylinder gives way",
    "line pull": "the hoist rope parts",
}
weak = pytest.mark.parametrize("name", WEAK)


def weakened(name: str) -> Setup:
    return set_up(WEAK[name], rigging=Rigging(parts=2 if name == "line pull" else None))


def study(name: str) -> Overload:
    return overload(weakened(name), extension=OUT, radius=RADIUS)


def hung(result: Overload, load: float) -> Response:
    rated, angle = np.array([[result.rated]]), np.array([[result.angle]])
    kept = Held(
        no_margin(result.setup), boom=result.boom, rated=rated, held=angle, hold=result.hold
    )
    return kept.hung(np.array([[load]]))


def borne(name: str, at: Response) -> float:
    """What the weak part bears over what its maker permits, from the statics by hand."""
    machine, load = at.boom.machine, float(at.state.load[0, 0])
    if name == "luffing cylinder":
        return abs(float(at.forces.cylinder[0, 0])) / machine.cylinder.strength
    if name == "line pull":
        advantage = tackle_advantage(2, sheave_efficiency=machine.hoist.sheave_efficiency)
        return GRAVITY * load / advantage / machine.hoist.line_pull
    placed = at.placed
    moment = placed.mass[: placed.turning] @ placed.out[:, 0, 0] + load * placed.head_out[0, 0]
    return GRAVITY * abs(float(moment)) / machine.ring.moment


@weak
def test_an_overload_ends_with_the_part_that_is_too_weak(name: str) -> None:
    result = study(name)
    assert result.failure is not None
    assert result.failure.words == ENDS[name]
    assert result.failure.kind == GIVES_WAY
    assert tell_verdict(result, units="metric")[0].startswith(f"It breaks first: {ENDS[name]}, ")
    # The load is good to 1e-7 of itself.
    assert borne(name, hung(result, result.failure.load)) == pytest.approx(TIMES[name], rel=1e-5)


@weak
def test_the_permissible_value_is_passed_before(name: str) -> None:
    result = study(name)
    passed = next(e for e in result.events if e.name == name)
    assert passed.kind == PERMISSIBLE
    assert result.failure is not None
    assert passed.load < result.failure.load
    assert borne(name, hung(result, passed.load)) == pytest.approx(1.0, rel=1e-5)


@weak
def test_a_rated_load_knows_nothing_of_what_gives_way_beyond_it(name: str) -> None:
    bare = tuple(replace(kind, ultimate=None) for kind in KINDS)
    one, other = (
        rate(setup, extension=OUT, radius=np.array([RADIUS]))
        for setup in (weakened(name), replace(weakened(name), kinds=bare))
    )
    assert one.capacity[0, 0] == other.capacity[0, 0]
    assert len(one.limits) == len(other.limits)


def test_the_rated_limits_come_first_and_keep_their_places() -> None:
    kinds = with_ultimates(KINDS)
    assert kinds[: len(KINDS)] == KINDS
    more = kinds[len(KINDS) :]
    assert {kind.words for kind in more} == set(ENDS.values())
    assert all(kind.passed == GIVES_WAY for kind in more)
    # Asked twice it is one and the same, so that events find their limits.
    assert all(one is other for one, other in zip(with_ultimates(KINDS), kinds, strict=True))


def test_a_map_names_the_part_that_gives_way() -> None:
    setup = weakened("slewing ring")
    ways = configurations_of(setup.machine.boom, extension=OUT[None])
    found = overload_map(stated_chart(setup, configurations=ways, radii=np.array([RADIUS])))
    assert found.limits[int(found.gives_way[0, 0])].words == ENDS["slewing ring"]


def test_it_is_said_that_the_multiples_are_assumed() -> None:
    said = tell_ultimates(study("line pull"))
    for name, words in ENDS.items():
        assert f"{words} at {TIMES[name]:g} times its own (assumed)" in said
    none: tuple[Kind, ...] = (FRONT_PAD,)
    result = study("line pull")
    assert tell_ultimates(replace(result, setup=replace(result.setup, kinds=none))) == ""


def test_a_pad_has_no_ultimate_value() -> None:
    with pytest.raises(ValueError, match="Give its Kind one"):
        ultimate_of(FRONT_PAD)
