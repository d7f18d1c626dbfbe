"""The picture of the main job shows the rating, and tells the families apart without colour."""

import dataclasses
import itertools

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from matplotlib.figure import Figure

from boomsim.figures.colours_and_lines import FAMILIES, IDENTITIES
from boomsim.figures.comparison.comparison_figure import figure_of_comparison
from boomsim.figures.comparison.comparison_lines import (
    MOST_SHOWN,
    draw_comparison,
    shown_configurations,
    update_comparison,
)
from boomsim.figures.comparison.comparison_marks import LEVEL, crossovers_on_chart, winning_ranges
from boomsim.figures.setup_words import disturbance_words
from boomsim.figures.unit_axes import spread_out
from boomsim.machine.model import Disturbances, Rigging
from boomsim.rating.comparison.capacity_envelope import SAME
from boomsim.rating.comparison.comparison_study import compare, finely
from boomsim.rating.setup import set_up
from boomsim.rating.strategies import configurations_of
from boomsim.units import display, show, show_rated

ALONE = np.array([[0.0, 0.0, 0.0, 1.0]])


def chart_of(comparison, units="metric"):
    return draw_comparison(Figure().add_subplot(), comparison, units=units)


@pytest.fixture(scope="module")
def level(setup, comparison):
    """One part of line: what the rope may pull is the same for all, up to a far radius."""
    one_part = set_up(setup.machine, rigging=Rigging(parts=1))
    return compare(one_part, length=float(comparison.configurations.length[0]))


@pytest.mark.parametrize("units", ["metric", "us"])
def test_the_lines_are_the_rated_capacities(comparison, units):
    chart = chart_of(comparison, units)
    metre, kilogram = display("length", units).factor, display("mass", units).factor
    for row, curve in chart.curves.items():
        drawn = {}
        for line in (curve.structural, curve.stability):
            for x, y in zip(*line.get_data(), strict=True):
                if np.isfinite(y):
                    drawn[round(x * metre, 9)] = y * kilogram
        for radius, capacity in zip(comparison.radii, comparison.rating.capacity[row], strict=True):
            if np.isfinite(capacity):
                assert drawn[round(float(radius), 9)] == pytest.approx(capacity, rel=1e-12)
            else:
                assert round(float(radius), 9) not in drawn


def test_each_cell_is_on_the_line_of_its_family(comparison):
    chart, cells = chart_of(comparison), 0
    for row, curve in chart.curves.items():
        turns = set(np.asarray(curve.turns.get_xdata()))
        for line, tips in ((curve.structural, False), (curve.stability, True)):
            x, y = line.get_data()
            own = [r for r, v in zip(x, y, strict=True) if np.isfinite(v) and r not in turns]
            places = np.searchsorted(comparison.radii, own)
            assert np.all(comparison.rating.is_stability[row, places] == tips)
            cells += len(own)
    assert cells == np.sum(np.isfinite(comparison.rating.capacity))


def test_the_families_differ_by_line_style_and_weight_not_by_colour(comparison):
    for curve in chart_of(comparison).curves.values():
        breaks, tips = curve.structural, curve.stability
        assert breaks.get_color() == tips.get_color()
        assert breaks.get_linestyle() != tips.get_linestyle() == "-"
        assert tips.get_linewidth() > 1.5 * breaks.get_linewidth()


def test_where_the_family_changes_both_lines_meet(comparison):
    for row, curve in chart_of(comparison).curves.items():
        tips = comparison.rating.is_stability[row]
        known = np.isfinite(comparison.rating.capacity[row])
        changes = np.sum((tips[:-1] != tips[1:]) & known[:-1] & known[1:])
        x, y = curve.turns.get_data()
        assert len(x) == changes
        for line in (curve.structural, curve.stability):
            ends = {(a, b) for a, b in zip(*line.get_data(), strict=True) if np.isfinite(b)}
            assert set(zip(x, y, strict=True)) <= ends


def test_configurations_differ_by_marker_and_by_lightness():
    markers = [look.marker for look in IDENTITIES]
    assert len(set(markers)) == len(markers)
    # Rec. 601 luma; 0.12 is a clear step between neighbours in a grey print.
    grey = [
        sum(
            w * int(look.colour[k : k + 2], 16) / 255
            for w, k in ((0.299, 1), (0.587, 3), (0.114, 5))
        )
        for look in IDENTITIES[:3]
    ]
    assert min(abs(a - b) for i, a in enumerate(grey) for b in grey[:i]) > 0.12


def test_crossovers_are_ringed_and_labelled_with_radius_and_capacity(comparison):
    assert comparison.crossovers
    chart = chart_of(comparison)
    rings, notes = chart.crossings[0::3], chart.crossings[2::3]
    for met, ring, note in zip(comparison.crossovers, rings, notes, strict=True):
        assert ring.get_xdata()[0] == pytest.approx(met.radius)
        assert ring.get_ydata()[0] == pytest.approx(met.capacity / 1000.0)
        assert show(met.radius, "length") in note.get_text()
        assert show_rated(met.capacity) in note.get_text()


@pytest.mark.slow
def test_the_strip_says_who_carries_most_at_every_radius(comparison, many, level):
    for made in (comparison, many, level):
        ranges = winning_ranges(made)
        for (_, _, far), (_, near, _) in itertools.pairwise(ranges):
            assert near == far
        for radius, capacity in zip(made.radii, made.rating.capacity.T, strict=True):
            holders = [who for who, near, far in ranges if near - 1e-9 <= radius <= far + 1e-9]
            most = np.nan_to_num(capacity).max()
            first = np.flatnonzero(np.nan_to_num(capacity) >= (1.0 - SAME) * most)
            expected = LEVEL if len(first) > 1 else int(first[0])
            assert (expected in holders) if most > 0.0 else not holders


def test_with_few_radii_the_strip_still_changes_where_the_lead_passes(setup, comparison):
    few = compare(
        setup,
        configurations=comparison.configurations,
        radii=comparison.radii[[2, -3]],
    )
    inner = [far for _, _, far in winning_ranges(few)][:-1]
    assert inner == [one.radius for one in crossovers_on_chart(few)]
    assert len(inner) > 0


def test_where_several_carry_the_same_the_strip_calls_them_level(level):
    assert LEVEL in [who for who, _, _ in winning_ranges(level)]
    ax = figure_of_comparison(level).axes[0]
    assert "level" in [text.get_text() for text in ax.texts]


def test_the_words_name_machine_sector_counterweight_and_rule(comparison):
    figure = figure_of_comparison(comparison)
    words = " ".join(text.get_text() for text in figure.texts)
    for needed in ("yard60 (invented)", "all around", "counterweight", "85 %", "3 ways"):
        assert needed in words
    for extension in ("0, 0, 0, 90 %", "0, 0, 45, 45 %", "90, 0, 0, 0 %"):
        assert extension in words


def test_each_configuration_stands_beside_the_chart(comparison, many):
    for made in (comparison, many):
        # The chart, a side view each, and the strip below.
        assert len(figure_of_comparison(made).axes) == 2 + len(shown_configurations(made))


def test_of_many_configurations_the_frequent_winners_are_named(many):
    shown = shown_configurations(many)
    assert len(many.configurations.extension) > len(shown)
    assert 5 <= len(shown) <= MOST_SHOWN
    wins = np.bincount(many.best[many.best >= 0], minlength=len(many.configurations.extension))
    assert set(np.argsort(-wins)[:3]) <= set(shown)
    chart = chart_of(many)
    assert {k for k, c in chart.curves.items() if c.marks.get_visible()} == set(shown)
    assert len(chart.curves) == len(many.configurations.extension)


def test_a_picture_of_few_radii_has_its_rings_on_the_lines(setup, comparison):
    few = compare(setup, configurations=comparison.configurations, radii=comparison.radii[[3, -3]])
    fine = finely(few)
    assert set(few.radii) <= set(fine.radii)
    assert (fine.radii[0], fine.radii[-1]) == (few.radii[0], few.radii[-1])
    for one in crossovers_on_chart(fine):
        for way in (one.before, one.after):
            drawn = np.interp(one.radius, fine.radii, fine.rating.capacity[way])
            # Between radii a quarter of a metre apart a line is straight: 1 % at a kink of it.
            assert drawn == pytest.approx(one.capacity, rel=0.01)


def test_the_strip_below_shows_how_much_less_than_the_most_each_carries(comparison, many):
    for made in (comparison, many):
        figure = figure_of_comparison(made)
        chart, strip = figure.axes[0], figure.axes[-1]
        assert strip.get_xlim() == chart.get_xlim()
        lines = {int(line.get_label()): line for line in strip.lines if len(line.get_xdata()) > 2}
        assert list(lines) == shown_configurations(made)
        capacity = made.rating.capacity
        for way, line in lines.items():
            less = np.asarray(line.get_ydata()) * 1000.0
            known = np.isfinite(capacity[way])
            most = np.nanmax(capacity[:, known], axis=0)
            assert less[known] + most == pytest.approx(capacity[way, known])
        # The one that carries least far out still lies within the strip.
        low, high = strip.get_ylim()
        assert high == 0.0
        far = np.flatnonzero((capacity > 0.0).all(axis=0))[-1]
        assert low * 1000.0 < capacity[:, far].min() - capacity[:, far].max()


def test_one_way_alone_has_no_strip(setup):
    alone = compare(setup, configurations=configurations_of(setup.machine.boom, extension=ALONE))
    assert len(figure_of_comparison(alone).axes) == 2


def test_an_updated_chart_shows_the_new_comparison(comparison, many):
    chart = chart_of(many)
    update_comparison(chart, comparison)
    fresh = chart_of(comparison)
    assert list(chart.curves) == list(fresh.curves)
    for row, curve in fresh.curves.items():
        assert np.array_equal(
            curve.stability.get_ydata(), chart.curves[row].stability.get_ydata(), equal_nan=True
        )
    assert len(chart.ax.get_children()) == len(fresh.ax.get_children())


def test_the_broken_line_is_the_one_that_breaks():
    assert FAMILIES["structural"].line != "solid"
    assert FAMILIES["structural"].words.startswith("broken line")
    assert FAMILIES["stability"].line == "solid"


@given(st.lists(st.floats(-5.0, 15.0), min_size=1, max_size=9), st.floats(0.1, 1.0))
def test_labels_keep_their_order_and_distance_inside_the_range(wanted, least):
    placed = spread_out(wanted, least=least, low=0.0, high=10.0)
    order = sorted(range(len(wanted)), key=lambda k: wanted[k])
    inline = [placed[k] for k in order]
    assert all(b - a >= least - 1e-9 for a, b in itertools.pairwise(inline))
    assert min(inline) >= -1e-9 and max(inline) <= 10.0 + 1e-9


def test_labels_that_have_room_stay_where_they_want_to_be():
    assert spread_out([7.0, 1.0, 4.0], least=1.0, low=0.0, high=10.0) == [7.0, 1.0, 4.0]


def test_the_key_lies_on_no_line(comparison, many, level):
    for made in (comparison, many, level):
        ax = figure_of_comparison(made).axes[0]
        for line in (line for line in ax.lines if line.get_label() in FAMILIES):
            points = ax.transAxes.inverted().transform(ax.transData.transform(line.get_xydata()))
            inside = (points[:, 0] > 0.55) & (points[:, 1] > 0.7) & (points[:, 1] < 0.95)
            assert not inside.any()


def test_radii_that_nothing_reaches_give_a_chart_that_says_so(setup):
    radii = np.array([60.0, 61.0])
    figure = figure_of_comparison(compare(setup, length=11.5, radii=radii))
    assert any("none of them reaches" in text.get_text() for text in figure.axes[0].texts)


def test_a_disturbed_lift_says_what_disturbs_it():
    disturbed = Disturbances(wind_speed=9.0, wind_across=True, side_pull=0.02, lean=np.radians(1))
    words = disturbance_words(disturbed)
    assert words == (
        "wind 9.00 m/s across the boom, side pull 2.0 % of the load, leaning 1.0° towards the boom"
    )


@pytest.mark.filterwarnings("error")
@pytest.mark.parametrize("capacity", [0.0, np.nan])
def test_where_nothing_may_be_lifted_the_axis_still_has_a_length(comparison, capacity):
    """A fuzzed machine, weak in every section, was rated at 0 kg everywhere it reached."""
    nothing = np.full_like(comparison.rating.capacity, capacity)
    rating = dataclasses.replace(comparison.rating, capacity=nothing)
    chart = chart_of(dataclasses.replace(comparison, rating=rating, crossovers=()))
    low, high = chart.ax.get_ylim()
    assert low == 0.0 < high
