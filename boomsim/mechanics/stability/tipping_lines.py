"""Tipping lines: the sides of the polygon round the supports.

Each is given by its outward unit normal n and its distance d from the axis of rotation: points on
it have n.x = d.

Derived in docs/theory.md, section 6.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.machine.model import Support
from boomsim.mechanics.geometry import Array


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class TippingLines:
    """Sides of the support polygon, anticlockwise seen from above.

    Attributes
    ----------
    start, end : ndarray, shape (lines, 2)
        Support points that each line joins, carrier axes [m]
    normal : ndarray, shape (lines, 2)
        Outward unit normal [1]
    distance : ndarray, shape (lines,)
        From the axis of rotation [m]
    """

    start: Array
    end: Array
    normal: Array
    distance: Array


def tipping_lines(support: Support) -> TippingLines:
    """Sides of the convex polygon round the supports."""
    corners = np.array(_hull(support.points))
    ends = np.roll(corners, -1, axis=0)
    side = ends - corners
    normal = np.stack([side[:, 1], -side[:, 0]], axis=1) / np.hypot(*side.T)[:, None]
    return TippingLines(
        start=corners, end=ends, normal=normal, distance=np.sum(normal * corners, axis=1)
    )


def _hull(points: tuple[tuple[float, float], ...]) -> list[tuple[float, float]]:
    """Convex hull, anticlockwise (Andrew's monotone chain)."""

    def chain(ordered: list[tuple[float, float]]) -> list[tuple[float, float]]:
        kept: list[tuple[float, float]] = []
        for x, y in ordered:
            while len(kept) > 1 and (
                (kept[-1][0] - kept[-2][0]) * (y - kept[-2][1])
                - (kept[-1][1] - kept[-2][1]) * (x - kept[-2][0])
                <= 0.0
            ):
                kept.pop()
            kept.append((x, y))
        return kept[:-1]

    ordered = sorted(set(points))
    return chain(ordered) + chain(ordered[::-1])
