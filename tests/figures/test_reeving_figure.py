"""The picture of a reeved boom: the rope runs on, and what is written is what was found."""

import numpy as np
import pytest
from matplotlib.figure import Figure
from matplotlib.patches import Rectangle

from boomsim.figures.figure_page import caution_of
from boomsim.figures.reeving.reeving_figure import (
    draw_rope,
    draw_stair,
    figure_of_reeving,
    tackle_of,
)
from boomsim.figures.reeving.tackle_drawing import (
    BLOCK,
    TOP,
    dead_end,
    draw_tackle,
    sheaves,
    tangent,
)
from boomsim.machine.model import Rigging
from boomsim.rating.reeving.reeving_study import reeve
from boomsim.rating.setup import set_up
from boomsim.units import show


@pytest.fixture(scope="module")
def found(setup):
    return reeve(setup, extension=np.array([0.9, 0.9, 0.0, 0.9]), radius=10.0)


@pytest.mark.parametrize("parts", range(1, 13))
def test_the_rope_runs_from_sheave_to_sheave_to_the_dead_end(parts):
    """Down from the head, up from the block: each sheave begins where the last part came to."""
    run = list(sheaves(parts))
    assert len(run) == parts
    for number, ((x, y), turn) in enumerate(run):
        assert (x - 0.5, x + 0.5) == (number, number + 1)
        assert (y, turn) == ((TOP, 1.0) if number % 2 == 0 else (BLOCK, -1.0))
    # Common practice: made fast at the head for an even number of parts, at the block for an odd.
    assert dead_end(parts) == (parts, TOP if parts % 2 == 0 else BLOCK)
    # The last sheave and the dead end are at the two ends of the last part.
    assert run[-1][0][1] != dead_end(parts)[1]


def test_the_lead_line_touches_drum_and_sheave():
    """Square to both radii at its ends."""
    one, two = np.array([-3.0, 2.0]), np.array([0.5, 9.0])
    start, end = tangent(one, 1.3, two, 0.5)
    assert np.hypot(*(start - one)) == pytest.approx(1.3)
    assert np.hypot(*(end - two)) == pytest.approx(0.5)
    for radius in (start - one, end - two):
        assert radius @ (end - start) == pytest.approx(0.0, abs=1e-12)


@pytest.mark.parametrize("units", ["metric", "us"])
def test_the_tackle_says_pull_dead_end_load_and_rope_left(found, units):
    ax = Figure().add_subplot()
    draw_tackle(ax, tackle_of(found, units=units))
    said = " ".join(text.get_text() for text in ax.texts)
    assert show(found.line_pull, "force", units) in said
    assert show(found.line_pull * 0.98**found.parts, "force", units) in said
    assert show(found.rope.left, "length", units) in said
    numbered = [text.get_text() for text in ax.texts if text.get_text().isdigit()]
    assert numbered == [str(n) for n in range(1, found.parts + 1)]


def test_the_bar_of_the_rope_is_all_of_it(found):
    ax = Figure().add_subplot()
    draw_rope(ax, found)
    bars = [p for p in ax.patches if isinstance(p, Rectangle) and p.get_y() == pytest.approx(0.80)]
    assert sum(bar.get_width() for bar in bars) == pytest.approx(260.0)
    assert [bar.get_width() for bar in bars][:2] == pytest.approx(
        [found.rope.lead, found.rope.falls]
    )


@pytest.mark.parametrize("units", ["metric", "us"])
def test_the_stair_falls_and_this_boom_is_on_it(found, units):
    ax = Figure().add_subplot()
    draw_stair(ax, found, units=units)
    stair, mark = ax.lines
    assert np.all(np.diff(stair.get_ydata()) <= 0)
    at = float(mark.get_xdata()[0])
    before = np.flatnonzero(np.asarray(stair.get_xdata()) <= at)[-1]
    assert stair.get_ydata()[before] == mark.get_ydata()[0] == found.parts


@pytest.mark.parametrize("parts", [1, 2, 3, 12])
def test_no_word_of_the_tackle_runs_into_the_other_panels_or_off_the_page(setup, parts):
    from boomsim.figures.reeving.reeving_figure import LEFT

    rigged = set_up(setup.machine, rigging=Rigging(parts=parts))
    figure = figure_of_reeving(reeve(rigged, extension=np.zeros(4)))
    figure.canvas.draw()
    tackle, right = figure.axes[0], 0.004 + LEFT + 0.006
    for text in tackle.texts:
        box = text.get_window_extent()
        assert box.x0 >= 0.0
        assert box.x1 / figure.dpi * 0.0254 <= right, text.get_text()
    assert caution_of(figure)


def test_a_machine_that_does_not_say_how_long_its_rope_is_says_so():
    from boomsim.machine.machine_files import load_machine

    found = reeve(set_up(load_machine("bench")), extension=np.array([0.5, 0.5]))
    figure = figure_of_reeving(found)
    said = " ".join(" ".join(text.get_text() for text in figure.texts).split())
    assert "does not say how long its rope is" in said
    assert len(figure.axes) == 1
