"""The base section is a beam on two supports that overhangs: it bends between them as well."""

from dataclasses import replace

from sympy import symbols

from boomsim.gravity import GRAVITY
from boomsim.papers.check_models.textbook_boom import (
    lift,
    modulus_for,
    textbook_boom,
    textbook_machine,
)
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values, as_written
from boomsim.papers.sketches.boom_sketches import bar_of

F, a, b, E, I_y = symbols("F a b E I_y")
v_a, v_b, v = symbols("v_a v_b v")


def picture(values: Values, shown: Shown) -> str:
    """Draw the base section on heel pin and luffing cylinder."""
    share = values["b"] / (values["a"] + values["b"])
    place = bar_of(supports=(0.0, share))
    (left, _), (head, _), sketch = place.start, place.end, place.sketch
    middle = left + share * (head - left)
    sketch.arrow((head, 108), (head, 75)).label((head + 6, 98), letter="F", anchor="start")
    sketch.label((left, 36), value="heel pin", size=8)
    sketch.label((middle, 36), value="luffing cylinder", size=8)
    sketch.dimension((left, 16), (middle, 16), letter="b", value=shown("b"))
    return sketch.dimension((middle, 16), (head, 16), letter="a", value=shown("a")).svg()


def check(given: Values) -> float:
    """Hang the force on a level base section, the cylinder upright below it."""
    whole, held = given["a"] + given["b"], given["b"]
    boom = textbook_boom((whole,), modulus=(modulus_for(given["E"] * given["I_y"]),))
    made = textbook_machine(boom)
    cylinder = replace(made.cylinder, attach_along=held, base_out=made.heel_out + held)
    made = replace(made, cylinder=cylinder)
    _, state, _ = lift(made, extension=(), load=given["F"] / GRAVITY)
    return -float(state.head_above[0, 0])


with as_written():
    BEYOND = F * a**3 / (3 * E * I_y)
    BETWEEN = F * a**2 * b / (3 * E * I_y)

FAMILY = Family(
    id="deflection_base_section",
    topic="deflection",
    title="Deflection of the base section on heel pin and cylinder",
    text="A level base section turns on the heel pin and rests on the luffing cylinder {b=} from "
    "it. A force {F=} acts across its front, {a=} beyond the cylinder. Its second moment of area "
    "is {I_y=} and its modulus of elasticity {E=}. How far does its front droop?",
    assume="The section is weightless, deflections are small, and the cylinder does not give.",
    agreement=1e-3,
    givens=(
        Given(F, "force at the front", metric="20 to 150 kN by 5", us="5000 to 33000 lbf by 500"),
        Given(a, "overhang beyond the cylinder", metric="4 to 8 m by 0.1", us="13 to 26 ft by 0.5"),
        Given(b, "heel pin to cylinder", metric="3 to 5.5 m by 0.1", us="10 to 18 ft by 0.5"),
        Given(E, "modulus of elasticity", metric="210 GPa", us="29000 ksi"),
        Given(I_y, "second moment of area", metric="60000 to 260000 cm4 by 5000",
              us="1500 to 6200 in4 by 50"),
    ),
    steps=(
        Step(v_a, BEYOND, "part from bending beyond the cylinder",
             "As if the section were held firmly at the cylinder: F a³ over 3 E I.",
             metric="mm", us="in"),
        Step(v_b, BETWEEN, "part from bending between pin and cylinder",
             "The part between turns by F a b over 3 E I at the cylinder; times the overhang.",
             metric="mm", us="in"),
        Step(v, v_a + v_b, "deflection of the front", "Add both parts.", metric="mm", us="in"),
    ),
    slips=(
        Slip(v, v_a, "held the section firmly at the cylinder, where it can turn"),
        Slip(v_a, F * (a + b) ** 3 / (3 * E * I_y), "held the section firmly at the heel pin"),
        Slip(v, v_b, "forgot that the part beyond the cylinder bends as well"),
        Slip(v_b, F * a**2 * b / (2 * E * I_y), "took the turn of a part that is free at its end"),
        Slip(v_b, F * a * b**2 / (3 * E * I_y), "multiplied the turn by the wrong length"),
    ),
    where=(v < 0.02 * a, v > 0.003 * a, a > 1.1 * b),
    check=check,
    picture=picture,
    seen="A level section on two supports: the heel pin at its left end and the luffing cylinder "
    "at the distance b; F acts downwards at its front, a beyond the cylinder.",
)  # fmt: skip
