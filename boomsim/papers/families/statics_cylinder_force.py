"""The luffing cylinder holds the boom on a short lever arm: found from its two pins."""

from dataclasses import replace

from sympy import cos, sin, sqrt, symbols

from boomsim.figures.colours_and_lines import QUIET, STEEL
from boomsim.gravity import GRAVITY
from boomsim.papers.check_models.textbook_boom import even_boom, lift, textbook_machine
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values, as_written
from boomsim.papers.sketches.boom_sketches import angle_at, crane

Q, L, W, x, theta, b, u, v = symbols("Q L W x theta b u v")
M, s, r, C = symbols("M s r C")


def picture(values: Values, shown: Shown) -> str:
    """Draw boom and cylinder."""
    place = crane(values["theta"], length=values["L"], hook=False, axis=False)
    (heel_x, heel_y), sketch = place.start, place.sketch
    angle_at(place, angle=values["theta"], letter="theta", value=shown("theta"), radius=92)
    upper = place.at(values["b"] / values["L"])
    lower = heel_x + place.scale * values["u"], heel_y - place.scale * values["v"]
    sketch.line(lower, upper, width=4).line(lower, upper, width=2.6, color=STEEL)
    sketch.line(place.start, upper, width=0.4, color=QUIET, of="b")
    for pin in (lower, upper):
        sketch.circle(pin, radius=2.4)
    (head, high) = place.end
    sketch.arrow((head, high - 5), (head, high - 34))
    sketch.label((head + 5, high - 30), letter="Q", anchor="start")
    sketch.label(place.at(0.5 * values["b"] / values["L"], off=9), letter="b", anchor="end")
    sketch.line((heel_x, heel_y), (heel_x, 10), width=0.4, color=QUIET)
    sketch.line(lower, (lower[0], 10), width=0.4, color=QUIET)
    sketch.dimension((heel_x, 14), (lower[0], 14), letter="", of="u")
    sketch.label((lower[0] + 4, 11), letter="u", anchor="start")
    sketch.line((heel_x, heel_y), (22, heel_y), width=0.4, color=QUIET)
    sketch.line(lower, (22, lower[1]), width=0.4, color=QUIET)
    sketch.dimension((26, lower[1]), (26, heel_y), letter="", of="v")
    return sketch.label((20, (lower[1] + heel_y) / 2 - 3), letter="v", anchor="end").svg()


def check(given: Values) -> float:
    """Put the pins where the question has them, and read the cylinder's push."""
    boom = even_boom(given["L"], weight=given["W"], centre=given["x"])
    made = textbook_machine(boom)
    cylinder = replace(
        made.cylinder, attach_along=given["b"],
        base_out=made.heel_out + given["u"], base_up=made.heel_up - given["v"],
    )  # fmt: skip
    _, _, forces = lift(
        replace(made, cylinder=cylinder), extension=(), load=given["Q"] / GRAVITY,
        angle=given["theta"],
    )  # fmt: skip
    return float(forces.cylinder[0, 0])


with as_written():
    TURNING = (W * x + Q * L) * cos(theta)
    LENGTH = sqrt((b * cos(theta) - u) ** 2 + (b * sin(theta) + v) ** 2)
    ARM = b * (u * sin(theta) + v * cos(theta)) / s

FAMILY = Family(
    id="statics_cylinder_force",
    topic="statics",
    title="Force of the luffing cylinder",
    text="A boom of length {L=} weighs {W=}, with its centre of gravity {x=} from the heel pin. A "
    "gross load of {Q=} hangs at its head; the boom angle is {theta=}. The luffing cylinder's "
    "upper pin is {b=} along the boom from the heel pin; its lower pin is {u=} ahead of the heel "
    "pin and {v=} below it. How hard does the cylinder push?",
    assume="Both pins of the boom lie on its axis, the boom does not bend, and the cylinder weighs "
    "nothing.",
    givens=(
        Given(W, "weight of the boom", metric="40 to 100 kN by 1", us="9000 to 22000 lbf by 500"),
        Given(x, "centre of gravity from the heel pin", metric="6 to 12 m by 0.5",
              us="20 to 40 ft by 1"),
        Given(Q, "gross load", metric="20 to 120 kN by 1", us="5000 to 27000 lbf by 500"),
        Given(L, "boom length", metric="14 to 30 m by 0.5", us="46 to 100 ft by 2"),
        Given(theta, "boom angle", metric="20 to 70 deg by 1", us="20 to 70 deg by 1"),
        Given(b, "upper pin along the boom", metric="4 to 5.5 m by 0.1", us="13 to 18 ft by 0.5"),
        Given(u, "lower pin ahead of the heel pin", metric="1.4 to 2.2 m by 0.1",
              us="4.5 to 7 ft by 0.5"),
        Given(v, "lower pin below the heel pin", metric="0.8 to 1.4 m by 0.1",
              us="2.5 to 4.5 ft by 0.5"),
    ),
    steps=(
        Step(M, TURNING, "moment about the heel pin",
             "Weight and load act straight down: their lever arms are level distances.",
             metric="kN m", us="lbf ft"),
        Step(s, LENGTH, "distance between the cylinder's pins",
             "Take the level and the upright distance between the pins, and use Pythagoras.",
             metric="m", us="ft"),
        Step(r, ARM, "lever arm of the cylinder about the heel pin",
             "Twice the area of the triangle of the three pins, divided by its side along the "
             "cylinder.", metric="m", us="ft"),
        Step(C, M / r, "force of the luffing cylinder",
             "The cylinder holds the moment about the heel pin: divide it by the lever arm.",
             metric="kN", us="lbf"),
    ),
    slips=(
        Slip(C, M / b, "took the distance to the upper pin for the lever arm"),
        Slip(M, Q * L * cos(theta), "forgot the weight of the boom"),
        Slip(M, W * x + Q * L, "took the distances along the boom for lever arms"),
        Slip(C, M / (b * cos(theta)), "let the cylinder push straight up"),
        Slip(r, b * (u * cos(theta) + v * sin(theta)) / s, "mixed up sine and cosine"),
    ),
    where=(x < 0.52 * L, x > 0.35 * L, r > 0.5 * v),
    check=check,
    picture=picture,
    seen="The luffing cylinder stands between a pin on the superstructure, u ahead of the heel pin "
    "and v below it, and a pin on the boom, b along it.",
)  # fmt: skip
