"""The bent boom as points: where each section's axis, top and bottom run in the luffing plane.

Every picture of a boom under load, in figures and in the explorer, adds its rotations up here.
"""

from dataclasses import dataclass
from functools import cache

import numpy as np

from boomsim.machine.model import Machine
from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.boom.stations import NODES, SEGMENTS
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.sections.section_properties import properties

COARSE = 2
"""Pieces that each segment of a section is drawn in where nothing else is asked."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Bent:
    """A boom to draw, (out, up) in superstructure axes.

    Attributes
    ----------
    axis : ndarray, shape (sections, points, 2)
        Of each section from its tail to its front [m]
    up : ndarray, shape (sections, points, 2)
        Unit vectors across the axis, upwards [1]
    along : ndarray, shape (sections, points)
        From the section's tail [m]
    sheave, rope : ndarray, shape (2,)
        Head sheave centre; lead line at the head [m]
    """

    axis: Array
    up: Array
    along: Array
    sheave: Array
    rope: Array


def bent(
    boom: Condensed,
    *,
    angle: float,
    rotation: Array | None,
    exaggeration: float = 1.0,
    pieces: int = COARSE,
) -> Bent:
    """Add rotations up to places.

    Parameters
    ----------
    boom : Condensed
        Its first configuration is drawn
    angle : float
        Boom angle [rad]
    rotation : ndarray, shape (K,), or None
        Of the axis at each station; None is a boom that nothing bends [rad]
    exaggeration : float
        Multiplies every rotation: for small ones, the deflection [1]
    pieces : int
        That each segment is drawn in, three segments to a section
    """
    where = boom.stations.position[0].reshape(-1, SEGMENTS, NODES)
    turn = np.zeros_like(where) if rotation is None else rotation.reshape(where.shape)
    turn = angle + exaggeration * turn
    direction = np.stack([np.cos(turn), np.sin(turn)], axis=-1)
    length = where[..., -1] - where[..., 0]
    share, walked, faced = _parabola(pieces)
    steps = length[..., None, None] * (walked @ direction)
    ends = np.cumsum(steps[:, :, -1], axis=1)
    starts = np.concatenate([np.zeros_like(ends[:, :1]), ends[:, :-1]], axis=1)
    inside = (starts[:, :, None] + steps).reshape(len(where), -1, 2)
    own = np.concatenate([np.zeros((len(where), 1, 2)), inside], axis=1)
    far = where[..., :1] + length[..., None] * share
    along = np.concatenate([where[:, 0, :1], far.reshape(len(where), -1)], axis=1)
    axis = _joined(boom, own, along)
    up = _across(direction[:, 0, :1], (faced @ direction).reshape(len(where), -1, 2))
    return _finished(boom, axis, up, along, direction[-1, -1, -1])


@cache
def _parabola(pieces: int) -> tuple[Array, Array, Array]:
    """Weights of the three directions of a segment, between which the mechanics is a parabola.

    Returns
    -------
    share : ndarray, shape (pieces,)
        Of the segment's length, without its start [1]
    walked, faced : ndarray, shape (pieces, 3)
        Place from the start over the segment's length, which is Simpson's rule at its end;
        direction there [1]
    """
    t = np.arange(1, pieces + 1) / pieces
    walked = [t - 1.5 * t**2 + 2 * t**3 / 3, 2 * t**2 - 4 * t**3 / 3, 2 * t**3 / 3 - t**2 / 2]
    faced = [1 - 3 * t + 2 * t**2, 4 * t - 4 * t**2, 2 * t**2 - t]
    return t, np.stack(walked, axis=1), np.stack(faced, axis=1)


def _joined(boom: Condensed, own: Array, along: Array) -> Array:
    """Hang each section's tail where it lies in the outer section."""
    machine, tail = boom.machine, boom.layout.tail[0]
    start = np.array([machine.heel_out, machine.heel_up])
    placed = np.empty_like(own)
    for i in range(len(own)):
        placed[i] = start + own[i]
        if i + 1 < len(own):
            inner = tail[i + 1] - tail[i]
            start = _at(along[i], placed[i], float(inner))
    return placed


def _at(along: Array, points: Array, inner: float) -> Array:
    """Find a place between points of a line."""
    k = min(max(int(along.searchsorted(inner)), 1), len(along) - 1)
    span = float(along[k] - along[k - 1])
    share = min(max((inner - float(along[k - 1])) / span, 0.0), 1.0) if span > 0.0 else 0.0
    return np.asarray(points[k - 1] + share * (points[k] - points[k - 1]))


def _across(first: Array, rest: Array) -> Array:
    """Find the normals at the drawn points."""
    along = np.concatenate([first, rest], axis=1)
    along = along / np.hypot(along[..., 0], along[..., 1])[..., None]
    return np.stack([-along[..., 1], along[..., 0]], axis=-1)


def _finished(boom: Condensed, axis: Array, up: Array, along: Array, tip: Array) -> Bent:
    head, front = boom.machine.boom.head, axis[-1, -1]
    across = np.array([-tip[1], tip[0]])
    return Bent(
        axis=axis,
        up=up,
        along=along,
        sheave=front + head.ahead * tip - head.below * across,
        rope=front + head.ahead * tip + head.rope_above * across,
    )


def spot(shape: Bent, section: int, along: float) -> tuple[Array, Array]:
    """Find a place on a section's axis and the direction across it.

    Parameters
    ----------
    along : float
        From the section's tail [m]

    Returns
    -------
    ndarray, ndarray, shape (2,)
        (out, up) [m], unit vector upwards [1]
    """
    far = shape.along[section]
    k = min(max(int(far.searchsorted(along)), 1), len(far) - 1)
    span = float(far[k] - far[k - 1])
    share = min(max((along - float(far[k - 1])) / span, 0.0), 1.0) if span > 0.0 else 0.0
    axis, up = shape.axis[section], shape.up[section]
    return axis[k - 1] + share * (axis[k] - axis[k - 1]), up[k - 1] + share * (up[k] - up[k - 1])


def outlines(shape: Bent, reach: Array) -> Array:
    """Outlines of all sections.

    Parameters
    ----------
    reach : ndarray, shape (sections, 2)
        Axis to top and to bottom [m]

    Returns
    -------
    ndarray, shape (sections, 14, 2)
        Along the top and back along the bottom, not closed [m]
    """
    top = shape.axis + reach[:, 0, None, None] * shape.up
    bottom = shape.axis - reach[:, 1, None, None] * shape.up
    return np.concatenate([top, bottom[:, ::-1]], axis=1)


def heights(machine: Machine) -> Array:
    """Axis to top and to bottom of each section.

    Returns
    -------
    ndarray, shape (sections, 2)
        [m]
    """
    shapes = (properties(s.profile) for s in machine.boom.sections)
    return np.array([(p.top, p.bottom) for p in shapes])
