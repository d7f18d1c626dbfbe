"""The radius counts with the load on: a boom that droops reaches further out."""

import numpy as np
from sympy import cos, sin, symbols

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
from boomsim.papers.problems.family import Family, Given, Slip, Step, Values

L, theta, d, v = symbols("L theta d v")
R_0, g, R = symbols("R_0 g R")

LOAD = 1000.0
"""Any load will do: the boom is made as soft as its droop asks [kg]."""


def check(given: Values) -> float:
    """Lift with a boom that droops about so far, and scale its growth to the given droop."""
    length, turn = given["L"], given["theta"]
    force = LOAD * GRAVITY * float(np.cos(turn))
    stiff = modulus_for(force * length**3 / (3 * given["v"]))
    boom = textbook_boom((length,), modulus=(stiff,))
    made = clamped(textbook_machine(boom, heel_out=-given["d"]))
    moved = condense(made, extension=np.zeros((1, 0)))
    load, angle = np.array([[0.0, LOAD]]), np.full((1, 2), turn)
    state = solve_state(moved, load=load, parts=MANY, angle=angle)
    placed = masses(moved, state=state, counterweight=made.counterweights[0])
    unloaded, loaded = placed.head_out[0]
    droop = -state.head_above[0, 1]
    return float(unloaded + (loaded - unloaded) * given["v"] / droop)


FAMILY = Family(
    id="deflection_loaded_radius",
    topic="deflection",
    title="Loaded radius",
    text="A boom of length {L=} stands at a boom angle of {theta=}, with its heel pin {d=} behind "
    "the axis of rotation. Under the load its head moves by {v=} across the boom, downwards. At "
    "which radius does the load hang?",
    assume="The boom angle is that of the base section; that bending also brings the head nearer "
    "to the heel pin is left out.",
    agreement=2e-3,
    givens=(
        Given(L, "boom length", metric="20 to 42 m by 0.5", us="66 to 140 ft by 2"),
        Given(theta, "boom angle", metric="40 to 76 deg by 1", us="40 to 76 deg by 1"),
        Given(d, "heel pin behind the axis", metric="0.8 to 2.4 m by 0.1", us="3 to 8 ft by 0.5"),
        Given(v, "deflection across the boom", metric="0.3 to 1.2 m by 0.05",
              us="1 to 4 ft by 0.25"),
    ),
    steps=(
        Step(R_0, L * cos(theta) - d, "radius without the load",
             "The level part of the boom length, counted from the axis of rotation.",
             metric="m", us="ft", figures=4, tolerance=0.003),
        Step(g, v * sin(theta), "growth of the radius",
             "The head moves square to the boom: the steeper it is, the more of that is outwards.",
             metric="m", us="ft"),
        Step(R, R_0 + g, "loaded radius", "Add the growth.",
             metric="m", us="ft", figures=4, tolerance=0.003),
    ),
    slips=(
        Slip(R, R_0, "left out that the boom droops"),
        Slip(g, v * cos(theta), "took the downward part of the deflection"),
        Slip(R, R_0 - g, "took the growth off, as if the head came nearer"),
        Slip(R_0, L * cos(theta), "took the radius from the heel pin"),
        Slip(R_0, L * cos(theta) + d, "put the heel pin ahead of the axis of rotation"),
    ),
    where=(v < 0.035 * L, v > 0.012 * L),
    check=check,
)  # fmt: skip
