"""Would it tip first? The load of the first structural failure over the tipping load, over a chart.

Each cell takes the configuration that the chart uses there. As in
:mod:`boomsim.rating.overload.overload_study` the boom angle is the one at which the rated load
hangs at the radius, and it is kept.
"""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from boomsim.files.work_progress import Told, counted
from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.geometry import Array
from boomsim.rating.charts.bold_line import Edge, bold_edges, edges_between
from boomsim.rating.charts.load_chart import Chart
from boomsim.rating.limits.limit_kind import Limit
from boomsim.rating.limits.limit_table import limits_of
from boomsim.rating.load_search import no_margin
from boomsim.rating.overload.failure_loads import ends_of

BATCH = 24
"""Configurations solved together; so many fit a processor's cache."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class OverloadMap:
    """What would end it, all over a chart. Shapes (rows, columns) of the chart.

    Attributes
    ----------
    failure, tipping : ndarray
        Loads of the first structural failure and of tipping; infinite where never, NaN where the
        chart is blank [kg]
    gives_way : ndarray of int
        Index into `limits` of what fails first; -1 where blank
    limits : tuple of Limit
        Without margins: the chart's come first
    """

    chart: Chart
    failure: Array
    tipping: Array
    gives_way: np.ndarray
    limits: tuple[Limit, ...]

    @property
    def ratio(self) -> Array:
        """First failure over tipping: above one the crane tips first [1]."""
        with np.errstate(invalid="ignore"):
            return np.asarray(self.failure / self.tipping)

    @property
    def breaks_first(self) -> np.ndarray:
        """True where something gives way before the crane tips."""
        return np.asarray(self.ratio < 1.0)

    @property
    def breaks_at(self) -> Array:
        """Multiple of the exact rated load at which something gives way [1]."""
        with np.errstate(divide="ignore", invalid="ignore"):
            return np.asarray(self.failure / self.chart.exact)

    @property
    def meeting(self) -> frozenset[Edge]:
        """Edges between cells that break first and cells that tip first."""
        return edges_between(self.breaks_first, rated=~np.isnan(self.ratio))

    @property
    def bold(self) -> frozenset[Edge]:
        """Edges of the chart's own bold line."""
        return bold_edges(self.chart)


def overload_map(chart: Chart, *, told: Told | None = None) -> OverloadMap:
    """Find out, cell by cell, whether the crane would break or tip first.

    Parameters
    ----------
    told : callable, optional
        Hears what is done
    """
    failure, tipping = np.full(chart.exact.shape, np.nan), np.full(chart.exact.shape, np.nan)
    way = np.full(chart.exact.shape, -1)
    for batch in _batches(chart, told):
        ends = ends_of(
            chart.setup, boom=batch.boom, rated=batch.rated, held=batch.angle, near=batch.tips_near
        )
        failure[batch.cells], tipping[batch.cells] = ends.failure, ends.tipping
        way[batch.cells] = ends.gives_way
    real = no_margin(chart.setup)
    limits = limits_of(real.machine, kinds=real.kinds)
    return OverloadMap(chart=chart, failure=failure, tipping=tipping, gives_way=way, limits=limits)


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class _Batch:
    """Cells of a few configurations, packed into a rectangle; short rows repeat their last cell."""

    boom: Condensed
    row: np.ndarray
    column: np.ndarray
    angle: Array
    rated: Array
    tips_near: Array

    @property
    def cells(self) -> tuple[np.ndarray, np.ndarray]:
        return self.row, self.column


def _batches(chart: Chart, told: Told | None) -> Iterator[_Batch]:
    used = np.unique(chart.used[chart.used >= 0])
    for start in counted(range(0, len(used), BATCH), what="raising loads", told=told):
        own = used[start : start + BATCH]
        places = [np.nonzero(chart.used == number) for number in own]
        row, column = (_packed([place[k] for place in places]) for k in (0, 1))
        yield _Batch(
            boom=condense(chart.setup.machine, extension=chart.configurations.extension[own]),
            row=row,
            column=column,
            angle=chart.angle[row, column],
            rated=chart.exact[row, column],
            tips_near=chart.tipping_load[row, column],
        )


def _packed(rows: list[np.ndarray]) -> np.ndarray:
    width = max(len(row) for row in rows)
    return np.array([np.pad(row, (0, width - len(row)), mode="edge") for row in rows])


def ratio_words(ratio: float) -> str:
    """Write a ratio, so that none which breaks first reads 1.00 and none which tips first .99.

    Parameters
    ----------
    ratio : float
        First failure over tipping [1]

    Returns
    -------
    str
        Below one rounded down; "tips" where nothing ever breaks
    """
    if not np.isfinite(ratio):
        return "tips"
    if ratio < 1.0:
        return f"{np.floor(100.0 * ratio) / 100.0:.2f}"
    return f"{ratio:.2f}" if ratio < 9.95 else f"{ratio:.0f}"


def meeting_radii(found: OverloadMap, column: int) -> list[float]:
    """Radii at which failure and tipping come at the same load, along one boom length.

    Returns
    -------
    list of float
        Straight between the chart's radii on the logarithm of the ratio [m]
    """
    ratio, radius = found.ratio[:, column], found.chart.radii
    met = []
    for k in range(len(radius) - 1):
        near, far = ratio[k], ratio[k + 1]
        if min(near, far) > 0.0 and np.isfinite(near * far) and (near - 1.0) * (far - 1.0) < 0.0:
            share = np.log(near) / (np.log(near) - np.log(far))
            met.append(float(radius[k] + share * (radius[k + 1] - radius[k])))
    return met
