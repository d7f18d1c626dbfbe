"""The grid of a chart: which radii are its rows, and what its capacities are rounded down to."""

import numpy as np

from boomsim.machine.model import Machine
from boomsim.mechanics.geometry import Array
from boomsim.rating.nearest_radius import nearest_radius
from boomsim.rating.setup import Setup
from boomsim.units import FOOT, POUND, display

MASS_UNIT = {"metric": 1.0, "us": float(POUND)}
LENGTH_UNIT = {"metric": 1.0, "us": float(FOOT)}
"""Kilogram and metre, pound and foot [kg], [m]."""

STEPS = {"metric": 50.0, "us": 100.0}
"""What a crane's capacities are rounded down to [kg] or [lb]."""

ROWS = {"metric": 1.0, "us": 5.0}
"""From one radius of a crane to the next [m] or [ft]."""


def printed_decimals(radii: Array, *, length: Array, units: str) -> tuple[int, int]:
    """Decimals with which a chart prints its radii and its boom lengths.

    Radii are written in full, up to two decimals; boom lengths as everywhere.

    Parameters
    ----------
    radii : ndarray, shape (rows,)
        [m]
    length : ndarray, shape (columns,)
        Boom lengths [m]

    Returns
    -------
    int, int
        Of radii, of boom lengths [1]
    """
    values, most = np.asarray(radii) / LENGTH_UNIT[units], 2
    for decimals in range(most):
        shifted = values * 10.0**decimals
        if np.all(np.abs(shifted - np.round(shifted)) < 1e-6):
            break
    else:
        decimals = most
    return decimals, display("boom_length", units, like=float(np.min(length))).digits


FEW, MANY = 5, 40
"""A machine with less room than so many rows or steps gets finer ones, about this many [1]."""

MOST_ROWS = 1000
"""So many rows of a chart nobody reads; more would only fill the memory [1]."""


def reach(machine: Machine, *, length: Array) -> tuple[Array, Array]:
    """Radii outside which a boom cannot be, whatever it carries.

    A loaded boom stands steeper than an unloaded one at the same radius, so the unbent boom at its
    steepest is the near end; no bent boom is longer than the straight one.

    Parameters
    ----------
    length : ndarray
        Boom length [m]

    Returns
    -------
    near, far : ndarray
        [m]
    """
    below, steepest = machine.boom.head.below, machine.boom.greatest_angle
    near = length * np.cos(steepest) + below * np.sin(steepest)
    return machine.heel_out + near, machine.heel_out + np.hypot(length, below)


def row_step(machine: Machine, *, length: Array, units: str = "metric") -> float:
    """Choose how far apart the rows of a chart are [m].

    Parameters
    ----------
    length : ndarray
        Boom lengths [m]
    """
    unit = LENGTH_UNIT[units]
    return unit * _fine_enough(ROWS[units], float(reach(machine, length=length)[1].max()) / unit)


def _fine_enough(usual: float, most: float) -> float:
    """Take the usual step, or 1, 2 or 5 of a power of ten where a range holds few of them."""
    if most >= FEW * usual or not most > 0.0:
        return usual
    power = 10.0 ** np.floor(np.log10(most / MANY))
    return float(next(power * k for k in (1.0, 2.0, 5.0, 10.0) if power * k * MANY >= most))


def chart_radii(
    machine: Machine, *, length: Array, step: float | None = None, units: str = "metric"
) -> Array:
    """Whole multiples of a step over the radii that some boom length may reach [m].

    Parameters
    ----------
    length : ndarray
        Boom lengths [m]
    step : float, optional
        Default: :func:`row_step` [m]
    """
    if step is None:
        step = row_step(machine, length=length, units=units)
    if not 0.0 < step < np.inf:
        raise ValueError(
            f"Rows cannot be {step:g} m apart. Give a distance above 0 m, such as 1 m or 5 ft."
        )
    near, far = reach(machine, length=length)
    if far.max() > MOST_ROWS * step:
        raise ValueError(
            f"Rows {step:g} m apart make a chart of more than {MOST_ROWS} rows. Give a greater "
            f"distance, such as {far.max() / MANY:.2g} m."
        )
    first = max(np.ceil(near.min() / step), 1.0)
    return step * np.arange(first, np.floor(far.max() / step) + 1)


def even_radii(setup: Setup, *, length: Array, step: float) -> Array:
    """Radii beside the machine, from the nearest that a boom length may reach to the farthest.

    Returns
    -------
    ndarray
        Whole multiples of the step; before them the nearest radius, if they begin beyond the least
        that the boom reaches [m]
    """
    near, far = reach(setup.machine, length=length)
    beside = nearest_radius(setup)
    first = max(np.floor(near.min() / step), np.floor(beside / step) + 1.0)
    even = step * np.arange(first, np.ceil(far.max() / step) + 1)
    return np.concatenate([[beside], even]) if near.min() < even[0] else even


def checked_radii(radii: Array) -> Array:
    """Put the radii of a chart's rows in order, each once.

    Parameters
    ----------
    radii : array_like
        [m]

    Returns
    -------
    ndarray
        Growing [m]

    Raises
    ------
    ValueError
        If there is none, or one is no number above zero.
    """
    rows = np.unique(np.atleast_1d(np.asarray(radii, dtype=float)))
    if not 0 < len(rows) <= MOST_ROWS:
        raise ValueError(
            f"A chart needs 1 to {MOST_ROWS} radii and these are {len(rows)}. Give some, such as "
            "6 m, 8 m, 10 m."
        )
    bad = rows[~((rows > 0.0) & (rows < 1e4))]
    if len(bad):
        raise ValueError(
            "A radius must be above 0 m, from the axis of rotation, and one of these is "
            f"{bad[0]:g} m."
        )
    return rows


def chart_step(capacity: Array, *, units: str = "metric") -> float:
    """Choose what capacities are rounded down to [kg].

    Parameters
    ----------
    capacity : ndarray
        All that the chart will show [kg]
    """
    unit = MASS_UNIT[units]
    return unit * _fine_enough(STEPS[units], float(np.nanmax(capacity)) / unit)


def checked_step(step: float) -> float:
    """Refuse a step to which nothing can be rounded.

    Parameters
    ----------
    step : float
        [kg]

    Returns
    -------
    float
        The same [kg]
    """
    if not 0.0 < step < np.inf:
        raise ValueError(
            f"A chart step of {step:g} kg rounds nothing. Give one above 0 kg, such as 50 kg or "
            "100 lb."
        )
    return step


def whole_steps(capacity: Array, *, step: float) -> np.ndarray:
    """Round down: how many whole steps a capacity holds.

    Parameters
    ----------
    capacity : ndarray
        NaN where blank [kg]
    step : float
        [kg]

    Returns
    -------
    ndarray of int
        -1 where blank
    """
    known = np.where(np.isnan(capacity), 0.0, capacity)
    count = np.floor(known / step)
    # The quotient itself is rounded: take the most steps whose product is no more than there is.
    count += (count + 1) * step <= known
    count -= count * step > known
    return np.where(np.isnan(capacity), -1, count).astype(int)
