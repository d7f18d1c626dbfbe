"""The picture of `pins`: the boom to scale after each move, the section that moved dark."""

import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.patches import Rectangle

from boomsim.figures.colours_and_lines import INK, QUIET, SMALL, STEEL, type_of
from boomsim.figures.figure_page import new_page
from boomsim.figures.unit_axes import quiet_axes
from boomsim.machine.model import Machine
from boomsim.machine.nesting import outer_size
from boomsim.mechanics.geometry import Array, layout
from boomsim.rating.path.pins_sentences import RULE, tell_move, tell_pins
from boomsim.rating.path.pins_study import Sequence
from boomsim.units import display, show

WIDTH, ROW, HEAD = 0.19, 0.0115, 0.048
"""Of the page, of a row, of all above and below the rows [m]."""

LEFT, BOTTOM, AT_LENGTH = 0.002, 0.0105, 0.018
"""Places on paper; so much room on the right for the length [m]."""

HIGH = 0.52
"""Height of the base section over the distance of two rows [1]."""


def figure_of_pins(machine: Machine, found: Sequence, *, units: str = "metric") -> Figure:
    """Draw the picture of `pins`."""
    high = ROW * (len(found.moves) + 1)
    page = new_page(
        width=WIDTH,
        height=HEAD + high,
        title=f"{machine.name} (invented): {tell_pins(found, units=units)}",
        foot=RULE,
    )
    width = page.room[0] - LEFT - AT_LENGTH
    ax = page.axes(left=LEFT, bottom=BOTTOM, width=width, height=page.room[1] - BOTTOM)
    draw_pins(ax, machine, found, units=units)
    return page.figure


def draw_pins(
    ax: Axes, machine: Machine, found: Sequence, *, units: str = "metric"
) -> list[list[Rectangle]]:
    """Draw the boom before the first move and after each, to scale along it.

    Returns
    -------
    list of list of Rectangle
        A row for each, its sections from the base on
    """
    x = display("boom_length", units, like=found.longest)
    quiet_axes(ax, x=f"along the boom, {x.symbol}", y="", grid="x")
    ax.spines["left"].set_visible(False)
    ax.set_yticks([])
    ax.set_xlim(0.0, found.longest / x.factor)
    ax.set_ylim(len(found.moves) + 0.5, -0.6)
    states: list[tuple[Array, int | None, str, float]] = [
        (found.start, None, "at first", found.start_length)
    ]
    for number, move in enumerate(found.moves, start=1):
        words = f"{number}. {tell_move(move)}"
        states.append((np.array(move.extension), move.section, words, move.length))
    rows = []
    for row, (extension, moved, words, length) in enumerate(states):
        placed = layout(machine.boom, extension=extension)
        sections = [
            _section(ax, machine, k, (placed.tail[0, k], placed.front[0, k]), row, x.factor, moved)
            for k in range(len(machine.boom.sections))
        ]
        rows.append(sections)
        ax.text(0.0, row - 0.33, words, ha="left", va="bottom", **type_of(SMALL))
        ax.annotate(
            show(length, "boom_length", units), (1.0, row), (5.0, 0.0),
            xycoords=("axes fraction", "data"), textcoords="offset points", ha="left", va="center",
            **type_of(SMALL, bold=True),
        )  # fmt: skip
    return rows


def _section(
    ax: Axes,
    machine: Machine,
    number: int,
    ends: tuple[float, float],
    row: int,
    factor: float,
    moved: int | None,
) -> Rectangle:
    """One section as a bar, as high beside the base as it really is."""
    sections = machine.boom.sections
    high = HIGH * outer_size(sections[number].profile)[1] / outer_size(sections[0].profile)[1]
    bar = Rectangle(
        (ends[0] / factor, row - high / 2),
        (ends[1] - ends[0]) / factor,
        high,
        facecolor=QUIET if number == moved else STEEL,
        edgecolor=INK,
        linewidth=0.7,
        zorder=3.0 + 0.01 * number,
        alpha=0.85,
    )
    ax.add_patch(bar)
    return bar
