"""Facts of the trade about load charts: common practice, no source.

With the radius growing downwards, structural cells stand above the bold line and stability cells
below; over the rear a crane is rated no lower than all around; a stability rating of 85 % of the
tipping load is past tipping at 120 % of it; a chart is never interpolated.

Source: Facts of the trade. Status: common practice.
"""

from dataclasses import replace
from functools import lru_cache
from itertools import pairwise

import numpy as np
import pytest

from boomsim.machine.machine_files import load_machine
from boomsim.rating.charts.bold_line import crossings
from boomsim.rating.charts.chart_configurations import every_configuration
from boomsim.rating.charts.chart_reading import read_chart
from boomsim.rating.charts.load_chart import Chart, best_chart, stated_chart
from boomsim.rating.setup import set_up


@lru_cache
def stated(name: str, slew: str = "around", rule: str = "share") -> Chart:
    """Every fourth way to extend a pinned boom, all ways of another."""
    setup = set_up(load_machine(name), slew=slew, rule=rule)
    ways = every_configuration(setup.machine.boom)
    every = 4 if name == "yard60" else 1
    some = type(ways)(
        extension=ways.extension[::every],
        length=ways.length[::every],
        system=ways.system[::every],
    )
    return stated_chart(setup, configurations=some)


@pytest.mark.parametrize("name", ["yard60", "truck18"])
def test_structural_above_and_stability_below_with_one_switch_to_a_column(name: str) -> None:
    chart = stated(name)
    both = 0
    for c in range(len(chart.length)):
        family = chart.structural[chart.rated[:, c], c]
        if family.any() and not family.all():
            both += 1
            assert family[0], "the nearest cell is structural"
            assert not family[-1], "the farthest cell is one of stability"
    assert both > len(chart.length) // 2
    # Stated ways to extend switch once; only a choice of the best way may switch back.
    assert crossings(chart).max() == 1


@pytest.mark.slow
def test_where_the_best_way_changes_the_line_may_be_crossed_again() -> None:
    chart = best_chart(set_up(load_machine("yard60")))
    again = np.flatnonzero(crossings(chart) > 1)
    for c in again:
        rated = np.flatnonzero(chart.rated[:, c])
        turns = [r for r in rated[1:] if chart.structural[r, c] and not chart.structural[r - 1, c]]
        # Back to structural going outwards: only where another configuration takes over.
        assert turns
        assert all(chart.used[r, c] != chart.used[r - 1, c] for r in turns)


def at_radii(chart, radii):
    """The rows of a chart at these of its radii."""
    rows = np.searchsorted(chart.radii, radii)
    names = ("steps", "governing", "exact", "blank")
    return replace(chart, **{name: getattr(chart, name)[rows] for name in names})


@pytest.mark.slow
@pytest.mark.parametrize("name", ["yard60", "truck18"])
@pytest.mark.parametrize("rule", ["share", "limit-states"])
def test_over_the_rear_is_rated_no_lower_than_all_around(name: str, rule: str) -> None:
    around, rear = stated(name, rule=rule), stated(name, "rear", rule)
    # Over the rear a chart goes on where all around no more than the hook could hang, and begins
    # where the load hangs clear of the carrier's rear: farther out than beside the carrier.
    both = np.intersect1d(around.radii, rear.radii)
    assert set(around.radii[around.radii >= rear.radii[0]]) <= set(both)
    around, rear = (at_radii(chart, both) for chart in (around, rear))
    shared = around.rated & rear.rated
    # A boom that all but lies down may sag out of its radius under the larger load first: blank in
    # the column's outermost row, as a place where the boom cannot be.
    lost = np.argwhere(around.rated & ~rear.rated)
    assert len(lost) <= 1
    for row, column in lost:
        assert not around.rated[row + 1 :, column].any()
        assert rear.reason(row, column).key == "out of reach"
    # Both searches are good to 1e-6 of the capacity.
    assert np.all(rear.exact[shared] >= around.exact[shared] * (1 - 4e-6))
    # Strength does not feel the slew angle: what breaks first either way is rated alike, to
    # what two searches leave.
    same = shared & rear.structural & around.structural
    assert rear.exact[same] == pytest.approx(around.exact[same], rel=4e-6)


@pytest.mark.parametrize("name", ["yard60", "truck18"])
def test_a_stability_rating_is_past_tipping_at_120_percent(name: str) -> None:
    # 0.85 x 1.2 = 1.02 of the tipping load at that radius; rounding down takes off up to a step.
    chart = stated(name)
    stable = chart.rated & ~chart.structural & (chart.exact > 20.0 * chart.step)
    assert stable.any()
    share = 1.2 * chart.exact[stable] / chart.tipping_load[stable]
    assert share == pytest.approx(1.02, rel=1e-5)
    names = {chart.limits[g].name for g in chart.governing[stable]}
    assert names == {"tipping"}


@pytest.mark.slow
@pytest.mark.parametrize("name", ["yard60", "truck18"])
def test_a_chart_is_never_interpolated(name: str) -> None:
    chart = best_chart(set_up(load_machine(name)))
    column = len(chart.length) // 2
    rows = np.flatnonzero(chart.steps[:, column] > 0)
    for near, far in pairwise(rows):
        between = 0.5 * float(chart.radii[near] + chart.radii[far])
        reading = read_chart(chart, radius=between, length=float(chart.length[column]))
        assert reading.cell == chart.capacity[far, column]


@pytest.mark.slow
def test_near_the_crane_strength_and_far_out_stability_govern_the_demonstration() -> None:
    # Both regions are on the chart of the demonstration machine.
    chart = best_chart(set_up(load_machine("yard60")))
    share = chart.structural[chart.rated].mean()
    assert 0.05 < share < 0.95
