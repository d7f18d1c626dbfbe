"""Cross-sections from the figures people give: box, round tube, any convex polygon.

Pure geometry. A profile is given by its midline, so that thin-walled formulas apply; here are
also its outer and inner outlines, which decide whether one section fits into the next.
"""

import math
from collections.abc import Sequence
from math import cos, pi, sin, sqrt, tan

from boomsim.machine.model import Profile

Point = tuple[float, float]

TUBE_SIDES = 24
"""A multiple of four puts a flat at the top, the bottom and both sides."""


def box(height: float, *, width: float, top: float, bottom: float, web: float) -> Profile:
    """Rectangular box of four plates; corners run anticlockwise from the bottom left.

    Parameters
    ----------
    height, width : float
        Over the outside [m]
    top, bottom : float
        Thickness of the top and bottom plates [m]
    web : float
        Thickness of each of the two webs [m]

    Returns
    -------
    Profile
        Plates in the order bottom, right web, top, left web [m]

    Examples
    --------
    >>> box(0.5, width=0.4, top=0.01, bottom=0.01, web=0.01).corners[0]
    (-0.195, -0.245)
    """
    side, low, high = (width - web) / 2.0, (bottom - height) / 2.0, (height - top) / 2.0
    corners = ((-side, low), (side, low), (side, high), (-side, high))
    return Profile(corners=corners, thickness=(bottom, web, top, web), kind="box")


def tube(diameter: float, *, wall: float) -> Profile:
    r"""Round tube as a regular polygon of 24 plates, flats at top, bottom and sides.

    Plate thickness t' and apothem a are chosen so that area and second moment are exactly the
    round tube's. With T = tan(pi/n), R the mean radius and t the wall,
    ``A = 2 n T a t'`` and ``I = (A/4)(1 + T^2/3)(2 a^2 + t'^2/2)``. Then t' and the extreme
    fibres are 0.3 % less than the tube's.

    Parameters
    ----------
    diameter : float
        Over the outside [m]
    wall : float
        Wall thickness [m]

    Returns
    -------
    Profile
        The polygon [m]
    """
    if not 0 < wall < diameter / 2:
        raise ValueError(
            f"A tube of {diameter} m diameter cannot have a wall of {wall} m: "
            "the wall must be positive and less than half the diameter."
        )
    n, t, T = TUBE_SIDES, wall, tan(pi / TUBE_SIDES)
    R = (diameter - t) / 2.0
    product = pi * R * t / (n * T)
    K = (2.0 * R**2 + t**2 / 2.0) / (1.0 + T**2 / 3.0)
    if not K > 2.0 * product:
        raise ValueError(f"A wall of {wall} m is too thick for a tube of {diameter} m: use less.")
    a = sqrt((K + sqrt(K**2 - 4.0 * product**2)) / 4.0)
    turns = [2.0 * pi * (k + 0.5) / n for k in range(n)]
    reach = a / cos(pi / n)
    corners = tuple((reach * cos(turn), reach * sin(turn)) for turn in turns)
    return Profile(corners=corners, thickness=(product / a,) * n, kind="tube")


def polygon(corners: Sequence[Point], *, thickness: float | Sequence[float]) -> Profile:
    """Closed polygon of flat plates.

    Parameters
    ----------
    corners : sequence of (float, float)
        Midline corners (z, y), in order either way round, shape (n, 2) [m]
    thickness : float or sequence of float
        Of all plates, or of plate k from corner k to corner k + 1 [m]

    Returns
    -------
    Profile
        The polygon [m]
    """
    points = tuple((float(z), float(y)) for z, y in corners)
    each = (thickness,) * len(points) if isinstance(thickness, int | float) else thickness
    return Profile(corners=points, thickness=tuple(map(float, each)), kind="polygon")


def plate_area(profile: Profile) -> float:
    """Area of the plates.

    Parameters
    ----------
    profile : Profile

    Returns
    -------
    float
        Sum of thickness times midline length [m2]
    """
    ends = zip(profile.corners, _next(profile.corners), profile.thickness, strict=True)
    return sum(math.dist(a, b) * t for a, b, t in ends)


def outline(profile: Profile, *, outside: bool) -> tuple[Point, ...]:
    """Outer or inner outline: each plate moved by half its thickness, then met with its neighbour.

    Parameters
    ----------
    profile : Profile
        Corners anticlockwise
    outside : bool
        Outer or inner side

    Returns
    -------
    tuple of (float, float)
        (z, y) of each corner [m]
    """
    side = 0.5 if outside else -0.5
    plates = list(zip(profile.corners, _next(profile.corners), profile.thickness, strict=True))
    lines = [_moved(a, b, side * t) for a, b, t in plates]
    return tuple(_meet(lines[k - 1], lines[k]) for k in range(len(lines)))


def outer_size(profile: Profile) -> tuple[float, float]:
    """Outside width and height.

    Parameters
    ----------
    profile : Profile

    Returns
    -------
    (float, float)
        Width, height [m]
    """
    return _extent(outline(profile, outside=True))


def inner_size(profile: Profile) -> tuple[float, float]:
    """Clear inside width and height.

    Parameters
    ----------
    profile : Profile

    Returns
    -------
    (float, float)
        Width, height [m]
    """
    return _extent(outline(profile, outside=False))


def is_convex(corners: tuple[Point, ...]) -> bool:
    """Whether the corners go once round a convex cell.

    Parameters
    ----------
    corners : tuple of (float, float)
        Anticlockwise [m]

    Returns
    -------
    bool
        Straight-on corners are allowed; so many turns that the cell closes twice are not
    """
    turns = [_turn(corners[k - 2], corners[k - 1], corners[k]) for k in range(len(corners))]
    return all(turn > -1e-9 for turn in turns) and math.isclose(sum(turns), 2 * math.pi)


def vertical_play(inner: Profile, outer: Profile) -> float:
    """How far one profile can move up and down inside another; negative if it does not fit.

    Each corner of the inner one's outside must stay on the inner side of each plate of the outer
    one; sideways the two are centred on z = 0.

    Parameters
    ----------
    inner, outer : Profile
        Convex, corners anticlockwise

    Returns
    -------
    float
        [m]; minus infinity when it is too wide
    """
    inside = outline(outer, outside=False)
    lowest, highest = -math.inf, math.inf
    for (az, ay), (bz, by) in zip(inside, _next(inside), strict=True):
        ez, ey = bz - az, by - ay
        for z, y in outline(inner, outside=True):
            room = (ez * (y - ay) - ey * (z - az)) / math.hypot(ez, ey)
            rise = ez / math.hypot(ez, ey)
            if abs(rise) < 1e-9:
                if room < 0:
                    return -math.inf
            elif rise > 0:
                lowest = max(lowest, -room / rise)
            else:
                highest = min(highest, -room / rise)
    return highest - lowest


def _next(corners: tuple[Point, ...]) -> tuple[Point, ...]:
    """Return the same corners, each replaced by the one after it."""
    return (*corners[1:], corners[0])


def _twice_area(corners: tuple[Point, ...]) -> float:
    """Twice the enclosed area, positive when anticlockwise [m2]."""
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(corners, _next(corners), strict=True))


def _extent(corners: tuple[Point, ...]) -> tuple[float, float]:
    """Width and height over all corners [m]."""
    z, y = zip(*corners, strict=True)
    return max(z) - min(z), max(y) - min(y)


def _turn(a: Point, b: Point, c: Point) -> float:
    """Angle by which the way turns left at b [rad]."""
    before = math.atan2(b[1] - a[1], b[0] - a[0])
    after = math.atan2(c[1] - b[1], c[0] - b[0])
    return (after - before + math.pi) % (2 * math.pi) - math.pi


def _moved(a: Point, b: Point, outwards: float) -> tuple[Point, Point]:
    """Move the line from a to b to its right, which is outwards when anticlockwise."""
    length = math.dist(a, b)
    z, y = (b[1] - a[1]) / length * outwards, (a[0] - b[0]) / length * outwards
    return (a[0] + z, a[1] + y), (b[0] + z, b[1] + y)


def _meet(before: tuple[Point, Point], after: tuple[Point, Point]) -> Point:
    """Where two lines meet; plates in one line have no crossing, so take the later one's start."""
    (a, b), (c, d) = before, after
    uz, uy, vz, vy = b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]
    cross = uz * vy - uy * vz
    if abs(cross) < 1e-9 * math.hypot(uz, uy) * math.hypot(vz, vy):
        return c
    share = ((c[0] - a[0]) * vy - (c[1] - a[1]) * vz) / cross
    return (a[0] + share * uz, a[1] + share * uy)
