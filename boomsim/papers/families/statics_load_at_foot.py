"""How much may hang at the head when the foot of the boom bears no more than a given moment."""

from dataclasses import replace
from math import cos as cosine
from math import sin as sine

import numpy as np
from sympy import cos, symbols

from boomsim.figures.colours_and_lines import INK
from boomsim.gravity import GRAVITY
from boomsim.machine.model import Machine
from boomsim.mechanics.geometry import Array
from boomsim.papers.check_models.textbook_boom import even_boom, lift, textbook_machine
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values
from boomsim.papers.sketches.boom_sketches import angle_at, crane

W, x, L, theta, e, M_0 = symbols("W x L theta e M_0")
M, r, Q = symbols("M r Q")


def picture(values: Values, shown: Shown) -> str:
    """Draw the boom, its weight, and the load that hangs beyond its end."""
    place = crane(values["theta"], length=values["L"], hook=False, axis=False, above=30.0)
    angle_at(place, angle=values["theta"], letter="theta", value=shown("theta"))
    (u, v), (head, high), sketch = place.at(values["x"] / values["L"]), place.end, place.sketch
    arm = head + place.scale * values["e"]
    sketch.circle((u, v), radius=2.5, fill=INK).arrow((u, v + 32), (u, v + 4))
    sketch.label((u - 4, v + 26), letter="W", anchor="end")
    sketch.line((head, high), (arm, high), width=2.4)
    sketch.arrow((arm, high - 2), (arm, high - 32))
    sketch.label((arm + 5, high - 28), letter="Q", anchor="start")
    sketch.dimension((head, high + 9), (arm, high + 9), letter="", of="e")
    sketch.label((arm + 4, high + 6), letter="e", anchor="start")
    return sketch.label(place.at(0.8, off=9), letter="L", anchor="end").svg()


def check(given: Values) -> float:
    """Find the load under which the moment at the foot is the given one: it grows evenly."""
    turn, beyond = given["theta"], given["e"]
    boom = even_boom(given["L"], weight=given["W"], centre=given["x"])
    # Level beyond the end of the boom is, along the boom, ahead of it and below it.
    head = replace(
        boom.head,
        ahead=boom.head.ahead + beyond * cosine(turn),
        below=beyond * sine(turn),
    )
    made = textbook_machine(replace(boom, head=head))
    without, loaded = _moments(made, load=np.array([0.0, 1e3]), angle=turn)
    return 1e3 * GRAVITY * (given["M_0"] - without) / (loaded - without)


def _moments(machine: Machine, *, load: Array, angle: float) -> list[float]:
    """Moments about the heel pin, which the luffing cylinder holds [N m]."""
    _, _, forces = lift(machine, extension=(), load=load, angle=angle)
    moments: list[float] = (forces.front_pad[0, 0] * machine.cylinder.attach_along).tolist()
    return moments


FAMILY = Family(
    id="statics_load_at_foot",
    topic="statics",
    title="Load for a permissible moment at the foot of the boom",
    text="A boom of length {L=} weighs {W=}, with its centre of gravity {x=} from its foot, along "
    "the boom; the boom angle is {theta=}. The load hangs {e=} beyond the boom's end, measured "
    "level. The moment about the foot may reach {M_0=}. How large may the load be?",
    assume="The boom does not bend, and the hoist rope runs along it to its foot.",
    givens=(
        Given(L, "boom length", metric="9 to 20 m by 0.5", us="30 to 66 ft by 2"),
        Given(W, "weight of the boom", metric="10 to 50 kN by 1", us="2000 to 11000 lbf by 500"),
        Given(x, "centre of gravity from the foot", metric="4 to 10 m by 0.5",
              us="13 to 33 ft by 1"),
        Given(theta, "boom angle", metric="15 to 70 deg by 1", us="15 to 70 deg by 1"),
        Given(e, "load beyond the end", metric="0.3 to 0.9 m by 0.1", us="1 to 3 ft by 0.5"),
        Given(M_0, "permissible moment", metric="200 to 1500 kN m by 50",
              us="100000 to 1000000 lbf ft by 25000"),
    ),
    steps=(
        Step(M, W * x * cos(theta), "moment of the boom's own weight",
             "The weight acts straight down: its lever arm is level.", metric="kN m", us="lbf ft"),
        Step(r, L * cos(theta) + e, "lever arm of the load",
             "The level part of the boom length, and what the load hangs beyond it.",
             metric="m", us="ft"),
        Step(Q, (M_0 - M) / r, "largest load",
             "What the boom's own weight leaves of the moment, divided by the load's lever arm.",
             metric="kN", us="lbf"),
    ),
    slips=(
        Slip(Q, M_0 / r, "forgot the weight of the boom"),
        Slip(r, L * cos(theta), "forgot that the load hangs beyond the boom's end"),
        Slip(M, W * x, "took the distance along the boom for the lever arm of its weight"),
        Slip(r, L + e, "took the boom length for its level part"),
        Slip(Q, (M_0 + M) / r, "let the boom's own weight help instead of hinder"),
        Slip(r, (L + e) * cos(theta), "measured the distance beyond the end along the boom"),
    ),
    where=(x < 0.56 * L, x > 0.4 * L, M < 0.6 * M_0, M > 0.06 * M_0),
    check=check,
    picture=picture,
    seen="A boom on its foot at the boom angle; its weight W acts at its centre of gravity, the "
    "load Q hangs from an arm that reaches e beyond the boom's end.",
)  # fmt: skip
