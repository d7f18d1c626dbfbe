"""Side view of a crane to scale, small or large.

Sections are drawn as tinted bodies over one another: where several lie nested the boom is darker,
as it is heavier there. A section's visible part has a firm outline, its part inside the outer
section a thin one.
"""

from dataclasses import dataclass

import numpy as np
from matplotlib.axes import Axes
from matplotlib.collections import LineCollection, PolyCollection
from matplotlib.lines import Line2D
from matplotlib.patches import Polygon

from boomsim.figures.boomshape import BoomShape, outline
from boomsim.figures.carrier import extent, pieces
from boomsim.figures.styles import INK, LOAD, PAPER, QUIET, STEEL, LineStyle
from boomsim.machine.model import Support, TurningMass
from boomsim.mechanics.geometry import Array

TONES = {"body": STEEL, "dark": "#8f96a1", "glass": "#f4f6f9", "wheel": "#4a4f57"}
TINT = 0.15
"""Opacity of one section [1]."""

GLYPH_ANGLE = 0.17
"""Boom angle of the small side views [rad]."""

_DRAWN = (
    "crane", "papers", "bodies", "visible", "hidden", "mouths", "head", "lug", "sheave",
    "straight", "barrel", "rod", "lead", "hook_line", "load",
)  # fmt: skip

LOAD_DENSITY = 2400.0
"""A load is drawn as a cube of concrete [kg/m3]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class SideView:
    """Artists of a side view.

    Attributes
    ----------
    ax : Axes
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


def draw_sideview(
    ax: Axes,
    shape: BoomShape,
    *,
    counterweight: TurningMass | None = None,
    support: Support | None = None,
    detail: bool = True,
    thick: float = 1.0,
) -> SideView:
    """Draw a crane from the side, boom over the rear.

    Parameters
    ----------
    ax : Axes
        Gets equal scales and no frame
    shape : BoomShape
    counterweight : TurningMass, optional
        Default: the machine's usual one
    support : Support, optional
        Default: the machine's usual one
    detail : bool
        False leaves out what cannot be seen in a small picture
    thick : float
        Multiplies section heights, for small pictures [1]

    Returns
    -------
    SideView
    """
    ax.set_aspect("equal", adjustable="box")
    ax.set_axis_off()
    fine = 1.0 if detail else 0.6
    ground = Line2D(
        [0.0, 1.0],
        [0.0, 0.0],
        color=QUIET,
        linewidth=0.8 * fine,
        zorder=1.0,
        transform=ax.get_yaxis_transform(),
    )

    def line(colour: str, width: float, zorder: float, style: LineStyle = "solid") -> Line2D:
        return Line2D([], [], color=colour, linewidth=width * fine, linestyle=style, zorder=zorder)

    def body(colour: str, zorder: float) -> Polygon:
        return Polygon(
            np.zeros((1, 2)),
            facecolor=colour,
            edgecolor=INK,
            linewidth=0.7 * fine,
            zorder=zorder,
            joinstyle="round",
        )

    def bodies(colour: str, zorder: float, alpha: float = 1.0) -> PolyCollection:
        return PolyCollection([], facecolors=colour, linewidths=0.0, zorder=zorder, alpha=alpha)

    def lines(width: float, zorder: float) -> LineCollection:
        return LineCollection([], colors=INK, linewidths=width * fine, zorder=zorder)

    artists = SideView(
        ax=ax,
        crane=PolyCollection(
            [], edgecolors=INK, linewidths=0.6 if detail else 0.3, zorder=2.0, joinstyle="round"
        ),
        rigging=[],
        papers=bodies(PAPER, 4.4),
        bodies=bodies(INK, 4.5, TINT),
        visible=lines(0.9, 5.3),
        hidden=lines(0.35, 5.0),
        mouths=lines(1.1, 5.35),
        head=body(TONES["dark"], 5.4),
        lug=body(TONES["dark"], 4.2),
        sheave=line(INK, 1.0, 5.6),
        straight=line(QUIET, 0.6, 3.0, "dashed"),
        barrel=line(INK, 3.4, 4.0),
        rod=line(INK, 1.5, 3.9),
        lead=line(QUIET, 0.5, 4.1),
        hook_line=line(INK, 0.7, 3.5),
        load=body(LOAD, 3.6),
        detail=detail,
        thick=thick,
    )
    ax.add_artist(ground)
    for name in _DRAWN:
        ax.add_artist(getattr(artists, name))
    update_sideview(artists, shape, counterweight=counterweight, support=support)
    return artists


def update_sideview(
    artists: SideView,
    shape: BoomShape,
    *,
    counterweight: TurningMass | None = None,
    support: Support | None = None,
) -> None:
    """Show another shape; see :func:`draw_sideview`.

    Parameters
    ----------
    artists : SideView
    shape : BoomShape
    counterweight : TurningMass, optional
    support : Support, optional
    """
    rigging = [shape.machine, counterweight, support]
    if rigging != artists.rigging:
        artists.rigging[:] = rigging
        shapes = pieces(shape.machine, counterweight=counterweight, support=support)
        artists.crane.set_verts([piece.corners for piece in shapes])
        artists.crane.set_facecolor([TONES[piece.tone] for piece in shapes])
    _place_sections(artists, shape)
    _place_head(artists, shape)
    _place_load(artists, shape)


def _place_sections(artists: SideView, shape: BoomShape) -> None:
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


def _place_head(artists: SideView, shape: BoomShape) -> None:
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


def _place_load(artists: SideView, shape: BoomShape) -> None:
    """Hang the load near the ground; without a load, a short line with a bare hook."""
    size = shape.machine.heel_up
    out, up = shape.sheave
    if not shape.load > 0.0:
        hook = np.array([out, max(up - 0.5 * size, 0.1 * size)])
        _between(artists.hook_line, shape.sheave, hook)
        artists.load.set_xy(_block(hook, 0.09 * size, 0.16 * size))
        return
    side = _load_side(shape)
    bottom = min(0.25 * size, max(up - side - 0.3 * size, 0.0))
    top = np.array([out, bottom + side])
    _between(artists.hook_line, shape.sheave, top)
    artists.load.set_xy(_block(top, side, side))


def _load_side(shape: BoomShape) -> float:
    return float((shape.load / LOAD_DENSITY) ** (1.0 / 3.0))


def _block(top: Array, width: float, height: float) -> Array:
    left, right, low = top[0] - width / 2, top[0] + width / 2, top[1] - height
    return np.array([[left, low], [right, low], [right, top[1]], [left, top[1]]])


def limits(
    shapes: list[BoomShape], *, dimensions: bool = False
) -> tuple[float, float, float, float]:
    """Range that holds the crane with all these shapes, so that pictures compare.

    Parameters
    ----------
    shapes : list of BoomShape
        Of one machine
    dimensions : bool
        Leave room for them

    Returns
    -------
    tuple of float
        Left, right, bottom, top [m]
    """
    machine = shapes[0].machine
    least, greatest = extent(machine)
    size = machine.heel_up
    right = max(float(s.sheave[0]) + _load_side(s) / 2 for s in shapes)
    high = max(float(a[:, 1].max()) for s in shapes for a in s.axis)
    right, high = max(greatest, right + 0.2 * size), max(high + 0.3 * size, 1.2 * size)
    left, bottom = least - 0.1 * size, -0.08 * size
    if dimensions:
        room = 0.06 * (right - left)
        return left, right + room, bottom - 0.6 * room, high + 0.5 * room
    return left, right, bottom, high


def frame(artists: SideView, box: tuple[float, float, float, float]) -> None:
    """Show a range; see :func:`limits`.

    Parameters
    ----------
    artists : SideView
    box : tuple of float
        Left, right, bottom, top [m]
    """
    artists.ax.set_xlim(box[0], box[1])
    artists.ax.set_ylim(box[2], box[3])
