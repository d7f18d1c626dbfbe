"""Polygon: any convex shape of plates."""

from collections.abc import Sequence
from typing import Any

from boomsim.machine.boom_check import profile_faults
from boomsim.machine.file_tables import Key, Table
from boomsim.machine.model import Profile
from boomsim.machine.outline import Point
from boomsim.machine.plausible_ranges import ACROSS, THICKNESS
from boomsim.machine.shapes.section_shape import Shape
from boomsim.machine.value_readers import Choice, Several


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


def _polygon(
    corners: tuple[tuple[float, float], ...], thickness: tuple[float, ...], kind: str
) -> Profile:
    """Make a polygon that may remember how it was first given."""
    if len(corners) != len(thickness):
        raise ValueError(
            f"{len(corners)} corners need {len(corners)} thicknesses, one for the plate from each "
            f"corner to the next and one for the plate that closes the cell; here are "
            f"{len(thickness)}."
        )
    made = polygon(corners, thickness=thickness)
    return Profile(corners=made.corners, thickness=made.thickness, kind=kind)


def _sizes(profile: Profile) -> dict[str, Any]:
    return {"corners": profile.corners, "thickness": profile.thickness, "kind": profile.kind}


def polygon_shape(names: Sequence[str]) -> Shape:
    """Any shape can be given corner by corner, and keeps the name of what it is.

    Parameters
    ----------
    names : sequence of str
        Of the other shapes
    """
    named = Choice(("polygon", *names))
    return Shape(
        name="polygon",
        about="any convex shape of plates, the same left and right",
        table=Table(
            _polygon,
            {
                "corners": Key(
                    Several(Several(ACROSS, 2, 2), 3, 60), "[right, up] of each, mid-plate"
                ),
                "thickness": Key(
                    Several(THICKNESS, 3, 60), "of the plate from each corner to the next"
                ),
                "kind": Key(named, "what to call it", "polygon"),
            },
            check=profile_faults,
        ),
        sizes=_sizes,
    )
