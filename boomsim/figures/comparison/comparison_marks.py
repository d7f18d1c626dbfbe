"""Marks on the comparison chart: crossovers, the strip of winners, the key of line styles."""

import numpy as np
from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.lines import Line2D
from matplotlib.patches import Rectangle
from matplotlib.text import Text

from boomsim.figures.colours_and_lines import (
    FAINT,
    FAMILIES,
    INK,
    PAPER,
    SMALL,
    Identity,
    ink_on,
    type_of,
)
from boomsim.figures.text_width import INCH, text_width
from boomsim.rating.comparison.comparison_leads import Crossover
from boomsim.rating.comparison.comparison_study import Comparison
from boomsim.rating.strategies import letter
from boomsim.units import Display, show, show_rated

STRIP = (0.965, 1.015)
"""The band of winners, as a share of the chart's height [1]."""

NEAR = 0.09
"""Crossovers closer than this share of the radii shown have labels one above the other [1]."""


def mark_crossovers(
    ax: Axes, comparison: Comparison, *, x: Display, y: Display, units: str
) -> list[Artist]:
    """Ring, drop line and label of each crossover.

    Parameters
    ----------
    x, y : Display
        Units of the axes

    Returns
    -------
    list of Artist
        Three for each crossover, in that order
    """
    made: list[Artist] = []
    before, up = -np.inf, 0
    for crossing in crossovers_on_chart(comparison):
        at = crossing.radius / x.factor, crossing.capacity / y.factor
        # A label that would lie on the one before goes a label higher.
        up = up + 1 if at[0] - before < NEAR * np.ptp(comparison.radii) / x.factor else 0
        before = at[0]
        ring = Line2D(
            [at[0]],
            [at[1]],
            linestyle="none",
            marker="o",
            markersize=8.5,
            zorder=4.0,
            markerfacecolor="none",
            markeredgecolor=INK,
            markeredgewidth=0.9,
        )
        drop = Line2D(
            [at[0], at[0]], [0.0, at[1]], color=INK, linewidth=0.6, linestyle=":", zorder=1.8
        )
        ax.add_line(ring)
        ax.add_line(drop)
        words = f"{show(crossing.radius, 'length', units)}\n{show_rated(crossing.capacity, units)}"
        note = ax.annotate(
            words,
            at,
            (7.0, 7.0 + 22.0 * up),
            textcoords="offset points",
            ha="left",
            va="bottom",
            linespacing=1.15,
            zorder=4.5,
            **type_of(SMALL),
        )
        note.set_bbox({"facecolor": PAPER, "edgecolor": "none", "pad": 0.8, "alpha": 0.85})
        made += [ring, drop, note]
    return made


def crossovers_on_chart(comparison: Comparison) -> list[Crossover]:
    """Those between the first and the last radius of the chart."""
    first, last = comparison.radii[0], comparison.radii[-1]
    return [one for one in comparison.crossovers if first <= one.radius <= last]


LEVEL = -1
"""Stands for the winner where several configurations carry the same."""


def winning_ranges(comparison: Comparison) -> list[tuple[int, float, float]]:
    """Who carries most from which radius to which, over the radii of the chart.

    Returns
    -------
    list of (int, float, float)
        Configuration or `LEVEL`, first radius, last radius [m]
    """
    found: list[tuple[int, float, float]] = []
    carried = comparison.radii[np.any(comparison.rating.capacity > 0.0, axis=0)]
    if not len(carried):
        return found
    first, last = float(carried[0]), float(carried[-1])
    for lead in comparison.leads:
        who = LEVEL if lead.leader is None else lead.leader
        near, far = max(lead.near, first), min(lead.far, last)
        if far < near:
            continue
        if found and found[-1][0] == who and found[-1][2] == near:
            near = found.pop()[1]
        found.append((who, near, far))
    return found


def mark_winners(
    ax: Axes, comparison: Comparison, looks: dict[int, Identity], *, x: Display
) -> list[Artist]:
    """Fill the strip along the top of the chart, one block for each winner.

    Parameters
    ----------
    ax : Axes
        With its limits set
    looks : dict of int to Identity
        Of the configurations that are named; blocks of others stay grey and nameless
    x : Display
        Unit of the radius
    """
    made: list[Artist] = []
    across = ax.get_xaxis_transform()
    for who, near, far in winning_ranges(comparison):
        colour = looks[who].colour if who in looks else FAINT
        block = Rectangle(
            (near / x.factor, STRIP[0]),
            (far - near) / x.factor,
            STRIP[1] - STRIP[0],
            transform=across,
            facecolor=colour,
            edgecolor=PAPER,
            linewidth=0.8,
            clip_on=False,
            zorder=3.0,
        )
        ax.add_artist(block)
        made.append(block)
        if who in looks or who == LEVEL:
            words = _fitting(ax, who, (far - near) / x.factor)
            name = ax.text(
                (near + far) / 2 / x.factor,
                sum(STRIP) / 2 - 0.002,
                words,
                transform=across,
                ha="center",
                va="center",
                zorder=4.0,
                **type_of(SMALL, colour=ink_on(colour), bold=True),
            )
            made.append(name)
    return made


def _fitting(ax: Axes, who: int, width: float) -> str:
    """As many words as the block is wide."""
    left, right = ax.get_xlim()
    room = width / (right - left) * ax.bbox.width / ax.figure.dpi * INCH
    name = "level" if who == LEVEL else letter(who)
    for words in (name if who == LEVEL else f"{name} carries most", name):
        if text_width(words, size=SMALL, bold=True) < 0.94 * room:
            return words
    return ""


def draw_key(ax: Axes, *, crossovers: bool = True, others: int = 0) -> list[Line2D | Text]:
    """Write the key of line styles in the chart's upper right corner, where no curve runs.

    Parameters
    ----------
    crossovers : bool
        Whether there are any
    others : int
        How many configurations are thin grey lines [1]
    """
    rows: list[tuple[Line2D, str]] = []
    for style in FAMILIES.values():
        rows.append((_sample(linestyle=style.line, linewidth=style.width, color=INK), style.words))
    if crossovers:
        ring = _sample(linestyle="none", marker="o", markersize=7.0, markerfacecolor="none")
        rows.append((ring, "crossover: radius and capacity"))
    if others:
        words = f"{others} other{'s' if others > 1 else ''} of this length"
        rows.append((_sample(linewidth=1.0, color=FAINT), words))
    made: list[Line2D | Text] = []
    for n, (line, words) in enumerate(rows):
        y = 0.91 - 0.06 * n
        ring_place = [0.585] if line.get_marker() == "o" else [0.56, 0.61]
        line.set_data(ring_place, [y] * len(ring_place))
        line.set_transform(ax.transAxes)
        ax.add_line(line)
        text = ax.text(
            0.63, y, words, transform=ax.transAxes, ha="left", va="center", **type_of(SMALL)
        )
        text.set_bbox({"facecolor": PAPER, "edgecolor": "none", "pad": 1.0})
        made += [line, text]
    return made


def _sample(**look: object) -> Line2D:
    return Line2D([], [], **{"color": INK, "zorder": 2.5, **look})  # type: ignore[arg-type]
