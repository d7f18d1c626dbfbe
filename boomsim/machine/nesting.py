"""Whether a profile is one convex cell, and whether it fits into another. Pure geometry."""

import math
from collections.abc import Iterator, Sequence
from itertools import product

from boomsim.machine.model import Profile
from boomsim.machine.outline import Edge, Point, offset_edges, outline, signed_area

SAME = 1e-4
"""Corners and their mirror images may differ by this much [m]."""


def outer_size(profile: Profile) -> tuple[float, float]:
    """Outside width and height.

    Returns
    -------
    (float, float)
        Width, height [m]
    """
    return _extent(outline(_faces(profile, outside=True)))


def inner_size(profile: Profile) -> tuple[float, float]:
    """Clear inside width and height.

    Returns
    -------
    (float, float)
        Width, height [m]
    """
    return _extent(outline(_faces(profile, outside=False)))


def is_convex(corners: tuple[Point, ...]) -> bool:
    """Whether the corners go once round a convex cell.

    Parameters
    ----------
    corners : tuple of (float, float)
        Either way round, no two in a row the same [m]

    Returns
    -------
    bool
        Straight-on corners are allowed
    """
    turns = [_turn(corners[k - 2], corners[k - 1], corners[k]) for k in range(len(corners))]
    way = math.copysign(1.0, sum(turns))
    return all(way * t > -1e-9 for t in turns) and math.isclose(way * sum(turns), 2 * math.pi)


def flat_plate(profile: Profile) -> int | None:
    """Find a plate without length.

    Returns
    -------
    int or None
        Number of its first corner
    """
    lengths = [math.dist(a, b) for a, b, _ in _plates(profile)]
    return next((k for k, length in enumerate(lengths) if length < SAME), None)


def has_room(profile: Profile) -> bool:
    """Whether every plate has a clear width left between its neighbours.

    Parameters
    ----------
    profile : Profile
        Convex
    """
    faces = zip(_plates(profile), _faces(profile, outside=False), strict=True)
    return all(_dot(_minus(b, a), _minus(d, c)) > 0 for (a, b, _), (c, d) in faces)


def lone_corner(profile: Profile) -> int | None:
    """Find a plate without a mirror image on the other side of z = 0.

    Returns
    -------
    int or None
        Number of its first corner
    """
    plates = list(_plates(profile))
    for k, (a, b, t) in enumerate(plates):
        mirror = ((-b[0], b[1]), (-a[0], a[1]))
        if not any(
            math.dist(c, mirror[0]) < SAME
            and math.dist(d, mirror[1]) < SAME
            and abs(u - t) < 1e-3 * t
            for c, d, u in plates
        ):
            return k
    return None


def vertical_play(inner: Profile, outer: Profile) -> float:
    """How far one profile can move up and down inside another; negative if it does not fit.

    Each corner of the inner one's outside must stay on the inner side of each plate of the outer
    one; sideways the two are centred on z = 0.

    Parameters
    ----------
    inner, outer : Profile
        Convex

    Returns
    -------
    float
        [m]; minus infinity when it is too wide
    """
    walls = _faces(outer, outside=False)
    corners = outline(_faces(inner, outside=True))
    way = math.copysign(1.0, signed_area(outer.corners))
    lowest, highest = -math.inf, math.inf
    for (start, end), corner in product(walls, corners):
        length = math.dist(start, end)
        along = _minus(end, start)
        room = way * _cross(along, _minus(corner, start)) / length
        rise = way * along[0] / length  # how fast the room grows as the inner one moves up
        if abs(rise) < 1e-9:
            lowest = lowest if room >= 0 else math.inf
        elif rise > 0:
            lowest = max(lowest, -room / rise)
        else:
            highest = min(highest, -room / rise)
    return highest - lowest


def _plates(profile: Profile) -> Iterator[tuple[Point, Point, float]]:
    """Start, end and thickness of each plate."""
    following = (*profile.corners[1:], profile.corners[0])
    return zip(profile.corners, following, profile.thickness, strict=True)


def _faces(profile: Profile, *, outside: bool) -> list[Edge]:
    """Outer or inner face of each plate, half its thickness from the midline."""
    side = 0.5 if outside else -0.5
    return offset_edges(profile.corners, [side * t for t in profile.thickness])


def _extent(corners: Sequence[Point]) -> tuple[float, float]:
    """Width and height over all corners [m]."""
    z, y = zip(*corners, strict=True)
    return max(z) - min(z), max(y) - min(y)


def _minus(a: Point, b: Point) -> Point:
    return a[0] - b[0], a[1] - b[1]


def _cross(a: Point, b: Point) -> float:
    return a[0] * b[1] - a[1] * b[0]


def _dot(a: Point, b: Point) -> float:
    return a[0] * b[0] + a[1] * b[1]


def _turn(a: Point, b: Point, c: Point) -> float:
    """Angle by which the way turns left at b [rad]."""
    before, after = _minus(b, a), _minus(c, b)
    return math.atan2(_cross(before, after), _dot(before, after))
