"""What is left of a slender plate's width when it buckles before it yields."""

from sympy import Integer, sqrt, symbols

from boomsim.mechanics.sections.plate_buckling_factor import (
    effective_widths,
    plate_slenderness,
    reduction,
)
from boomsim.papers.problems.family import Family, Given, Slip, Step, Values, as_written

b, t, f_y, f_0, psi = symbols("b t f_y f_0 psi")
k, lambda_p, rho, b_e = symbols("k lambda_p rho b_e")


def check(given: Values) -> float:
    """Reduce the plate as the call path does."""
    ratio = {"stress_ratio": given["psi"]}
    slender = plate_slenderness(
        given["b"], thickness=given["t"], yield_stress=given["f_y"], **ratio
    )
    return sum(effective_widths(given["b"], share=reduction(slender, **ratio), **ratio))


with as_written():
    FACTOR = 8.2 / (1.05 + psi)
    SLENDERNESS = b * sqrt(f_y / f_0) / (28.4 * t * sqrt(k))
    MILD = b / (28.4 * t * sqrt(k))
    SHARE = (lambda_p - 0.055 * (3 + psi)) / lambda_p**2
    HALF_DONE = (lambda_p - 0.055 * (3 + psi)) / lambda_p

FAMILY = Family(
    id="strength_effective_width",
    topic="strength",
    title="Effective width of a slender plate",
    text="A plate of a boom's box section is {b=} wide between its neighbours and {t=} thick; its "
    "steel yields at {f_y=}. It is pressed along the boom; the stress at its less pressed edge is "
    "{psi=} times that at the other one. How much of its width is effective? The reference stress "
    "is {f_0=}.",
    assume="After EN 1993-1-5, 4.4: {k:} = 8.2/(1.05\u00a0+\u00a0{psi:}), {lambda_p:} = "
    "({b:}/{t:})\u00a0√({f_y:}/{f_0:})/(28.4\u00a0√{k:}), and the effective share is "
    "({lambda_p:}\u00a0−\u00a00.055\u00a0(3\u00a0+\u00a0{psi:}))/{lambda_p:}².",
    agreement=5e-4,
    givens=(
        Given(b, "width of the plate", metric="180 to 560 mm by 10", us="7 to 22 in by 0.5"),
        Given(t, "thickness", metric="5, 6, 8 mm", us="0.1875, 0.25, 0.3125 in"),
        Given(f_y, "yield stress", metric="355, 460, 690, 960 MPa", us="50, 70, 100, 130 ksi"),
        Given(psi, "stress ratio", metric="0, 0.2, 0.4, 0.5, 0.6, 0.8, 1",
              us="0, 0.2, 0.4, 0.5, 0.6, 0.8, 1"),
        Given(f_0, "reference stress", metric="235 MPa", us="34.1 ksi"),
    ),
    steps=(
        Step(k, FACTOR, "buckling factor",
             "For stress ratios from 0 to 1 the factor is 8.2 over 1.05 plus the ratio.",
             metric="", us=""),
        Step(lambda_p, SLENDERNESS, "slenderness of the plate",
             "Put width over thickness, the steel and the buckling factor in.",
             metric="", us=""),
        Step(rho, SHARE, "share of the width that is effective",
             "The more slender the plate, the less of it carries.", metric="", us=""),
        Step(b_e, rho * b, "effective width", "Multiply the width by this share.",
             metric="mm", us="in"),
    ),
    slips=(
        Slip(lambda_p, MILD, "left out how strong the steel is"),
        Slip(rho, HALF_DONE, "divided by the slenderness once instead of twice"),
        Slip(rho, 1 / lambda_p, "left out the second term of the reduction"),
        Slip(b_e, b - rho * b, "gave what buckling takes instead of what is left"),
        Slip(k, Integer(4), "took the plate for evenly pressed"),
    ),
    where=(lambda_p > 0.85, rho < 0.95, rho > 0.3),
    check=check,
)  # fmt: skip
