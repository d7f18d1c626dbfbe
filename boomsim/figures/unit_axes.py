"""Axes in the units people read, and their quiet look."""

from collections.abc import Iterable

import numpy as np
from matplotlib.axes import Axes
from matplotlib.axis import Axis
from matplotlib.ticker import FuncFormatter, MaxNLocator, MultipleLocator, StrMethodFormatter

from boomsim.figures.colours_and_lines import BODY, FAINT, FONT, INK, QUIET, type_of
from boomsim.units import Display, display


def display_of(quantity: str, units: str, values: Iterable[float] | np.ndarray) -> Display:
    """Choose the unit for an axis from the largest value on it.

    Parameters
    ----------
    quantity : str
        A key of `boomsim.units.QUANTITIES`
    values : ndarray
        Not-a-number and infinite values do not count [SI unit of the quantity]
    """
    sizes = np.abs(np.asarray(list(np.ravel(np.asarray(values, dtype=float)))))
    finite = sizes[np.isfinite(sizes)]
    return display(quantity, units, like=float(finite.max()) if len(finite) else np.inf)


def quiet_axes(ax: Axes, *, x: str, y: str, grid: str = "both") -> None:
    """Give axes a calm look: two spines, a faint grid, small type.

    Parameters
    ----------
    x, y : str
        Axis labels
    grid : str
        "both", "x", "y" or "none"
    """
    for side, spine in ax.spines.items():
        spine.set_visible(side in ("left", "bottom"))
        spine.set_color(QUIET)
        spine.set_linewidth(0.7)
    ax.tick_params(
        labelsize=BODY, labelcolor=INK, color=QUIET, width=0.7, length=3.0, labelfontfamily=FONT
    )
    ax.set_facecolor("none")
    ax.set_axisbelow(True)
    if grid != "none":
        ax.grid(visible=True, axis=grid, color=FAINT, linewidth=0.4)  # type: ignore[arg-type]
    else:
        ax.grid(visible=False)
    ax.set_xlabel(x, labelpad=3.0, **type_of())
    ax.set_ylabel(y, labelpad=4.0, **type_of())
    for axis in (ax.xaxis, ax.yaxis):
        axis.set_major_locator(MaxNLocator(nbins=8, steps=[1, 2, 2.5, 5, 10]))
        axis.set_major_formatter(StrMethodFormatter("{x:,g}"))


def ticks_in(axis: Axis, unit: Display, *, reach: float) -> None:
    """Mark an axis whose data are in SI units in round numbers of another unit.

    Parameters
    ----------
    reach : float
        Length of the axis, for the distance of the ticks [SI unit]
    """
    rough = reach / unit.factor / 7.0
    power = 10.0 ** np.floor(np.log10(rough))
    step = min((s * power for s in (1.0, 2.0, 5.0, 10.0)), key=lambda s: abs(np.log(s / rough)))
    axis.set_major_locator(MultipleLocator(step * unit.factor))
    axis.set_major_formatter(FuncFormatter(lambda value, _: f"{value / unit.factor:,.6g}"))


def spread_out(wanted: list[float], *, least: float, low: float, high: float) -> list[float]:
    """Move label places apart until they are `least` from each other, each as little as may be.

    Parameters
    ----------
    wanted : list of float
        Places that the labels would like, in any order
    least : float
        Distance to keep
    low, high : float
        Range to stay in; if it is too short the labels share it evenly

    Returns
    -------
    list of float
        In the order of `wanted`
    """
    order = sorted(range(len(wanted)), key=lambda k: wanted[k])
    if len(wanted) > 1 and (high - low) < least * (len(wanted) - 1):
        least = (high - low) / (len(wanted) - 1)
    # Groups that touch share the mean of what they want: (sum of starts, members).
    groups: list[list[int]] = []
    starts: list[float] = []
    for k in order:
        groups.append([k])
        starts.append(wanted[k])
        while True:
            size = (len(groups[-1]) - 1) * least
            starts[-1] = min(max(starts[-1], low), high - size)
            if len(groups) < 2 or starts[-1] >= starts[-2] + len(groups[-2]) * least - 1e-12:
                break
            last = groups.pop()
            starts.pop()
            groups[-1] += last
            offsets = [wanted[m] - n * least for n, m in enumerate(groups[-1])]
            starts[-1] = sum(offsets) / len(offsets)
    placed = [0.0] * len(wanted)
    for start, members in zip(starts, groups, strict=True):
        for n, member in enumerate(members):
            placed[member] = start + n * least
    return placed
