"""What a range diagram shows, as numbers: where the head goes and what it may carry there."""

from dataclasses import dataclass

import numpy as np

from boomsim.machine.boom_systems import BOOM_SYSTEMS, in_proportion, one_after_another
from boomsim.machine.model import Boom
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.geometry import Array
from boomsim.rating.capacity import Rating, rate
from boomsim.rating.empty_hook.empty_hook_study import EmptyHook, empty_hook
from boomsim.rating.lift_response import respond
from boomsim.rating.limits.limit_kind import Limit
from boomsim.rating.longest_boom import refuse_too_long, too_long
from boomsim.rating.parts_reeved import hanging_mass
from boomsim.rating.setup import Setup

ANGLES = 61
"""Boom angles at which each arc is worked out."""

HELD = 0.998
"""Nearer to the greatest reach a radius cannot be held: the boom droops as the load grows [1]."""

STEPS, MOST_BANDS = (1.0, 2.0, 5.0), 8
"""Capacities of the contours are 1, 2 or 5 times a power of ten; the largest so many are drawn."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class RangeShape:
    """Arcs of the boom head, one for each configuration. Shapes (configurations, angles).

    Attributes
    ----------
    extension : ndarray, shape (configurations, moving sections)
        [1]
    length : ndarray, shape (configurations,)
        Boom length, rising [m]
    radius, height : ndarray
        Head sheave centre with an empty hook: hook block, slings and falls hang on it [m]
    angle : ndarray, shape (angles,)
        Boom angle, rising [rad]
    capacity : ndarray
        Rated at that radius; NaN where the boom does not reach it with the load on, and where it is
        less than hook block, slings and falls [kg]
    governing : ndarray of int
        Limit that sets it, index into `limits`; -1 where nothing is rated
    tips : ndarray of bool
        True where stability sets it
    empty_hook : EmptyHook
        How far down each configuration stands without a load
    """

    setup: Setup
    extension: Array
    length: Array
    radius: Array
    height: Array
    angle: Array
    capacity: Array
    governing: np.ndarray
    limits: tuple[Limit, ...]
    tips: np.ndarray
    empty_hook: EmptyHook

    @property
    def stands(self) -> np.ndarray:
        """True where the crane stands with its empty hook."""
        return np.asarray(self.angle > self.empty_hook.angle[:, None])

    def place(self, row: int, angle: float) -> tuple[float, float]:
        """Radius and height of the head of one configuration at a boom angle [m]."""
        radius, height = (np.interp(angle, self.angle, v[row]) for v in (self.radius, self.height))
        return float(radius), float(height)


def usual_extensions(boom: Boom, *, steps: int = 6) -> Array:
    """Choose a row of configurations from retracted to fully out, to show a boom's range by.

    Parameters
    ----------
    steps : int
        Rows for a boom whose sections move together or freely

    Returns
    -------
    ndarray, shape (configurations, moving sections)
        Sections that lock or go out in turn: one more fully out in each row, the head side first
        for a boom that locks and the base side first for a sequenced one. Others: along their own
        path, or all in proportion [1]
    """
    stroke, system = [s.stroke for s in boom.sections[1:]], BOOM_SYSTEMS[boom.systems[0]]
    one_more = np.tri(len(stroke) + 1, len(stroke), -1)
    if system.locks:
        return np.asarray(one_more[:, ::-1])
    if system.path is one_after_another:
        return np.asarray(one_more)
    path = system.path or in_proportion
    return np.array([path(stroke, out) for out in np.linspace(0.0, sum(stroke), steps)])


def range_of(setup: Setup, *, extension: Array | None = None) -> RangeShape:
    """Work out the range of some configurations.

    Parameters
    ----------
    extension : ndarray, shape (configurations, moving sections), optional
        Default: those of :func:`usual_extensions` that are not too long for the tyres [1]

    Returns
    -------
    RangeShape
        Sorted by boom length
    """
    machine = setup.machine
    wanted = usual_extensions(machine.boom) if extension is None else np.atleast_2d(extension)
    boom = condense(machine, extension=wanted)
    if extension is None:
        short = ~too_long(setup, length=boom.layout.boom_length)
        boom = condense(machine, extension=wanted[short])
    refuse_too_long(setup, length=boom.layout.boom_length)
    order = np.argsort(boom.layout.boom_length, kind="stable")
    boom = condense(machine, extension=boom.layout.extension[order])
    angle = np.linspace(machine.boom.least_angle, machine.boom.greatest_angle, ANGLES)
    lowest = empty_hook(setup, extension=boom.layout.extension)
    hung = hanging_mass(setup, length=boom.layout.boom_length, angle=angle)
    bare = respond(setup, boom=boom, load=hung, angle=angle[None])
    radius = bare.placed.head_out
    rating = _rated(setup, boom.layout.extension, radius)
    held = (radius > 0.0) & (radius < HELD * radius.max(axis=1, keepdims=True))
    capacity = np.where(held & (rating.capacity >= hung), rating.capacity, np.nan)
    rated = np.isfinite(capacity)
    return RangeShape(
        setup=setup,
        extension=boom.layout.extension,
        length=boom.layout.boom_length,
        radius=radius,
        height=bare.placed.head_up,
        angle=angle,
        capacity=capacity,
        governing=np.where(rated, rating.governing, -1),
        limits=rating.limits,
        tips=rating.is_stability & rated,
        empty_hook=lowest,
    )


def _rated(setup: Setup, extension: Array, radius: Array) -> Rating:
    """Rate at each head position; behind the axis of rotation there is nothing to rate."""
    known = np.where(radius > 0.0, radius, np.nanmax(radius))
    return rate(setup, extension=extension, radius=known)


def bands(shape: RangeShape, *, unit: float) -> Array:
    """Round capacities for contours, between the least and the most that is rated.

    Parameters
    ----------
    unit : float
        Of the display [kg]

    Returns
    -------
    ndarray
        Rising [kg]
    """
    known = shape.capacity[np.isfinite(shape.capacity) & (shape.capacity > 0.0)] / unit
    if not len(known):
        return np.zeros(0)
    powers = np.arange(np.floor(np.log10(known.min())), np.ceil(np.log10(known.max())) + 1)
    steps = np.sort(np.outer(10.0**powers, STEPS).ravel())
    inside = steps[(steps > known.min()) & (steps < known.max())]
    return np.asarray(inside[-MOST_BANDS:] * unit)


def contour(shape: RangeShape, capacity: float) -> Array:
    """Where each arc is rated at one capacity, shortest boom first.

    Parameters
    ----------
    capacity : float
        [kg]

    Returns
    -------
    ndarray, shape (points, 2)
        (radius, height); an arc that never has this capacity has no point [m]
    """
    found = []
    # From the steepest boom down: capacity falls as the radius grows.
    for row in np.stack([shape.radius, shape.height, shape.capacity], axis=-1)[:, ::-1]:
        last = int(np.argmax(np.cumsum(np.nan_to_num(row[:, 2], nan=-1.0) >= capacity)))
        one, two = row[last], row[min(last + 1, len(row) - 1)]
        if one[2] >= capacity > two[2]:
            share = (one[2] - capacity) / (one[2] - two[2])
            found.append(one[:2] + share * (two[:2] - one[:2]))
    return np.array(found).reshape(-1, 2)
