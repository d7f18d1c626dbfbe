"""Cells of a load chart, a row for each configuration, with the bold line."""

from collections.abc import Callable, Sequence

import numpy as np

from boomsim.figures.svg_elements import point_list
from boomsim.lab.solve.capacity_curve import BETWEEN, Curve
from boomsim.lab.views.svg_text import Box, rect, text
from boomsim.units import Display

Place = Callable[[float], float]
"""From a radius [m] to a place [px]."""


def cells(
    named: Sequence[tuple[str, Curve]],
    place: Place,
    plot: Box,
    *,
    mass: Display,
    length: Display,
    large: float,
    framed: int,
) -> list[str]:
    """Draw the rows under a plot, each cell under its radius.

    Parameters
    ----------
    named : sequence of (str, Curve)
        One configuration each; the first is the present one
    place : callable
        From a radius [m] to a place [px]
    large : float
        Type scale [1]
    framed : int
        Cell that is framed in the first row; -1 is none

    Returns
    -------
    list of str
        SVG
    """
    high, top = 17.0 * large, plot.bottom + 17 * large
    parts = _heads(named[0][1], place, plot.bottom + 13 * large, length)
    for row, (name, one) in enumerate(named):
        y = top + row * high
        radii, values = one.radius[::BETWEEN].tolist(), one.capacity[::BETWEEN].tolist()
        wide = place(radii[1]) - place(radii[0]) if len(radii) > 1 else 40.0
        mine = framed if row == 0 else -1
        parts.append(text(plot.x - 5, y + 12.5 * large, name, "s e b"))
        for k, (radius, value) in enumerate(zip(radii, values, strict=True)):
            if value == value:
                cell = Box(x=place(radius) - wide / 2, y=y, width=wide, height=high)
                parts += _cell(cell, value / mass.factor, large, framed=k == mine)
        tips = one.tips[::BETWEEN].tolist()
        parts.append(_bold_line(radii, values, tips, place, wide, y, high))
    return parts


def _heads(one: Curve, place: Place, y: float, length: Display) -> list[str]:
    return [
        text(place(radius), y, f"{radius / length.factor:g}", "s m num")
        for radius in one.radius[::BETWEEN].tolist()
    ]


def _cell(cell: Box, value: float, large: float, *, framed: bool) -> list[str]:
    words = short(value)
    size = "s" if 6.4 * large * len(words) < cell.width - 2 else "xs"
    kind = f"{size} m num solid b" if framed else f"{size} m num solid"
    parts = [
        rect(cell.x, cell.y, cell.width, cell.height, "trough"),
        text(cell.x + cell.width / 2, cell.y + 12.5 * large, words, kind),
    ]
    if framed:
        inner = cell.x + 1.5, cell.y + 1.5, cell.width - 3, cell.height - 3
        parts.append(rect(*inner, "mine", more=' data-part="cell"'))
    return parts


def near_column(one: Curve, radius: float) -> int:
    """Find the cell that a radius falls in.

    Parameters
    ----------
    radius : float
        [m]

    Returns
    -------
    int
        -1 if it is beyond the cells
    """
    radii = one.radius[::BETWEEN]
    far = np.abs(radii - radius)
    if len(radii) < 2 or not far.min() <= 0.5001 * (radii[1] - radii[0]):
        return -1
    return int(far.argmin())


def _bold_line(
    radii: list[float],
    values: list[float],
    tips: list[bool],
    place: Place,
    wide: float,
    y: float,
    high: float,
) -> str:
    """Under the cells that strength governs, up, and over those that stability governs."""
    known = [k for k, value in enumerate(values) if value == value]
    points: list[tuple[float, float]] = []
    for k in known:
        level, x = (y if tips[k] else y + high), place(radii[k])
        points += [(x - wide / 2, level), (x + wide / 2, level)]
    drawn = point_list(points, ".1f")
    return f'<polyline class="heavy" data-part="bold-line" points="{drawn}"/>' if points else ""


def short(value: float) -> str:
    """Write three figures for a narrow cell.

    Parameters
    ----------
    value : float
        Any unit
    """
    if value >= 99.95:
        return f"{float(f'{value:.3g}'):,.0f}"
    return f"{value:.1f}" if value >= 9.995 else f"{value:.2f}"
