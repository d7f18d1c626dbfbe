"""All around and over the rear, side by side over the radius."""

from dataclasses import dataclass

import numpy as np
from matplotlib.axes import Axes
from matplotlib.collections import PolyCollection
from matplotlib.lines import Line2D

from boomsim.figures.capacity_lines import Curve, draw_curve
from boomsim.figures.colours_and_lines import FAMILIES, INK, PAPER, SMALL, STEEL, identity, type_of
from boomsim.figures.unit_axes import display_of, quiet_axes
from boomsim.rating.around.over_rear_sector import Sectors


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class SectorCurves:
    """Artists of two sectors.

    Attributes
    ----------
    gain : PolyCollection
        Between them
    """

    ax: Axes
    around: Curve
    rear: Curve
    gain: PolyCollection


def draw_sectors(ax: Axes, found: Sectors, *, units: str = "metric") -> SectorCurves:
    """Draw the capacities of both sectors."""
    x = display_of("length", units, found.radius)
    y = display_of("mass", units, found.rear.capacity)
    quiet_axes(ax, x=f"radius with the load on, {x.symbol}", y="")
    ax.tick_params(labelsize=SMALL)
    ax.set_title(f"rated capacity, gross, {y.symbol}", loc="left", pad=3.0, **type_of(SMALL))
    known = np.isfinite(found.around.capacity[0])
    gain = ax.fill_between(
        found.radius[known] / x.factor,
        found.around.capacity[0, known] / y.factor,
        found.rear.capacity[0, known] / y.factor,
        facecolor=STEEL,
        linewidth=0.0,
        zorder=1.5,
    )
    curves = [
        draw_curve(ax, rating, 0, look=identity(k), x=x.factor, y=y.factor, slim=True)
        for k, rating in enumerate((found.around, found.rear))
    ]
    span = found.radius[known] / x.factor
    ax.set_xlim(max(float(span.min()) - 1.0, 0.0) if len(span) else 0.0, float(span.max()))
    ax.set_ylim(0.0, 1.06 * float(np.nanmax(found.rear.capacity)) / y.factor)
    _key(ax)
    return SectorCurves(ax=ax, around=curves[0], rear=curves[1], gain=gain)


def _key(ax: Axes) -> None:
    """Name the lines in the empty upper right corner."""
    for k, words in enumerate(("all around", "over the rear")):
        look, y = identity(k), 0.93 - 0.09 * k
        sample = Line2D(
            [0.46, 0.515, 0.57], [y] * 3, color=look.colour, linewidth=1.5, marker=look.marker,
            markevery=[1], markersize=4.2, markerfacecolor=PAPER, markeredgewidth=1.0,
            transform=ax.transAxes,
        )  # fmt: skip
        ax.add_line(sample)
        _words(ax, y, words)
    for k, family in enumerate(("structural", "stability")):
        style, y = FAMILIES[family], 0.73 - 0.09 * k
        ax.add_line(
            Line2D(
                [0.46, 0.57], [y] * 2, color=INK, linestyle=style.line,
                linewidth=0.75 * style.width, transform=ax.transAxes,
            )
        )  # fmt: skip
        _words(ax, y, "strength or maker's value" if family == "structural" else "stability")


def _words(ax: Axes, y: float, words: str) -> None:
    made = ax.text(0.59, y, words, transform=ax.transAxes, ha="left", va="center", **type_of(SMALL))
    made.set_bbox({"facecolor": PAPER, "edgecolor": "none", "pad": 0.6})
