"""Artists of a side view, and where a shape puts them."""

from dataclasses import dataclass

import numpy as np
from matplotlib.axes import Axes
from matplotlib.collections import LineCollection, PolyCollection
from matplotlib.lines import Line2D
from matplotlib.patches import Polygon

from boomsim.figures.side.boom_shape import BoomShape, outline
from boomsim.mechanics.geometry import Array

LOAD_DENSITY = 2400.0
"""A load is drawn as a cube of concrete [kg/m3]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class SideView:
    """Artists of a side view.

    Attributes
    ----------
    crane : PolyCollection
        Without the boom
    rigging : list of object
        Machine, counterweight and support that `crane` shows
    papers, bodies : PolyCollection
        Of each section: white ground and tinted body
    visible, hidden, mouths : LineCollection
        Of each section: firm outline, outline inside the outer section, collar at its front
    head, lug, sheave, straight, barrel, rod, lead, hook_line, load : Polygon or Line2D
    detail : bool
        False in small pictures
    thick : float
        What section heights are multiplied by [1]
    """

    ax: Axes
    crane: PolyCollection
    rigging: list[object]
    papers: PolyCollection
    bodies: PolyCollection
    visible: LineCollection
    hidden: LineCollection
    mouths: LineCollection
    head: Polygon
    lug: Polygon
    sheave: Line2D
    straight: Line2D
    barrel: Line2D
    rod: Line2D
    lead: Line2D
    hook_line: Line2D
    load: Polygon
    detail: bool
    thick: float


def place_sections(artists: SideView, shape: BoomShape) -> None:
    """Put the outlines of all sections where the shape has them."""

    def part(section: int, start: float = 0.0, end: float = np.inf) -> Array:
        return outline(shape, section, start=start, end=end, thick=artists.thick)

    inner = range(1, len(shape.inside))
    # Innermost first: what is nested lies under what holds it.
    whole = [part(i) for i in reversed(range(len(shape.inside)))]
    artists.papers.set_verts(whole)
    artists.bodies.set_verts(whole)
    artists.visible.set_segments(
        [_closed(part(0)), *(part(i, start=shape.inside[i]) for i in inner)]
    )
    # Half a turn opens the outline at the mouth, where the visible one goes on.
    nested = [part(i, end=shape.inside[i]) for i in inner] if artists.detail else []
    artists.hidden.set_segments([np.roll(p, len(p) // 2, axis=0) for p in nested])
    artists.mouths.set_segments([_collar(shape, i - 1, artists.thick) for i in inner])


def _closed(points: Array) -> Array:
    return np.concatenate([points, points[:1]])


def _collar(shape: BoomShape, section: int, thick: float) -> Array:
    """Stiffened mouth of an outer section: a line a little longer than its height."""
    front = shape.along[section][-1]
    ends = outline(shape, section, start=front - 0.05 * shape.reach[section][0], thick=1.12 * thick)
    return ends[len(ends) // 2 - 1 : len(ends) // 2 + 1]


def place_head(artists: SideView, shape: BoomShape) -> None:
    """Put the head, the luffing cylinder, the lead line and the unbent axis in place."""
    last = len(shape.axis) - 1
    front = shape.along[last][-1]
    tip = outline(shape, last, start=0.97 * front, thick=artists.thick)
    half = len(tip) // 2
    artists.head.set_xy(np.array([tip[half - 1], shape.rope, shape.sheave, tip[half]]))
    radius = 0.8 * shape.reach[last][1] * artists.thick * 0.5
    turn = np.linspace(0.0, 2.0 * np.pi, 24)
    artists.sheave.set_data(
        shape.sheave[0] + radius * np.cos(turn), shape.sheave[1] + radius * np.sin(turn)
    )
    machine, cylinder = shape.machine, shape.machine.cylinder
    base, arm = shape.along[0], 0.06 * cylinder.attach_along
    root = [
        [np.interp(cylinder.attach_along + side * arm, base, shape.axis[0][:, k]) for k in (0, 1)]
        for side in (-1.0, 1.0)
    ]
    artists.lug.set_xy(np.array([root[0], root[1], shape.lug]))
    foot = np.array([cylinder.base_out, cylinder.base_up])
    middle = foot + 0.6 * (shape.lug - foot)
    _between(artists.barrel, foot, middle)
    _between(artists.rod, foot, shape.lug)
    winch = np.array([machine.hoist.winch_out, machine.hoist.winch_up])
    _between(artists.lead, winch, shape.rope)
    artists.lead.set_visible(artists.detail)
    _between(artists.straight, *shape.straight)
    artists.straight.set_visible(artists.detail and shape.load > 0.0)


def _between(line: Line2D, start: Array, end: Array) -> None:
    line.set_data([start[0], end[0]], [start[1], end[1]])


def place_load(artists: SideView, shape: BoomShape) -> None:
    """Hang the load near the ground; without a load, a short line with a bare hook."""
    size = shape.machine.heel_up
    out, up = shape.sheave
    if not shape.load > 0.0:
        hook = np.array([out, max(up - 0.5 * size, 0.1 * size)])
        _between(artists.hook_line, shape.sheave, hook)
        artists.load.set_xy(_block(hook, 0.09 * size, 0.16 * size))
        return
    side = load_side(shape)
    bottom = min(0.25 * size, max(up - side - 0.3 * size, 0.0))
    top = np.array([out, bottom + side])
    _between(artists.hook_line, shape.sheave, top)
    artists.load.set_xy(_block(top, side, side))


def load_side(shape: BoomShape) -> float:
    """Side of the cube that stands for the load [m]."""
    return float((shape.load / LOAD_DENSITY) ** (1.0 / 3.0))


def _block(top: Array, width: float, height: float) -> Array:
    left, right, low = top[0] - width / 2, top[0] + width / 2, top[1] - height
    return np.array([[left, low], [right, low], [right, top[1]], [left, top[1]]])
