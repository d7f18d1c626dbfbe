"""What lies under a plan view, in pale tones: the crane itself and the over-rear sector."""

import numpy as np
from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.lines import Line2D
from matplotlib.patches import Polygon, Wedge

from boomsim.figures.colours_and_lines import FAINT, INK, PAPER, QUIET, SMALL, STEEL, type_of
from boomsim.figures.plan.plan_shape import PlanShape, ground_shapes, turned_by, turning_shapes
from boomsim.mechanics.geometry import Array


def draw_bodies(ax: Axes, shape: PlanShape, *, head: float) -> list[Artist]:
    """Draw the carrier, and above it the superstructure with its boom.

    Parameters
    ----------
    head : float
        How much of the boom to draw at most, from the axis of rotation [m]
    """
    looks = {"chassis": STEEL, "cab": STEEL, "tyre": FAINT, "float": INK}
    made: list[Artist] = []
    for name, outlines in ground_shapes(shape.setup).items():
        for points in outlines:
            if name == "beam":
                made.append(
                    Line2D(points[:, 0], points[:, 1], color=FAINT, linewidth=2.2, zorder=1.5)
                )
            else:
                made.append(_body(points, looks[name], 4.5 if name == "float" else 2.0))
    for points in turning_shapes(shape.setup, head=min(shape.radius, head)).values():
        made.append(_body(turned_by(points, shape.slew), PAPER, 3.0, alpha=0.65))
    for artist in made:
        ax.add_artist(artist)
    return made


def _body(points: Array, colour: str, zorder: float, *, alpha: float = 1.0) -> Polygon:
    return Polygon(
        points, facecolor=colour, edgecolor=QUIET, linewidth=0.5, zorder=zorder, alpha=alpha
    )


def draw_sector(ax: Axes, shape: PlanShape, *, reach: float) -> list[Artist]:
    """Draw the over-rear sector between the lines through the rear jack centres.

    Parameters
    ----------
    reach : float
        How far out to draw it [m]
    """
    angle = float(np.degrees(shape.rear))
    made: list[Artist] = [
        Wedge((0.0, 0.0), reach, -angle, angle, facecolor=FAINT, alpha=0.25, zorder=1.0)
    ]
    for sign in (-1.0, 1.0):
        end = reach * np.array([np.cos(shape.rear), sign * np.sin(shape.rear)])
        made.append(
            Line2D(
                [0.0, end[0]],
                [0.0, end[1]],
                color=QUIET,
                linewidth=0.7,
                linestyle="dashed",
                zorder=1.2,
            )
        )
    for artist in made:
        ax.add_artist(artist)
    # On the side of the sector where the boom is not.
    turn = (-0.55 if 0.0 < shape.slew < shape.rear else 0.55) * shape.rear
    turn = turn if abs(shape.slew) <= shape.rear else 0.0
    x, y = 0.9 * reach * np.cos(turn), 0.9 * reach * np.sin(turn)
    words = f"over the\nrear \u00b1{angle:.0f}\u00b0"
    style = type_of(SMALL, colour=QUIET)
    name = ax.text(x, y, words, ha="center", va="center", zorder=7.5, **style)
    if turn == 0.0:
        name.set_bbox({"facecolor": PAPER, "edgecolor": "none", "pad": 0.5, "alpha": 0.85})
    return [*made, name]
