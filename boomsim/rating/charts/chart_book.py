"""The chart book: every way to set a machine up, and every way to extend its boom, rated."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from boomsim.machine.model import CALM, Disturbances, Machine, Rigging
from boomsim.mechanics.geometry import Array
from boomsim.rating.charts.book_cells import cells_of_book
from boomsim.rating.charts.chart_configurations import every_configuration, same_length
from boomsim.rating.charts.load_chart import Chart, chart_of
from boomsim.rating.charts.rated_cells import Cells
from boomsim.rating.charts.rows_and_rounding import (
    chart_radii,
    chart_step,
    checked_radii,
    checked_step,
)
from boomsim.rating.rules import RULES
from boomsim.rating.setup import DEFAULT_ALLOWANCES, SECTORS, Setup, set_up
from boomsim.rating.strategies import Configurations

Progress = Callable[[int, int], None]
"""Told how many of how many pieces of the work are done."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Chapter:
    """What one way to set the machine up lifts.

    Attributes
    ----------
    cells : Cells
        Every configuration at every radius
    best : Chart
        The best configuration of each boom length
    stated : Chart
        A column for each configuration
    """

    setup: Setup
    cells: Cells
    best: Chart
    stated: Chart


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Book:
    """All chapters of a machine, on one grid.

    Attributes
    ----------
    radii : ndarray, shape (rows,)
        [m]
    step : float
        [kg]
    units : str
        "metric" or "us": what the grid is even in
    """

    machine: Machine
    configurations: Configurations
    radii: Array
    step: float
    units: str
    chapters: tuple[Chapter, ...]

    @property
    def rated(self) -> int:
        """How many cells of the stated ways hold a figure [1]."""
        return sum(int(np.sum(chapter.stated.rated)) for chapter in self.chapters)


def make_book(
    setups: Sequence[Setup],
    *,
    configurations: Configurations | None = None,
    radii: Array | None = None,
    step: float | None = None,
    units: str = "metric",
    processes: int = 1,
    progress: Progress | None = None,
) -> Book:
    """Rate a book.

    Parameters
    ----------
    setups : sequence of Setup
        Of one machine, a chapter for each
    configurations : Configurations, optional
        Default: all that belong in the machine's chart book
    radii : array_like, optional
        Default: every metre or every five feet that the boom reaches [m]
    step : float, optional
        Capacities are rounded down to it; default: 50 kg or 100 lb, less for a small machine [kg]
    units : str
        "metric" or "us": which defaults to take
    processes : int
        That share the work
    progress : callable, optional
    """
    if not setups:
        raise ValueError("A chart book needs at least one way to set the machine up.")
    machine = setups[0].machine
    if configurations is None:
        configurations = every_configuration(machine.boom)
    if radii is None:
        radii = chart_radii(machine, length=configurations.length, units=units)
    rows = checked_radii(radii)
    if step is not None:
        checked_step(step)
    rated = cells_of_book(
        setups, configurations=configurations, radii=rows, processes=processes, progress=progress
    )
    if step is None:
        step = chart_step(rated[0].capacity, units=units)
    return Book(
        machine=machine,
        configurations=configurations,
        radii=rows,
        step=step,
        units=units,
        chapters=tuple(_chapter(cells, step=step) for cells in rated),
    )


def _chapter(cells: Cells, *, step: float) -> Chapter:
    each = [[i] for i in range(len(cells.configurations.length))]
    return Chapter(
        setup=cells.setup,
        cells=cells,
        best=chart_of(cells, columns=same_length(cells.configurations.length), step=step),
        stated=chart_of(cells, columns=each, step=step),
    )


def every_setup(
    machine: Machine,
    *,
    sectors: Sequence[float | str] = SECTORS,
    counterweights: Sequence[str] | None = None,
    supports: Sequence[str] | None = None,
    rules: Sequence[str] | None = None,
    parts: int | None = None,
    disturbances: Disturbances = CALM,
    allowances: str = DEFAULT_ALLOWANCES,
) -> tuple[Setup, ...]:
    """Combine rules, supports, counterweights and sectors.

    Parameters
    ----------
    sectors : sequence of float or str
        Sectors, or slew angles [rad]
    counterweights, supports, rules : sequence of str, optional
        Names; default: all
    parts : int, optional
        Parts of line; default: the machine's usual number [1]
    allowances : str
        "rule" or "none"

    Returns
    -------
    tuple of Setup
        By rule, support, counterweight, then sector
    """
    return tuple(
        set_up(
            machine,
            rigging=Rigging(counterweight=counterweight, support=support, parts=parts),
            slew=sector,
            rule=rule,
            disturbances=disturbances,
            allowances=allowances,
        )
        for rule in (rules or tuple(RULES))
        for support in (supports or [s.name for s in machine.supports])
        for counterweight in (counterweights or [c.name for c in machine.counterweights])
        for sector in sectors
    )
