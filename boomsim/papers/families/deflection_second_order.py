"""Thrust enlarges a deflection, and then has a lever arm: the second-order effect."""

from math import atan2, hypot

from sympy import pi, symbols

from boomsim.gravity import GRAVITY
from boomsim.papers.check_models.textbook_boom import (
    clamped,
    lift,
    modulus_for,
    textbook_boom,
    textbook_machine,
    without_rope,
)
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values, as_written
from boomsim.papers.sketches.boom_sketches import bar_of

F, P, L, E, I_y = symbols("F P L E I_y")
P_cr, alpha, v_1, v, M = symbols("P_cr alpha v_1 v M")

PIECES, JOINT = 5, 1e-4
"""The call path looks at a section in few places: an even bar is cut into pieces, which are joined
over a hair's breadth [1], [m]."""


def picture(values: Values, shown: Shown) -> str:
    """Draw the boom straight, held at its foot."""
    place = bar_of(wall=True)
    (left, y), (head, _), sketch = place.start, place.end, place.sketch
    sketch.arrow((head, 108), (head, 75)).label((head + 6, 98), letter="F", anchor="start")
    sketch.arrow((head + 38, y), (head + 5, y)).label((head + 26, y + 6), letter="P")
    sketch.dimension((left, 22), (head, 22), letter="L", value=shown("L"))
    return sketch.label((left + 60, 42), value="foot, held firmly", size=8).svg()


def check(given: Values) -> float:
    """Load an even bar at the angle at which a weight has both parts, and read its foot."""
    piece, stiff = given["L"] / PIECES, modulus_for(given["E"] * given["I_y"])
    boom = textbook_boom(
        (piece, *(piece + JOINT,) * (PIECES - 1)),
        noses=(piece,) * (PIECES - 1),
        modulus=(stiff,) * PIECES,
    )
    load = hypot(given["F"], given["P"]) / GRAVITY
    angle = atan2(given["P"], given["F"])
    made = without_rope(clamped(textbook_machine(boom)))
    _, _, forces = lift(made, extension=(0.0,) * (PIECES - 1), load=load, angle=angle)
    return -float(forces.moment.min())


with as_written():
    EULER = pi**2 * E * I_y / (4 * L**2)
    PINNED = pi**2 * E * I_y / L**2
    FIRST = F * L**3 / (3 * E * I_y)

FAMILY = Family(
    id="deflection_second_order",
    topic="deflection",
    title="Second-order amplification",
    text="A boom of length {L=} is held firmly at its foot. Its second moment of area is {I_y=} "
    "and its modulus of elasticity {E=}. At its head act a thrust {P=} along the boom and a force "
    "{F=} across it. How large is the bending moment at its foot, with second-order effect?",
    assume="Thrust enlarges the deflection by 1/(1 − {P:}/{P_cr:}); both forces keep their "
    "direction.",
    agreement=1e-2,
    givens=(
        Given(F, "force across the boom", metric="1 to 20 kN by 0.5", us="0.2 to 4 kip by 0.1"),
        Given(L, "boom length", metric="8 to 24 m by 0.5", us="26 to 80 ft by 2"),
        Given(P, "thrust", metric="50 to 600 kN by 10", us="10 to 130 kip by 2"),
        Given(E, "modulus of elasticity", metric="210 GPa", us="29000 ksi"),
        Given(I_y, "second moment of area", metric="15000 to 120000 cm4 by 5000",
              us="400 to 3000 in4 by 50"),
    ),
    steps=(
        Step(P_cr, EULER, "critical thrust",
             "Held at one end and free at the other, a column buckles over twice its length.",
             metric="kN", us="kip"),
        Step(alpha, 1 / (1 - P / P_cr), "amplification",
             "The nearer the thrust is to the critical one, the more it enlarges the deflection.",
             metric="", us=""),
        Step(v_1, FIRST, "deflection without the thrust",
             "A force at the free end of a cantilever: F L³ over 3 E I.", metric="mm", us="in"),
        Step(v, alpha * v_1, "deflection with the thrust", "Multiply by the amplification.",
             metric="mm", us="in"),
        Step(M, F * L + P * v, "bending moment at the foot",
             "The force acts on the whole length, the thrust on the deflection.",
             metric="kN m", us="kip ft"),
    ),
    slips=(
        Slip(M, F * L, "left out the second-order effect"),
        Slip(v, v_1, "let the thrust act on the deflection that it has not yet enlarged"),
        Slip(P_cr, PINNED, "took the critical thrust of a column held at both ends"),
        Slip(M, P * v, "forgot the moment of the force across the boom"),
        Slip(alpha, 1 / (1 + P / P_cr), "let the thrust straighten the boom"),
        Slip(M, alpha * (F * L + P * v), "enlarged the whole moment, though the deflection is "
             "enlarged already"),
        Slip(v_1, 3 * FIRST, "left out the three below the fraction bar"),
    ),
    where=(0.68 * P_cr > P, 0.12 * P_cr < P, v < 0.035 * L, v > 0.003 * L),
    usual=(P_cr > 2 * P,),
    check=check,
    picture=picture,
    seen="A boom held firmly at its foot on the left; at its head P presses along it and F acts "
    "across it.",
)  # fmt: skip
