"""The radius counts from the axis of rotation, and the heel pin is behind it."""

from sympy import cos, sin, symbols

from boomsim.papers.check_models.textbook_boom import head_place, straight_boom
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values
from boomsim.papers.sketches.boom_sketches import angle_at, crane, level_lengths

L, theta, d = symbols("L theta d")
X, R = symbols("X R")


def picture(values: Values, shown: Shown) -> str:
    """Draw the crane from the side."""
    place = crane(values["theta"])
    angle_at(place, angle=values["theta"], letter="theta", value=shown("theta"))
    place.sketch.label(place.at(0.62, off=9), letter="L", value=shown("L"), anchor="end")
    return level_lengths(place, heel=shown("d"), radius="").sketch.not_to_scale().svg()


def check(given: Values) -> float:
    """Find the head of a boom that does not bend."""
    boom, state = straight_boom(given["L"], heel_out=-given["d"], angle=given["theta"])
    return head_place(boom, state=state)[0]


FAMILY = Family(
    id="geometry_radius",
    topic="geometry",
    title="Radius from boom length and boom angle",
    text="A boom of length {L=} stands at a boom angle of {theta=}. Its heel pin is {d=} behind "
    "the axis of rotation. At which radius does the hook hang?",
    assume="The boom does not bend, and the hoist line hangs from the head sheave centre.",
    givens=(
        Given(L, "boom length", metric="12 to 42 m by 0.5", us="40 to 140 ft by 2"),
        Given(theta, "boom angle", metric="25 to 78 deg by 1", us="25 to 78 deg by 1"),
        Given(d, "heel pin behind the axis", metric="0.8 to 2.4 m by 0.1", us="3 to 8 ft by 0.5"),
    ),
    steps=(
        Step(X, L * cos(theta), "horizontal distance from the heel pin to the hook",
             "The boom is the long side of a right-angled triangle; its level side is wanted.",
             metric="m", us="ft", figures=4, tolerance=0.005),
        Step(R, X - d, "radius",
             "The radius counts from the axis of rotation, which is ahead of the heel pin.",
             metric="m", us="ft", figures=4, tolerance=0.005),
    ),
    slips=(
        Slip(R, X, "took the radius from the heel pin"),
        Slip(R, X + d, "added the distance of the heel pin, as if it were ahead of the axis"),
        Slip(X, L * sin(theta), "took the sine, which gives the height"),
        Slip(R, L - d, "measured along the boom and not horizontally"),
    ),
    where=(3 * d < R, L / 8 < R),
    check=check,
    picture=picture,
    seen="A crane from the side: the heel pin is behind the axis of rotation by d; the radius R "
    "runs from the axis of rotation to the hoist line; the boom angle is at the heel pin.",
)  # fmt: skip
