"""A reading of a chart in sentences, with units."""

from boomsim.rating.charts.blank_cells import words_of
from boomsim.rating.charts.chart_foot import reasons_told
from boomsim.rating.charts.chart_reading import Reading, length_said
from boomsim.rating.charts.load_chart import Chart
from boomsim.rating.charts.misreadings import Misreading
from boomsim.rating.limits.limit_sentences import what_sets
from boomsim.rating.longest_boom import tell_longest
from boomsim.rating.mass_sums import Scale, in_steps, scale_of
from boomsim.rating.nearest_radius import OVER_THE_MACHINE, nearest_radius
from boomsim.rating.parts_reeved import parts_said
from boomsim.rating.strategies import label
from boomsim.units import show

NEVER_BETWEEN = (
    "Never read between figures: take the next larger radius, and of the two figures beside the "
    "boom length the smaller."
)

HEADING = 0.051
"""Half of what the last digit of a heading stands for, at most, and a little [m]."""


def tell_reading(reading: Reading, *, units: str) -> list[str]:
    """Say which cell was read, why, and what is left for the load.

    Returns
    -------
    list of str
        Sentences
    """
    said = [_row(reading, units), _column(reading, units)]
    if reading.blank:
        assert reading.reason is not None
        words = words_of(reading.reason, reading.chart.setup.machine)
        return [*said, f"That cell is blank, and nothing is rated there: {words}."]
    said.append(_cell(reading, units))
    scale = _scale(reading, units)
    if reading.rope_governs:
        carried = scale.text(scale.down(reading.line_limit))
        said.append(f"The rope in {parts_said(reading.parts)} carries {carried}, and that is less.")
    if reading.deductions:
        left = scale.text(max(scale.down(reading.net), 0))
        said.append(f"Deduct {_taken(reading, scale)}: that leaves {left} for the load.")
    if reading.load is not None:
        said.append(_verdict(reading, units))
    return said


def which_chart(chart: Chart) -> str:
    """Say which of the charts of a crane this is.

    Returns
    -------
    str
        Within a sentence
    """
    if chart.is_best:
        return "the best of all ways to extend in each cell"
    if len(set(chart.length.round(3))) < len(chart.length):
        return "a column for each way to extend"
    return "one way to extend for each boom length"


def blank_words(chart: Chart, *, units: str) -> str:
    """Say why cells of a chart are blank, and where its rows begin.

    Returns
    -------
    str
        A sentence or two
    """
    told = [
        f"{r.sign}: {words_of(r, chart.setup.machine)}; " for r in reasons_told(chart) if r.sign
    ]
    near = show(nearest_radius(chart.setup), "length", units)
    empty = "here a cell is empty the boom cannot be."
    signs = f"In a blank cell {''.join(told)}w{empty}" if told else f"W{empty}"
    longest = tell_longest(chart.setup, units)
    ends = f" {longest[0].upper()}{longest[1:]}." if longest else ""
    return f"{signs} Within a radius of {near} {OVER_THE_MACHINE}.{ends}"


def _row(reading: Reading, units: str) -> str:
    asked, used = (length_said(r, units) for r in (reading.radius, reading.row_radius))
    if abs(reading.radius - reading.row_radius) <= HEADING:
        return f"The radius of {asked} is a row of the chart."
    return f"{asked} lies between two rows: the next larger radius, {used}, counts."


def _column(reading: Reading, units: str) -> str:
    asked, used = (length_said(b, units) for b in (reading.length, reading.column_length))
    if reading.beside is None:
        if abs(reading.length - reading.column_length) <= HEADING:
            return f"The boom length of {asked} is a column."
        return f"{asked} lies between two columns: the next longer boom, {used}, counts."
    which = "longer" if reading.column_length > reading.length else "shorter"
    return (
        f"{asked} lies between two columns: the smaller of the two figures beside it counts, here "
        f"that of the {which} boom, {used}."
    )


def _cell(reading: Reading, units: str) -> str:
    assert reading.limit is not None and reading.extension is not None
    scale = _scale(reading, units)
    return (
        f"The cell says {scale.text(scale.down(reading.cell))} gross in the extension "
        f"({label(reading.extension)}); {what_sets(reading.limit)}."
    )


def _scale(reading: Reading, units: str) -> Scale:
    """One unit for all masses of the reading, so that a reader's sum comes out."""
    return scale_of(max(reading.cell, 0.0), units)


def _taken(reading: Reading, scale: Scale) -> str:
    """Deductions, so written that they take the gross load to what is left."""
    shown = _deducted(reading, scale)
    listed = [f"{name} {scale.text(steps)}" for name, steps in shown.items()]
    return " and ".join([", ".join(listed[:-1]), listed[-1]] if len(listed) > 1 else listed)


def _deducted(reading: Reading, scale: Scale) -> dict[str, int]:
    masses = {d.name: d.mass for d in reading.deductions}
    taken = scale.down(reading.gross) - scale.down(reading.net)
    return in_steps(masses, total=taken, scale=scale)


def _left(wrong: Misreading, reading: Reading, scale: Scale) -> int:
    """What a wrong reader has left, with the deductions as they are written.

    Returns
    -------
    int
        In steps of the scale [1]
    """
    shown, taken = _deducted(reading, scale), wrong.gross - wrong.net
    ways = {0.0: 0, -reading.deducted: -sum(shown.values())}
    for one in reading.deductions:
        ways[reading.deducted - one.mass] = sum(shown.values()) - shown[one.name]
    own = [steps for mass, steps in ways.items() if abs(taken - mass) < 1e-6]
    if own and wrong.gross == reading.gross:
        return scale.down(reading.gross) - own[0]
    return scale.down(wrong.net)


def _verdict(reading: Reading, units: str) -> str:
    assert reading.load is not None
    asked = show(reading.load, "mass", units)
    if not reading.allowed:
        return f"A load of {asked} is more than is rated."
    needed = parts_said(reading.parts_needed or reading.parts)
    return f"A load of {asked} is rated on this chart; it needs at least {needed}."


def tell_misreading(wrong: Misreading, reading: Reading, *, units: str) -> str:
    """Say what a reader did wrong and what figure that gives.

    Parameters
    ----------
    reading : Reading
        The right one
    """
    scale = _scale(reading, units)
    net = _left(wrong, reading, scale)
    apart = net - scale.down(reading.net)
    more = "more" if wrong.net > reading.net else "less"
    return (
        f"The reader {wrong.words}: {scale.text(net)} for the load, {scale.text(abs(apart))} "
        f"{more} than the chart allows."
    )
