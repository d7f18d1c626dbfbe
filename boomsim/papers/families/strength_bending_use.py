"""Bending stress at a mouth, and how much of what is allowed it uses."""

from sympy import symbols

from boomsim.gravity import GRAVITY
from boomsim.machine.shapes.box import box
from boomsim.mechanics.sections.elastic_stress import fibre_points, normal_stress
from boomsim.mechanics.sections.section_properties import Properties, properties
from boomsim.papers.check_models.textbook_boom import (
    droop_at_mouth,
    lift,
    textbook_boom,
    textbook_machine,
)
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values
from boomsim.papers.sketches.boom_sketches import telescoped

F, a, W_y, f_y, alpha = symbols("F a W_y f_y alpha")
M, sigma, f, u = symbols("M sigma f u")


def picture(values: Values, shown: Shown) -> str:
    """Draw the section standing out of the next larger one."""
    place = telescoped(1.0, overhang=2.4)
    (mouth, _), (head, _), sketch = place.start, place.end, place.sketch
    sketch.arrow((head, 108), (head, 77)).label((head + 6, 98), letter="F", anchor="start")
    return sketch.dimension((mouth, 30), (head, 30), letter="a", value=shown("a")).svg()


def box_of(modulus: float) -> Properties:
    """Scale a box until it has the section modulus [m3]."""
    pattern = properties(box(0.5, width=0.4, top=0.01, bottom=0.01, web=0.008)).modulus_top
    size = float((modulus / pattern) ** (1 / 3))
    shape = box(0.5 * size, width=0.4 * size, top=0.01 * size, bottom=0.01 * size, web=0.008 * size)
    return properties(shape)


def check(given: Values) -> float:
    """Read the moment at the mouth from the call path, and the stress of a box that fits."""
    boom = textbook_boom((2 * given["a"], 1.5 * given["a"]), strokes=(given["a"],))
    load = given["F"] / GRAVITY
    moved, _, forces = lift(textbook_machine(boom), extension=(1.0,), load=load)
    shape, droop = box_of(given["W_y"]), droop_at_mouth(moved, forces=forces)
    points = fibre_points(shape)
    stress = normal_stress(shape, axial=0.0, moment_y=-droop, moment_z=0.0, points=points)
    return float(stress.total[0]) / (given["alpha"] * given["f_y"])


FAMILY = Family(
    id="strength_bending_use",
    topic="strength",
    title="Bending stress and how much of the allowed it uses",
    text="A boom section stands {a=} out of the mouth of the next larger one; a force {F=} acts "
    "across it at its head. Its section modulus is {W_y=}, its steel yields at {f_y=}, and "
    "{alpha=} of that is allowed. How much of the allowed stress does bending use at the mouth?",
    assume="The section is weightless; shear and thrust are left out, and no plate buckles. More "
    "than 100 % may come out: then it is overloaded.",
    givens=(
        Given(F, "force across the boom", metric="4 to 60 kN by 0.5",
              us="1000 to 13000 lbf by 100"),
        Given(a, "overhang", metric="3 to 8.5 m by 0.1", us="10 to 28 ft by 0.5"),
        Given(W_y, "section modulus", metric="600 to 2600 cm3 by 50", us="36 to 160 in3 by 2"),
        Given(alpha, "share that is allowed", metric="60, 66, 75 %", us="60, 66, 75 %"),
        Given(f_y, "yield stress", metric="355, 460, 690, 960 MPa", us="50, 70, 100, 130 ksi"),
    ),
    steps=(
        Step(M, F * a, "bending moment at the mouth",
             "Multiply the force by its distance from the mouth.", metric="kN m", us="lbf ft"),
        Step(sigma, M / W_y, "bending stress", "Divide the moment by the section modulus.",
             metric="MPa", us="ksi"),
        Step(f, alpha * f_y, "allowed stress", "Take the allowed share of the yield stress.",
             metric="MPa", us="ksi"),
        Step(u, sigma / f, "utilisation of the allowed stress",
             "Utilisation is what is there over what is allowed.", metric="%", us="%"),
    ),
    slips=(
        Slip(f, f_y, "compared with the yield stress itself"),
        Slip(u, sigma / (alpha * f), "counted the allowed share twice"),
        Slip(M, F * a / 2, "took half the distance, as for a spread load"),
        Slip(f, f_y * (1 - alpha), "took off what is allowed instead of taking it"),
        Slip(u, 1 - sigma / f, "gave what is left instead of what is used"),
    ),
    where=(u < 1.15, u > 0.2),
    check=check,
    picture=picture,
    seen="A section stands out of the next larger one over the length a; F acts downwards at its "
    "head.",
)  # fmt: skip
