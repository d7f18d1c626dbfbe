"""Two telescoped sections: both bend, and the outer one also lets the inner one turn."""

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
from boomsim.papers.sketches.boom_sketches import telescoped

F, l_0, a, c, I_0, I_1, E = symbols("F l_0 a c I_0 I_1 E")
v_1, v_c, v_0, v = symbols("v_1 v_c v_0 v")


def picture(values: Values, shown: Shown) -> str:
    """Draw the outer section held at its left end, the inner one standing out of it."""
    place = telescoped(values["c"], overhang=values["a"], outer=values["l_0"])
    (mouth, _), (head, _), sketch = place.start, place.end, place.sketch
    sketch.arrow((head, 108), (head, 77)).label((head + 6, 98), letter="F", anchor="start")
    sketch.dimension((20, 96), (mouth, 96), letter="l_0", value=shown("l_0"))
    tail = mouth - place.scale * values["c"]
    sketch.dimension((tail, 24), (mouth, 24), letter="c", value=shown("c"))
    return sketch.dimension((mouth, 24), (head, 24), letter="a", value=shown("a")).svg()


def check(given: Values) -> float:
    """Hang the force on two level sections, the outer one as good as clamped."""
    stiff = tuple(modulus_for(given["E"] * given[letter]) for letter in ("I_0", "I_1"))
    boom = textbook_boom(
        (given["l_0"], given["c"] + given["a"]), strokes=(given["a"],), modulus=stiff
    )
    made = clamped(textbook_machine(boom))
    _, state, _ = lift(made, extension=(1.0,), load=given["F"] / GRAVITY)
    return -float(state.head_above[0, 0])


with as_written():
    INNER = F * a**2 * (a + c) / (3 * E * I_1)
    OVERLAP = F * c * (a + c) ** 2 / (3 * E * I_0)
    BEHIND = F * ((a + l_0) ** 3 - (a + c) ** 3) / (3 * E * I_0)
    HELD = F * a**3 / (3 * E * I_1)
    AS_IN_ONE = F * ((a + c) ** 3 - a**3) / (3 * E * I_0)
    ITS_MOUTH = F * l_0**3 / (3 * E * I_0)

FAMILY = Family(
    id="deflection_two_sections",
    topic="deflection",
    title="Deflection of two telescoped sections",
    text="A level boom section of length {l_0=} is held firmly at one end. Out of its mouth stands "
    "a smaller section by {a=}; {c=} of it is still inside, on a pad at the mouth and one at its "
    "tail. A force {F=} acts across its head. The second moments of area are {I_0=} of the outer "
    "and {I_1=} of the inner section, the modulus of elasticity is {E=}. How far does the head "
    "droop?",
    assume="Both sections are weightless, the pads are rigid points without play, and deflections "
    "are small.",
    agreement=2.5e-3,
    givens=(
        Given(F, "force at the head", metric="5 to 40 kN by 1", us="1200 to 9000 lbf by 200"),
        Given(l_0, "length of the outer section", metric="5 to 9 m by 0.1",
              us="16 to 30 ft by 0.5"),
        Given(a, "overhang", metric="4 to 7.5 m by 0.1", us="13 to 25 ft by 0.5"),
        Given(c, "overlap", metric="1 to 2.5 m by 0.1", us="3 to 8 ft by 0.5"),
        Given(E, "modulus of elasticity", metric="210 GPa", us="29000 ksi"),
        Given(I_0, "second moment of the outer section", metric="40000 to 160000 cm4 by 5000",
              us="1000 to 4000 in4 by 50"),
        Given(I_1, "second moment of the inner section", metric="20000 to 90000 cm4 by 5000",
              us="500 to 2200 in4 by 50"),
    ),
    steps=(
        Step(v_1, INNER, "part from the inner section",
             "It is a beam on two pads that overhangs: it bends over its overhang and its overlap.",
             metric="mm", us="in", marks=2),
        Step(v_c, OVERLAP, "part from the outer section along the overlap",
             "There its moment grows from nothing at the mouth to F (a + c) at the rear pad; sum "
             "it up with the moment that a unit force at the head makes.",
             metric="mm", us="in", marks=2),
        Step(v_0, BEHIND, "part from the outer section behind it",
             "There its moment is the force times the distance from the head.",
             metric="mm", us="in", marks=2),
        Step(v, v_1 + v_c + v_0, "deflection of the head", "Add all parts.", metric="mm", us="in"),
    ),
    slips=(
        Slip(v_1, HELD, "held the inner section firmly at the mouth, where it can turn"),
        Slip(v_c, AS_IN_ONE, "took the outer section's moment at the mouth for F a"),
        Slip(v, v_1, "forgot that the outer section bends as well"),
        Slip(v, v_1 + v_0, "left out the overlap of the outer section"),
        Slip(v_0, ITS_MOUTH, "took how far the mouth sinks, and forgot that it also turns"),
        Slip(v, v_c + v_0, "forgot that the inner section bends as well"),
    ),
    where=(
        v < 0.035 * (a + l_0), v > 0.004 * (a + l_0), I_1 < 0.75 * I_0, I_1 > 0.3 * I_0,
        c < 0.8 * a,
    ),
    usual=(c > 0.145 * a,),  # an eighth of the section lies in the outer one
    check=check,
    picture=picture,
    seen="An outer section of length l_0 held at its left end; an inner one overlaps it by c and "
    "stands out of its mouth by a; F acts downwards at the head.",
)  # fmt: skip
