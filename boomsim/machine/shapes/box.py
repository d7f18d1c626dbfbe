"""Box: four plates."""

from boomsim.machine.boom_check import profile_faults
from boomsim.machine.file_tables import Key, Table
from boomsim.machine.model import Profile
from boomsim.machine.plausible_ranges import SIZE, THICKNESS
from boomsim.machine.shapes.section_shape import Shape, least_rounded


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


def _sizes(profile: Profile) -> dict[str, float] | None:
    if len(profile.corners) != 4:
        return None
    (z, low), (_, high) = profile.corners[1], profile.corners[2]
    bottom, web, top, _ = profile.thickness

    def sizes(digits: int) -> dict[str, float]:
        height = round(high - low + (bottom + top) / 2, digits)
        width = round(2 * z + web, digits)
        return {"height": height, "width": width, "top": top, "bottom": bottom, "web": web}

    return least_rounded(profile, make=box, sizes=sizes)


BOX = Shape(
    name="box",
    about="four plates: outside sizes and thicknesses",
    table=Table(
        box,
        {
            "height": Key(SIZE, "over the outside"),
            "width": Key(SIZE, "over the outside"),
            "top": Key(THICKNESS, "thickness of the top plate"),
            "bottom": Key(THICKNESS, "thickness of the bottom plate"),
            "web": Key(THICKNESS, "thickness of each side plate"),
        },
        check=profile_faults,
    ),
    sizes=_sizes,
)
