"""Marks that both pictures of a way share: the load's line, and what is met on it."""

from dataclasses import dataclass
from typing import Literal

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

Side = Literal["left", "center", "right"]

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
    curves = list(ax.lines[:-1])
    said = [f"{one.words}\n{near_radius(one.radius, units=units)}" for one in met]
    places = [one.radius / x.factor for one in met]
    sides = _sides(ax, places, said)
    # What is rated falls outwards: words on the right of their marks lie over the lower part, the
    # nearest highest; words on the left climb.
    to_right = sides[:1] == ["left"]
    high = LOWEST - STEP
    for number in sorted(range(len(met)), reverse=to_right):
        at, words, side = (places[number], level), said[number], sides[number]
        made.append(_marker(ax, *at, met[number].marker))
        high = max(high + STEP, _clear_of(ax, curves, at, words, side=side))
        made.append(_words(ax, at, words, high=high, side=side))
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


def _span(ax: Axes, words: str) -> float:
    """Width of words [unit of the axis]."""
    wide = ax.get_position().width * ax.get_figure(root=True).get_size_inches()[0] * INCH  # type: ignore[union-attr]
    left, right = ax.get_xlim()
    longest = max(text_width(line, size=SMALL) for line in words.split("\n"))
    return float(longest / wide * (right - left))


def _sides(ax: Axes, places: list[float], said: list[str]) -> list[Side]:
    """How words are aligned at their marks: all on the right, if there is room for them."""
    right = ax.get_xlim()[1]
    ends = [at + _span(ax, words) for at, words in zip(places, said, strict=True)]
    if all(end <= right for end in ends):
        return ["left" for _ in said]
    return ["center" if words is said[-1] else "right" for words in said]


def _clear_of(
    ax: Axes, curves: list[Line2D], at: tuple[float, float], words: str, *, side: Side
) -> float:
    """How far above a mark words lie on no curve [pt]."""
    before = {"left": 0.0, "center": 0.5, "right": 1.0}[side]
    span = _span(ax, words)
    places = np.linspace(at[0] - before * span, at[0] + (1.0 - before) * span, 50)
    tops: list[float] = []
    for curve in curves:
        along, up = np.array(curve.get_xdata(), float), np.array(curve.get_ydata(), float)
        if len(along) > 2:
            over = np.interp(places, along, up, left=np.nan, right=np.nan)
            tops += [float(np.nanmax(over))] if np.isfinite(over).any() else []
    high = ax.get_position().height * ax.get_figure(root=True).get_size_inches()[1] * INCH / POINT  # type: ignore[union-attr]
    bottom, top = ax.get_ylim()
    return float((max(tops, default=at[1]) - at[1]) * high / (top - bottom)) + MARGIN


def _words(ax: Axes, at: tuple[float, float], words: str, *, high: float, side: Side) -> Artist:
    """Words above a mark, with a leader down to it."""
    made = ax.annotate(
        words, at, (0.0, high), textcoords="offset points",
        ha=side, va="bottom", linespacing=1.15, zorder=5.5,
        arrowprops={"arrowstyle": "-", "color": QUIET, "linewidth": 0.6, "shrinkB": 4.0,
                    "relpos": ({"left": 0.0, "center": 0.5, "right": 1.0}[side], 0.0)},
        **type_of(SMALL),
    )  # fmt: skip
    made.set_bbox({"facecolor": PAPER, "edgecolor": "none", "pad": 0.8, "alpha": 0.85})
    return made
