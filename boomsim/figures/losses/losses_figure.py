"""Picture of what eats capacity, and of what a kilogram costs."""

from textwrap import wrap
from typing import Any

import numpy as np
from matplotlib.figure import Figure
from matplotlib.patches import Rectangle

from boomsim.figures.colours_and_lines import FAMILIES, INK, PAPER, QUIET, SMALL, type_of
from boomsim.figures.figure_page import Page, new_page
from boomsim.figures.figure_panels import heading
from boomsim.figures.losses.losses_bars import draw_bars
from boomsim.figures.setup_words import allowance_words, machine_words, setup_words
from boomsim.figures.text_width import text_width
from boomsim.rating.limits.limit_kind import STABILITY
from boomsim.rating.losses.losses_sentences import (
    lettered_reasons,
    tell_corners,
    tell_effect,
    tell_governing,
    tell_lettered,
)
from boomsim.rating.losses.losses_study import Losses
from boomsim.rating.losses.mass_sensitivity import Sensitivity
from boomsim.rating.strategies import label
from boomsim.units import show, show_rated

WIDTH, ROW, WORDS = 0.19, 0.0048, 0.062
"""Page width, distance of the rows, room for what a row is [m]."""

FEW = 3
"""Up to so many places there is room for masses beside the percents."""

LINE, NOTE_WIDTH = 0.0036, 150
"""Distance of the lines of notes [m], and so many characters are in one."""

HEAD, SECTION, KEY = 0.0160, 0.0075, 0.008
"""Room for the columns' heads, for a heading, and for the key [m]."""


def figure_of_losses(found: Losses, costs: Sensitivity, *, units: str = "metric") -> Figure:
    """Draw what eats capacity at a few places, and what a kilogram costs there.

    Parameters
    ----------
    costs : Sensitivity
        At the same places
    """
    effects, parts = len(found.effects) * ROW, len(costs.name) * ROW
    notes = _notes(found, units)
    page = new_page(
        width=WIDTH,
        height=0.0260 + HEAD + effects + SECTION + 0.0055 + parts + KEY + len(notes) * LINE,
        title=f"{machine_words(found.setup)}: what eats capacity",
        subtitle=setup_words(found.setup, units=units, extension=found.places.extension),
        foot=allowance_words(found.setup.rule, units=units),
    )
    top = page.room[1]
    _heads(page, found, units)
    bottom = top - HEAD - effects
    heading(page, "What each takes", left=0.0, top=top, width=WORDS)
    _draw_effects(page, found, units, bottom=bottom, height=effects)
    top, unit = bottom - SECTION, "kilogram" if units == "metric" else "pound"
    heading(
        page,
        f"What a {unit} more in a part costs (−) or gives (+): {unit}s of rated load",
        left=0.0,
        top=top,
        width=WORDS,
    )
    _draw_costs(page, costs, bottom=top - 0.0055 - parts, height=parts)
    _draw_key(page, bottom=len(notes) * LINE)
    _write_notes(page, notes)
    return page.figure


def _notes(found: Losses, units: str) -> list[str]:
    """Reasons for each nothing, and where a short outrigger is counted, in lines."""
    told = [f"({letter}) {why}." for why, letter in lettered_reasons(found).items()]
    told.append(tell_corners(found, units=units))
    return [line for text in told for line in wrap(text, NOTE_WIDTH)]


def _write_notes(page: Page, lines: list[str]) -> None:
    for n, words in enumerate(reversed(lines)):
        y = (page.bottom + n * LINE) / page.height
        style = type_of(SMALL, colour=QUIET)
        page.figure.text(page.left / page.width, y, words, ha="left", va="bottom", **style)


def _columns(page: Page, count: int) -> list[tuple[float, float]]:
    """Left edge and width of each column [m]."""
    room = page.room[0] - WORDS
    return [(WORDS + k * room / count, 0.94 * room / count) for k in range(count)]


def _heads(page: Page, found: Losses, units: str) -> None:
    """Say over each column which place it is."""
    columns = _columns(page, len(found.capacity))
    for k, (left, _) in enumerate(columns):
        lines = (
            f"{show(float(found.places.radius[k]), 'length', units)}, boom "
            f"{show(float(found.length[k]), 'boom_length', units)}",
            f"{label(found.places.extension[k])} %",
            f"rated {show_rated(float(found.capacity[k]), units)} by",
            tell_governing(found.governing[k]),
        )
        for n, words in enumerate(lines):
            room = columns[k][1]
            size = min(SMALL, SMALL * room / text_width(words, size=SMALL, bold=n == 0))
            x = (page.left + left) / page.width
            y = (page.bottom + page.room[1] - n * 0.0036) / page.height
            style = type_of(size, bold=n == 0, colour=QUIET if n else INK)
            page.figure.text(x, y, words, ha="left", va="top", **style)


def _draw_effects(page: Page, found: Losses, units: str, *, bottom: float, height: float) -> None:
    columns = _columns(page, len(found.capacity))
    axes = [
        page.axes(left=left, bottom=bottom, width=width, height=height) for left, width in columns
    ]
    loss, share = found.loss, np.maximum(found.share, 0.0)
    structural = np.array(
        [[g is not None and g.set_by != STABILITY for g in t.governing] for t in found.effects]
    )

    notes = lettered_reasons(found)

    def write(row: int, column: int) -> str:
        effect = found.effects[row]
        if effect.why[column] is not None or effect.governing[column] is None:
            return tell_lettered(effect, column, notes=notes, units=units)
        taken = show(float(loss[row, column]), "mass", units)
        part = f"{100 * share[row, column]:.1f} %"
        return part if len(found.capacity) > FEW else f"{taken}, {part}"

    rows = [tell_effect(effect, units=units) for effect in found.effects]
    draw_bars(axes, share, rows=rows, structural=structural, write=write, width=columns[0][1])


def _draw_costs(page: Page, costs: Sensitivity, *, bottom: float, height: float) -> None:
    columns = _columns(page, len(costs.is_stability))
    axes = [
        page.axes(left=left, bottom=bottom, width=width, height=height) for left, width in columns
    ]
    best = np.where(np.abs(costs.best) < 5e-3, 0.0, costs.best)
    structural = np.broadcast_to(~costs.is_stability, best.shape)

    def write(row: int, column: int) -> str:
        if costs.kink[row, column]:
            return "limit changes"
        value = best[row, column]
        return f"{value:+.2f}".replace("-", "−") if value else "nothing"

    draw_bars(
        axes, best, rows=list(costs.name), structural=structural, write=write, width=columns[0][1]
    )


def _draw_key(page: Page, *, bottom: float) -> None:
    ax = page.axes(left=0.0, bottom=bottom, width=page.room[0], height=KEY - 0.003)
    ax.set_axis_off()
    ax.set_xlim(0.0, page.room[0])
    ax.set_ylim(0.0, 1.0)
    words = ("stability sets it then", "strength or maker's value")
    for k, (family, text) in enumerate(zip(("stability", "structural"), words, strict=True)):
        left = WORDS + k * 0.042
        look: dict[str, Any] = {
            "facecolor": INK if family == "stability" else PAPER,
            "edgecolor": INK,
            "hatch": FAMILIES[family].hatch,
        }
        ax.add_patch(Rectangle((left, 0.2), 0.006, 0.55, linewidth=0.7, **look))
        style = type_of(SMALL, colour=QUIET)
        ax.text(left + 0.0075, 0.48, text, ha="left", va="center", **style)
