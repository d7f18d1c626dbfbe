"""Draw the bold line on a chart: how far down each column something other than stability rules."""

from functools import lru_cache
from itertools import combinations

import numpy as np
from sympy import symbols

from boomsim.papers.check_models.bold_line_columns import (
    COLUMNS,
    MACHINES,
    ROWS,
    BoldColumn,
    bold_column,
    last_row,
)
from boomsim.papers.check_models.question_charts import INVENTED, LENGTH, MASS, STEP
from boomsim.papers.numbers.amounts import grouped
from boomsim.papers.numbers.dice import Chance
from boomsim.papers.numbers.printed_units import METRIC, US, unit
from boomsim.papers.problems.family import Drawn, Family, Given, Slip, Step, Table, Values

R_A, R_B, R_C = symbols("R_A R_B R_C")
a, b, c = symbols("a b c")
a_1, a_2, b_1, b_2, c_1, c_2 = symbols("a_1 a_2 b_1 b_2 c_1 c_2")
k_1, k_2, k_3 = symbols("k_1 k_2 k_3")

NAMES = "ABC"
SHOWN = 6
"""Rows of the table [1]."""
APART = 2
"""Least difference of the two figures of a cell, so that nobody has to guess [steps]."""


@lru_cache(maxsize=2)
def tables(system: str) -> tuple[tuple[tuple[int, ...], int], ...]:
    """Find three columns of one machine and a first row, so that each line ends in another row.

    Returns
    -------
    tuple of (tuple of int, int)
        Columns in `COLUMNS`, and the first row
    """
    found = []
    for machine in MACHINES:
        offered = [n for n, (name, _) in enumerate(COLUMNS) if name == machine]
        for chosen in combinations(offered, len(NAMES)):
            columns = [bold_column(one, system) for one in chosen]
            ends = [last_row(one) for one in columns]
            for first in range(len(ROWS[system]) - SHOWN + 1):
                rows = range(first, first + SHOWN)
                inside = all(rows[0] < end < rows[-1] for end in ends)
                clear = inside and all(_is_clear(one, rows) for one in columns)
                if clear and len(set(ends)) == len(ends):
                    found.append((chosen, first))
    return tuple(found)


def draw(chance: Chance, system: str, _: Values) -> Drawn:
    """Choose three columns and the rows that are shown."""
    chosen, first = chance.pick(tables(system))
    order = chance.shuffled(chosen)
    columns = [bold_column(one, system) for one in order]
    foot = float(unit(LENGTH[system]).factor)
    values = {}
    for name, number, column in zip("abc", order, columns, strict=True):
        end = last_row(column)
        for letter, row in ((name, end), (f"{name}_1", end - 1), (f"{name}_2", end + 1)):
            values[letter] = ROWS[system][row] * foot
        values[f"k_{'abc'.index(name) + 1}"] = number
    words = {name: one.words for name, one in zip(NAMES, columns, strict=True)}
    rows = range(first, first + SHOWN)
    return Drawn(values=values, words=words, table=_printed(columns, rows, system))


def _is_clear(column: BoldColumn, rows: range) -> bool:
    """Whether a column has two figures in each row, well apart, and one change from row to row."""
    stability, others = column.stability[rows], column.others[rows]
    stands = stability < others
    apart = np.abs(stability - others) >= APART
    agree = stands == column.stands[rows]
    return bool(np.all((stability > 0) & (others > 0) & apart & agree) and np.all(np.diff(stands)
                .cumsum() <= 1) and not stands[0] and stands[-1])  # fmt: skip


def _printed(columns: list[BoldColumn], rows: range, system: str) -> Table:
    """Write both figures of each cell."""
    heads = [f"{name}, {what}" for name in NAMES for what in ("stability", "the rest")]
    lines = []
    for row in rows:
        both = (int(one[row]) for c in columns for one in (c.stability, c.others))
        cells = (grouped(steps * STEP[system], system=system) for steps in both)
        lines.append((f"{ROWS[system][row]:.9g}", *cells))
    head = (f"radius [{LENGTH[system]}]", *heads)
    return Table(rows=(head, *lines), caption=INVENTED.format(mass=MASS[system]))


def check(given: Values) -> float:
    """Rate the last column with all limits at once, and see where stability begins."""
    number = round(given["k_3"])
    for system in (METRIC, US):
        foot = float(unit(LENGTH[system]).factor)
        offered = [radius * foot for radius in ROWS[system]]
        if any(abs(one - given["c"]) < 1e-9 for one in offered):
            return offered[last_row(bold_column(number, system))]
    return float("nan")


_RADIUS = {"metric": "drawn in m by 1", "us": "drawn in ft by 1"}
_COLUMN = {"metric": "drawn by 1", "us": "drawn by 1"}
_DOES = (
    "Compare the two figures row by row: the chart prints the smaller one. The line runs below the "
    "last row in which that is not the figure of stability."
)


def _step(letter: object, formula: object, name: str) -> Step:
    """How far down the line runs in one column."""
    return Step(letter, formula, f"radius above the line in column {name}", _DOES,
                metric="m", us="ft", nearest=("0.1", "0.1"))  # fmt: skip


FAMILY = Family(
    id="charts_bold_line",
    topic="charts",
    title="Drawing the bold line",
    text="A chart is made for three configurations of an invented crane: A is {A}, B is {B}, C is "
    "{C}. For each radius the table has what stability allows, and what the rest allows, that is "
    "strength and the maker's permissible values. The chart will print the smaller of the two, "
    "and a bold line below the last row that stability does not set. Draw the line in the table. "
    "Which is the radius of the last row above it in each column?",
    assume="The line may stand at another row in each column.",
    givens=(
        Given(a, "last row above the line in A", **_RADIUS),
        Given(a_1, "row before it", **_RADIUS),
        Given(a_2, "row after it", **_RADIUS),
        Given(b, "last row above the line in B", **_RADIUS),
        Given(b_1, "row before it", **_RADIUS),
        Given(b_2, "row after it", **_RADIUS),
        Given(c, "last row above the line in C", **_RADIUS),
        Given(c_1, "row before it", **_RADIUS),
        Given(c_2, "row after it", **_RADIUS),
        Given(k_1, "which column A is", **_COLUMN),
        Given(k_2, "which column B is", **_COLUMN),
        Given(k_3, "which column C is", **_COLUMN),
    ),
    steps=(_step(R_A, a, "A"), _step(R_B, b, "B"), _step(R_C, c, "C")),
    slips=(
        Slip(R_A, a_2, "named the first row of A that stability sets, below the line"),
        Slip(R_A, a_1, "ended the line in A a row too early"),
        Slip(R_B, b_2, "named the first row of B that stability sets, below the line"),
        Slip(R_B, b_1, "ended the line in B a row too early"),
        Slip(R_B, a, "drew the line in B at the height of A"),
        Slip(R_C, c_2, "named the first row of C that stability sets, below the line"),
        Slip(R_C, c_1, "ended the line in C a row too early"),
        Slip(R_C, b, "drew the line in C at the height of B"),
    ),
    check=check,
    draw=draw,
    by_check=True,
)
