"""Strip below the chart: how much less each way carries than the one that carries most."""

from dataclasses import dataclass, field

import numpy as np
from matplotlib.axes import Axes
from matplotlib.lines import Line2D
from matplotlib.ticker import FuncFormatter, MaxNLocator

from boomsim.figures.colours_and_lines import INK, SMALL, Identity, type_of
from boomsim.figures.unit_axes import quiet_axes
from boomsim.rating.comparison.comparison_study import Comparison
from boomsim.units import Display

FAR = 0.5
"""The strip is as deep as the gaps beyond this share of the radii, where the chart's lines lie
close together; deeper ones close in run out of it and are read from the chart [1]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Gaps:
    """Artists of the strip.

    Attributes
    ----------
    lines : dict of int to Line2D
        By number of the configuration
    """

    ax: Axes
    lines: dict[int, Line2D] = field(default_factory=dict)


def gaps_of(comparison: Comparison) -> np.ndarray:
    """Less than the most, so that the one that leads lies at nought.

    Returns
    -------
    ndarray, shape (configurations, radii)
        Nought or less; NaN where one does not reach [kg]
    """
    capacity = comparison.rating.capacity
    return np.asarray(capacity - np.nan_to_num(capacity).max(axis=0))


def draw_gaps(
    ax: Axes, comparison: Comparison, looks: dict[int, Identity], *, x: Display, y: Display
) -> Gaps:
    """Draw the strip.

    Parameters
    ----------
    looks : dict of int to Identity
        Of the configurations that are named; others are left out
    x, y : Display
        Units of the radius and of the mass
    """
    gaps, radii = gaps_of(comparison), comparison.radii
    quiet_axes(ax, x=f"radius with the load on, {x.symbol}", y="")
    made = Gaps(ax=ax)
    for way, look in looks.items():
        line = Line2D(
            radii / x.factor, gaps[way] / y.factor, color=look.colour, linewidth=1.3, label=str(way)
        )
        ax.add_line(line)
        made.lines[way] = line
    words = f"how much less than the one that carries most, {y.symbol}"
    ax.text(0.0, 1.07, words, transform=ax.transAxes, ha="left", va="bottom", **type_of(SMALL))
    ax.yaxis.set_major_locator(MaxNLocator(nbins=3, steps=[1, 2, 5, 10]))
    # The words say "less": a minus beside them would say it twice.
    ax.yaxis.set_major_formatter(FuncFormatter(lambda value, _: f"{abs(value):g}"))
    ax.axhline(0.0, color=INK, linewidth=0.6, zorder=1.5)
    ax.set_ylim(-_depth(gaps[list(looks)], radii) / y.factor, 0.0)
    return made


def _depth(gaps: np.ndarray, radii: np.ndarray) -> float:
    """How deep the strip is [kg]."""
    known = np.flatnonzero(np.isfinite(gaps).any(axis=0))
    if not len(known):
        return 1.0
    middle = radii[known[0]] + FAR * (radii[known[-1]] - radii[known[0]])
    far = np.nanmin(gaps[:, known[radii[known] >= middle]])
    return 1.1 * float(-far) or 1.0
