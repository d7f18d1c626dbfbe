"""Bars of equivalent loads: what hangs, and what moving it adds, up to the lines that matter."""

from dataclasses import dataclass, field

import numpy as np
from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.lines import Line2D
from matplotlib.patches import Rectangle

from boomsim.figures.colours_and_lines import INK, LOAD, PAPER, QUIET, SMALL, STEEL, type_of
from boomsim.figures.unit_axes import display_of, quiet_axes
from boomsim.rating.dynamics.dynamics_sentences import cause_of, name_of, percent
from boomsim.rating.dynamics.dynamics_study import Dynamics
from boomsim.units import show

ROOM = 1.36
"""The axis reaches so far past the most, for words [1]."""

THICK = 0.42
"""Of a bar, over the distance of the rows [1]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class EquivalentBars:
    """Artists of the bars.

    Attributes
    ----------
    still : Rectangle by effect
        What hangs
    added : Rectangle by effect
        What moving it adds
    lines : Line2D by name
        "rated", "tips" and "breaks"
    """

    still: dict[str, Rectangle] = field(default_factory=dict)
    added: dict[str, Rectangle] = field(default_factory=dict)
    lines: dict[str, Line2D] = field(default_factory=dict)
    others: list[Artist] = field(default_factory=list)


def draw_equivalents(ax: Axes, found: Dynamics, *, units: str = "metric") -> EquivalentBars:
    """Draw a bar for each way to move the load."""
    ends = [found.tipping, found.breaking]
    most = max([effect.equivalent for effect in found.effects] + [found.rated])
    shown = [end for end in ends if np.isfinite(end) and end < 1.6 * most]
    x = display_of("mass", units, np.array([most, *shown]))
    quiet_axes(
        ax,
        x=f"counts as a gross load hanging still, {x.symbol} (tip, break: without any margin)",
        y="",
        grid="none",
    )
    ax.set_xlim(0.0, ROOM * max([most, *shown]) / x.factor)
    count = len(found.effects)
    ax.set_ylim(count - 0.45, -0.95)
    ax.set_yticks([])
    bars = EquivalentBars()
    for row, effect in enumerate(found.effects):
        own = found.load / x.factor
        extra = (effect.equivalent - found.load) / x.factor
        bars.still[effect.key] = _bar(ax, 0.0, own, row, STEEL, "")
        bars.added[effect.key] = _bar(ax, own, extra, row, PAPER, "/////")
        words = f"{show(effect.equivalent, 'mass', units)}, {percent(effect.share)} of rated"
        bars.others.append(
            ax.annotate(
                words, (1.0, row), (-4.0, 0.0), xycoords=("axes fraction", "data"),
                textcoords="offset points", ha="right", va="center", zorder=6.0, **type_of(SMALL),
                bbox={"facecolor": PAPER, "edgecolor": "none", "pad": 0.6},
            )
        )  # fmt: skip
        name = f"{row + 1}. {name_of(effect)}"
        bars.others.append(_above(ax, row, name, cause_of(effect, found, units=units)))
    lines = (
        ("rated", found.rated, INK, "solid", 2.3),
        ("tips", found.tipping, LOAD, "solid", 1.2),
        ("breaks", found.breaking, LOAD, (0.0, (3.0, 1.3)), 1.2),
    )
    for name, load, colour, style, width in lines:
        if np.isfinite(load) and load <= 1.2 * max([most, *shown]):
            at = load / x.factor
            bars.lines[name] = ax.axvline(
                at, ymax=0.93, color=colour, linestyle=style, linewidth=width, zorder=4.0
            )
            words = name if name == "rated" else f"would {name.removesuffix('s')}"
            bars.others.append(
                ax.text(
                    at,
                    -0.72,
                    words,
                    ha="right" if name == "rated" else "left",
                    va="center",
                    **type_of(SMALL),
                )
            )
    return bars


def _bar(ax: Axes, left: float, wide: float, row: int, colour: str, hatch: str) -> Rectangle:
    bar = Rectangle((left, row - THICK / 2), wide, THICK, facecolor=colour, edgecolor=INK,
                    linewidth=0.7, hatch=hatch, zorder=3.0)  # fmt: skip
    ax.add_patch(bar)
    return bar


def _above(ax: Axes, row: int, name: str, cause: str) -> Artist:
    """Name a bar at the left of it, and how it is done under the name."""
    ax.annotate(
        cause, (0.0, row + 0.16), (-6.0, 0.0), xycoords=("axes fraction", "data"),
        textcoords="offset points", ha="right", va="center", annotation_clip=False,
        **type_of(SMALL - 1.0, colour=QUIET),
    )  # fmt: skip
    return ax.annotate(
        name, (0.0, row - 0.16), (-6.0, 0.0), xycoords=("axes fraction", "data"),
        textcoords="offset points", ha="right", va="center", annotation_clip=False,
        **type_of(SMALL),
    )  # fmt: skip
