"""A chart, and a reading of it, as text and as JSON."""

from shutil import get_terminal_size
from typing import TYPE_CHECKING, Any

from boomsim.caution import CAUTION
from boomsim.cli.answer import paragraph, table

if TYPE_CHECKING:
    from boomsim.rating.charts.chart import Chart
    from boomsim.rating.charts.reading import Reading


def as_text(chart: "Chart", *, units: str, marked: bool = True, rule: str = "") -> str:
    """Lay out a chart as tables that fit the terminal.

    Parameters
    ----------
    chart : Chart
    units : str
        "metric" or "us"
    marked : bool
        Put a sign beside each figure that stability does not set
    rule : str
        By which the ways to extend were chosen

    Returns
    -------
    str
    """
    import numpy as np

    from boomsim.figures.charts.text import foot_words, numbers_of
    from boomsim.figures.words import allowance_words, machine_words, setup_words
    from boomsim.rating.charts.chart import some_columns
    from boomsim.rating.charts.words import NEVER_BETWEEN, blank_words
    from boomsim.rating.limits.telling import signs_in_words

    numbers = numbers_of(chart, units=units)
    head = (
        f"{machine_words(chart.setup)}: rated gross load in {numbers.mass}, rounded down to "
        f"{numbers.step}; "
        f"{setup_words(chart.setup, units=units)}."
    )
    wide = max(len(numbers.capacity(int(chart.steps.max()))), 5) + 3
    fit = max((get_terminal_size((100, 24)).columns - 12) // wide, 3)
    pieces = np.array_split(np.arange(len(chart.length)), -(-len(chart.length) // fit))
    grids = [_grid(some_columns(chart, piece), units, marked) for piece in pieces]
    ways = [paragraph(line, indent="  ") for line in ways_used(chart, units=units)]
    signs = f"{signs_in_words()} " if marked else ""
    foot = foot_words(chart)
    return "\n\n".join(
        [
            paragraph(f"{head} {allowance_words(chart.setup.rule, units=units)}"),
            *grids,
            paragraph(signs + NEVER_BETWEEN),
            paragraph(blank_words(chart, units=units)),
            *([paragraph(f"{foot[0].upper()}{foot[1:]}.")] if foot else []),
            "\n".join([paragraph(f"{_heading(rule)}, percent, base side first:"), *ways]),
            paragraph(CAUTION),
        ]
    )  # fmt: skip


def _heading(rule: str) -> str:
    return f"One way to extend for each column ({rule})" if rule else "Ways to extend"


def _grid(chart: "Chart", units: str, marked: bool) -> str:
    from boomsim.figures.charts.text import FOOT, foot_lines, numbers_of
    from boomsim.rating.limits.telling import sign

    numbers = numbers_of(chart, units=units)
    head = [f"radius, {numbers.length}", *(numbers.boom(float(b)) + " " for b in chart.length)]
    rows = []
    for r, radius in enumerate(chart.radii):
        cells = [
            (
                reason.sign
                if (reason := chart.reason(r, c))
                else numbers.capacity(int(chart.steps[r, c]))
            )
            + (sign(chart.limit(r, c)) if marked else "").ljust(1)
            for c in range(len(chart.length))
        ]
        rows.append([numbers.radius(float(radius)), *cells])
    for name, texts in zip(FOOT, foot_lines(chart, numbers), strict=False):
        rows.append([name, *(text.ljust(len(text) + 1) for text in texts)])
    return table(head, rows)


def ways_used(chart: "Chart", *, units: str) -> list[str]:
    """Say for each column which ways to extend it uses, and from which radius on.

    Parameters
    ----------
    chart : Chart
    units : str

    Returns
    -------
    list of str
    """
    from boomsim.figures.charts.text import lowest_angle, numbers_of
    from boomsim.rating.charts.runs import runs
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
    """Tell a reading, and how it goes wrong.

    Parameters
    ----------
    reading : Reading
    units : str

    Returns
    -------
    str
    """
    from boomsim.rating.charts.misreading import misreadings
    from boomsim.rating.charts.words import tell_misreading, tell_reading

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
    """Tell a reading, SI.

    Parameters
    ----------
    reading : Reading

    Returns
    -------
    dict
    """
    from boomsim.rating.charts.misreading import misreadings
    from boomsim.rating.charts.tables import plain_setup

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
