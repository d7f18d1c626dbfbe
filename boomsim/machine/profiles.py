"""Cross-sections from the figures people give: box, round tube, any convex polygon.

Pure geometry. A profile is given by its midline, so that thin-walled formulas apply; here are
also its outer and inner outlines, which decide whether one section fits into the next.
"""

import math

from boomsim.machine.model import Profile

Point = tuple[float, float]


def box(height: float, *, width: float, top: float, bottom: float, web: float) -> Profile:
    """Make a rectangular box of four plates.

    Parameters
    ----------
    height : float
        Outside [m]
    width : float
        Outside [m]
    top, bottom : float
        Thickness of the flanges [m]
    web : float
        Thickness of each of the two webs [m]

    Returns
    -------
    Profile
        Corners from bottom left, anticlockwise; plates: bottom, right web, top, left web.
        The origin is at half the outside height and width
    """
    z = (width - web) / 2
    low, high = (bottom - height) / 2, (height - top) / 2
    corners = ((-z, low), (z, low), (z, high), (-z, high))
    return Profile(corners=corners, thickness=(bottom, web, top, web), kind="box")


def tube(diameter: float, *, thickness: float, plates: int = 24) -> Profile:
    """Make a round tube as a regular polygon with the same midline perimeter, so the same area.

    Parameters
    ----------
    diameter : float
        Outside [m]
    thickness : float
        [m]
    plates : int
        Number of flat plates [1]

    Returns
    -------
    Profile
    """
    radius = (diameter - thickness) / 2 * (math.pi / plates) / math.sin(math.pi / plates)
    angles = [2 * math.pi * (k + 0.5) / plates - math.pi / 2 for k in range(plates)]
    corners = tuple((radius * math.cos(a), radius * math.sin(a)) for a in angles)
    return Profile(corners=corners, thickness=(thickness,) * plates, kind="tube")


def polygon(corners: tuple[Point, ...], *, thickness: tuple[float, ...]) -> Profile:
    """Make a profile from its midline corners.

    Parameters
    ----------
    corners : tuple of (float, float)
        (z, y) in order round the cell, either way [m]
    thickness : tuple of float
        Of plate k, from corner k to corner k + 1 [m]

    Returns
    -------
    Profile
        Corners anticlockwise
    """
    if _twice_area(corners) < 0:  # plate k joins corners k and k + 1: it must move with them
        corners, thickness = corners[::-1], (*thickness[-2::-1], thickness[-1])
    return Profile(corners=corners, thickness=thickness)


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
