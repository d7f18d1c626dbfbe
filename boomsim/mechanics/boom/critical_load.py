"""How near a boom is to its elastic critical load, in the luffing plane and sideways.

A boom that leans by a rotation is pressed across its axis by the thrust times that rotation, and
bends by what the operators make of it. The critical load factor is the reciprocal of the largest
eigenvalue of this map. It is sought by Arnoldi's method in three steps, from what the shape of a
force across the head becomes.

The head ahead of the last front leans with it, as a rigid end of the column. The rope, which pulls
from the head to the winch, rights the boom.

Derived in docs/theory.md, section 5.
"""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from boomsim.mechanics.boom.boom_state import State
from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.boom.internal_forces import Forces
from boomsim.mechanics.geometry import Array

STEPS = 3
"""Two leave a tenth where the rope rights nearly all; what three leave, a test says. Three from the
head's own shape leave 3 % of a boom that is all in, whose slenderest section buckles by itself."""

SEARCHES = 4
"""As many as may go on side by side, each with a boom of its own."""


def critical_ratio(boom: Condensed, *, state: State, forces: Forces) -> Array:
    """Load over elastic critical load, the larger of both planes.

    Returns
    -------
    ndarray, shape (configurations, cells)
        1/lambda; one means that the boom buckles [1]
    """
    pull = state.line_pull / np.maximum(state.head_along, 1e-3)
    return np.asarray(_Leaning(_planes(boom), forces.axial, pull).ratio().max(axis=0))


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class _Planes:
    """What leaning takes of a boom; axis 0 is the luffing plane and sideways.

    Attributes
    ----------
    bent : ndarray, shape (2, configurations, K, K + 2)
        Rotation by the thrust that leans, by the rope at the head, and by the moment of both there
    first : ndarray, shape (2, configurations, K, 1)
        Shape of a force across the head
    weight, path : ndarray, shapes (configurations, K, 1) and (configurations, 1, K)
        Lengths that the stations stand for, and weights that sum rotations up to the head [m]
    ahead : float
        Of the last front, the head [m]
    """

    bent: Array
    first: Array
    weight: Array
    path: Array
    ahead: float


@lru_cache(maxsize=SEARCHES)
def _planes(boom: Condensed) -> _Planes:
    """Both planes; kept, for a search asks for one boom many times."""
    ahead, planes = boom.machine.boom.head.ahead, (boom.up, boom.side)
    rotation = np.stack([plane.rotation for plane in planes])
    at_head = np.stack([plane.rotation_head for plane in planes])
    pulled = rotation @ boom.stations.beyond
    return _Planes(
        bent=np.concatenate([-rotation, -pulled, at_head], axis=3),
        first=pulled + at_head * ahead,
        weight=boom.stations.weight.reshape(len(boom.path), -1, 1),
        path=boom.path,
        ahead=ahead,
    )


class _Leaning:
    """A boom that leans in either plane. Shapes are rotations, (2, configurations, K, cells)."""

    def __init__(self, planes: _Planes, axial: Array, rope: Array) -> None:
        self.planes, self.axial, self.rope = planes, axial, rope[:, None]
        self.forces = np.empty((2, len(axial), axial.shape[1] + 2, axial.shape[2]))

    def ratio(self) -> Array:
        """Largest share of itself that a shape gets back, shape (2, configurations, cells).

        Each shape is what is new in that which the one before it gets back, and not scaled.
        """
        back = np.zeros((STEPS, STEPS, 2, len(self.axial), self.axial.shape[2]))
        new, shapes = self._given_back(self.planes.first), []
        for k in range(STEPS):
            weighted = self.planes.weight * new
            size = _common(weighted, new)
            # Where nothing new is left, there is no next shape: nought, and it gets back nought.
            one_over = np.divide(1.0, size, out=np.zeros_like(size), where=size > 0.0)
            shapes.append((new, weighted, one_over))
            new = self._given_back(new)
            for i, (known, heavy, over) in enumerate(shapes):
                back[i, k] = _common(heavy, new) * over
                if k + 1 < STEPS:
                    new -= back[i, k][:, :, None] * known
            if k + 1 < STEPS:
                back[k + 1, k] = 1.0
        return _largest(back)

    def _given_back(self, rotation: Array) -> Array:
        """How a boom bends that leans so."""
        size, ahead, end = rotation.shape[2], self.planes.ahead, rotation[:, :, -1:]
        righting = self.rope * (self.planes.path @ rotation + ahead * end)
        np.multiply(self.axial, rotation, out=self.forces[:, :, :size])
        self.forces[:, :, size] = righting[:, :, 0]
        thrust = self.axial[:, -1:] * end + righting
        self.forces[:, :, size + 1] = -ahead * thrust[:, :, 0]
        return np.asarray(self.planes.bent @ self.forces)


def _common(weighted: Array, other: Array) -> Array:
    """Product of two shapes, summed along the boom, shape (2, configurations, cells) [m]."""
    return np.asarray(np.einsum("pckr,pckr->pcr", weighted, other))


def _largest(back: Array) -> Array:
    """Largest real eigenvalue of matrices of three rows, shape (3, 3, ...), from their cubic.

    Source: Cardano's and Viete's formulas.
    """
    (a, b, c), (d, e, f), (_, h, i) = back
    third = (a + e + i) / 3.0
    minors = a * e - b * d + a * i + e * i - f * h
    product = a * (e * i - f * h) - d * (b * i - c * h)
    # (third + x)3 without its square: x3 - 3 p x - 2 q.
    p = third * third - minors / 3.0
    q = third * (third * third - minors / 2.0) + product / 2.0
    beyond = q * q - p * p * p
    root = np.sqrt(np.maximum(beyond, 0.0))
    one = np.cbrt(q + root) + np.cbrt(q - root)
    size = np.sqrt(np.maximum(p, 0.0))
    turn = np.arccos(np.clip(q / np.where(size > 0.0, size * p, 1.0), -1.0, 1.0)) / 3.0
    return np.asarray(third + np.where(beyond > 0.0, one, 2.0 * size * np.cos(turn)))
