"""Checks one below the other: how much of each limit is used, and what the check comes to."""

from dataclasses import dataclass, field

import numpy as np
from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.patches import Rectangle

from boomsim.figures.colours_and_lines import FAINT, INK, LOAD, PAPER, QUIET, SMALL, STEEL, type_of
from boomsim.rating.pick.pick_checks import BEYOND, NOTED, UNKNOWN, WITHIN, Check
from boomsim.rating.pick.pick_sentences import SIGNS, shown_values

NAMES, BAR = 0.024, 0.030
"""Widths of the first parts of a row: name, bar up to its limit and a little; words follow [m]."""

SHOWN = 1.3
"""Bars end here, however far beyond the limit [1]."""

MARK = 0.13
"""Width of what stands for a check without figures, over that of a whole bar [1]."""

THICK = 0.52
"""Of a bar, over the distance of the rows [1]."""

LOOKS = {
    WITHIN: {"facecolor": STEEL, "edgecolor": INK, "hatch": "", "linestyle": "solid"},
    BEYOND: {"facecolor": PAPER, "edgecolor": LOAD, "hatch": "xxxx", "linestyle": "solid"},
    UNKNOWN: {"facecolor": PAPER, "edgecolor": QUIET, "hatch": "", "linestyle": "dashed"},
}
"""Told by hatch and outline, not by colour alone."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Ladder:
    """Artists of the checks.

    Attributes
    ----------
    bars : dict of str to Rectangle
        By check
    words : dict of str to Artist
        What each comes to
    others : list of Artist
    """

    bars: dict[str, Rectangle] = field(default_factory=dict)
    words: dict[str, Artist] = field(default_factory=dict)
    others: list[Artist] = field(default_factory=list)


def draw_ladder(
    ax: Axes, checks: tuple[Check, ...], *, width: float, units: str = "metric"
) -> Ladder:
    """Draw the checks.

    Parameters
    ----------
    ax : Axes
    checks : tuple of Check
        From the top
    width : float
        On paper [m]
    units : str
        "metric" or "us"
    """
    ladder = Ladder()
    ax.set_axis_off()
    ax.set_xlim(0.0, width)
    ax.set_ylim(len(checks) - 0.4, -0.9)
    one = BAR / SHOWN
    limit = ax.plot([NAMES + one] * 2, [-0.45, len(checks) - 0.55], color=INK, linewidth=1.0)[0]
    note = ax.text(
        NAMES + one, -0.5, "limit", ha="center", va="bottom", **type_of(SMALL, colour=QUIET)
    )
    ladder.others.extend([limit, note])
    for row, check in enumerate(checks):
        name = ax.text(
            0.0, row, f"{row + 1}. {check.title}", ha="left", va="center",
            **type_of(SMALL, bold=check.state == BEYOND),
        )  # fmt: skip
        ladder.others.append(name)
        if check.state != NOTED:
            ladder.bars[check.key] = _bar(ax, row, check, one)
        ladder.words[check.key] = ax.text(
            NAMES + BAR + 0.002, row, _words(check, units), ha="left", va="center",
            **type_of(SMALL, bold=check.state == BEYOND),
        )  # fmt: skip
        rule = ax.plot([0.0, width], [row + 0.5] * 2, color=FAINT, linewidth=0.4, zorder=0.5)[0]
        ladder.others.append(rule)
    return ladder


def _bar(ax: Axes, row: int, check: Check, one: float) -> Rectangle:
    """A bar up to the share that is used; a mere mark for a check that has no share."""
    utilisation = check.utilisation if check.key != "radius" else None
    known = utilisation is not None and np.isfinite(utilisation)
    share = min(float(utilisation or 0.0), SHOWN) if known else MARK
    bar = Rectangle((NAMES, row - THICK / 2), share * one, THICK, linewidth=0.8, zorder=2.0,
                    **LOOKS[check.state])  # type: ignore[arg-type] # fmt: skip
    ax.add_patch(bar)
    return bar


def _words(check: Check, units: str) -> str:
    found, limit, _ = shown_values(check, units=units)
    figures = f"{found} of {limit}" if found and limit and check.key != "radius" else found
    return ": ".join(part for part in (SIGNS[check.state], figures) if part)
