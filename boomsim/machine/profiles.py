"""Cross-sections from the figures people give: box, round tube, any convex polygon.

Pure geometry. A profile is given by its midline, so that thin-walled formulas apply.
"""

from collections.abc import Sequence
from math import cos, dist, pi, sin, sqrt, tan

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


def folded(
    height: float,
    *,
    width: float,
    top: float,
    bottom: float,
    web: float,
    flat: float,
    fold: float,
) -> Profile:
    """Box whose bottom is folded: a narrow flat plate and two sloping ones.

    The compressed bottom of a boom then has no wide plate that would buckle early.

    Parameters
    ----------
    height, width : float
        Outside [m]
    top, bottom, web : float
        Thickness of the top plate, of the flat and both sloping plates, of each side plate [m]
    flat : float
        Width of the flat bottom plate, between folds [m]
    fold : float
        Height of the sloping plates, from fold to fold [m]

    Returns
    -------
    Profile
        Corners from bottom left, anticlockwise; plates: bottom, slope, web, top, web, slope [m]

    Raises
    ------
    ValueError
        If the flat is wider than the box or the folds are higher.
    """
    z, low, high = (width - web) / 2, (bottom - height) / 2, (height - top) / 2
    if not (0 < flat < 2 * z and 0 < fold < high - low):
        raise ValueError(
            f"A flat of {flat} m and a fold of {fold} m do not fit a box {width} m wide and "
            f"{height} m high. Make the flat narrower than the width and the fold lower than the "
            "height."
        )
    half, knee = flat / 2, low + fold
    corners = ((-half, low), (half, low), (z, knee), (z, high), (-z, high), (-z, knee))
    return Profile(
        corners=corners, thickness=(bottom, bottom, web, top, web, bottom), kind="folded"
    )


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
    if 2.0 * product >= K:
        raise ValueError(f"A wall of {wall} m is too thick for a tube of {diameter} m: use less.")
    a = sqrt((K + sqrt(K**2 - 4.0 * product**2)) / 4.0)
    turns = [2.0 * pi * (k + 0.5) / n for k in range(n)]
    reach = a / cos(pi / n)
    corners = tuple((reach * cos(turn), reach * sin(turn)) for turn in turns)
    return Profile(corners=corners, thickness=(product / a,) * n, kind="tube")


def polygon(corners: Sequence[Point], *, thickness: float | Sequence[float]) -> Profile:
    """Make a closed polygon of flat plates.

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
    following = (*profile.corners[1:], profile.corners[0])
    ends = zip(profile.corners, following, profile.thickness, strict=True)
    return sum(dist(a, b) * t for a, b, t in ends)
