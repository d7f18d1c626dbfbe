"""What stands round the cells of a chart: boom lengths, ways to extend, radii."""

from collections.abc import Iterator

from boomsim.figures.charts.cell_text import FOOT, foot_lines, percent
from boomsim.figures.charts.chart_layout import CAP, Grid
from boomsim.figures.charts.chart_sizes_and_tints import LABEL, MARGIN
from boomsim.figures.charts.page_marks import POINT, Fill, Mark, Words, box
from boomsim.figures.charts.typeface import width_of
from boomsim.figures.colours_and_lines import FAINT, INK, QUIET


def head_marks(grid: Grid) -> Iterator[Mark]:
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


def radius_marks(grid: Grid) -> Iterator[Mark]:
    """Write the radii on either side of the rows."""
    for r, radius in enumerate(grid.chart.radii):
        text = grid.numbers.radius(float(radius))
        base = grid.base(r)
        yield Words(grid.left - 1.4, base, text, grid.size, align="right", bold=True)
        yield Words(grid.right + 1.4, base, text, grid.size, align="left", bold=True)
    base = grid.top - 0.7
    words = f"radius, {grid.numbers.length}"
    yield Words(grid.left - 1.4, base, words, grid.small, align="right", colour=QUIET)
    yield Words(grid.right + 1.4, base, words, grid.small, colour=QUIET)


def foot_marks(grid: Grid, *, top: float, row: float) -> Iterator[Mark]:
    """Write under each column what its boom is reeved in, and how low and far out it may come.

    Parameters
    ----------
    top, row : float
        Of the lines and between them [mm]
    """
    size = min(grid.small * 1.05, row / (1.3 * POINT))
    for k, (line, texts) in enumerate(foot_lines(grid.chart, grid.numbers)):
        name = f"{line}, {grid.numbers.length}" if line == FOOT[1] else line
        base = top + (k + 0.75) * row
        for c, text in enumerate(texts):
            middle = grid.left + (c + 0.5) * grid.column
            yield Words(middle, base, text, size, align="center", bold=line == FOOT[0])
        fit = min(size, (LABEL + MARGIN / 2 - 1.4) / width_of(name, size=1.0))
        for x, align in ((grid.left - 1.4, "right"), (grid.right + 1.4, "left")):
            yield Words(x, base, name, fit, align=align, colour=QUIET)
