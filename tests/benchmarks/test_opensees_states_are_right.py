"""The model raced against gives the right answers: a fast wrong one would be no opponent."""

from itertools import product

import numpy as np
import pytest
from boom_layout import places
from boom_states import solve_boom
from fe_opensees import COROTATIONAL, P_DELTA
from opensees_states import time_states
from random_machines import random_machine, random_state

CASES = list(product(range(1, 5), ((P_DELTA, 1e-2), (COROTATIONAL, 3e-3))))


@pytest.mark.parametrize(("seed", "way"), CASES)
def test_the_light_model_follows_the_full_one(seed: int, way: tuple[str, float]) -> None:
    """Tolerance 1 % for P-delta elements, which take rotations as small; 0.3 % for corotational.

    The rope is aimed from the state before and the cylinder's thrust is taken on the unbent boom.
    """
    transform, tolerance = way
    rng = np.random.default_rng(seed)
    machine = random_machine(rng)
    state = random_state(machine, rng)
    thetas, loads = np.linspace(0.98, 1.0, 5) * state.theta, np.linspace(0.9, 1.0, 5) * state.load
    timing = time_states(machine, state.fractions, thetas, loads, transform)
    full = solve_boom(machine, state.fractions, float(thetas[-1]), float(loads[-1]))
    tails, fronts = places(machine, state.fractions)
    moments = [
        section.moment_at(mouth)
        for section, mouth in zip(full.sections[1:], fronts[:-1] - tails[1:], strict=True)
    ]
    sink = timing.heads[-1, 1] + machine.boom.head.below
    assert sink == pytest.approx(full.tip_deflection, rel=tolerance)
    assert timing.moments[-1] == pytest.approx(moments, rel=tolerance)
    assert timing.seconds > 0
