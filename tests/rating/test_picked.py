"""Some configurations out of many that were condensed together."""

import numpy as np
import pytest
from making import invented_crane

from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.boom.picked_configurations import pick
from boomsim.rating.capacity import rate
from boomsim.rating.setup import set_up

OUT = np.array([[1.0, 1.0, 1.0], [0.0, 0.5, 1.0], [0.2, 0.0, 0.0], [1.0, 0.0, 0.3]])


@pytest.mark.parametrize("rows", [[2], [3, 0], [0, 1, 2, 3]])
def test_what_is_picked_is_rated_like_what_is_condensed_alone(rows: list[int]) -> None:
    setup, radius = set_up(invented_crane()), np.array([6.0, 9.0, 14.0])
    picked = pick(condense(setup.machine, extension=OUT), np.array(rows))
    whole = rate(setup, extension=OUT[rows], radius=radius, boom=picked)
    alone = rate(setup, extension=OUT[rows], radius=radius)
    # The same sums in another order: rounding, which the search may enlarge to its own tolerance.
    assert whole.capacity == pytest.approx(alone.capacity, rel=2e-6, nan_ok=True)
    assert np.array_equal(whole.governing, alone.governing)
