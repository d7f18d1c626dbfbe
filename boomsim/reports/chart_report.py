"""A chart, and a reading of it, as text and as JSON."""

from shutil import get_terminal_size
from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.reports.text_tables import paragraph, table

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.rating.charts.chart_reading import Reading
    from boomsim.rating.charts.load_chart import Chart
    from boomsim.rating.overload.overload_map import OverloadMap


def as_json(chart: "Chart", *, raised: "OverloadMap | None") -> dict[str, Any]:
    """Give a chart, and what the second line shows, SI."""
    from boomsim.rating.charts.chart_tables import plain_chart
    from boomsim.rating.overload.second_line import plain_second_line

    return {**plain_chart(chart), **(plain_second_line(raised) if raised is not None else {})}


def figure(chart: "Chart", *, units: str, rule: str, second_line: bool) -> "Figure":
    """Draw the first page of a chart.

    Parameters
    ----------
    rule : str
        By which the ways to extend were chosen
    """
    from dataclasses import replace

    from boomsim.figures.charts.chart_page import chart_sheets
    from boomsim.figures.charts.chart_sizes_and_tints import FULL
    from boomsim.figures.charts.sheet_figure import figure_of_sheet

    look = replace(FULL, second_line=second_line)
    paper = "letter" if units == "us" else "a4"
    return figure_of_sheet(chart_sheets(chart, units=units, paper=paper, look=look, rule=rule)[0])


def summary(chart: "Chart") -> str:
    """Say in a few words what was rated."""
    rows, columns = chart.rated.shape
    return (
        f"{chart.setup.machine.name}, {rows} radii x {columns} boom lengths, "
        f"{int(chart.rated.sum())} rated cells"
    )


def as_text(
    chart: "Chart",
    *,
    units: str,
    marked: bool = True,
    rule: str = "",
    raised: "OverloadMap | None" = None,
) -> str:
    """Lay out a chart as tables that fit the terminal.

    Parameters
    ----------
    marked : bool
        Put a sign beside each figure that stability does not set
    rule : str
        By which the ways to extend were chosen
    raised : OverloadMap, optional
        What the second line shows
    """
    import numpy as np

    from boomsim.figures.charts.cell_text import foot_words, numbers_of
    from boomsim.figures.setup_words import allowance_words, machine_words, setup_words
    from boomsim.rating.charts.load_chart import some_columns
    from boomsim.rating.charts.reading_sentences import NEVER_BETWEEN, blank_words, which_chart
    from boomsim.rating.limits.limit_sentences import signs_in_words

    numbers = numbers_of(chart, units=units)
    head = (
        f"{machine_words(chart.setup)}: rated gross load in {numbers.mass}, rounded down to "
        f"{numbers.step}; {which_chart(chart)}; "
        f"{setup_words(chart.setup, units=units)}."
    )
    signs = _signs(chart, marked, raised)
    wide = max(len(numbers.capacity(int(chart.steps.max()))), 5) + 2 + len(signs[0][0])
    fit = max((get_terminal_size((100, 24)).columns - 12) // wide, 3)
    pieces = np.array_split(np.arange(len(chart.length)), -(-len(chart.length) // fit))
    grids = []
    for piece in pieces:
        shown = some_columns(chart, piece)
        first = chart.radii.tolist().index(shown.radii[0])
        grids.append(_grid(shown, units, [signs[c][first:] for c in piece]))
    ways = [paragraph(line, indent="  ") for line in ways_used(chart, units=units)]
    words = f"{signs_in_words()} " if marked else ""
    foot = foot_words(chart)
    return "\n\n".join(
        [
            paragraph(f"{head} {allowance_words(chart.setup.rule, units=units)}"),
            *grids,
            paragraph(words + NEVER_BETWEEN),
            *([] if raised is None else _raised_text(raised, units)),
            paragraph(blank_words(chart, units=units)),
            *([paragraph(f"{foot[0].upper()}{foot[1:]}.")] if foot else []),
            "\n".join([paragraph(f"{_heading(rule)}, percent, base side first:"), *ways]),
            paragraph(CAUTION),
        ]
    )  # fmt: skip


def _heading(rule: str) -> str:
    return f"One way to extend for each column ({rule})" if rule else "Ways to extend"


def _signs(chart: "Chart", marked: bool, raised: "OverloadMap | None") -> list[list[str]]:
    """Signs behind the figures, all of one width, for each column and row."""
    from boomsim.rating.limits.limit_sentences import sign
    from boomsim.rating.overload.second_line import SIGN

    def signs(row: int, column: int) -> str:
        sets = sign(chart.limit(row, column)) if marked else ""
        if raised is None:
            return sets.ljust(1)
        return sets.ljust(1) + (SIGN if raised.breaks_first[row, column] else " ")

    rows, columns = chart.rated.shape
    return [[signs(r, c) for r in range(rows)] for c in range(columns)]


def _grid(chart: "Chart", units: str, signs: list[list[str]]) -> str:
    from boomsim.figures.charts.cell_text import foot_lines, numbers_of

    numbers, room = numbers_of(chart, units=units), " " * len(signs[0][0])
    head = [f"radius, {numbers.length}", *(numbers.boom(float(b)) + room for b in chart.length)]
    rows = []
    for r, radius in enumerate(chart.radii):
        cells = [
            (reason.sign if (reason := chart.reason(r, c)) else numbers.capacity(int(steps)))
            + signs[c][r]
            for c, steps in enumerate(chart.steps[r])
        ]
        rows.append([numbers.radius(float(radius)), *cells])
    for name, texts in foot_lines(chart, numbers):
        rows.append([name, *(text + room for text in texts)])
    return table(head, rows)


def _raised_text(raised: "OverloadMap", units: str) -> list[str]:
    from boomsim.rating.overload import second_line
    from boomsim.rating.overload.overload_sentences import ultimates_of

    bold, second = second_line.BOLD_LINE, second_line.SECOND_LINE
    told = (
        f"{second_line.SIGN}: {second_line.BREAKS_FIRST}. {bold[0].upper()}{bold[1:]}; {second}. "
        f"{second_line.count_words(raised)} {ultimates_of(raised.chart.setup)}"
    )
    return [paragraph(told.rstrip()), two_lines(raised, units=units)]


def two_lines(raised: "OverloadMap", *, units: str) -> str:
    """Say column by column between which radii the bold line and the second line run.

    Returns
    -------
    str
        A table
    """
    import numpy as np

    from boomsim.figures.charts.cell_text import numbers_of
    from boomsim.rating.overload.second_line import ALONE, comes_first, rows_between

    chart = raised.chart
    numbers = numbers_of(chart, units=units)
    radii = [numbers.radius(float(radius)) for radius in chart.radii]

    def places(rows: list[int]) -> str:
        return ", ".join(f"{radii[r]} and {radii[r + 1]}" for r in rows)

    def second(column: int) -> str:
        rows = rows_between(raised.meeting, column)
        here = {comes_first(raised, int(r), column) for r in np.flatnonzero(chart.rated[:, column])}
        return places(rows) or f"none: {' or '.join(ALONE[one] for one in sorted(here))}"

    rows = [
        [numbers.boom(float(b)), places(rows_between(raised.bold, c)) or "none", second(c)]
        for c, b in enumerate(chart.length)
    ]
    unit = numbers.length
    return table(
        [f"boom, {unit}", f"bold line between, {unit}", f"second line between, {unit}"], rows
    )


def ways_used(chart: "Chart", *, units: str) -> list[str]:
    """Say for each column which ways to extend it uses, and from which radius on."""
    from boomsim.figures.charts.cell_text import lowest_angle, numbers_of
    from boomsim.rating.charts.column_changes import runs
    from boomsim.rating.strategies import label

    numbers = numbers_of(chart, units=units)
    told = []
    for c, length in enumerate(chart.length):
        used = [
            f"({label(chart.configurations.extension[run.configuration])})"
            + (f" from {numbers.radius(float(chart.radii[run.first]))}" if chart.is_best else "")
            + (f" (never below {low})" if (low := lowest_angle(chart, run.configuration)) else "")
            for run in runs(chart, c)
        ]
        told.append(f"{numbers.boom(float(length))} {numbers.length}: {', '.join(used) or 'none'}")
    return told


def reading_text(reading: "Reading", *, units: str) -> str:
    """Tell a reading, and how it goes wrong."""
    from boomsim.rating.charts.misreadings import misreadings
    from boomsim.rating.charts.reading_sentences import tell_misreading, tell_reading

    wrong = [tell_misreading(one, reading, units=units) for one in misreadings(reading)]
    return "\n\n".join(
        [
            paragraph(" ".join(tell_reading(reading, units=units))),
            *(
                ["Read wrongly:\n" + "\n".join(paragraph(line, indent="  ") for line in wrong)]
                if wrong
                else []
            ),
            paragraph(CAUTION),
        ]
    )


def reading_json(reading: "Reading") -> dict[str, Any]:
    """Tell a reading, SI."""
    from boomsim.rating.charts.chart_tables import plain_setup
    from boomsim.rating.charts.misreadings import misreadings

    return {
        "machine": reading.chart.setup.machine.name,
        **plain_setup(reading.chart.setup),
        "radius": reading.radius,
        "boom_length": reading.length,
        "row_radius": reading.row_radius,
        "column_boom_length": reading.column_length,
        "extension": reading.extension,
        "cell": reading.cell,
        "blank": reading.blank,
        "blank_because": None if reading.reason is None else reading.reason.key,
        "set_by": None if reading.limit is None else reading.limit.set_by,
        "governing": None if reading.limit is None else reading.limit.key,
        "line_limit": reading.line_limit,
        "gross": reading.gross,
        "deductions": reading.deductions,
        "net": reading.net,
        "load": reading.load,
        "allowed": reading.allowed,
        "fewest_parts_of_line": reading.parts_needed,
        "misreadings": misreadings(reading),
    }
