"""The sections of a boom drawn apart, one to a row: tail, front, overlap and pads."""

from dataclasses import dataclass

import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.patches import Polygon, Rectangle
from matplotlib.text import Text
from matplotlib.ticker import MaxNLocator

from boomsim.figures.colours_and_lines import (
    BODY,
    FAINT,
    INK,
    LOAD,
    PAPER,
    QUIET,
    SMALL,
    STEEL,
    type_of,
)
from boomsim.figures.figure_page import new_page
from boomsim.figures.unit_axes import display_of, quiet_axes
from boomsim.machine.model import Boom, Machine
from boomsim.mechanics.geometry import Array, Layout, layout
from boomsim.rating.strategies import label
from boomsim.units import Display, show

WIDTH, ROW = 0.19, 0.011
"""Page width, height of a row [m]."""

HIGH = 0.62
"""Height of the base section's bar; the others in proportion to their section heights [rows]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Rows:
    """Artists of the sections, base section first.

    Attributes
    ----------
    bodies, overlaps : list of Rectangle
        Whole section; its part inside the outer section
    pads : list of Rectangle
        Front and rear pad of each moving section, in turn
    sheave : Polygon
        Head sheave, at the end of the boom
    numbers : list of Text
        Overlaps, written in them
    """

    ax: Axes
    bodies: list[Rectangle]
    overlaps: list[Rectangle]
    pads: list[Rectangle]
    sheave: Polygon
    numbers: list[Text]


def draw_rows(
    ax: Axes, boom: Boom, *, extension: Array, units: str = "metric", numbers: bool = True
) -> Rows:
    """Draw each section in a row of its own, where it lies along the boom.

    Parameters
    ----------
    extension : array_like, shape (moving sections,)
        [1]
    numbers : bool
        Whether the overlaps are written in; without, they can be read from the grid
    """
    count = len(boom.sections)
    longest = layout(boom, extension=np.ones(count - 1)).boom_length
    unit = display_of("length", units, longest)
    quiet_axes(ax, x=f"along the boom from the heel pin, {unit.symbol}", y="", grid="x")
    ax.set_xlim(0.0, 1.02 * float(longest[0]) / unit.factor)
    ax.set_ylim(count - 0.4, -0.75)
    ax.xaxis.set_major_locator(MaxNLocator(nbins=12, steps=[1, 2, 5, 10]))
    ax.set_yticks(range(count), _names(count))
    ax.tick_params(axis="y", length=0.0)
    rows = Rows(ax=ax, bodies=[], overlaps=[], pads=[], sheave=_sheave(ax), numbers=[])
    _fill(rows, boom, layout(boom, extension=np.asarray(extension)), unit, units, numbers)
    return rows


def _names(count: int) -> list[str]:
    return ["base section", *(f"section {k}" for k in range(1, count))]


def _sheave(ax: Axes) -> Polygon:
    made = Polygon(np.zeros((1, 2)), facecolor=LOAD, edgecolor=INK, linewidth=0.7, zorder=5.0)
    ax.add_patch(made)
    return made


def _fill(rows: Rows, boom: Boom, placed: Layout, unit: Display, units: str, numbers: bool) -> None:
    tallest = _height(boom, 0)
    for k in range(len(boom.sections)):
        high = HIGH * _height(boom, k) / tallest
        tail, front = (float(v[0, k]) / unit.factor for v in (placed.tail, placed.front))
        body = Rectangle(
            (tail, k - high / 2), front - tail, high,
            facecolor=STEEL, edgecolor=INK, linewidth=0.9, zorder=3.0,
        )  # fmt: skip
        rows.ax.add_patch(body)
        rows.bodies.append(body)
        if k:
            _overlap(rows, placed, k, high, unit, units, numbers)
    end, last = float(placed.boom_length[0]) / unit.factor, len(boom.sections) - 1
    wide = 0.012 * rows.ax.get_xlim()[1]
    rows.sheave.set_xy([(end, last), (end - wide, last - 0.3), (end + wide, last - 0.3)])


def _height(boom: Boom, number: int) -> float:
    up = [y for _, y in boom.sections[number].profile.corners]
    return max(up) - min(up)


def _overlap(
    rows: Rows, placed: Layout, k: int, high: float, unit: Display, units: str, numbers: bool
) -> None:
    ax, wide = rows.ax, 0.008 * rows.ax.get_xlim()[1]
    tail, mouth = (float(v) / unit.factor for v in (placed.tail[0, k], placed.front[0, k - 1]))
    inside = Rectangle(
        (tail, k - high / 2), mouth - tail, high,
        facecolor=FAINT, edgecolor=QUIET, hatch="////", linewidth=0.0, zorder=3.1,
    )  # fmt: skip
    ax.add_patch(inside)
    rows.overlaps.append(inside)
    ax.plot([mouth, mouth], [k - 1, k + 0.5 * high], color=QUIET, linewidth=0.7, linestyle=":")
    # Loaded, the section droops: its tail presses up against the outer one, its belly on the mouth.
    for at, edge in ((mouth - wide, k + high / 2), (tail, k - high / 2 - 0.13)):
        pad = Rectangle((at, edge), wide, 0.13, facecolor=INK, linewidth=0.0, zorder=4.0)
        ax.add_patch(pad)
        rows.pads.append(pad)
    if numbers:
        rows.numbers.append(_number(ax, placed, k, tail=tail, mouth=mouth, units=units))


def _number(ax: Axes, placed: Layout, k: int, *, tail: float, mouth: float, units: str) -> Text:
    """Write the overlap into it, or before it where it is too short for the words."""
    words = f"overlap {show(float(placed.overlap[0, k]), 'length', units)}"
    fits = mouth - tail > 0.13 * ax.get_xlim()[1]
    text = ax.text(
        (tail + mouth) / 2 if fits else tail - 0.01 * ax.get_xlim()[1], k, words,
        ha="center" if fits else "right", va="center", zorder=5.0, **type_of(SMALL),
    )  # fmt: skip
    text.set_bbox({"facecolor": PAPER, "edgecolor": "none", "pad": 1.0})
    return text


def figure_of_sections(machine: Machine, *, extension: Array, units: str = "metric") -> Figure:
    """Picture of a boom's sections, drawn apart.

    Parameters
    ----------
    extension : array_like, shape (moving sections,)
        [1]
    """
    boom = machine.boom
    high = ROW * len(boom.sections) + 0.006
    page = new_page(
        width=WIDTH,
        height=high + 0.0295,
        title=f"{machine.name} (invented): sections with {label(np.asarray(extension))} % out",
        subtitle="One row for each section. Hatched: inside the outer section. Black: pads. "
        "Red: head sheave. Heights are exaggerated.",
    )
    ax = page.axes(left=0.021, bottom=0.0095, width=page.room[0] - 0.023, height=high)
    draw_rows(ax, boom, extension=extension, units=units)
    ax.yaxis.set_tick_params(labelsize=BODY)
    return page.figure
