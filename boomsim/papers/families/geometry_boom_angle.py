"""Which boom angle puts the hook at a wanted radius."""

from sympy import acos, asin, atan, symbols

from boomsim.papers.check_models.textbook_boom import straight_boom
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values
from boomsim.papers.sketches.boom_sketches import SLOPED, angle_at, crane, level_lengths

L, R, d = symbols("L R d")
X, theta = symbols("X theta")


def picture(_: Values, shown: Shown) -> str:
    """Draw the crane from the side; what is asked for cannot be measured."""
    place = angle_at(crane(SLOPED), angle=SLOPED, letter="theta", value="")
    place.sketch.label(place.at(0.62, off=9), letter="L", value=shown("L"), anchor="end")
    return level_lengths(place, heel=shown("d"), radius=shown("R")).sketch.not_to_scale().svg()


def check(given: Values) -> float:
    """Let the call path solve for the angle of a boom that does not bend."""
    _, state = straight_boom(given["L"], heel_out=-given["d"], radius=given["R"])
    return float(state.angle[0, 0])


FAMILY = Family(
    id="geometry_boom_angle",
    topic="geometry",
    title="Boom angle for a wanted radius",
    text="A boom of length {L=} has its heel pin {d=} behind the axis of rotation. The hook is to "
    "hang at a radius of {R=}. Which boom angle does that need?",
    assume="The boom does not bend, and the hoist line hangs from the head sheave centre.",
    givens=(
        Given(L, "boom length", metric="12 to 42 m by 0.5", us="40 to 140 ft by 2"),
        Given(d, "heel pin behind the axis", metric="0.8 to 2.4 m by 0.1", us="3 to 8 ft by 0.5"),
        Given(R, "radius", metric="3 to 30 m by 0.5", us="10 to 100 ft by 2"),
    ),
    steps=(
        Step(X, R + d, "horizontal distance from the heel pin to the hook",
             "The heel pin is behind the axis of rotation: add its distance to the radius.",
             metric="m", us="ft"),
        Step(theta, acos(X / L), "boom angle",
             "The cosine of the angle is the level side over the long side.",
             metric="deg", us="deg", tolerance=0.005),
    ),
    slips=(
        Slip(X, R, "took the radius from the heel pin"),
        Slip(X, R - d, "took the distance of the heel pin off instead of adding it"),
        Slip(theta, asin(X / L), "took the sine, which gives the angle from the vertical"),
        Slip(theta, atan(X / L), "took the tangent, as if the boom were a short side"),
        Slip(theta, atan(L / X), "took the tangent, as if the boom stood upright"),
    ),
    where=(X > L / 5, X < 0.9 * L),
    check=check,
    picture=picture,
    seen="A crane from the side: the heel pin is d behind the axis of rotation; the radius R runs "
    "from the axis of rotation to the hoist line; the boom angle is at the heel pin.",
)  # fmt: skip
