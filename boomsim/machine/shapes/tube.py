"""Tube: round, as a regular polygon."""

from math import cos, pi, sin, sqrt, tan

from boomsim.machine.boom_check import profile_faults
from boomsim.machine.file_tables import Key, Table
from boomsim.machine.model import Profile
from boomsim.machine.plausible_ranges import SIZE, THICKNESS
from boomsim.machine.shapes.section_shape import Shape, least_rounded

TUBE_SIDES = 24
"""A multiple of four puts a flat at the top, the bottom and both sides."""


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


def _sizes(profile: Profile) -> dict[str, float] | None:
    """Solve the equations of `tube` backwards."""
    if len(profile.corners) != TUBE_SIDES:
        return None
    n, T, t = TUBE_SIDES, tan(pi / TUBE_SIDES), profile.thickness[0]
    a = sqrt(profile.corners[0][0] ** 2 + profile.corners[0][1] ** 2) * cos(pi / n)
    P = a * t * n * T / pi
    Q = (2 * a**2 + t**2 / 2) * (1 + T**2 / 3)
    R = sqrt((Q + sqrt(Q**2 - 4 * P**2)) / 4)

    def sizes(digits: int) -> dict[str, float]:
        return {"diameter": round(2 * R + P / R, digits), "wall": round(P / R, digits)}

    return least_rounded(profile, make=tube, sizes=sizes)


TUBE = Shape(
    name="tube",
    about="a round tube",
    table=Table(
        tube,
        {
            "diameter": Key(SIZE, "over the outside"),
            "wall": Key(THICKNESS, "thickness of the wall"),
        },
        check=profile_faults,
    ),
    sizes=_sizes,
)
