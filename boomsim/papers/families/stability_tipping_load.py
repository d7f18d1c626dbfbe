"""The load at which the crane tips over the rear: everything in moments about one line."""

from sympy import symbols

from boomsim.papers.check_models.standing_crane import crane, line_ahead, stand
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values
from boomsim.papers.sketches.crane_sketches import side_view

m, x, m_w, w, m_b, c, d, R = symbols("m x m_w w m_b c d R")
h, T_c, T_w, T_b, T = symbols("h T_c T_w T_b T")


def picture(values: Values, shown: Shown) -> str:
    """Draw the crane from the side."""
    view = side_view(values["R"], line=values["d"], behind=values["w"] + 1.0)
    view.mass(-values["x"], 78, "m").mass(-values["w"], 96, "m_w").mass(values["c"], None, "m_b")
    view.span(-values["x"], 0, 48, letter="x").span(0, values["d"], 48, letter="d")
    view.span(-values["w"], 0, 30, letter="w")
    view.span(0, values["c"], 30, letter="c", value=shown("c"))
    view.sketch.not_to_scale("heights", at=(120, 168))
    view.span(0, values["R"], 12, letter="R", value=shown("R"))
    view.sketch.label((view.hook + 10, 86), letter="T", value="?", anchor="start")
    return view.sketch.svg()


def check(given: Values) -> float:
    """Put the carrier, the counterweight and the boom on floats and ask for the tipping load."""
    boom = crane(
        carrier=((given["m"], -given["x"]),),
        turning=((given["m_w"], -given["w"]), (given["m_b"], given["c"])),
        support=line_ahead(given["d"]),
    )
    return stand(boom, load=1000.0, radius=given["R"]).tipping_load


FAMILY = Family(
    id="stability_tipping_load",
    topic="stability",
    title="Tipping load over the rear",
    text="The boom points over the rear. Distances count from the axis of rotation: carrier and "
    "superstructure {m=}, centre of gravity {x=} away from the boom; counterweight {m_w=}, {w=} "
    "away from the boom; boom {m_b=}, centre of gravity {c=} towards the load. The rear jacks are "
    "{d=} from the axis, the load hangs at a radius of {R=}. Which gross load tips the crane?",
    assume="The crane is rigid and stands level. A moment may be written as mass times lever arm.",
    givens=(
        Given(m, "carrier and superstructure", metric="24 to 36 t by 0.5",
              us="53000 to 79000 lb by 1000"),
        Given(x, "its centre from the axis", metric="0.6 to 1.4 m by 0.1", us="2 to 4.5 ft by 0.5"),
        Given(m_w, "counterweight", metric="4 to 10 t by 0.5", us="9000 to 22000 lb by 500"),
        Given(w, "its centre from the axis", metric="2.6 to 3.4 m by 0.1",
              us="8.5 to 11 ft by 0.5"),
        Given(m_b, "mass of the boom", metric="5 to 9 t by 0.2", us="11000 to 20000 lb by 500"),
        Given(c, "its centre from the axis", metric="4.5 to 8 m by 0.1", us="15 to 26 ft by 0.5"),
        Given(d, "rear jacks from the axis", metric="2.4 to 3.4 m by 0.1", us="8 to 11 ft by 0.5"),
        Given(R, "radius", metric="10 to 18 m by 0.5", us="33 to 59 ft by 1"),
    ),
    steps=(
        Step(h, R - d, "lever arm of the load",
             "The radius counts from the axis, the lever arm only from the rear jacks.",
             metric="m", us="ft"),
        Step(T_c, m * (d + x) / h, "load that carrier and superstructure hold",
             "Their lever arm reaches across the axis to the rear jacks; divide their moment by "
             "the lever arm of the load.", metric="t", us="lb"),
        Step(T_w, m_w * (d + w) / h, "load that the counterweight holds",
             "The same for the counterweight.", metric="t", us="lb"),
        Step(T_b, m_b * (c - d) / h, "load that the boom takes away",
             "The boom's centre of gravity is beyond the rear jacks.", metric="t", us="lb"),
        Step(T, T_c + T_w - T_b, "tipping load", "Add what holds, and take the boom off.",
             metric="t", us="lb", tolerance=0.015),
    ),
    slips=(
        Slip(h, R, "divided by the radius instead of the lever arm beyond the jacks"),
        Slip(T, T_c + T_w, "forgot the boom's own weight"),
        Slip(T_b, m_b * c / h, "took the boom's lever arm from the axis of rotation"),
        Slip(T_c, m * x / h, "took the lever arm of the carrier from the axis of rotation"),
        Slip(T, T_c - T_b, "forgot the counterweight"),
        Slip(T_w, m_w * w / h, "took the counterweight's lever arm from the axis of rotation"),
        Slip(T, T_c + T_w + T_b, "added the boom to what holds the crane down"),
    ),
    where=(
        c > 1.5 * d, 1.5 * c < R, w > x + 1, 0.3 * m_w < T,
        m * x + m_w * (d + w) - m_b * (c - d) > 0.3 * m * d,  # no slip leads to next to nothing
    ),
    check=check,
    picture=picture,
    seen="A crane from the side, with distances from the axis of rotation: x and w back to carrier "
    "and counterweight, d ahead to the rear jacks, c to the centre of the boom, R to the load.",
)  # fmt: skip
