"""How far the boom may come down until the crane stands on its rear outriggers only."""

from dataclasses import replace

import numpy as np
from sympy import acos, asin, symbols

from boomsim.figures.colours_and_lines import INK, PAPER, QUIET
from boomsim.gravity import GRAVITY
from boomsim.machine.model import CarrierMass
from boomsim.mechanics.boom.boom_state import solve_state
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.stability.masses import masses
from boomsim.mechanics.stability.overturning import overturning
from boomsim.papers.check_models.standing_crane import line_ahead
from boomsim.papers.check_models.textbook_boom import MANY, even_boom, textbook_machine
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values
from boomsim.papers.sketches.sketch_svg import Sketch

m, x, m_b, f, a, P, L = symbols("m x m_b f a P L")
q, theta = symbols("q theta")

TIP, LEVEL = 186.0, 46.0
"""Where the rear outriggers and the ground are on the sketch [pt]."""


def picture(values: Values, shown: Shown) -> str:
    """Draw the truck, its boom at some angle over the rear."""
    scale = 74.0 / max(values["x"], values["f"])
    foot, truck = TIP - scale * values["f"], TIP - scale * values["x"]
    head, middle = (foot + 180, 150.0), (foot + 84, 110.0)
    sketch = Sketch(345, height=172).ground((14, LEVEL), (330, LEVEL))
    sketch.shape([(44, 54), (TIP - 2, 54), (TIP - 2, 70), (44, 70)], fill=PAPER)
    sketch.bar((foot, 74), head, depth=9).circle((foot, 74), radius=3)
    for float_x in (56.0, TIP):
        sketch.shape([(float_x, 56), (float_x - 6, LEVEL), (float_x + 6, LEVEL)], fill=INK)
    sketch.line(head, (head[0], 96), width=0.7)
    sketch.shape([(head[0] + u, v) for u, v in ((-6, 84), (6, 84), (6, 96), (-6, 96))])
    sketch.label((head[0] + 10, 86), letter="P", anchor="start")
    sketch.circle(middle, radius=3.2, fill=INK).circle((truck, 62), radius=3.2, fill=INK)
    sketch.label((middle[0] - 6, middle[1] + 6), letter="m_b", anchor="end")
    sketch.label((truck - 7, 58), letter="m", anchor="end")
    for level, start, letter in ((30, truck, "x"), (12, foot, "f")):
        sketch.dimension((start, level), (TIP, level), letter="", of=letter)
        sketch.label((TIP + 6, level - 3), letter=letter, value=shown(letter), anchor="start")
    sketch.not_to_scale("boom")
    sketch.line((TIP, 6), (TIP, LEVEL), width=0.6, color=QUIET, dash="3 2")
    sketch.line((foot, 74), (foot + 64, 74), width=0.5, color=QUIET)
    return sketch.label((foot + 42, 79), letter="theta", anchor="start").svg()


def check(given: Values) -> float:
    """Lower the boom on the call path until the moments about the rear outriggers are even."""
    boom = even_boom(given["L"], weight=given["m_b"] * GRAVITY, centre=given["a"])
    truck = CarrierMass(name="truck", mass=given["m"], x=given["f"] - given["x"], y=0.0, z=1.0)
    machine = replace(textbook_machine(boom), carrier=(truck,))
    made, angle = condense(machine, extension=np.zeros((1, 0))), np.array([[0.1, 0.6, 1.1, 1.5]])
    state = solve_state(made, load=np.full((1, 1), given["P"]), parts=MANY, angle=angle)
    placed = masses(made, state=state, counterweight=machine.counterweights[0])
    turned = overturning(
        made, placed=placed, state=state, support=line_ahead(given["f"]), slew=np.array([0.0])
    )
    left = (turned.righting - given["P"] * turned.lever).min(axis=(0, 1))[0]
    # A boom that does not bend brings its moments back with the cosine of its angle.
    return float(np.arccos(np.interp(0.0, left, np.cos(angle[0]))))


FAMILY = Family(
    id="stability_tipping_angle",
    topic="stability",
    title="Boom angle at which the crane tips",
    text="A truck of mass {m=} has its centre of gravity {x=} inside its rear outriggers; the foot "
    "of its boom is {f=} inside them. The boom has the mass {m_b=}, its centre of gravity {a=} "
    "from its foot. A load {P=} hangs {L=} from the foot, measured along the boom. The boom points "
    "over the rear and is lowered. At which boom angle above horizontal does the crane tip?",
    assume="Crane and boom are rigid; the load hangs straight down.",
    givens=(
        Given(m, "mass of the truck", metric="14 to 26 t by 0.5", us="31000 to 57000 lb by 1000"),
        Given(x, "its centre inside the outriggers", metric="0.8 to 2 m by 0.1",
              us="3 to 6.5 ft by 0.5"),
        Given(f, "boom foot inside the outriggers", metric="1.2 to 2.6 m by 0.1",
              us="4 to 8.5 ft by 0.5"),
        Given(m_b, "mass of the boom", metric="1.4 to 3 t by 0.1", us="3000 to 6600 lb by 200"),
        Given(a, "its centre from the foot", metric="5 to 9 m by 0.25", us="16 to 30 ft by 1"),
        Given(P, "load", metric="0.8 to 3 t by 0.1", us="1800 to 6600 lb by 200"),
        Given(L, "load from the foot", metric="10 to 18 m by 0.25", us="33 to 59 ft by 1"),
    ),
    steps=(
        Step(q, (m * x + (m_b + P) * f) / (m_b * a + P * L), "cosine of the boom angle",
             "Moments about the rear outriggers: the truck holds; boom and load count with their "
             "distance from the foot times the cosine, less what the foot is inside.",
             metric="", us="", marks=3, figures=4),
        Step(theta, acos(q), "boom angle", "Take the angle that has this cosine.",
             metric="deg", us="deg", tolerance=0.02),
    ),
    slips=(
        Slip(theta, asin(q), "measured the angle from the vertical"),
        Slip(q, m * x / (m_b * a + P * L), "forgot that the foot of the boom is inside the "
             "outriggers"),
        Slip(q, (m * x + P * f) / (P * L), "forgot the boom's own weight"),
        Slip(q, (m * x + (m_b + P) * f) / ((m_b + P) * L), "put the boom's weight at the load"),
        Slip(q, m * x / (m_b * (a - f) + P * (L - f)), "took the foot's distance off along "
             "the boom"),
        Slip(q, (m * x + (m_b + P) * f) / (m_b * a + P * (L - f)), "took the foot's distance off "
             "the load's lever arm as well"),
        Slip(q, (m * x + (m_b + P) * f) / (P * L), "let the boom's own weight act at its foot"),
        Slip(q, (m * x - (m_b + P) * f) / (m_b * a + P * L), "took the part that is inside the "
             "outriggers off instead of adding it"),
    ),
    where=(a < 0.6 * L, a > 0.4 * L, q < 0.95, q > 0.3),
    check=check,
    agreement=1e-4,
    picture=picture,
    seen="A truck with its boom over the rear: x from its centre of gravity to the rear "
    "outriggers, f from the foot of the boom to them; the boom angle is at the foot.",
)  # fmt: skip
