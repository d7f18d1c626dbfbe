"""Bars in a table: one row for each effect or part, one column for each place on the chart."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from typing import Any

import numpy as np
from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.patches import Rectangle

from boomsim.figures.colours_and_lines import FAMILIES, INK, PAPER, QUIET, SMALL, type_of
from boomsim.figures.text_width import text_width
from boomsim.mechanics.geometry import Array

THICK = 0.56
"""Of a bar, over the distance of the rows [1]."""

GAP = 0.0022
"""Between a bar and its words, and beyond them [m]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class BarTable:
    """Artists of a table of bars.

    Attributes
    ----------
    axes : tuple of Axes
        One for each column
    bars : list of list of Rectangle
        By column, then row
    others : list of Artist
        Words
    """

    axes: tuple[Axes, ...]
    bars: list[list[Rectangle]] = field(default_factory=list)
    others: list[Artist] = field(default_factory=list)


def draw_bars(
    axes: Sequence[Axes],
    values: Array,
    *,
    rows: Sequence[str],
    structural: np.ndarray,
    write: Callable[[int, int], str],
    width: float,
) -> BarTable:
    """Draw a table of bars; columns share one scale.

    Parameters
    ----------
    axes : sequence of Axes
        One for each column, with room for the rows' words to the left of the first
    values : ndarray, shape (rows, columns)
        Losses point left, gains right; NaN draws no bar [1]
    structural : ndarray of bool, shape (rows, columns)
        True draws the hatch of strength, else the black of stability
    write : callable
        Words beside a bar, by row and column
    width : float
        Of a column on paper, in which bars and words must fit [m]
    """
    table = BarTable(axes=tuple(axes))
    update_bars(table, values, rows=rows, structural=structural, write=write, width=width)
    return table


def update_bars(
    table: BarTable,
    values: Array,
    *,
    rows: Sequence[str],
    structural: np.ndarray,
    write: Callable[[int, int], str],
    width: float,
) -> None:
    """Show other values; see :func:`draw_bars`.

    Parameters
    ----------
    values : ndarray, shape (rows, columns)
    structural : ndarray of bool, shape (rows, columns)
    width : float
        [m]
    """
    for bar in [bar for column in table.bars for bar in column]:
        bar.remove()
    for old in table.others:
        old.remove()
    table.bars.clear()
    table.others.clear()
    limits = _limits(values, write, width)
    for k, ax in enumerate(table.axes):
        ax.set_axis_off()
        ax.set_xlim(*limits)
        ax.set_ylim(len(rows) - 0.4, -0.6)
        table.others.append(ax.axvline(0.0, color=QUIET, linewidth=0.7, zorder=2.0))
        own = []
        for row in range(len(rows)):
            own.append(_bar(ax, row, float(values[row, k]), bool(structural[row, k])))
            table.others.append(_words(ax, row, float(values[row, k]), write(row, k)))
        table.bars.append(own)
    _name_rows(table, rows)


def _limits(values: Array, write: Callable[[int, int], str], width: float) -> tuple[float, float]:
    """Range of a column that leaves room for the words beyond the bars' ends, on either side."""
    low, high = min(float(np.nanmin(values)), 0.0), max(float(np.nanmax(values)), 0.0)
    rows, columns = np.indices(values.shape)
    places = zip(rows.ravel().tolist(), columns.ravel().tolist(), strict=True)
    wide = np.array([text_width(write(r, c), size=SMALL) for r, c in places]).reshape(values.shape)
    before = wide[values < 0.0].max(initial=0.0) + (GAP if (values < 0.0).any() else 0.0)
    beyond = wide[~(values < 0.0)].max(initial=0.0) + GAP
    scale = max(high - low, 1e-9) / max(width - before - beyond, 0.15 * width)
    return low - scale * before, high + scale * beyond


def _bar(ax: Axes, row: int, value: float, structural: bool) -> Rectangle:
    family = FAMILIES["structural" if structural else "stability"]
    look: dict[str, Any] = {"facecolor": PAPER if structural else INK, "hatch": family.hatch}
    length = value if np.isfinite(value) else 0.0
    bar = Rectangle((0.0, row - THICK / 2), length, THICK, edgecolor=INK, linewidth=0.7, **look)
    bar.set_zorder(3.0)
    ax.add_patch(bar)
    return bar


def _words(ax: Axes, row: int, value: float, words: str) -> Artist:
    left = value < 0.0
    return ax.annotate(
        words, (value if np.isfinite(value) else 0.0, row), (-3.5 if left else 3.5, 0.0),
        textcoords="offset points", ha="right" if left else "left", va="center",
        annotation_clip=False, **type_of(SMALL),
    )  # fmt: skip


def _name_rows(table: BarTable, rows: Sequence[str]) -> None:
    first = table.axes[0]
    for row, words in enumerate(rows):
        made = first.annotate(
            words, (0.0, row), (-6.0, 0.0), xycoords=("axes fraction", "data"),
            textcoords="offset points", ha="right", va="center", annotation_clip=False,
            **type_of(SMALL),
        )  # fmt: skip
        table.others.append(made)
