"""The picture of one boom built light and stout shows the ratings, edges and endings of a study."""

import numpy as np
import pytest
from matplotlib.figure import Figure
from matplotlib.lines import Line2D
from matplotlib.patches import Rectangle

from boomsim.figures.builds.builds_bars import draw_bars, draw_ends
from boomsim.figures.builds.builds_figure import draw_builds, figure_of_builds
from boomsim.figures.figure_page import caution_of
from boomsim.rating.builds.builds_study import compare_builds, near_and_far, overloaded
from boomsim.rating.limits.limit_kind import STABILITY
from boomsim.units import display


@pytest.fixture(scope="module")
def builds(setup):
    return compare_builds(setup, factors=(0.8, 1.0, 1.3), extension=np.array([0.0, 0.0, 0.0, 0.9]))


@pytest.mark.slow
@pytest.mark.parametrize("units", ["metric", "us"])
def test_the_lines_are_the_rated_capacities_of_each_build(builds, units):
    curves = draw_builds(Figure().add_subplot(), builds, units=units)
    metre, kilogram = display("length", units).factor, display("mass", units).factor
    for build, curve in zip(builds.builds, curves, strict=True):
        drawn = {}
        for line in (curve.structural, curve.stability):
            for x, y in zip(*line.get_data(), strict=True):
                if np.isfinite(y):
                    drawn[round(x * metre, 9)] = y * kilogram
        for radius, capacity in zip(builds.radii, build.rating.capacity[0], strict=True):
            if np.isfinite(capacity):
                assert drawn[round(float(radius), 9)] == pytest.approx(capacity, rel=1e-12)


def test_the_bold_stroke_stands_where_stability_begins_to_set_the_figures(builds):
    made = draw_bars(Figure().add_subplot(), builds, x=display("length", "metric"))
    strokes = [one for one in made if isinstance(one, Line2D)]
    edges = [
        (row, after.near)
        for row, build in enumerate(builds.builds)
        for one, after in zip(build.sets, build.sets[1:], strict=False)
        if (one.what == STABILITY) != (after.what == STABILITY)
    ]
    assert len(edges) == 2
    drawn = [(float(np.mean(s.get_ydata())), s.get_xdata()[0]) for s in strokes]
    assert drawn == pytest.approx(edges)


def test_bars_are_hatched_unless_stability_sets_the_figure(builds):
    made = draw_bars(Figure().add_subplot(), builds, x=display("length", "metric"))
    bars = [one for one in made if isinstance(one, Rectangle)]
    told = [one for build in builds.builds for one in build.sets]
    assert [bool(bar.get_hatch()) for bar in bars] == [one.what != STABILITY for one in told]
    assert [bar.get_x() for bar in bars] == pytest.approx([one.near for one in told])
    ends = [bar.get_x() + bar.get_width() for bar in bars]
    assert ends == pytest.approx([one.far for one in told])


@pytest.mark.slow
def test_the_bars_say_what_the_overload_study_says(builds):
    near, far = near_and_far(builds)
    for radius in (near, far):
        past = overloaded(builds, radius=radius)
        ax = Figure().add_subplot()
        texts = draw_ends(ax, past, radius=radius, x=display("length", "metric"))
        assert [t.get_text() == "tips first" for t in texts] == [one.warns for one in past]
        assert [t.get_position()[1] for t in texts] == [0, 1, 2]


@pytest.mark.slow
@pytest.mark.parametrize("units", ["metric", "us"])
def test_the_page_names_each_build_with_what_its_boom_weighs_and_the_caution(builds, units):
    figure = figure_of_builds(builds, at=near_and_far(builds), units=units)
    words = " ".join(text.get_text() for text in figure.texts)
    for build in builds.builds:
        assert build.name in words
    assert words.count("boom of ") == 3
    assert "not for planning a lift" in caution_of(figure)
