"""Where the sections lie, and the angle that puts the load at a wanted radius.

Derived in docs/theory.md, section 1.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from boomsim.machine.model import Boom

Array = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Layout:
    """Positions along the undeflected boom axis, measured from the heel pin.

    Attributes
    ----------
    extension : ndarray, shape (configurations, moving sections)
        How far each moving section is out, as a fraction of its stroke [1]
    front, tail : ndarray, shape (configurations, sections)
        Of each section [m]
    overlap : ndarray, shape (configurations, sections)
        Length inside the outer section; 0 for the base section [m]
    boom_length : ndarray, shape (configurations,)
        Heel pin centre to head sheave centre [m]
    """

    extension: Array
    front: Array
    tail: Array
    overlap: Array
    boom_length: Array


def layout(boom: Boom, *, extension: ArrayLike) -> Layout:
    """Lay out the sections.

    front[i] = front[i-1] + nose[i] + stroke[i] extension[i]; tail[i] = front[i] - length[i];
    overlap[i] = front[i-1] - tail[i].

    Parameters
    ----------
    extension : array_like, shape (moving sections,) or (configurations, moving sections)
        Fraction of each stroke, base side first [1]

    Raises
    ------
    ValueError
        If an extension is not between 0 and 1, or there is not one for each moving section.
    """
    fractions = np.atleast_2d(np.asarray(extension, dtype=float))
    moving = len(boom.sections) - 1
    if fractions.shape[-1] != moving:
        raise ValueError(
            f"The boom has {moving} moving sections and the extension has "
            f"{fractions.shape[-1]} values. Give one for each moving section, base side first."
        )
    if not np.all((fractions >= 0.0) & (fractions <= 1.0)):
        bad = fractions[~((fractions >= 0.0) & (fractions <= 1.0))][0]
        raise ValueError(
            f"An extension of {bad:g} is outside 0 to 1 (0 % to 100 % of the stroke). "
            "Give the fraction of the stroke that is out."
        )
    length = np.array([s.length for s in boom.sections])
    stroke = np.array([s.stroke for s in boom.sections])
    nose = np.array([s.nose for s in boom.sections])
    step = np.concatenate(
        [np.full((len(fractions), 1), length[0]), nose[1:] + stroke[1:] * fractions], axis=1
    )
    front = np.cumsum(step, axis=1)
    tail = front - length
    overlap = np.zeros_like(front)
    overlap[:, 1:] = front[:, :-1] - tail[:, 1:]
    return Layout(
        extension=fractions,
        front=front,
        tail=tail,
        overlap=overlap,
        boom_length=front[:, -1] + boom.head.ahead,
    )


def direction_at_radius(*, reach: Array, along: Array, above: Array) -> tuple[Array, Array]:
    """Cosine and sine of the boom angle at which a point of the boom is at a horizontal distance.

    along cos - above sin = reach, the root with the boom up: sin = (along q - above reach)/r2 and
    cos = (along reach + above q)/r2 with r2 = along2 + above2 and q2 = r2 - reach2.

    Parameters
    ----------
    reach : ndarray
        Wanted horizontal distance from the heel pin [m]
    along, above : ndarray
        The point in axes of the base section: along it, and upwards from it [m]

    Returns
    -------
    cos, sin : ndarray
        Of the boom angle; with the point as far out or in as it can be, level with the heel pin,
        where that is not far enough [1]
    """
    square = along * along + above * above
    farthest = np.sqrt(square)
    reach = np.clip(reach, -farthest, farthest)
    # Rounding may leave less than nought at the very edge.
    beside = np.sqrt(np.maximum(square - reach * reach, 0.0))
    return (
        (along * reach + above * beside) / square,
        (along * beside - above * reach) / square,
    )


def angle_at_radius(*, reach: Array, along: Array, above: Array) -> Array:
    """Boom angle at which a point of the boom stands at a horizontal distance from the heel pin.

    Parameters
    ----------
    reach : ndarray
        Wanted horizontal distance from the heel pin [m]
    along, above : ndarray
        The point in axes of the base section: along it, and upwards from it [m]

    Returns
    -------
    ndarray
        Boom angle, see :func:`direction_at_radius`; NaN where there is none [rad]
    """
    cos, sin = direction_at_radius(reach=reach, along=along, above=above)
    is_there = np.abs(reach) <= np.hypot(along, above)
    return np.where(is_there, np.arctan2(sin, cos), np.nan)
