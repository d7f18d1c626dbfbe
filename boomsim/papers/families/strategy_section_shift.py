"""Same length, other sections out: what the shift of their weight costs in rated load."""

from dataclasses import replace

import numpy as np
from sympy import cos, symbols

from boomsim.machine.model import CarrierMass
from boomsim.mechanics.boom.boom_state import solve_state
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.stability.masses import masses
from boomsim.mechanics.stability.overturning import overturning
from boomsim.papers.check_models.standing_crane import line_ahead
from boomsim.papers.check_models.textbook_boom import textbook_boom, textbook_machine
from boomsim.papers.problems.family import Family, Given, Slip, Step, Values
from boomsim.rating.rules import SHARE_OF_TIPPING

m_1, m_2, m_3, s, theta, d, R, f = symbols("m_1 m_2 m_3 s theta d R f")
e, h, D, P = symbols("e h D P")

BASE = 10.0
"""Length of the base section, which has no part in the answer [m]."""


def check(given: Values) -> float:
    """Let the crane tip in both configurations."""
    sections = (0.0, given["m_1"], given["m_2"], given["m_3"])
    ahead = given["R"] / np.cos(given["theta"]) - BASE - given["s"]
    boom = textbook_boom((BASE,) * 4, strokes=(given["s"],) * 3, masses=sections, ahead=ahead)
    rest = CarrierMass(name="crane", mass=1e6, x=0.0, y=0.0, z=1.0)
    machine = replace(textbook_machine(boom), carrier=(rest,))
    made = condense(machine, extension=np.array([[1.0, 0.0, 0.0], [0.0, 0.0, 1.0]]))
    angle = np.full((2, 1), given["theta"])
    state = solve_state(made, load=np.zeros((2, 1)), parts=1, angle=angle)
    placed = masses(made, state=state, counterweight=machine.counterweights[0])
    tips = overturning(
        made, placed=placed, state=state, support=line_ahead(given["d"]), slew=np.zeros(1)
    ).least[:, 0]
    return SHARE_OF_TIPPING.share("outriggers") * float(tips[1] - tips[0])


FAMILY = Family(
    id="strategy_section_shift",
    topic="strategy",
    title="What the shift of a section costs",
    text="Three moving sections of masses {m_1=}, {m_2=} and {m_3=} each have a stroke of {s=}. At "
    "a boom angle of {theta=} and a radius of {R=} the crane would tip about a line {d=} from the "
    "axis of rotation, and {f=} of the tipping load may be rated. How much more may be rated with "
    "section 3 out alone, 0 %, 0 %, 100 %, than with section 1 out alone, 100 %, 0 %, 0 %?",
    assume="The boom is equally long in both, and does not bend; stability governs both.",
    givens=(
        Given(m_1, "mass of section 1", metric="1.6 to 2.6 t by 0.1", us="3600 to 5600 lb by 100"),
        Given(m_2, "mass of section 2", metric="1 to 1.5 t by 0.1", us="2400 to 3400 lb by 100"),
        Given(m_3, "mass of section 3", metric="0.5 to 0.9 t by 0.1", us="1200 to 2200 lb by 100"),
        Given(s, "stroke", metric="5 to 9 m by 0.5", us="16 to 30 ft by 1"),
        Given(theta, "boom angle", metric="30 to 65 deg by 1", us="30 to 65 deg by 1"),
        Given(R, "radius", metric="9 to 18 m by 0.5", us="30 to 59 ft by 1"),
        Given(d, "tipping line from the axis", metric="2.4 to 3.4 m by 0.1",
              us="8 to 11 ft by 0.5"),
        Given(f, "share of the tipping load", metric="85 %", us="85 %"),
    ),
    steps=(
        Step(e, s * cos(theta), "horizontal shift of sections 1 and 2",
             "With section 1 out, sections 1 and 2 both stand a stroke farther out along the boom; "
             "section 3 is where it is in either case.", metric="m", us="ft"),
        Step(h, R - d, "lever arm of the load", "The load counts from the tipping line.",
             metric="m", us="ft"),
        Step(D, (m_1 + m_2) * e / h, "difference in tipping load",
             "Both sections' moment grows by their mass times the shift; the load makes up for it "
             "at its own lever arm.", metric="t", us="lb", marks=2),
        Step(P, f * D, "difference in rated load", "Of the tipping load this share is rated.",
             metric="t", us="lb"),
    ),
    slips=(
        Slip(e, s, "took the shift along the boom and not horizontally"),
        Slip(h, R, "divided by the radius instead of the lever arm beyond the tipping line"),
        Slip(D, m_1 * e / h, "forgot that section 2 travels with section 1"),
        Slip(D, (m_1 + m_2 + m_3) * e / h, "counted section 3 too, which is out in either case"),
        Slip(D, (m_1 - m_3) * e / h, "thought that section 1 is out in place of section 3"),
        Slip(P, D, "left out the share that may be rated"),
    ),
    where=(R / cos(theta) > 12 + s, R / cos(theta) < 26 + s),
    check=check,
)  # fmt: skip
