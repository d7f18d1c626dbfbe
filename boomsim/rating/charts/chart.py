"""The load chart: a grid of rated loads, rounded down, and what governs each of them."""

from dataclasses import dataclass, replace

import numpy as np

from boomsim.mechanics.geometry import Array
from boomsim.rating.charts.cells import Cells, chart_cells
from boomsim.rating.charts.grid import chart_step, checked_step, whole_steps
from boomsim.rating.charts.ways import same_length
from boomsim.rating.limits.kind import STABILITY, Limit
from boomsim.rating.setup import Setup
from boomsim.rating.strategies import Configurations


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Chart:
    """A load chart; shapes (rows, columns) unless given.

    Attributes
    ----------
    setup : Setup
    configurations : Configurations
        All that the chart may use
    radii : ndarray, shape (rows,)
        Growing downwards [m]
    length : ndarray, shape (columns,)
        Boom length [m]
    choices : tuple of tuple of int
        For each column the configurations among which it takes the best
    used : ndarray of int
        Configuration that each cell uses; -1 where blank
    step : float
        Capacities are whole multiples of it [kg]
    steps : ndarray of int
        Capacity in steps; -1 where blank, 0 where no load may hang
    exact : ndarray
        Capacity before it is rounded; NaN where blank [kg]
    governing : ndarray of int
        Index into `limits`; -1 where blank
    limits : tuple of Limit
    tipping_load, angle : ndarray
        At the rated load; NaN where blank [kg], [rad]
    within_range : ndarray of bool
        False where the tip deflects beyond what the model is meant for
    """

    setup: Setup
    configurations: Configurations
    radii: Array
    length: Array
    choices: tuple[tuple[int, ...], ...]
    used: np.ndarray
    step: float
    steps: np.ndarray
    exact: Array
    governing: np.ndarray
    limits: tuple[Limit, ...]
    tipping_load: Array
    angle: Array
    within_range: np.ndarray

    @property
    def capacity(self) -> Array:
        """Rated gross load, rounded down; NaN where blank [kg]."""
        return np.where(self.steps >= 0, self.steps * self.step, np.nan)

    @property
    def rated(self) -> np.ndarray:
        """True where the boom can be."""
        return self.governing >= 0

    @property
    def structural(self) -> np.ndarray:
        """True where strength or a maker's permissible value sets the figure."""
        families = np.array([limit.set_by != STABILITY for limit in self.limits] + [False])
        return np.asarray(families[self.governing])

    @property
    def is_best(self) -> bool:
        """True where a column chooses among several configurations."""
        return any(len(choice) > 1 for choice in self.choices)

    def limit(self, row: int, column: int) -> Limit | None:
        """Limit that governs a cell; None where blank."""
        number = int(self.governing[row, column])
        return self.limits[number] if number >= 0 else None


def best_chart(
    setup: Setup,
    *,
    configurations: Configurations | None = None,
    radii: Array | None = None,
    step: float | None = None,
    units: str = "metric",
) -> Chart:
    """Rate each length with the best of its configurations at each radius.

    Parameters
    ----------
    setup : Setup
    configurations : Configurations, optional
        Default: all that belong in the machine's chart book
    radii : array_like, optional
        Rows; default: every metre or every five feet that the boom reaches [m]
    step : float, optional
        Capacities are rounded down to it; default: 50 kg or 100 lb, less for a small machine [kg]
    units : str
        "metric" or "us": which defaults to take

    Returns
    -------
    Chart
    """
    cells = chart_cells(setup, configurations=configurations, radii=radii, units=units)
    step = chart_step(cells.capacity, units=units) if step is None else step
    return chart_of(cells, columns=same_length(cells.configurations.length), step=step)


def stated_chart(
    setup: Setup,
    *,
    configurations: Configurations,
    radii: Array | None = None,
    step: float | None = None,
    units: str = "metric",
) -> Chart:
    """Rate configurations, a column for each in the order given.

    Parameters
    ----------
    setup : Setup
    configurations : Configurations
    radii : array_like, optional
        Rows; default: every metre or every five feet that the boom reaches [m]
    step : float, optional
        Capacities are rounded down to it; default: 50 kg or 100 lb, less for a small machine [kg]
    units : str
        "metric" or "us": which defaults to take

    Returns
    -------
    Chart
    """
    cells = chart_cells(setup, configurations=configurations, radii=radii, units=units)
    step = chart_step(cells.capacity, units=units) if step is None else step
    return chart_of(cells, columns=[[i] for i in range(len(configurations.length))], step=step)


def chart_of(cells: Cells, *, columns: list[list[int]], step: float) -> Chart:
    """Gather rated cells into a chart; rows that no column reaches are left out.

    Parameters
    ----------
    cells : Cells
    columns : list of list of int
        The configurations among which each column takes the best
    step : float
        [kg]

    Returns
    -------
    Chart
    """
    checked_step(step)
    used = np.stack([_steadiest(cells, own, step) for own in columns], axis=1)
    some = np.flatnonzero(np.any(used >= 0, axis=1))
    rows = slice(some[0], some[-1] + 1) if len(some) else slice(0, 0)
    used = used[rows]
    row = np.arange(len(cells.radii))[rows, None]
    blank = used < 0

    def gathered(values: np.ndarray, empty: float) -> np.ndarray:
        return np.where(blank, empty, values[used, row])

    exact = gathered(cells.capacity, np.nan)
    return Chart(
        setup=cells.setup,
        configurations=cells.configurations,
        radii=cells.radii[rows],
        length=np.array([cells.configurations.length[own[0]] for own in columns]),
        choices=tuple(tuple(own) for own in columns),
        used=used,
        step=step,
        steps=whole_steps(exact, step=step),
        exact=exact,
        governing=gathered(cells.governing, -1).astype(int),
        limits=cells.limits,
        tipping_load=gathered(cells.tipping_load, np.nan),
        angle=gathered(cells.angle, np.nan),
        within_range=gathered(cells.within_range, 0).astype(bool),
    )


def _steadiest(cells: Cells, own: list[int], step: float) -> np.ndarray:
    """Choose a configuration for each row: the most steps, with the fewest changes."""
    steps = whole_steps(cells.capacity[own], step=step)
    if len(own) == 1:
        return np.where(steps[0] >= 0, own[0], -1)
    most = steps.max(axis=0)
    among = (steps == most) & (most >= 0)
    used = np.full(len(most), -1)
    row = 0
    while row < len(most):
        run = np.cumprod(among[:, row:], axis=1).sum(axis=1)
        stays = int(run.max())
        if stays:
            longest = np.flatnonzero(run == stays)
            pick = longest[np.argmax(cells.capacity[own][longest, row])]
            used[row : row + stays] = own[pick]
        row += max(stays, 1)
    return used


def some_columns(chart: Chart, columns: np.ndarray) -> Chart:
    """Take some columns of a chart, and the rows that they reach.

    Parameters
    ----------
    chart : Chart
    columns : ndarray of int

    Returns
    -------
    Chart
    """
    if len(columns) == len(chart.length):
        return chart
    reached = np.flatnonzero(np.any(chart.rated[:, columns], axis=1))
    rows = np.arange(reached[0], reached[-1] + 1) if len(reached) else np.arange(1)
    cells = np.ix_(rows, columns)
    grids = ("used", "steps", "exact", "governing", "tipping_load", "angle", "within_range")
    return replace(
        chart,
        radii=chart.radii[rows],
        length=chart.length[columns],
        choices=tuple(chart.choices[c] for c in columns),
        **{name: getattr(chart, name)[cells] for name in grids},
    )
