"""The key under a chart: what tint, line, letters and codes mean, and how to read the figures."""

from collections.abc import Iterator
from typing import NamedTuple

import numpy as np

from boomsim.figures.charts.cell_text import code, foot_words, lock_words
from boomsim.figures.charts.chart_layout import CAP
from boomsim.figures.charts.chart_sizes_and_tints import (
    BOLD,
    BREAKS,
    DASH,
    LINE,
    MARGIN,
    SECOND,
    SMALL,
    TINT,
    Look,
)
from boomsim.figures.charts.configuration_bars import ALL_OUT, change_mark
from boomsim.figures.charts.page_marks import POINT, Fill, Mark, Stroke, Words, box, rule
from boomsim.figures.charts.typeface import broken, width_of
from boomsim.figures.colours_and_lines import FAINT, INK, LOAD, QUIET
from boomsim.rating.charts.blank_cells import words_of
from boomsim.rating.charts.bold_line import bold_edges, crossings
from boomsim.rating.charts.chart_foot import reasons_told
from boomsim.rating.charts.load_chart import Chart
from boomsim.rating.charts.reading_sentences import NEVER_BETWEEN
from boomsim.rating.limits.limit_kind import STABILITY
from boomsim.rating.limits.limit_sentences import WHAT_SETS
from boomsim.rating.longest_boom import tell_longest
from boomsim.rating.nearest_radius import OVER_THE_MACHINE, nearest_radius
from boomsim.rating.overload.overload_map import OverloadMap
from boomsim.rating.overload.second_line import (
    BOLD_LINE,
    BREAKS_FIRST,
    FIRST,
    SECOND_LINE,
    comes_first,
)
from boomsim.units import listed, show

LABELS = 15.0
"""Room for the names of the key's lines [mm]."""

GAP, SWATCH = 4.5, 7.0
"""Between items, and room for a swatch with its gap [mm]."""


FILLS = {"tint": TINT, "breaks": BREAKS, "all out": ALL_OUT}
"""Of swatches."""


class Item(NamedTuple):
    """Words behind a swatch ("tint", "bold", …) or behind a short sign in bold, or alone."""

    swatch: str
    sign: str
    words: str


class Line(NamedTuple):
    """One line of the key; only the first line under a name carries it."""

    name: str
    items: list[Item]


def key_lines(
    chart: Chart,
    *,
    units: str,
    look: Look,
    width: float,
    rule: str = "",
    raised: OverloadMap | None = None,
) -> list[Line]:
    """Write the key.

    Parameters
    ----------
    width : float
        [mm]
    rule : str
        By which the ways to extend were chosen
    raised : OverloadMap, optional
        What the second line shows
    """
    groups = {
        "cells": _cells(chart, look),
        "raised": [] if raised is None else _raised(raised),
        "blank": _blanks(chart, units),
        "limits": _codes(chart) if look.codes else [],
        "extension": _ways(chart, rule),
    }
    room = width - LABELS
    lines = []
    for name, items in groups.items():
        lines += [Line(name, row) for row in _flowed(items, room)]
    texts = {
        "foot": foot_words(chart),
        "reading": how_to_read(chart, units=units),
        "your task": look.task,
        "answer": answer(chart) if look.answers else "",
    }
    for name, text in texts.items():
        lines += [
            Line(name, [Item("", "", row)]) for row in broken(text, width=room, size=SMALL) if row
        ]
    return [
        Line("" if k and lines[k - 1].name == line.name else line.name, line.items)
        for k, line in enumerate(lines)
    ]


def key_height(lines: list[Line]) -> float:
    """Height of the key [mm]."""
    return len(lines) * LINE * SMALL * POINT


def _cells(chart: Chart, look: Look) -> list[Item]:
    items = []
    if look.shading:
        items.append(Item("tint", "", "strength or a maker's permissible value sets this figure"))
        items.append(Item("plain", "", WHAT_SETS[STABILITY]))
    if look.bold_line:
        both = BOLD_LINE if look.second_line else "the bold line parts the two"
        items.append(Item("bold", "", both))
    if np.any(~chart.within_range & chart.rated):
        items.append(Item("", "~", "bends beyond the range of the model: a sketch"))
    return items


def _raised(raised: OverloadMap) -> list[Item]:
    seen = {comes_first(raised, int(r), int(c)) for r, c in np.argwhere(raised.chart.rated)}
    others = [FIRST[one] for one in FIRST if one in seen - {"breaks"}]
    return [
        Item("breaks", "", BREAKS_FIRST),
        *(Item("", "", f"elsewhere {words}") for words in others[:1]),
        Item("second", "", SECOND_LINE),
    ]


def _blanks(chart: Chart, units: str) -> list[Item]:
    """Why cells are blank, and where the rows begin."""
    machine, near = chart.setup.machine, nearest_radius(chart.setup)
    items = [Item("", r.sign, words_of(r, machine)) for r in reasons_told(chart) if r.sign]
    within = f"within {show(near, 'length', units)} {OVER_THE_MACHINE}"
    longest = [Item("", "", told) for told in (tell_longest(chart.setup, units),) if told]
    return [*items, Item("", "", "empty: the boom cannot be there"), Item("", "", within), *longest]


def _codes(chart: Chart) -> list[Item]:
    seen = np.unique(chart.governing[chart.rated])
    found = [chart.limits[g] for g in seen]
    return [Item("", code(limit), limit.words) for limit in found if code(limit)]


def _ways(chart: Chart, chosen: str) -> list[Item]:
    if not chart.is_best:
        shares = "percent of the stroke of each moving section, base side first"
        return [Item("", "", words) for words in (shares, chosen) if words]
    changes = Item("change", "", "another way to extend begins here")
    listed = (
        "under a column: the radius from which it uses a way, and a bar for each moving section, "
        "the largest at the top, filled as far as it is out"
    )
    locks = lock_words(chart.setup.machine.boom)
    items = [changes, Item("", "", listed), Item("all out", "", "all out")]
    return [*items, Item("", "", locks)] if locks else items


def answer(chart: Chart) -> str:
    """Tell where the bold line runs, for whoever marks a class."""
    crossed = crossings(chart)
    often = [k + 1 for k in np.flatnonzero(crossed > 1)]
    structural = int(np.sum(chart.structural & chart.rated))
    told = (
        f"The line runs along {len(bold_edges(chart))} cell edges. In the {structural} tinted "
        f"cells of {int(chart.rated.sum())} stability does not set the figure. On the way down the "
        f"line is crossed once in {int(np.sum(crossed == 1))} of {len(crossed)} columns"
    )
    if not often:
        return told + "."
    which = ", ".join(map(str, often))
    return f"{told}, and more often in column {which}, where another extension takes over."


def how_to_read(chart: Chart, *, units: str) -> str:
    """Say how the trade reads a chart."""
    machine, rope = chart.setup.machine, chart.setup.machine.hoist.rope_mass
    named = (("hook block", machine.hook_block), ("slings", machine.slings))
    taken = [f"{name} ({show(mass, 'mass', units)})" for name, mass in named if mass > 0.0]
    if rope > 0.0:
        taken.append(f"each fall of the rope ({show(rope, 'mass_per_length', units)})")
    held = f"; {listed(taken)} are part of them" if taken else ""
    return f"{NEVER_BETWEEN} Figures are gross loads, rounded down{held}."


def _flowed(items: list[Item], width: float) -> Iterator[list[Item]]:
    """Fill lines with items."""
    line: list[Item] = []
    used = 0.0
    for item in items:
        if line and used + _width(item) > width:
            yield line
            line, used = [], 0.0
        line.append(item)
        used += _width(item) + GAP
    if line:
        yield line


def _lead(item: Item) -> float:
    """Room for a swatch or a sign before the words [mm]."""
    sign = width_of(item.sign, size=SMALL, bold=True) + 1.2 if item.sign else 0.0
    return sign + (SWATCH if item.swatch else 0.0)


def _width(item: Item) -> float:
    return _lead(item) + width_of(item.words, size=SMALL)


def key_marks(lines: list[Line], *, top: float) -> Iterator[Mark]:
    """Draw the key.

    Parameters
    ----------
    top : float
        [mm]
    """
    for k, line in enumerate(lines):
        base = top + (k + 0.75) * LINE * SMALL * POINT
        if line.name:
            yield Words(MARGIN, base, line.name, SMALL, colour=QUIET)
        x = MARGIN + LABELS
        for item in line.items:
            if item.swatch:
                yield from _swatch(item.swatch, x, base)
            if item.sign:
                yield Words(x, base, item.sign, SMALL, bold=True)
            yield Words(x + _lead(item), base, item.words, SMALL)
            x += _width(item) + GAP


def _swatch(kind: str, x: float, base: float) -> Iterator[Mark]:
    high = CAP * SMALL * POINT
    frame = box(x, base - high, 5.5, high)
    if kind in FILLS:
        yield Fill(points=frame, colour=FILLS[kind])
    if kind in (*FILLS, "plain"):
        edge = FAINT if kind == "tint" else QUIET
        yield Stroke(points=[*frame, frame[0]], width=0.3, colour=edge)
    if kind == "bold":
        yield rule(x, base - high / 2, 5.5, width=BOLD, colour=INK)
    if kind == "second":
        ends = ((x, base - high / 2), (x + 5.5, base - high / 2))
        yield Stroke(points=ends, width=SECOND, colour=LOAD, dash=DASH)
    if kind == "change":
        yield change_mark(x + 2.0, base - high / 2, SMALL)
