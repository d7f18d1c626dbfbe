"""The wall of a thin-walled cell: its flat plates, and what makes it one closed cell."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import atan2, hypot, inf, pi

from boomsim.machine.model import Profile
from boomsim.machine.outline import Edge, Point


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Plate:
    """One flat plate of a profile, between the faces of its neighbours.

    Attributes
    ----------
    start, end : (float, float)
        Ends (z, y) of the clear width on the midline, from the centroid [m]
    thickness : float
        t [m]
    width : float
        Flat clear width b between the faces of the neighbouring plates [m]
    slenderness : float
        b / t [1]
    rise, run : float
        Share of the plate's direction that is upwards and across, 0 to 1 [1]
    """

    start: Point
    end: Point
    thickness: float
    width: float
    slenderness: float
    rise: float
    run: float


def plate_lengths(profile: Profile) -> list[float]:
    """Midline length of every plate.

    Parameters
    ----------
    profile : Profile
        Midline [m]

    Returns
    -------
    list of float
        Of plate k, from corner k to corner k + 1 [m]
    """
    following = [*profile.corners[1:], profile.corners[0]]
    return [
        hypot(b[0] - a[0], b[1] - a[1]) for a, b in zip(profile.corners, following, strict=True)
    ]


def flat_plates(
    profile: Profile,
    outer_edges: Sequence[Edge],
    inner_edges: Sequence[Edge],
    *,
    centroid: Point,
) -> tuple[Plate, ...]:
    """Plates with the clear width that both faces leave, laid back on the midline.

    Parameters
    ----------
    profile : Profile
        Midline and thicknesses [m]
    outer_edges, inner_edges : sequence of ((float, float), (float, float))
        Both faces of every plate, cut to its neighbours [m]
    centroid : (float, float)
        (z, y) in the profile's axes [m]

    Returns
    -------
    tuple of Plate
        Plate k from corner k to corner k + 1 [m]

    Raises
    ------
    ValueError
        If the neighbours of a plate leave no clear width
    """
    plates = []
    following = [*profile.corners[1:], profile.corners[0]]
    for k, ((z1, y1), (z2, y2)) in enumerate(zip(profile.corners, following, strict=True)):
        length = hypot(z2 - z1, y2 - y1)
        along = ((z2 - z1) / length, (y2 - y1) / length)
        ends = [
            [(z - z1) * along[0] + (y - y1) * along[1] for z, y in edge]
            for edge in (outer_edges[k], inner_edges[k])
        ]
        first, last = max(0.0, *(e[0] for e in ends)), min(length, *(e[1] for e in ends))
        if not last > first:
            raise ValueError(
                f"Plate {k} is {length:.4g} m long on its midline and its neighbours leave no "
                "clear width. Use thinner plates or move its corners apart."
            )
        z0, y0 = z1 - centroid[0], y1 - centroid[1]
        t, b = profile.thickness[k], last - first
        plates.append(
            Plate(
                start=(z0 + first * along[0], y0 + first * along[1]),
                end=(z0 + last * along[0], y0 + last * along[1]),
                thickness=t,
                width=b,
                slenderness=b / t,
                rise=abs(along[1]),
                run=abs(along[0]),
            )
        )
    return tuple(plates)


def refuse_bad_midline(profile: Profile) -> None:
    """Stop at anything that is not one closed cell of real plates.

    Parameters
    ----------
    profile : Profile
        Midline and thicknesses [m]

    Raises
    ------
    ValueError
        If plates are missing, have no thickness or no length, or the midline crosses itself
    """
    corners, thickness = profile.corners, profile.thickness
    if len(corners) < 3 or len(thickness) != len(corners):
        raise ValueError(
            f"A profile has {len(corners)} corners and {len(thickness)} thicknesses; it needs at "
            "least 3 corners and one thickness for each plate, the closing one included."
        )
    for k, t in enumerate(thickness):
        if not 0 < t < inf:
            raise ValueError(f"Plate {k} has a thickness of {t} m; it must be positive.")
    for k, length in enumerate(plate_lengths(profile)):
        if not 0 < length < inf:
            raise ValueError(f"Plate {k} is {length} m long; give two corners that differ.")
    if abs(abs(_turning(corners)) - 2.0 * pi) > 1e-6:
        raise ValueError(
            "The midline crosses itself or turns back, so it encloses no single cell. "
            "Give the corners in order round the cell, each once."
        )


def _turning(corners: Sequence[Point]) -> float:
    """Sum of the turns at the corners: 2 pi for one simple loop, 0 for a figure of eight."""
    total, n = 0.0, len(corners)
    for k in range(n):
        (za, ya), (zb, yb), (zc, yc) = corners[k - 1], corners[k], corners[(k + 1) % n]
        u, v = (zb - za, yb - ya), (zc - zb, yc - yb)
        total += atan2(u[0] * v[1] - u[1] * v[0], u[0] * v[0] + u[1] * v[1])
    return total
