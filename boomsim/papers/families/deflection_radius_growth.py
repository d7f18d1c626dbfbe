"""How much the radius grows when the load is lifted off the ground."""

from itertools import pairwise

import numpy as np
from sympy import cos, sin, symbols

from boomsim.figures.colours_and_lines import QUIET
from boomsim.gravity import GRAVITY
from boomsim.mechanics.boom.boom_state import solve_state
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.stability.masses import masses
from boomsim.papers.check_models.textbook_boom import (
    MANY,
    clamped,
    modulus_for,
    textbook_boom,
    textbook_machine,
)
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values, as_written
from boomsim.papers.sketches.boom_sketches import GROUND, angle_at, crane

Q, L, theta, E, I_y = symbols("Q L theta E I_y")
F, v, g = symbols("F v g")


def picture(values: Values, shown: Shown) -> str:
    """Draw the boom straight and, dashed, as it droops."""
    place = crane(values["theta"], axis=False)
    angle_at(place, angle=values["theta"], letter="theta", value=shown("theta"))
    points = [place.at(s, off=-16 * s**2 * (3 - s) / 2) for s in np.linspace(0, 1, 13)]
    for one, other in pairwise(points):
        place.sketch.line(one, other, width=1.0, dash="3 2")
    (x, _), (end, low) = place.end, points[-1]
    place.sketch.line((end, low), (end, 10), width=0.5, dash="3 2")
    place.sketch.line((x, GROUND), (x, 10), width=0.4, color=QUIET)
    place.sketch.dimension((x, 14), (end, 14), letter="", of="g")
    place.sketch.not_to_scale("droop", at=(112, 6))
    return place.sketch.label((end + 10, 11), letter="g", anchor="start").svg()


def check(given: Values) -> float:
    """Lift the load at the same boom angle, and see how much farther out the head is."""
    stiff = modulus_for(given["E"] * given["I_y"])
    made = clamped(textbook_machine(textbook_boom((given["L"],), modulus=(stiff,))))
    boom = condense(made, extension=np.zeros((1, 0)))
    load = np.array([[0.0, given["Q"] / GRAVITY]])
    angle = np.full((1, 2), given["theta"])
    state = solve_state(boom, load=load, parts=MANY, angle=angle)
    placed = masses(boom, state=state, counterweight=made.counterweights[0])
    return float(np.diff(placed.head_out[0])[0])


with as_written():
    DROOP = F * L**3 / (3 * E * I_y)

FAMILY = Family(
    id="deflection_radius_growth",
    topic="deflection",
    title="How much the radius grows under load",
    text="A boom of length {L=} stands at a boom angle of {theta=}, held firmly at its foot. Its "
    "second moment of area is {I_y=} and its modulus of elasticity {E=}. A gross load of {Q=} is "
    "lifted off the ground at its head. By how much does the radius grow?",
    assume="The boom is weightless and bends evenly, deflections are small, and the thrust does "
    "not enlarge them (that would add up to 3 %).",
    agreement=3.5e-2,
    givens=(
        Given(Q, "gross load", metric="10 to 80 kN by 1", us="2500 to 18000 lbf by 500"),
        Given(L, "boom length", metric="10 to 20 m by 0.5", us="32 to 66 ft by 2"),
        Given(theta, "boom angle", metric="30 to 70 deg by 1", us="30 to 70 deg by 1"),
        Given(E, "modulus of elasticity", metric="210 GPa", us="29000 ksi"),
        Given(I_y, "second moment of area", metric="40000 to 250000 cm4 by 5000",
              us="1000 to 6000 in4 by 100"),
    ),
    steps=(
        Step(F, Q * cos(theta), "part of the load across the boom",
             "Only what acts across the boom bends it.", metric="kN", us="lbf"),
        Step(v, DROOP, "deflection of the head across the boom",
             "A force at the free end of a cantilever: F L³ over 3 E I.", metric="mm", us="in"),
        Step(g, v * sin(theta), "growth of the radius",
             "The head moves square to the boom: the steeper it is, the more of that is outwards.",
             metric="mm", us="in"),
    ),
    slips=(
        Slip(F, Q, "let the whole load act across the boom"),
        Slip(g, v, "took the deflection across the boom for the growth"),
        Slip(g, v * cos(theta), "took the downward part of the deflection"),
        Slip(F, Q * sin(theta), "took the part of the load along the boom"),
        Slip(v, F * L**3 / (8 * E * I_y), "took the load for one that is spread along the boom"),
    ),
    where=(4 * Q * L**2 * sin(theta) < 0.3 * E * I_y, v < 0.03 * L, v > 0.003 * L),
    check=check,
    picture=picture,
    seen="A boom at the boom angle, and dashed the same boom drooping: its head has moved outwards "
    "by g.",
)  # fmt: skip
