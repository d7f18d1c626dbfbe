"""A drawing for a handout: no title, no caution (the sheet has both)."""

from matplotlib.axes import Axes
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure

from boomsim.figures.colours_and_lines import PAPER
from boomsim.figures.figure_page import picture
from boomsim.figures.text_width import INCH

WIDTH, TALLEST = 0.178, 0.062
"""What lies between the margins of a sheet; the most that a side view may take of it [m]."""


def bare(height: float, *, width: float = WIDTH) -> Figure:
    """Start a figure with nothing on it.

    Parameters
    ----------
    height, width : float
        [m]
    """
    figure = Figure(figsize=(width / INCH, height / INCH), facecolor=PAPER)
    FigureCanvasAgg(figure)
    return figure


def axes_on(figure: Figure, *, left: float, bottom: float, width: float, height: float) -> Axes:
    """Place axes on paper, from the lower left corner [m]."""
    wide, high = (float(size) * INCH for size in figure.get_size_inches())
    return figure.add_axes((left / wide, bottom / high, width / wide, height / high))


def svg_of(figure: Figure) -> str:
    """Write a figure as SVG text: the same text for the same figure."""
    return picture(figure, kind="svg").decode()
