"""Words over the marks of a load's way lie on no curve and off the page's head."""

import numpy as np
import pytest
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.lines import Line2D
from matplotlib.text import Text

from boomsim.figures.path.lowering_figure import figure_of_lowering
from boomsim.figures.path.telescoping_figure import figure_of_telescoping
from boomsim.machine.machine_files import load_machine
from boomsim.rating.path.lowering_study import lower
from boomsim.rating.path.telescoping_study import telescope
from boomsim.rating.setup import set_up

LOWERED = {
    "yard60": [((1.0, 1.0, 1.0, 1.0), 2e3), ((0.0, 0.0, 0.45, 0.45), 8e3), ((0.9,) * 4, 4e3)],
    "truck18": [((1.0, 1.0, 1.0), 1e3), ((0.5, 0.5, 0.5), 3e3)],
}
RUN_OUT = {"yard60": [4e3, 8e3, 12e3], "truck18": [1.5e3, 3e3]}


def words_lie_clear(figure) -> int:
    """How many words were compared with the curves of their panel."""
    FigureCanvasAgg(figure).draw()
    compared = 0
    for ax in figure.axes:
        marks = [t for t in ax.texts if "\n" in t.get_text()]
        curves = [
            line
            for line in ax.get_lines()
            if isinstance(line, Line2D) and len(line.get_xdata()) > 2
        ]
        for text in marks:
            # Of the words alone, without their leader.
            box = Text.get_window_extent(text)
            assert box.y1 <= ax.get_window_extent().y1 + 1.0
            for curve in curves:
                x, y = ax.transData.transform(np.column_stack(curve.get_data())).T
                along = np.linspace(box.x0, box.x1, 100)
                high = np.interp(along, x, y, left=np.nan, right=np.nan)
                assert not ((high > box.y0) & (high < box.y1)).any(), text.get_text()
                compared += 1
    return compared


@pytest.mark.parametrize("name", LOWERED)
def test_words_of_a_lowered_boom(name: str) -> None:
    setup = set_up(load_machine(name))
    ways = [lower(setup, extension=np.array(e), load=load) for e, load in LOWERED[name]]
    assert sum(words_lie_clear(figure_of_lowering(way)) for way in ways) >= len(ways)


@pytest.mark.parametrize("name", RUN_OUT)
def test_words_of_a_boom_run_out(name: str) -> None:
    setup = set_up(load_machine(name))
    nested = np.zeros(len(setup.machine.boom.sections) - 1)
    ways = [
        telescope(setup, extension=nested, load=load, angle=np.radians(60.0))
        for load in RUN_OUT[name]
    ]
    # Two lines each, and the least of the loads may be rated all the way.
    assert sum(words_lie_clear(figure_of_telescoping(way)) for way in ways) >= len(ways)
