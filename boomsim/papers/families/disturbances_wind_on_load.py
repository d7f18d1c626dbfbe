"""Wind on a large light load: twice the speed, four times the moment at the tipping line."""

import numpy as np
from sympy import symbols

from boomsim.figures.colours_and_lines import PAPER
from boomsim.machine.model import CALM, Disturbances
from boomsim.papers.check_models.standing_crane import REACH, crane, stand
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values
from boomsim.papers.sketches.boom_sketches import GROUND
from boomsim.papers.sketches.boom_sketches import crane as crane_from_the_side

v, v_0, q_0, A, c, h = symbols("v v_0 q_0 A c h")
q, H, M = symbols("q H M")

TRIAL = 1000.0
"""Mass of the load, which has no part in the answer [kg]."""


def picture(_: Values, shown: Shown) -> str:
    """Draw the panel on the hook, and the wind from behind."""
    place = crane_from_the_side(0.72, hook=False)
    sketch, (x, y) = place.sketch, place.end
    sketch.line((x, y), (x, 96), width=0.7)
    sketch.shape([(x - 4, 46), (x + 4, 46), (x + 4, 96), (x - 4, 96)], fill=PAPER)
    for level in (56, 71, 86):
        sketch.arrow((x - 50, level), (x - 10, level))
    sketch.label((x - 28, 92), letter="v").label((x + 14, 62), letter="A", anchor="start")
    sketch.dimension((x + 40, GROUND), (x + 40, y), letter="", of="h")
    sketch.not_to_scale()
    return sketch.label((x + 46, 70), letter="h", value=shown("h"), anchor="start").svg()


def check(given: Values) -> float:
    """Let the wind of the call path blow on the load, and see what it adds to the load's moment."""
    boom = crane()
    angle = float(np.arcsin((given["h"] - boom.machine.heel_up) / REACH))
    wind = Disturbances(wind_speed=given["v"], load_area=given["A"] * given["c"] / TRIAL)
    windy, calm = (
        stand(boom, load=TRIAL, angle=angle, disturbances=change).balance.lever.max()
        for change in (wind, CALM)
    )
    return float(TRIAL * (windy - calm))


FAMILY = Family(
    id="disturbances_wind_on_load",
    topic="disturbances",
    title="Wind on a load",
    text="A wall panel with an area of {A=} hangs on the hook; its shape coefficient is {c=}. "
    "Gusts of {v=} blow from behind the crane. A wind of {v_0=} has a dynamic pressure of {q_0=}. "
    "The head of the boom is {h=} above the ground. By how much does the wind on the panel raise "
    "the overturning moment?",
    assume="The whole panel faces the wind, and its wind force acts on the crane at the boom head.",
    givens=(
        Given(q_0, "dynamic pressure of a known wind", metric="61.3 Pa", us="0.256 lbf/ft^2"),
        Given(v, "speed of the gusts", metric="7 to 15 m/s by 0.5", us="16 to 34 mph by 1"),
        Given(v_0, "speed of the known wind", metric="10 m/s", us="10 mph"),
        Given(A, "area of the panel", metric="4 to 24 m^2 by 0.5", us="40 to 260 ft^2 by 5"),
        Given(c, "shape coefficient", metric="1.1 to 1.6 by 0.1", us="1.1 to 1.6 by 0.1"),
        Given(h, "height of the head", metric="12 to 40 m by 1", us="40 to 130 ft by 2"),
    ),
    steps=(
        Step(q, q_0 * (v / v_0) ** 2, "dynamic pressure of the gusts",
             "Pressure grows with the square of the speed.", metric="Pa", us="lbf/ft^2"),
        Step(H, q * c * A, "wind force on the panel",
             "Multiply pressure, shape coefficient and area.", metric="kN", us="lbf"),
        Step(M, H * h, "overturning moment of the wind",
             "The force acts at the head, so its lever arm above the ground is the head's height.",
             metric="kN m", us="lbf ft"),
    ),
    slips=(
        Slip(q, q_0 * v / v_0, "let the pressure grow in proportion to the speed"),
        Slip(H, q * A, "forgot the shape coefficient"),
        Slip(M, H * h / 2, "put the wind force at half the height"),
        Slip(H, q * A / c, "divided by the shape coefficient"),
        Slip(q, q_0, "took the pressure of the known wind as it stands"),
        Slip(q, q_0 * (v / v_0) ** 3, "let the pressure grow with the cube of the speed"),
    ),
    where=((v / v_0 - 1) ** 2 > 0.005,),
    check=check,
    agreement=2e-3,
    picture=picture,
    seen="A crane from the side with a panel on its hook; the wind blows from behind towards the "
    "panel, and the boom head is h above the ground.",
)  # fmt: skip
