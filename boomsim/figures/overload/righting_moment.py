"""Righting moment against lean: why it does not come back."""

from dataclasses import dataclass

import numpy as np
from matplotlib.axes import Axes
from matplotlib.lines import Line2D
from matplotlib.text import Annotation

from boomsim.figures.colours_and_lines import INK, LOAD, PAPER, QUIET, SMALL, LineStyle, type_of
from boomsim.figures.unit_axes import display_of, quiet_axes, spread_out
from boomsim.rating.overload.tip_over import Fall
from boomsim.units import show, show_rated

LOOKS: tuple[tuple[str, float, LineStyle], ...] = (
    (QUIET, 1.3, (0.0, (5.0, 1.6))),
    (QUIET, 1.3, (0.0, (1.2, 1.2))),
    (LOAD, 2.2, "solid"),
    (INK, 1.1, (0.0, (6.0, 1.5, 1.2, 1.5))),
)
"""In the order of `NAMES`."""

NAMES = ("rated", "halfway", "tips", "+10 %")
"""What the loads of a fall are."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class FallCurves:
    """Artists of the righting moment.

    Attributes
    ----------
    lines : tuple of Line2D
        One for each load
    returns : Line2D
        Leans from which it does not come back
    names : tuple of Annotation
        The loads, at the right ends
    """

    ax: Axes
    units: str
    lines: tuple[Line2D, ...]
    returns: Line2D
    names: tuple[Annotation, ...]


def draw_fall(ax: Axes, fall: Fall, *, units: str = "metric") -> FallCurves:
    """Draw the righting moment of a few loads.

    Parameters
    ----------
    ax : Axes
        With room to its right for the loads
    """
    lines = tuple(
        ax.plot([], [], color=colour, linewidth=width, linestyle=style, zorder=3.0)[0]
        for colour, width, style in LOOKS
    )
    ax.axhline(0.0, color=INK, linewidth=0.7, zorder=2.0)
    returns = ax.plot(
        [], [], linestyle="none", marker="o", markersize=4.5, markerfacecolor=PAPER,
        markeredgecolor=INK, markeredgewidth=1.0, zorder=4.0, clip_on=False,
    )[0]  # fmt: skip
    names = tuple(
        ax.annotate(
            "", (1.0, 0.0), (4.0, 0.0), xycoords=("axes fraction", "data"),
            textcoords="offset points", ha="left", va="center", annotation_clip=False,
            **type_of(SMALL, bold=colour == LOAD),
        )
        for colour, _, _ in LOOKS
    )  # fmt: skip
    artists = FallCurves(ax=ax, units=units, lines=lines, returns=returns, names=names)
    update_fall(artists, fall)
    return artists


def update_fall(artists: FallCurves, fall: Fall) -> None:
    """Show another study; see :func:`draw_fall`."""
    ax, units = artists.ax, artists.units
    shown = fall.lean <= _widest(fall)
    lean, moment = np.degrees(fall.lean[shown]), fall.moment[:, shown]
    scale = display_of("moment", units, moment)
    quiet_axes(ax, x="lean about the tipping line, °", y="")
    ax.set_title(f"righting moment, {scale.symbol}", loc="left", pad=2.5, **type_of(SMALL))
    ax.tick_params(labelsize=SMALL)
    for line, values in zip(artists.lines, moment, strict=True):
        line.set_data(lean, values / scale.factor)
    back = fall.no_return[fall.no_return > 1e-6]
    artists.returns.set_data(np.degrees(back), np.zeros_like(back))
    low, high = moment.min() / scale.factor, moment.max() / scale.factor
    room = 0.06 * (high - low)
    ax.set_xlim(0.0, float(lean[-1]))
    ax.set_ylim(low - room, high + room)
    ends = [float(values[-1]) / scale.factor for values in moment]
    apart = spread_out(ends, least=0.062 * (high - low), low=low, high=high)
    for name, place, load, what in zip(artists.names, apart, fall.load, NAMES, strict=True):
        kilograms = float(load)
        rated = show_rated(kilograms, units)
        name.set_text(f"{rated if what == 'rated' else show(kilograms, 'mass', units)} {what}")
        name.xy = (1.0, place)


def _widest(fall: Fall) -> float:
    """Twice the lean from which the rated load does not come back, in whole degrees."""
    wanted = np.ceil(np.degrees(2.0 * fall.no_return.max()))
    return float(np.radians(np.clip(wanted, 2.0, np.degrees(fall.lean[-1])))) + 1e-9
