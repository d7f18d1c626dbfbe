"""The picture of setting up shows the study's radii, and the caution."""

import numpy as np
import pytest
from matplotlib.figure import Figure

from boomsim.figures.figure_page import caution_of
from boomsim.figures.slabs.slab_bands import draw_bands
from boomsim.figures.slabs.slabs_figure import figure_of_slabs
from boomsim.rating.slabs.slabs_sentences import tell_first
from boomsim.rating.slabs.slabs_study import slabs


@pytest.fixture(scope="module")
def found(setup):
    return slabs(setup)


@pytest.mark.parametrize(("units", "metre"), [("metric", 1.0), ("us", 0.3048)])
def test_bars_and_marks_stand_at_the_radii_of_the_study(found, units, metre):
    own = found.bands_of(found.stages[0])
    chart = draw_bands(Figure().add_subplot(), found, own, units=units, names=True)
    for bands in own:
        for way in range(len(found.ways.length)):
            key = (bands.support.name, way)
            assert (key in chart.bars) == np.isfinite(bands.far[way])
            assert (key in chart.tips) == np.isfinite(bands.tips[way])
            if key in chart.bars:
                bar = chart.bars[key]
                ends = np.array([bar.get_x(), bar.get_x() + bar.get_width()]) * metre
                assert ends == pytest.approx([bands.near[way], bands.far[way]])
            if key in chart.tips:
                at = float(chart.tips[key].get_xdata()[0]) * metre
                assert at == pytest.approx(bands.tips[way])
    assert float(chart.deck.get_xdata()[0]) * metre == pytest.approx(3.0)


def test_the_picture_says_the_sentence_and_the_caution(found):
    figure = figure_of_slabs(found)
    said = " ".join(" ".join(text.get_text() for text in figure.texts).split())
    assert tell_first(found, units="metric") in said
    assert caution_of(figure)
