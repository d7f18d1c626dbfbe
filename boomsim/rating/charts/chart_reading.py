"""Reading a chart to the safe side: no interpolation, then the deductions.

A radius or a boom length that is printed on the chart reads its own row or column. Between two rows
the next larger radius counts, between two columns the smaller of the two figures beside it: mostly
that of the longer boom, but a longer boom whose sections are out in a better way may carry more.
What the rope carries in the parts of line that are reeved may be less than the cell. What is left
after hook block, slings, the falls of the rope and a stowed jib is the load. (Common practice, no
source.)
"""

from dataclasses import dataclass

import numpy as np

from boomsim.mechanics.geometry import Array
from boomsim.rating.charts.blank_cells import NO_REACH, PRINTED, Reason
from boomsim.rating.charts.deductions import Deduction, usual_deductions
from boomsim.rating.charts.hoist_line import fewest_parts, line_limit, parts_of_column
from boomsim.rating.charts.load_chart import Chart
from boomsim.rating.charts.rows_and_rounding import LENGTH_UNIT, printed_decimals
from boomsim.rating.limits.limit_kind import STABILITY, Limit
from boomsim.rating.strategies import label
from boomsim.units import display, outside, rounded

SAME = 1e-9
"""A radius or length this near to a row or column is on it [1]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Reading:
    """What a chart allows, and how that was found.

    Attributes
    ----------
    chart : Chart
    radius, length : float
        Asked for [m]
    row, column : int
        The cell that counts
    beside : int or None
        Between two columns, the one of them that does not count
    cell : float
        Its gross load; 0 where it is blank [kg]
    blank : bool
        True where the cell holds no figure
    limit : Limit or None
        That governs the cell; None where it is blank
    parts : int
        Parts of line reeved [1]
    line_limit : float
        Gross load that the rope carries in these parts, rounded down [kg]
    deductions : tuple of Deduction
    load : float or None
        To be lifted, without the deductions [kg]
    """

    chart: Chart
    radius: float
    length: float
    row: int
    column: int
    beside: int | None
    cell: float
    blank: bool
    limit: Limit | None
    parts: int
    line_limit: float
    deductions: tuple[Deduction, ...]
    load: float | None

    @property
    def row_radius(self) -> float:
        """Radius of the row that counts [m]."""
        return float(self.chart.radii[self.row])

    @property
    def column_length(self) -> float:
        """Boom length of the column that counts [m]."""
        return float(self.chart.length[self.column])

    @property
    def extension(self) -> Array | None:
        """Configuration to lift in; None where the cell is blank [1]."""
        used = int(self.chart.used[self.row, self.column])
        return None if used < 0 else np.asarray(self.chart.configurations.extension[used])

    @property
    def gross(self) -> float:
        """What may hang below the head: the cell, or what the rope carries [kg]."""
        return min(self.cell, self.line_limit)

    @property
    def rope_governs(self) -> bool:
        """True where the parts of line reeved carry less than the cell."""
        return self.line_limit < self.cell

    @property
    def deducted(self) -> float:
        """Sum of the deductions [kg]."""
        return sum(deduction.mass for deduction in self.deductions)

    @property
    def net(self) -> float:
        """Load that is left after the deductions; 0 where they take all [kg]."""
        return max(self.gross - self.deducted, 0.0)

    @property
    def allowed(self) -> bool | None:
        """Whether the load may be lifted; None where none was asked about."""
        return None if self.load is None else self.load <= self.net

    @property
    def parts_needed(self) -> int | None:
        """Fewest parts of line for the load and the deductions, or for all of the cell."""
        gross = self.cell if self.load is None else self.load + self.deducted
        return fewest_parts(self.chart, gross=gross, column=self.column)

    @property
    def reason(self) -> Reason | None:
        """Why the cell is blank; None where it holds a figure."""
        return self.chart.reason(self.row, self.column)

    @property
    def is_structural(self) -> bool:
        """True where strength or a maker's permissible value sets the figure."""
        return self.limit is not None and self.limit.set_by != STABILITY


def read_chart(
    chart: Chart,
    *,
    radius: float,
    length: float | None = None,
    extension: Array | None = None,
    load: float | None = None,
    stowed_jib: float = 0.0,
    parts: int | None = None,
    deductions: tuple[Deduction, ...] | None = None,
    units: str = "metric",
) -> Reading:
    """Read a chart.

    Parameters
    ----------
    chart : Chart
    radius : float
        [m]
    length : float, optional
        Boom length; may lie between columns [m]
    extension : array_like, optional
        Instead of `length`: the configuration of a column
    load : float, optional
        To be lifted, without hook block and slings [kg]
    stowed_jib : float
        Deduction that a jib stowed on the boom asks for [kg]
    parts : int, optional
        Parts of line reeved; default: those of the chart, as far as the rope reaches [1]
    deductions : tuple of Deduction, optional
        Default: the machine's hook block, slings and falls of rope, and the jib
    units : str
        "metric" or "us": in which the chart is printed

    Raises
    ------
    ValueError
        If the chart has no such row, column or parts of line, or the rope does not reach for them.
    """
    _refuse_loads(load, stowed_jib)
    row = _row(chart, radius, units)
    column, beside = _columns(chart, row, length, extension, units)
    blank = bool(chart.steps[row, column] < 0)
    reeved = parts_of_column(chart, column=column, parts=parts)
    return Reading(
        chart=chart,
        radius=float(radius),
        length=float(chart.length[column] if length is None else length),
        row=row,
        column=column,
        beside=beside,
        cell=0.0 if blank else float(chart.capacity[row, column]),
        blank=blank,
        limit=chart.limit(row, column),
        parts=reeved,
        line_limit=line_limit(chart, parts=reeved),
        deductions=usual_deductions(
            chart, row=row, column=column, parts=reeved, stowed_jib=stowed_jib
        )
        if deductions is None
        else deductions,
        load=load,
    )


def length_said(value: float, units: str) -> str:
    """Write to the centimetre, so that what lies just beside a row does not read as on it.

    Parameters
    ----------
    value : float
        [m]
    units : str
        "metric" or "us"
    """
    return display("length", units, like=0.0).text(value)


def _refuse_loads(load: float | None, stowed_jib: float) -> None:
    if load is not None and not 0.0 <= load < 1e7:
        raise ValueError(f"The load: {outside(load, 0.0, 1e7, 'mass')}. Give one inside.")
    if not 0.0 <= stowed_jib < 1e6:
        raise ValueError(f"The jib: {outside(stowed_jib, 0.0, 1e6, 'mass')}. Give a mass inside.")


def _met(asked: float, printed: Array, *, decimals: int, units: str) -> np.ndarray:
    """Where a figure reads as printed, which may be rounded to either side."""
    unit = LENGTH_UNIT[units]
    shown = np.array([float(rounded(value / unit, decimals)) for value in printed])
    return np.flatnonzero(np.abs(asked / unit - shown) < 1e-6)


def _row(chart: Chart, radius: float, units: str) -> int:
    if not radius > 0.0:
        raise ValueError(
            f"The radius must be above 0 m, from the axis of rotation, and this is {radius:g} m."
        )
    met = _met(
        radius,
        chart.radii,
        decimals=printed_decimals(chart.radii, length=chart.length, units=units)[0],
        units=units,
    )
    if len(met):
        return int(met[0])
    if radius < chart.radii[0]:
        raise ValueError(
            f"A radius of {length_said(radius, units)} is nearer than the first row of this chart, "
            f"{length_said(float(chart.radii[0]), units)}: it allows nothing there. "
            "Take a larger radius."
        )
    enough = np.flatnonzero(chart.radii >= radius * (1.0 - SAME))
    if len(enough) == 0:
        raise ValueError(
            f"A radius of {length_said(radius, units)} is beyond the last row of this chart, "
            f"{length_said(float(chart.radii[-1]), units)}: it allows nothing there. "
            "Take a smaller radius; "
            "the radius is given first, then the boom length."
        )
    return int(enough[0])


def _columns(
    chart: Chart, row: int, length: float | None, extension: Array | None, units: str
) -> tuple[int, int | None]:
    """The column that counts, and between two columns the other one."""
    if (length is None) == (extension is None):
        raise ValueError("Give either the boom length or the extension, and not both.")
    if extension is not None:
        return _column_of(chart, np.asarray(extension, dtype=float)), None
    assert length is not None
    if not length > 0.0:
        raise ValueError(f"The boom length must be above 0 m, and this is {length:g} m.")
    met = np.flatnonzero(np.abs(chart.length - length) <= SAME * length)
    if not len(met):
        decimals = printed_decimals(chart.radii, length=chart.length, units=units)[1]
        met = _met(length, chart.length, decimals=decimals, units=units)
    if len(met):
        return _only(chart, met, units), None
    enough = np.flatnonzero(chart.length >= length * (1.0 - SAME))
    if len(enough) == 0:
        raise ValueError(
            f"A boom of {length_said(length, units)} is longer than any in this chart, which ends "
            f"at {length_said(float(chart.length.max()), units)}. Take a shorter boom."
        )
    longer = _least_of(chart, np.flatnonzero(chart.length == chart.length[enough].min()), row)
    fewer = np.flatnonzero(chart.length < length)
    if not len(fewer) or chart.steps[row, longer] < 0:
        return longer, None
    shorter = _least_of(chart, np.flatnonzero(chart.length == chart.length[fewer].max()), row)
    if PRINTED < chart.blank[row, shorter] < NO_REACH:
        return shorter, longer
    steps = chart.steps[row]
    if 0 <= steps[shorter] < steps[longer]:
        return shorter, longer
    return longer, shorter


def _least_of(chart: Chart, columns: np.ndarray, row: int) -> int:
    """Of columns of one length the one that allows least at a row."""
    return int(columns[np.argmin(chart.steps[row, columns])])


def _only(chart: Chart, columns: np.ndarray, units: str) -> int:
    if len(columns) > 1:
        length = length_said(float(chart.length[columns[0]]), units)
        raise ValueError(
            f"{len(columns)} columns of this chart are {length} long. Name the extension."
        )
    return int(columns[0])


def _column_of(chart: Chart, extension: Array) -> int:
    if chart.is_best:
        raise ValueError(
            "This chart takes the best extension of each boom length. Give the boom length."
        )
    stated = chart.configurations.extension[[choice[0] for choice in chart.choices]]
    met = np.flatnonzero(
        np.all(np.abs(stated - extension) < 1e-6, axis=1)
        if stated.shape[1:] == extension.shape
        else np.zeros(len(stated), dtype=bool)
    )
    if len(met) == 0:
        listed = "; ".join(f"({label(row)})" for row in stated[:12])
        raise ValueError(
            f"No column of this chart is for the extension ({label(np.atleast_1d(extension))}). "
            f"It has {listed}{' and more' if len(stated) > 12 else ''}."
        )
    return int(met[0])
