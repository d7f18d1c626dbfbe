"""The picture of the moves from pin to pin shows every section where it lies after each move."""

import numpy as np
import pytest
from matplotlib.figure import Figure

from boomsim.figures.colours_and_lines import QUIET
from boomsim.figures.figure_page import caution_of
from boomsim.figures.path.pins_figure import draw_pins, figure_of_pins
from boomsim.mechanics.geometry import layout
from boomsim.rating.path.pins_study import pin_sequence
from boomsim.units import display


@pytest.mark.parametrize("units", ["metric", "us"])
def test_each_row_is_the_boom_after_a_move_with_the_moved_section_dark(setup, units):
    machine = setup.machine
    ends = np.array([0, 0, 0.45, 0.45]), np.array([0.9, 0, 0, 1.0])
    found = pin_sequence(machine.boom, start=ends[0], end=ends[1])
    rows = draw_pins(Figure().add_subplot(), machine, found, units=units)
    metre = display("boom_length", units, like=found.longest).factor
    states = [found.start, *(np.array(move.extension) for move in found.moves)]
    moved = [None, *(move.section for move in found.moves)]
    assert len(rows) == len(states)
    dark = {tuple(round(255 * one) for one in (0x5D / 255, 0x63 / 255, 0x6C / 255))}
    assert QUIET == "#5d636c"
    for bars, state, section in zip(rows, states, moved, strict=True):
        placed = layout(machine.boom, extension=state)
        assert [bar.get_x() * metre for bar in bars] == pytest.approx(list(placed.tail[0]))
        fronts = [(bar.get_x() + bar.get_width()) * metre for bar in bars]
        assert fronts == pytest.approx(list(placed.front[0]))
        shades = [tuple(round(255 * one) for one in bar.get_facecolor()[:3]) for bar in bars]
        assert [shade in dark for shade in shades] == [k == section for k in range(len(bars))]


def test_the_picture_carries_the_caution(setup):
    found = pin_sequence(setup.machine.boom, start=np.zeros(4), end=np.full(4, 0.45))
    assert caution_of(figure_of_pins(setup.machine, found))
