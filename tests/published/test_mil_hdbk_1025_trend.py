"""MIL-HDBK-1025/1 Notice 1 (1990), Table 5, float loads of mobile cranes on piers (read): over the
corner > over the rear > over the side. Rows as printed: 50 ton at up to 25 ft, 112000, 98000 and
95000 lb; 90 ton at up to 20 ft, 187000, 146500 and 137500 lb. Over its ten rows the corner carries
1.16 to 1.36 times as much as the side.

A trend, not a figure: the crane here is invented, its jacks, like those of the table's cranes, a
little further apart across than along.

Source: MIL-HDBK-1025/1 Notice 1 (1990). Status: read.
"""

from dataclasses import replace

import numpy as np
import pytest
from making import invented_crane, set_up_by_hand

from boomsim.gravity import GRAVITY
from boomsim.machine.model import Machine
from boomsim.mechanics.stability.support_reactions import support_reactions
from boomsim.rating.capacity import rate
from boomsim.rating.lift_response import respond

REAR, FRONT, WIDE = 2.4, -3.2, 3.1
CELLS = ((0.0, 4.0), (0.0, 6.0), (0.0, 8.0), (1.0, 10.0), (1.0, 20.0))
"""Fraction out of every section, and radius [m]."""


def crane() -> Machine:
    made = invented_crane()
    points = ((REAR, WIDE), (FRONT, WIDE), (FRONT, -WIDE), (REAR, -WIDE))
    return replace(made, supports=(replace(made.supports[0], points=points),))


def float_loads(out: float, radius: float) -> tuple[float, float, float]:
    """Most that any float carries with the boom over the rear corner, the rear and the side [N]."""
    setup = set_up_by_hand(crane())
    rating = rate(setup, extension=np.full((1, 3), out), radius=np.array([radius]))
    at = respond(setup, boom=rating.boom, load=rating.capacity, radius=rating.radius)
    placed, load = at.placed, float(rating.capacity[0, 0])
    turning, fixed = placed.mass[: placed.turning], placed.mass[placed.turning :]
    outwards = float(turning @ placed.out[:, 0, 0] + load * placed.head_out[0, 0])
    weight = float(placed.mass.sum()) + load
    slew = np.array([np.arctan2(WIDE, REAR), 0.0, np.pi / 2])
    most = support_reactions(
        setup.support,
        weight=np.full(3, weight * GRAVITY),
        x=(float(fixed @ placed.x) + outwards * np.cos(slew)) / weight,
        y=outwards * np.sin(slew) / weight,
    ).force.max(axis=0)
    return float(most[0]), float(most[1]), float(most[2])


@pytest.mark.parametrize(("out", "radius"), CELLS)
def test_a_float_carries_most_over_the_corner_then_the_rear_then_the_side(
    out: float, radius: float
) -> None:
    corner, rear, side = float_loads(out, radius)
    assert corner > rear > side
    assert 1.16 <= corner / side <= 1.36
