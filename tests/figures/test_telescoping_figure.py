"""The picture of a boom that is run out with a load shows the lines and marks of the study."""

import numpy as np
import pytest
from matplotlib.figure import Figure

from boomsim.figures.colours_and_lines import LOAD
from boomsim.figures.figure_page import caution_of
from boomsim.figures.path.telescoping_figure import (
    draw_largest,
    draw_telescoping,
    figure_of_telescoping,
)
from boomsim.rating.path.largest_telescoped import largest_moved
from boomsim.rating.path.telescoping_sentences import tell_telescoping
from boomsim.rating.path.telescoping_study import telescope
from boomsim.units import display, show


@pytest.fixture(scope="module")
def way(setup):
    return telescope(setup, extension=np.array([0.0, 0.0, 0.0, 0.0]), load=8e3, angle=1.05)


@pytest.mark.parametrize("units", ["metric", "us"])
def test_the_two_lines_are_what_is_rated_and_what_is_rated_to_run_out(way, units):
    ax = Figure().add_subplot()
    drawn = draw_telescoping(ax, way, units=units)
    metre, kilogram = display("length", units).factor, display("mass", units, like=8e3).factor
    for line, loads in zip(drawn, (way.line.rated, way.line.moved), strict=True):
        assert np.array(line.get_xdata()) * metre == pytest.approx(way.line.radius)
        assert np.array(line.get_ydata()) * kilogram == pytest.approx(loads, nan_ok=True)
    level = next(line for line in ax.lines if line.get_color() == LOAD)
    assert np.array(level.get_ydata()) * kilogram == pytest.approx([8e3, 8e3])


def test_over_the_boom_angle_the_ground_that_is_filled_lies_under_both_lines(way, setup):
    angle = np.radians([0.0, 40.0, 78.0])
    one = largest_moved(setup, stage=way.stages[0], angle=angle, friction=way.friction)
    ax = Figure().add_subplot()
    hangs, pushed = draw_largest(ax, one)
    tonne = display("mass", "metric", like=8e3).factor
    assert np.array(hangs.get_ydata()) * tonne == pytest.approx(one.hangs)
    assert np.array(pushed.get_ydata()) * tonne == pytest.approx(one.pushed)
    filled = ax.collections[0].get_paths()[0].vertices[:, 1] * tonne
    assert filled.max() <= one.moved.max() + 1e-6


def test_the_first_side_view_says_how_long_the_boom_is_and_where_the_load_hangs(way, setup):
    texts = [" ".join(text.get_text().split()) for text in figure_of_telescoping(way).texts]
    boom = setup.machine.boom
    # All in, each inner section shows its nose beyond the one around it.
    length = sum([boom.sections[0].length, *(s.nose for s in boom.sections[1:]), boom.head.ahead])
    told = f"{length:.1f} m of boom, {show(way.start.radius, 'length')} radius"
    assert texts[texts.index("where it begins") + 1] == told


def test_the_picture_says_the_sentence_and_the_caution(way):
    figure = figure_of_telescoping(way)
    said = " ".join(" ".join(text.get_text() for text in figure.texts).split())
    assert tell_telescoping(way, units="metric") in said
    assert caution_of(figure)
