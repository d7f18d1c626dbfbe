"""Picture of a reeved boom: the tackle spread out, where the rope is, parts by boom length."""

import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.patches import Rectangle

from boomsim.figures.colours_and_lines import FAINT, INK, LOAD, PAPER, QUIET, SMALL, STEEL, type_of
from boomsim.figures.figure_page import Page, new_page
from boomsim.figures.figure_panels import heading
from boomsim.figures.reeving.tackle_drawing import TOP, Tackle, draw_tackle
from boomsim.figures.setup_words import allowance_words, machine_words, setup_words
from boomsim.figures.unit_axes import display_of, quiet_axes
from boomsim.mechanics.rope_reach import parts_reeved
from boomsim.rating.charts.deductions import falls_words
from boomsim.rating.parts_reeved import parts_said
from boomsim.rating.reeving.reeving_sentences import tell_parts, tell_speed
from boomsim.rating.reeving.reeving_study import Reeving
from boomsim.rating.strategies import label, range_of_length
from boomsim.units import show, show_rated

WIDTH, HEIGHT = 0.19, 0.118
LEFT, BETWEEN, HEAD = 0.104, 0.006, 0.0085
"""Widths of page and tackle, between panels, room for a panel's heading [m]."""

BAR = 0.021
"""Height of the panel that says where the rope is [m]."""

LEFTMOST, RIGHT, LOWEST = -6.4, 6.4, -0.3
"""Edges of the tackle's picture, the right one for few parts [distances of the falls]."""

UNKNOWN = (
    "This machine does not say how long its rope is: it is taken to reach for any number of parts."
)

DRAWN = 401
"""Boom lengths at which the stair is looked at."""


def figure_of_reeving(found: Reeving, *, units: str = "metric") -> Figure:
    """Draw how a boom is reeved."""
    length = show(found.length, "boom_length", units)
    page = new_page(
        width=WIDTH,
        height=HEIGHT,
        title=f"{machine_words(found.setup)}: {length} of boom reeved in {parts_said(found.parts)}",
        subtitle=f"extension {label(found.extension)} %; "
        + setup_words(found.setup, units=units, extension=found.extension),
        foot=f"{tell_parts(found, units=units)} {tell_speed(found)} "
        + allowance_words(found.setup.rule, units=units),
    )
    top = page.room[1]
    heading(page, "The tackle, spread out and not to scale", left=0.0, top=top, width=LEFT)
    ax = page.axes(left=0.0, bottom=0.0, width=LEFT, height=top - 0.005)
    draw_tackle(ax, tackle_of(found, units=units))
    ax.set_xlim(LEFTMOST, max(found.parts + 0.9, RIGHT))
    ax.set_ylim(LOWEST, TOP + 1.7)
    _panels(page, found, units)
    return page.figure


def tackle_of(found: Reeving, *, units: str) -> Tackle:
    """Say what is written at a tackle."""
    rope = found.rope
    drum, share = "drum", None
    if rope.left is not None and rope.whole is not None:
        kept, left = (show(value, "length", units) for value in (rope.kept, rope.left))
        drum, share = f"drum: {left} left,\n{kept} always stay", rope.left / rope.whole
    what = (
        show_rated(found.gross, units) if found.load is None else show(found.gross, "mass", units)
    )
    ends = show(found.pull_in_part(found.parts), "force", units)
    return Tackle(
        parts=found.parts,
        on_drum=share,
        lead=f"lead line\n{show(found.line_pull, 'force', units)}",
        dead_end=f"dead end {ends}",
        hook=f"{what} gross",
        drum=drum,
    )


def _panels(page: Page, found: Reeving, units: str) -> None:
    left = LEFT + BETWEEN
    width, top = page.room[0] - left, page.room[1]
    if found.rope.whole is None:
        heading(page, "The rope", left=left, top=top, width=width, note=UNKNOWN)
        return
    heading(page, "Parts of line by boom length", left=left, top=top, width=width)
    low = BAR + HEAD + BETWEEN
    ax = page.axes(
        left=left + 0.009, bottom=low + 0.010, width=width - 0.0095, height=top - low - 0.016
    )
    draw_stair(ax, found, units=units)
    words = f"The rope, hook on the ground, at {show(found.radius, 'length', units)}"
    whole = f"{show(found.rope.whole, 'length', units)} in all"
    if found.falls_mass > 0.0:
        whole += f"; the falls weigh {show(found.falls_mass, 'mass', units)}"
    heading(page, words, left=left, top=low - 0.003, width=width, note=whole)
    draw_rope(page.axes(left=left, bottom=0.0, width=width, height=BAR), found, units=units)


def draw_stair(ax: Axes, found: Reeving, *, units: str = "metric") -> None:
    """Draw parts of line over boom length, as far as the rope reaches, and this boom on it."""
    machine = found.setup.machine
    lengths = np.linspace(*range_of_length(machine.boom), DRAWN)
    parts = parts_reeved(machine, length=lengths, most=machine.hoist.parts[-1])
    x = display_of("boom_length", units, lengths)
    quiet_axes(ax, x=f"boom length, {x.symbol}", y="parts of line")
    ax.step(lengths / x.factor, parts, where="post", color=INK, linewidth=1.3)
    ax.set_xlim(0.0, 1.06 * lengths[-1] / x.factor)
    ax.set_ylim(0.0, parts.max() + 1.0)
    ax.plot(
        [found.length / x.factor], [found.parts], marker="o", color=LOAD, markersize=5.0, zorder=5
    )
    ax.annotate(
        f"{found.parts}", (found.length / x.factor, found.parts), xytext=(4.0, 4.0),
        textcoords="offset points", **type_of(bold=True, colour=LOAD),
    )  # fmt: skip


def draw_rope(ax: Axes, found: Reeving, *, units: str = "metric") -> None:
    """Draw where the rope is: a bar of lead line, falls, what is left and what is kept.

    Parameters
    ----------
    found : Reeving
        Of a machine that says how long its rope is
    """
    rope = found.rope
    assert rope.whole is not None and rope.left is not None
    pieces = (
        ("lead line", rope.lead, STEEL),
        (falls_words(found.parts), rope.falls, FAINT),
        ("left on the drum", max(rope.left - rope.kept, 0.0), PAPER),
        ("always on the drum", rope.kept, QUIET),
    )
    ax.set_axis_off()
    ax.set_xlim(0.0, rope.whole)
    ax.set_ylim(0.0, 1.0)
    start = 0.0
    for number, (name, piece, colour) in enumerate(pieces):
        ax.add_patch(
            Rectangle(
                (start, 0.80), piece, 0.18, facecolor=colour, edgecolor=INK, linewidth=0.7,
                clip_on=False,
            )
        )  # fmt: skip
        start += piece
        y = 0.62 - 0.155 * number
        ax.add_patch(
            Rectangle(
                (0.0, y), 0.035 * rope.whole, 0.10, facecolor=colour, edgecolor=INK, linewidth=0.5
            )
        )
        ax.text(0.055 * rope.whole, y + 0.05, name, ha="left", va="center", **type_of(SMALL))
        said = show(piece, "length", units)
        ax.text(rope.whole, y + 0.05, said, ha="right", va="center", **type_of(SMALL))
