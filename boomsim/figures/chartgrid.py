"""The grid of a chart page: radii, boom lengths, figures, tint, hairlines and the bold line."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from boomsim.figures.chartlook import BOLD, TINT, Look
from boomsim.figures.chartmarks import POINT, Fill, Mark, Stroke, Words, box
from boomsim.figures.charttext import Numbers, code, percent, way
from boomsim.figures.charttype import width_of
from boomsim.figures.styles import FAINT, INK, QUIET
from boomsim.rating.charts.boldline import bold_edges, paths
from boomsim.rating.charts.chart import Chart
from boomsim.rating.charts.runs import letters, runs

CAP = 0.676
"""Height of a figure [em]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Grid:
    """Where everything of a chart lies on its page.

    Attributes
    ----------
    chart : Chart
    numbers : Numbers
    look : Look
    left, top : float
        Of the first column's and the first row's cell [mm]
    column, row : float
        Width and height of a cell [mm]
    head : float
        Height of the column heads above the first row [mm]
    size : float
        Of the figures [pt]
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
    """Size of type with which the widest figure, its letter and its code fit a cell.

    Parameters
    ----------
    chart : Chart
    numbers : Numbers
    column, row : float
        [mm]

    Returns
    -------
    float
        [pt]
    """
    widest = width_of(numbers.capacity(int(chart.steps.max())), size=1.0)
    beside = 0.7 * (width_of("A", size=1.0) + width_of("p0", size=1.0))
    return float(min(10.0, (column - 2.0) / (widest + beside), row / (1.3 * POINT)))


def grid_marks(grid: Grid) -> Iterator[Mark]:
    """Draw all of a grid.

    Parameters
    ----------
    grid : Grid

    Yields
    ------
    Mark
    """
    if grid.look.shading:
        yield from _tints(grid)
    yield from _hairlines(grid)
    yield from _heads(grid)
    yield from _radii(grid)
    yield from _figures(grid)
    if grid.look.bold_line:
        yield from _bold_line(grid)


def _spans(flags: np.ndarray) -> Iterator[tuple[int, int]]:
    """First and one past the last of each run of true flags."""
    first = -1
    for k, flag in enumerate([*flags.tolist(), False]):
        if flag and first < 0:
            first = k
        elif not flag and first >= 0:
            yield first, k
            first = -1


def _tints(grid: Grid) -> Iterator[Mark]:
    chart = grid.chart
    for r in range(len(chart.radii)):
        for a, b in _spans(chart.structural[r]):
            place = box(
                grid.left + a * grid.column,
                grid.top + r * grid.row,
                (b - a) * grid.column,
                # Neighbouring tints overlap a little: viewers draw a white seam between them.
                grid.row + (0.05 if r + 1 < len(chart.radii) else 0.0),
            )
            yield Fill(points=place, colour=TINT)


def _hairlines(grid: Grid) -> Iterator[Mark]:
    """Lines round rated cells only, so that the chart shows the shape of what the boom reaches."""
    rated = grid.chart.rated
    rows, columns = rated.shape
    for r in range(rows + 1):
        beside = np.zeros(columns, dtype=bool)
        beside |= rated[r - 1] if r > 0 else False
        beside |= rated[r] if r < rows else False
        for a, b in _spans(beside):
            y = grid.top + r * grid.row
            ends = ((grid.left + a * grid.column, y), (grid.left + b * grid.column, y))
            yield Stroke(points=ends, width=0.25, colour=FAINT)
    lengths = grid.chart.length
    for c in range(columns + 1):
        beside = np.zeros(rows, dtype=bool)
        beside |= rated[:, c - 1] if c > 0 else False
        beside |= rated[:, c] if c < columns else False
        step = 0 < c < columns and abs(lengths[c] - lengths[c - 1]) > 0.1
        strong = step and not grid.chart.is_best
        for a, b in _spans(beside):
            x = grid.left + c * grid.column
            ends = ((x, grid.top + a * grid.row), (x, grid.top + b * grid.row))
            width, colour = (0.6, QUIET) if strong else (0.25, FAINT)
            yield Stroke(points=ends, width=width, colour=colour)


def _heads(grid: Grid) -> Iterator[Mark]:
    """Write the boom length over each column, and how far its sections are out."""
    chart, size = grid.chart, grid.size
    stated = not chart.is_best
    boom = chart.setup.machine.boom
    top = grid.top - grid.head
    for c, length in enumerate(chart.length):
        middle = grid.left + (c + 0.5) * grid.column
        base = top + 1.35 * size * POINT
        text = grid.numbers.boom(float(length))
        yield Words(middle, base, text, size, align="center", bold=True)
        if not stated:
            continue
        extension = chart.configurations.extension[chart.choices[c][0]]
        each = _bar(grid)
        for k, fraction in enumerate(extension):
            yield from _out(grid, c, base + 0.9 + k * each, each, float(fraction))
    side = grid.small
    for x, align in ((grid.left - 1.4, "right"), (grid.right + 1.4, "left")):
        base = top + 1.35 * size * POINT
        yield Words(x, base, f"boom, {grid.numbers.length}", side, align=align, colour=QUIET)
        if stated:
            each = _bar(grid)
            for k in range(len(boom.sections) - 1):
                low = base + 0.9 + (k + 0.5) * each + CAP * side * POINT / 2
                yield Words(x, low, f"section {k + 1}", side, align=align, colour=QUIET)


def _bar(grid: Grid) -> float:
    """Height of the bar of one section in a column head [mm]."""
    moving = len(grid.chart.setup.machine.boom.sections) - 1
    label = 1.5 * grid.small * POINT
    return (grid.head - 1.35 * grid.size * POINT - 0.9 - label) / moving


def _out(grid: Grid, column: int, top: float, height: float, fraction: float) -> Iterator[Mark]:
    """Draw a bar for how far one section is out, with the percents on it."""
    left, width = grid.left + column * grid.column + 0.5, grid.column - 1.0
    size = min(grid.small, 0.8 * height / POINT)
    if fraction > 0.0:
        yield Fill(points=box(left, top + 0.2, width * fraction, height - 0.4), colour=FAINT)
    base = top + height / 2 + CAP * size * POINT / 2
    colour = INK if fraction > 0.0 else QUIET
    yield Words(left + width / 2, base, percent(fraction), size, align="center", colour=colour)


def _radii(grid: Grid) -> Iterator[Mark]:
    for r, radius in enumerate(grid.chart.radii):
        text = grid.numbers.radius(float(radius))
        base = grid.base(r)
        yield Words(grid.left - 1.4, base, text, grid.size, align="right", bold=True)
        yield Words(grid.right + 1.4, base, text, grid.size, align="left", bold=True)
    base = grid.top - 0.7
    words = f"radius, {grid.numbers.length}"
    yield Words(grid.left - 1.4, base, words, grid.small, align="right", colour=QUIET)
    yield Words(grid.right + 1.4, base, words, grid.small, colour=QUIET)


def _figures(grid: Grid) -> Iterator[Mark]:
    chart, numbers, size, small = grid.chart, grid.numbers, grid.size, grid.small
    widest = width_of(numbers.capacity(int(chart.steps.max())), size=size)
    codes = [code(limit) if grid.look.codes else "" for limit in chart.limits]
    beside = width_of("p0", size=small) + 0.5
    letter = width_of("A", size=small) + 0.5 if chart.is_best else 0.0
    # Plain lists: a chart has a thousand cells, and one number of an array is slow to take out.
    steps, governing = chart.steps.tolist(), chart.governing.tolist()
    sketch = (~chart.within_range).tolist()
    inks = np.where(chart.exact < rigging_of(chart), QUIET, INK).tolist()
    bases = [grid.base(r) for r in range(len(chart.radii))]
    for c in range(len(chart.length)):
        left = grid.left + c * grid.column
        # The figures end where letter, widest figure and code lie in the middle of the cell.
        end = left + (grid.column + letter + widest - beside) / 2
        for r, base in enumerate(bases):
            if governing[r][c] < 0:
                continue
            text = numbers.capacity(steps[r][c])
            text = f"~{text}" if sketch[r][c] else text
            yield Words(end, base, text, size, "right", False, inks[r][c])
            if codes[governing[r][c]] and steps[r][c]:
                yield Words(end + 0.5, base, codes[governing[r][c]], small, "left", False, QUIET)
        for r, name in _starts(chart, c).items():
            yield Words(left + 0.5, bases[r], name, small, bold=True, colour=QUIET)


def rigging_of(chart: Chart) -> float:
    """Mass of hook block and slings, which every gross load holds [kg]."""
    return chart.setup.machine.hook_block + chart.setup.machine.slings


def _starts(chart: Chart, column: int) -> dict[int, str]:
    """Rows in which a column passes to another configuration, with its letter."""
    named = letters(chart, column)
    if len(named) < 2:
        return {}
    return {run.first: named[run.configuration] for run in runs(chart, column)}


def _bold_line(grid: Grid) -> Iterator[Mark]:
    for path in paths(bold_edges(grid.chart)):
        places = [(grid.left + c * grid.column, grid.top + r * grid.row) for r, c in path]
        yield Stroke(points=places, width=BOLD, colour=INK)


def ways_marks(grid: Grid, *, top: float, row: float) -> Iterator[Mark]:
    """List under each column the ways to extend that it uses.

    Parameters
    ----------
    grid : Grid
        Of a chart of best configurations
    top, row : float
        Of the list and between its rows [mm]

    Yields
    ------
    Mark
    """
    chart, boom = grid.chart, grid.chart.setup.machine.boom
    named = [letters(chart, c) for c in range(len(chart.length))]
    size = min(grid.small * 1.05, row / (1.3 * POINT))
    for c, found in enumerate(named):
        for k, configuration in enumerate(found):
            text = way(boom, chart.configurations.extension[configuration])
            room = grid.column - 1.0
            fit = min(size, room / width_of(text, size=1.0))
            middle = grid.left + (c + 0.5) * grid.column
            yield Words(middle, top + (k + 0.75) * row, text, fit, align="center")
    for k in range(max(map(len, named))):
        base = top + (k + 0.75) * row
        for x, align in ((grid.left - 1.4, "right"), (grid.right + 1.4, "left")):
            letter = chr(ord("A") + k)
            yield Words(x, base, letter, size, align=align, bold=True, colour=QUIET)


def most_ways(chart: Chart) -> int:
    """Largest number of ways to extend that one column uses."""
    return max(len(letters(chart, c)) for c in range(len(chart.length)))
