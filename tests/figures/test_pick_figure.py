"""The picture of a pick shows each check as the study judged it, and the caution."""

from math import radians

import numpy as np
import pytest
from matplotlib.figure import Figure

from boomsim.figures.figure_page import caution_of
from boomsim.figures.pick.check_bars import BAR, LOOKS, NAMES, SHOWN, draw_ladder
from boomsim.figures.pick.pick_figure import figure_of_pick
from boomsim.rating.pick.pick_asked import Asked
from boomsim.rating.pick.pick_checks import BEYOND, NOTED, UNKNOWN, WITHIN
from boomsim.rating.pick.pick_sentences import NO_LEAVE, tell_verdict
from boomsim.rating.pick.pick_study import pick


@pytest.fixture(scope="module")
def found(setup):
    asked = Asked(
        radius=9.8, load=16_500.0, swing=(0.0, radians(90.0)), bearing=200e3, wind=6.0,
        load_area=1e-3,
    )  # fmt: skip
    return pick(setup, extension=np.array([0.0, 0.0, 0.45, 0.45]), asked=asked)


def test_bars_are_as_long_as_the_share_that_is_used_and_look_as_their_state(found):
    ladder = draw_ladder(Figure().add_subplot(), found.checks, width=0.1)
    states = {check.state for check in found.checks}
    assert states == {WITHIN, BEYOND, UNKNOWN, NOTED}
    for check in found.checks:
        if check.state == NOTED:
            assert check.key not in ladder.bars
            continue
        bar = ladder.bars[check.key]
        assert bar.get_hatch() == (LOOKS[check.state]["hatch"] or None) or not bar.get_hatch()
        assert bar.get_x() == pytest.approx(NAMES)
        if check.utilisation is not None and check.key != "radius":
            assert bar.get_width() == pytest.approx(min(check.utilisation, SHOWN) * BAR / SHOWN)


def test_the_picture_says_the_verdict_that_gives_no_leave_and_the_caution(found):
    figure = figure_of_pick(found)
    said = " ".join(" ".join(text.get_text() for text in figure.texts).split())
    assert tell_verdict(found, units="metric") in said
    assert NO_LEAVE in said
    assert caution_of(figure)
