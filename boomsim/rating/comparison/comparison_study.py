"""The main job: configurations of one length, rated side by side, and who wins where."""

from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from boomsim.machine.model import Boom
from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.geometry import Array
from boomsim.rating.capacity import Rating, rate
from boomsim.rating.charts.rows_and_rounding import row_step
from boomsim.rating.comparison.capacity_envelope import SAME
from boomsim.rating.comparison.comparison_leads import Crossover, Lead, leads_of
from boomsim.rating.comparison.difference_account import Account, account_of
from boomsim.rating.empty_hook.less_than_the_hook import blank_under_hook
from boomsim.rating.lift_response import respond
from boomsim.rating.longest_boom import refuse_too_long
from boomsim.rating.nearest_radius import nearest_radius
from boomsim.rating.setup import Setup
from boomsim.rating.strategies import (
    Configurations,
    checked_system,
    configurations_of,
    configurations_of_length,
    range_of_length,
)

DRAWN = 4
"""Radii to a row of the table where lines are drawn through them [1]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Comparison:
    """Configurations of one length, rated at the same radii.

    Attributes
    ----------
    setup : Setup
    configurations : Configurations
    radii : ndarray, shape (radii,)
        [m]
    rating : Rating
        Arrays of shape (configurations, radii)
    best : ndarray of int, shape (radii,)
        Configuration with most capacity; the first of equals; -1 where none reaches
    leads : tuple of Lead
        Who carries most from where to where, at all radii that any of them reaches, whatever
        `radii` are
    crossovers : tuple of Crossover
        Where one takes the lead from another
    least : tuple of int
        Who carries least close in, and who far out
    """

    setup: Setup
    configurations: Configurations
    radii: Array
    rating: Rating
    best: np.ndarray
    leads: tuple[Lead, ...]
    crossovers: tuple[Crossover, ...]
    least: tuple[int, int]


def compare(
    setup: Setup,
    *,
    configurations: Configurations | None = None,
    length: float | None = None,
    radii: Array | None = None,
    system: str | None = None,
    units: str = "metric",
) -> Comparison:
    """Rate configurations of one length over radius.

    Parameters
    ----------
    setup : Setup
    configurations : Configurations, optional
        Default: all legal ones of the wanted `length`
    length : float, optional
        [m]
    radii : ndarray, optional
        Default: every metre or every five feet within reach [m]
    system : str, optional
        Boom system to stay with
    units : str
        "metric" or "us": of the default radii

    Raises
    ------
    ValueError
        If there is no such configuration.
    """
    if configurations is None:
        if length is None:
            raise ValueError("Give the boom length to compare at, or the configurations.")
        configurations = configurations_of_length(setup.machine.boom, length=length, system=system)
    refuse_too_long(setup, length=configurations.length)
    if radii is None:
        radii = default_radii(setup, configurations, units=units)
    radii = np.asarray(radii, float)
    boom = condense(setup.machine, extension=configurations.extension)
    rating = blank_under_hook(
        rate(setup, extension=configurations.extension, radius=radii, boom=boom)
    )
    who = leads_of(setup, boom=boom)
    return Comparison(
        setup=setup,
        configurations=configurations,
        radii=radii,
        rating=rating,
        best=best_of(rating.capacity),
        leads=who.leads,
        crossovers=who.crossovers,
        least=who.least,
    )


def demonstration(boom: Boom, *, system: str | None = None) -> Configurations:
    """Configurations of one length that show the question best.

    A pinned boom: its lightest section far out alone, its two lightest half out, its heaviest
    moving section far out with the rest nested in it. Another boom: all its ways to be out by half.

    Parameters
    ----------
    boom : Boom
    system : str, optional
        Boom system to stay with; default: all of the boom's
    """
    moving = len(boom.sections) - 1
    locks = sorted(boom.lock_positions)
    pairs = [(half, far) for half in locks for far in locks if half and abs(2 * half - far) < 1e-9]
    pinned = "pinned" in (boom.systems if system is None else (checked_system(boom, system),))
    if not pinned or not pairs or moving < 3:
        shortest, longest = range_of_length(boom)
        return configurations_of_length(boom, length=(shortest + longest) / 2, system=system)
    half, far = pairs[-1]
    head_out = [0.0] * (moving - 1) + [far]
    halves = [0.0] * (moving - 2) + [half, half]
    return configurations_of(boom, extension=np.array([head_out, halves, head_out[::-1]]))


def deflections(comparison: Comparison) -> tuple[float | None, float | None, Array | None]:
    """Tip deflections of all configurations under one load at one radius.

    The load is half of what the weakest carries, at the middle of the radii that all reach.

    Returns
    -------
    load, radius : float or None
        None where no radius is reached by all [kg], [m]
    deflection : ndarray, shape (configurations,), or None
        [m]
    """
    capacity = comparison.rating.capacity
    shared = np.flatnonzero(np.all(capacity > 0.0, axis=0))
    if len(shared) == 0:
        return None, None, None
    cell = int(shared[len(shared) // 2])
    load, radius = float(capacity[:, cell].min() / 2), float(comparison.radii[cell])
    at = respond(
        comparison.setup,
        boom=comparison.rating.boom,
        load=np.array([[load]]),
        radius=np.array([[radius]]),
    )
    return load, radius, at.tip_deflection[:, 0]


def capacities_at(comparison: Comparison, *, radius: float) -> Array:
    """Rated capacity of all ways at any radius, with what is condensed already.

    Parameters
    ----------
    comparison : Comparison
    radius : float
        [m]

    Returns
    -------
    ndarray, shape (configurations,)
        0 where one does not reach [kg]
    """
    rating, cell = _rated_at(comparison, radius)
    return np.asarray(np.nan_to_num(rating.capacity[:, cell]))


def capacities_of(setup: Setup, *, extension: Array, boom: Condensed, radius: float) -> Array:
    """Rate ways at one radius; see :func:`capacities_at`.

    Parameters
    ----------
    setup : Setup
    extension : ndarray, shape (configurations, moving sections)
        [1]
    boom : Condensed
        Of these configurations
    radius : float
        [m]

    Returns
    -------
    ndarray, shape (configurations,)
        0 where one does not reach [kg]
    """
    rating = blank_under_hook(
        rate(setup, extension=extension, radius=np.array([radius]), boom=boom)
    )
    return np.asarray(np.nan_to_num(rating.capacity[:, 0]))


@lru_cache(maxsize=32)
def account_at(comparison: Comparison, *, way: int, radius: float) -> Account | None:
    """Account for the capacity of one way at a radius; worked out when it is first asked for.

    Parameters
    ----------
    comparison : Comparison
    way : int
        Index of the configuration
    radius : float
        [m]

    Returns
    -------
    Account or None
        None where the boom does not reach
    """
    rating, cell = _rated_at(comparison, radius)
    return account_of(rating, configuration=way, cell=cell)


@lru_cache(maxsize=8)
def _rated_at(comparison: Comparison, radius: float) -> tuple[Rating, int]:
    """A rating with a column for this radius, and which: the comparison's own, if it has one."""
    own = np.flatnonzero(comparison.radii == radius)
    if len(own):
        return comparison.rating, int(own[0])
    extension, boom = comparison.configurations.extension, comparison.rating.boom
    found = rate(comparison.setup, extension=extension, radius=np.array([radius]), boom=boom)
    return blank_under_hook(found), 0


def finely(comparison: Comparison) -> Comparison:
    """Rate the same ways closer together, so that a line drawn through them has its true shape.

    Returns
    -------
    Comparison
        From the first to the last of its radii, and with these among its own
    """
    configurations, radii = comparison.configurations, comparison.radii
    step = row_step(comparison.setup.machine, length=configurations.length) / DRAWN
    even = step * np.arange(np.ceil(radii.min() / step), radii.max() / step)
    even = even[np.abs(even[:, None] - radii).min(axis=1) > step / 2]
    every = np.sort(np.concatenate([even, radii]))
    rating = rate(
        comparison.setup,
        extension=configurations.extension,
        radius=every,
        boom=comparison.rating.boom,
    )
    rating = blank_under_hook(rating)
    return replace(comparison, radii=every, rating=rating, best=best_of(rating.capacity))


def default_radii(
    setup: Setup,
    configurations: Configurations,
    *,
    step: float | None = None,
    units: str = "metric",
) -> Array:
    """Radii in even steps over what these configurations reach beside the machine.

    Parameters
    ----------
    setup : Setup
    configurations : Configurations
    step : float, optional
        Default: a metre or five feet, or finer for a machine that reaches only a few [m]
    units : str
        "metric" or "us"

    Returns
    -------
    ndarray
        Whole multiples of the step [m]
    """
    boom, machine = setup.machine.boom, setup.machine
    if step is None:
        step = row_step(machine, length=configurations.length, units=units)
    reach = machine.heel_out + configurations.length * np.cos(boom.least_angle)
    near = machine.heel_out + configurations.length * np.cos(boom.greatest_angle)
    first = max(np.ceil(near.min() / step), 1.0)
    radii = step * np.arange(first, np.floor(reach.max() / step) + 1)
    return radii[radii > nearest_radius(setup)]


def best_of(capacity: Array) -> np.ndarray:
    """Which configuration carries most at each radius.

    Parameters
    ----------
    capacity : ndarray, shape (configurations, radii)
        [kg]

    Returns
    -------
    ndarray of int, shape (radii,)
        The first of those within `SAME` of the most; -1 where none carries anything
    """
    known = np.where(np.isnan(capacity), -1.0, capacity)
    most = known.max(axis=0)
    first = np.argmax(known >= most * (1.0 - SAME), axis=0)
    return np.where(most > 0.0, first, -1)
