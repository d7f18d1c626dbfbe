"""Ground that leans by a degree moves a high hook out by half a metre."""

from dataclasses import replace
from math import pi

import numpy as np
from sympy import cos, sin, symbols, tan

from boomsim.gravity import GRAVITY
from boomsim.machine.model import CALM, Disturbances
from boomsim.mechanics.boom.condense import condense
from boomsim.papers.check_models.standing_crane import stand
from boomsim.papers.check_models.textbook_boom import textbook_boom, textbook_machine
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values
from boomsim.papers.sketches.boom_sketches import GROUND, angle_at, crane

L, theta, u, delta = symbols("L theta u delta")
h, D = symbols("h D")


def picture(values: Values, shown: Shown) -> str:
    """Draw the crane from the side, standing level."""
    place = crane(values["theta"])
    angle_at(place, angle=values["theta"], letter="theta", value=shown("theta"))
    sketch, (x, y), pin = place.sketch, place.at(0.6, off=9), place.start
    sketch.label((x, y), letter="L", value=shown("L"), anchor="end")
    sketch.dimension((28, GROUND), (28, pin[1]), letter="", of="u")
    sketch.label((22, (GROUND + pin[1]) / 2 - 3), letter="u", anchor="end")
    end = max(place.end[0] + 30, 180)
    sketch.dimension((end, GROUND), (end, place.end[1]), letter="", of="h")
    sketch.not_to_scale()
    return sketch.label((end + 6, pin[1] + 12), letter="h", anchor="start").svg()


def check(given: Values) -> float:
    """Lean the ground of the call path towards the boom, and see where the load counts."""
    machine = replace(textbook_machine(textbook_boom((given["L"],))), heel_up=given["u"])
    boom = condense(machine, extension=np.zeros((1, 0)))
    leaning, level = (
        stand(boom, load=1.0, angle=given["theta"], disturbances=change).balance.lever.max()
        for change in (Disturbances(lean=given["delta"]), CALM)
    )
    return float(leaning - level) / GRAVITY


FAMILY = Family(
    id="disturbances_out_of_level",
    topic="disturbances",
    title="Radius growth out of level",
    text="A crane stands out of level by {delta=}, downhill towards its load. The boom is {L=} "
    "long and at a boom angle of {theta=} against the carrier; its heel pin is {u=} above the "
    "ground. By how much is the radius larger than on level ground?",
    assume="The boom does not bend; what stands high moves by its height times the tangent of the "
    "lean.",
    givens=(
        Given(u, "heel pin above the ground", metric="1.8 to 3 m by 0.1", us="6 to 10 ft by 0.5"),
        Given(L, "boom length", metric="12 to 42 m by 0.5", us="40 to 140 ft by 2"),
        Given(theta, "boom angle", metric="30 to 78 deg by 1", us="30 to 78 deg by 1"),
        Given(delta, "out of level", metric="0.5 to 3 deg by 0.1", us="0.5 to 3 deg by 0.1"),
    ),
    steps=(
        Step(h, u + L * sin(theta), "height of the boom head",
             "Add the height of the heel pin and the upright side of the boom's triangle.",
             metric="m", us="ft"),
        Step(D, h * tan(delta), "growth of the radius",
             "What stands high moves out most: multiply the height by the tangent of the lean.",
             metric="m", us="ft"),
    ),
    slips=(
        Slip(h, u + L * cos(theta), "took the level side of the triangle instead of the upright"),
        Slip(h, L * sin(theta), "forgot how high the heel pin is"),
        Slip(h, u + L, "took the boom length for the height"),
        Slip(D, h * delta * 180 / (100 * pi), "took degrees for percent"),
        Slip(D, h * tan(2 * delta), "counted the lean twice"),
    ),
    where=((sin(theta) - cos(theta)) ** 2 > 0.01, D < 0.12 * L),
    check=check,
    picture=picture,
    seen="A crane from the side: boom length L at the boom angle theta; the heel pin is u and the "
    "head h above the ground.",
)  # fmt: skip
