"""The section modulus of a box: the whole less the hole, over half the height."""

from sympy import symbols

from boomsim.machine.shapes.box import box
from boomsim.mechanics.sections.section_properties import properties
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values, as_written
from boomsim.papers.sketches.boom_sketches import box_end

h, w, t, s = symbols("h w t s")
I_1, I_2, W_y = symbols("I_1 I_2 W_y")

HEIGHTS = {"metric": "320 to 700 mm by 10", "us": "13 to 28 in by 0.5"}
WIDTHS = {"metric": "240 to 500 mm by 10", "us": "10 to 20 in by 0.5"}


def picture(values: Values, shown: Shown) -> str:
    """Draw the box from its end."""
    place = box_end(width=values["w"], height=values["h"])
    (left, low), (right, high), sketch = place.start, place.end, place.sketch
    sketch.dimension((left, low - 16), (right, low - 16), letter="w", value=shown("w"))
    sketch.dimension((left - 14, low), (left - 14, high), letter="", of="h")
    sketch.not_to_scale("plates")
    sketch.label((left - 20, (low + high) / 2), letter="h", value=shown("h"), anchor="end")
    sketch.line((right - 14, high - 4), (right + 14, high - 4), width=0.5)
    sketch.label((right + 17, high - 7), letter="t", value=shown("t"), anchor="start")
    sketch.line((right - 4, (low + high) / 2), (right + 14, (low + high) / 2), width=0.5)
    return sketch.label(
        (right + 17, (low + high) / 2 - 3), letter="s", value=shown("s"), anchor="start"
    ).svg()


def check(given: Values) -> float:
    """Ask the cross-section that the call path works with."""
    plates = {"top": given["t"], "bottom": given["t"], "web": given["s"]}
    return properties(box(given["h"], width=given["w"], **plates)).modulus_top


with as_written():
    HOLE = (w - 2 * s) * (h - 2 * t) ** 3 / 12
    TOO_LARGE_A_HOLE = (w - s) * (h - t) ** 3 / 12
    MODULUS = 2 * (I_1 - I_2) / h
    APART = 2 * I_1 / h - 2 * I_2 / (h - 2 * t)

FAMILY = Family(
    id="strength_section_modulus",
    topic="strength",
    title="Section modulus of a box",
    text="A boom section is a welded box, {h=} high and {w=} wide over the outside. Its top and "
    "bottom plates are {t=} thick, its two webs {s=}. How large is its section modulus for bending "
    "in the luffing plane?",
    assume="The corners are sharp, and the whole section works.",
    givens=(
        Given(w, "width over the outside", **WIDTHS),
        Given(h, "height over the outside", **HEIGHTS),
        Given(s, "thickness of each web", metric="5, 6, 8 mm", us="0.1875, 0.25, 0.3125 in"),
        Given(t, "thickness of top and bottom plate", metric="6, 8, 10, 12 mm",
              us="0.25, 0.375, 0.5 in"),
    ),
    steps=(
        Step(I_1, w * h**3 / 12, "second moment of the whole rectangle",
             "Width times height cubed, over twelve.", metric="cm4", us="in4", figures=5),
        Step(I_2, HOLE, "second moment of the hole",
             "The hole is narrower by both webs, and lower by top and bottom plate.",
             metric="cm4", us="in4", figures=5),
        Step(W_y, MODULUS, "section modulus",
             "Take the hole off, and divide by half the height, where the outermost fibre is.",
             metric="cm3", us="in3"),
    ),
    slips=(
        Slip(W_y, (I_1 - I_2) / h, "divided by the whole height instead of half of it"),
        Slip(I_2, TOO_LARGE_A_HOLE, "took each thickness off once, though each is there twice"),
        Slip(W_y, 2 * (I_1 - I_2) / w, "divided by half the width instead of half the height"),
        Slip(W_y, 2 * I_1 / h, "forgot that the box is hollow"),
        Slip(W_y, APART, "took the section moduli of box and hole off each other"),
    ),
    where=(w < h, s <= t, w > 0.5 * h),
    check=check,
    picture=picture,
    seen="A box from its end: height h and width w over the outside, top and bottom plates of "
    "thickness t, two webs of thickness s.",
)  # fmt: skip
