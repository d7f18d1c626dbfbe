"""What each float carries through a whole turn, and how hard it presses on the ground."""

from dataclasses import dataclass

import numpy as np
from matplotlib.axes import Axes
from matplotlib.lines import Line2D
from matplotlib.ticker import FixedLocator, FuncFormatter, MaxNLocator, StrMethodFormatter

from boomsim.figures.colours_and_lines import (
    FAINT,
    INK,
    PAPER,
    QUIET,
    SMALL,
    Identity,
    identity,
    type_of,
)
from boomsim.figures.unit_axes import display_of, quiet_axes
from boomsim.machine.model import Support
from boomsim.machine.part_names import support_names
from boomsim.rating.around.float_loads import GroundLoads

WORDS = {-180: "front", -90: "left", 0: "rear", 90: "right", 180: "front"}
"""Where the boom points at slew angles [°]."""

FEW = 6
"""Up to so many supports each has a line of its own."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class ReactionCurves:
    """Artists of the supports' reactions.

    Attributes
    ----------
    ax, pressure : Axes
        Forces to the left, ground pressure to the right
    lines : tuple of Line2D
        One for each support
    """

    ax: Axes
    pressure: Axes
    units: str
    lines: tuple[Line2D, ...]


def draw_reactions(
    ax: Axes, loads: GroundLoads, support: Support, *, units: str = "metric"
) -> ReactionCurves:
    """Draw the reactions of all supports.

    Parameters
    ----------
    ax : Axes
        With room to its right for the pressures
    """
    many = len(loads.force) > FEW
    lines = tuple(
        ax.plot(
            [], [], color=FAINT if many else look.colour, linewidth=1.0 if many else 1.5,
            marker="" if many else look.marker, markersize=4.0, markerfacecolor=PAPER,
            markeredgewidth=0.9, zorder=3.0, clip_on=False,
        )[0]
        for look in (identity(k) for k in range(len(loads.force)))
    )  # fmt: skip
    artists = ReactionCurves(ax=ax, pressure=ax.twinx(), units=units, lines=lines)
    update_reactions(artists, loads)
    return artists


def update_reactions(artists: ReactionCurves, loads: GroundLoads) -> None:
    """Show another lift; see :func:`draw_reactions`."""
    ax, slew = artists.ax, np.degrees(loads.loads.slew)
    force = display_of("force", artists.units, loads.force)
    stress = display_of("pressure", artists.units, loads.pressure)
    for k, line in enumerate(artists.lines):
        line.set_data(slew, loads.force[k] / force.factor)
        # A marker every 45 degrees, from another place on each line.
        line.set_markevery((3 * k, 9))
    right = artists.pressure
    quiet_axes(right, x="", y="", grid="none")
    quiet_axes(ax, x="where the boom points", y="")
    _say_tipped(artists, loads)
    high = 1.06 * float(np.nanmax(loads.force, initial=0.0)) or force.factor
    ax.set_ylim(0.0, high / force.factor)
    ax.set_title(f"force, {force.symbol}", loc="left", pad=3.0, **type_of(SMALL))
    ax.tick_params(labelsize=SMALL)
    right.spines["right"].set_visible(True)
    right.spines["left"].set_visible(False)
    right.yaxis.tick_right()
    right.yaxis.set_major_locator(MaxNLocator(nbins=6))
    right.yaxis.set_major_formatter(StrMethodFormatter("{x:,g}"))
    right.tick_params(labelsize=SMALL)
    # The two share their x axis: set it once the second has had its look.
    ax.xaxis.set_major_locator(FixedLocator(list(WORDS)))
    ax.xaxis.set_major_formatter(FuncFormatter(lambda x, _: WORDS.get(round(x), "")))
    ax.set_xlim(-180.0, 180.0)
    right.set_ylim(0.0, high / loads.area / stress.factor)
    right.set_title(f"on the ground, {stress.symbol}", loc="right", pad=3.0, **type_of(SMALL))


def _say_tipped(artists: ReactionCurves, loads: GroundLoads) -> None:
    """Say it in words where no support holds anything, whichever way the boom points."""
    for old in artists.ax.texts:
        old.remove()
    if np.all(loads.loads.reactions.tipped):
        artists.ax.text(
            0.5, 0.5, "the crane turns over in every direction", ha="center", va="center",
            transform=artists.ax.transAxes, **type_of(SMALL, colour=INK),
        )  # fmt: skip


def draw_reaction_key(ax: Axes, support: Support) -> None:
    """Name the supports' lines, in two rows.

    Parameters
    ----------
    ax : Axes
        Without a frame of its own
    """
    ax.set_axis_off()
    ax.set_xlim(0.0, 1.0)
    ax.set_ylim(0.0, 1.0)
    count = len(support.points)
    if count > FEW:
        style = type_of(SMALL, colour=QUIET)
        ax.text(0.0, 0.5, f"a line for each of {count} tyres", ha="left", va="center", **style)
        return
    across, names = -(-count // 2), support_names(support)
    for k in range(count):
        look: Identity = identity(k)
        left, y = (k % across) / across, 0.78 - 0.52 * (k // across)
        ax.add_line(
            Line2D(
                [left + 0.005, left + 0.03, left + 0.055], [y] * 3, color=look.colour,
                linewidth=1.5, marker=look.marker, markevery=[1], markersize=4.0,
                markerfacecolor=PAPER, markeredgewidth=0.9, clip_on=False,
            )
        )  # fmt: skip
        ax.text(left + 0.075, y, names[k], ha="left", va="center", **type_of(SMALL, colour=INK))
