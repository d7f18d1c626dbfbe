"""What the mouth of the next larger section has to bear, the section's own weight included."""

from math import cos as cosine
from math import sin as sine

from sympy import cos, symbols

from boomsim.figures.colours_and_lines import QUIET
from boomsim.gravity import GRAVITY
from boomsim.papers.check_models.textbook_boom import (
    droop_at_mouth,
    lift,
    textbook_boom,
    textbook_machine,
)
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values, as_written
from boomsim.papers.sketches.boom_sketches import telescoped

Q, W, l, a, theta = symbols("Q W l a theta")  # noqa: E741 - the book's letter of a length
W_a, M = symbols("W_a M")


def picture(values: Values, shown: Shown) -> str:
    """Draw the section turned level: what acts straight down then leans to the foot."""
    place = telescoped(values["l"] - values["a"], overhang=values["a"])
    (mouth, _), (head, _), sketch = place.start, place.end, place.sketch
    lean, fall = sine(values["theta"]), cosine(values["theta"])
    for x, y, letter in ((head, 68, "Q"), ((75 + head) / 2, 66, "W")):
        sketch.arrow((x + 36 * lean, y + 36 * fall), (x + 4 * lean, y + 4 * fall))
        sketch.label((x + 36 * lean + 5, y + 36 * fall - 2), letter=letter, anchor="start")
    sketch.label((18, 40), value="drawn turned level", anchor="start", color=QUIET, size=8)
    sketch.dimension((mouth, 24), (head, 24), letter="a", value=shown("a"))
    return sketch.dimension((75, 6), (head, 6), letter="l", value=shown("l")).svg()


def check(given: Values) -> float:
    """Lift with the section as far out, and read the moment at the mouth."""
    length, out = given["l"], given["a"]
    boom = textbook_boom((2 * length, length), strokes=(out,), masses=(0.0, given["W"] / GRAVITY))
    load = given["Q"] / GRAVITY
    moved, _, forces = lift(
        textbook_machine(boom), extension=(1.0,), load=load, angle=given["theta"]
    )
    return droop_at_mouth(moved, forces=forces)


with as_written():
    MOMENT = (Q * a + W_a * a / 2) * cos(theta)

FAMILY = Family(
    id="statics_mouth_moment",
    topic="statics",
    title="Moment at the mouth, with the section's own weight",
    text="The last boom section weighs {W=}, is {l=} long and stands {a=} out of the mouth of the "
    "next larger one. A gross load of {Q=} hangs at its head; the boom angle is {theta=}. How "
    "large is its bending moment at the mouth?",
    assume="The section's weight is spread evenly along it, the load hangs on its axis, and it "
    "does not bend.",
    givens=(
        Given(Q, "gross load", metric="8 to 60 kN by 1", us="2000 to 13000 lbf by 500"),
        Given(W, "weight of the section", metric="5 to 16 kN by 0.5", us="1200 to 3600 lbf by 100"),
        Given(a, "overhang", metric="4 to 8.5 m by 0.1", us="13 to 28 ft by 0.5"),
        Given(l, "length of the section", metric="7 to 11 m by 0.1", us="23 to 36 ft by 0.5"),
        Given(theta, "boom angle", metric="15 to 70 deg by 1", us="15 to 70 deg by 1"),
    ),
    steps=(
        Step(W_a, W * a / l, "weight of the part that stands out",
             "Only what is beyond the mouth bends the section there: take its share of the length.",
             metric="kN", us="lbf"),
        Step(M, MOMENT, "bending moment at the mouth",
             "The load acts at the head, the weight half way to it; only the level part of a "
             "distance is a lever arm.",
             metric="kN m", us="lbf ft"),
    ),
    slips=(
        Slip(M, Q * a * cos(theta), "forgot the section's own weight"),
        Slip(M, Q * a + W_a * a / 2, "took the distances along the boom for lever arms"),
        Slip(M, (Q + W_a) * a * cos(theta), "let the section's weight act at the head"),
        Slip(W_a, W, "took the weight of the whole section, its overlap included"),
        Slip(M, (Q * l + W * l / 2) * cos(theta), "took the lever arms from the tail"),
    ),
    where=(a < 0.85 * l, a > 0.45 * l),
    usual=(W / l > 600,),  # [N/m]
    check=check,
    picture=picture,
    seen="A section of length l stands out of the next larger one over the length a; its weight W "
    "acts in its middle, the load Q at its head.",
)  # fmt: skip
