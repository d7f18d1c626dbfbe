"""Four floats share the weight: a quarter each, and a couple for each way the resultant is off."""

import numpy as np
from sympy import symbols

from boomsim.figures.colours_and_lines import LOAD
from boomsim.mechanics.stability.support_reactions import support_reactions
from boomsim.papers.check_models.standing_crane import floats
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values
from boomsim.papers.sketches.crane_sketches import floats_measured, plan_view

V, L_x, B, e_x, e_y = symbols("V L_x B e_x e_y")
Q, Q_x, Q_y, F = symbols("Q Q_x Q_y F")


def picture(values: Values, shown: Shown) -> str:
    """Draw the floats from above."""
    plan = plan_view(values["L_x"], width=values["B"])
    floats_measured(plan, along=("L_x", shown("L_x")), across=("B", shown("B")))
    x, y = plan.at(2 * values["e_x"] / values["L_x"], 2 * values["e_y"] / values["B"])
    (u, v), sketch = plan.centre, plan.sketch
    sketch.line((u, v), (x, v), width=0.6, dash="2 2").line((x, v), (x, y), width=0.6, dash="2 2")
    sketch.circle((x, y), radius=3.4, fill=LOAD).label((x + 6, y - 10), letter="V", anchor="start")
    sketch.label(((u + x) / 2, v + 4), letter="e_x", size=8)
    return sketch.label((x + 3, (v + y) / 2), letter="e_y", anchor="start", size=8).svg()


def check(given: Values) -> float:
    """Stand the crane on four equal springs."""
    found = support_reactions(
        floats(given["L_x"], given["B"]),
        weight=np.array(given["V"]), x=np.array(given["e_x"]), y=np.array(given["e_y"]),
    )  # fmt: skip
    return float(found.force.max())


LENGTHS = {"metric": "5.5 to 7.5 m by 0.1", "us": "18 to 25 ft by 0.5"}

FAMILY = Family(
    id="stability_float_reactions",
    topic="stability",
    title="Float reactions",
    text="A crane and its load weigh {V=} together. Its floats stand {L_x=} apart along the "
    "carrier and {B=} apart across it. The resultant acts {e_x=} to the rear and {e_y=} to the "
    "right of the middle of the floats. What does the most loaded float carry?",
    assume="The carrier is rigid, the ground is equally stiff under all four floats, and none of "
    "them has lifted.",
    givens=(
        Given(V, "weight with the load", metric="300 to 700 kN by 10",
              us="70000 to 160000 lbf by 2000"),
        Given(L_x, "floats apart lengthwise", **LENGTHS),
        Given(B, "floats apart across", **LENGTHS),
        Given(e_x, "resultant to the rear", metric="0.3 to 1.8 m by 0.05", us="1 to 6 ft by 0.25"),
        Given(e_y, "resultant to the right", metric="0.3 to 1.8 m by 0.05", us="1 to 6 ft by 0.25"),
    ),
    steps=(
        Step(Q, V / 4, "even share", "With the resultant in the middle each float has a quarter.",
             metric="kN", us="lbf"),
        Step(Q_x, V * e_x / (2 * L_x), "more on a rear float",
             "Two floats at the rear and two at the front hold the moment lengthwise as a couple.",
             metric="kN", us="lbf"),
        Step(Q_y, V * e_y / (2 * B), "more on a right float",
             "Two floats on either side hold the moment across as a couple.",
             metric="kN", us="lbf"),
        Step(F, Q + Q_x + Q_y, "most loaded float",
             "The float at the rear right has the quarter and both additions.",
             metric="kN", us="lbf"),
    ),
    slips=(
        Slip(Q_x, V * e_x / L_x, "gave the whole couple lengthwise to one float instead of two"),
        Slip(Q_y, V * e_y / B, "gave the whole couple across to one float instead of two"),
        Slip(F, Q_x + Q_y, "forgot the even share"),
        Slip(F, Q + Q_x, "left out that the resultant is to the right as well"),
        Slip(F, Q, "shared the weight evenly"),
        Slip(F, Q - Q_x - Q_y, "took the float at the opposite corner, which carries least"),
    ),
    where=(e_x / L_x + e_y / B < 0.46, e_x / L_x + e_y / B > 0.16),
    check=check,
    picture=picture,
    seen="Four floats from above, L_x apart lengthwise and B across; the resultant V acts e_x to "
    "the rear and e_y to the right of their middle.",
)  # fmt: skip
