"""The tackle spread out: drum, lead line, head sheaves, falls, hook block, the dead end.

Every sheave is as wide as the distance of the falls, so that they hang side by side: the falls are
at 1, 2, 3, ... and the lead line comes to 0. Not to scale.
"""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from matplotlib.axes import Axes
from matplotlib.patches import Arc, Circle, FancyBboxPatch, Polygon, Rectangle

from boomsim.figures.colours_and_lines import FAINT, INK, LOAD, PAPER, QUIET, SMALL, STEEL, type_of
from boomsim.mechanics.geometry import Array

SHEAVE, TOP, BLOCK = 0.5, 8.6, 3.3
"""Radius of a sheave, height of the head sheaves and of those in the hook block."""

DRUM, FULL = 0.85, 1.45
"""Radius of the drum, and with all its rope on."""

DRUM_AT = (-3.2, 2.4)
"""Centre of the drum."""

HOOK = 1.15
"""From the lowest sheave to the eye of the hook."""

FEW = 5
"""With fewer parts there is room to the right of the hook block."""

HALF_UNDER = (180.0, 360.0)
"""The rope under a sheave of the block, from and to [deg]."""

ROPE = 1.5
"""Width of the rope [pt]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tackle:
    """What the picture of a tackle says.

    Attributes
    ----------
    on_drum : float or None
        Share of the rope that is on the drum; None where it is not known [1]
    lead, dead_end, hook, drum : str
        What is written at the lead line, at the dead end, below the hook and at the drum
    """

    parts: int
    on_drum: float | None
    lead: str
    dead_end: str
    hook: str
    drum: str


def draw_tackle(ax: Axes, tackle: Tackle) -> None:
    """Draw a tackle."""
    parts = tackle.parts
    ax.set_aspect("equal")
    ax.set_axis_off()
    _head(ax, parts)
    _block(ax, parts, tackle.hook)
    leans = _drum(ax, tackle)
    for number in range(1, parts + 1):
        _fall(ax, number, parts)
    for number, (centre, turn) in enumerate(sheaves(parts)):
        # The rope leaves the first sheave where the lead line touches it, which is on its slope.
        first, last = (0.0, 180.0 - leans if number == 0 else 180.0) if turn > 0.0 else HALF_UNDER
        _sheave(ax, centre, first=first, last=last)
    _ends(ax, tackle)


def sheaves(parts: int) -> Iterator[tuple[tuple[float, float], float]]:
    """Centres of the sheaves that the rope runs over, from the lead line to the dead end.

    Parameters
    ----------
    parts : int
        Parts of line [1]

    Yields
    ------
    (x, y), turn
        Turn is 1 at the head, where the rope runs over the sheave, and -1 in the block
    """
    for number in range(parts):
        head = number % 2 == 0
        yield (number + 0.5, TOP if head else BLOCK), 1.0 if head else -1.0


def dead_end(parts: int) -> tuple[float, float]:
    """Where the last part is made fast: at the head for an even number, else at the block."""
    return float(parts), TOP if parts % 2 == 0 else BLOCK


def _fall(ax: Axes, number: int, parts: int) -> None:
    ax.plot([number] * 2, [BLOCK, TOP], color=INK, linewidth=ROPE, solid_capstyle="butt", zorder=3)
    ax.text(
        number, (TOP + BLOCK) / 2.0, str(number), ha="center", va="center", zorder=5,
        bbox={"boxstyle": "square,pad=0.12", "facecolor": PAPER, "edgecolor": "none"},
        **type_of(SMALL, bold=number == parts),
    )  # fmt: skip


def _sheave(ax: Axes, centre: tuple[float, float], *, first: float, last: float) -> None:
    ax.add_patch(
        Circle(centre, SHEAVE - 0.06, facecolor=PAPER, edgecolor=QUIET, linewidth=0.8, zorder=4)
    )
    ax.add_patch(Circle(centre, 0.09, facecolor=QUIET, edgecolor="none", zorder=5))
    width = 2 * SHEAVE
    ax.add_patch(
        Arc(centre, width, width, theta1=first, theta2=last, color=INK, linewidth=ROPE, zorder=5)
    )


def _head(ax: Axes, parts: int) -> None:
    """The boom's head, a plate behind its sheaves."""
    right = max(parts, 1) + 0.45
    ax.add_patch(
        FancyBboxPatch(
            (-0.3, TOP - 0.35), right + 0.3, 0.7, boxstyle="round,pad=0.25", facecolor=STEEL,
            edgecolor=FAINT, linewidth=0.8, zorder=1,
        )
    )  # fmt: skip


def _block(ax: Axes, parts: int, words: str) -> None:
    """The hook block round its sheaves, the hook, and what hangs on it."""
    left, right = (0.45, 1.55) if parts == 1 else (0.75, parts + (0.25 if parts % 2 == 0 else 0.4))
    middle = (left + right) / 2.0
    ax.add_patch(
        FancyBboxPatch(
            (left, BLOCK - 0.35), right - left, 0.7, boxstyle="round,pad=0.25", facecolor=STEEL,
            edgecolor=FAINT, linewidth=0.8, zorder=1,
        )
    )  # fmt: skip
    low = BLOCK - 0.6
    ax.plot([middle] * 2, [low, low - 0.35], color=QUIET, linewidth=2.4, zorder=2)
    ax.add_patch(
        Arc(
            (middle, low - HOOK / 2 - 0.15), 0.7, 0.8, theta1=90.0, theta2=360.0, angle=-90.0,
            color=QUIET, linewidth=2.4, zorder=2,
        )
    )  # fmt: skip
    base = low - HOOK - 0.05
    ax.text(middle, base, words, ha="center", va="top", **type_of(SMALL, bold=True, colour=LOAD))


def _drum(ax: Axes, tackle: Tackle) -> float:
    """Draw the drum with as much rope as is left, and the lead line to the first sheave.

    Gives how far short of a half turn the lead line lies on that sheave [deg].
    """
    centre, radius = np.array(DRUM_AT), DRUM
    if tackle.on_drum is not None:
        # Layers fill an area: what is left is a share of the ring between bare and full.
        share = float(np.clip(tackle.on_drum, 0.0, 1.0))
        radius = float(np.sqrt(DRUM**2 + share * (FULL**2 - DRUM**2)))
        ax.add_patch(
            Circle(
                DRUM_AT, FULL, facecolor="none", edgecolor=FAINT, linewidth=0.8, linestyle="dotted"
            )
        )
    ax.add_patch(Circle(DRUM_AT, radius, facecolor=FAINT, edgecolor=INK, linewidth=0.8, zorder=2))
    for ring in np.arange(DRUM + 0.12, radius, 0.12):
        ax.add_patch(
            Circle(DRUM_AT, float(ring), facecolor="none", edgecolor=QUIET, linewidth=0.4, zorder=2)
        )
    ax.add_patch(Circle(DRUM_AT, DRUM, facecolor=PAPER, edgecolor=INK, linewidth=0.8, zorder=3))
    ax.add_patch(Circle(DRUM_AT, 0.12, facecolor=QUIET, edgecolor="none", zorder=4))
    start, end = tangent(centre, radius, np.array([0.5, TOP]), SHEAVE)
    ax.plot(*np.array([start, end]).T, color=INK, linewidth=ROPE, zorder=6)
    arrow = start + 0.42 * (end - start)
    along = (start - end) / np.hypot(*(start - end))
    across = np.array([-along[1], along[0]])
    points = [arrow + 0.3 * along, arrow - 0.1 * along + 0.16 * across]
    ax.add_patch(
        Polygon([*points, arrow - 0.1 * along - 0.16 * across], color=INK, linewidth=0.0, zorder=6)
    )
    return float(180.0 - np.degrees(np.arctan2(end[1] - TOP, end[0] - SHEAVE)))


def tangent(one: Array, radius_one: float, two: Array, radius_two: float) -> tuple[Array, Array]:
    """Ends of the straight line that touches two circles on their left, seen from the first one.

    Parameters
    ----------
    one, two : ndarray, shape (2,)
        Centres

    Returns
    -------
    start, end : ndarray, shape (2,)
    """
    between = two - one
    apart = float(np.hypot(*between))
    along = between / apart
    left = np.array([-along[1], along[0]])
    # The touching radii are square to the line, which leans by the difference of the radii.
    sine = (radius_one - radius_two) / apart
    normal = sine * along + np.sqrt(1.0 - sine**2) * left
    return one + radius_one * normal, two + radius_two * normal


def _ends(ax: Axes, tackle: Tackle) -> None:
    """The dead end, and what is written at it, at the lead line and at the drum."""
    x, y = dead_end(tackle.parts)
    ax.add_patch(Rectangle((x - 0.17, y - 0.17), 0.34, 0.34, color=LOAD, linewidth=0.0, zorder=7))
    if y == TOP:
        ax.text(x + 0.4, y + 0.85, tackle.dead_end, ha="right", va="bottom", **type_of(SMALL))
    elif tackle.parts < FEW:
        ax.text(x + 1.0, y, tackle.dead_end, ha="left", va="center", **type_of(SMALL))
    else:
        ax.text(x + 0.4, y - 0.85, tackle.dead_end, ha="right", va="top", **type_of(SMALL))
    start, end = np.array([DRUM_AT[0] - 0.2, 0.0]), np.array([0.0, TOP])
    ax.text(
        (start[0] + end[0]) / 2.0 - 0.9, (DRUM_AT[1] + TOP) / 2.0 + 1.2, tackle.lead, ha="right",
        va="center", linespacing=1.25, multialignment="right", **type_of(SMALL),
    )  # fmt: skip
    ax.text(
        DRUM_AT[0], DRUM_AT[1] - FULL - 0.25, tackle.drum, ha="center", va="top",
        linespacing=1.25, **type_of(SMALL),
    )  # fmt: skip
