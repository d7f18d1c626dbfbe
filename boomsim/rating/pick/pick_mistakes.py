"""What a wrong measurement or a wrong reading before a pick would have given."""

from collections.abc import Iterator
from dataclasses import replace

import numpy as np

from boomsim.rating.charts.chart_reading import Reading
from boomsim.rating.charts.load_chart import Chart, stated_chart
from boomsim.rating.charts.misreadings import Misreading, misreadings
from boomsim.rating.pick.pick_checks import Found, read_own_column
from boomsim.rating.setup import Setup
from boomsim.rating.setup_variants import with_sector, with_support
from boomsim.rating.strategies import configurations_of, label
from boomsim.units import show

TOLD = (
    "next smaller radius",
    "one row too near",
    "interpolated radius",
    "wrong sector",
    "forgot deductions",
    "forgot parts of line",
)
"""Of the misreadings of a chart those that belong to a pick."""

CENTIMETRE = 0.01
"""Less than that is written in a smaller unit [m]."""


def mistakes(found: Found, *, units: str) -> tuple[Misreading, ...]:
    """Find what would have gone wrong at each check, as far as it gives another figure.

    Parameters
    ----------
    units : str
        In which the chart is printed

    Returns
    -------
    tuple of Misreading
        In the order of the checks; empty where the cell is blank or there is none
    """
    right = found.reading
    if right is None or right.blank:
        return ()
    return tuple(
        wrong
        for wrong in _made(found, right, units)
        if wrong.gross > right.gross + 1e-6 or wrong.key == "forgot deductions"
    )


def _made(found: Found, right: Reading, units: str) -> Iterator[Misreading]:
    yield from _radii(found, right, units)
    yield from _other_ways(found, right, units)
    other = "around" if found.setup.sector == "over the rear" else "rear"
    elsewhere = _same_column(found, with_sector(found.setup, slew=other), units=units)
    known = {one.key: one for one in misreadings(right, other_sector=elsewhere)}
    yield from (known[key] for key in ("wrong sector",) if key in known)
    yield from _other_supports(found, right, units)
    yield from (known[key] for key in TOLD if key != "wrong sector" and key in known)


def _misread(wrong: Reading | None, key: str, words: str) -> Iterator[Misreading]:
    if wrong is not None and not wrong.blank:
        yield Misreading(key=key, words=words, gross=wrong.gross, net=wrong.net)


def _radii(found: Found, right: Reading, units: str) -> Iterator[Misreading]:
    """Read for a shorter radius: the one before the boom bent, and one that is misread."""
    asked = found.asked
    bent = read_own_column(found.chart, radius=asked.radius, asked=asked, units=units, like=right)
    grown = show(found.growth, "length" if found.growth > CENTIMETRE else "small_length", units)
    words = f"did not ask by how much the radius grows with the load on, {grown}"
    yield from _misread(bent, "radius grows", words)
    if asked.misread > 0.0:
        short = read_own_column(
            found.chart, radius=found.radius - asked.misread, asked=asked, units=units, like=right
        )
        words = f"read the radius {show(asked.misread, 'length', units)} short"
        yield from _misread(short, "radius misread", words)


def _other_ways(found: Found, right: Reading, units: str) -> Iterator[Misreading]:
    """Read the column of the way of the same length that says most."""
    if found.legal is None or not len(found.legal):
        return
    ways = configurations_of(found.setup.machine.boom, extension=found.legal)
    chart = stated_chart(found.setup, configurations=ways, radii=found.chart.radii,
                         step=found.chart.step, units=units)  # fmt: skip
    row = np.flatnonzero(np.abs(chart.radii - right.row_radius) < 1e-9)
    if not len(row):
        return
    best = int(np.argmax(chart.steps[row[0]]))
    if chart.steps[row[0], best] < 0:
        return
    wrong = replace(right, cell=float(chart.capacity[row[0], best]))
    way = label(found.legal[best])
    words = f"read the column of another way out of the same length, ({way})"
    yield from _misread(wrong, "another way out", words)


def _other_supports(found: Found, right: Reading, units: str) -> Iterator[Misreading]:
    """Read the chart for supports that are farther out than those the crane stands on."""
    setup = found.setup
    for support in setup.machine.supports:
        if support.name == setup.support.name or support.kind != setup.support.kind:
            continue
        chart = _same_column(found, with_support(setup, support), units=units)
        wrong = read_own_column(
            chart, radius=found.radius, asked=found.asked, units=units, like=right
        )
        words = f"read the chart for {support.kind} {support.name}, and not {setup.support.name}"
        yield from _misread(wrong, "other supports", words)


def _same_column(found: Found, setup: Setup, *, units: str) -> Chart:
    """Rate the same column for a crane that is set up otherwise."""
    return stated_chart(
        setup,
        configurations=found.chart.configurations,
        radii=found.chart.radii,
        step=found.chart.step,
        units=units,
    )
