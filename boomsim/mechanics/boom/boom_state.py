"""The deflected boom in equilibrium: every other number follows from this one solution.

The axis bends, shears and stretches; its rotation at every station is the unknown. The force that
the axis carries at a station has a part across the *deflected* axis; the integral of that part is
the bending moment, which bends the axis: rotation = operator x force across. That is the plane
elastica, so the second-order effect of the load and the shortening of lever arms are in it.
Sideways the same holds with small rotations.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from boomsim.machine.model import CALM, Disturbances
from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.boom.load_cases import Lifts
from boomsim.mechanics.boom.second_order import solve
from boomsim.mechanics.geometry import Array


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
    strain : ndarray, shape (configurations, sections + 1, cells)
        Of the axis from the heel pin to the lug, on to section 1's tail, and of each moving section
        up to the next one's tail; pressed is negative [1]
    across, across_side : ndarray, K
        Force across the axis from all that is outboard, without pads [N]
    acting : ndarray, shape (configurations, K + 2 + parts, cells)
        All that bends the axis: `across`, the moment at the head, forces across that stand for the
        longer arms of the stretched axis, and the moment at the lug [N], [N m]
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
    strain: Array
    across: Array
    across_side: Array
    acting: Array
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
    converged: NDArray[np.bool_]
    sweeps: int


def solve_state(
    boom: Condensed,
    *,
    load: Array,
    parts: int | NDArray[np.int_],
    angle: Array | None = None,
    radius: Array | None = None,
    factors: Factors = SERVICE,
    disturbances: Disturbances = CALM,
    start: Array | None = None,
    start_side: Array | None = None,
) -> State:
    """Find the equilibrium of every cell, at a given boom angle or a given loaded radius.

    Parameters
    ----------
    boom : Condensed
        Of `c` configurations
    load : ndarray, shape (c, cells) or broadcastable
        Gross load [kg]
    parts : int or ndarray of int, shape (c,)
        Parts of line [1]
    angle : ndarray, optional
        Boom angle, kept [rad]
    radius : ndarray, optional
        Loaded radius, kept; the boom angle follows. Give this or `angle` [m]
    factors : Factors
        On weights and load [1]
    start, start_side : ndarray, optional
        Rotations to start from, in the luffing plane and sideways, shape (c, K, cells) [rad]

    Raises
    ------
    ValueError
        If not exactly one of `angle` and `radius` is given.
    """
    if (angle is None) == (radius is None):
        raise ValueError("Give either the boom angle or the radius, and not both.")
    held = np.asarray(angle if radius is None else radius, dtype=float)
    shape = np.broadcast_shapes(np.shape(load), held.shape, (len(boom.layout.front), 1))
    lifts = Lifts(
        boom=boom,
        load=np.broadcast_to(load, shape).astype(float),
        held=np.broadcast_to(held, shape),
        hold_radius=radius is not None,
        parts=np.broadcast_to(parts, shape[:1]),
        dead=factors.dead,
        live=factors.live,
        disturbances=disturbances,
    )
    kept, found = solve(lifts, start=start, start_side=start_side)
    size = kept.rotation.shape[1]
    return State(
        rotation=kept.rotation,
        rotation_side=kept.rotation_side,
        cos=kept.direction[0],
        sin=kept.direction[1],
        across=kept.acting[:, :size],
        across_side=kept.across_side,
        acting=kept.acting[:, : boom.bending.shape[2]],
        force_along=kept.force[0],
        force_above=kept.force[1],
        **found,
    )
