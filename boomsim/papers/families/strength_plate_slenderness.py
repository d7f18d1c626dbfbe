"""How slender a plate of the box is: the number that decides whether it buckles early."""

from sympy import sqrt, symbols

from boomsim.mechanics.sections.plate_buckling_factor import plate_slenderness
from boomsim.papers.problems.family import Family, Given, Slip, Step, Values, as_written

b, t, f_y, f_0, k = symbols("b t f_y f_0 k")
epsilon, lambda_p = symbols("epsilon lambda_p")

RATIOS = {4.0: 1.0, 7.81: 0.0, 23.9: -1.0}
"""Stress ratio by the buckling factor that EN 1993-1-5, Table 4.1 prints for it [1]."""


def check(given: Values) -> float:
    """Ask the plate that the call path works with."""
    return plate_slenderness(
        given["b"], thickness=given["t"], yield_stress=given["f_y"],
        stress_ratio=RATIOS[given["k"]],
    )  # fmt: skip


with as_written():
    SLENDERNESS = b / (28.4 * t * epsilon * sqrt(k))
    WITHOUT_ROOT = b / (28.4 * t * epsilon * k)
    MILD = b / (28.4 * t * sqrt(k))
    ALONE = b / (28.4 * t * epsilon)

FAMILY = Family(
    id="strength_plate_slenderness",
    topic="strength",
    title="Slenderness of a plate",
    text="A plate of a boom's box section is {b=} wide between its neighbours and {t=} thick; its "
    "steel yields at {f_y=}. For the way it is stressed its buckling factor is {k=}. How large is "
    "its slenderness? The reference stress is {f_0=}.",
    assume="After EN 1993-1-5, 4.4: {lambda_p:} = ({b:}/{t:})/(28.4\u00a0{epsilon:}\u00a0√{k:}), "
    "where {epsilon:} = √({f_0:}/{f_y:}).",
    agreement=5e-4,
    givens=(
        Given(b, "width of the plate", metric="160 to 560 mm by 10", us="6 to 22 in by 0.5"),
        Given(t, "thickness", metric="5, 6, 8, 10 mm", us="0.1875, 0.25, 0.3125, 0.375 in"),
        Given(k, "buckling factor", metric="4, 7.81, 23.9", us="4, 7.81, 23.9"),
        Given(f_0, "reference stress", metric="235 MPa", us="34.1 ksi"),
        Given(f_y, "yield stress", metric="355, 460, 690, 960 MPa", us="50, 70, 100, 130 ksi"),
    ),
    steps=(
        Step(epsilon, sqrt(f_0 / f_y), "factor for the steel",
             "A stronger steel is stressed higher before it yields, so its plates buckle earlier.",
             metric="", us=""),
        Step(lambda_p, SLENDERNESS, "slenderness of the plate",
             "Put width over thickness, the factor for the steel and the buckling factor in.",
             metric="", us=""),
    ),
    slips=(
        Slip(epsilon, sqrt(f_y / f_0), "turned the factor for the steel upside down"),
        Slip(lambda_p, MILD, "left out the factor for the steel"),
        Slip(lambda_p, WITHOUT_ROOT, "forgot the root of the buckling factor"),
        Slip(epsilon, f_0 / f_y, "forgot the root in the factor for the steel"),
        Slip(lambda_p, ALONE, "left out the buckling factor"),
    ),
    where=(lambda_p < 2.2, lambda_p > 0.4),
    check=check,
)  # fmt: skip
