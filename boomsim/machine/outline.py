"""Polygons of a cross-section: outlines beside a midline, and the integrals over them.

A point is (z, y): across and up, as in :class:`boomsim.machine.model.Profile`.
"""

from collections.abc import Sequence
from math import dist, hypot

from boomsim.machine.model import Profile

Point = tuple[float, float]
Edge = tuple[Point, Point]

NEARLY_STRAIGHT = 0.9
"""Cosine of the turn above which two plates of unequal thickness may meet in a step."""

LONGEST_MITRE = 1.5
"""A nearly straight corner whose mitre is longer than this many half thicknesses is a step."""


def signed_area(points: Sequence[Point]) -> float:
    """Area inside a polygon, positive when its corners run anticlockwise (z right, y up).

    Parameters
    ----------
    points : sequence of (float, float)
        Corners (z, y) in order [m]

    Returns
    -------
    float
        Half the sum of z_k y_(k+1) - z_(k+1) y_k [m2]

    Examples
    --------
    >>> signed_area([(0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (0.0, 1.0)])
    2.0
    """
    return area_moments(points)[0]


def area_moments(points: Sequence[Point]) -> tuple[float, float, float, float, float, float]:
    """Integrals over a polygon by Green's theorem; all negative for clockwise corners.

    Parameters
    ----------
    points : sequence of (float, float)
        Corners (z, y) in order, shape (n, 2) [m]

    Returns
    -------
    tuple of float
        Integrals of 1 [m2], z [m3], y [m3], z^2 [m4], y^2 [m4], z y [m4]

    Examples
    --------
    A rectangle 2 wide and 1 high on the z axis: the integral of y^2 is b h^3 / 3.

    >>> area_moments([(0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (0.0, 1.0)])[4]  # doctest: +ELLIPSIS
    0.6666...
    """
    area = of_z = of_y = of_zz = of_yy = of_zy = 0.0
    z1, y1 = points[-1]
    for z2, y2 in points:
        cross = z1 * y2 - z2 * y1
        area += cross / 2.0
        of_z += cross * (z1 + z2) / 6.0
        of_y += cross * (y1 + y2) / 6.0
        of_zz += cross * (z1 * z1 + z1 * z2 + z2 * z2) / 12.0
        of_yy += cross * (y1 * y1 + y1 * y2 + y2 * y2) / 12.0
        of_zy += cross * (z1 * y2 + 2.0 * (z1 * y1 + z2 * y2) + z2 * y1) / 24.0
        z1, y1 = z2, y2
    return area, of_z, of_y, of_zz, of_yy, of_zy


def outward_normals(corners: Sequence[Point]) -> list[Point]:
    """Find the unit normal of every edge, pointing out of the polygon.

    Parameters
    ----------
    corners : sequence of (float, float)
        Corners (z, y) in order, either way round [m]

    Returns
    -------
    list of (float, float)
        Of edge k, from corner k to corner k + 1 [1]
    """
    side = 1.0 if signed_area(corners) > 0 else -1.0
    normals = []
    for (z1, y1), (z2, y2) in zip(corners, [*corners[1:], corners[0]], strict=True):
        length = hypot(z2 - z1, y2 - y1)
        normals.append((side * (y2 - y1) / length, -side * (z2 - z1) / length))
    return normals


def offset_edges(corners: Sequence[Point], distances: Sequence[float]) -> list[Edge]:
    """Every edge of a polygon moved outwards by its own distance and cut to its neighbours.

    Edges meet in a mitre. Where a nearly straight corner joins unequal distances (a plate
    made of two thicknesses) the mitre would run away, so the outline steps there instead.

    Parameters
    ----------
    corners : sequence of (float, float)
        Corners (z, y) in order, either way round [m]
    distances : sequence of float
        Outwards, of edge k from corner k to corner k + 1; negative is inwards [m]

    Returns
    -------
    list of ((float, float), (float, float))
        Start and end (z, y) of every moved edge [m]
    """
    normals = outward_normals(corners)
    joints = [
        _joint(corners[k], normals[k - 1], normals[k], distances[k - 1], distances[k])
        for k in range(len(corners))
    ]
    return [(joints[k][1], joints[(k + 1) % len(joints)][0]) for k in range(len(joints))]


def outline(edges: Sequence[Edge]) -> list[Point]:
    """List the corners of a polygon given by its edges, each corner once.

    Parameters
    ----------
    edges : sequence of ((float, float), (float, float))
        Start and end (z, y) of every edge, in order [m]

    Returns
    -------
    list of (float, float)
        Corners (z, y), starting at the start of the first edge [m]
    """
    ends = [point for edge in edges for point in edge]
    return [point for k, point in enumerate(ends) if point != ends[k - 1]]


def _joint(
    corner: Point, normal1: Point, normal2: Point, distance1: float, distance2: float
) -> Edge:
    """End of the edge that arrives and start of the edge that leaves; equal at a mitre."""
    (z, y), (z1, y1), (z2, y2) = corner, normal1, normal2
    cosine, sine = z1 * z2 + y1 * y2, z1 * y2 - z2 * y1
    if distance1 == distance2:
        # Same formula for all turns, so a straight corner needs no special case.
        reach = distance1 / (1.0 + cosine)
        mitre = (z + reach * (z1 + z2), y + reach * (y1 + y2))
        return mitre, mitre
    longest = LONGEST_MITRE * max(abs(distance1), abs(distance2)) * abs(sine)
    across = (distance1 * y2 - distance2 * y1, distance2 * z1 - distance1 * z2)
    if cosine > NEARLY_STRAIGHT and hypot(*across) >= longest:
        return (
            (z + distance1 * z1, y + distance1 * y1),
            (z + distance2 * z2, y + distance2 * y2),
        )
    mitre = (z + across[0] / sine, y + across[1] / sine)
    return mitre, mitre


def plate_area(profile: Profile) -> float:
    """Area of the plates.

    Returns
    -------
    float
        Sum of thickness times midline length [m2]
    """
    following = (*profile.corners[1:], profile.corners[0])
    ends = zip(profile.corners, following, profile.thickness, strict=True)
    return sum(dist(a, b) * t for a, b, t in ends)
