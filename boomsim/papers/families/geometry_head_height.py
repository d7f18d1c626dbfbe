"""How high the head stands at a radius: the boom is the long side of a triangle."""

from sympy import sqrt, symbols

from boomsim.figures.colours_and_lines import QUIET
from boomsim.papers.check_models.textbook_boom import head_place, straight_boom
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values
from boomsim.papers.sketches.boom_sketches import GROUND, SLOPED, crane, level_lengths

L, R, d, h_0 = symbols("L R d h_0")
X, Z, h = symbols("X Z h")


def picture(_: Values, shown: Shown) -> str:
    """Draw the crane from the side; what is asked for cannot be measured."""
    place = crane(SLOPED)
    (hook, high), sketch, pin = place.end, place.sketch, place.start
    sketch.label(place.at(0.6, off=9), letter="L", value=shown("L"), anchor="end")
    level_lengths(place, heel=shown("d"), radius=shown("R"))
    sketch.dimension((26, GROUND), (26, pin[1]), letter="", of="h_0")
    sketch.line((22, pin[1]), pin, width=0.4, color=QUIET)
    sketch.label((2, pin[1] + 8), letter="h_0", value=shown("h_0"), anchor="start")
    sketch.dimension((hook + 26, GROUND), (hook + 26, high), letter="", of="h")
    sketch.not_to_scale()
    return sketch.label((hook + 32, (GROUND + high) / 2), letter="h", anchor="start").svg()


def check(given: Values) -> float:
    """Let the call path find the boom angle at the radius, and the head's height."""
    boom, state = straight_boom(given["L"], heel_out=-given["d"], radius=given["R"])
    return head_place(boom, state=state)[1] - boom.machine.heel_up + given["h_0"]


FAMILY = Family(
    id="geometry_head_height",
    topic="geometry",
    title="Height of the head at a radius",
    text="A boom of length {L=} is to reach a radius of {R=}. Its heel pin is {d=} behind the axis "
    "of rotation and {h_0=} above the ground. How high above the ground is the head sheave centre?",
    assume="The boom does not bend, and the hoist line hangs from the head sheave centre.",
    givens=(
        Given(L, "boom length", metric="14 to 42 m by 0.5", us="46 to 140 ft by 2"),
        Given(R, "radius", metric="4 to 30 m by 0.5", us="14 to 100 ft by 2"),
        Given(d, "heel pin behind the axis", metric="0.8 to 2.4 m by 0.1", us="3 to 8 ft by 0.5"),
        Given(h_0, "height of the heel pin", metric="2 to 3.2 m by 0.1", us="6.5 to 10 ft by 0.5"),
    ),
    steps=(
        Step(X, R + d, "horizontal distance from the heel pin to the head",
             "The heel pin is behind the axis of rotation: add its distance to the radius.",
             metric="m", us="ft"),
        Step(Z, sqrt(L**2 - X**2), "height of the head above the heel pin",
             "The boom is the long side of a right-angled triangle: use Pythagoras.",
             metric="m", us="ft"),
        Step(h, h_0 + Z, "height of the head above the ground",
             "Add the height of the heel pin.", metric="m", us="ft"),
    ),
    slips=(
        Slip(h, Z, "forgot that the heel pin is above the ground"),
        Slip(X, R, "took the radius from the heel pin"),
        Slip(X, R - d, "took the distance of the heel pin off instead of adding it"),
        Slip(Z, L - X, "took the lengths off each other instead of their squares"),
        Slip(Z, sqrt(L**2 + X**2), "took the boom for a short side of the triangle"),
    ),
    where=(X > 0.25 * L, X < 0.92 * L),
    check=check,
    picture=picture,
    seen="A crane from the side: the heel pin is d behind the axis of rotation and h_0 above the "
    "ground; the head is at the radius R and at the height h.",
)  # fmt: skip
