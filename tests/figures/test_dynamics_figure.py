"""The picture of moved loads shows the study's loads, and the caution."""

import numpy as np
import pytest
from matplotlib.figure import Figure

from boomsim.figures.dynamics.dynamics_figure import figure_of_dynamics
from boomsim.figures.dynamics.equivalent_bars import draw_equivalents
from boomsim.figures.figure_page import caution_of
from boomsim.rating.dynamics.dynamics_sentences import tell_worst
from boomsim.rating.dynamics.dynamics_study import dynamics


@pytest.fixture(scope="module")
def found(setup):
    return dynamics(setup, extension=np.array([0.0, 0.0, 0.45, 0.45]), radius=10.0)


@pytest.mark.parametrize(("units", "kilograms"), [("metric", 1000.0), ("us", 0.45359237)])
def test_bars_end_at_the_equivalent_loads_and_lines_stand_at_the_loads_that_matter(
    found, units, kilograms
):
    bars = draw_equivalents(Figure().add_subplot(), found, units=units)
    for one in found.effects:
        still, added = bars.still[one.key], bars.added[one.key]
        assert still.get_width() * kilograms == pytest.approx(found.load)
        end = added.get_x() + added.get_width()
        assert end * kilograms == pytest.approx(one.equivalent)
    loads = {"rated": found.rated, "tips": found.tipping, "breaks": found.breaking}
    for name, line in bars.lines.items():
        assert float(line.get_xdata()[0]) * kilograms == pytest.approx(loads[name])
    assert {"rated", "tips"} <= set(bars.lines)


def test_the_picture_says_the_worst_and_the_caution(found):
    figure = figure_of_dynamics(found)
    said = " ".join(" ".join(text.get_text() for text in figure.texts).split())
    assert tell_worst(found, units="metric") in said
    assert caution_of(figure)
