"""What the boom's own weight turns at its heel pin: section by section, each where it is."""

from sympy import cos, symbols

from boomsim.figures.colours_and_lines import INK
from boomsim.gravity import GRAVITY
from boomsim.papers.check_models.textbook_boom import lift, textbook_boom, textbook_machine
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values
from boomsim.papers.sketches.boom_sketches import angle_at, crane

W_0, W_1, W_2, x_0, x_1, x_2, e_1, e_2, theta = symbols("W_0 W_1 W_2 x_0 x_1 x_2 e_1 e_2 theta")
y_1, y_2, S, M = symbols("y_1 y_2 S M")


def picture(values: Values, shown: Shown) -> str:
    """Draw the boom with the centres of gravity of its sections."""
    centres = (
        values["x_0"], values["x_1"] + values["e_1"],
        values["x_2"] + values["e_1"] + values["e_2"],
    )  # fmt: skip
    length = 1.3 * centres[2]
    place = crane(values["theta"], length=length, hook=False, axis=False, above=38.0)
    angle_at(place, angle=values["theta"], letter="theta", value=shown("theta"))
    for number, centre in enumerate(centres):
        x, y = place.at(centre / length)
        place.sketch.circle((x, y), radius=2.5, fill=INK).arrow((x, y + 30), (x, y + 4))
        place.sketch.label((x - 4, y + 24), letter=f"W_{number}", anchor="end")
    return place.sketch.svg()


def check(given: Values) -> float:
    """Take the moment that the luffing cylinder holds, of three sections of one length."""
    length, first = 2 * given["x_0"], given["x_1"] - given["x_0"]
    boom = textbook_boom(
        (length,) * 3,
        strokes=(given["e_1"], given["e_2"]),
        noses=(first, given["x_2"] - given["x_1"]),
        masses=[given[f"W_{i}"] / GRAVITY for i in range(3)],
    )
    machine = textbook_machine(boom)
    _, _, forces = lift(machine, extension=(1.0, 1.0), load=0.0, angle=given["theta"])
    return float(forces.front_pad[0, 0, 0]) * machine.cylinder.attach_along


FAMILY = Family(
    id="weights_heel_moment",
    topic="weights",
    title="Moment of the boom's own weight about the heel pin",
    text="Base section, section 1 and section 2 weigh {W_0=}, {W_1=} and {W_2=}. With the boom "
    "retracted their centres of gravity are {x_0=}, {x_1=} and {x_2=} from the heel pin, along the "
    "boom. Now section 1 is {e_1=} out of the base section, and section 2 is {e_2=} out of "
    "section 1; the boom angle is {theta=}. How large is the moment of the boom's own weight about "
    "the heel pin?",
    assume="The boom is straight, and all centres of gravity lie on its axis.",
    givens=(
        Given(W_0, "weight of the base section", metric="18 to 36 kN by 0.5",
              us="4000 to 8000 lbf by 100"),
        Given(W_1, "weight of section 1", metric="12 to 18 kN by 0.5",
              us="2600 to 4000 lbf by 100"),
        Given(W_2, "weight of section 2", metric="6 to 11 kN by 0.5",
              us="1400 to 2500 lbf by 100"),
        Given(x_0, "centre of gravity of the base section", metric="4.4 to 5.4 m by 0.1",
              us="14 to 18 ft by 0.5"),
        Given(x_1, "centre of gravity of section 1", metric="5.5 to 5.9 m by 0.1",
              us="18.5 to 19.5 ft by 0.5"),
        Given(x_2, "centre of gravity of section 2", metric="6 to 6.6 m by 0.1",
              us="20 to 22 ft by 0.5"),
        Given(e_1, "extension of section 1", metric="2 to 6.5 m by 0.1", us="7 to 21 ft by 0.5"),
        Given(e_2, "extension of section 2", metric="2 to 6.5 m by 0.1", us="7 to 21 ft by 0.5"),
        Given(theta, "boom angle", metric="20 to 70 deg by 1", us="20 to 70 deg by 1"),
    ),
    steps=(
        Step(y_1, x_1 + e_1, "centre of gravity of section 1, from the heel pin",
             "A section's centre of gravity moves out with it.", metric="m", us="ft"),
        Step(y_2, x_2 + e_1 + e_2, "centre of gravity of section 2, from the heel pin",
             "Section 1 carries section 2 along: both extensions count.", metric="m", us="ft"),
        Step(S, W_0 * x_0 + W_1 * y_1 + W_2 * y_2, "moment if the boom were level",
             "Multiply each weight by its distance along the boom, and add.",
             metric="kN m", us="lbf ft"),
        Step(M, S * cos(theta), "moment about the heel pin",
             "Weight acts straight down: only the level part of each distance is a lever arm.",
             metric="kN m", us="lbf ft"),
    ),
    slips=(
        Slip(y_2, x_2 + e_2, "forgot that section 1 carries section 2 along"),
        Slip(M, S, "took the distances along the boom for lever arms"),
        Slip(y_1, x_1, "left section 1 where it is when retracted"),
        Slip(S, W_1 * y_1 + W_2 * y_2, "forgot the base section, which does not move but weighs"),
        Slip(S, (W_0 + W_1 + W_2) * y_2, "put all the weight where section 2 is"),
    ),
    where=(e_1 < 1.4 * x_0, e_2 < 1.4 * x_0),
    check=check,
    picture=picture,
    seen="A boom at the boom angle, with the weights of its three sections acting downwards at "
    "their centres of gravity.",
)  # fmt: skip
