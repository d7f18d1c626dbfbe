"""What an indicator shows and what is, two marks on a line for each condition."""

from dataclasses import dataclass, field

import numpy as np
from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.lines import Line2D

from boomsim.figures.colours_and_lines import FAINT, INK, LOAD, PAPER, QUIET, SMALL, type_of
from boomsim.figures.unit_axes import quiet_axes
from boomsim.rating.indicator.indicator_sentences import name_of, percent
from boomsim.rating.indicator.indicator_study import LESS, Indicated

MOST = 1.6
"""Marks beyond this share stand at the edge [1]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class ShownAndTrue:
    """Artists by condition.

    Attributes
    ----------
    shown, true : Line2D by condition
        What it shows, what is
    links : Line2D by condition
        Between both
    others : list of Artist
    """

    shown: dict[str, Line2D] = field(default_factory=dict)
    true: dict[str, Line2D] = field(default_factory=dict)
    links: dict[str, Line2D] = field(default_factory=dict)
    others: list[Artist] = field(default_factory=list)


def draw_shown_and_true(ax: Axes, found: Indicated, *, units: str = "metric") -> ShownAndTrue:
    """Draw a line for each condition.

    Parameters
    ----------
    ax : Axes
    found : Indicated
    units : str
        "metric" or "us"
    """
    quiet_axes(ax, x="of the rated load, %", y="", grid="x")
    every = [_at(share) for row in found.rows for share in (row.shown_utilisation, row.utilisation)]
    low, high = min(every), max([*every, 100.0])
    room = 0.46 * (high - low)
    ax.set_xlim(low - 0.06 * (high - low), high + room)
    ax.set_ylim(len(found.rows) - 0.5, -0.9)
    ax.set_yticks([])
    drawn = ShownAndTrue()
    limit = ax.axvline(100.0, color=INK, linewidth=2.3, zorder=2.0)
    drawn.others.append(limit)
    for row, one in enumerate(found.rows):
        key, less = one.condition.key, one.verdict == LESS
        shows, true = _at(one.shown_utilisation), _at(one.utilisation)
        colour = LOAD if less else QUIET
        drawn.links[key] = ax.plot(
            [shows, true], [row, row], color=colour, linewidth=2.0 if less else 1.0, zorder=3.0
        )[0]
        drawn.true[key] = _mark(ax, true, row, "D", INK)
        drawn.shown[key] = _mark(ax, shows, row, "o", PAPER)
        words = f"shows {percent(one.shown_utilisation)}, is {percent(one.utilisation)}"
        made: list[Artist] = [
            ax.annotate(
                words, (1.0, row), (-4.0, 0.0), xycoords=("axes fraction", "data"),
                textcoords="offset points", ha="right", va="center", zorder=6.0,
                bbox={"facecolor": PAPER, "edgecolor": "none", "pad": 0.6},
                **type_of(SMALL, bold=less),
            ),
            ax.annotate(
                name_of(one, found, units=units), (0.0, row), (-6.0, 0.0),
                xycoords=("axes fraction", "data"), textcoords="offset points", ha="right",
                va="center", annotation_clip=False, **type_of(SMALL, bold=less),
            ),
            ax.axhline(row + 0.5, color=FAINT, linewidth=0.4, zorder=0.5),
        ]  # fmt: skip
        drawn.others.extend(made)
    return drawn


def _at(share: float) -> float:
    """Place of a share [%]."""
    return 100.0 * min(share, MOST) if np.isfinite(share) else 100.0 * MOST


def _mark(ax: Axes, at: float, row: int, marker: str, colour: str) -> Line2D:
    made = Line2D([at], [row], linestyle="none", marker=marker, markersize=5.2, zorder=5.0,
                  markerfacecolor=colour, markeredgecolor=INK, markeredgewidth=1.0)  # fmt: skip
    ax.add_line(made)
    return made


def draw_key(ax: Axes) -> None:
    """Say which mark is which."""
    ax.set_axis_off()
    handles = [
        Line2D([], [], linestyle="none", marker=marker, markersize=5.2, markerfacecolor=colour,
               markeredgecolor=INK, label=words)
        for marker, colour, words in (("o", PAPER, "what it shows"), ("D", INK, "what is"))
    ]  # fmt: skip
    handles.append(Line2D([], [], color=LOAD, linewidth=2.0, label="it shows too little"))
    ax.legend(handles=handles, loc="upper left", ncols=3, frameon=False, borderpad=0.0,
              borderaxespad=0.0, prop={"size": SMALL})  # fmt: skip
