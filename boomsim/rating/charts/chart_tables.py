"""Charts and books as rows of a table and as plain values."""

import csv
from collections.abc import Iterable, Iterator
from dataclasses import asdict, dataclass
from typing import IO, Any

import numpy as np

from boomsim.caution import CAUTION
from boomsim.rating.charts.blank_cells import NO_REACH, REASONS
from boomsim.rating.charts.bold_line import bold_edges
from boomsim.rating.charts.chart_book import Book
from boomsim.rating.charts.chart_foot import reasons_told
from boomsim.rating.charts.load_chart import Chart
from boomsim.rating.charts.rows_and_rounding import LENGTH_UNIT, MASS_UNIT
from boomsim.rating.empty_hook.empty_hook_sentences import plain_empty_hook
from boomsim.rating.nearest_radius import nearest_radius
from boomsim.rating.parts_reeved import reeved
from boomsim.rating.setup import Setup
from boomsim.rating.strategies import label
from boomsim.version import __version__

UNITS = {"metric": ("m", "kg"), "us": ("ft", "lb")}
"""Of length and mass in tables."""

BLANKS = "blank: why a cell holds no figure. " + " ".join(
    f"{reason.key}: {reason.words}." for reason in REASONS[:NO_REACH]
)  # fmt: skip
"""Remark at the head of a file; what a boom does not reach is not listed."""

Row = list[str | float | int]


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Added:
    """Columns that a table has beside those of every chart.

    Attributes
    ----------
    head : list of str
    cells : list of list of list
        For each column and row of the chart, as many values as `head`
    """

    head: Row
    cells: list[list[Row]]


def table_head(units: str) -> Row:
    """Name the columns of a table."""
    length, mass = UNITS[units]
    return [
        "machine",
        "rule",
        "sector",
        "counterweight",
        "support",
        "parts_of_line",
        "extension_percent",
        f"boom_length_{length}",
        f"radius_{length}",
        f"gross_capacity_{mass}",
        "set_by",
        "limit",
        "within_model_range",
        "blank",
    ]


def table_rows(chart: Chart, *, units: str, added: Added | None = None) -> Iterator[Row]:
    """List the cells of a chart, column by column; none that the boom does not reach.

    Yields
    ------
    list
        In the order of :func:`table_head`, then what is added
    """
    setup = chart.setup
    named: Row = [setup.machine.name, setup.rule.name, setup.sector, setup.counterweight.name]
    named += [setup.support.name]
    parts = reeved(setup, length=chart.length).tolist()
    ways = [label(row) for row in chart.configurations.extension]
    lengths = [round(float(v) / LENGTH_UNIT[units], 3) for v in chart.configurations.length]
    radii = [round(float(v) / LENGTH_UNIT[units], 4) for v in chart.radii]
    limits = [(limit.set_by, limit.key) for limit in chart.limits]
    # Steps are whole numbers: the product is exact to the last digit that is shown.
    capacity = np.round(chart.steps * (chart.step / MASS_UNIT[units]), 6).T.tolist()
    used, governing = chart.used.T.tolist(), chart.governing.T.tolist()
    blank = chart.blank.T.tolist()
    within = chart.within_range.T.tolist()
    for c in range(len(chart.length)):
        for r, radius in enumerate(radii):
            way, more = used[c][r], added.cells[c][r] if added else []
            if way >= 0:
                cell = [ways[way], lengths[way], radius, capacity[c][r]]
                yield [
                    *named,
                    parts[c],
                    *cell,
                    *limits[governing[c][r]],
                    int(within[c][r]),
                    "",
                    *more,
                ]
            elif blank[c][r] < NO_REACH:
                own = chart.choices[c]
                cell = [ways[own[0]] if len(own) == 1 else "", lengths[own[0]], radius]
                yield [*named, parts[c], *cell, "", "", "", "", REASONS[blank[c][r]].key, *more]


def write_csv(
    charts: Iterable[Chart], file: IO[str], *, units: str, added: Added | None = None
) -> None:
    """Write charts as comma-separated values, the caution first as a remark.

    Parameters
    ----------
    file : text file
        Opened with ``newline=""``
    added : Added, optional
        To the table of one chart
    """
    file.write(f"# {CAUTION} {BLANKS}\n")
    writer = csv.writer(file, lineterminator="\n")
    writer.writerow([*table_head(units), *(added.head if added else [])])
    for chart in charts:
        writer.writerows(table_rows(chart, units=units, added=added))


def plain_setup(setup: Setup) -> dict[str, Any]:
    """Tell how the crane is set up."""
    return {
        "rule": asdict(setup.rule),
        "sector": setup.sector,
        "counterweight": setup.counterweight.name,
        "support": setup.support.name,
        "parts": setup.parts,
    }


def plain_chart(chart: Chart) -> dict[str, Any]:
    """Tell everything about a chart, SI.

    Returns
    -------
    dict
        Cells are null where they are blank; `blank` says why
    """
    parts = reeved(chart.setup, length=chart.length)
    return {
        "machine": chart.setup.machine.name,
        **plain_setup(chart.setup),
        "disturbances": chart.setup.disturbances,
        "step": chart.step,
        "radii": chart.radii,
        "columns": [
            {
                "boom_length": chart.length[c],
                "parts": parts[c],
                "extensions": chart.configurations.extension[list(chart.choices[c])],
                "cells": [_plain_cell(chart, r, c) for r in range(len(chart.radii))],
                "blank": [
                    None if reason is None else reason.key
                    for reason in (chart.reason(r, c) for r in range(len(chart.radii)))
                ],
                "empty_hook": [
                    plain_empty_hook(chart.empty_hook, row=way) for way in chart.choices[c]
                ],
            }
            for c in range(len(chart.length))
        ],
        "bold_line": sorted(bold_edges(chart)),
        "blank_reasons": {reason.key: reason.words for reason in reasons_told(chart)},
        "nearest_radius": nearest_radius(chart.setup),
    }


def _plain_cell(chart: Chart, row: int, column: int) -> dict[str, Any] | None:
    limit = chart.limit(row, column)
    if limit is None:
        return None
    at = row, column
    return {
        "capacity": chart.capacity[at],
        "before_rounding": chart.exact[at],
        "extension": chart.configurations.extension[chart.used[at]],
        "set_by": limit.set_by,
        "governing": limit.key,
        "tipping_load": chart.tipping_load[at],
        "boom_angle": chart.angle[at],
        "within_model_range": chart.within_range[at],
    }


def plain_book(book: Book) -> dict[str, Any]:
    """Tell everything about a book, SI, as lists that json can write.

    Returns
    -------
    dict
        Capacities are in steps, a list over the radii for each configuration; -1 where blank, and
        why: index into `blank_reasons`, -1 where there is a figure
    """
    limits = book.chapters[0].best.limits
    return {
        "schema": "boomsim.book/3",
        "boomsim": __version__,
        "caution": CAUTION,
        "machine": book.machine.name,
        "step": book.step,
        "radii": book.radii.tolist(),
        "extensions": book.configurations.extension.tolist(),
        "boom_lengths": book.configurations.length.tolist(),
        "systems": list(book.configurations.system),
        "limits": [{"name": limit.key, "set_by": limit.set_by} for limit in limits],
        "blank_reasons": [{"key": r.key, "words": r.words} for r in REASONS],
        "chapters": [
            {
                **plain_setup(chapter.setup),
                "first_radius": _first_row(book, chapter.stated),
                "capacity_steps": chapter.stated.steps.T.tolist(),
                "governing": chapter.stated.governing.T.tolist(),
                "blank": chapter.stated.blank.T.tolist(),
            }
            for chapter in book.chapters
        ],
    }


def _first_row(book: Book, chart: Chart) -> int:
    """Row of the book at which the lists of a chapter begin."""
    return int(np.searchsorted(book.radii, chart.radii[0])) if len(chart.radii) else 0
