"""The list under a chart of best ways: what each column uses from which radius on, as bars."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from boomsim.figures.charts.cell_text import lowest_angle, percents
from boomsim.figures.charts.chart_layout import CAP, Grid
from boomsim.figures.charts.page_marks import POINT, Fill, Mark, Place, Stroke, Words, box
from boomsim.figures.charts.typeface import width_of
from boomsim.figures.colours_and_lines import INK, MIDDLE, QUIET
from boomsim.mechanics.geometry import Array
from boomsim.rating.charts.column_changes import first_rows
from boomsim.rating.charts.load_chart import Chart

ALL_OUT, PARTLY_OUT = INK, MIDDLE
"""Colours of sections."""

GAP = 0.5
"""Between radius, bars, percents and angle, and round a column [mm]."""

NARROWEST, LEAST = 5.0, 5.5
"""Bars [mm], and type of the percents beside them [pt]."""


def most_ways(chart: Chart) -> int:
    """Largest number of ways to extend that one column uses."""
    return max(len(first_rows(chart, c)) for c in range(len(chart.length)))


def ways_marks(grid: Grid, *, top: float, row: float) -> Iterator[Mark]:
    """List under each column the ways to extend that it uses.

    Parameters
    ----------
    grid : Grid
        Of a chart of best configurations
    top, row : float
        Of the list and between its rows [mm]
    """
    made = _List(grid, row)
    for c in range(len(grid.chart.length)):
        left = grid.left + c * grid.column + GAP
        for k, (way, starts) in enumerate(first_rows(grid.chart, c).items()):
            yield from made.block(way, starts, left=left, top=top + k * row)
    base = made.base(top)
    words = f"from, {grid.numbers.length}"
    for x, align in ((grid.left - 1.4, "right"), (grid.right + 1.4, "left")):
        yield Words(x, base, words, made.size, align=align, colour=QUIET)


@dataclass(frozen=True, eq=False)
class _List:
    """Measures that all blocks of one list share."""

    grid: Grid
    row: float

    @cached_property
    def size(self) -> float:
        """Size of type [pt]."""
        return min(1.05 * self.grid.small, self.row / (1.3 * POINT))

    @cached_property
    def used(self) -> dict[int, str]:
        """Lowest boom angle of each way that is used."""
        used = np.unique(self.grid.chart.used[self.grid.chart.rated])
        return {int(way): lowest_angle(self.grid.chart, int(way)) for way in used}

    @cached_property
    def radius(self) -> float:
        """Width of the widest radius alone [mm]."""
        numbers = self.grid.numbers
        texts = [numbers.radius(float(r)) for r in self.grid.chart.radii]
        return max(width_of(text, size=self.size) for text in texts)

    @cached_property
    def angle(self) -> float:
        """Room for the angles behind the bars [mm]."""
        wide = max(width_of(text, size=self.size) for text in self.used.values())
        return wide + GAP if wide else 0.0

    @cached_property
    def percents(self) -> float:
        """Size of the percents behind the bars; 0 where they would crowd these out [pt]."""
        texts = [percents(self._extension(way)) for way in self.used]
        room = self.grid.column - 4 * GAP - self.radius - self.angle - NARROWEST
        fit = min(self.size, room / max(width_of(text, size=1.0) for text in texts))
        return fit if fit >= LEAST else 0.0

    def _extension(self, way: int) -> Array:
        return np.asarray(self.grid.chart.configurations.extension[way])

    def base(self, top: float) -> float:
        """Base line of a block [mm]."""
        return top + self.row / 2 + CAP * self.size * POINT / 2

    def block(self, way: int, starts: list[int], *, left: float, top: float) -> Iterator[Mark]:
        """Draw from which radii on a way is used, its sections, and how low it may come."""
        radii = [self.grid.numbers.radius(float(self.grid.chart.radii[r])) for r in starts]
        text = ", ".join(radii)
        wide = max(width_of(text, size=self.size), self.radius)
        base = self.base(top)
        yield Words(left + wide, base, text, self.size, align="right")
        right = left + self.grid.column - 2 * GAP
        bars = left + wide + GAP, right - self.angle
        if self.percents:
            bars = bars[0], bars[0] + NARROWEST
            yield Words(bars[1] + GAP, base, percents(self._extension(way)), self.percents)
        yield from bar_marks(self._extension(way), ends=bars, top=top, height=self.row)
        if self.used[way]:
            yield Words(right, base, self.used[way], self.size, align="right")


def bar_marks(extension: Array, *, ends: Place, top: float, height: float) -> Iterator[Mark]:
    """Draw a bar for each moving section, the largest at the top.

    Parameters
    ----------
    extension : ndarray, shape (moving sections,)
        [1]
    ends : (float, float)
        Left and right end of a section that is all out [mm]
    top, height : float
        [mm]
    """
    each = 0.84 * height / len(extension)
    first, width = top + 0.08 * height, ends[1] - ends[0]
    for k, out in enumerate(extension.tolist()):
        frame = box(ends[0], first + k * each, width, each)
        if out > 0.0:
            # What is all out is darker: nine tenths of a short bar look like all of it.
            colour = ALL_OUT if out >= 1.0 else PARTLY_OUT
            yield Fill(points=box(ends[0], first + k * each, width * out, each), colour=colour)
        yield Stroke(points=[*frame, frame[0]], width=0.2, colour=QUIET)


def change_mark(left: float, middle: float, size: float) -> Fill:
    """Draw the sign of a row from which on a column uses another way.

    Parameters
    ----------
    left, middle : float
        Of the sign [mm]
    size : float
        Of the type beside it [pt]

    Returns
    -------
    Fill
        A triangle that points to the right
    """
    half = 0.3 * size * POINT
    points = [(left, middle - half), (left + 1.5 * half, middle), (left, middle + half)]
    return Fill(points=points, colour=INK)
