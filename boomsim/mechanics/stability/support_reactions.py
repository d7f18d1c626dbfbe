"""What each support carries, on springs that can push and cannot pull.

Derived in docs/theory.md, section 6.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.machine.model import Support
from boomsim.mechanics.geometry import Array


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Reactions:
    """Of the supports, the carrier being rigid.

    Attributes
    ----------
    force : ndarray, shape (supports, …)
        Of each support; NaN where the crane tips [N]
    lifted : ndarray of bool, shape (supports, …)
        Supports that have left the ground
    lean_x, lean_y : ndarray
        Slope of the carrier from sinking supports, downhill along x and y [rad]
    tipped : ndarray of bool
        The resultant lies outside the support polygon: nothing can hold it
    """

    force: Array
    lifted: Array
    lean_x: Array
    lean_y: Array
    tipped: Array


def support_reactions(support: Support, *, weight: Array, x: Array, y: Array) -> Reactions:
    """Share a resultant among the supports.

    Each support sinks by w = a + b x + c y and pushes with its stiffness times w where w > 0. The
    set that pushes is found by letting go of supports that would pull, until none does; where none
    would with all of them, that is at once.

    Parameters
    ----------
    support : Support
    weight : ndarray
        Vertical resultant, downwards positive [N]
    x, y : ndarray
        Where it acts, carrier axes [m]
    """
    points = np.array(support.points)
    weight, x, y = np.broadcast_arrays(weight, x, y)
    columns = np.concatenate([np.ones((len(points), 1)), points], axis=1)
    right = np.stack([weight, weight * x, weight * y], axis=-1)
    pushes = np.ones((*weight.shape, len(points)), dtype=bool)
    stiffness = support.stiffness * np.ones(len(points))
    plane = right @ np.linalg.inv(_matrix(columns, stiffness, unloaded=stiffness))
    pulled = ~np.all(plane @ columns.T > 0.0, axis=-1)
    pushes[pulled], plane[pulled] = _let_go(columns, stiffness, right[pulled])
    force = np.where(pushes, stiffness * (plane @ columns.T), 0.0)
    # Fewer than three pushing supports, or a sum that misses the weight: nothing holds the crane.
    missing = np.abs(force.sum(axis=-1) - weight) > 1e-6 * np.abs(weight)
    tipped = missing | (pushes.sum(axis=-1) < 3) | ~np.isfinite(weight)
    force = np.where(tipped[..., None], np.nan, force)
    return Reactions(
        force=np.moveaxis(force, -1, 0),
        lifted=np.moveaxis(~pushes, -1, 0),
        lean_x=np.where(tipped, np.nan, plane[..., 1]),
        lean_y=np.where(tipped, np.nan, plane[..., 2]),
        tipped=tipped,
    )


def _let_go(columns: Array, stiffness: Array, right: Array) -> tuple[np.ndarray, Array]:
    """Let go of supports that would pull: which push, and a, b, c of their sinking."""
    pushes, plane = np.ones((len(right), len(columns)), dtype=bool), np.empty_like(right)
    # What has found its set keeps it, so only the others are tried again.
    left = np.arange(len(right))
    for _ in range(2 * len(columns)):
        plane[left] = _sinking(columns, pushes[left], stiffness, right[left])
        now = plane[left] @ columns.T > 0.0
        moved = np.any(now != pushes[left], axis=1)
        pushes[left] = now
        left = left[moved]
        if not left.size:
            break
    plane[left] = _sinking(columns, pushes[left], stiffness, right[left])
    return pushes, plane


def _matrix(columns: Array, stiffness: Array, *, unloaded: Array) -> Array:
    matrix = np.einsum("s,si,sj->ij", stiffness, columns, columns)
    # A touch of the unloaded stiffness keeps a nearly tipped crane's matrix regular.
    return np.asarray(matrix + 1e-12 * np.max(unloaded, initial=1.0) * np.eye(3))


def _sinking(columns: Array, pushes: np.ndarray, stiffness: Array, right: Array) -> Array:
    """Many have the same supports on the ground, and so one matrix between them."""
    _, first, which = np.unique(
        pushes @ (1 << np.arange(len(columns))), return_index=True, return_inverse=True
    )
    plane = np.empty_like(right)
    for k, row in enumerate(first):
        matrix = _matrix(columns, pushes[row] * stiffness, unloaded=stiffness)
        plane[which == k] = right[which == k] @ np.linalg.inv(matrix)
    return plane


def ground_pressure(force: Array, *, area: float) -> Array:
    """Even pressure under a float or mat, force/area.

    Parameters
    ----------
    force : ndarray
        On the float [N]
    area : float
        Of the float or mat [m2]

    Returns
    -------
    ndarray
        Pressure [Pa]
    """
    return force / area
