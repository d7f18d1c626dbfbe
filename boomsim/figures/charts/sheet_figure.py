"""A sheet as a matplotlib figure: for PNG files and for notebooks."""

from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.lines import Line2D
from matplotlib.patches import Polygon

from boomsim.figures.charts.page_marks import INCH, Fill, Sheet, Stroke, Words
from boomsim.figures.charts.typeface import FAMILY
from boomsim.figures.colours_and_lines import PAPER, type_of
from boomsim.figures.figure_page import DOTS


def figure_of_sheet(sheet: Sheet) -> Figure:
    """Draw a sheet.

    Returns
    -------
    Figure
        As large as the sheet
    """
    size = (sheet.width / INCH, sheet.height / INCH)
    figure = Figure(figsize=size, dpi=DOTS, facecolor=PAPER)
    FigureCanvasAgg(figure)
    ax = figure.add_axes((0.0, 0.0, 1.0, 1.0))
    ax.set_axis_off()
    ax.set_xlim(0.0, sheet.width)
    ax.set_ylim(sheet.height, 0.0)
    for order, mark in enumerate(sheet.marks):
        if isinstance(mark, Words):
            style = type_of(mark.size, colour=mark.colour, bold=mark.bold) | {"fontfamily": FAMILY}
            ax.text(
                mark.x, mark.y, mark.text, ha=mark.align, va="baseline", zorder=3 + order, **style
            )
        elif isinstance(mark, Fill):
            shape = Polygon(mark.points, facecolor=mark.colour, linewidth=0.0, zorder=3 + order)
            ax.add_patch(shape)
        elif isinstance(mark, Stroke):
            ax.add_line(_line(mark, zorder=3 + order))
    return figure


def _line(mark: Stroke, *, zorder: float) -> Line2D:
    x, y = zip(*mark.points, strict=True)
    line = Line2D(
        x, y, color=mark.colour, linewidth=mark.width, solid_joinstyle="miter",
        solid_capstyle="butt", zorder=zorder,
    )  # fmt: skip
    if mark.dash:
        line.set_dashes([d / INCH * 72.0 / mark.width for d in mark.dash])
    return line
