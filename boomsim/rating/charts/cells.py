"""Every legal configuration, rated at the rows of a chart."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from boomsim.machine.model import Machine
from boomsim.mechanics.geometry import Array
from boomsim.rating.capacity import Rating, rate
from boomsim.rating.charts.grid import chart_radii, checked_radii, reach
from boomsim.rating.charts.ways import every_configuration
from boomsim.rating.limits import Limit, limits_of
from boomsim.rating.setup import Setup
from boomsim.rating.strategies import Configurations

ENOUGH = 640
"""Cells solved together: so many fit a processor's cache [1]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Cells:
    """Rated cells, shapes (configurations, rows) unless given.

    Attributes
    ----------
    setup : Setup
    configurations : Configurations
    radii : ndarray, shape (rows,)
        Growing [m]
    capacity : ndarray
        Gross, not rounded; NaN out of reach or of the angle range [kg]
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
    capacity: Array
    governing: np.ndarray
    limits: tuple[Limit, ...]
    tipping_load: Array
    angle: Array
    within_range: np.ndarray


def rate_cells(setup: Setup, *, configurations: Configurations, radii: Array) -> Cells:
    """Rate configurations at radii, working only where the boom can be.

    Parameters
    ----------
    setup : Setup
    configurations : Configurations
    radii : array_like, shape (rows,)
        [m]

    Returns
    -------
    Cells

    Raises
    ------
    ValueError
        If a radius is no number above zero.
    """
    rows = checked_radii(radii)
    shape = (len(configurations.length), len(rows))
    found = {n: np.full(shape, np.nan) for n in ("capacity", "tipping_load", "angle")}
    governing, within = np.full(shape, -1), np.zeros(shape, dtype=bool)
    for own, columns in _batches(setup.machine, configurations.length, rows):
        rating = _rate(setup, configurations.extension[own], rows[columns])
        cells = np.ix_(own, columns)
        for name, values in found.items():
            values[cells] = getattr(rating, name)
        governing[cells], within[cells] = rating.governing, rating.valid
    return Cells(
        setup=setup,
        configurations=configurations,
        radii=rows,
        governing=governing,
        limits=limits_of(setup.machine),
        within_range=within,
        **found,
    )


def _rate(setup: Setup, extension: Array, radii: Array) -> Rating:
    return rate(setup, extension=extension, radius=radii, batch=len(extension))


def _batches(
    machine: Machine, length: Array, radii: Array
) -> Iterator[tuple[np.ndarray, np.ndarray]]:
    """Put configurations of about one length together with the rows that one of them may reach."""
    near, far = reach(machine, length=length)
    order = np.argsort(length, kind="stable")
    first = 0
    while first < len(order):
        last, columns = first, np.zeros(0, dtype=int)
        while last < len(order):
            own = order[first : last + 1]
            wider = np.flatnonzero((radii >= near[own].min()) & (radii <= far[own].max()))
            if last > first and len(own) * len(wider) > ENOUGH:
                break
            last, columns = last + 1, wider
        if len(columns):
            yield order[first:last], columns
        first = last


def chart_cells(
    setup: Setup,
    *,
    configurations: Configurations | None = None,
    radii: Array | None = None,
    units: str = "metric",
) -> Cells:
    """Rate what charts are made of.

    Parameters
    ----------
    setup : Setup
    configurations : Configurations, optional
        Default: all that belong in the machine's chart book
    radii : array_like, optional
        Default: :func:`chart_radii` [m]
    units : str
        "metric" or "us"

    Returns
    -------
    Cells

    Raises
    ------
    ValueError
        If nothing can be reached; says what can.
    """
    if configurations is None:
        configurations = every_configuration(setup.machine.boom)
    if radii is None:
        radii = chart_radii(setup.machine, length=configurations.length, units=units)
    cells = rate_cells(setup, configurations=configurations, radii=radii)
    if not np.any(cells.governing >= 0):
        near, far = reach(setup.machine, length=configurations.length)
        raise ValueError(
            f"None of these boom lengths reaches any of the radii given, {cells.radii[0]:g} m to "
            f"{cells.radii[-1]:g} m. Give radii between {max(near.min(), 0.0):.0f} m and "
            f"{far.max():.0f} m."
        )
    return cells
