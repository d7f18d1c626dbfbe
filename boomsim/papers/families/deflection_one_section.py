"""How far one section droops that is held firmly at one end."""

from sympy import symbols

from boomsim.gravity import GRAVITY
from boomsim.papers.check_models.textbook_boom import (
    clamped,
    lift,
    modulus_for,
    textbook_boom,
    textbook_machine,
)
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values, as_written
from boomsim.papers.sketches.boom_sketches import bar_of

F, W, a, E, I_y = symbols("F W a E I_y")
v_F, v_W, v = symbols("v_F v_W v")


def picture(values: Values, shown: Shown) -> str:
    """Draw the section held at its left end."""
    place = bar_of(wall=True)
    (left, y), (head, _), sketch = place.start, place.end, place.sketch
    sketch.arrow((head, 108), (head, 75)).label((head + 6, 98), letter="F", anchor="start")
    sketch.arrow(((left + head) / 2, y - 3), ((left + head) / 2, 34))
    sketch.label(((left + head) / 2 + 5, 38), letter="W", anchor="start")
    return sketch.dimension((left, 18), (head, 18), letter="a", value=shown("a")).svg()


def check(given: Values) -> float:
    """Hang the force on a level section that is as good as clamped."""
    stiff = modulus_for(given["E"] * given["I_y"])
    boom = textbook_boom((given["a"],), masses=(given["W"] / GRAVITY,), modulus=(stiff,))
    made = clamped(textbook_machine(boom))
    _, state, _ = lift(made, extension=(), load=given["F"] / GRAVITY)
    return -float(state.head_above[0, 0])


with as_written():
    BY_FORCE = F * a**3 / (3 * E * I_y)
    BY_WEIGHT = W * a**3 / (8 * E * I_y)

FAMILY = Family(
    id="deflection_one_section",
    topic="deflection",
    title="Deflection of one section",
    text="A level boom section is held firmly at one end and stands out by {a=}. What stands out "
    "weighs {W=}, spread evenly; a force {F=} acts across its free end. Its second moment of area "
    "is {I_y=} and its modulus of elasticity {E=}. How far does its end droop?",
    assume="Deflections are small, and shear does not add to them.",
    agreement=2e-3,
    givens=(
        Given(F, "force at the free end", metric="5 to 60 kN by 1", us="1200 to 13000 lbf by 200"),
        Given(W, "weight of what stands out", metric="4 to 16 kN by 0.5",
              us="1000 to 3600 lbf by 100"),
        Given(a, "length that stands out", metric="5 to 11 m by 0.1", us="16 to 36 ft by 0.5"),
        Given(E, "modulus of elasticity", metric="210 GPa", us="29000 ksi"),
        Given(I_y, "second moment of area", metric="12000 to 90000 cm4 by 1000",
              us="300 to 2200 in4 by 20"),
    ),
    steps=(
        Step(v_F, BY_FORCE, "deflection by the force",
             "A force at the free end of a cantilever: F a³ over 3 E I.",
             metric="mm", us="in"),
        Step(v_W, BY_WEIGHT, "deflection by the section's own weight",
             "A load spread evenly over a cantilever: W a³ over 8 E I.",
             metric="mm", us="in"),
        Step(v, v_F + v_W, "deflection of the free end", "Both act at once: add them.",
             metric="mm", us="in"),
    ),
    slips=(
        Slip(v_W, W * a**3 / (3 * E * I_y), "let the section's own weight act at the free end"),
        Slip(v, v_F, "forgot the section's own weight"),
        Slip(v_F, F * a**3 / (8 * E * I_y), "took the force for a spread load"),
        Slip(v_F, F * a**3 / (48 * E * I_y), "took the section for a beam on two supports"),
        Slip(v, v_F - v_W, "took the two off each other, though both act downwards"),
    ),
    where=(v < 0.035 * a, v > 0.004 * a, W < 1.2 * F),
    check=check,
    picture=picture,
    seen="A level section held at its left end by a wall; its weight W acts in the middle, the "
    "force F downwards at its free end, at the distance a.",
)  # fmt: skip
