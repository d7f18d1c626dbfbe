"""The deflected boom in equilibrium: every other number follows from this one solution.

The axis bends without stretching; its rotation at every station is the unknown. The force that the
axis carries at a station has a part across the *deflected* axis; the integral of that part is the
bending moment, which bends the axis: rotation = operator x force across. That is the plane
elastica, so the second-order effect of the load and the shortening of lever arms are in it.
Sideways the same holds with small rotations.
"""

from dataclasses import dataclass, fields
from typing import Any

import numpy as np

from boomsim.machine.model import CALM, Disturbances
from boomsim.mechanics.condense import Condensed
from boomsim.mechanics.equilibrium import LuffingPlane, Sideways, Sweeps, relax
from boomsim.mechanics.geometry import Array

LARGEST_ROTATION = 0.5
"""A boom bent further than this has long left the model, and the series for its sine [rad]."""

MOST_AT_ONCE = 1024
"""Cells solved together: their arrays stay in a processor's nearer caches."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Factors:
    """Partial factors on loads: on the machine's own weight and on the gross load [1]."""

    dead: float = 1.0
    live: float = 1.0


SERVICE = Factors()


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class State:
    """The boom under load, solved; NaN where there is no solution.

    Axes of the base section: ``along`` it from the heel pin, ``above`` it in the luffing plane,
    ``left`` of it. Arrays have shape (configurations, cells) or, marked K, (configurations, K,
    cells).

    Attributes
    ----------
    angle : ndarray
        Boom angle [rad]
    load : ndarray
        Gross load [kg]
    rotation, rotation_side : ndarray, K
        Of the axis at each station [rad]
    cos, sin : ndarray, K
        Of `rotation` [1]
    across, across_side : ndarray, K
        Force across the axis from all that is outboard, without pads [N]
    force_along, force_above : ndarray, K
        The same force in axes of the base section [N]
    head_along, head_above, head_left : ndarray
        Head sheave centre [m]
    head_moment, head_moment_side, head_torsion : ndarray
        At the front of the last section [N m]
    line_pull : ndarray
        In the lead line [N]
    lug_moment : ndarray
        Forces along the boom at the luffing cylinder's lug, times its depth [N m]
    cylinder, lug_along, lug_above : ndarray
        Push of the luffing cylinder, and what the boom gets from it at its lug [N]
    converged : ndarray of bool
        False where the boom found no equilibrium: at or beyond its elastic critical load, or out
        of reach
    sweeps : int
        Iterations used
    """

    angle: Array
    load: Array
    rotation: Array
    rotation_side: Array
    cos: Array
    sin: Array
    across: Array
    across_side: Array
    force_along: Array
    force_above: Array
    head_along: Array
    head_above: Array
    head_left: Array
    head_moment: Array
    head_moment_side: Array
    head_torsion: Array
    line_pull: Array
    lug_moment: Array
    cylinder: Array
    lug_along: Array
    lug_above: Array
    converged: np.typing.NDArray[np.bool_]
    sweeps: int


def solve_state(
    boom: Condensed,
    *,
    load: Array,
    parts: int,
    angle: Array | None = None,
    radius: Array | None = None,
    factors: Factors = SERVICE,
    disturbances: Disturbances = CALM,
    start: Array | None = None,
) -> State:
    """Find the equilibrium of every cell, at a given boom angle or a given loaded radius.

    Parameters
    ----------
    boom : Condensed
        Of `c` configurations
    load : ndarray, shape (c, cells) or broadcastable
        Gross load [kg]
    parts : int
        Parts of line [1]
    angle : ndarray, optional
        Boom angle, kept [rad]
    radius : ndarray, optional
        Loaded radius, kept; the boom angle follows. Give this or `angle` [m]
    factors : Factors
        On weights and load [1]
    disturbances : Disturbances
    start : ndarray, optional
        Rotations to start from, shape (c, K, cells) [rad]

    Returns
    -------
    State

    Raises
    ------
    ValueError
        If not exactly one of `angle` and `radius` is given.
    """
    if (angle is None) == (radius is None):
        raise ValueError("Give either the boom angle or the radius, and not both.")
    held = np.asarray(angle if radius is None else radius, dtype=float)
    shape = np.broadcast_shapes(np.shape(load), held.shape, (len(boom.layout.front), 1))
    load, held = np.broadcast_to(load, shape).astype(float), np.broadcast_to(held, shape)

    def solved(cells: slice) -> State:
        plane = LuffingPlane(
            boom,
            load=load[:, cells],
            held=held[:, cells],
            hold_radius=radius is not None,
            parts=parts,
            dead=factors.dead,
            live=factors.live,
            disturbances=disturbances,
        )
        first = None if start is None else start[:, :, cells].copy()
        return _solve(plane, first)

    step = max(1, MOST_AT_ONCE // shape[0])
    pieces = [solved(slice(i, i + step)) for i in range(0, shape[1], step)]
    return pieces[0] if len(pieces) == 1 else _joined(pieces)


def _joined(pieces: list[State]) -> State:
    """Put cells that were solved apart side by side."""
    whole: dict[str, Any] = {
        field.name: np.concatenate([getattr(piece, field.name) for piece in pieces], axis=-1)
        for field in fields(State)
        if field.name != "sweeps"
    }
    return State(**whole, sweeps=max(piece.sweeps for piece in pieces))


def _solve(plane: LuffingPlane, first: Array | None) -> State:
    with np.errstate(all="ignore"):
        bent = relax(plane.turned, start=plane.start() if first is None else first)
        side = Sideways(plane)
        swayed = relax(side.turned, start=np.zeros_like(plane.cos)) if side.acts else None
    return _state(plane, side, bent, swayed)


def _state(plane: LuffingPlane, side: Sideways, bent: Sweeps, swayed: Sweeps | None) -> State:
    good = bent.converged & (np.max(np.abs(bent.rotation), axis=1) < LARGEST_ROTATION)
    nought = np.zeros_like(plane.load)
    if swayed is not None:
        good &= swayed.converged
        good &= np.max(np.abs(swayed.rotation), axis=1) < LARGEST_ROTATION
    lost = ~good

    def known(values: Array) -> Array:
        if not lost.any():
            return values
        if values.ndim == 2:
            return np.where(lost, np.nan, values)
        np.moveaxis(values, 1, -1)[lost] = np.nan
        return values

    straight = np.zeros_like(bent.rotation)
    cylinder, lug_along, lug_above = plane.lug
    return State(
        angle=known(plane.angle),
        load=plane.load,
        rotation=known(bent.rotation),
        rotation_side=straight if swayed is None else known(swayed.rotation),
        cos=known(plane.cos),
        sin=known(plane.sin),
        across=known(plane.across),
        across_side=straight if swayed is None else known(side.across),
        force_along=known(plane.along),
        force_above=known(plane.above),
        head_along=known(plane.head_along),
        head_above=known(plane.head_above),
        head_left=nought if swayed is None else known(side.head_left),
        head_moment=known(plane.head_moment),
        head_moment_side=nought if swayed is None else known(side.head_moment),
        head_torsion=nought if swayed is None else known(side.head_torsion),
        line_pull=plane.pull,
        lug_moment=known(plane.lug_moment),
        cylinder=known(cylinder),
        lug_along=known(lug_along),
        lug_above=known(lug_above),
        converged=good,
        sweeps=bent.count,
    )
