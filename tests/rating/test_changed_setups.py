"""The same crane set up a little differently: sectors follow the supports, the next narrower stand
is taken, and what has no equilibrium has buckled."""

from dataclasses import replace

import numpy as np
import pytest
from making import invented_crane

from boomsim.machine.model import Support
from boomsim.rating.limits.limit_table import limits_of
from boomsim.rating.load_search import most_used
from boomsim.rating.losses.short_outrigger import shorter_support
from boomsim.rating.setup import SECTORS, rear_sector, set_up
from boomsim.rating.setup_variants import with_sector, with_support

CRANE = invented_crane()
FULL = CRANE.supports[0]


def narrower(share: float) -> Support:
    points = tuple((x, share * y) for x, y in FULL.points)
    return replace(FULL, name=f"{share:.0%}", points=points)


@pytest.mark.parametrize("sector", SECTORS)
def test_a_sector_follows_the_supports(sector: str) -> None:
    half = narrower(0.5)
    asked = with_support(set_up(CRANE, slew=sector), half)
    anew = set_up(replace(CRANE, supports=(half,)), slew=sector)
    assert asked.sector == anew.sector
    assert asked.slew.tolist() == anew.slew.tolist()


def test_one_slew_angle_stays_on_other_supports() -> None:
    asked = with_support(set_up(CRANE, slew=0.3), narrower(0.5))
    assert asked.slew.tolist() == [0.3]


def test_over_the_rear_is_between_the_lines_through_the_two_rear_jacks() -> None:
    # Jacks 3 m to the rear and 3 m out: 45 degrees; half as far out: the arc tangent of a half.
    assert rear_sector(FULL) == pytest.approx(np.pi / 4)
    assert rear_sector(narrower(0.5)) == pytest.approx(np.arctan(0.5))
    rear = with_sector(set_up(CRANE), slew="rear").slew
    assert (rear.min(), rear.max()) == pytest.approx((-np.pi / 4, np.pi / 4))


def test_the_shorter_outrigger_is_the_next_shorter_one() -> None:
    stands = (FULL, narrower(0.3), narrower(0.8), narrower(0.6))
    setup = set_up(replace(CRANE, supports=stands))
    found = shorter_support(setup)
    assert found is not None
    assert found.name == "80%"
    least = with_support(setup, stands[1])
    assert shorter_support(least) is None


def test_without_equilibrium_the_boom_has_buckled() -> None:
    limits = limits_of(CRANE)
    utilisation = np.full((len(limits), 2), np.nan)
    utilisation[:, 1] = np.linspace(0.1, 0.9, len(limits))
    gives_way = np.array([limit.kind.passed == "gives way" for limit in limits])
    lost, known = most_used(utilisation, limits=limits, rows=gives_way)
    assert limits[lost].name == "boom buckling"
    # Among numbers, the largest of those that are asked for.
    assert known == np.flatnonzero(gives_way)[-1]
