"""EN 13001-2 / FEM 1.001 booklet 9 (read second-hand): a load lifted off the ground counts with
phi2 = phi2min + beta2 v; 1.05 + 0.17 v to 1.20 + 0.68 v for hoisting classes HC1 to HC4.

Source: EN 13001-2, FEM 1.001. Status: second-hand.
"""

import numpy as np
import pytest
from making import invented_crane

from boomsim.machine.model import Disturbances
from boomsim.mechanics.boom.boom_state import Factors, solve_state
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.hoisting_factor import hoisting_factor


@pytest.mark.parametrize(
    ("hoist_class", "factor"), [(1, 1.135), (2, 1.270), (3, 1.405), (4, 1.540)]
)
def test_factors_at_half_a_metre_a_second(hoist_class: int, factor: float) -> None:
    assert hoisting_factor(0.5, hoist_class=hoist_class) == pytest.approx(factor, abs=1e-12)


def test_a_hoist_at_rest_adds_nothing() -> None:
    assert hoisting_factor(0.0, hoist_class=4) == 1.0


def test_hoisting_acts_like_so_much_more_load() -> None:
    boom = condense(invented_crane(), extension=np.array([[0.5, 1.0, 0.5]]))
    load, angle = np.array([[4000.0]]), np.array([[0.9]])
    change = Disturbances(hoist_speed=0.5, hoist_class=2)
    lifted = solve_state(boom, load=load, parts=10, angle=angle, disturbances=change)
    heavier = solve_state(boom, load=load, parts=10, angle=angle, factors=Factors(live=1.270))
    assert lifted.rotation == pytest.approx(heavier.rotation, rel=1e-9)
    assert lifted.line_pull == pytest.approx(heavier.line_pull, rel=1e-12)
