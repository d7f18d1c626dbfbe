"""Bending and shear at once: the equivalent stress where flange and web meet."""

from sympy import sqrt, symbols

from boomsim.machine.shapes.box import box
from boomsim.mechanics.sections.elastic_stress import shear_stress, von_mises
from boomsim.mechanics.sections.section_properties import properties
from boomsim.papers.problems.family import Family, Given, Slip, Step, Values, as_written

sigma, V, h, s, f = symbols("sigma V h s f")
tau, sigma_v, u = symbols("tau sigma_v u")


def check(given: Values) -> float:
    """Shear the webs of a box as the call path does; its flanges matter no further."""
    flange = 0.01
    plates = {"top": flange, "bottom": flange, "web": given["s"]}
    shape = properties(box(given["h"] + flange, width=0.5 * given["h"], **plates))
    sheared = shear_stress(shape, torque=0.0, shear_y=given["V"], shear_z=0.0)
    return float(von_mises(given["sigma"], shear=sheared.total.max())) / given["f"]


with as_written():
    SHARED = V / (2 * h * s)
    TOGETHER = sqrt(sigma**2 + 3 * tau**2)

FAMILY = Family(
    id="strength_equivalent_stress",
    topic="strength",
    title="Bending and shear together",
    text="Just behind a front pad a box section carries a shear force of {V=}. Each of its two "
    "webs is {s=} thick and, between the middles of the flanges, {h=} high. Where web and flange "
    "meet the bending stress is {sigma=}; the allowed stress is {f=}. How much of it is used "
    "there?",
    assume="Both webs carry alike, and the shear stress is the same all over their height. More "
    "than 100 % may come out: then it is overloaded.",
    givens=(
        Given(sigma, "bending stress", metric="60 to 380 MPa by 5", us="9 to 55 ksi by 0.5"),
        Given(V, "shear force", metric="80 to 600 kN by 5", us="18 to 130 kip by 1"),
        Given(h, "height of the webs", metric="300 to 640 mm by 10", us="12 to 25 in by 0.5"),
        Given(s, "thickness of each web", metric="5, 6, 8 mm", us="0.1875, 0.25, 0.3125 in"),
        Given(f, "allowed stress", metric="213, 276, 414, 576 MPa", us="30, 42, 60, 78 ksi"),
    ),
    steps=(
        Step(tau, SHARED, "shear stress in the webs",
             "Divide the shear force by the area of both webs.", metric="MPa", us="ksi"),
        Step(sigma_v, TOGETHER, "equivalent stress",
             "Shear weighs three times in the sum of squares (von Mises).",
             metric="MPa", us="ksi"),
        Step(u, sigma_v / f, "utilisation of the allowed stress",
             "Utilisation is what is there over what is allowed.", metric="%", us="%"),
    ),
    slips=(
        Slip(sigma_v, sigma + tau, "added bending stress and shear stress"),
        Slip(tau, V / (h * s), "let one web carry the whole shear force"),
        Slip(sigma_v, sqrt(sigma**2 + tau**2), "forgot that shear counts three times"),
        Slip(sigma_v, sigma, "left out the shear stress"),
        Slip(sigma_v, sigma + 3 * tau, "added three times the shear stress, without squares"),
    ),
    where=(u < 1.15, u > 0.25, tau > sigma / 3, tau < sigma),
    check=check,
)  # fmt: skip
