"""What any solved state must do: hold the radius it was asked for, grow faster than its load, agree
with the theory of small deflections where they are small."""

from dataclasses import replace

import numpy as np
import pytest
from freebody import curves
from hypothesis import given, settings
from hypothesis import strategies as st
from making import invented_crane, one

from boomsim.machine.model import Disturbances, Machine
from boomsim.mechanics.boom.boom_state import State, solve_state
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.boom.internal_forces import section_forces

CRANE = invented_crane()
TIGHT = replace(
    CRANE,
    boom=replace(
        CRANE.boom, sections=tuple(replace(s, clearance=0.0) for s in CRANE.boom.sections)
    ),
)
"""Without play, which the first load takes up all at once."""

few = settings(max_examples=25, deadline=None, derandomize=True)
fractions = st.lists(st.floats(0.0, 1.0), min_size=3, max_size=3)


def radius_of(machine: Machine, state: State) -> np.ndarray:
    """Where the load hangs [m]."""
    out = state.head_along * np.cos(state.angle) - state.head_above * np.sin(state.angle)
    return np.asarray(machine.heel_out + out)


@few
@given(fractions, st.floats(4.0, 30.0), st.floats(0.0, 6000.0))
def test_a_wanted_radius_is_held_with_the_deflection_in_it(
    out: list[float], radius: float, load: float
) -> None:
    boom = condense(CRANE, extension=np.array([out]))
    state = solve_state(boom, load=one(load), parts=10, radius=one(radius))
    if state.converged.all():
        assert radius_of(CRANE, state)[0, 0] == pytest.approx(radius, abs=1e-6)
        # The head is where the bent axis ends, by another way of adding it up.
        axis, head = curves(boom, state)[-1], CRANE.boom.head
        length = float(axis.place[-1])
        sheave = axis.at(length) + head.ahead * axis.tangent(length)
        sheave = sheave - head.below * axis.normal(length)
        assert state.head_along[0, 0] == pytest.approx(sheave[0], abs=2e-4)
        assert state.head_above[0, 0] == pytest.approx(sheave[1], abs=2e-4)
    else:
        assert np.isnan(state.angle).all()
        reach = CRANE.heel_out + boom.layout.boom_length[0]
        assert radius > 0.9 * reach or load > 2000.0


@few
@given(fractions, st.floats(8.0, 16.0), st.floats(0.0, 3000.0))
def test_holding_a_radius_and_holding_its_angle_are_the_same_state(
    out: list[float], radius: float, load: float
) -> None:
    boom = condense(CRANE, extension=np.array([out]))
    held = solve_state(boom, load=one(load), parts=10, radius=one(radius))
    again = solve_state(boom, load=one(load), parts=10, angle=held.angle)
    assert again.rotation == pytest.approx(held.rotation, abs=1e-6, nan_ok=True)


@few
@given(fractions, st.floats(0.0, 3000.0))
def test_a_drooping_boom_reaches_as_far_as_it_does_at_any_angle(
    out: list[float], load: float
) -> None:
    """Up to the radius beyond which no boom angle brings it, where two angles become one."""
    boom = condense(CRANE, extension=np.array([out]))
    angle = np.linspace(-0.05, 0.45, 501)[None]
    at_angles = solve_state(boom, load=np.full_like(angle, load), parts=10, angle=angle)
    farthest = float(np.nanmax(radius_of(CRANE, at_angles)))
    # A step of the angle is 1 mrad: half of it from the top loses 30 m (0.5 mrad)2/2, 4 um.
    short_of_it = farthest - np.geomspace(1e-4, 1.0, 30)[None]
    near = solve_state(boom, load=np.full_like(short_of_it, load), parts=10, radius=short_of_it)
    assert near.converged.all()
    assert radius_of(CRANE, near) == pytest.approx(short_of_it, abs=1e-6)
    beyond = farthest + np.geomspace(1e-4, 3.0, 30)[None]
    none = solve_state(boom, load=np.full_like(beyond, load), parts=10, radius=beyond)
    assert not none.converged.any()
    assert np.isnan(none.angle).all()


@few
@given(fractions, st.floats(0.8, 1.3), st.floats(500.0, 3000.0))
def test_the_moment_of_a_steep_boom_grows_faster_than_its_load(
    out: list[float], angle: float, load: float
) -> None:
    # Second order: what the boom droops lengthens the lever arm of the load along it.
    boom = condense(TIGHT, extension=np.array([out]))
    loads = np.array([[0.0, load, 2.0 * load]])
    state = solve_state(boom, load=loads, parts=10, angle=one(angle))
    foot = -section_forces(boom, state=state).moment[0, :9].min(axis=0)
    assert foot[2] - foot[1] > foot[1] - foot[0] > 0.0


@few
@given(fractions, st.floats(0.2, 1.3), st.floats(0.01, 0.04))
def test_the_sway_of_a_steep_boom_grows_faster_than_its_load(
    out: list[float], angle: float, pull: float
) -> None:
    boom = condense(CRANE, extension=np.array([out]))
    loads = np.array([[0.0, 1500.0, 3000.0]])
    change = Disturbances(side_pull=pull)
    state = solve_state(boom, load=loads, parts=10, angle=one(angle), disturbances=change)
    sway = state.head_left[0]
    if angle > 0.6:
        assert sway[2] - sway[1] > sway[1] - sway[0] > 0.0
    assert sway[0] == pytest.approx(0.0, abs=1e-9)


@few
@given(fractions, st.floats(0.1, 1.3))
def test_small_loads_bend_in_proportion(out: list[float], angle: float) -> None:
    # The theory of small deflections, from the state under own weight onwards.
    boom = condense(TIGHT, extension=np.array([out]))
    load = np.array([[0.0, 1.0, 2.0]])
    bent = solve_state(boom, load=load, parts=10, angle=one(angle)).rotation
    first, second = bent[0, :, 1] - bent[0, :, 0], bent[0, :, 2] - bent[0, :, 1]
    # Where the iteration stops, 1e-8 rad, shows beside some 1e-7 rad that a kilogram bends.
    assert second == pytest.approx(first, rel=1e-2, abs=3e-8)


@few
@given(fractions, st.floats(0.1, 1.3), st.floats(0.0, 3000.0))
def test_one_state_is_the_same_alone_or_among_others(
    out: list[float], angle: float, load: float
) -> None:
    # Arrays over cells and configurations must not leak into one another.
    alone = solve_state(
        condense(CRANE, extension=np.array([out])), load=one(load), parts=10, angle=one(angle)
    )
    many = condense(CRANE, extension=np.array([[0.1, 0.9, 0.4], out, [1.0, 1.0, 1.0]]))
    loads = np.array([[100.0, load, 1e6], [5000.0, load, 0.0], [0.0, 200.0, 1e7]])
    among = solve_state(many, load=loads, parts=10, angle=np.full((3, 3), angle))
    assert among.rotation[1, :, 1] == pytest.approx(alone.rotation[0, :, 0], abs=5e-8)
    assert among.head_above[1, 1] == pytest.approx(alone.head_above[0, 0], abs=2e-6)


@few
@given(fractions, st.floats(0.1, 1.3), st.floats(0.0, 3000.0))
def test_a_solved_state_gives_itself_back_at_once(
    out: list[float], angle: float, load: float
) -> None:
    # Of the rotations nothing else is carried from one sweep to the next; the stretch, of a
    # ten-thousandth, is kept from the first sweeps on.
    boom = condense(CRANE, extension=np.array([out]))
    state = solve_state(boom, load=one(load), parts=10, angle=one(angle))
    again = solve_state(boom, load=one(load), parts=10, angle=one(angle), start=state.rotation)
    assert again.sweeps == 1
    assert again.head_above == pytest.approx(state.head_above, rel=1e-8)


@pytest.mark.slow
@settings(max_examples=12, deadline=None, derandomize=True)
@given(
    fractions,
    st.sampled_from([500.0, 5000.0, 60000.0]),
    st.booleans(),
    st.booleans(),
    st.integers(0, 99),
)
def test_a_state_among_thousands_is_the_same_as_among_few(
    out: list[float], heaviest: float, hold_radius: bool, all_alike: bool, seed: int
) -> None:
    # Thousands start from a polynomial through a few dozen. The lightest loads make pads change
    # sides, the heaviest are beyond the critical load, some radii are out of reach: there the
    # polynomial must not be taken, or must not matter.
    rng = np.random.default_rng(seed)
    boom = condense(CRANE, extension=np.array([out]))
    load = rng.uniform(0.0, heaviest, (1, 1200))
    held = rng.uniform(6.0, 16.0, load.shape) if hold_radius else rng.uniform(0.2, 1.3, load.shape)
    if all_alike:
        held = np.full_like(held, held[0, 0])
    which = "radius" if hold_radius else "angle"
    many = solve_state(boom, load=load, parts=10, **{which: held})
    few = [
        solve_state(boom, load=load[:, cut], parts=10, **{which: held[:, cut]})
        for cut in (slice(k, k + 300) for k in range(0, 1200, 300))
    ]
    assert np.array_equal(many.converged, np.hstack([state.converged for state in few]))
    for name in ("rotation", "across", "head_above", "angle"):
        found = getattr(many, name)
        expected = np.concatenate([getattr(state, name) for state in few], axis=-1)
        # Both sides stop at a last change of 1e-6 of the rotations; near the critical load what is
        # still missing is some ten times the last change.
        size = np.nanmax(np.abs(expected), initial=0.0)
        assert found == pytest.approx(expected, abs=1e-5 * size, nan_ok=True)


def test_one_bad_cell_does_not_spoil_thousands() -> None:
    boom = condense(CRANE, extension=np.array([[0.5, 0.5, 0.5]]))
    load = np.linspace(0.0, 2000.0, 1500)[None]
    load[0, 700] = np.nan
    state = solve_state(boom, load=load, parts=10, angle=one(0.8))
    assert list(np.flatnonzero(~state.converged[0])) == [700]


@pytest.mark.parametrize("bad", [np.nan, np.inf, -np.inf])
@pytest.mark.parametrize("what", ["load", "angle", "radius"])
def test_what_is_no_number_gives_no_state(what: str, bad: float) -> None:
    boom = condense(CRANE, extension=np.array([[0.5, 0.5, 0.5]]))
    load = one(bad if what == "load" else 1000.0)
    held = one(bad if what != "load" else 0.8)
    angle, radius = (None, held) if what == "radius" else (held, None)
    with np.errstate(invalid="ignore"):
        state = solve_state(boom, load=load, parts=10, angle=angle, radius=radius)
    assert not state.converged.any()
    assert np.isnan(state.head_along).all()


def test_one_bad_cell_does_not_spoil_its_neighbours() -> None:
    boom = condense(CRANE, extension=np.array([[0.5, 0.5, 0.5]]))
    load = np.array([[1000.0, np.nan, 1000.0, 1e9]])
    state = solve_state(boom, load=load, parts=10, angle=one(0.8))
    assert list(state.converged[0]) == [True, False, True, False]
    assert state.head_above[0, 0] == state.head_above[0, 2]
