"""The picture of a load on its way down shows the ratings and the marks of the study."""

import numpy as np
import pytest
from matplotlib.figure import Figure

from boomsim.figures.colours_and_lines import LOAD
from boomsim.figures.figure_page import caution_of
from boomsim.figures.path.load_line import MARK
from boomsim.figures.path.lowering_figure import draw_lowering, figure_of_lowering
from boomsim.rating.path.lowering_sentences import tell_lowering
from boomsim.rating.path.lowering_study import lower
from boomsim.units import display


@pytest.fixture(scope="module")
def way(setup):
    return lower(setup, extension=np.array([0.0, 0.0, 0.0, 0.9]), load=12e3, angle=1.2)


@pytest.mark.parametrize("units", ["metric", "us"])
def test_the_load_is_a_level_line_from_start_to_end_with_its_marks_on_it(way, units):
    ax = Figure().add_subplot()
    draw_lowering(ax, way, units=units)
    metre, kilogram = display("length", units).factor, display("mass", units, like=12e3).factor
    level = next(line for line in ax.lines if line.get_color() == LOAD)
    assert np.array(level.get_xdata()) * metre == pytest.approx([way.start.radius, way.end.radius])
    assert np.array(level.get_ydata()) * kilogram == pytest.approx([12e3, 12e3])
    on_it = [line for line in ax.lines if line.get_marker() in "ovX"]
    on_it = [line for line in on_it if line.get_markersize() == MARK]
    drawn = sorted(float(line.get_xdata()[0]) * metre for line in on_it)
    met = sorted(mark.place.radius for mark in (way.marks.rated, way.marks.tips))
    assert drawn == pytest.approx(met)


@pytest.mark.parametrize("units", ["metric", "us"])
@pytest.mark.parametrize(
    ("load", "out", "angle", "named"),
    [
        (4e3, 0.0, 1.2, "where the way ends"),
        (12e3, 0.9, 1.2, "the farthest it is rated"),
        (45e3, 0.0, 0.6, "where the way ends"),
    ],
    ids=["rated all the way", "part of it", "nowhere"],
)
def test_the_side_views_are_told_by_the_places_that_the_sentence_names(
    setup, load, out, angle, named, units
):
    found = lower(setup, extension=np.array([0.0, 0.0, 0.0, out]), load=load, angle=angle)
    figure = figure_of_lowering(found, units=units)
    texts = [" ".join(text.get_text().split()) for text in figure.texts]
    first = texts.index("where it begins")
    begins, last, ends = texts[first + 1 : first + 4]
    assert last == named
    assert (ends if found.is_rated_at_start else begins) in tell_lowering(found, units=units)


def test_the_picture_says_the_sentence_and_the_caution(way):
    figure = figure_of_lowering(way)
    said = " ".join(" ".join(text.get_text() for text in figure.texts).split())
    assert tell_lowering(way, units="metric") in said
    assert caution_of(figure)
