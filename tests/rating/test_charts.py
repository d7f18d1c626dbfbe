"""A load chart says what the rating says, rounded down, and nothing where the boom cannot be."""

import re
from functools import lru_cache

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from making import invented_crane

from boomsim.machine.machine_files import load_machine
from boomsim.machine.model import Rigging
from boomsim.mechanics.geometry import layout
from boomsim.rating.capacity import rate
from boomsim.rating.charts.chart_configurations import (
    configurations_at_lengths,
    every_configuration,
    same_length,
)
from boomsim.rating.charts.column_changes import first_rows, runs
from boomsim.rating.charts.load_chart import Chart, best_chart, some_columns, stated_chart
from boomsim.rating.charts.rows_and_rounding import chart_radii, whole_steps
from boomsim.rating.setup import Setup, set_up
from boomsim.rating.strategies import (
    configurations_of,
    configurations_of_length,
    pinned_configurations,
)

POUND, FOOT = 0.45359237, 0.3048


@lru_cache
def setup(name: str = "truck18") -> Setup:
    return set_up(invented_crane() if name == "crane" else load_machine(name))


@lru_cache
def best(name: str = "truck18") -> Chart:
    return best_chart(setup(name))


@lru_cache
def stated(name: str = "truck18") -> Chart:
    ways = every_configuration(setup(name).machine.boom)
    return stated_chart(setup(name), configurations=ways)


@given(st.floats(0.0, 2e5), st.sampled_from([50.0, 100.0 * POUND, 0.5, 7.3, 1000.0 / 3.0]))
def test_rounding_down_takes_less_than_a_step_and_never_adds(capacity: float, step: float) -> None:
    held = whole_steps(np.array([capacity]), step=step)[0] * step
    assert held <= capacity
    assert capacity - held < step * (1.0 + 1e-9)


@given(st.integers(0, 20_000), st.sampled_from([50.0, 100.0 * POUND, 0.1]))
def test_a_capacity_of_whole_steps_loses_nothing_in_rounding(count: int, step: float) -> None:
    assert whole_steps(np.array([count * step]), step=step)[0] == count


@pytest.mark.parametrize("name", ["truck18", "crane", "bench"])
def test_every_cell_is_the_rating_of_its_configuration_rounded_down(name: str) -> None:
    chart = best(name)
    for r, c in np.argwhere(chart.rated)[::7]:
        way = chart.configurations.extension[chart.used[r, c]]
        alone = rate(chart.setup, extension=way, radius=chart.radii[[r]])
        # Both come from one search that is good to 1e-6 of the capacity.
        assert chart.exact[r, c] == pytest.approx(alone.capacity[0, 0], rel=4e-6)
        assert chart.limit(int(r), int(c)) == alone.limits[alone.governing[0, 0]]
        assert chart.capacity[r, c] <= chart.exact[r, c] < chart.capacity[r, c] + chart.step


def test_a_cell_is_blank_exactly_where_the_rating_is() -> None:
    chart = stated()
    ways = chart.configurations.extension
    rating = rate(chart.setup, extension=ways, radius=chart.radii)
    assert np.array_equal(np.isnan(rating.capacity.T), ~chart.rated)
    assert np.array_equal(np.isnan(chart.capacity), ~chart.rated)
    assert np.all(chart.used[~chart.rated] == -1)
    assert np.all(chart.steps[~chart.rated] == -1)


def test_blank_cells_lie_outside_the_angle_range_or_out_of_reach() -> None:
    chart, boom = stated(), setup().machine.boom
    assert np.all(chart.angle[chart.rated] <= boom.greatest_angle + 1e-9)
    assert np.all(chart.angle[chart.rated] >= boom.least_angle - 1e-9)
    # Where a whole metre is beyond the straight boom no cell may hold a figure.
    reach = setup().machine.heel_out + np.hypot(chart.length, boom.head.below)
    assert not np.any(chart.rated & (chart.radii[:, None] > reach))


@pytest.mark.parametrize("name", ["truck18", "crane"])
def test_the_best_chart_has_the_most_of_the_stated_chart_in_every_cell(name: str) -> None:
    top, every = best(name), stated(name)
    assert np.array_equal(top.radii, every.radii)
    for c, choice in enumerate(top.choices):
        most = every.steps[:, list(choice)].max(axis=1)
        assert np.array_equal(top.steps[:, c], most)
        used = set(top.used[top.rated[:, c], c].tolist())
        assert used <= set(choice)


def test_the_best_chart_changes_as_seldom_as_it_can() -> None:
    # By hand over all sequences: the fewest changes that keep the most steps in every row.
    top, every = best("crane"), stated("crane")
    for c, choice in enumerate(top.choices):
        steps = every.steps[:, list(choice)]
        rows = np.flatnonzero(top.rated[:, c])
        among = [set(np.flatnonzero(steps[r] == steps[r].max())) for r in rows]
        cost = dict.fromkeys(among[0], 0)
        for allowed in among[1:]:
            fewest = min(cost.values())
            cost = {k: min(cost.get(k, np.inf), fewest + 1) for k in allowed}
        assert len(runs(top, c)) - 1 == min(cost.values())


def test_runs_cover_every_rated_row_once() -> None:
    chart = best("crane")
    for c in range(len(chart.length)):
        covered = [r for run in runs(chart, c) for r in range(run.first, run.last + 1)]
        assert covered == np.flatnonzero(chart.rated[:, c]).tolist()
        found = first_rows(chart, c)
        assert set(found) == set(chart.used[chart.rated[:, c], c].tolist())
        assert [rows[0] for rows in found.values()] == sorted(rows[0] for rows in found.values())
        for configuration, rows in found.items():
            assert all(chart.used[r, c] == configuration for r in rows)


def test_rows_are_whole_metres_or_whole_fives_of_feet() -> None:
    metric, us = best(), best_chart(setup(), units="us")
    assert metric.radii == pytest.approx(np.round(metric.radii))
    assert np.diff(metric.radii) == pytest.approx(np.ones(len(metric.radii) - 1))
    assert us.radii / (5 * FOOT) == pytest.approx(np.round(us.radii / (5 * FOOT)))
    assert (metric.step, us.step) == (50.0, pytest.approx(100 * POUND))


def test_a_small_machine_gets_finer_rows_and_steps() -> None:
    chart = best("bench")
    # Some tens of rows and some tens of steps, whatever the size.
    assert 10 < len(chart.radii) < 80
    assert 10 < chart.steps.max() < 200


def test_given_rows_and_step_are_kept() -> None:
    chart = best_chart(setup(), radii=np.array([9.5, 5.0, 9.5, 7.25]), step=250.0)
    assert chart.radii.tolist() == [5.0, 7.25, 9.5]
    assert chart.capacity[chart.rated] % 250.0 == pytest.approx(0.0)


def test_every_length_of_a_pinned_boom_is_a_column_with_all_its_ways() -> None:
    boom = load_machine("yard60").boom
    ways = every_configuration(boom)
    assert len(ways.length) == len(boom.lock_positions) ** (len(boom.sections) - 1)
    groups = same_length(ways.length)
    assert sorted(i for group in groups for i in group) == list(range(len(ways.length)))
    for group in groups:
        assert np.ptp(ways.length[group]) < 1e-9
        # Equal strokes: one length is one multiset of lock positions, but 2 x 45 is 90.
        sums = ways.extension[group].sum(axis=1)
        assert np.ptp(sums) < 1e-9


def test_ways_of_a_sequenced_and_synchronised_boom_are_those_of_its_systems() -> None:
    boom = load_machine("truck18").boom
    for system, ways in ((s, every_configuration(boom, system=s)) for s in boom.systems):
        assert set(ways.system) == {system}
        if system == "synchronised":
            assert np.ptp(ways.extension, axis=1) == pytest.approx(0.0, abs=1e-9)
        else:
            # A section moves only once all larger ones are out.
            assert np.all((ways.extension[:, 1:] == 0.0) | (ways.extension[:, :-1] == 1.0))
    lengths = layout(boom, extension=every_configuration(boom).extension).boom_length
    assert np.all(np.diff(lengths) > -1e-6)


def test_a_stated_chart_keeps_the_order_in_which_it_was_asked_for() -> None:
    rows = np.array([[1.0, 1.0, 1.0], [0.0, 0.0, 0.0], [0.5, 0.5, 0.5]])
    ways = configurations_of(setup().machine.boom, extension=rows)
    chart = stated_chart(setup(), configurations=ways)
    assert chart.configurations.extension[[c[0] for c in chart.choices]] == pytest.approx(rows)


def test_some_columns_of_a_chart_are_the_same_cells() -> None:
    chart = best()
    part = some_columns(chart, np.array([0, 1]))
    rows = np.isin(chart.radii, part.radii)
    assert part.steps == pytest.approx(chart.steps[rows][:, :2])
    assert not np.any(chart.rated[~rows][:, :2])


@pytest.mark.parametrize("step", [0.0, -50.0, np.nan, np.inf])
def test_a_step_that_rounds_nothing_is_refused_in_one_sentence(step: float) -> None:
    with pytest.raises(ValueError, match=r"chart step of .* Give one above 0 kg"):
        best_chart(setup(), step=step)


@pytest.mark.parametrize("radius", [np.nan, 0.0, -3.0, np.inf])
def test_a_radius_that_is_none_is_refused(radius: float) -> None:
    with pytest.raises(ValueError, match="must be above 0 m"):
        best_chart(setup(), radii=np.array([5.0, radius]))


def test_no_radii_at_all_are_refused() -> None:
    with pytest.raises(ValueError, match="needs 1 to 1000 radii and these are 0"):
        best_chart(setup(), radii=np.array([]))


def test_radii_out_of_reach_are_refused_with_what_can_be_reached() -> None:
    with pytest.raises(ValueError, match=r"reaches a radius of 400 m\. Give radii from .* to 27"):
        best_chart(setup(), radii=np.array([400.0]))


@pytest.mark.parametrize("apart", [0.0, np.nan, -1.0])
def test_rows_that_never_move_on_are_refused(apart: float) -> None:
    machine = setup().machine
    with pytest.raises(ValueError, match="Rows cannot be"):
        chart_radii(machine, length=np.array([20.0]), step=apart)


def test_a_missing_counterweight_and_a_support_not_set_are_named() -> None:
    machine = load_machine("truck18")
    with pytest.raises(ValueError, match=r"no counterweight '9 t'.*Choose one of"):
        set_up(machine, rigging=Rigging(counterweight="9 t"))
    with pytest.raises(ValueError, match=r"no support 'three quarters'.*Choose one of"):
        set_up(machine, rigging=Rigging(support="three quarters"))


def test_a_length_that_no_pin_gives_is_refused_with_the_nearest() -> None:
    boom = load_machine("yard60").boom
    with pytest.raises(ValueError, match="nearest lengths"):
        configurations_at_lengths(boom, length=[13.0])


@pytest.mark.parametrize("between", [0, 1, -2])
def test_the_nearest_lengths_are_those_on_both_sides(between: int) -> None:
    boom = load_machine("yard60").boom
    lengths = layout(boom, extension=pinned_configurations(boom)).boom_length
    apart = np.unique(np.round(lengths, 6))
    below, above = apart[between], apart[between + 1]
    said = f"The nearest lengths are {below:.2f} m and {above:.2f} m."
    with pytest.raises(ValueError, match=re.escape(said)):
        configurations_of_length(boom, length=(below + above) / 2)


def test_a_system_that_the_boom_has_not_is_refused() -> None:
    with pytest.raises(ValueError, match="not pinned"):
        every_configuration(setup().machine.boom, system="pinned")
