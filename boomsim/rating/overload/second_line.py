"""The second line of a chart: it parts what would break first from what would tip first.

The bold line says which margin is used up first. This one says what really comes first when the
load is raised past all margins, as :mod:`boomsim.rating.overload.overload_map` finds it cell by
cell.
"""

from typing import Any

import numpy as np

from boomsim.rating.charts.bold_line import Edge
from boomsim.rating.charts.chart_tables import UNITS, Added, Row
from boomsim.rating.charts.rows_and_rounding import MASS_UNIT
from boomsim.rating.overload.overload_map import OverloadMap

BOLD_LINE = "bold line: what sets the figure"

SECOND_LINE = (
    "second line: what really comes first when the load is raised past all margins and nobody luffs"
)
"""What each of the two lines parts."""

BREAKS_FIRST = "something breaks before the crane tips"

TIPS_FIRST = "the crane tips before anything breaks"

NEITHER = "nothing breaks and nothing tips, however great the load"

FIRST = {"breaks": BREAKS_FIRST, "tips": TIPS_FIRST, "neither": NEITHER}
"""What comes first in a cell, by the word that stands in JSON and CSV."""

ALONE = {"breaks": "it breaks first", "tips": "it tips first", "neither": "neither comes"}
"""The same in a column that the second line does not cross."""

SIGN = "!"
"""Behind a figure of a cell in which something breaks first."""


def comes_first(found: OverloadMap, row: int, column: int) -> str:
    """Tell what comes first in a cell when its load is raised.

    Parameters
    ----------
    row, column : int
        Of a rated cell

    Returns
    -------
    str
        A key of :data:`FIRST`
    """
    if found.breaks_first[row, column]:
        return "breaks"
    return "tips" if np.isfinite(found.tipping[row, column]) else "neither"


def count_words(found: OverloadMap) -> str:
    """Say in how many cells something breaks first."""
    breaks, rated = int(np.sum(found.breaks_first)), int(np.sum(found.chart.rated))
    sets = int(np.sum(found.chart.structural & found.chart.rated))
    return (
        f"In {breaks} of {rated} cells {BREAKS_FIRST}; in {sets} cells strength or a maker's "
        "permissible value sets the figure."
    )


def rows_between(edges: frozenset[Edge], column: int) -> list[int]:
    """Rows below which a line crosses a column, from its top down."""
    return sorted(r - 1 for (r, c), (below, _) in edges if c == column and below == r)


def second_columns(found: OverloadMap, *, units: str) -> Added:
    """List what the second line adds to a table of the chart.

    Returns
    -------
    Added
        Loads that never come are left empty
    """
    mass = UNITS[units][1]
    rows, columns = found.chart.rated.shape
    return Added(
        head=["comes_first", "first_to_break", f"breaks_at_{mass}", f"tips_at_{mass}"],
        cells=[[_second_cell(found, r, c, units) for r in range(rows)] for c in range(columns)],
    )


def _second_cell(found: OverloadMap, row: int, column: int, units: str) -> Row:
    if not found.chart.rated[row, column]:
        return [""] * 4
    loads = found.failure[row, column], found.tipping[row, column]
    failure, tipping = (
        round(float(load) / MASS_UNIT[units], 1) if np.isfinite(load) else "" for load in loads
    )
    return [comes_first(found, row, column), _part(found, row, column) or "", failure, tipping]


def _part(found: OverloadMap, row: int, column: int) -> str | None:
    """What gives way first, however late; None where nothing ever does."""
    if not np.isfinite(found.failure[row, column]):
        return None
    return found.limits[int(found.gives_way[row, column])].key


def plain_second_line(found: OverloadMap) -> dict[str, Any]:
    """Tell the second line and what each cell says about it, SI.

    Returns
    -------
    dict
        Cells as in the columns of the chart, null where they are blank; a load that never comes is
        null
    """
    rows, columns = found.chart.rated.shape
    return {
        "second_line": sorted(found.meeting),
        "raised": [[_plain(found, r, c) for r in range(rows)] for c in range(columns)],
        "comes_first_words": FIRST,
    }


def _plain(found: OverloadMap, row: int, column: int) -> dict[str, Any] | None:
    if not found.chart.rated[row, column]:
        return None
    failure, tipping = float(found.failure[row, column]), float(found.tipping[row, column])
    return {
        "comes_first": comes_first(found, row, column),
        "first_to_break": _part(found, row, column),
        "breaks_at": failure if np.isfinite(failure) else None,
        "tips_at": tipping if np.isfinite(tipping) else None,
    }
