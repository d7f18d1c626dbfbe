"""A rated capacity is where the first limit is used up: checked on random machines, and found again
by scipy's own root finders, which know nothing of how the rating searches."""

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from making import invented_crane, is_buildable, one
from random_machines import random_machine, random_state
from scipy.optimize import brentq
from scipy.optimize.elementwise import find_root

from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.rating.capacity import Rating, rate
from boomsim.rating.lift_response import respond
from boomsim.rating.setup import Setup, set_up

few = settings(max_examples=15, deadline=None, derandomize=True)
rules = st.sampled_from(["share", "test-load", "limit-states"])


def drawn(seed: int, clearance: bool, rule: str) -> Rating:
    rng = np.random.default_rng(seed)
    machine = random_machine(rng, clearance=clearance)
    assume(is_buildable(machine))
    out = np.array([random_state(machine, rng).fractions])
    length = condense(machine, extension=out).layout.boom_length[0]
    radii = machine.heel_out + length * np.cos(np.radians([75.0, 60.0, 45.0, 30.0, 15.0]))
    return rate(set_up(machine, rule=rule), extension=out, radius=radii[radii > 0.5])


def worst(rating: Rating, load: np.ndarray) -> np.ndarray:
    """Largest use at these loads, one of each cell; infinite where there is no equilibrium."""
    made = respond(rating.setup, boom=rating.boom, load=load, radius=rating.radius)
    return np.asarray(np.nan_to_num(made.utilisation.max(axis=0), nan=np.inf))


@few
@given(st.integers(0, 10**6), st.booleans(), rules)
def test_at_the_rated_load_the_worst_utilisation_is_one_and_above_it_more(
    seed: int, clearance: bool, rule: str
) -> None:
    rating = drawn(seed, clearance, rule)
    lifts = rating.capacity > 0.0  # neither blank nor a limit passed without a load
    load = np.nan_to_num(rating.capacity)
    assert worst(rating, load)[lifts] == pytest.approx(1.0, abs=2e-6)
    assert np.all(worst(rating, load * 1.00001)[lifts] > 1.0)
    assert np.all(worst(rating, load * 0.9999)[lifts] < 1.0)


@pytest.mark.slow
@few
@given(st.integers(0, 10**6), st.booleans(), rules)
def test_every_lighter_load_is_allowed(seed: int, clearance: bool, rule: str) -> None:
    # The rated load is the first that uses a limit up, not just one of several.
    rating = drawn(seed, clearance, rule)
    lifts = rating.capacity > 0.0
    for share in np.linspace(0.0, 0.999, 12):
        assert np.all(worst(rating, share * np.nan_to_num(rating.capacity))[lifts] < 1.0)


@few
@given(st.integers(0, 10**6), st.booleans(), rules)
def test_a_cell_without_a_load_says_which_limit_is_passed(
    seed: int, clearance: bool, rule: str
) -> None:
    rating = drawn(seed, clearance, rule)
    refused = rating.capacity == 0.0
    unloaded = worst(rating, np.zeros_like(rating.capacity))
    assert np.all(unloaded[refused] >= 1.0)
    assert np.all(rating.governing[refused] >= 0)
    assert np.all(rating.governing[np.isnan(rating.capacity)] == -1)


def cells() -> tuple[Setup, Rating]:
    setup = set_up(invented_crane())
    out = np.array([[0.0, 0.0, 0.0], [0.5, 0.5, 0.5], [1.0, 1.0, 1.0], [0.0, 1.0, 1.0]])
    radii = np.array([[3.5, 7.0], [6.0, 15.0], [12.0, 24.0], [8.0, 16.0]])
    return setup, rate(setup, extension=out, radius=radii)


def left_over(load: float, setup: Setup, boom: Condensed, radius: float) -> float:
    """Worst use of one cell, less one."""
    made = respond(setup, boom=boom, load=one(load), radius=one(radius))
    return float(np.nan_to_num(made.utilisation.max(), nan=1e3)) - 1.0


def test_brents_method_finds_the_same_capacities() -> None:
    setup, rating = cells()
    assert np.isfinite(rating.capacity).all()
    for i, out in enumerate(rating.boom.layout.extension):
        boom = condense(setup.machine, extension=out[None])
        for radius, capacity in zip(rating.radius[i], rating.capacity[i], strict=True):
            found = brentq(left_over, 0.0, 1e5, args=(setup, boom, radius), xtol=1e-4, rtol=1e-9)
            assert found == pytest.approx(capacity, rel=3e-6)


def test_an_elementwise_root_finder_finds_the_same_capacities() -> None:
    _, rating = cells()
    shape = rating.capacity.shape

    def left(load: np.ndarray, cell: np.ndarray) -> np.ndarray:
        # It asks for some of the cells at a time; the rest keep any load.
        loads = np.ones(shape)
        loads.flat[cell.astype(int)] = load
        return np.asarray(np.minimum(worst(rating, loads), 1e3).flat[cell.astype(int)] - 1.0)

    every = np.arange(rating.capacity.size, dtype=float)
    bracket = (np.zeros_like(every), np.full_like(every, 1e5))
    found = find_root(left, bracket, args=(every,), tolerances={"xrtol": 1e-9})
    assert found.success.all()
    assert found.x.reshape(shape) == pytest.approx(rating.capacity, rel=3e-6)
