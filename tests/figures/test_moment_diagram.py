"""Bending moments section by section: no heading of a panel lies on the head of the page."""

from itertools import pairwise

import numpy as np
import pytest

from boomsim.figures.handout.moment_diagram import figure_of_moments
from boomsim.mechanics.boom.condense import condense
from boomsim.rating.lift_response import respond
from tests.figures.conftest import THREE_WAYS


@pytest.mark.parametrize("units", ["metric", "us"])
@pytest.mark.parametrize("count", [1, 3])
def test_panels_stand_below_the_head_above_the_foot_and_off_one_another(setup, count, units):
    boom = condense(setup.machine, extension=THREE_WAYS[:count])
    at = respond(setup, boom=boom, load=np.array([[20_000.0]]), radius=np.array([[6.0]]))
    figure = figure_of_moments(at, units=units)
    figure.canvas.draw()
    pencil = figure.canvas.get_renderer()
    panels = [ax.get_tightbbox(pencil) for ax in figure.axes]
    head = [t.get_window_extent(pencil) for t in figure.texts if t.get_position()[1] > 0.5]
    foot = [t.get_window_extent(pencil) for t in figure.texts if t.get_position()[1] < 0.5]
    assert len(head) == 2
    assert len(foot) == 2
    assert panels[0].y1 < min(one.y0 for one in head)
    assert panels[-1].y0 > max(one.y1 for one in foot)
    # An axis title on its side may reach up beside the panel above, so the drawings themselves.
    boxes = [ax.get_window_extent(pencil) for ax in figure.axes]
    assert all(above.y0 > below.y1 for above, below in pairwise(boxes))
