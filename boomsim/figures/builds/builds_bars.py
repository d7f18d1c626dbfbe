"""A bar for each build over the radii: hatched where stability does not set the figure."""

from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.lines import Line2D
from matplotlib.patches import Rectangle
from matplotlib.text import Text

from boomsim.figures.colours_and_lines import (
    FAMILIES,
    INK,
    PAPER,
    QUIET,
    SMALL,
    STEEL,
    identity,
    type_of,
)
from boomsim.figures.unit_axes import quiet_axes
from boomsim.rating.builds.builds_leads import Stretch
from boomsim.rating.builds.builds_study import Builds
from boomsim.rating.limits.limit_kind import STABILITY
from boomsim.rating.overload.overload_study import Overload
from boomsim.units import Display

DEEP = 0.7
"""Height of a bar over the distance of two [1]."""

KEY = (
    "hatched: strength or maker's value sets the figure; plain: stability; stroke: the bold line;\n"
    "written: what comes first when the crane is loaded past its rated load there"
)


def draw_bars(ax: Axes, found: Builds, *, x: Display) -> list[Artist]:
    """Draw what sets each build's figures; the bold line is where that changes to stability.

    Parameters
    ----------
    x : Display
        Unit of the radius

    Returns
    -------
    list of Artist
        Bars and bold strokes, build by build
    """
    quiet_axes(ax, x=f"radius with the load on, {x.symbol}", y="", grid="none")
    ax.spines["left"].set_visible(False)
    ax.set_yticks(range(len(found.builds)))
    ax.set_yticklabels([f"x {build.factor:g}" for build in found.builds], **type_of(SMALL))
    ax.tick_params(axis="y", length=0.0)
    ax.set_ylim(len(found.builds) - 0.5, -0.5)
    made: list[Artist] = []
    for row, build in enumerate(found.builds):
        made += [_bar(ax, row, one, x) for one in build.sets]
        for one, after in zip(build.sets, build.sets[1:], strict=False):
            if (one.what == STABILITY) != (after.what == STABILITY):
                made.append(_bold(ax, row, after.near / x.factor))
    words = (
        "hatched: strength or maker's value sets the figure; plain: stability; stroke: bold line"
    )
    ax.text(0.0, 1.06, words, transform=ax.transAxes, va="bottom", **type_of(SMALL, colour=QUIET))
    return made


def _bar(ax: Axes, row: int, one: Stretch, x: Display) -> Rectangle:
    tips = one.what == STABILITY
    bar = Rectangle(
        (one.near / x.factor, row - DEEP / 2),
        (one.far - one.near) / x.factor,
        DEEP,
        facecolor=STEEL if tips else PAPER,
        edgecolor=identity(row).colour,
        hatch=FAMILIES["stability" if tips else "structural"].hatch,
        linewidth=0.8,
    )
    ax.add_patch(bar)
    return bar


def _bold(ax: Axes, row: int, at: float) -> Line2D:
    line = Line2D([at, at], [row - 0.5, row + 0.5], color=INK, linewidth=2.6, zorder=4.0)
    ax.add_line(line)
    return line


def draw_ends(
    ax: Axes, past: tuple[Overload | None, ...], *, radius: float, x: Display
) -> list[Text]:
    """Write on each bar what comes first when that build is overloaded at a radius.

    Parameters
    ----------
    ax : Axes
        With the bars
    past : tuple of (Overload or None)
        Of the builds
    radius : float
        [m]
    x : Display
        Unit of the radius
    """
    made = []
    for row, one in enumerate(past):
        if one is not None and one.first is not None:
            words = "tips first" if one.warns else "breaks first"
            text = ax.text(
                radius / x.factor,
                row,
                words,
                ha="center",
                va="center_baseline",
                clip_on=True,
                **type_of(SMALL),
            )
            text.set_bbox({"facecolor": PAPER, "edgecolor": "none", "pad": 0.8})
            made.append(text)
    return made
