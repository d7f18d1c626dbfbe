"""Capacity against slew angle, seen from above: the rear to the right, as in the plan view."""

from dataclasses import dataclass, field

import numpy as np
from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.lines import Line2D
from matplotlib.patches import Circle, Wedge
from matplotlib.ticker import MaxNLocator

from boomsim.figures.colours_and_lines import (
    FAINT,
    FAMILIES,
    LOAD,
    PAPER,
    QUIET,
    SMALL,
    identity,
    type_of,
)
from boomsim.figures.unit_axes import display_of
from boomsim.mechanics.geometry import Array
from boomsim.rating.around.slew_study import Around
from boomsim.rating.setup import rear_sector
from boomsim.units import Display, show, show_rated

SIDES = ((0.0, "rear"), (90.0, "right"), (180.0, "front"), (-90.0, "left"))
"""Slew angles [°] and what lies there."""

RING_ANGLES = (-112.0, -68.0, -135.0, -125.0, -155.0, 112.0, 68.0)
NAME_ANGLES = (135.0, 155.0, 115.0, -155.0)
"""Where rings may be named, the first where it is as good as another, and where lines are [°]."""

LOAD_ANGLE = -35.0
"""Where the circle of a load is named [°]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Polar:
    """Artists of capacity against slew angle.

    Attributes
    ----------
    curves : list of (Line2D, Line2D)
        For each radius where strength governs, and where stability does
    others : list of Artist
        Rings, sector and names
    """

    ax: Axes
    units: str
    curves: list[tuple[Line2D, Line2D]] = field(default_factory=list)
    others: list[Artist] = field(default_factory=list)


def draw_polar(
    ax: Axes, found: Around, *, units: str = "metric", load: float | None = None
) -> Polar:
    """Draw capacity against slew angle.

    Parameters
    ----------
    ax : Axes
        Gets equal scales and no frame
    load : float, optional
        One load that is held against the lines, as a circle [kg]
    """
    ax.set_aspect("equal", adjustable="box")
    ax.set_axis_off()
    artists = Polar(ax=ax, units=units)
    update_polar(artists, found, load=load)
    return artists


def update_polar(artists: Polar, found: Around, *, load: float | None = None) -> None:
    """Show other capacities; see :func:`draw_polar`.

    Parameters
    ----------
    load : float, optional
        [kg]
    """
    for pair in artists.curves:
        for line in pair:
            line.remove()
    for old in artists.others:
        old.remove()
    artists.curves.clear()
    artists.others.clear()
    scale = display_of("mass", artists.units, found.capacity)
    rings = _rings(found, scale, load or 0.0)
    outer = rings[-1]
    artists.ax.set_xlim(-1.2 * outer, 1.2 * outer)
    artists.ax.set_ylim(-1.2 * outer, 1.2 * outer)
    _draw_rings(artists, rings, scale, _free_angle(found, rings, scale))
    _draw_sector(artists, np.degrees(rear_sector(found.setup.support)), outer)
    for k in range(len(found.radius)):
        artists.curves.append(_curve(artists, found, k, scale))
        _name(artists, found, k, scale)
    if load is not None:
        artists.others.extend(_load_circle(artists, load, scale))


def _load_circle(artists: Polar, load: float, scale: Display) -> list[Artist]:
    """One load in all directions: its room is the gap between the circle and the line."""
    reach, turn = load / scale.factor, np.radians(LOAD_ANGLE)
    circle = Circle((0.0, 0.0), reach, fill=False, edgecolor=LOAD, linewidth=1.3,
                    linestyle=(0.0, (1.0, 1.4)), zorder=3.5)  # fmt: skip
    artists.ax.add_patch(circle)
    name = artists.ax.text(
        reach * np.cos(turn), reach * np.sin(turn), show_rated(load, artists.units), ha="center",
        va="center", zorder=4.5, **type_of(SMALL, bold=True, colour=LOAD),
    )  # fmt: skip
    name.set_bbox({"facecolor": PAPER, "edgecolor": "none", "pad": 0.8})
    return [circle, name]


def _rings(found: Around, scale: Display, load: float) -> Array:
    most = max(float(np.nanmax(found.capacity)), load) / scale.factor
    locator = MaxNLocator(nbins=4, steps=[1, 2, 2.5, 5, 10])
    ticks = np.asarray(locator.tick_values(0.0, most), dtype=float)
    rings = ticks[ticks > 0.0]
    # Up to and with the first ring that encloses everything.
    return np.asarray(rings[: int(np.argmax(rings >= most * (1 - 1e-9))) + 1])


def _free_angle(found: Around, rings: Array, scale: Display) -> float:
    """Where the names of the rings lie farthest from the curves [°]."""
    slew, reach = np.degrees(found.slew), np.nan_to_num(found.capacity) / scale.factor

    def gap(angle: float) -> float:
        there = reach[int(np.argmin(np.abs(slew - angle)))]
        return float(np.abs(there[:, None] - rings[None, :]).min())

    return max(RING_ANGLES, key=gap)


def _draw_rings(artists: Polar, rings: Array, scale: Display, angle: float) -> None:
    ax, outer = artists.ax, float(rings[-1])
    for ring in rings.tolist():
        circle = Circle((0.0, 0.0), ring, fill=False, edgecolor=FAINT, linewidth=0.5, zorder=1.0)
        ax.add_patch(circle)
        turn = np.radians(angle)
        unit = f" {scale.symbol}" if ring == outer else ""
        name = ax.text(
            ring * np.cos(turn), ring * np.sin(turn), f"{ring:,g}{unit}", ha="center", va="center",
            zorder=2.5, **type_of(SMALL, colour=QUIET),
        )  # fmt: skip
        name.set_bbox({"facecolor": PAPER, "edgecolor": "none", "pad": 0.6})
        artists.others.extend([circle, name])
    for side_angle, words in SIDES:
        turn = np.radians(side_angle)
        ray = float(np.cos(turn)), float(np.sin(turn))
        spoke = Line2D([0.0, outer * ray[0]], [0.0, outer * ray[1]], color=FAINT, linewidth=0.5)
        ax.add_line(spoke)
        side = ax.text(
            1.04 * outer * ray[0], 1.04 * outer * ray[1], words,
            ha={0.0: "left", 180.0: "right"}.get(side_angle, "center"),
            va={90.0: "bottom", -90.0: "top"}.get(side_angle, "center"), **type_of(SMALL),
        )  # fmt: skip
        artists.others.extend([spoke, side])


def _draw_sector(artists: Polar, edge: float, outer: float) -> None:
    wedge = Wedge((0.0, 0.0), outer, -edge, edge, facecolor=FAINT, alpha=0.25, zorder=0.5)
    artists.ax.add_patch(wedge)
    artists.others.append(wedge)
    for sign in (-1.0, 1.0):
        turn = np.radians(sign * edge)
        line = Line2D(
            [0.0, outer * np.cos(turn)], [0.0, outer * np.sin(turn)], color=QUIET, linewidth=0.7,
            linestyle="dashed", zorder=1.2,
        )  # fmt: skip
        artists.ax.add_line(line)
        artists.others.append(line)


def _curve(artists: Polar, found: Around, k: int, scale: Display) -> tuple[Line2D, Line2D]:
    slew, capacity, tips, turns = with_turns(found, k)
    x, y = capacity * np.cos(slew) / scale.factor, capacity * np.sin(slew) / scale.factor
    made = []
    for family, own in (("structural", ~tips), ("stability", tips)):
        style, shown = FAMILIES[family], own | turns
        line = Line2D(
            np.where(shown, x, np.nan), np.where(shown, y, np.nan), color=identity(k).colour,
            linestyle=style.line, linewidth=style.width, zorder=3.0,
        )  # fmt: skip
        artists.ax.add_line(line)
        made.append(line)
    return made[0], made[1]


def with_turns(found: Around, k: int) -> tuple[Array, Array, np.ndarray, np.ndarray]:
    """Capacity over slew with a point put in wherever the governing family changes.

    Parameters
    ----------
    k : int
        Which radius

    Returns
    -------
    slew, capacity : ndarray, shape (points,)
        [rad], [kg]
    tips : ndarray of bool
        True where stability governs
    turns : ndarray of bool
        True at the points put in
    """
    slew, capacity, tips = found.slew, found.capacity[:, k], found.is_stability[:, k]
    held = found.held[:, k]
    ahead = found.stability[:, k] - held
    change = np.flatnonzero(tips[:-1] != tips[1:])
    share = ahead[change] / (ahead[change] - ahead[change + 1])
    share = np.where(np.isfinite(share), share, 0.5)
    return (
        np.insert(slew, change + 1, slew[change] + share * np.diff(slew)[change]),
        np.insert(capacity, change + 1, held[change] + share * np.diff(held)[change]),
        np.insert(tips, change + 1, tips[change]),
        np.insert(np.zeros_like(tips), change + 1, True),
    )


def _name(artists: Polar, found: Around, k: int, scale: Display) -> None:
    """Write the radius on its line, where lines of several radii are named apart."""
    angle = NAME_ANGLES[k % len(NAME_ANGLES)]
    place = int(np.argmin(np.abs(np.degrees(found.slew) - angle)))
    reach = float(found.capacity[place, k]) / scale.factor
    if not np.isfinite(reach):
        return
    turn = found.slew[place]
    name = artists.ax.text(
        reach * np.cos(turn), reach * np.sin(turn),
        show(float(found.radius[k]), "length", artists.units), ha="center", va="center",
        zorder=4.0, **type_of(SMALL, bold=True, colour=identity(k).colour),
    )  # fmt: skip
    name.set_bbox({"facecolor": PAPER, "edgecolor": "none", "pad": 0.8})
    artists.others.append(name)


__all__ = ["Polar", "draw_polar", "update_polar", "with_turns"]
