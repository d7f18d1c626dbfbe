"""The picture of an indicator shows the study's shares, and the caution."""

import numpy as np
import pytest
from matplotlib.figure import Figure

from boomsim.figures.colours_and_lines import LOAD
from boomsim.figures.figure_page import caution_of
from boomsim.figures.indicator.indicator_figure import figure_of_indicator
from boomsim.figures.indicator.shown_and_true import draw_shown_and_true
from boomsim.rating.indicator.indicator_sentences import tell_worst
from boomsim.rating.indicator.indicator_study import LESS, indicate


@pytest.fixture(scope="module")
def found(setup):
    return indicate(setup, extension=np.array([0.0, 0.0, 0.45, 0.45]), radius=10.0)


def test_marks_stand_at_what_it_shows_and_at_what_is(found):
    drawn = draw_shown_and_true(Figure().add_subplot(), found)
    for row in found.rows:
        key = row.condition.key
        assert float(drawn.shown[key].get_xdata()[0]) == pytest.approx(
            100.0 * row.shown_utilisation
        )
        assert float(drawn.true[key].get_xdata()[0]) == pytest.approx(100.0 * row.utilisation)
        assert (drawn.links[key].get_color() == LOAD) == (row.verdict == LESS)


def test_the_picture_says_the_worst_and_the_caution(found):
    figure = figure_of_indicator(found)
    said = " ".join(" ".join(text.get_text() for text in figure.texts).split())
    assert tell_worst(found, units="metric") in said
    assert caution_of(figure)
