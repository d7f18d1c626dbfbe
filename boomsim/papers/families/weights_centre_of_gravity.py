"""Where the centre of gravity of a telescoped boom lies."""

import numpy as np
from sympy import symbols

from boomsim.figures.colours_and_lines import INK, PAPER
from boomsim.gravity import GRAVITY
from boomsim.mechanics.boom.boom_state import solve_state
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.stability.masses import masses
from boomsim.papers.check_models.textbook_boom import textbook_boom, textbook_machine
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values, as_written
from boomsim.papers.sketches.sketch_svg import Sketch

W_0, W_1, W_2, l_0, l_1, l_2, c_1, c_2 = symbols("W_0 W_1 W_2 l_0 l_1 l_2 c_1 c_2")
x_0, x_1, x_2, W, x = symbols("x_0 x_1 x_2 W x")

LENGTHS = {"metric": "8 to 11 m by 0.1", "us": "26 to 36 ft by 0.5"}
OVERLAPS = {"metric": "1.5 to 4 m by 0.1", "us": "5 to 13 ft by 0.5"}
DEPTHS = (26, 19, 12)
"""Of the sections on the picture [pt]."""


def picture(values: Values, shown: Shown) -> str:
    """Draw three sections, each out of the next larger one."""
    sketch = Sketch(345, height=104)
    first = values["l_0"] - values["c_1"]
    tails = (0.0, first, first + values["l_1"] - values["c_2"])
    scale = 280 / (tails[2] + values["l_2"])
    parts = [
        (30 + scale * tail, 30 + scale * (tail + values[f"l_{i}"]), DEPTHS[i])
        for i, tail in enumerate(tails)
    ]
    for start, end, depth in parts:
        sketch.bar((start, 56), (end, 56), depth=depth, fill=PAPER)
    for number, (start, end, _) in enumerate(parts):
        level = 84 if number % 2 == 0 else 96
        sketch.dimension((start, level - 4), (end, level - 4), letter=f"l_{number}")
        sketch.circle(((start + end) / 2, 56), radius=2.5, fill=INK)
        sketch.arrow(((start + end) / 2, 53), ((start + end) / 2, 14))
        sketch.label(((start + end) / 2 + 4, 16), letter=f"W_{number}", anchor="start")
    for number in (1, 2):
        start, end, letter = parts[number][0], parts[number - 1][1], f"c_{number}"
        sketch.dimension((start, 34), (end, 34), letter="", of=letter)
        sketch.label(((start + end) / 2, 25), letter=letter)
    return sketch.circle((30, 56), radius=3).svg()


def check(given: Values) -> float:
    """Place the masses on a level boom, and take their mean distance from the heel pin."""
    lengths = [given["l_0"], given["l_1"], given["l_2"]]
    out = lengths[1] - given["c_1"], lengths[2] - given["c_2"]
    weighed = [given[f"W_{i}"] / GRAVITY for i in range(3)]
    made = textbook_machine(textbook_boom(lengths, strokes=out, masses=weighed))
    boom = condense(made, extension=np.ones((1, 2)))
    state = solve_state(boom, load=np.zeros((1, 1)), parts=1, angle=np.zeros((1, 1)))
    placed = masses(boom, state=state, counterweight=made.counterweights[0])
    return float(np.average(placed.out[:3, 0, 0], weights=placed.mass[:3])) - made.heel_out


with as_written():
    MIDDLE = l_0 - c_1 + l_1 / 2
    FAR = l_0 - c_1 + l_1 - c_2 + l_2 / 2
    MEAN = (W_0 * x_0 + W_1 * x_1 + W_2 * x_2) / W

FAMILY = Family(
    id="weights_centre_of_gravity",
    topic="weights",
    title="Centre of gravity of a boom in a configuration",
    text="Base section, section 1 and section 2 weigh {W_0=}, {W_1=} and {W_2=}; they are {l_0=}, "
    "{l_1=} and {l_2=} long. In this configuration section 1 overlaps the base section by {c_1=}, "
    "and section 2 overlaps section 1 by {c_2=}. How far from the heel pin, along the boom, is the "
    "boom's centre of gravity?",
    assume="Each section's weight is spread evenly along it; the heel pin is at the end of the "
    "base section.",
    givens=(
        Given(W_0, "weight of the base section", metric="18 to 36 kN by 0.5",
              us="4000 to 8000 lbf by 100"),
        Given(W_1, "weight of section 1", metric="12 to 18 kN by 0.5",
              us="2600 to 4000 lbf by 100"),
        Given(W_2, "weight of section 2", metric="6 to 11 kN by 0.5",
              us="1400 to 2500 lbf by 100"),
        Given(l_0, "length of the base section", **LENGTHS),
        Given(l_1, "length of section 1", **LENGTHS),
        Given(l_2, "length of section 2", **LENGTHS),
        Given(c_1, "overlap of section 1", **OVERLAPS),
        Given(c_2, "overlap of section 2", **OVERLAPS),
    ),
    steps=(
        Step(x_0, l_0 / 2, "middle of the base section, from the heel pin",
             "Evenly spread weight acts in the middle.", metric="m", us="ft"),
        Step(x_1, MIDDLE, "middle of section 1, from the heel pin",
             "Section 1 begins one overlap before the mouth of the base section.",
             metric="m", us="ft"),
        Step(x_2, FAR, "middle of section 2, from the heel pin",
             "Go on to the mouth of section 1, back by the second overlap, and half a length on.",
             metric="m", us="ft"),
        Step(W, W_0 + W_1 + W_2, "weight of the boom", "Add the weights.",
             metric="kN", us="lbf"),
        Step(x, MEAN, "centre of gravity from the heel pin",
             "The whole weight there has the moment of its parts: divide the sum of moments by it.",
             metric="m", us="ft"),
    ),
    slips=(
        Slip(x, (x_0 + x_1 + x_2) / 3, "took the mean distance, as if all weighed the same"),
        Slip(x_1, l_0 + l_1 / 2, "forgot the overlap of section 1"),
        Slip(x_2, l_0 + l_1 + l_2 / 2, "forgot both overlaps of section 2"),
        Slip(x_2, l_0 - c_1 + l_2 / 2, "left section 2 inside section 1"),
        Slip(x, (l_0 + l_1 - c_1 + l_2 - c_2) / 2, "took the middle of the boom"),
    ),
    # A section is about as long as the one around it, and shows little more than its nose [m].
    usual=(l_1 < l_0 + 0.6, l_2 < l_1 + 0.6, l_1 > l_0 - 1.5, l_2 > l_1 - 1.5),
    check=check,
    picture=picture,
    seen="Three sections, each standing out of the next larger one; the overlaps are c_1 and c_2, "
    "and each weight acts in the middle of its section.",
)  # fmt: skip
