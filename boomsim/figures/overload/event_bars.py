"""The order of events as bars: how much load each takes, past the rated one."""

from dataclasses import dataclass, field
from typing import Any

from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.patches import Rectangle

from boomsim.figures.colours_and_lines import INK, PAPER, QUIET, SMALL, STEEL, type_of
from boomsim.figures.text_width import text_width
from boomsim.figures.unit_axes import display_of, quiet_axes
from boomsim.machine.part_names import foot_name
from boomsim.rating.limits.limit_kind import GIVES_WAY, PERMISSIBLE, TIPS
from boomsim.rating.limits.limit_sentences import WHEN_PASSED
from boomsim.rating.load_search import FLOAT
from boomsim.rating.overload.overload_events import Event
from boomsim.rating.overload.overload_sentences import tell_event, tell_multiple
from boomsim.rating.overload.overload_study import Overload
from boomsim.units import show, show_rated

LOOKS: dict[str, dict[str, Any]] = {
    GIVES_WAY: {"facecolor": PAPER, "edgecolor": INK, "hatch": "//////", "linewidth": 0.8},
    TIPS: {"facecolor": INK, "edgecolor": INK, "linewidth": 0.8},
    PERMISSIBLE: {"facecolor": PAPER, "edgecolor": QUIET, "linewidth": 0.7},
    FLOAT: {"facecolor": STEEL, "edgecolor": QUIET, "linewidth": 0.7},
}
"""Of the bars: hatched breaks, black tips, empty passes a maker's value, grey lifts a float."""

KIND_WORDS = {
    **WHEN_PASSED,
    FLOAT: "a {foot} lifts, the others hold",
}

THICK = 0.52
"""Of a bar, over the distance of the rows [1]."""

NUMBERS = 91.0
"""Width of the multiples and loads to the right of the bars [pt]."""

SAMPLE = 0.0055
"""Width of a bar in the key [m]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class EventBars:
    """Artists of the order of events.

    Attributes
    ----------
    bars : list of Rectangle
        In the order of the events
    others : list of Artist
        Words and the line of the rated load
    """

    ax: Axes
    units: str
    bars: list[Rectangle] = field(default_factory=list)
    others: list[Artist] = field(default_factory=list)


def draw_events(ax: Axes, result: Overload, *, units: str = "metric") -> EventBars:
    """Draw the order of events.

    Parameters
    ----------
    ax : Axes
        With room to its left for the words
    """
    artists = EventBars(ax=ax, units=units)
    update_events(artists, result)
    return artists


def update_events(artists: EventBars, result: Overload) -> None:
    """Show another study; see :func:`draw_events`."""
    for kept in (artists.bars, artists.others):
        for old in kept:
            old.remove()
        kept.clear()
    ax = artists.ax
    scale = display_of("mass", artists.units, result.load)
    quiet_axes(ax, x=f"gross load, {scale.symbol}", y="", grid="x")
    most = float(result.load[-1]) / scale.factor
    ax.set_xlim(0.0, most)
    # At least four rows, so that a lonely bar does not swell.
    ax.set_ylim(max(len(result.events), 4) - 0.4, -0.9)
    ax.set_yticks([])
    for row, event in enumerate(result.events):
        _bar(artists, event, row, scale.factor, most, is_end=event is result.first)
    rated = result.rated / scale.factor
    marks: list[Artist] = [
        ax.axvline(rated, color=INK, linewidth=0.9, linestyle=(0, (4, 2)), zorder=4.0),
        ax.text(
            rated, -0.95, f"rated {show_rated(result.rated, artists.units)}", ha="center",
            va="bottom", **type_of(SMALL),
        ),
    ]  # fmt: skip
    artists.others.extend(marks)


def _bar(
    artists: EventBars, event: Event, row: int, factor: float, most: float, *, is_end: bool
) -> None:
    ax, end = artists.ax, min(event.load / factor, most)
    bar = Rectangle((0.0, row - THICK / 2), end, THICK, zorder=3.0, **LOOKS[event.kind])
    ax.add_patch(bar)
    artists.bars.append(bar)
    if event.load / factor > most:
        artists.others.append(_goes_on(ax, row, most))
    colour = QUIET if event.kind == PERMISSIBLE and not is_end else INK
    style = type_of(SMALL, bold=is_end, colour=colour)
    columns = (
        (0.0, -4.0, "right", tell_event(event)),
        (1.0, 4.0, "left", tell_multiple(event.multiple)),
        (1.0, 4.0 + NUMBERS, "right", show(event.load, "mass", artists.units)),
    )
    for share, step, side, words in columns:
        made = ax.annotate(
            words, (share, row), (step, 0.0), textcoords="offset points",
            xycoords=("axes fraction", "data"), ha=side, va="center", **style,
        )  # fmt: skip
        artists.others.append(made)


def _goes_on(ax: Axes, row: int, end: float) -> Artist:
    """Tear a bar that is longer than the axis."""
    torn = ax.annotate(
        "//", (end, row), (-7.0, 0.0), textcoords="offset points", ha="right", va="center",
        zorder=5.0, **type_of(SMALL, bold=True),
    )  # fmt: skip
    torn.set_bbox({"facecolor": PAPER, "edgecolor": "none", "pad": 1.0})
    return torn


def draw_event_key(ax: Axes, result: Overload, *, width: float) -> None:
    """Say what the bars mean, one sample for each kind there is.

    Parameters
    ----------
    ax : Axes
        Without a frame of its own
    width : float
        Of the axes on paper [m]
    """
    ax.set_axis_off()
    ax.set_xlim(0.0, width)
    ax.set_ylim(0.0, 1.0)
    there = {event.kind for event in result.events}
    left = 0.0
    for kind in (TIPS, GIVES_WAY, FLOAT, PERMISSIBLE):
        if kind in there:
            ax.add_patch(Rectangle((left, 0.28), SAMPLE, 0.44, **LOOKS[kind]))
            style = type_of(SMALL, colour=QUIET)
            words = KIND_WORDS[kind].format(foot=foot_name(result.setup.support))
            ax.text(left + 1.25 * SAMPLE, 0.5, words, ha="left", va="center", **style)
            left += 1.25 * SAMPLE + text_width(words, size=SMALL) + 0.006
