"""Support reactions: they carry the weight where it is, on supports that push only; and the crane
tips where its righting moment is used up."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from making import invented_crane

from boomsim.machine.model import Support
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.stability.support_reactions import Reactions, support_reactions
from boomsim.mechanics.stability.tipping_lines import tipping_lines
from boomsim.rating.lift_response import Response, respond
from boomsim.rating.setup import set_up

some = settings(max_examples=60, deadline=None, derandomize=True)
few = settings(max_examples=8, deadline=None, derandomize=True)
WEIGHT = 500e3
shares = st.floats(0.0, 1.0)


def stand(points: tuple[tuple[float, float], ...], stiffness: float = 3e7) -> Support:
    return Support(name="any", kind="outriggers", points=points, stiffness=stiffness, area=0.25)


@st.composite
def quadrilaterals(draw: st.DrawFn) -> Support:
    """One support in each quarter, anywhere from 1 to 5 m off both axes."""
    reach = st.floats(1.0, 5.0)
    signs = ((1, 1), (-1, 1), (-1, -1), (1, -1))
    return stand(tuple((sx * draw(reach), sy * draw(reach)) for sx, sy in signs))


def inside(support: Support, mix: list[float]) -> np.ndarray:
    """A place inside the polygon: the supports' mean with these weights."""
    weights = np.array(mix) + 0.02
    return np.asarray(weights @ np.array(support.points) / weights.sum())


def carried(support: Support, place: np.ndarray) -> Reactions:
    return support_reactions(
        support, weight=np.array(WEIGHT), x=np.array(place[0]), y=np.array(place[1])
    )


def margin(support: Support, place: np.ndarray) -> float:
    """Distance to the nearest tipping line, negative outside [m]."""
    lines = tipping_lines(support)
    return float(np.min(lines.distance - lines.normal @ place))


@some
@given(quadrilaterals(), st.lists(shares, min_size=4, max_size=4))
def test_reactions_add_up_to_the_weight_and_its_moments(support: Support, mix: list[float]) -> None:
    place = inside(support, mix)
    found = carried(support, place)
    if margin(support, place) < 1e-3:
        return  # on a line: two supports carry it all, and a third may or may not
    assert not found.tipped
    assert np.all(found.force >= 0.0)
    assert found.force.sum() == pytest.approx(WEIGHT, rel=1e-6)
    assert found.force @ np.array(support.points) == pytest.approx(WEIGHT * place, abs=1.0)


@some
@given(quadrilaterals(), st.lists(shares, min_size=4, max_size=4))
def test_every_support_pushes_by_what_it_sinks(support: Support, mix: list[float]) -> None:
    # A rigid carrier sinks as a plane a + b x + c y; who has lifted lies above it.
    place = inside(support, mix)
    found = carried(support, place)
    if found.tipped:
        return
    points, sinking = np.array(support.points), found.force / support.stiffness
    columns = np.column_stack([np.ones(len(points)), points])
    down = np.logical_not(found.lifted)
    plane, *_ = np.linalg.lstsq(columns[down], sinking[down], rcond=None)
    scale = sinking.max()
    assert columns[down] @ plane == pytest.approx(sinking[down], abs=1e-6 * scale)
    assert np.all(columns[np.logical_not(down)] @ plane < 1e-6 * scale)


@some
@given(quadrilaterals(), st.floats(-np.pi, np.pi), st.floats(1.001, 3.0))
def test_beyond_the_polygon_nothing_holds_it(support: Support, way: float, beyond: float) -> None:
    lines, direction = tipping_lines(support), np.array([np.cos(way), np.sin(way)])
    outwards = lines.normal @ direction
    edge = np.min(np.where(outwards > 1e-9, lines.distance / np.maximum(outwards, 1e-9), np.inf))
    found = carried(support, beyond * edge * direction)
    assert found.tipped
    assert np.isnan(found.force).all()
    assert not carried(support, 0.99 * edge * direction).tipped


@some
@given(quadrilaterals(), st.lists(shares, min_size=4, max_size=4), st.floats(0.01, 100.0))
def test_equal_ground_under_all_shares_alike_however_soft(
    support: Support, mix: list[float], softer: float
) -> None:
    place = inside(support, mix)
    soft = stand(support.points, stiffness=3e7 * softer)
    one, other = carried(support, place), carried(soft, place)
    assert other.force == pytest.approx(one.force, rel=1e-5, abs=1.0, nan_ok=True)


@some
@given(quadrilaterals())
def test_tipping_lines_enclose_every_support(support: Support) -> None:
    lines, points = tipping_lines(support), np.array(support.points)
    assert np.all(points @ lines.normal.T <= lines.distance + 1e-9)
    assert np.all(lines.distance > 0.0)


def answered(load: float, slew: float) -> tuple[Response, Reactions]:
    """The invented crane, far out over any side, and what its jacks carry."""
    crane = invented_crane()
    setup = set_up(crane, slew=slew)
    boom = condense(crane, extension=np.array([[1.0, 1.0, 1.0]]))
    at = respond(setup, boom=boom, load=np.array([[load]]), angle=np.array([[0.6]]))
    placed = at.placed
    turning, fixed = placed.mass[: placed.turning], placed.mass[placed.turning :]
    outwards = turning @ placed.out[:, 0, 0] + load * placed.head_out[0, 0]
    weight = placed.mass.sum() + load
    reactions = support_reactions(
        setup.support,
        weight=np.array(weight * 9.80665),
        x=np.array((fixed @ placed.x + outwards * np.cos(slew)) / weight),
        y=np.array((fixed @ placed.y + outwards * np.sin(slew)) / weight),
    )
    return at, reactions


@few
@given(st.floats(-np.pi, np.pi))
def test_the_crane_tips_when_its_righting_moment_is_used_up(slew: float) -> None:
    # Stability by moments about lines, and supports by springs, are two ways to one load.
    load = 5000.0
    for _ in range(8):  # the boom bends with the load, so that its tipping load follows
        load = float(answered(load, slew)[0].balance.least[0, 0])
    at, _ = answered(load, slew)
    net = at.balance.righting - load * at.balance.lever
    assert net.min() == pytest.approx(0.0, abs=1e-6 * at.balance.righting.max())
    assert not answered(0.999 * load, slew)[1].tipped
    assert answered(1.001 * load, slew)[1].tipped
