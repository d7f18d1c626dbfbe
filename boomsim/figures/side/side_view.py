"""Side view of a crane to scale, small or large.

Sections are drawn as tinted bodies over one another: where several lie nested the boom is darker,
as it is heavier there. A section's visible part has a firm outline, its part inside the outer
section a thin one.
"""

import numpy as np
from matplotlib.axes import Axes
from matplotlib.collections import LineCollection, PolyCollection
from matplotlib.lines import Line2D
from matplotlib.patches import Polygon

from boomsim.figures.colours_and_lines import (
    DARK,
    GLASS,
    INK,
    LOAD,
    PAPER,
    QUIET,
    STEEL,
    WHEEL,
    LineStyle,
)
from boomsim.figures.side.boom_shape import BoomShape
from boomsim.figures.side.carrier_shape import extent, pieces
from boomsim.figures.side.side_artists import (
    SideView,
    load_side,
    place_head,
    place_load,
    place_sections,
)
from boomsim.machine.model import Support, TurningMass

TONES = {"body": STEEL, "dark": DARK, "glass": GLASS, "wheel": WHEEL}
TINT = 0.15
"""Opacity of one section [1]."""

GLYPH_ANGLE = 0.17
"""Boom angle of the small side views [rad]."""

_DRAWN = (
    "crane", "papers", "bodies", "visible", "hidden", "mouths", "head", "lug", "sheave",
    "straight", "barrel", "rod", "lead", "hook_line", "load",
)  # fmt: skip


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
    counterweight : TurningMass, optional
        Default: the machine's usual one
    support : Support, optional
        Default: the machine's usual one
    detail : bool
        False leaves out what cannot be seen in a small picture
    thick : float
        Multiplies section heights, for small pictures [1]
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
    """Show another shape; see :func:`draw_sideview`."""
    rigging = [shape.machine, counterweight, support]
    if rigging != artists.rigging:
        artists.rigging[:] = rigging
        shapes = pieces(shape.machine, counterweight=counterweight, support=support)
        artists.crane.set_verts([piece.corners for piece in shapes])
        artists.crane.set_facecolor([TONES[piece.tone] for piece in shapes])
    place_sections(artists, shape)
    place_head(artists, shape)
    place_load(artists, shape)


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
    right = max(float(s.sheave[0]) + load_side(s) / 2 for s in shapes)
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
    box : tuple of float
        Left, right, bottom, top [m]
    """
    artists.ax.set_xlim(box[0], box[1])
    artists.ax.set_ylim(box[2], box[3])
