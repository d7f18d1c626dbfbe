"""Radii at which a slab is rated: a group of bars for each way out, a bar for each support."""

from dataclasses import dataclass, field

import numpy as np
from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.lines import Line2D
from matplotlib.patches import Rectangle

from boomsim.figures.colours_and_lines import INK, LOAD, PAPER, QUIET, SMALL, STEEL, type_of
from boomsim.figures.unit_axes import display_of, quiet_axes
from boomsim.rating.slabs.slabs_sentences import stands_on
from boomsim.rating.slabs.slabs_study import Bands, Slabs
from boomsim.units import show

LOOKS = (
    {"facecolor": QUIET, "hatch": ""},
    {"facecolor": STEEL, "hatch": "/////"},
    {"facecolor": PAPER, "hatch": ""},
    {"facecolor": PAPER, "hatch": "....."},
)
"""Of the supports, in their order; they repeat after the last."""

GROUP = 0.78
"""Of the bars of one way out, over the distance of the ways [1]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class BandChart:
    """Artists of the bands of one slab.

    Attributes
    ----------
    bars : dict of (str, int) to Rectangle
        By support and way out
    tips : dict of (str, int) to Line2D
        From where on the crane would turn over
    """

    bars: dict[tuple[str, int], Rectangle] = field(default_factory=dict)
    tips: dict[tuple[str, int], Line2D] = field(default_factory=dict)
    deck: Line2D | None = None
    others: list[Artist] = field(default_factory=list)


def draw_bands(ax: Axes, found: Slabs, own: list[Bands], *, units: str, names: bool) -> BandChart:
    """Draw the bands of one slab.

    Parameters
    ----------
    own : list of Bands
        Of this slab, one for each support
    names : bool
        Whether the ways out are named at the left
    """
    every = np.array([[bands.far, bands.tips] for bands in found.bands], dtype=float)
    x = display_of("length", units, every)
    quiet_axes(ax, x=f"radius, {x.symbol}", y="", grid="x")
    ax.set_xlim(0.0, 1.06 * float(np.nanmax(every)) / x.factor)
    count = len(found.ways.length)
    ax.set_ylim(count - 0.4, -0.6)
    ax.set_yticks(range(count))
    lengths = [show(float(length), "boom_length", units) for length in found.ways.length]
    ax.set_yticklabels(lengths if names else [""] * count, **type_of(SMALL))
    ax.tick_params(axis="y", length=0.0)
    deck = None
    if found.deck is not None:
        deck = ax.axvline(found.deck / x.factor, color=INK, linewidth=1.0, linestyle=(0.0, (4, 2)),
                          zorder=3.5)  # fmt: skip
    chart = BandChart(deck=deck)
    thick = GROUP / len(own)
    for number, bands in enumerate(own):
        for way in range(count):
            if np.isnan(bands.far[way]):
                continue
            key, top = (bands.support.name, way), way - GROUP / 2 + number * thick
            chart.bars[key] = _bar(ax, bands, way, number, top, thick, x.factor)
            if not np.isnan(bands.tips[way]):
                chart.tips[key] = _tip(ax, bands.tips[way] / x.factor, top + thick / 2)
    return chart


def _bar(
    ax: Axes, bands: Bands, way: int, number: int, top: float, thick: float, metre: float
) -> Rectangle:
    near, far = float(bands.near[way]) / metre, float(bands.far[way]) / metre
    bar = Rectangle((near, top), far - near, thick, edgecolor=INK, linewidth=0.5, zorder=3.0,
                    **LOOKS[number % len(LOOKS)])  # type: ignore[arg-type] # fmt: skip
    ax.add_patch(bar)
    return bar


def _tip(ax: Axes, at: float, height: float) -> Line2D:
    mark = Line2D([at], [height], linestyle="none", marker="v", markersize=3.2, zorder=4.0,
                  markerfacecolor=LOAD, markeredgecolor=INK, markeredgewidth=0.5)  # fmt: skip
    ax.add_line(mark)
    return mark


def draw_key(ax: Axes, found: Slabs) -> None:
    """Draw which bar belongs to which supports, what the marks mean, and the deck."""
    ax.set_axis_off()
    handles: list[Artist] = [
        Rectangle((0, 0), 1, 1, edgecolor=INK, linewidth=0.5,
                  label=f"{stands_on(b).removeprefix('On ')}: rated",
                  **LOOKS[k % len(LOOKS)])  # type: ignore[arg-type]
        for k, b in enumerate(found.bands_of(found.stages[0]))
    ]  # fmt: skip
    handles.append(
        Line2D([], [], linestyle="none", marker="v", markersize=4.0, markerfacecolor=LOAD,
               markeredgecolor=INK, label="it would turn over, without any margin")
    )  # fmt: skip
    if found.deck is not None:
        handles.append(Line2D([], [], color=INK, linewidth=1.0, linestyle=(0.0, (4, 2)),
                              label="the deck on its carrier"))  # fmt: skip
    ax.legend(
        handles=handles, loc="upper left", ncols=3, frameon=False, borderpad=0.0,
        borderaxespad=0.0, handlelength=2.0, columnspacing=1.6, prop={"size": SMALL},
    )  # fmt: skip
