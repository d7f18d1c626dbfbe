"""The heel pin holds the boom down and back while the cylinder pushes it up and out."""

from dataclasses import replace
from math import cos as cosine
from math import hypot, tan
from math import sin as sine

from sympy import cos, sin, sqrt, symbols

from boomsim.figures.colours_and_lines import QUIET, STEEL
from boomsim.gravity import GRAVITY
from boomsim.papers.check_models.textbook_boom import (
    even_boom,
    lift,
    textbook_machine,
    without_rope,
)
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values, as_written
from boomsim.papers.sketches.boom_sketches import arc, bar_of

Q, L, W, x, b, phi = symbols("Q L W x b phi")
C, H, V, B = symbols("C H V B")


def picture(values: Values, shown: Shown) -> str:
    """Draw the level boom, its loads, and the cylinder below it."""
    place = bar_of()
    (left, y), (head, _), sketch = place.start, place.end, place.sketch
    scale = (head - left) / values["L"]
    lug, turn = left + scale * values["b"], values["phi"]
    foot = (lug - 56 * cosine(turn), y - 4 - 56 * sine(turn))
    sketch.line((lug, y - 4), foot, width=4).line((lug, y - 4), foot, width=2.6, color=STEEL)
    sketch.line(foot, (foot[0] + 34, foot[1]), width=0.5, color=QUIET)
    arc(sketch, foot, radius=22, start=0.0, end=turn)
    sketch.label((foot[0] + 38, foot[1] + 4), letter="phi", value=shown("phi"), anchor="start")
    middle = left + scale * values["x"]
    for at, letter in ((middle, "W"), (head, "Q")):
        sketch.arrow((at, y + 36), (at, y + 9)).label(
            (at + 5, y + 26), letter=letter, anchor="start"
        )
    sketch.circle((left, y), radius=3).circle((lug, y - 4), radius=2.4)
    sketch.dimension((left, y + 16), (lug, y + 16), letter="b")
    return sketch.label((4, y - 2), value="heel pin", anchor="start", size=8).svg()


def check(given: Values) -> float:
    """Hold the level boom by a cylinder of this slope, and read both parts of the pin's force."""
    boom = even_boom(given["L"], weight=given["W"], centre=given["x"])
    made, depth = textbook_machine(boom), 1.0
    cylinder = replace(
        made.cylinder, attach_along=given["b"], base_up=made.heel_up - depth,
        base_out=made.heel_out + given["b"] - depth / tan(given["phi"]),
    )  # fmt: skip
    machine = without_rope(replace(made, cylinder=cylinder))
    _, _, forces = lift(machine, extension=(), load=given["Q"] / GRAVITY)
    return hypot(float(forces.axial[0, 0, 0]), float(forces.rear_pad[0, 0, 0]))


with as_written():
    PUSH = (W * x + Q * L) / (b * sin(phi))

FAMILY = Family(
    id="statics_heel_pin",
    topic="statics",
    title="Force on the heel pin",
    text="A level boom of length {L=} weighs {W=}, with its centre of gravity {x=} from the heel "
    "pin. A gross load of {Q=} hangs at its head. The luffing cylinder acts {b=} from the heel pin "
    "and slopes upwards towards the head at {phi=} to the boom. How large is the force on the heel "
    "pin?",
    assume="Both pins of the boom lie on its axis, the cylinder weighs nothing, and the pull of "
    "the hoist rope along the boom is left out.",
    agreement=1e-3,
    givens=(
        Given(W, "weight of the boom", metric="30 to 80 kN by 1", us="7000 to 18000 lbf by 500"),
        Given(x, "centre of gravity from the heel pin", metric="5 to 10 m by 0.5",
              us="17 to 33 ft by 1"),
        Given(Q, "gross load", metric="10 to 60 kN by 1", us="2500 to 13000 lbf by 500"),
        Given(L, "boom length", metric="10 to 24 m by 0.5", us="34 to 80 ft by 2"),
        Given(b, "cylinder from the heel pin", metric="3.5 to 5 m by 0.1", us="12 to 16 ft by 0.5"),
        Given(phi, "slope of the cylinder", metric="20 to 60 deg by 1", us="20 to 60 deg by 1"),
    ),
    steps=(
        Step(C, PUSH, "force of the luffing cylinder",
             "About the heel pin only the part of its push across the boom has a lever arm.",
             metric="kN", us="lbf"),
        Step(H, C * cos(phi), "force on the heel pin along the boom",
             "Nothing else acts along the boom: the pin takes the cylinder's part.",
             metric="kN", us="lbf"),
        Step(V, C * sin(phi) - W - Q, "force on the heel pin across the boom",
             "The cylinder pushes up more than weight and load press down; the pin holds the rest.",
             metric="kN", us="lbf"),
        Step(B, sqrt(H**2 + V**2), "force on the heel pin",
             "The two parts are square to each other: use Pythagoras.", metric="kN", us="lbf"),
    ),
    slips=(
        Slip(B, H + V, "added the two parts as if they acted in one direction"),
        Slip(V, C * sin(phi), "forgot weight and load when balancing the forces across the boom"),
        Slip(V, C * sin(phi) + W + Q, "added weight and load, though they press the boom down"),
        Slip(C, (W * x + Q * L) / b, "took the whole push as acting across the boom"),
        Slip(C, Q * L / (b * sin(phi)), "forgot the weight of the boom"),
        Slip(B, V, "forgot the part along the boom"),
    ),
    where=(x < 0.52 * L, x > 0.35 * L, x > 1.2 * b),
    check=check,
    picture=picture,
    seen="A level boom turns on its heel pin at the left; the luffing cylinder pushes from below "
    "at the distance b, at the angle phi to the boom; W and Q act downwards.",
)  # fmt: skip
