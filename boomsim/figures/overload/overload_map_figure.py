"""Map over a chart of whether it would tip first, or break first."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.lines import Line2D
from matplotlib.patches import Rectangle

from boomsim.figures.charts.cell_text import numbers_of
from boomsim.figures.colours_and_lines import (
    FAINT,
    INK,
    LOAD,
    MIDDLE,
    PAPER,
    QUIET,
    SMALL,
    STEEL,
    WHEEL,
    ink_on,
    type_of,
)
from boomsim.figures.figure_page import Page, new_page
from boomsim.figures.setup_words import allowance_words, machine_words, setup_words
from boomsim.figures.text_width import INCH, POINT, text_width
from boomsim.rating.charts.bold_line import Edge, paths
from boomsim.rating.charts.reading_sentences import which_chart
from boomsim.rating.overload.overload_map import OverloadMap, ratio_words

WIDTH = 0.19
TALLEST, LONGEST = 0.0050, 0.212
"""Height of a row at most, and of all of them [m]."""

LABELS, HEADS, KEY = 0.0085, 0.0085, 0.019
"""Room for radii on each side, for boom lengths, and for the key [m]."""

SHADES: tuple[tuple[float, str, str], ...] = (
    (0.8, WHEEL, "breaks at less than 0.8 of the tipping load"),
    (1.0, MIDDLE, "breaks at 0.8 to 1.0 of the tipping load"),
    (1.275, STEEL, "tips first, and would break at 1.0 to 1.275 of that load"),
    (np.inf, PAPER, "tips well before it would break"),
)
"""Ratios below which a shade holds; 1.275 is 1.5 x 0.85, where the two rated margins meet."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class MapArtists:
    """Artists of a map.

    Attributes
    ----------
    cells : dict of (int, int) to Rectangle
        By row and column of the chart
    meeting, bold : list of Line2D
        Where failure meets tipping, and the chart's bold line
    """

    ax: Axes
    cells: dict[tuple[int, int], Rectangle]
    meeting: list[Line2D]
    bold: list[Line2D]


def figure_of_overload_map(found: OverloadMap, *, units: str = "metric") -> Figure:
    """Draw what would end it, all over a chart."""
    rows = len(found.chart.radii)
    height = rows * min(TALLEST, LONGEST / rows)
    page = new_page(
        width=WIDTH,
        height=height + HEADS + KEY + 0.030,
        title=f"{machine_words(found.chart.setup)}: does it tip first, or break first?",
        subtitle="load of the first structural failure over the tipping load, no margins, "
        f"nobody luffs; {which_chart(found.chart)}; {setup_words(found.chart.setup, units=units)}",
        foot=allowance_words(found.chart.setup.rule, units=units),
    )
    room = page.room
    ax = page.axes(
        left=LABELS,
        bottom=KEY,
        width=room[0] - 2 * LABELS,
        height=room[1] - KEY - HEADS,
    )
    draw_overload_map(ax, found, units=units)
    draw_map_key(page, page.axes(left=0.0, bottom=0.0, width=room[0], height=KEY - 0.003))
    return page.figure


def draw_overload_map(ax: Axes, found: OverloadMap, *, units: str = "metric") -> MapArtists:
    """Draw the cells with their ratios, and the two lines.

    Parameters
    ----------
    ax : Axes
        With room for radii on both sides and boom lengths above
    """
    rows, columns = found.ratio.shape
    ax.set_xlim(0.0, columns)
    ax.set_ylim(rows, 0.0)
    ax.set_axis_off()
    size = _figure_size(ax, rows, columns)
    cells = {}
    for row, column in zip(*np.nonzero(~np.isnan(found.ratio)), strict=True):
        ratio = float(found.ratio[row, column])
        cells[int(row), int(column)] = _cell(ax, int(row), int(column), ratio, size)
    _labels(ax, found, units, size)
    return MapArtists(
        ax=ax,
        cells=cells,
        meeting=_lines(ax, found.meeting, colour=PAPER, width=4.2)
        + _lines(ax, found.meeting, colour=LOAD, width=2.6),
        bold=_lines(ax, found.bold, colour=INK, width=1.0),
    )


def _figure_size(ax: Axes, rows: int, columns: int) -> float:
    """Size of type that fits a cell both ways [pt]."""
    figure = ax.get_figure(root=True)
    assert figure is not None
    place = ax.get_position()
    wide, high = figure.get_size_inches() * INCH
    column, row = place.width * wide / columns, place.height * high / rows
    return float(min(SMALL, 0.86 * column / text_width("1.28", size=1.0), 0.72 * row / POINT))


def shade_of(ratio: float) -> str:
    """Colour of a cell.

    Parameters
    ----------
    ratio : float
        First failure over tipping [1]
    """
    return next(colour for below, colour, _ in SHADES if ratio < below or below == np.inf)


def narrow_ratio(ratio: float) -> str:
    """Write a ratio into a narrow cell.

    Parameters
    ----------
    ratio : float
        [1]
    """
    said = ratio_words(ratio)
    return "0" if said == "0.00" else said.removeprefix("0")


def _cell(ax: Axes, row: int, column: int, ratio: float, size: float) -> Rectangle:
    colour = shade_of(ratio)
    look: dict[str, Any] = {"facecolor": colour, "edgecolor": FAINT, "linewidth": 0.3}
    made = Rectangle((column, row), 1.0, 1.0, clip_on=False, **look)
    ax.add_patch(made)
    style = type_of(size, colour=ink_on(colour))
    ax.text(column + 0.5, row + 0.53, narrow_ratio(ratio), ha="center", va="center", **style)
    return made


def _lines(ax: Axes, edges: frozenset[Edge], *, colour: str, width: float) -> list[Line2D]:
    made = []
    for path in paths(edges):
        y, x = zip(*path, strict=True)
        line = Line2D(
            x, y, color=colour, linewidth=width, solid_joinstyle="miter",
            solid_capstyle="butt", zorder=4.0 + width / 100.0, clip_on=False,
        )  # fmt: skip
        if colour == LOAD:
            line.set_zorder(4.5)
        made.append(ax.add_line(line))
    return made


def _labels(ax: Axes, found: OverloadMap, units: str, size: float) -> None:
    chart, columns = found.chart, found.ratio.shape[1]
    numbers = numbers_of(chart, units=units)
    small = min(SMALL, size * 1.05)
    write: Callable[..., object] = ax.annotate
    for row, value in enumerate(chart.radii):
        for x, step, side in ((0.0, -3.0, "right"), (columns, 3.0, "left")):
            write(
                numbers.radius(value), (x, row + 0.53), (step, 0.0), textcoords="offset points",
                ha=side, va="center", annotation_clip=False, **type_of(small, bold=True),
            )  # fmt: skip
    for column, value in enumerate(chart.length):
        write(
            numbers.boom(value), (column + 0.5, 0.0), (0.0, 2.5), textcoords="offset points",
            ha="center", va="bottom", annotation_clip=False, **type_of(small, bold=True),
        )  # fmt: skip
    note = f"radius down, boom length across, {numbers.length}"
    write(
        note, (0.0, 0.0), (0.0, 4.0 + 1.2 * small), textcoords="offset points", ha="left",
        va="bottom", annotation_clip=False, **type_of(SMALL, colour=QUIET),
    )  # fmt: skip


def draw_map_key(page: Page, ax: Axes) -> None:
    """Say what shades and lines mean.

    Parameters
    ----------
    ax : Axes
        As wide as the room of the page
    """
    width = page.room[0]
    ax.set_axis_off()
    ax.set_xlim(0.0, width)
    ax.set_ylim(3.0, 0.0)
    key: dict[str, Any] = {"edgecolor": QUIET, "linewidth": 0.4}
    for k, (_, colour, words) in enumerate(SHADES):
        left, row = (k % 2) * width / 2, k // 2
        ax.add_patch(Rectangle((left, row + 0.2), 0.006, 0.6, facecolor=colour, **key))
        ax.text(left + 0.0075, row + 0.5, words, ha="left", va="center", **type_of(SMALL))
    marks = (
        (LOAD, 2.6, "here failure and tipping meet: above it something breaks first"),
        (INK, 1.0, "bold line of the chart: stability sets what is below it"),
    )
    for k, (colour, thick, words) in enumerate(marks):
        left = k * width / 2
        ax.add_line(Line2D([left, left + 0.006], [2.5, 2.5], color=colour, linewidth=thick))
        ax.text(left + 0.0075, 2.5, words, ha="left", va="center", **type_of(SMALL))
