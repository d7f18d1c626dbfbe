"""The cells of a chart page: tint, hairlines, figures and the bold line."""

from collections.abc import Iterator

import numpy as np

from boomsim.figures.charts.cell_text import code
from boomsim.figures.charts.chart_columns import head_marks, radius_marks
from boomsim.figures.charts.chart_layout import Grid
from boomsim.figures.charts.chart_sizes_and_tints import BOLD, BREAKS, DASH, SECOND, TINT
from boomsim.figures.charts.configuration_bars import change_mark
from boomsim.figures.charts.page_marks import Fill, Mark, Place, Stroke, Words, box
from boomsim.figures.charts.typeface import width_of
from boomsim.figures.colours_and_lines import FAINT, INK, LOAD, QUIET
from boomsim.rating.charts.blank_cells import REASONS
from boomsim.rating.charts.bold_line import Edge, bold_edges, paths
from boomsim.rating.charts.column_changes import first_rows
from boomsim.rating.charts.load_chart import Chart
from boomsim.rating.overload.overload_map import OverloadMap
from boomsim.rating.strategies import EQUAL_LENGTH


def grid_marks(grid: Grid) -> Iterator[Mark]:
    """Draw all of a grid."""
    if grid.look.shading:
        yield from _tints(grid, grid.chart.structural, TINT)
    if grid.raised is not None:
        yield from _tints(grid, grid.raised.breaks_first, BREAKS)
    yield from _hairlines(grid)
    yield from head_marks(grid)
    yield from radius_marks(grid)
    yield from _figures(grid)
    if grid.look.bold_line:
        yield from _bold_line(grid)
    if grid.raised is not None:
        # On top, thinner: where the two lines run along one edge both are seen.
        yield from _second_line(grid, grid.raised)


def _spans(flags: np.ndarray) -> Iterator[tuple[int, int]]:
    """First and one past the last of each run of true flags."""
    first = -1
    for k, flag in enumerate([*flags.tolist(), False]):
        if flag and first < 0:
            first = k
        elif not flag and first >= 0:
            yield first, k
            first = -1


def _tints(grid: Grid, flags: np.ndarray, colour: str) -> Iterator[Mark]:
    chart = grid.chart
    for r in range(len(chart.radii)):
        for a, b in _spans(flags[r]):
            place = box(
                grid.left + a * grid.column,
                grid.top + r * grid.row,
                (b - a) * grid.column,
                # Neighbouring tints overlap a little: viewers draw a white seam between them.
                grid.row + (0.05 if r + 1 < len(chart.radii) else 0.0),
            )
            yield Fill(points=place, colour=colour)


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
    # Stronger where the boom length changes, if several columns are of one length.
    apart = np.abs(np.diff(grid.chart.length)) > EQUAL_LENGTH
    grouped = not grid.chart.is_best and not np.all(apart)
    for c in range(columns + 1):
        beside = np.zeros(rows, dtype=bool)
        beside |= rated[:, c - 1] if c > 0 else False
        beside |= rated[:, c] if c < columns else False
        strong = grouped and 0 < c < columns and bool(apart[c - 1])
        for a, b in _spans(beside):
            x = grid.left + c * grid.column
            ends = ((x, grid.top + a * grid.row), (x, grid.top + b * grid.row))
            width, colour = (0.6, QUIET) if strong else (0.25, FAINT)
            yield Stroke(points=ends, width=width, colour=colour)


def _figures(grid: Grid) -> Iterator[Mark]:
    chart, numbers, size, small = grid.chart, grid.numbers, grid.size, grid.small
    widest = width_of(numbers.capacity(int(chart.steps.max())), size=size)
    codes = [code(limit) if grid.look.codes else "" for limit in chart.limits]
    beside = width_of("p0", size=small) + 0.5
    sign = width_of("A", size=small) + 0.5 if chart.is_best else 0.0
    # Plain lists: a chart has a thousand cells, and one number of an array is slow to take out.
    steps, governing = chart.steps.tolist(), chart.governing.tolist()
    sketch = (~chart.within_range).tolist()
    bases = [grid.base(r) for r in range(len(chart.radii))]
    for c in range(len(chart.length)):
        left = grid.left + c * grid.column
        # The figures end where sign, widest figure and code lie in the middle of the cell.
        end = left + (grid.column + sign + widest - beside) / 2
        for r, base in enumerate(bases):
            if governing[r][c] < 0:
                why = REASONS[chart.blank[r, c]].sign
                if why:
                    yield Words(left + grid.column / 2, base, why, size, "center", False, QUIET)
                continue
            text = numbers.capacity(steps[r][c])
            text = f"~{text}" if sketch[r][c] else text
            yield Words(end, base, text, size, "right", False, INK)
            if codes[governing[r][c]]:
                yield Words(end + 0.5, base, codes[governing[r][c]], small, "left", False, QUIET)
        for r in _changes(chart, c):
            yield change_mark(left + 0.5, grid.top + (r + 0.5) * grid.row, size)


def _changes(chart: Chart, column: int) -> list[int]:
    """Rows in which a column passes to another configuration."""
    every = sorted(r for rows in first_rows(chart, column).values() for r in rows)
    return every[1:]


def _bold_line(grid: Grid) -> Iterator[Mark]:
    for places in _along(grid, bold_edges(grid.chart)):
        yield Stroke(points=places, width=BOLD, colour=INK)


def _second_line(grid: Grid, raised: OverloadMap) -> Iterator[Mark]:
    for places in _along(grid, raised.meeting):
        yield Stroke(points=places, width=SECOND, colour=LOAD, dash=DASH)


def _along(grid: Grid, edges: frozenset[Edge]) -> Iterator[list[Place]]:
    """Lines along the edges of cells."""
    for path in paths(edges):
        yield [(grid.left + c * grid.column, grid.top + r * grid.row) for r, c in path]
