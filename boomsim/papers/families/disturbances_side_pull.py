"""A load that hangs out of plumb pulls the boom sideways, where it has least to set against."""

import numpy as np
from sympy import symbols

from boomsim.figures.colours_and_lines import LOAD, PAPER, QUIET
from boomsim.gravity import GRAVITY
from boomsim.machine.model import Disturbances
from boomsim.mechanics.boom.boom_state import solve_state
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.boom.internal_forces import section_forces
from boomsim.papers.check_models.textbook_boom import MANY, textbook_boom, textbook_machine
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values
from boomsim.papers.sketches.sketch_svg import Sketch

W, d, j, L, b = symbols("W d j L b")
H, M = symbols("H M")

OVERLAP = 2.0
"""Of the moving section, which has no part in the answer [m]."""


def picture(values: Values, shown: Shown) -> str:
    """Draw the boom from above, and beside it the hoist line from behind."""
    sketch = Sketch(360, height=118).not_to_scale(at=(236, 24))
    mouth = 16 + 220 * values["b"] / values["L"]
    sketch.bar((16, 78), (mouth, 78), depth=20).bar((mouth, 78), (236, 78), depth=13, fill=PAPER)
    sketch.circle((16, 78), radius=3).circle((236, 78), radius=3.4)
    sketch.arrow((236, 74), (236, 42)).label((242, 52), letter="H", anchor="start")
    sketch.dimension((16, 102), (mouth, 102), letter="b", value=shown("b"))
    sketch.dimension((16, 18), (236, 18), letter="L", value=shown("L"))
    sketch.label((60, 54), value="from above", color=QUIET, size=8)
    sketch.circle((322, 104), radius=3.4).line((322, 104), (300, 30), width=0.8)
    sketch.line((322, 104), (322, 26), width=0.5, color=QUIET, dash="3 2")
    sketch.shape([(294, 20), (306, 20), (306, 30), (294, 30)], fill=LOAD)
    sketch.label((328, 62), letter="j", anchor="start")
    sketch.dimension((300, 10), (322, 10), letter="", of="d")
    sketch.label((326, 7), letter="d", anchor="start")
    return sketch.label((290, 7), value="from behind", color=QUIET, size=8, anchor="end").svg()


def check(given: Values) -> float:
    """Pull the load of the call path to the side, and read the section at the mouth."""
    out = given["L"] - given["b"]
    boom = textbook_boom((given["b"], OVERLAP + out), strokes=(out,))
    made = condense(textbook_machine(boom), extension=np.ones((1, 1)))
    pulled = Disturbances(side_pull=given["d"] / given["j"])
    state = solve_state(
        made, load=np.full((1, 1), given["W"] / GRAVITY), parts=MANY, angle=np.zeros((1, 1)),
        disturbances=pulled,
    )  # fmt: skip
    forces = section_forces(made, state=state)
    return abs(float(forces.moment_side[0, made.stations.at_mouth[0, 1], 0]))


FAMILY = Family(
    id="disturbances_side_pull",
    topic="disturbances",
    title="Side pull on the boom",
    text="A load of weight {W=} is picked up {d=} to the side of the boom head, on a hoist line "
    "that reaches {j=} down. The boom is {L=} long; its base section, {b=} long, ends at the mouth "
    "out of which the others stand. Which sideways bending moment does that make at the mouth?",
    assume="The boom does not bend, and the hoist line is so steep that its sideways pull is the "
    "weight times the offset over the height.",
    givens=(
        Given(W, "weight of the load", metric="10 to 80 kN by 1", us="2000 to 18000 lbf by 500"),
        Given(d, "offset to the side", metric="0.2 to 1.5 m by 0.1", us="0.5 to 5 ft by 0.5"),
        Given(j, "hoist line down to the load", metric="8 to 30 m by 1", us="25 to 100 ft by 5"),
        Given(L, "boom length", metric="16 to 40 m by 0.5", us="52 to 130 ft by 2"),
        Given(b, "length of the base section", metric="8 to 12 m by 0.5", us="26 to 40 ft by 1"),
    ),
    steps=(
        Step(H, W * d / j, "sideways pull at the boom head",
             "The hoist line pulls along itself: its level part is to the weight as the offset is "
             "to the height.", metric="kN", us="lbf"),
        Step(M, H * (L - b), "sideways moment at the mouth",
             "From the mouth, the pull has what stands out of it as lever arm.",
             metric="kN m", us="lbf ft"),
    ),
    slips=(
        Slip(M, H * L, "took the whole boom as lever arm, which gives the moment at the heel pin"),
        Slip(M, H * b, "took the base section as lever arm"),
        Slip(H, W * d / L, "divided the offset by the boom length"),
        Slip(M, H * (L - b) / 2, "put the pull in the middle of what stands out"),
        Slip(H, W * d / (d + j), "divided the offset by the sum of both distances"),
    ),
    where=(1.6 * b < L, d < 0.08 * j, j < L),
    check=check,
    agreement=1e-4,
    picture=picture,
    seen="The boom from above, L long with a base section of length b, pulled sideways at its "
    "head; and the hoist line from behind, j high and off plumb by d.",
)  # fmt: skip
