"""The load chart: a grid of rated loads, rounded down, and what governs each of them."""

from dataclasses import dataclass, replace

import numpy as np

from boomsim.mechanics.geometry import Array
from boomsim.rating.charts.blank_cells import (
    LESS,
    NO_REACH,
    PRINTED,
    REASONS,
    Reason,
    falls_inwards,
    reasons_of_cells,
)
from boomsim.rating.charts.chart_configurations import (
    every_configuration,
    same_length,
    short_enough,
)
from boomsim.rating.charts.rated_cells import Cells, chart_cells
from boomsim.rating.charts.rows_and_rounding import chart_step, checked_step, whole_steps
from boomsim.rating.empty_hook.empty_hook_study import EmptyHook
from boomsim.rating.limits.limit_kind import STABILITY, Limit
from boomsim.rating.longest_boom import refuse_too_long
from boomsim.rating.nearest_radius import nearest_radius
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
        Capacity in steps; -1 where blank
    blank : ndarray of int
        Why, index into :data:`boomsim.rating.charts.blank_cells.REASONS`; -1 where there is a
        figure
    exact : ndarray
        Capacity before it is rounded; NaN where blank [kg]
    governing : ndarray of int
        Index into `limits`; -1 where blank
    limits : tuple of Limit
    tipping_load, angle : ndarray
        At the rated load; NaN where blank [kg], [rad]
    within_range : ndarray of bool
        False where the tip deflects beyond what the model is meant for
    empty_hook : EmptyHook
        How far down and out each of the configurations stands without a load
    """

    setup: Setup
    configurations: Configurations
    radii: Array
    length: Array
    choices: tuple[tuple[int, ...], ...]
    used: np.ndarray
    step: float
    steps: np.ndarray
    blank: np.ndarray
    exact: Array
    governing: np.ndarray
    limits: tuple[Limit, ...]
    tipping_load: Array
    angle: Array
    within_range: np.ndarray
    empty_hook: EmptyHook

    @property
    def capacity(self) -> Array:
        """Rated gross load, rounded down; NaN where blank [kg]."""
        return np.where(self.steps >= 0, self.steps * self.step, np.nan)

    @property
    def rated(self) -> np.ndarray:
        """True where there is a figure."""
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

    def reason(self, row: int, column: int) -> Reason | None:
        """Why a cell is blank; None where there is a figure."""
        number = int(self.blank[row, column])
        return None if number == PRINTED else REASONS[number]

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
        Default: all that belong in the machine's chart book; without those that are too long for
        the tyres
    radii : array_like, optional
        Rows; default: every metre or every five feet that the boom reaches [m]
    step : float, optional
        Capacities are rounded down to it; default: 50 kg or 100 lb, less for a small machine [kg]
    units : str
        "metric" or "us": which defaults to take
    """
    if configurations is None:
        configurations = every_configuration(setup.machine.boom)
    kept = short_enough(setup, configurations)
    cells = chart_cells(setup, configurations=kept, radii=radii, units=units)
    step = chart_step(cells.capacity, units=units) if step is None else step
    columns = same_length(cells.configurations.length)
    return _not_empty(chart_of(cells, columns=columns, step=step))


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
    """
    refuse_too_long(setup, length=configurations.length)
    cells = chart_cells(setup, configurations=configurations, radii=radii, units=units)
    step = chart_step(cells.capacity, units=units) if step is None else step
    columns = [[i] for i in range(len(configurations.length))]
    return _not_empty(chart_of(cells, columns=columns, step=step))


def _not_empty(chart: Chart) -> Chart:
    if not len(chart.radii):
        nearest = nearest_radius(chart.setup)
        raise ValueError(
            f"All radii of this chart lie within {nearest:.2f} m, over the machine itself. Give "
            "greater ones."
        )
    return chart


def chart_of(cells: Cells, *, columns: list[list[int]], step: float) -> Chart:
    """Gather rated cells into a chart.

    Rows over the machine itself are left out, and those at the ends in which no column has a
    figure. A column that holds less than farther out is blank there, for a chart never falls
    inwards; so is what would be less than hook block and slings.

    Parameters
    ----------
    cells : Cells
    columns : list of list of int
        The configurations among which each column takes the best
    step : float
        [kg]
    """
    checked_step(step)
    reasons = reasons_of_cells(cells, step=step)
    found = [_steadiest(cells, own, step, reasons) for own in columns]
    used, why = (np.stack(one, axis=1) for one in zip(*found, strict=True))
    rows = _rows_with_figures(cells, why)
    used, why = used[rows], why[rows]
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
        blank=why,
        exact=exact,
        governing=gathered(cells.governing, -1).astype(int),
        limits=cells.limits,
        tipping_load=gathered(cells.tipping_load, np.nan),
        angle=gathered(cells.angle, np.nan),
        within_range=gathered(cells.within_range, 0).astype(bool),
        empty_hook=cells.empty_hook,
    )


def _rows_with_figures(cells: Cells, why: np.ndarray) -> slice:
    """From the first to the last row with a figure; without any, those that the boom reaches."""
    outside = (cells.radii > nearest_radius(cells.setup))[:, None]
    for some in (why == PRINTED, why < NO_REACH):
        rows = np.flatnonzero(np.any(some & outside, axis=1))
        if len(rows):
            return slice(rows[0], rows[-1] + 1)
    return slice(0, 0)


def _steadiest(
    cells: Cells, own: list[int], step: float, reasons: np.ndarray
) -> tuple[np.ndarray, np.ndarray]:
    """Choose a configuration for each row: the most steps, with the fewest changes; and why not."""
    steps = np.where(reasons[own] == PRINTED, whole_steps(cells.capacity[own], step=step), -1)
    most = steps.max(axis=0)
    falls = falls_inwards(most)
    among = (steps == most) & (most >= 0) & ~falls
    # Of several ways to fail the mildest is told: nothing but more load is wrong with the first.
    why = np.where(falls, LESS, np.where(most >= 0, PRINTED, reasons[own].clip(0).min(axis=0)))
    if len(own) == 1:
        return np.where(among[0], own[0], -1), why
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
    return used, why


def some_columns(chart: Chart, columns: np.ndarray) -> Chart:
    """Take some columns of a chart, and the rows that they reach."""
    if len(columns) == len(chart.length):
        return chart
    reached = np.flatnonzero(np.any(chart.rated[:, columns], axis=1))
    if not len(reached):
        reached = np.flatnonzero(np.any(chart.blank[:, columns] < NO_REACH, axis=1))
    rows = np.arange(reached[0], reached[-1] + 1) if len(reached) else np.arange(1)
    cells = np.ix_(rows, columns)
    grids = (
        "used",
        "steps",
        "blank",
        "exact",
        "governing",
        "tipping_load",
        "angle",
        "within_range",
    )
    return replace(
        chart,
        radii=chart.radii[rows],
        length=chart.length[columns],
        choices=tuple(chart.choices[c] for c in columns),
        **{name: getattr(chart, name)[cells] for name in grids},
    )
