"""A closed box carries a torque by a shear flow all round it."""

from sympy import symbols

from boomsim.machine.shapes.box import box
from boomsim.mechanics.sections.section_properties import properties, torsion_shear_stress
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values, as_written
from boomsim.papers.sketches.boom_sketches import box_end

T, w, h, t = symbols("T w h t")
A_e, tau = symbols("A_e tau")


def picture(values: Values, shown: Shown) -> str:
    """Draw the box from its end."""
    place = box_end(width=values["w"], height=values["h"])
    (left, low), (right, high), sketch = place.start, place.end, place.sketch
    sketch.dimension((left, low - 16), (right, low - 16), letter="w", value=shown("w"))
    sketch.dimension((left - 14, low), (left - 14, high), letter="", of="h")
    sketch.not_to_scale("plates")
    sketch.label((left - 20, (low + high) / 2), letter="h", value=shown("h"), anchor="end")
    sketch.line((right - 4, (low + high) / 2), (right + 14, (low + high) / 2), width=0.5)
    at = (right + 17, (low + high) / 2 - 3)
    return sketch.label(at, letter="t", value=shown("t"), anchor="start").svg()


def check(given: Values) -> float:
    """Ask the cross-section that the call path works with."""
    plate = given["t"]
    shape = properties(box(given["h"], width=given["w"], top=plate, bottom=plate, web=plate))
    return torsion_shear_stress(shape, torque=given["T"])[0]


with as_written():
    ENCLOSED = (w - t) * (h - t)
    CLEAR = (w - 2 * t) * (h - 2 * t)
    SECOND_MOMENT = (w * h**3 - (w - 2 * t) * (h - 2 * t) ** 3) / 12
    FLOW = T / (2 * A_e * t)

FAMILY = Family(
    id="strength_torsion",
    topic="strength",
    title="Shear stress by torsion of a box",
    text="A side force at the head twists a boom section with a torque of {T=}. The section is a "
    "box {h=} high and {w=} wide over the outside, of plates {t=} thick all round. How large is "
    "the shear stress that the torque makes?",
    assume="The box is thin-walled and free to warp: the stress is the torque over 2 {A_e:} {t:}, "
    "with the area {A_e:} inside the middle line of the plates.",
    givens=(
        Given(T, "torque", metric="2 to 40 kN m by 0.5", us="1500 to 30000 lbf ft by 500"),
        Given(w, "width over the outside", metric="100 to 400 mm by 10", us="4 to 16 in by 0.5"),
        Given(h, "height over the outside", metric="160 to 600 mm by 10", us="6 to 24 in by 0.5"),
        Given(t, "thickness of the plates", metric="4, 5, 6, 8 mm",
              us="0.1875, 0.25, 0.3125 in"),
    ),
    steps=(
        Step(A_e, ENCLOSED, "area inside the middle line",
             "Width and height between the middles of the plates, multiplied.",
             metric="cm2", us="in2"),
        Step(tau, FLOW, "shear stress", "Divide the torque by twice this area and the thickness.",
             metric="MPa", us="ksi"),
    ),
    slips=(
        Slip(A_e, w * h, "took the area over the outside"),
        Slip(A_e, CLEAR, "took the clear area inside"),
        Slip(tau, T / (A_e * t), "forgot the two: the shear flow works along the whole way round"),
        Slip(tau, T * h / (2 * SECOND_MOMENT), "divided by the section modulus, as for bending"),
        Slip(tau, T / (4 * A_e * t), "shared the torque among four plates"),
    ),
    where=(w < h, w > 0.45 * h, tau > 2e6, tau < 1.2e8),  # [Pa]
    check=check,
    picture=picture,
    seen="A box from its end: height h and width w over the outside, plates of thickness t.",
)  # fmt: skip
