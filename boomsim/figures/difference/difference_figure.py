"""Why one configuration carries more than another: the steps between their capacities, drawn."""

from dataclasses import dataclass, field

import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.lines import Line2D
from matplotlib.patches import Rectangle
from matplotlib.text import Text

from boomsim.figures.colours_and_lines import (
    AMBER,
    BODY,
    FAMILIES,
    INK,
    PAPER,
    SKY,
    SMALL,
    STEEL,
    type_of,
)
from boomsim.figures.difference.difference_steps import Step, steps_of, total_in_words
from boomsim.figures.figure_page import Page, new_page
from boomsim.figures.setup_words import allowance_words, machine_words, setup_words
from boomsim.figures.side.boom_shape import straight_boom
from boomsim.figures.side.side_view import GLYPH_ANGLE, draw_sideview, frame, limits
from boomsim.figures.unit_axes import display_of, quiet_axes
from boomsim.mechanics.geometry import Array
from boomsim.rating.comparison.difference_account import Difference
from boomsim.rating.setup import Setup
from boomsim.rating.strategies import label
from boomsim.units import Display, show

GAIN, COST = SKY, AMBER
"""Steps up and down; the sign before each number says the same."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Waterfall:
    """Artists of the steps.

    Attributes
    ----------
    bars : list of Rectangle
        One for each step
    links : list of Line2D
        From the end of each step to the start of the next, and marks of broken bars
    """

    ax: Axes
    units: str
    bars: list[Rectangle] = field(default_factory=list)
    links: list[Line2D] = field(default_factory=list)
    numbers: list[Text] = field(default_factory=list)
    names: list[Text] = field(default_factory=list)


def draw_difference(ax: Axes, steps: tuple[Step, ...], *, units: str = "metric") -> Waterfall:
    """Draw steps as rows from top to bottom.

    Parameters
    ----------
    steps : tuple of Step
        From :func:`steps_of`
    """
    artists = Waterfall(ax=ax, units=units)
    update_difference(artists, steps)
    return artists


def update_difference(artists: Waterfall, steps: tuple[Step, ...]) -> None:
    """Show other steps; see :func:`draw_difference`."""
    for kept in (artists.bars, artists.links, artists.numbers, artists.names):
        for old in kept:
            old.remove()
        kept.clear()
    ends = [end for step in steps for end in (step.start, step.end)]
    unit = display_of("mass", artists.units, ends)
    ax, start = artists.ax, _start(steps, unit.factor)
    span = max(ends) / unit.factor - start
    where = f", axis starts at {start:,.10g}" if start > 0.0 else ""
    quiet_axes(ax, x=f"gross load, {unit.symbol}{where}", y="", grid="x")
    ax.spines["left"].set_visible(start <= 0.0)
    ax.set_xlim(start, start + 1.17 * span)
    ax.set_ylim(len(steps) - 0.5, -0.5)
    ax.set_yticks([])
    for row, step in enumerate(steps):
        _draw_step(artists, step, row, unit, span)
        if step.kind == "rated" and start > 0.0:
            _break_bar(artists, row, start, span)
        if row + 1 < len(steps):
            level = step.end / unit.factor
            link = Line2D(
                [level, level], [row - 0.3, row + 1.3], color=INK, linewidth=0.5, zorder=2.0
            )
            ax.add_line(link)
            artists.links.append(link)


def _start(steps: tuple[Step, ...], factor: float) -> float:
    """Where the axis starts, in its own unit: at zero unless the steps were too small to see."""
    levels = [e / factor for s in steps if s.kind != "rated" for e in (s.start, s.end)]
    reach = max(levels, default=0.0) - min(levels, default=0.0)
    if not 0.0 < reach < 0.3 * max(levels, default=0.0):
        return min(0.0, *levels, 0.0)
    low, digit = min(levels) - 0.4 * reach, 10.0 ** np.floor(np.log10(reach))
    return float(max(np.floor(low / digit) * digit, 0.0))


def _break_bar(artists: Waterfall, row: int, start: float, span: float) -> None:
    """Two white strokes across a bar whose beginning is not shown."""
    for shift in (0.02, 0.032):
        at = start + shift * span
        stroke = Line2D(
            [at - 0.005 * span, at + 0.005 * span], [row + 0.42, row - 0.42],
            color=PAPER, linewidth=2.0, zorder=5.0,
        )  # fmt: skip
        artists.ax.add_line(stroke)
        artists.links.append(stroke)


def _draw_step(artists: Waterfall, step: Step, row: int, unit: Display, span: float) -> None:
    ax, left = artists.ax, min(step.start, step.end) / unit.factor
    rated = step.kind == "rated"
    colour = STEEL if rated else GAIN if step.value >= 0.0 else COST
    bar = Rectangle(
        (left, row - 0.3),
        abs(step.value) / unit.factor,
        0.6,
        facecolor=colour,
        edgecolor=INK,
        linewidth=0.9 if rated else 0.5,
        hatch=FAMILIES["structural"].hatch if step.kind == "strength" else "",
        zorder=3.0,
        label=step.kind,
    )
    ax.add_patch(bar)
    number = ax.text(
        left + abs(step.value) / unit.factor + 0.012 * span,
        row,
        step.written,
        ha="left",
        va="center",
        zorder=4.0,
        **type_of(BODY if rated else SMALL, bold=rated),
    )
    number.set_bbox({"facecolor": PAPER, "edgecolor": "none", "pad": 0.6})
    name = ax.text(
        -0.02,
        row,
        step.words,
        linespacing=1.15,
        transform=ax.get_yaxis_transform(),
        ha="right",
        va="center",
        **type_of(BODY if rated else SMALL, bold=rated),
    )
    artists.bars.append(bar)
    artists.numbers.append(number)
    artists.names.append(name)


WIDTH, ROW, NAMES = 0.19, 0.0072, 0.073
"""Page width, height of a row, width of the column of names [m]."""


def figure_of_difference(
    difference: Difference,
    *,
    setup: Setup,
    extensions: tuple[Array, Array],
    letters: tuple[str, str] = ("A", "B"),
    units: str = "metric",
) -> Figure:
    """Picture of why the first configuration carries more, or less, than the second.

    Parameters
    ----------
    setup : Setup
        That it was rated with
    extensions : (ndarray, ndarray)
        Of the first and the second configuration [1]
    letters : (str, str)
        Their names
    """
    steps = steps_of(difference, setup=setup, letters=letters, units=units)
    more = "more" if difference.total >= 0.0 else "less"
    total = total_in_words(difference, units=units)
    radius = show(difference.radius, "length", units)
    height = 0.052 + ROW * len(steps)
    page = new_page(
        width=WIDTH,
        height=height,
        title=f"Why {letters[0]} carries {total} {more} than {letters[1]} at {radius} radius",
        subtitle=f"{machine_words(setup)}: {setup_words(setup, units=units)}",
        foot=allowance_words(setup.rule, units=units),
    )
    bottom = 0.0095
    ax = page.axes(
        left=NAMES,
        bottom=bottom,
        width=page.room[0] - NAMES - 0.002,
        height=ROW * len(steps),
    )
    draw_difference(ax, steps, units=units)
    _draw_pair(page, setup, extensions, letters, bottom + ROW * len(steps))
    return page.figure


def _draw_pair(
    page: Page, setup: Setup, extensions: tuple[Array, Array], letters: tuple[str, str], low: float
) -> None:
    """Both configurations as small side views above the rows."""
    shapes = [straight_boom(setup.machine, extension=e, angle=GLYPH_ANGLE) for e in extensions]
    box = limits(shapes)
    for k, (shape, extension) in enumerate(zip(shapes, extensions, strict=True)):
        left = NAMES + k * 0.056 - 0.004
        glyph = page.axes(left=left + 0.012, bottom=low + 0.001, width=0.04, height=0.0125)
        glyph.set_anchor("SW")
        frame(draw_sideview(glyph, shape, detail=False, thick=2.0), box)
        glyph.text(
            -0.02,
            0.5,
            letters[k],
            transform=glyph.transAxes,
            ha="right",
            va="center",
            **type_of(BODY, bold=True),
        )
        glyph.text(
            0.0,
            0.98,
            f"{label(extension)} %",
            transform=glyph.transAxes,
            ha="left",
            va="top",
            **type_of(SMALL),
        )
