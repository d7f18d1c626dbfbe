"""Plan view: supports, tipping lines, the over-rear sector, and where all the weight bears."""

from dataclasses import dataclass, field
from itertools import combinations

import numpy as np
from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.lines import Line2D
from matplotlib.patheffects import withStroke
from matplotlib.text import Text

from boomsim.figures.colours_and_lines import (
    INK,
    LOAD,
    PAPER,
    QUIET,
    SMALL,
    LineStyle,
    type_of,
)
from boomsim.figures.plan.plan_ground import draw_bodies, draw_sector
from boomsim.figures.plan.plan_shape import PlanShape, ground_shapes
from boomsim.mechanics.geometry import Array
from boomsim.units import display, show

CENTRE_MARKS = {
    "boom": r"$\mathbf{B}$",
    "carrier": r"$\mathbf{C}$",
    "superstructure": r"$\mathbf{S}$",
    "counterweight": r"$\mathbf{W}$",
    "load": "o",
}
"""Letter of each group of masses, since markers tell curves apart; the load has a dot, the
resultant a cross in a ring."""

CENTRE_WORDS = "weight of the boom B, carrier C, superstructure S, counterweight W"
"""What the letters stand for."""

LETTER = 0.06
"""Height of a letter and a little, over the height of the picture [1]."""

HALO = (withStroke(linewidth=2.4, foreground=PAPER),)
"""Around a letter, so that it reads on lines."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Plan:
    """Artists of a plan view.

    Attributes
    ----------
    lines : Line2D
        All tipping lines
    near : Line2D
        The one about which the crane would tip
    path, bare_path : Line2D
        Of the resultant with the load, and with an empty hook
    centres : dict of str to Line2D
        By group of masses
    reactions : list of Text
        Beside each support
    others : list of Artist
        Carrier, superstructure, sector and notes, drawn anew at each update
    """

    ax: Axes
    units: str
    lines: Line2D
    near: Line2D
    path: Line2D
    bare_path: Line2D
    resultant: Line2D
    centres: dict[str, Line2D] = field(default_factory=dict)
    reactions: list[Text] = field(default_factory=list)
    others: list[Artist] = field(default_factory=list)


def draw_plan(ax: Axes, shape: PlanShape, *, units: str = "metric") -> Plan:
    """Draw a lift seen from above.

    Parameters
    ----------
    ax : Axes
        Gets equal scales and no frame
    """
    ax.set_aspect("equal", adjustable="box")
    ax.set_axis_off()

    def line(colour: str, width: float, zorder: float, style: LineStyle = "solid") -> Line2D:
        made = Line2D([], [], color=colour, linewidth=width, linestyle=style, zorder=zorder)
        ax.add_line(made)
        return made

    plan = Plan(
        ax=ax,
        units=units,
        lines=line(INK, 0.9, 4.0),
        near=line(INK, 2.6, 4.1),
        path=line(LOAD, 1.2, 5.0),
        bare_path=line(QUIET, 1.0, 5.0, (0.0, (1.0, 1.2))),
        resultant=_mark(ax, "o", 9.0, PAPER, 7.0),
    )
    plan.centres.update(
        {
            name: _mark(ax, marker, 6.0, LOAD if name == "load" else INK, 6.0)
            for name, marker in CENTRE_MARKS.items()
        }
    )
    for name in set(CENTRE_MARKS) - {"load"}:
        plan.centres[name].set(markeredgewidth=0.0, markersize=7.5, path_effects=HALO)
    update_plan(plan, shape)
    return plan


def _mark(ax: Axes, marker: str, size: float, colour: str, zorder: float) -> Line2D:
    made = Line2D(
        [],
        [],
        linestyle="none",
        marker=marker,
        markersize=size,
        markerfacecolor=colour,
        markeredgecolor=INK,
        markeredgewidth=0.9,
        zorder=zorder,
        clip_on=False,
    )
    ax.add_line(made)
    return made


def update_plan(plan: Plan, shape: PlanShape) -> None:
    """Show another lift; see :func:`draw_plan`."""
    lines = shape.lines
    corners = np.concatenate([lines.start, lines.start[:1]])
    plan.lines.set_data(corners[:, 0], corners[:, 1])
    plan.near.set_data(*np.stack([lines.start[shape.near], lines.end[shape.near]], axis=1))
    plan.path.set_data(shape.path[:, 0], shape.path[:, 1])
    plan.bare_path.set_data(shape.bare_path[:, 0], shape.bare_path[:, 1])
    plan.resultant.set_data([shape.resultant[0]], [shape.resultant[1]])
    box = view(shape)
    plan.ax.set_xlim(box[0], box[1])
    plan.ax.set_ylim(box[2], box[3])
    for kept in (plan.others, plan.reactions):
        for old in kept:
            old.remove()
        kept.clear()
    _place_centres(plan, shape, box)
    plan.others.extend(draw_bodies(plan.ax, shape, head=1.1 * edge_of(box, shape.slew)))
    plan.others.extend(draw_sector(plan.ax, shape, reach=_sector_reach(box, shape)))
    _write_reactions(plan, shape)
    _measure(plan, shape, box)


Box = tuple[float, float, float, float]


def view(shape: PlanShape) -> Box:
    """Range that is shown: supports, crane and centres of gravity, not all of the boom.

    Returns
    -------
    tuple of float
        Left, right, low, high [m]
    """
    outlines = [o for group in ground_shapes(shape.setup).values() for o in group]
    heavy = np.array([(c.x, c.y) for c in shape.centres if c.name != "load"])
    points = np.concatenate([*outlines, heavy, shape.path])
    (left, low), (right, high) = points.min(axis=0), points.max(axis=0)
    room = 0.08 * (right - left)
    high = max(high, -low) + 1.6 * room
    return left - room, right + 2.5 * room, -high, high


def edge_of(box: Box, slew: float) -> float:
    """Find how far from the axis of rotation a ray leaves the picture [m].

    Parameters
    ----------
    box : tuple of float
        Left, right, low, high [m]
    slew : float
        Of the ray [rad]
    """
    cos, sin = np.cos(slew), np.sin(slew)
    across = (box[1] if cos > 0 else box[0]) / cos if abs(cos) > 1e-9 else np.inf
    up = (box[3] if sin > 0 else box[2]) / sin if abs(sin) > 1e-9 else np.inf
    return float(min(across, up))


def _place_centres(plan: Plan, shape: PlanShape, box: Box) -> None:
    found = _apart(
        {centre.name: (centre.x, centre.y) for centre in shape.centres},
        least=LETTER * (box[3] - box[2]),
    )
    for name, mark in plan.centres.items():
        place = found.get(name)
        mark.set_data(*(([], []) if place is None else ([place[0]], [place[1]])))
    if "load" in found and load_is_out(shape):
        plan.centres["load"].set_data([], [])
        _point_to_load(plan, shape, box)


def _apart(places: dict[str, tuple[float, float]], *, least: float) -> dict[str, Array]:
    """Move letters that would stand on one another apart, each by half of what is missing."""
    found = {name: np.array(place) for name, place in places.items()}
    for one, other in combinations([name for name in found if name != "load"], 2):
        way = found[other] - found[one]
        gap = float(np.hypot(*way))
        if gap < least:
            step = (way / gap if gap > 0.0 else np.array([1.0, 0.0])) * (least - gap) / 2.0
            found[one], found[other] = found[one] - step, found[other] + step
    return found


def load_is_out(shape: PlanShape) -> bool:
    """Tell whether the load hangs further out than the picture reaches."""
    return shape.radius > 0.97 * edge_of(view(shape), shape.slew)


def _point_to_load(plan: Plan, shape: PlanShape, box: Box) -> None:
    """Show by an arrow along the boom that the load is out of the picture."""
    ray = np.array([np.cos(shape.slew), np.sin(shape.slew)])
    size, reach = box[3] - box[2], 0.97 * edge_of(box, shape.slew)
    arrow = plan.ax.annotate(
        "",
        tuple(reach * ray),
        tuple((reach - 0.09 * size) * ray),
        arrowprops={"arrowstyle": "-|>", "color": LOAD, "linewidth": 1.4, "mutation_scale": 9},
        zorder=5.9,
    )
    plan.others.append(arrow)


def _beside(plan: Plan, words: str, at: Array, way: Array) -> None:
    """Write words clear of the ring at a place, in the direction of a unit vector."""
    ha = "center" if abs(way[0]) < 0.5 else "left" if way[0] > 0.0 else "right"
    made = plan.ax.annotate(
        words, (float(at[0]), float(at[1])), (9.0 * float(way[0]), 12.0 * float(way[1])),
        textcoords="offset points", ha=ha, va="center", zorder=8.0, **type_of(SMALL),
    )  # fmt: skip
    made.set_bbox({"facecolor": PAPER, "edgecolor": "none", "pad": 0.8, "alpha": 0.85})
    plan.others.append(made)


def _sector_reach(box: Box, shape: PlanShape) -> float:
    return 0.96 * min(box[1], box[3] / float(np.sin(shape.rear)))


def _write_reactions(plan: Plan, shape: PlanShape) -> None:
    largest = float(np.nan_to_num(shape.reactions).max(initial=0.0))
    unit = display("force", plan.units, like=largest)
    for (x, y), force in zip(shape.setup.support.points, shape.reactions, strict=True):
        words = "tips" if np.isnan(force) else unit.text(float(force))
        if force == 0.0:
            words = "lifted"
        up = 1.0 if y > 0.0 else -1.0
        made = plan.ax.annotate(
            words, (x, y), (0.0, 7.0 * up), textcoords="offset points", ha="center",
            va="bottom" if up > 0 else "top", zorder=8.0, **type_of(SMALL),
        )  # fmt: skip
        made.set_bbox({"facecolor": PAPER, "edgecolor": "none", "pad": 0.5, "alpha": 0.85})
        plan.reactions.append(made)


def _measure(plan: Plan, shape: PlanShape, box: Box) -> None:
    """Distance of the resultant from the tipping line, square to it."""
    lines = shape.lines
    foot = shape.resultant + shape.inside * lines.normal[shape.near]
    gap = Line2D(
        [shape.resultant[0], foot[0]], [shape.resultant[1], foot[1]], color=INK, linewidth=0.8,
        zorder=5.5,
    )  # fmt: skip
    plan.ax.add_artist(gap)
    plan.others.append(gap)
    side = "inside" if shape.inside >= 0.0 else "past it"
    aside = np.array([-lines.normal[shape.near][1], lines.normal[shape.near][0]])
    middle, step = (shape.resultant + foot) / 2, 0.12 * (box[3] - box[2])
    # Of the two sides of the gap the one where no mark lies.
    marks = np.array([(c.x, c.y) for c in shape.centres])
    way = max(
        (aside, -aside), key=lambda way: float(np.hypot(*(marks - middle - step * way).T).min())
    )
    _beside(plan, f"{show(abs(shape.inside), 'length', plan.units)} {side}", middle, way)
    cross = Line2D(
        [shape.resultant[0]], [shape.resultant[1]], linestyle="none", marker="+", markersize=8.5,
        markeredgecolor=INK, markeredgewidth=1.0, zorder=7.1,
    )  # fmt: skip
    plan.ax.add_artist(cross)
    plan.others.append(cross)
