"""How large a mat soft ground asks for."""

import numpy as np
from sympy import pi, sqrt, symbols

from boomsim.mechanics.stability.support_reactions import ground_pressure
from boomsim.papers.problems.family import Family, Given, Slip, Step, Values

s, V, q = symbols("s V q")
F, A, b = symbols("F A b")


def check(given: Values) -> float:
    """Find the mat under which the pressure just is what the ground bears."""
    on_one = ground_pressure(np.array(given["s"] * given["V"]), area=1.0)
    return float(np.sqrt(on_one / given["q"]))


FAMILY = Family(
    id="stability_mat_size",
    topic="stability",
    title="Size of a mat",
    text="A crane and its load weigh {V=} together. At the worst slew angle one float carries {s=} "
    "of that. The ground bears {q=}. How wide must a square mat under the float be at least?",
    assume="The mat is rigid, its own weight is left out, and the float stands in its middle.",
    givens=(
        Given(s, "share on one float", metric="40 to 65 % by 1", us="40 to 65 % by 1"),
        Given(V, "weight with the load", metric="300 to 700 kN by 10",
              us="70000 to 160000 lbf by 2000"),
        Given(q, "bearing capacity of the ground", metric="80, 100, 120, 150, 200, 250 kN/m^2",
              us="1500, 2000, 2500, 3000, 4000, 5000 lbf/ft^2"),
    ),
    steps=(
        Step(F, s * V, "force on the float", "Take its share of the weight.",
             metric="kN", us="lbf"),
        Step(A, F / q, "area of the mat", "Divide by what a unit of area bears.",
             metric="m^2", us="ft^2"),
        Step(b, sqrt(A), "side of the mat", "The side of a square is the root of its area.",
             metric="m", us="ft"),
    ),
    slips=(
        Slip(F, V / 4, "gave every float a quarter"),
        Slip(F, V, "put the whole crane on one float"),
        Slip(b, sqrt(4 * A / pi), "took the diameter of a round mat"),
        Slip(b, sqrt(A) / 2, "halved the side, as if it were measured from the middle"),
    ),
    where=(b < 2.6,),
    check=check,
)  # fmt: skip
