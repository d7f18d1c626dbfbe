"""The picture of the main job: the chart, and beside it each configuration from the side."""

import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.lines import Line2D

from boomsim.figures.capacity_lines import with_turns
from boomsim.figures.colours_and_lines import BODY, Identity, type_of
from boomsim.figures.comparison.comparison_gaps import draw_gaps
from boomsim.figures.comparison.comparison_lines import (
    displays_of,
    draw_comparison,
    looks_of,
    shown_configurations,
)
from boomsim.figures.comparison.comparison_marks import crossovers_on_chart, draw_key
from boomsim.figures.figure_page import MARGIN, Page, new_page
from boomsim.figures.figure_panels import name_marker
from boomsim.figures.setup_words import allowance_words, machine_words, setup_words
from boomsim.figures.side.boom_shape import straight_boom
from boomsim.figures.side.side_view import GLYPH_ANGLE, draw_sideview, frame, limits
from boomsim.figures.text_width import text_width
from boomsim.figures.unit_axes import spread_out
from boomsim.mechanics.boom.picked_configurations import pick
from boomsim.rating.comparison.comparison_study import Comparison
from boomsim.rating.strategies import label, letter
from boomsim.units import show

WIDTH = 0.19
HEIGHT, STRIP, BETWEEN = 0.125, 0.018, 0.0095
CHART_LEFT, CHART_BOTTOM, CHART_WIDTH = 0.0135, 0.0105, 0.113
COLUMN = 0.1385
GLYPH_WIDTH, GLYPH_HEIGHT, NAME_HEIGHT = 0.040, 0.0125, 0.0045
"""Places and sizes on paper [m]."""


def figure_of_comparison(comparison: Comparison, units: str = "metric") -> Figure:
    """Draw the picture of `compare`."""
    setup, configurations = comparison.setup, comparison.configurations
    count = len(configurations.extension)
    length = show(float(np.mean(configurations.length)), "boom_length", units)
    ways = "one way" if count == 1 else f"{count} ways"
    shown = shown_configurations(comparison)
    below = STRIP + BETWEEN if len(shown) > 1 and comparison.leads else 0.0
    page = new_page(
        width=WIDTH,
        height=HEIGHT + below,
        title=f"{machine_words(setup)}: {length} of boom, {ways} to reach it",
        subtitle=setup_words(setup, units=units, extension=configurations.extension),
        foot=allowance_words(setup.rule, units=units),
    )
    bottom = CHART_BOTTOM + below
    ax = page.axes(
        left=CHART_LEFT,
        bottom=bottom,
        width=CHART_WIDTH,
        height=page.room[1] - bottom - 0.0055,
    )
    draw_comparison(ax, comparison, units=units, shown=shown)
    if not np.isfinite(comparison.rating.capacity).any():
        words = "none of them reaches any of these radii"
        ax.text(0.5, 0.5, words, transform=ax.transAxes, ha="center", **type_of())
    draw_key(ax, crossovers=bool(crossovers_on_chart(comparison)), others=count - len(shown))
    _draw_column(page, ax, comparison, shown, units)
    if below:
        _draw_strip(page, ax, comparison, shown, units)
    return page.figure


def _draw_strip(page: Page, ax: Axes, comparison: Comparison, shown: list[int], units: str) -> None:
    """Below the chart, with its radii, how much less the others carry than the best."""
    strip = page.axes(left=CHART_LEFT, bottom=CHART_BOTTOM, width=CHART_WIDTH, height=STRIP)
    x, y = displays_of(comparison, units)
    draw_gaps(strip, comparison, looks_of(shown), x=x, y=y)
    strip.set_xlim(ax.get_xlim())
    ax.set_xlabel("")


def _draw_column(
    page: Page, ax: Axes, comparison: Comparison, shown: list[int], units: str
) -> None:
    """Small side views with their names, each tied to the end of its line."""
    ends = [_end_of(page, ax, comparison, k, units) for k in shown]
    looks = looks_of(shown)
    block = GLYPH_HEIGHT + NAME_HEIGHT
    room = page.room[1]
    gap = min(block + 0.0035, (room - block) / max(len(shown) - 1, 1))
    middles = spread_out(
        [end[1] if end else 0.0 for end in ends],
        least=gap,
        low=CHART_BOTTOM + block / 2 - 0.006,
        high=room - block / 2,
    )
    boom = comparison.rating.boom
    shapes = {
        k: straight_boom(
            boom.machine,
            extension=comparison.configurations.extension[k],
            angle=GLYPH_ANGLE,
            boom=pick(boom, np.array([k])),
        )
        for k in shown
    }
    box = limits(list(shapes.values()))
    for end, middle, k in zip(ends, middles, shown, strict=True):
        if end:
            _tie(page, end, (COLUMN - 0.001, middle), looks[k])
        glyph = page.axes(
            left=COLUMN + 0.001,
            bottom=middle - block / 2,
            width=GLYPH_WIDTH,
            height=GLYPH_HEIGHT,
        )
        glyph.set_anchor("SW")
        frame(draw_sideview(glyph, shapes[k], detail=False, thick=2.0), box)
        _name(page, (COLUMN + 0.001, middle + block / 2), comparison, k, looks[k])


def _end_of(
    page: Page, ax: Axes, comparison: Comparison, row: int, units: str
) -> tuple[float, float] | None:
    """Find where a line ends on paper, from the lower left corner of the room; None if bare [m]."""
    x, y = displays_of(comparison, units)
    radius, capacity, _, _ = with_turns(comparison.rating, row)
    known = np.flatnonzero(np.isfinite(capacity))
    if not len(known):
        return None
    last = known[-1]
    place = ax.transData.transform((radius[last] / x.factor, capacity[last] / y.factor))
    across, up = page.figure.transFigure.inverted().transform(place)
    return float(across * page.width - page.left), float(up * page.height - page.bottom)


def _tie(page: Page, start: tuple[float, float], end: tuple[float, float], look: Identity) -> None:
    points = [start, (start[0] + 0.0015, start[1]), (end[0] - 0.0025, end[1]), end]
    page.figure.add_artist(
        Line2D(
            [(page.left + px) / page.width for px, _ in points],
            [(page.bottom + py) / page.height for _, py in points],
            color=look.colour,
            linewidth=0.7,
            transform=page.figure.transFigure,
        )
    )


def _name(
    page: Page, at: tuple[float, float], comparison: Comparison, row: int, look: Identity
) -> None:
    x, y = (page.left + at[0]) / page.width, (page.bottom + at[1] - 0.001) / page.height
    style = type_of(BODY, bold=True)
    page.figure.text(x + 0.0038 / page.width, y, letter(row), ha="left", va="top", **style)
    words = f"{label(comparison.configurations.extension[row])} %"
    room = page.width - MARGIN / 2 - (page.left + at[0] + 0.0078)
    size = min(BODY, BODY * room / text_width(words, size=BODY))
    style = type_of(size)
    page.figure.text(x + 0.0078 / page.width, y, words, ha="left", va="top", **style)
    name_marker(page, look, x=x + 0.0015 / page.width, y=y - 0.0013 / page.height)
