"""Marks that both pictures of a way share: the load's line, and what is met on it."""

from dataclasses import dataclass

import numpy as np
from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.lines import Line2D

from boomsim.figures.colours_and_lines import INK, LOAD, PAPER, QUIET, SMALL, type_of
from boomsim.figures.text_width import INCH, POINT, text_width
from boomsim.rating.empty_hook.empty_hook_sentences import near_radius
from boomsim.rating.path.path_marks import Marks
from boomsim.rating.path.telescope_drive import PUSH
from boomsim.units import Display

MARK = 6.0
"""Size of a mark [pt]."""

LOWEST, STEP, MARGIN = 26.0, 25.0, 7.0
"""How high the lowest words stand over their mark, from one to the next, and over a curve [pt]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Met:
    """One mark of a picture.

    Attributes
    ----------
    radius : float
        [m]
    words : str
    marker : str
        For the plot
    """

    radius: float
    words: str
    marker: str


def met_on(marks: Marks, *, direction: float) -> list[Met]:
    """List what a load meets on its way: nothing breaks any more where the crane has tipped.

    Parameters
    ----------
    marks : Marks
    direction : float
        1 where places along the way grow, -1 where they become less [1]
    """
    fails = marks.fails if marks.first_of_ends(direction=direction) is marks.fails else None
    pushed = marks.rated is not None and marks.rated.limit.name == PUSH
    told = (
        (marks.rated, "the push is used up" if pushed else "as much as is rated", "o"),
        (fails, "something breaks", "X"),
        (marks.tips, "it tips", "v"),
    )
    return [
        Met(radius=mark.place.radius, words=words, marker=marker)
        for mark, words, marker in told
        if mark is not None
    ]


def draw_way(
    ax: Axes, *, load: float, start: float, end: float, marks: Marks, direction: float,
    x: Display, y: Display, units: str,
) -> list[Artist]:  # fmt: skip
    """Draw a kept load as a level line over the radii, with what it meets.

    Parameters
    ----------
    ax : Axes
    load : float
        [kg]
    start, end : float
        Radii [m]
    marks : Marks
    direction : float
        As in :func:`met_on`
    x, y : Display
        Units of the axes
    units : str
        "metric" or "us"

    Returns
    -------
    list of Artist
        The line, then a marker and words for each mark, then the line's name
    """
    level = load / y.factor
    line = Line2D(
        [start / x.factor, end / x.factor], [level, level], color=LOAD, linewidth=1.4, zorder=4.0
    )
    ax.add_line(line)
    made: list[Artist] = [line]
    met = sorted(met_on(marks, direction=direction), key=lambda met: met.radius)
    curves, high = list(ax.lines[:-1]), LOWEST - STEP
    for one in met:
        at = one.radius / x.factor
        made.append(_marker(ax, at, level, one.marker))
        words = f"{one.words}\n{near_radius(one.radius, units=units)}"
        last = one is met[-1]
        high = max(high + STEP, _clear_of(ax, curves, (at, level), words, last=last))
        made.append(_words(ax, (at, level), words, high=high, last=last))
    made.append(
        ax.annotate(
            f"the load, {y.text(load)}", (start / x.factor, level), (0.0, -4.0),
            textcoords="offset points", ha="left", va="top", **type_of(SMALL, colour=LOAD),
        )
    )  # fmt: skip
    return made


def _marker(ax: Axes, at: float, level: float, marker: str) -> Line2D:
    mark = Line2D(
        [at], [level], linestyle="none", marker=marker, markersize=MARK, zorder=5.0,
        markerfacecolor=PAPER, markeredgecolor=INK, markeredgewidth=1.1, clip_on=False,
    )  # fmt: skip
    ax.add_line(mark)
    return mark


def _clear_of(
    ax: Axes, curves: list[Line2D], at: tuple[float, float], words: str, *, last: bool
) -> float:
    """How far above a mark words lie on no curve [pt]."""
    box, size = ax.get_position(), ax.get_figure(root=True).get_size_inches()  # type: ignore[union-attr]
    wide, high = box.width * size[0] * INCH, box.height * size[1] * INCH / POINT
    (left, right), (bottom, top) = ax.get_xlim(), ax.get_ylim()
    span = max(text_width(line, size=SMALL) for line in words.split("\n")) / wide * (right - left)
    ends = (at[0] - span / 2, at[0] + span / 2) if last else (at[0] - span, at[0])
    places = np.linspace(ends[0], ends[1], 50)
    tops: list[float] = []
    for curve in curves:
        along, up = np.array(curve.get_xdata(), float), np.array(curve.get_ydata(), float)
        if len(along) > 2:
            over = np.interp(places, along, up, left=np.nan, right=np.nan)
            tops += [float(np.nanmax(over))] if np.isfinite(over).any() else []
    above = max(tops, default=at[1]) - at[1]
    return float(above * high / (top - bottom)) + MARGIN


def _words(ax: Axes, at: tuple[float, float], words: str, *, high: float, last: bool) -> Artist:
    """Words above a mark, each a step higher than the one before, with a leader down to it.

    All but the last end at their mark, out of the way of the leaders that come down beside them.
    """
    made = ax.annotate(
        words, at, (0.0, high), textcoords="offset points",
        ha="center" if last else "right", va="bottom",
        linespacing=1.15, zorder=5.5,
        arrowprops={"arrowstyle": "-", "color": QUIET, "linewidth": 0.6, "shrinkB": 4.0,
                    "relpos": (0.5 if last else 1.0, 0.0)},
        **type_of(SMALL),
    )  # fmt: skip
    made.set_bbox({"facecolor": PAPER, "edgecolor": "none", "pad": 0.8, "alpha": 0.85})
    return made
