"""Would it tip first, over a whole chart."""

from functools import lru_cache

import numpy as np
import pytest
from making import invented_crane

from boomsim.machine.machine_files import load_machine
from boomsim.rating.charts.load_chart import best_chart, stated_chart
from boomsim.rating.overload.overload_map import OverloadMap, meeting_radii, overload_map
from boomsim.rating.overload.overload_study import overload
from boomsim.rating.setup import set_up
from boomsim.rating.strategies import configurations_of

RADII = np.array([3.0, 4.0, 5.0, 6.0, 8.0, 12.0, 18.0, 24.0])


@lru_cache
def found() -> OverloadMap:
    setup = set_up(invented_crane())
    ways = np.array([[0.0, 0.0, 0.0], [0.5, 0.5, 0.5], [1.0, 1.0, 1.0]])
    configurations = configurations_of(setup.machine.boom, extension=ways)
    return overload_map(stated_chart(setup, configurations=configurations, radii=RADII))


@pytest.mark.slow
def test_every_cell_says_what_its_own_overload_study_says() -> None:
    made = found()
    rows, columns = np.nonzero(made.chart.rated)
    for row, column in list(zip(rows, columns, strict=True))[::3]:
        way = made.chart.configurations.extension[made.chart.used[row, column]]
        one = overload(made.chart.setup, extension=way, radius=float(made.chart.radii[row]))
        assert made.ratio[row, column] == pytest.approx(one.ratio, rel=1e-5)
        assert one.failure is not None
        assert made.failure[row, column] == pytest.approx(one.failure.load, rel=1e-5)
        assert made.chart.limits[made.gives_way[row, column]] == one.failure.limit


def test_the_map_is_blank_where_the_chart_is() -> None:
    made = found()
    assert np.array_equal(np.isnan(made.ratio), ~made.chart.rated)
    assert np.array_equal(made.gives_way < 0, ~made.chart.rated)


def test_a_cell_that_stability_rates_tips_before_it_breaks() -> None:
    # Rated at 85 % of tipping with strength at yield/1.5 still in hand: it cannot break first
    # unless the load from yield/1.5 to yield grows less than 1/0.85.
    made = found()
    stability = made.chart.rated & ~made.chart.structural
    assert stability.any()
    assert np.all(made.ratio[stability] > 1.0)
    assert np.all(made.tipping[stability] < 1.25 * made.chart.exact[stability])


def test_nearer_the_ratio_is_smaller_along_one_configuration() -> None:
    made = found()
    for column in range(made.ratio.shape[1]):
        known = made.ratio[:, column][~np.isnan(made.ratio[:, column])]
        assert np.all(np.diff(known) > 0.0)


def test_the_meeting_line_lies_between_the_cells_that_it_parts() -> None:
    made = found()
    for column in range(made.ratio.shape[1]):
        breaks = made.breaks_first[:, column]
        for radius in meeting_radii(made, column):
            assert breaks[made.chart.radii < radius].any()
            assert not breaks[made.chart.radii > radius].any()


def test_both_regions_are_on_the_map_and_the_line_between_them() -> None:
    made = found()
    rated = made.chart.rated
    assert made.breaks_first[rated].any()
    assert not made.breaks_first[rated].all()
    assert len(made.meeting) > 0


def test_nothing_breaks_below_its_rated_load() -> None:
    made = overload_map(best_chart(set_up(invented_crane()), radii=RADII))
    assert np.nanmin(made.breaks_at) > 1.0


@lru_cache
def whole(name: str) -> OverloadMap:
    return overload_map(best_chart(set_up(load_machine(name))))


@pytest.mark.slow
@pytest.mark.parametrize("name", ["truck18", "yard60"])
def test_120_percent_of_a_stability_rated_load_is_past_tipping(name: str) -> None:
    # Common practice, no source: 0.85 x 1.2 = 1.02, and at a kept boom angle a little more.
    made = whole(name)
    stability = made.chart.rated & ~made.chart.structural
    assert stability.any()
    assert np.all(1.2 * made.chart.exact[stability] > made.tipping[stability])
    assert np.all(1.1 * made.chart.exact[stability] < made.tipping[stability])


@pytest.mark.parametrize("name", ["truck18", pytest.param("yard60", marks=pytest.mark.slow)])
def test_far_inside_the_structural_region_it_breaks_well_before_it_would_tip(name: str) -> None:
    made = whole(name)
    structural = made.chart.structural & made.chart.rated
    # Below the share of the tipping load that stability rates, 0.85 on outriggers (SAE J1289, from
    # memory): it would break with a load that stability alone would have let it carry.
    assert np.nanmin(made.ratio[structural]) < 0.85
    assert not made.breaks_first[~structural].any()


@pytest.mark.parametrize("name", ["truck18", "yard60"])
def test_near_the_line_where_they_meet_either_may_come_first(name: str) -> None:
    made = whole(name)
    near = (made.ratio > 0.85) & (made.ratio < 1.15)
    assert made.breaks_first[near].any()
    assert not made.breaks_first[near].all()


@pytest.mark.parametrize("name", ["truck18", "yard60"])
def test_the_bold_line_lies_on_the_far_side_of_the_line_where_they_meet(name: str) -> None:
    # 1.5 on yield and 0.85 of tipping: what rates by strength at 1/0.85 to 1.5 times its load
    # still tips first. So the region without warning is a part of the structural region.
    made = whole(name)
    assert np.all(made.chart.structural[made.breaks_first & made.chart.rated])
    assert made.breaks_first.sum() < (made.chart.structural & made.chart.rated).sum()
