"""Over a corner one float comes up long before the crane tips."""

import numpy as np
from sympy import Max, Min, cos, sin, symbols

from boomsim.figures.colours_and_lines import QUIET
from boomsim.gravity import GRAVITY
from boomsim.mechanics.stability.support_reactions import support_reactions
from boomsim.papers.check_models.standing_crane import crane, floats, stand
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values
from boomsim.papers.sketches.crane_sketches import floats_measured, plan_view

m, L_x, B, R, psi = symbols("m L_x B R psi")
a, b, P, T, p = symbols("a b P T p")


def picture(values: Values, shown: Shown) -> str:
    """Draw the floats and the boom from above."""
    plan = plan_view(values["L_x"], width=values["B"], room=36.0)
    floats_measured(plan, along=("L_x", shown("L_x")), across=("B", shown("B")))
    head = plan.boom(values["psi"], long=128.0)
    (x, y), sketch = plan.centre, plan.sketch
    sketch.line((x, y), (x + 112, y), width=0.5, color=QUIET, dash="7 2 1 2")
    sketch.label((x + 84, y - 12), letter="psi", value=shown("psi"), anchor="start")
    sketch.not_to_scale("radius")
    return sketch.label((head[0] + 6, head[1]), letter="R", value=shown("R"), anchor="start").svg()


def check(given: Values) -> float:
    """Follow the light float down to nothing, and take the crane's tipping load."""
    support, trial = floats(given["L_x"], given["B"]), 0.01 * given["m"]
    loads = np.array([0.0, trial])
    out = given["R"] * loads / (given["m"] + loads)
    force = support_reactions(
        support, weight=GRAVITY * (given["m"] + loads),
        x=out * np.cos(given["psi"]), y=out * np.sin(given["psi"]),
    ).force.min(axis=0)  # fmt: skip
    lifts = trial * force[0] / (force[0] - force[1])
    boom = crane(turning=((given["m"], 0.0),), support=support)
    return float(lifts) / stand(boom, load=trial, radius=given["R"], slew=given["psi"]).tipping_load


LENGTHS = {"metric": "5.5 to 7.5 m by 0.1", "us": "18 to 25 ft by 0.5"}

FAMILY = Family(
    id="stability_one_float_up",
    topic="stability",
    title="One float up",
    text="Without a load a crane has the mass {m=}, and all its floats carry the same. They stand "
    "{L_x=} apart along the carrier and {B=} apart across it; the axis of rotation is in their "
    "middle. The boom is slewed by {psi=} from the rear, towards a corner, and a load is raised at "
    "a radius of {R=}. At what share of the tipping load does the first float come up?",
    assume="Carrier and boom are rigid, and the ground is equally stiff under all four floats.",
    givens=(
        Given(m, "mass without a load", metric="36 to 60 t by 1", us="80000 to 130000 lb by 2000"),
        Given(L_x, "floats apart lengthwise", **LENGTHS),
        Given(B, "floats apart across", **LENGTHS),
        Given(psi, "slew angle", metric="25 to 65 deg by 1", us="25 to 65 deg by 1"),
        Given(R, "radius", metric="7 to 16 m by 0.5", us="23 to 52 ft by 1"),
    ),
    steps=(
        Step(a, 2 * R * cos(psi) / L_x, "radius lengthwise, over half the float distance",
             "Take the radius lengthwise and divide by half the distance of the floats.",
             metric="", us=""),
        Step(b, 2 * R * sin(psi) / B, "radius across, over half the float distance",
             "Take the radius across and divide by half the distance of the floats.",
             metric="", us=""),
        Step(P, m / (a + b - 1), "load at which the opposite float comes up",
             "It is empty when mass and load together are as much as the load times the sum of "
             "both numbers.", metric="t", us="lb", marks=2),
        Step(T, m / (Max(a, b) - 1), "tipping load",
             "The crane tips about the side for which the larger number is; the load's lever arm "
             "counts from there.", metric="t", us="lb", marks=2),
        Step(p, P / T, "share of the tipping load", "Divide one by the other.",
             metric="%", us="%", tolerance=0.015),
    ),
    slips=(
        Slip(P, m / (a + b), "forgot that the load presses on the floats as well"),
        Slip(T, m / Max(a, b), "took the radius instead of the lever arm beyond the tipping line"),
        Slip(P, m / (2 * (a + b) - 1), "divided by the distances of the floats and not by half"),
        Slip(a, 2 * R / L_x, "took the whole radius lengthwise, as if the boom pointed "
             "to the rear"),
        Slip(T, m / (a + b - 1), "thought that the crane tips as soon as a float is up"),
        Slip(T, m / (Min(a, b) - 1), "took the side with the smaller number for the tipping line"),
    ),
    where=(Max(a, b) > 1.3, Min(a, b) > 1.1, p > 0.1, p < 0.8),
    check=check,
    picture=picture,
    seen="Four floats from above, L_x apart lengthwise and B across; the boom points from their "
    "middle towards the corner at the rear right, at the angle psi from the rear.",
)  # fmt: skip
