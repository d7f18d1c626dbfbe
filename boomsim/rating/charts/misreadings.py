"""Ways in which people read a chart wrongly, each with the figure that it gives."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from boomsim.rating.charts.chart_reading import SAME, Reading, read_chart
from boomsim.rating.charts.load_chart import Chart


@dataclass(frozen=True, slots=True, kw_only=True)
class Misreading:
    """One wrong way of reading.

    Attributes
    ----------
    key : str
        Stable name, such as "interpolated radius"
    words : str
        What the reader did, after "the reader …"
    gross : float
        Gross load that it gives [kg]
    net : float
        Load that it gives after its deductions [kg]
    """

    key: str
    words: str
    gross: float
    net: float


def misreadings(reading: Reading, *, other_sector: Chart | None = None) -> tuple[Misreading, ...]:
    """Find the wrong ways that give another figure than the right one.

    Parameters
    ----------
    other_sector : Chart, optional
        The same chart for another sector

    Returns
    -------
    tuple of Misreading
        Those whose cells are blank are left out
    """
    ways = [
        *_other_cells(reading),
        *_interpolations(reading),
        *_deductions(reading),
        *_rope_and_family(reading),
        *(_other_sector(reading, other_sector) if other_sector is not None else ()),
    ]
    return tuple(way for way in ways if abs(way.net - reading.net) > 1e-6)


def _cell(chart: Chart, row: int, column: int) -> float:
    inside = 0 <= row < len(chart.radii) and 0 <= column < len(chart.length)
    return float(chart.capacity[row, column]) if inside else np.nan


def _made(reading: Reading, key: str, words: str, cell: float) -> Iterator[Misreading]:
    """Make a misreading of the cell, the rest done rightly; none where the cell is blank."""
    if np.isfinite(cell):
        gross = min(cell, reading.line_limit)
        net = max(gross - reading.deducted, 0.0)
        yield Misreading(key=key, words=words, gross=gross, net=net)


def _shares(reading: Reading) -> tuple[float, float, int]:
    """How far row and column lie beyond what was asked, as shares; and the column beside."""
    chart, row = reading.chart, reading.row
    column = -1 if reading.beside is None else reading.beside
    down = across = 0.0
    if row > 0:
        down = (chart.radii[row] - reading.radius) / (chart.radii[row] - chart.radii[row - 1])
    if column >= 0:
        apart = reading.column_length - chart.length[column]
        across = (reading.column_length - reading.length) / apart
    # On a row or a column there is nothing to interpolate or to round.
    return float(down) * (down > SAME), float(across) * (across > SAME), column


def _other_cells(reading: Reading) -> Iterator[Misreading]:
    chart, row, column = reading.chart, reading.row, reading.column
    down, across, beside = _shares(reading)
    way = "longer" if beside >= 0 and chart.length[beside] > reading.length else "shorter"
    if down:
        words = "took the next smaller radius instead of the next larger"
        yield from _made(reading, "next smaller radius", words, _cell(chart, row - 1, column))
    else:
        words = "slipped one row towards the crane"
        yield from _made(reading, "one row too near", words, _cell(chart, row - 1, column))
    if across:
        words = f"took the next {way} boom, which has the larger of the two figures"
        yield from _made(reading, "larger of two booms", words, _cell(chart, row, beside))
    if down and across:
        words = f"took the next smaller radius and the next {way} boom"
        yield from _made(reading, "rounded the wrong way", words, _cell(chart, row - 1, beside))


def _interpolations(reading: Reading) -> Iterator[Misreading]:
    chart, row, column = reading.chart, reading.row, reading.column
    down, across, other = _shares(reading)
    here, above = _cell(chart, row, column), _cell(chart, row - 1, column)
    beside, corner = _cell(chart, row, other), _cell(chart, row - 1, other)
    if down:
        value = here + down * (above - here)
        yield from _made(reading, "interpolated radius", "interpolated between two radii", value)
    if across:
        value = here + across * (beside - here)
        yield from _made(reading, "interpolated length", "interpolated between two booms", value)
    if down and across:
        near, far = above + across * (corner - above), here + across * (beside - here)
        words = "interpolated between radii and between booms"
        yield from _made(reading, "interpolated both", words, far + down * (near - far))


def _deductions(reading: Reading) -> Iterator[Misreading]:
    gross = reading.gross
    if reading.blank or not reading.deductions:
        return
    words = "took the gross load for the net load"
    yield Misreading(key="forgot deductions", words=words, gross=gross, net=gross)
    yield Misreading(
        key="added deductions",
        words="added the deductions instead of subtracting them",
        gross=gross,
        net=gross + reading.deducted,
    )
    if len(reading.deductions) > 1:
        for one in reading.deductions:
            yield Misreading(
                key=f"forgot {one.name}",
                words=f"forgot to deduct the {one.name}",
                gross=gross,
                net=max(gross - reading.deducted + one.mass, 0.0),
            )


def _rope_and_family(reading: Reading) -> Iterator[Misreading]:
    if reading.rope_governs:
        yield Misreading(
            key="forgot parts of line",
            words="did not ask what the rope carries in the parts that are reeved",
            gross=reading.cell,
            net=max(reading.cell - reading.deducted, 0.0),
        )
    if reading.is_structural and reading.cell > 0.0:
        rule = reading.chart.setup.rule.stability
        margin = 1.0 / rule.share(reading.chart.setup.support.kind)
        if rule.kind != "share":
            margin = rule.load_factor
        warned = reading.cell * margin
        yield Misreading(
            key="expects tipping first",
            words="took a figure that strength or a maker's value sets for one that stability "
            "sets, and reckons with a float that lifts at the load where stability's margin ends",
            gross=warned,
            net=max(warned - reading.deducted, 0.0),
        )


def _other_sector(reading: Reading, chart: Chart) -> Iterator[Misreading]:
    try:
        other = read_chart(
            chart,
            radius=reading.radius,
            # A length that is printed may be rounded: its column's own is found in both charts.
            length=reading.column_length if reading.beside is None else reading.length,
            parts=reading.parts,
            deductions=reading.deductions,
        )
    except ValueError:
        return
    if not other.blank:
        words = f"read the chart for {chart.setup.sector}"
        yield from _made(reading, "wrong sector", words, other.cell)
