"""What an operator could feel before it ends, over the load."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from matplotlib.axes import Axes
from matplotlib.lines import Line2D
from matplotlib.ticker import MaxNLocator, StrMethodFormatter

from boomsim.figures.colours_and_lines import INK, SMALL, type_of
from boomsim.figures.unit_axes import display_of, quiet_axes
from boomsim.machine.part_names import foot_name
from boomsim.mechanics.geometry import Array
from boomsim.rating.overload.overload_sentences import MOST_LEAN
from boomsim.rating.overload.overload_study import Overload
from boomsim.units import display


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class FeelCurves:
    """Artists of what can be felt.

    Attributes
    ----------
    axes : tuple of Axes
        Lightest float, lean, droop of the head; from top to bottom
    lines : tuple of Line2D
        One for each
    rated : tuple of Line2D
        The rated load in each
    """

    axes: tuple[Axes, ...]
    units: str
    lines: tuple[Line2D, ...]
    rated: tuple[Line2D, ...]


def draw_feel(axes: Sequence[Axes], result: Overload, *, units: str = "metric") -> FeelCurves:
    """Draw what can be felt.

    Parameters
    ----------
    axes : sequence of Axes
        Three, one above the other
    """
    lines = tuple(ax.plot([], [], color=INK, linewidth=1.6, zorder=3.0)[0] for ax in axes)
    rated = tuple(
        ax.axvline(0.0, color=INK, linewidth=0.9, linestyle=(0, (4, 2)), zorder=2.0) for ax in axes
    )
    artists = FeelCurves(axes=tuple(axes), units=units, lines=lines, rated=rated)
    update_feel(artists, result)
    return artists


def update_feel(artists: FeelCurves, result: Overload) -> None:
    """Show another study; see :func:`draw_feel`."""
    feel, units = result.feel, artists.units
    load = display_of("mass", units, feel.load)
    foot = foot_name(result.setup.support)
    rows = (
        (f"lightest {foot}", feel.lightest, display_of("force", units, feel.lightest)),
        ("lean of the carrier", feel.lean, display("angle", units)),
        ("head down by", feel.droop, display_of(_size(feel.droop), units, feel.droop)),
    )
    last = len(rows) - 1
    for k, (words, values, scale) in enumerate(rows):
        ax = artists.axes[k]
        label = f"gross load until it ends, {load.symbol}" if k == last else ""
        quiet_axes(ax, x=label, y="")
        ax.xaxis.set_major_locator(MaxNLocator(nbins=5))
        ax.yaxis.set_major_locator(MaxNLocator(nbins=3, steps=[1, 2, 5, 10]))
        ax.yaxis.set_major_formatter(StrMethodFormatter("{x:,g}"))
        ax.tick_params(labelbottom=k == last, labelsize=SMALL)
        ax.set_title(f"{words}, {scale.symbol}", loc="left", pad=2.5, **type_of(SMALL))
        artists.lines[k].set_data(feel.load / load.factor, values / scale.factor)
        artists.rated[k].set_xdata([result.rated / load.factor] * 2)
        ax.set_xlim(0.0, float(feel.load[-1]) / load.factor)
        most = float(np.nanmax(values)) / scale.factor
        top = 1.1 * most if most > 0.0 else 1.0
        # Where the last foot goes light a lean has no end: its line leaves the panel.
        ax.set_ylim(0.0, min(top, MOST_LEAN) if values is feel.lean else top)


def _size(droop: Array) -> str:
    return "length" if float(np.nanmax(droop)) >= 0.1 else "small_length"
