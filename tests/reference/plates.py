"""Section properties of a thin-walled profile, summed plate by plate.

Written apart from the package, so that a slip in one does not hide in the other.
"""

import math
from dataclasses import dataclass

from boomsim.machine.model import Profile


@dataclass(frozen=True, slots=True, kw_only=True)
class PlateSum:
    """What the plates of a profile add up to.

    Attributes
    ----------
    area : float
        [m2]
    height : float
        Of the centroid above the profile's own origin [m]
    luffing : float
        Second moment about the centroidal axis across the boom, integral of y^2 [m4]
    sideways : float
        Second moment about the centroidal upright axis, integral of z^2 [m4]
    torsion : float
        Bredt's constant of the closed cell, 4 A_m^2 / sum(l/t) [m4]
    upright, across : float
        Areas that carry a shear force upwards and one across: each plate's by the square of the
        cosine of its direction to the force [m2]
    """

    area: float
    height: float
    luffing: float
    sideways: float
    torsion: float
    upright: float
    across: float


def plate_sum(profile: Profile) -> PlateSum:
    """Add up the plates.

    A plate of length l and thickness t from (z1, y1) to (z2, y2) has the integral of y^2
    t l (y1^2 + y1 y2 + y2^2)/3 along its midline, and l t^3/12 (dz/l)^2 through its thickness.

    Parameters
    ----------
    profile : Profile
        Midline polygon and thicknesses [m]

    Returns
    -------
    PlateSum
        [m2, m, m4]
    """
    z, y = (list(column) for column in zip(*profile.corners, strict=True))
    plates = list(zip(z, y, z[1:] + z[:1], y[1:] + y[:1], profile.thickness, strict=True))
    area = sum(t * math.hypot(z2 - z1, y2 - y1) for z1, y1, z2, y2, t in plates)
    first = sum(t * math.hypot(z2 - z1, y2 - y1) * (y1 + y2) / 2 for z1, y1, z2, y2, t in plates)
    height = first / area
    side = sum(t * math.hypot(z2 - z1, y2 - y1) * (z1 + z2) / 2 for z1, y1, z2, y2, t in plates)
    luffing = sum(_second(y1 - height, y2 - height, z2 - z1, t) for z1, y1, z2, y2, t in plates)
    middle = side / area
    sideways = sum(_second(z1 - middle, z2 - middle, y2 - y1, t) for z1, y1, z2, y2, t in plates)
    return PlateSum(
        area=area,
        height=height,
        luffing=luffing,
        sideways=sideways,
        torsion=_bredt(plates),
        upright=sum(_carries(y2 - y1, z2 - z1, t) for z1, y1, z2, y2, t in plates),
        across=sum(_carries(z2 - z1, y2 - y1, t) for z1, y1, z2, y2, t in plates),
    )


def _second(start: float, end: float, other: float, thickness: float) -> float:
    """Second moment of one plate about an axis its ends are `start` and `end` away from [m4]."""
    length = math.hypot(end - start, other)
    along = thickness * length * (start**2 + start * end + end**2) / 3
    through = length * thickness**3 / 12 * (other / length) ** 2
    return along + through


def _carries(along: float, aside: float, thickness: float) -> float:
    """Share of a plate's area that carries shear in a direction, t l cos^2 [m2]."""
    return thickness * along**2 / math.hypot(along, aside)


def _bredt(plates: list[tuple[float, float, float, float, float]]) -> float:
    """Torsion constant of the closed cell, 4 A_m^2 / sum(l/t) [m4]."""
    enclosed = abs(sum(z1 * y2 - z2 * y1 for z1, y1, z2, y2, _ in plates)) / 2
    around = sum(math.hypot(z2 - z1, y2 - y1) / t for z1, y1, z2, y2, t in plates)
    return 4 * enclosed**2 / around
