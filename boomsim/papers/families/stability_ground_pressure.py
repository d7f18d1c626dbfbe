"""A float on the ground: the same force on a little less diameter presses much harder."""

import numpy as np
from sympy import pi, symbols

from boomsim.mechanics.stability.support_reactions import ground_pressure
from boomsim.papers.problems.family import Family, Given, Slip, Step, Values

F, D = symbols("F D")
A, p = symbols("A p")


def check(given: Values) -> float:
    """Spread the force over a round float, given by 3600 corners."""
    turn = np.linspace(0.0, 2 * np.pi, 3601)
    x, y = given["D"] / 2 * np.cos(turn), given["D"] / 2 * np.sin(turn)
    area = float(np.sum(x[:-1] * y[1:] - x[1:] * y[:-1])) / 2
    return float(ground_pressure(np.array(given["F"]), area=area))


FAMILY = Family(
    id="stability_ground_pressure",
    topic="stability",
    title="Ground pressure under a float",
    text="A float presses on the ground with {F=}. It is round, with a diameter of {D=}. How large "
    "is the pressure under it?",
    assume="The pressure is even under the whole float.",
    givens=(
        Given(F, "force on the float", metric="150 to 600 kN by 10",
              us="35000 to 135000 lbf by 1000"),
        Given(D, "diameter of the float", metric="0.4 to 0.8 m by 0.05", us="16 to 32 in by 1"),
    ),
    steps=(
        Step(A, pi * D**2 / 4, "area of the float", "Of a circle, from its diameter.",
             metric="m^2", us="in^2"),
        Step(p, F / A, "ground pressure", "Divide the force by the area.",
             metric="kN/m^2", us="psi"),
    ),
    slips=(
        Slip(A, pi * D**2, "took the diameter for the radius"),
        Slip(A, D**2, "took the float for a square"),
        Slip(A, pi * D**2 / 2, "divided by two instead of four"),
        Slip(A, pi * D**2 / 16, "took the radius for the diameter"),
        Slip(A, D**2 / 4, "left out the number pi"),
    ),
    usual=(p < 3e6,),  # [Pa]: floats grow with the crane
    check=check,
    agreement=1e-5,
)  # fmt: skip
