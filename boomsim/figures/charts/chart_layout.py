"""Where everything of a chart lies on its page."""

from dataclasses import dataclass

from boomsim.figures.charts.cell_text import Numbers
from boomsim.figures.charts.chart_sizes_and_tints import Look
from boomsim.figures.charts.page_marks import POINT
from boomsim.figures.charts.typeface import width_of
from boomsim.rating.charts.load_chart import Chart
from boomsim.rating.overload.overload_map import OverloadMap

CAP = 0.676
"""Height of a figure [em]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Grid:
    """Where everything of a chart lies on its page.

    Attributes
    ----------
    left, top : float
        Of the first column's and the first row's cell [mm]
    column, row : float
        Width and height of a cell [mm]
    head : float
        Height of the column heads above the first row [mm]
    size : float
        Of the figures [pt]
    raised : OverloadMap or None
        What comes first past the figures, where the second line is drawn
    """

    chart: Chart
    numbers: Numbers
    look: Look
    left: float
    top: float
    column: float
    row: float
    head: float
    size: float
    raised: OverloadMap | None = None

    @property
    def right(self) -> float:
        """Right end of the last column [mm]."""
        return self.left + self.column * len(self.chart.length)

    @property
    def bottom(self) -> float:
        """Lower end of the last row [mm]."""
        return self.top + self.row * len(self.chart.radii)

    @property
    def small(self) -> float:
        """Size of letters and codes beside the figures [pt]."""
        return 0.7 * self.size

    def base(self, row: int) -> float:
        """Find the base line of the figures of a row [mm]."""
        return self.top + (row + 0.5) * self.row + CAP * self.size * POINT / 2.0


def figure_size(chart: Chart, numbers: Numbers, *, column: float, row: float) -> float:
    """Size of type with which the widest figure, its letter and its code fit a cell [pt].

    Parameters
    ----------
    column, row : float
        [mm]
    """
    widest = width_of(numbers.capacity(int(chart.steps.max())), size=1.0)
    beside = 0.7 * (width_of("A", size=1.0) + width_of("p0", size=1.0))
    return float(min(10.0, (column - 2.0) / (widest + beside), row / (1.3 * POINT)))
