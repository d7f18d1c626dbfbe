"""Properties of a closed thin-walled cross-section.

The wall is solid between an outer and an inner outline, each half a plate's thickness from
the midline and mitred at the corners, so area and second moments are those of the mitred
plates, exactly. Torsion and shear are thin-wall theory on the midline. Corners are sharp: a
rolled hollow section with rounded corners has 3 to 6 % less.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from math import sqrt

from boomsim.machine.model import Profile
from boomsim.machine.outline import Edge, Point, area_moments, offset_edges, outline, signed_area
from boomsim.mechanics.sections.flat_plates import (
    Plate,
    flat_plates,
    plate_lengths,
    refuse_bad_midline,
)

SYMMETRY = 0.01
"""Largest product of inertia over sqrt(I_y I_z), and centroid offset over width [1]."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Properties:
    """What follows from a profile. Every distance is from the centroid.

    Bending is judged at the outer surface: `top`, `bottom`, `left` and `right` are distances
    to the outermost fibre, not to the midline, and so are the corners.

    Attributes
    ----------
    kind : str
        Of the profile: "box", "polygon" or "tube"
    area : float
        A [m2]
    centroid : (float, float)
        (z, y) in the profile's own axes [m]
    i_y : float
        I_y, integral of y^2: bending in the luffing plane [m4]
    i_z : float
        I_z, integral of z^2: bending sideways [m4]
    product_of_inertia : float
        Integral of y z; small, because the profile is refused if it is not [m4]
    outer_height, outer_width : float
        Between outermost fibres [m]
    inner_height, inner_width : float
        Clear inside, between the outermost points of the inner outline [m]
    top, bottom, left, right : float
        Centroid to the outer surface, all positive; left is towards negative z [m]
    modulus_top, modulus_bottom : float
        I_y over the distance to that surface [m3]
    modulus_left, modulus_right : float
        I_z over the distance to that surface [m3]
    corners : tuple of (float, float)
        (z, y) of each corner on the outer surface, in the profile's order [m]
    enclosed_area : float
        A_e inside the midline [m2]
    torsion_constant : float
        J = 4 A_e^2 / sum(length / t), Bredt [m4]
    shear_area_y, shear_area_z : float
        Sum of t length rise^2 (luffing plane), of t length run^2 (sideways); 2 h t for the two
        webs of a box, half the area for a tube [m2]
    plates : tuple of Plate
        Plate k from corner k to corner k + 1
    outer, inner : tuple of (float, float)
        Both outlines (z, y), for drawing and nesting [m]
    """

    kind: str
    area: float
    centroid: Point
    i_y: float
    i_z: float
    product_of_inertia: float
    outer_height: float
    outer_width: float
    inner_height: float
    inner_width: float
    top: float
    bottom: float
    left: float
    right: float
    modulus_top: float
    modulus_bottom: float
    modulus_left: float
    modulus_right: float
    corners: tuple[Point, ...]
    enclosed_area: float
    torsion_constant: float
    shear_area_y: float
    shear_area_z: float
    plates: tuple[Plate, ...]
    outer: tuple[Point, ...]
    inner: tuple[Point, ...]


@lru_cache(maxsize=1024)
def properties(profile: Profile) -> Properties:
    """Area, second moments, torsion, fibres and plates of a profile.

    Assumes one cell and symmetry about the vertical axis, so that bending in the luffing plane
    and sideways are apart; a profile that is not symmetric enough is refused.

    Parameters
    ----------
    profile : Profile
        Midline and thicknesses [m]

    Returns
    -------
    Properties
        SI units, see there [m]

    Raises
    ------
    ValueError
        If the profile is no single cell, its plates leave no room inside, or it is lopsided

    Examples
    --------
    A = 0.4 x 0.5 - 0.38 x 0.48 m2:

    >>> from boomsim.machine.shapes.box import box
    >>> made = properties(box(0.5, width=0.4, top=0.01, bottom=0.01, web=0.01))
    >>> round(made.area, 9), round(made.inner_height, 9)
    (0.0176, 0.48)
    """
    refuse_bad_midline(profile)
    half = [t / 2.0 for t in profile.thickness]
    outer_edges = offset_edges(profile.corners, half)
    inner_edges = offset_edges(profile.corners, [-t for t in half])
    outer, inner = outline(outer_edges), outline(inner_edges)
    A, Sz, Sy, Izz, Iyy, Izy = _wall_moments(outer, inner)
    z0, y0 = Sz / A, Sy / A
    i_y, i_z = Iyy - A * y0**2, Izz - A * z0**2
    plates = flat_plates(profile, outer_edges, inner_edges, centroid=(z0, y0))
    corners = _from(z0, y0, _corner_fibres(profile, outer_edges))
    outer, inner = _from(z0, y0, outer), _from(z0, y0, inner)
    left, right, bottom, top = _extent(outer)
    lengths = plate_lengths(profile)
    made = Properties(
        kind=profile.kind,
        area=A,
        centroid=(z0, y0),
        i_y=i_y,
        i_z=i_z,
        product_of_inertia=Izy - A * z0 * y0,
        outer_height=top - bottom,
        outer_width=right - left,
        inner_height=_extent(inner)[3] - _extent(inner)[2],
        inner_width=_extent(inner)[1] - _extent(inner)[0],
        top=top,
        bottom=-bottom,
        left=-left,
        right=right,
        modulus_top=i_y / top,
        modulus_bottom=-i_y / bottom,
        modulus_left=-i_z / left,
        modulus_right=i_z / right,
        corners=tuple(corners),
        enclosed_area=abs(signed_area(profile.corners)),
        torsion_constant=_bredt(profile, lengths),
        shear_area_y=_shear_area(profile, lengths, [plate.rise for plate in plates]),
        shear_area_z=_shear_area(profile, lengths, [plate.run for plate in plates]),
        plates=plates,
        outer=tuple(outer),
        inner=tuple(inner),
    )
    _refuse_lopsided(made)
    return made


def torsion_shear_stress(shape: Properties, *, torque: float) -> tuple[float, ...]:
    """Shear stress of every plate under a torque on the closed cell, T / (2 A_e t).

    Uniform through the thickness; free warping. Bredt's first formula.

    Parameters
    ----------
    shape : Properties
        Of the profile [m]
    torque : float
        T [N m]

    Returns
    -------
    tuple of float
        With the sign of the torque, of plate k [Pa]
    """
    T, A_e = torque, shape.enclosed_area
    return tuple(T / (2.0 * A_e * plate.thickness) for plate in shape.plates)


def _wall_moments(outer: Sequence[Point], inner: Sequence[Point]) -> list[float]:
    """Area integrals between two outlines, whichever way round they run."""
    whole, hole = area_moments(outer), area_moments(inner)
    way = 1.0 if whole[0] > 0 else -1.0
    return [way * (a - b) for a, b in zip(whole, hole, strict=True)]


def _bredt(profile: Profile, lengths: Sequence[float]) -> float:
    flow = sum(length / t for length, t in zip(lengths, profile.thickness, strict=True))
    return 4.0 * signed_area(profile.corners) ** 2 / flow


def _shear_area(profile: Profile, lengths: Sequence[float], shares: Sequence[float]) -> float:
    """Area that carries the force when each plate's stress goes with its direction.

    An average that ignores the rise towards the neutral axis (up to 20 % in the webs of a
    box); exact for a thin tube.
    """
    each = zip(profile.thickness, lengths, shares, strict=True)
    return sum(t * length * share**2 for t, length, share in each)


def _from(z0: float, y0: float, points: Sequence[Point]) -> list[Point]:
    return [(z - z0, y - y0) for z, y in points]


def _extent(points: Sequence[Point]) -> tuple[float, float, float, float]:
    across, up = [z for z, _ in points], [y for _, y in points]
    return min(across), max(across), min(up), max(up)


def _corner_fibres(profile: Profile, outer_edges: Sequence[Edge]) -> list[Point]:
    """Outer surface at each corner; where the thickness steps, on the thicker plate."""
    t = profile.thickness
    return [outer_edges[k][0] if t[k] >= t[k - 1] else outer_edges[k - 1][1] for k in range(len(t))]


def _refuse_lopsided(made: Properties) -> None:
    """Stop at a profile whose bending planes are not the luffing plane and the one across."""
    coupling = made.product_of_inertia / sqrt(made.i_y * made.i_z)
    off_centre = (made.left - made.right) / (2.0 * made.outer_width)
    if not (abs(coupling) <= SYMMETRY and abs(off_centre) <= SYMMETRY):
        raise ValueError(
            "The profile is not symmetric about its vertical axis: product of inertia "
            f"{coupling:.1%} of sqrt(I_y I_z), centroid {off_centre:.1%} of the width off centre; "
            f"both must be {SYMMETRY:.0%} or less. Mirror the left half on the right."
        )
