"""Where the crane turns over with its empty hook: the least boom angle at which it still stands.

A boom that is lowered or extended far enough turns the crane over without any load. On the rope
hangs what always hangs there: hook block, slings and the falls of the rope, counted down to the
ground. The balance is that about the least tipping line, tipping ratio one: no margin is in it.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.machine.model import CALM
from boomsim.mechanics.boom.boom_state import solve_state
from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.stability.masses import masses
from boomsim.mechanics.stability.overturning import overturning
from boomsim.rating.parts_reeved import hanging_mass, reeved
from boomsim.rating.setup import Setup

POINTS = (5, 13, 13, 13)
"""Angles tried in each round; the next goes between the last that stands and the first that does
not. After four the straight line between two of them is good to some 1e-6 rad."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class EmptyHook:
    """How far down and out each configuration stands. Arrays of shape (configurations,).

    Attributes
    ----------
    load : ndarray
        Hook block, slings and falls at that boom angle; at the lowest where it never turns over, at
        the steepest where it stands nowhere [kg]
    angle : ndarray
        Least boom angle at which the crane stands as the boom is lowered; minus infinity where it
        never turns over, infinity where it stands at no boom angle [rad]
    radius : ndarray
        Radius there; infinity where it never turns over, zero where it stands nowhere [m]
    """

    setup: Setup
    load: Array
    angle: Array
    radius: Array

    @property
    def turns_over(self) -> np.ndarray:
        """True where the crane turns over somewhere."""
        return np.asarray(np.isfinite(self.radius))

    @property
    def stands(self) -> np.ndarray:
        """True where it stands with the boom at its steepest."""
        return np.asarray(self.radius > 0.0)

    def lies_over(
        self, *, radius: Array | float | None = None, angle: float | None = None
    ) -> Array:
        """Tell where the crane lies on its side with its empty hook.

        Parameters
        ----------
        radius, angle : float, or ndarray with a last axis of configurations
            One of them, of the place that is looked at [m] or [rad]
        """
        if radius is not None:
            return np.asarray(radius >= self.radius)
        assert angle is not None
        return np.asarray(angle <= self.angle)


def empty_hook(setup: Setup, *, extension: Array) -> EmptyHook:
    """Lower the boom with its empty hook until the crane turns over, or as far as it goes.

    Parameters
    ----------
    extension : ndarray, shape (configurations, moving sections)
        [1]
    """
    fractions = np.atleast_2d(extension)
    limits = setup.machine.boom
    angle, radius = np.full(len(fractions), -np.inf), np.full(len(fractions), np.inf)
    steep, flat = (np.full(len(fractions), a) for a in (limits.greatest_angle, limits.least_angle))
    boom = condense(setup.machine, extension=fractions)
    length = boom.layout.boom_length
    high, low, ends = _closer(setup, boom, steep, flat, POINTS[0])
    nowhere = ends[:, 0] <= 0.0
    angle[nowhere], radius[nowhere] = np.inf, 0.0
    rows = np.flatnonzero((ends[:, 1] <= 0.0) & ~nowhere)
    if len(rows):
        boom, high, low = condense(setup.machine, extension=fractions[rows]), high[rows], low[rows]
        for points in POINTS[1:]:
            high, low, ends = _closer(setup, boom, high, low, points)
        with np.errstate(invalid="ignore"):
            share = ends[:, 0] / (ends[:, 0] - ends[:, 1])
        # Where no moment is known above, the steeper angle counts: the last at which it stood.
        angle[rows] = high + (low - high) * np.where(np.isfinite(share), share, 0.0)
        radius[rows] = _radius(setup, boom, angle[rows, None])[:, 0]
    hung = hanging_mass(setup, length=length, angle=angle.clip(flat, steep)[:, None])[:, 0]
    return EmptyHook(setup=setup, load=hung, angle=angle, radius=radius)


def _closer(
    setup: Setup, boom: Condensed, high: Array, low: Array, points: int
) -> tuple[Array, Array, Array]:
    """Try angles from high to low: the two between which the crane first falls, or the last two.

    Returns both angles, shape (configurations,), and the moments left at them, (configurations, 2).
    """
    angle = high[:, None] + np.linspace(0.0, 1.0, points) * (low - high)[:, None]
    left = _left(setup, boom, angle)
    down = left <= 0.0
    k = np.where(down.any(axis=1), np.argmax(down, axis=1), points - 1).clip(1)
    row = np.arange(len(k))
    return angle[row, k - 1], angle[row, k], np.stack([left[row, k - 1], left[row, k]], axis=1)


def _left(setup: Setup, boom: Condensed, angle: Array) -> Array:
    """Moment that still holds the crane down, least over slew angles and tipping lines.

    Only lines that the hook hangs beyond: about the others the crane could but fall backwards.

    Parameters
    ----------
    angle : ndarray, shape (configurations, angles)
        [rad]

    Returns
    -------
    ndarray, shape (configurations, angles)
        Infinite with the hook inside all lines, NaN where the boom finds no equilibrium [N m]
    """
    length = boom.layout.boom_length
    load = hanging_mass(setup, length=length, angle=angle)
    state = solve_state(
        boom,
        load=load,
        parts=reeved(setup, length=length),
        angle=angle,
        disturbances=setup.disturbances,
    )
    placed = masses(boom, state=state, counterweight=setup.counterweight)
    balance = overturning(
        boom,
        placed=placed,
        state=state,
        support=setup.support,
        slew=setup.slew,
        disturbances=setup.disturbances,
    )
    left = np.where(balance.lever > 0.0, balance.righting - load * balance.lever, np.inf)
    known = np.where(np.isnan(balance.lever), np.nan, left)
    return np.asarray(known.min(axis=(0, 1)))


def _radius(setup: Setup, boom: Condensed, angle: Array) -> Array:
    """Radius with the empty hook on level ground in still air: how all radii are counted [m]."""
    length = boom.layout.boom_length
    load, parts = hanging_mass(setup, length=length, angle=angle), reeved(setup, length=length)
    state = solve_state(boom, load=load, parts=parts, angle=angle, disturbances=CALM)
    return masses(boom, state=state, counterweight=setup.counterweight).head_out
