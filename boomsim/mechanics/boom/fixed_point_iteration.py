"""Fixed-point iteration for the axis rotations (Aitken).

Derived in docs/theory.md, section 3.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from boomsim.mechanics.geometry import Array

TOLERANCE = 1e-6
"""Last change of the rotations over the rotations, root mean square [1]."""

STRAIGHT = 1e-12
"""A boom bent less than this is straight [rad]."""

MOST_SWEEPS = 60

MOST_RELAXED = 100.0
"""Largest step over the residual: a boom at 99 % of its critical load needs a hundredfold [1]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Sweeps:
    """Where an iteration ended.

    Attributes
    ----------
    rotation : ndarray, shape (configurations, K, cells)
        [rad]
    squares : ndarray, shape (configurations, cells)
        Sum of the squares of a cell's rotations [rad2]
    converged : ndarray of bool, shape (configurations, cells)
    count : int
        Sweeps used
    """

    rotation: Array
    squares: Array
    converged: np.typing.NDArray[np.bool_]
    count: int


def relax(
    turned: Callable[[Array, Array], None],
    *,
    start: Array,
    tolerance: float = TOLERANCE,
    most: int = MOST_SWEEPS,
) -> Sweeps:
    """Iterate rotation = turned(rotation) in every cell at once.

    Aitken's relaxation for vectors, each cell for itself: omega_n = -omega_(n-1)
    <r_(n-1), r_n - r_(n-1)> / |r_n - r_(n-1)|2 with the residual r (Kuettler and Wall,
    Computational Mechanics 43, 2008, from memory).

    Parameters
    ----------
    turned : callable
        Writes new rotations for old ones into its second argument [rad]
    start : ndarray, shape (configurations, K, cells)
        Overwritten [rad]
    tolerance : float
        Last change of the rotations over the rotations, root mean square [1]
    most : int
        Sweeps after which a cell counts as not converged
    """
    rotation = start
    residual = before = np.empty_like(start)
    omega = np.ones((start.shape[0], start.shape[2]))
    straight = STRAIGHT**2 * start.shape[1]
    for count in range(1, most + 1):
        turned(rotation, residual)
        residual -= rotation
        size, squares = _product(residual, residual), _product(rotation, rotation)
        settled = size < tolerance**2 * squares + straight
        if (settled | np.isnan(size)).all():
            break
        if count == 1:
            before = np.empty_like(start)
            rotation += residual
        else:
            omega = _omega(omega, before, residual)
            np.multiply(omega[:, None], residual, out=before)
            rotation += before
        residual, before = before, residual
    return Sweeps(rotation=rotation, squares=squares, converged=settled, count=count)


def _omega(omega: Array, before: Array, residual: Array) -> Array:
    """Step over the residual; `before` is lost."""
    before -= residual
    bottom = _product(before, before)
    # r_(n-1).(r_n - r_(n-1)) = -(before.residual + before.before), before being r_(n-1) - r_n.
    new = omega * (_product(before, residual) + bottom) / bottom
    # A cell that has settled divides nought by nought; a wild one is held back.
    return np.where(np.isfinite(new), new.clip(0.05, MOST_RELAXED), 1.0)


def _product(one: Array, other: Array) -> Array:
    return np.asarray(np.einsum("ckr,ckr->cr", one, other))
