"""The boom's own weight helps to turn the crane over as soon as it is beyond the tipping line."""

from dataclasses import replace

import numpy as np
from sympy import cos, sin, symbols

from boomsim.figures.colours_and_lines import INK, PAPER, QUIET
from boomsim.mechanics.boom.boom_state import solve_state
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.stability.masses import masses
from boomsim.mechanics.stability.overturning import overturning
from boomsim.papers.check_models.textbook_boom import even_boom, textbook_machine
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values
from boomsim.papers.sketches.boom_sketches import GROUND, angle_at, crane

W, x, theta, d, b = symbols("W x theta d b")
X, r, M = symbols("X r M")


def picture(values: Values, shown: Shown) -> str:
    """Draw the crane with its tipping line and the boom's weight."""
    whole = 2.1 * values["x"]
    place = crane(values["theta"], length=whole, behind=values["d"], hook=False, above=30.0)
    angle_at(place, angle=values["theta"], letter="theta", value=shown("theta"))
    (u, v), sketch, pin = place.at(1 / 2.1), place.sketch, place.start
    tip = place.axis + place.scale * values["b"]
    sketch.circle((u, v), radius=2.5, fill=INK).arrow((u, v + 32), (u, v + 4))
    sketch.label((u - 4, v + 26), letter="W", anchor="end")
    sketch.shape([(tip, GROUND), (tip - 6, GROUND - 9), (tip + 6, GROUND - 9)], fill=PAPER)
    sketch.line((tip, GROUND - 9), (tip, 10), width=0.4, color=QUIET)
    sketch.line(pin, (pin[0], 10), width=0.4, color=QUIET)
    sketch.dimension((place.axis, 14), (tip, 14), letter="", of="b")
    sketch.dimension((pin[0], 14), (place.axis, 14), letter="", of="d")
    sketch.label((tip + 4, 11), letter="b", anchor="start")
    return sketch.label((pin[0] - 4, 11), letter="d", anchor="end").svg()


def check(given: Values) -> float:
    """Take the overturning moment of the boom alone, on a crane that weighs nothing."""
    length, b = 1.9 * given["x"], given["b"]
    boom = even_boom(length, weight=given["W"], centre=given["x"])
    made = replace(textbook_machine(boom, heel_out=-given["d"]), carrier=())
    floats = replace(made.supports[0], points=((b, b), (b, -b), (-b, b), (-b, -b)))
    moved = condense(made, extension=np.zeros((1, 0)))
    at = np.full((1, 1), given["theta"])
    state = solve_state(moved, load=np.zeros((1, 1)), parts=1, angle=at)
    placed = masses(moved, state=state, counterweight=made.counterweights[0])
    about = overturning(moved, placed=placed, state=state, support=floats, slew=np.zeros(1))
    return -float(about.righting.min())


FAMILY = Family(
    id="weights_tipping_line",
    topic="weights",
    title="Moment of the boom's own weight about the tipping line",
    text="A boom weighs {W=}. Its centre of gravity is {x=} from the heel pin, along the boom; the "
    "boom angle is {theta=}. The heel pin is {d=} behind the axis of rotation, and the tipping "
    "line is {b=} ahead of it. With which moment does the boom's own weight turn the crane over?",
    assume="The boom is straight and points squarely over the tipping line.",
    givens=(
        Given(W, "weight of the boom", metric="40 to 120 kN by 1", us="9000 to 27000 lbf by 500"),
        Given(x, "centre of gravity from the heel pin", metric="9 to 18 m by 0.1",
              us="30 to 60 ft by 0.5"),
        Given(theta, "boom angle", metric="10 to 60 deg by 1", us="10 to 60 deg by 1"),
        Given(d, "heel pin behind the axis", metric="0.8 to 2.4 m by 0.1", us="3 to 8 ft by 0.5"),
        Given(b, "tipping line ahead of the axis", metric="2.5 to 3.6 m by 0.1",
              us="8 to 12 ft by 0.5"),
    ),
    steps=(
        Step(X, x * cos(theta), "level distance from the heel pin to the weight",
             "Only the level part of the distance along the boom counts.", metric="m", us="ft"),
        Step(r, X - d - b, "lever arm beyond the tipping line",
             "Count from the heel pin back to the axis of rotation, then to the tipping line.",
             metric="m", us="ft"),
        Step(M, W * r, "moment about the tipping line", "Multiply the weight by its lever arm.",
             metric="kN m", us="lbf ft"),
    ),
    slips=(
        Slip(r, X - d, "took the moment about the axis of rotation"),
        Slip(r, X - b, "forgot that the heel pin is behind the axis of rotation"),
        Slip(r, X, "took the moment about the heel pin"),
        Slip(X, x * sin(theta), "took the sine of the boom angle"),
        Slip(r, X + d - b, "put the heel pin ahead of the axis of rotation"),
    ),
    where=(r > x / 6,),
    usual=(W / x > 3000, W / x < 12000),  # [N/m]: of a boom some 2 x long
    check=check,
    picture=picture,
    seen="A crane from the side: the boom's weight W acts at its centre of gravity, the tipping "
    "line is b ahead of the axis of rotation, the heel pin d behind it.",
)  # fmt: skip
