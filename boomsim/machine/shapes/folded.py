"""Folded: a box whose bottom is folded, so that it buckles later."""

from boomsim.machine.boom_check import profile_faults
from boomsim.machine.file_tables import Key, Table
from boomsim.machine.model import Profile
from boomsim.machine.plausible_ranges import SIZE, THICKNESS
from boomsim.machine.shapes.section_shape import Shape, least_rounded


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


def _sizes(profile: Profile) -> dict[str, float] | None:
    if len(profile.corners) != 6:
        return None
    (half, low), (z, knee), (_, high) = profile.corners[1:4]
    bottom, _, web, top, *_ = profile.thickness

    def sizes(digits: int) -> dict[str, float]:
        return {
            "height": round(high - low + (bottom + top) / 2, digits),
            "width": round(2 * z + web, digits),
            "flat": round(2 * half, digits),
            "fold": round(knee - low, digits),
            "top": top,
            "bottom": bottom,
            "web": web,
        }

    return least_rounded(profile, make=folded, sizes=sizes)


FOLDED = Shape(
    name="folded",
    about="a box whose bottom is folded, so that it buckles later",
    table=Table(
        folded,
        {
            "height": Key(SIZE, "over the outside"),
            "width": Key(SIZE, "over the outside"),
            "top": Key(THICKNESS, "thickness of the top plate"),
            "bottom": Key(THICKNESS, "thickness of the flat and of the two sloping plates"),
            "web": Key(THICKNESS, "thickness of each side plate"),
            "flat": Key(SIZE, "width of the flat bottom plate"),
            "fold": Key(SIZE, "height of the sloping plates"),
        },
        check=profile_faults,
    ),
    sizes=_sizes,
)
