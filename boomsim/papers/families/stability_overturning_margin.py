"""Moments about the tipping line: by which factor a load could grow before the crane turns over."""

from sympy import symbols

from boomsim.papers.check_models.standing_crane import crane, line_ahead, stand
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values
from boomsim.papers.sketches.crane_sketches import side_view

m, x, m_b, c, d, P, R = symbols("m x m_b c d P R")
a, b, h, n = symbols("a b h n")


def picture(values: Values, shown: Shown) -> str:
    """Draw the crane from the side."""
    view = side_view(values["R"], line=values["d"], behind=values["x"] + 1.5)
    view.mass(-values["x"], 104, "m").mass(values["c"], None, "m_b")
    view.span(-values["x"], 0, 48, letter="x").span(0, values["d"], 48, letter="d")
    view.span(0, values["c"], 30, letter="c", value=shown("c"))
    view.sketch.not_to_scale("heights", at=(120, 168))
    view.span(0, values["R"], 12, letter="R", value=shown("R"))
    return view.sketch.label((view.hook + 10, 86), letter="P", anchor="start").svg()


def check(given: Values) -> float:
    """Find the least tipping load about the sides of the floats, and divide by the load."""
    turning = ((given["m"], -given["x"]), (given["m_b"], given["c"]))
    boom = crane(turning=turning, support=line_ahead(given["d"]))
    return stand(boom, load=given["P"], radius=given["R"]).tipping_load / given["P"]


FAMILY = Family(
    id="stability_overturning_margin",
    topic="stability",
    title="Margin against overturning",
    text="Without its boom a crane has the mass {m=}, with the centre of gravity {x=} behind the "
    "axis of rotation. The boom has the mass {m_b=}; its centre of gravity is {c=} ahead of the "
    "axis. A gross load {P=} hangs at a radius of {R=}. The tipping line lies {d=} ahead of the "
    "axis. By which factor could the load grow until the crane tips?",
    assume="The crane is rigid and stands level. A moment may be written as mass times lever arm.",
    givens=(
        Given(m, "mass without boom", metric="28 to 44 t by 0.5", us="62000 to 97000 lb by 1000"),
        Given(x, "centre of gravity behind the axis", metric="0.4 to 1.2 m by 0.1",
              us="1.5 to 4 ft by 0.5"),
        Given(m_b, "mass of the boom", metric="5 to 9 t by 0.2", us="11000 to 20000 lb by 500"),
        Given(c, "its centre ahead of the axis", metric="4.5 to 8 m by 0.1",
              us="15 to 26 ft by 0.5"),
        Given(d, "tipping line from the axis", metric="2.4 to 3.4 m by 0.1",
              us="8 to 11 ft by 0.5"),
        Given(P, "gross load", metric="4 to 14 t by 0.5", us="9000 to 30000 lb by 500"),
        Given(R, "radius", metric="10 to 18 m by 0.5", us="33 to 59 ft by 1"),
    ),
    steps=(
        Step(a, d + x, "lever arm of the crane",
             "Lever arms count from the tipping line: from there to the axis, and on to the "
             "centre of gravity.", metric="m", us="ft"),
        Step(b, c - d, "lever arm of the boom",
             "The boom's centre of gravity is beyond the tipping line and works with the load.",
             metric="m", us="ft"),
        Step(h, R - d, "lever arm of the load",
             "The radius counts from the axis, the lever arm only from the tipping line.",
             metric="m", us="ft"),
        Step(n, (m * a - m_b * b) / (P * h), "factor by which the load could grow",
             "Take the boom's moment off the crane's; divide what is left by the moment of the "
             "load.", metric="", us="", marks=2),
    ),
    slips=(
        Slip(h, R, "took the radius for the lever arm instead of the distance beyond the tipping "
             "line"),
        Slip(a, x, "took the crane's lever arm from the axis of rotation"),
        Slip(b, c, "took the boom's lever arm from the axis of rotation"),
        Slip(n, m * a / (P * h), "forgot the boom's own weight"),
        Slip(n, m * a / (P * h + m_b * b), "put the boom with the load, as if the boom grew too"),
        Slip(n, (m * a + m_b * b) / (P * h), "added the boom to what holds the crane down"),
    ),
    where=(
        c > 1.5 * d, 1.5 * c < R, n > 1.1, n < 2.6,
        (m * x - m_b * b) ** 2 > (0.2 * P * h) ** 2,  # no slip leads to next to nothing
    ),
    check=check,
    picture=picture,
    seen="A crane from the side, with distances from the axis of rotation: x back to the centre of "
    "gravity of the crane, d ahead to the tipping line, c to that of the boom, R to the load.",
)  # fmt: skip
