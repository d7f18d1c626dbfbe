"""Range diagram: where the head goes, at which boom angle, and what it may carry there."""

from dataclasses import dataclass, field
from typing import Any

import numpy as np
from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.lines import Line2D

from boomsim.figures.colours_and_lines import (
    FAINT,
    FAMILIES,
    INK,
    LOAD,
    PAPER,
    QUIET,
    SMALL,
    type_of,
)
from boomsim.figures.figure_page import new_page
from boomsim.figures.range.range_shape import RangeShape, bands, contour, range_of
from boomsim.figures.setup_words import allowance_words, machine_words, setup_words
from boomsim.figures.side.boom_shape import straight_boom
from boomsim.figures.side.carrier_shape import extent
from boomsim.figures.side.side_view import draw_sideview
from boomsim.figures.unit_axes import display_of, quiet_axes, ticks_in
from boomsim.mechanics.geometry import Array
from boomsim.rating.empty_hook.empty_hook_sentences import steep_angle
from boomsim.rating.setup import Setup
from boomsim.units import display, show

RAYS = np.radians(np.arange(0.0, 90.0, 10.0))
"""Boom angles of the rays [rad]."""


CROSS: dict[str, Any] = {
    "marker": "x", "markersize": 7.0, "markeredgewidth": 1.8, "color": INK, "linestyle": "none",
    "zorder": 6.0,
}  # fmt: skip
"""Where an arc ends because the crane turns over."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class RangeDiagram:
    """Artists of a range diagram; its data are in metres, whatever its ticks say.

    Attributes
    ----------
    structural, stability : list of Line2D
        Arc of each configuration where that family governs
    contours : list of Line2D
        Of equal capacity
    ends : list of Line2D
        Where the crane turns over with its empty hook
    others : list of Artist
        Rays, names and numbers
    """

    ax: Axes
    units: str
    structural: list[Line2D] = field(default_factory=list)
    stability: list[Line2D] = field(default_factory=list)
    contours: list[Line2D] = field(default_factory=list)
    ends: list[Line2D] = field(default_factory=list)
    others: list[Artist] = field(default_factory=list)


def draw_range(ax: Axes, shape: RangeShape, *, units: str = "metric") -> RangeDiagram:
    """Draw a range diagram.

    Parameters
    ----------
    ax : Axes
        Gets equal scales; its limits are set by the shape
    """
    diagram = RangeDiagram(ax=ax, units=units)
    update_range(diagram, shape)
    return diagram


def update_range(diagram: RangeDiagram, shape: RangeShape) -> None:
    """Show another range; see :func:`draw_range`."""
    kinds = (diagram.structural, diagram.stability, diagram.contours, diagram.ends, diagram.others)
    for kept in kinds:
        for old in kept:
            old.remove()
        kept.clear()
    unit = display("length", diagram.units)
    quiet_axes(diagram.ax, x=f"radius, {unit.symbol}", y=f"height of the head, {unit.symbol}")
    diagram.ax.set_aspect("equal", adjustable="box")
    left, right, top = view(shape)
    diagram.ax.set_xlim(left, right)
    diagram.ax.set_ylim(0.0, top)
    for axis, reach in ((diagram.ax.xaxis, right - left), (diagram.ax.yaxis, top)):
        ticks_in(axis, unit, reach=max(reach, top))
    _draw_rays(diagram, shape)
    _draw_arcs(diagram, shape)
    _draw_ends(diagram, shape)
    _draw_contours(diagram, shape)


def view(shape: RangeShape) -> tuple[float, float, float]:
    """Range that is shown.

    Returns
    -------
    float, float, float
        Left, right, top; the bottom is the ground [m]
    """
    reach = float(np.nanmax(shape.radius))
    left = extent(shape.setup.machine)[0] - 0.01 * reach
    return left, 1.07 * reach, 1.1 * float(np.nanmax(shape.height))


def _draw_rays(diagram: RangeDiagram, shape: RangeShape) -> None:
    """Thin rays from the heel pin, each with its angle beyond the longest arc."""
    machine = shape.setup.machine
    heel = np.array([machine.heel_out, machine.heel_up])
    longest = float(shape.length[-1])
    least, greatest = machine.boom.least_angle, machine.boom.greatest_angle
    for angle in RAYS[(least - 1e-9 <= RAYS) & (greatest + 1e-9 >= RAYS)]:
        along = np.array([np.cos(angle), np.sin(angle)])
        points = heel + np.outer([0.0, 1.015 * longest], along)
        ray = Line2D(points[:, 0], points[:, 1], color=FAINT, linewidth=0.5, zorder=1.5)
        diagram.ax.add_line(ray)
        place = heel + 1.05 * longest * along
        name = diagram.ax.text(
            place[0], place[1], f"{np.degrees(angle):.0f}\u00b0", ha="center", va="center",
            zorder=4.0, **type_of(SMALL, colour=QUIET),
        )  # fmt: skip
        diagram.others.extend([ray, name])


def _draw_arcs(diagram: RangeDiagram, shape: RangeShape) -> None:
    for row in range(len(shape.length)):
        stands = shape.stands[row]
        x = np.where(stands, shape.radius[row], np.nan)
        y = np.where(stands, shape.height[row], np.nan)
        known, tips = np.isfinite(shape.capacity[row]), shape.tips[row]
        bare = Line2D(x, y, color=FAINT, linewidth=0.8, zorder=2.0)
        diagram.ax.add_line(bare)
        diagram.others.append(bare)
        # The broken line takes one more point at either end, so that the arc has no gap.
        wider = np.convolve(known & ~tips, [1, 1, 1], mode="same") > 0
        for family, own in (("structural", known & wider), ("stability", known & tips)):
            style = FAMILIES[family]
            line = Line2D(
                np.where(own, x, np.nan), y, color=INK, linestyle=style.line,
                linewidth=0.8 * style.width, zorder=3.0, label=family,
            )  # fmt: skip
            diagram.ax.add_line(line)
            getattr(diagram, family).append(line)
        if not stands.any():
            continue
        steep = int(np.nanargmax(y))
        name = diagram.ax.annotate(
            show(float(shape.length[row]), "boom_length", diagram.units),
            (x[steep], y[steep]),
            (-3.0, 1.0),
            textcoords="offset points",
            ha="right",
            va="bottom",
            zorder=5.0,
            **type_of(SMALL, bold=True),
        )
        name.set_bbox({"facecolor": PAPER, "edgecolor": "none", "pad": 0.4})
        diagram.others.append(name)


def _draw_ends(diagram: RangeDiagram, shape: RangeShape) -> None:
    """Cross each arc off at the angle below which the crane turns over with its empty hook."""
    for row in np.flatnonzero(shape.empty_hook.turns_over & shape.empty_hook.stands):
        angle = float(shape.empty_hook.angle[row])
        place = shape.place(int(row), angle)
        cross = Line2D(*([v] for v in place), **CROSS)
        diagram.ax.add_line(cross)
        diagram.ends.append(cross)
        name = diagram.ax.annotate(
            steep_angle(angle), place, (6.0, -3.0), textcoords="offset points", ha="left", va="top",
            zorder=6.0, **type_of(SMALL, bold=True),
        )  # fmt: skip
        diagram.others.append(name)


def _draw_contours(diagram: RangeDiagram, shape: RangeShape) -> None:
    """Join points of equal capacity from arc to arc; the name stands in the outermost stretch."""
    mass = display_of("mass", diagram.units, shape.capacity)
    for capacity in bands(shape, unit=mass.factor):
        points = contour(shape, capacity)
        if not len(points):
            continue
        line = Line2D(
            points[:, 0], points[:, 1], color=LOAD, linewidth=0.9, marker="o", markersize=2.6,
            zorder=3.5, label=f"{capacity:g}",
        )  # fmt: skip
        diagram.ax.add_line(line)
        diagram.contours.append(line)
        words = f"{capacity / mass.factor:,.10g} {mass.symbol}"
        alone = len(points) == 1
        name = diagram.ax.annotate(
            words,
            tuple(points[-1] if alone else points[-2:].mean(axis=0)),
            # Inside its arc: outside are the names of the rays, and the next arc.
            (-5.0, -2.0) if alone else (0.0, 0.0),
            textcoords="offset points",
            ha="right" if alone else "center",
            va="top" if alone else "center",
            zorder=5.0,
            **type_of(SMALL, colour=LOAD),
        )
        name.set_bbox({"facecolor": PAPER, "edgecolor": "none", "pad": 0.6})
        diagram.others.append(name)


WIDTH, HIGHEST = 0.19, 0.24
"""Of the page [m]."""

CRANE_ANGLE, ABOVE = 0.35, 0.09
"""Boom angle of the crane that is drawn, and how far above the angle at which it would turn over
[rad]."""


def figure_of_range(
    setup: Setup, *, extension: Array | None = None, units: str = "metric"
) -> Figure:
    """Picture of a machine's range.

    Parameters
    ----------
    extension : ndarray, shape (configurations, moving sections), optional
        Default: :func:`boomsim.figures.range.range_shape.usual_extensions` [1]
    """
    shape = range_of(setup, extension=extension)
    left, right, top = view(shape)
    wide = WIDTH - 0.022
    high = wide * top / (right - left)
    page = new_page(
        width=WIDTH,
        height=min(high + 0.0345, HIGHEST),
        title=f"{machine_words(setup)}: range of the boom head, and what is rated there",
        subtitle=setup_words(setup, units=units, extension=shape.extension),
        foot=allowance_words(setup.rule, units=units),
    )
    foot = 0.0105
    ax = page.axes(left=0.014, bottom=foot, width=wide, height=page.room[1] - foot)
    ax.set_anchor("SW")
    diagram = draw_range(ax, shape, units=units)
    _draw_crane(diagram, shape)
    _draw_key(diagram, turns_over=bool(shape.empty_hook.turns_over.any()))
    return page.figure


def _draw_crane(diagram: RangeDiagram, shape: RangeShape) -> None:
    """Draw the crane itself to the same scale, its shortest boom out; none that cannot stand."""
    ax, setup = diagram.ax, shape.setup
    limits = ax.get_xlim(), ax.get_ylim()
    if not shape.empty_hook.stands[0]:
        return
    angle = max(CRANE_ANGLE, float(shape.empty_hook.angle[0]) + ABOVE)
    angle = min(angle, setup.machine.boom.greatest_angle)
    boom = straight_boom(setup.machine, extension=shape.extension[0], angle=angle)
    draw_sideview(ax, boom, counterweight=setup.counterweight, support=setup.support, detail=False)
    ax.set_axis_on()
    ax.set_xlim(*limits[0])
    ax.set_ylim(*limits[1])


def _draw_key(diagram: RangeDiagram, *, turns_over: bool) -> None:
    """Line styles, in the corner above the longest arc, where the head never comes."""
    rows: list[tuple[Line2D, str]] = [
        (Line2D([], [], color=INK, linestyle=s.line, linewidth=0.8 * s.width), s.words)
        for s in FAMILIES.values()
    ]
    rows.append(
        (Line2D([], [], color=LOAD, linewidth=0.9, marker="o", markersize=2.6), "equal capacity")
    )
    rows.append((Line2D([], [], color=FAINT, linewidth=0.8), "head, empty hook: not rated here"))
    if turns_over:
        rows.append((Line2D([], [], **CROSS), "with the empty hook the crane turns"))
        rows.append((Line2D([], [], linestyle="none"), "over below this boom angle"))
    for n, (line, words) in enumerate(rows):
        y = 0.985 - 0.032 * n
        across = [0.71] if line.get_marker() == "x" else [0.69, 0.73]
        line.set_data(across, [y] * len(across))
        line.set_transform(diagram.ax.transAxes)
        diagram.ax.add_artist(line)
        text = diagram.ax.text(
            0.74, y, words, transform=diagram.ax.transAxes, ha="left", va="center", **type_of(SMALL)
        )
        diagram.others.extend([line, text])
