"""Standard statics of a rigid carrier on four equal springs at (+-Lx, +-B): a resultant V at
(ex, ey) gives V/4 +- V ex/(2 Lx) ... that is V/4 (1 +- ex/Lx +- ey/B), while none is negative.

A float that would pull has lifted; the crane tips when two have.

Tolerances: the forms are exact, so a millionth for rounding.

Source: Plain geometry and statics. Status: worked.
"""

from dataclasses import replace

import numpy as np
import pytest

from boomsim.machine.model import Support
from boomsim.mechanics.stability.support_reactions import (
    Reactions,
    ground_pressure,
    support_reactions,
)
from boomsim.mechanics.stability.tipping_lines import tipping_lines

LONG, WIDE, WEIGHT = 3.5, 3.0, 600e3
SIGNS = np.array([(1, 1), (-1, 1), (-1, -1), (1, -1)])
FLOATS = Support(
    name="floats",
    kind="outriggers",
    points=tuple((float(LONG * x), float(WIDE * y)) for x, y in SIGNS),
    stiffness=4e7,
    area=0.25,
)


def carried(x: float, y: float) -> Reactions:
    return support_reactions(FLOATS, weight=np.array(WEIGHT), x=np.array(x), y=np.array(y))


@pytest.mark.parametrize(
    ("x", "y"), [(0.0, 0.0), (1.0, 0.0), (0.0, -2.0), (1.2, 1.1), (-1.5, 1.2), (0.3, -2.7)]
)
def test_four_floats_share_by_the_formula(x: float, y: float) -> None:
    by_hand = WEIGHT / 4 * (1 + SIGNS[:, 0] * x / LONG + SIGNS[:, 1] * y / WIDE)
    assert by_hand.min() >= 0.0
    found = carried(x, y)
    # A newton of 600 kN: rounding where a float carries next to nothing.
    assert found.force == pytest.approx(by_hand, rel=1e-6, abs=1.0)
    assert not found.lifted.any()


def test_the_float_opposite_lifts_first_and_the_other_three_carry_by_statics() -> None:
    # ex/Lx + ey/B = 1.2 > 1: three reactions, three equations, whatever the stiffness.
    x, y = 0.6 * LONG, 0.6 * WIDE
    found = carried(x, y)
    assert list(found.lifted) == [False, False, True, False]
    # About the line x = -Lx: (A + D) 2 Lx = V (x + Lx), and about y = -B likewise.
    front, right = WEIGHT * (x + LONG) / (2 * LONG), WEIGHT * (y + WIDE) / (2 * WIDE)
    corner = front + right - WEIGHT
    by_hand = [corner, right - corner, 0.0, front - corner]
    assert found.force == pytest.approx(by_hand, rel=1e-6, abs=1.0)
    assert not found.tipped.any()


@pytest.mark.parametrize(("x", "y"), [(1.0, 0.3), (0.2, -1.0), (-1.0, -0.6)])
def test_just_inside_a_tipping_line_two_floats_carry_nearly_all(x: float, y: float) -> None:
    # x and y in shares of the half base; 1 is the tipping line.
    found = carried(0.9999 * x * LONG, 0.9999 * y * WIDE)
    assert not found.tipped.any()
    assert np.sort(found.force)[:2].sum() < 1.1e-4 * WEIGHT


@pytest.mark.parametrize(("x", "y"), [(1.0, 0.3), (0.2, -1.0), (-1.0, -0.6), (0.8, 1.3)])
def test_beyond_a_tipping_line_nothing_holds_it(x: float, y: float) -> None:
    found = carried(1.0001 * x * LONG, 1.0001 * y * WIDE)
    assert found.tipped.all()
    assert np.isnan(found.force).all()


def test_one_float_may_lift_long_before_the_crane_tips() -> None:
    # Over a corner, at 0.51 of the way to it the opposite float lifts; it tips at the corner.
    assert not carried(0.49 * LONG, 0.49 * WIDE).lifted.any()
    assert carried(0.51 * LONG, 0.51 * WIDE).lifted.sum() == 1
    assert not carried(0.98 * LONG, 0.98 * WIDE).tipped.any()


def test_the_carrier_leans_towards_the_heavier_side() -> None:
    # Four springs k at distance Lx: slope = V x/(4 k Lx2).
    found = carried(0.7, 0.0)
    assert found.lean_x == pytest.approx(WEIGHT * 0.7 / (4 * 4e7 * LONG**2), rel=1e-6)
    assert found.lean_y == pytest.approx(0.0, abs=1e-12)


def test_three_supports_are_statically_determinate() -> None:
    three = Support(
        name="three",
        kind="outriggers",
        points=((3.0, 0.0), (-2.0, 2.5), (-2.0, -2.5)),
        stiffness=1e7,
        area=0.25,
    )
    found = support_reactions(three, weight=np.array(WEIGHT), x=np.array(0.5), y=np.array(0.6))
    front = WEIGHT * (0.5 + 2.0) / 5.0
    left_less_right = WEIGHT * 0.6 / 2.5
    rest = WEIGHT - front
    by_hand = [front, (rest + left_less_right) / 2, (rest - left_less_right) / 2]
    assert found.force == pytest.approx(by_hand, rel=1e-6)


def test_tipping_lines_are_the_sides_of_the_polygon_with_normals_outwards() -> None:
    lines = tipping_lines(FLOATS)
    assert sorted(lines.distance) == pytest.approx([WIDE, WIDE, LONG, LONG])
    assert np.hypot(*lines.normal.T) == pytest.approx(1.0)
    assert np.sum(lines.normal * lines.start, axis=1) == pytest.approx(lines.distance)
    assert np.sum(lines.normal * lines.end, axis=1) == pytest.approx(lines.distance)


def test_supports_inside_the_polygon_make_no_tipping_line() -> None:
    wheels = tuple((float(x), float(y)) for x in (-3.0, -1.0, 1.0, 3.0) for y in (-1.2, 1.2))
    lines = tipping_lines(
        Support(name="wheels", kind="tyres", points=wheels, stiffness=1e6, area=0.1)
    )
    assert sorted(lines.distance) == pytest.approx([1.2, 1.2, 3.0, 3.0])


def test_pressure_under_a_24_inch_pad() -> None:
    # Published outrigger guidance: 186000 lb on a round 24 in pad is 411 psi.
    # No decimals are printed. Source: Published outrigger guidance. Status: read.
    pound, inch = 0.45359237 * 9.80665, 0.0254
    pressure = ground_pressure(np.array(186000 * pound), area=float(np.pi / 4 * (24 * inch) ** 2))
    assert float(pressure) / (pound / inch**2) == pytest.approx(411.0, abs=0.5)


@pytest.mark.parametrize(("x", "y"), [(-0.6, 0.0), (-0.6, 0.35), (-1.0, -0.2), (0.1, 0.3)])
def test_eight_tyres_share_as_bolts_of_a_plate_do(x: float, y: float) -> None:
    # V/n + V (x - xm) (xi - xm)/sum (xi - xm)2 + V y yi/sum yi2, tyres alike left and right.
    axles, track = np.array([-4.4, -2.7, 1.4, 2.9]), 1.05
    points = np.array([(a, side * track) for a in axles for side in (-1, 1)])
    tyres = replace(FLOATS, kind="tyres", points=tuple(map(tuple, points.tolist())))
    middle = axles.mean()
    along = (points[:, 0] - middle) * (x - middle) / (2 * np.sum((axles - middle) ** 2))
    across = points[:, 1] * y / (8 * track**2)
    by_hand = WEIGHT * (1 / 8 + along + across)
    assert by_hand.min() > 0.0
    found = support_reactions(tyres, weight=np.array(WEIGHT), x=np.array(x), y=np.array(y))
    assert found.force == pytest.approx(by_hand, rel=1e-6)


def test_many_resultants_at_once_share_as_each_by_itself() -> None:
    x, y = (v.ravel() for v in np.meshgrid(np.linspace(-3.4, 3.4, 15), np.linspace(-2.9, 2.9, 13)))
    together = support_reactions(FLOATS, weight=np.full(x.shape, WEIGHT), x=x, y=y)
    assert 0 < np.any(together.lifted, axis=0).sum() < len(x)
    for k in range(len(x)):
        alone = carried(x[k], y[k])
        assert together.force[:, k] == pytest.approx(alone.force, rel=1e-9, abs=1e-3, nan_ok=True)
        assert np.array_equal(together.lifted[:, k], alone.lifted)
