"""The picture of `telescope`: what is rated and what is moved on the way out, and by angle."""

from typing import Literal

import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.lines import Line2D

from boomsim.figures.colours_and_lines import INK, SMALL, LineStyle, identity, type_of
from boomsim.figures.figure_page import Page, new_page
from boomsim.figures.figure_panels import heading
from boomsim.figures.path.load_line import draw_way
from boomsim.figures.path.start_and_end import draw_start_and_end
from boomsim.figures.setup_words import allowance_words, machine_words, setup_words
from boomsim.figures.side.boom_shape import bent_boom
from boomsim.figures.unit_axes import display_of, quiet_axes
from boomsim.mechanics.geometry import Array
from boomsim.rating.path.largest_telescoped import Largest, largest_moved
from boomsim.rating.path.telescoping_sentences import (
    begins_words,
    out_words,
    stage_words,
    tell_telescoping,
)
from boomsim.rating.path.telescoping_study import Telescoping, with_load_of
from boomsim.units import Display

WIDTH, HEIGHT = 0.19, 0.175
LEFT, BOTTOM, CHART_WIDTH = 0.0135, 0.0105, 0.112
LOWER = 0.040
"""Places and sizes on paper, with the height of the panel below [m]."""

ROOM = 1.3
"""The axis reaches so far past the most, for the key [1]."""

ANGLES = 41
"""Boom angles at which lines are worked out [1]."""

HANGS, MOVES = "rated", "the push moves"
LOOKS: dict[str, tuple[LineStyle, str]] = {
    HANGS: ("solid", identity(0).colour),
    MOVES: ((0.0, (3.0, 1.3)), identity(1).colour),
}
"""Line style and colour of each."""


def figure_of_telescoping(found: Telescoping, *, units: str = "metric") -> Figure:
    """Draw the picture of `telescope`."""
    page = new_page(
        width=WIDTH,
        height=HEIGHT,
        title=tell_telescoping(found, units=units),
        subtitle=f"{machine_words(found.setup)}: {setup_words(found.setup, units=units)}; "
        f"friction of the pads {found.friction:g} (assumed)",
        foot=allowance_words(found.setup.rule, units=units),
    )
    bottom = BOTTOM + LOWER + 0.018
    ax = page.axes(left=LEFT, bottom=bottom, width=CHART_WIDTH, height=page.room[1] - bottom)
    draw_telescoping(ax, found, units=units)
    stage = found.stages[0]
    words = f"Telescoped at other angles: {stage_words(stage)}"
    heading(page, words, left=LEFT, top=BOTTOM + LOWER + 0.006, width=CHART_WIDTH)
    below = page.axes(left=LEFT, bottom=BOTTOM, width=CHART_WIDTH, height=LOWER)
    boom = found.setup.machine.boom
    angles = np.linspace(boom.least_angle, boom.greatest_angle, ANGLES)
    one = largest_moved(found.setup, stage=stage, angle=angles, friction=found.friction)
    draw_largest(below, one, units=units)
    _two_views(page, found, units)
    return page.figure


def draw_telescoping(ax: Axes, found: Telescoping, *, units: str = "metric") -> list[Line2D]:
    """Draw over the radius what is rated and what is rated to run out, and the load on its way.

    Returns
    -------
    list of Line2D
        What is rated, what is rated to run out
    """
    line = found.line
    x = display_of("length", units, line.radius)
    y = display_of("mass", units, [found.load, *line.moved])
    quiet_axes(ax, x=f"radius with the load on, {x.symbol}", y=f"gross load, {y.symbol}")
    most = max(float(np.nanmax(line.moved, initial=0.0)), found.load) * ROOM
    ax.set_xlim(0.0, 1.02 * float(np.nanmax(line.radius)) / x.factor)
    ax.set_ylim(0.0, most / y.factor)
    made = [
        _line(ax, line.radius / x.factor, line.rated / y.factor, HANGS),
        _line(ax, line.radius / x.factor, line.moved / y.factor, MOVES),
    ]
    _key(
        ax,
        {HANGS: HANGS, MOVES: "rated to run out: less where the push is not enough"},
        where="upper right",
    )
    draw_way(
        ax, load=found.load, start=found.start.radius, end=found.end.radius, marks=found.marks,
        direction=1.0, x=x, y=y, units=units,
    )  # fmt: skip
    return made


def draw_largest(ax: Axes, one: Largest, *, units: str = "metric") -> list[Line2D]:
    """Draw over the boom angle what the push moves and what is rated: the lower may be run out.

    Returns
    -------
    list of Line2D
        What is rated, what the push moves
    """
    y: Display = display_of("mass", units, one.moved)
    quiet_axes(ax, x="boom angle, °", y=f"gross load, {y.symbol}")
    most = float(np.nanmax(one.moved, initial=0.0)) or y.factor
    ax.set_ylim(0.0, 1.6 * most / y.factor)
    degrees = np.degrees(one.angle)
    ax.set_xlim(float(degrees.max()), float(degrees.min()))
    made = [
        _line(ax, degrees, one.hangs / y.factor, HANGS),
        _line(ax, degrees, one.pushed / y.factor, MOVES),
    ]
    low = np.minimum(one.moved, 1.6 * most) / y.factor
    ax.fill_between(degrees, 0.0, low, color=identity(0).colour, alpha=0.08, linewidth=0.0)
    _key(ax, {HANGS: HANGS, MOVES: MOVES}, where="upper center")
    return made


def _line(ax: Axes, x: Array, y: Array, name: str) -> Line2D:
    style, colour = LOOKS[name]
    made = Line2D(
        x, np.where(np.isfinite(y), y, np.nan), color=colour, linestyle=style, linewidth=1.6
    )
    ax.add_line(made)
    return made


def _key(ax: Axes, words: dict[str, str], *, where: Literal["upper right", "upper center"]) -> None:
    """Say which line is which."""
    handles = [
        Line2D([], [], color=LOOKS[name][1], linestyle=LOOKS[name][0], linewidth=1.6)
        for name in words
    ]
    key = ax.legend(handles, list(words.values()), loc=where, frameon=False)
    for text in key.get_texts():
        text.set(**{"fontsize": SMALL, "color": INK, "fontfamily": type_of()["fontfamily"]})


def _two_views(page: Page, found: Telescoping, units: str) -> None:
    """Draw the crane where the way begins, and where it must end."""
    rated = found.marks.rated
    moved = found.is_moved_at_start
    last = found.end.at if rated is None or not moved else rated.place.at
    words = "the farthest it is run out" if moved else "where the boom is all out"
    places = (found.extension_at(0.0), found.extension_at(last))
    shapes = [bent_boom(with_load_of(found, place)) for place in places]
    begins = begins_words(found, units=units)
    told = (("where it begins", begins), (words, out_words(found, last, units=units)))
    draw_start_and_end(page, shapes, told, setup=found.setup)
