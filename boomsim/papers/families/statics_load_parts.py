"""What of a load bends the boom: the part across it."""

from sympy import cos, sin, symbols

from boomsim.gravity import GRAVITY
from boomsim.papers.check_models.textbook_boom import lift, textbook_boom, textbook_machine
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values
from boomsim.papers.sketches.boom_sketches import angle_at, crane

Q, theta = symbols("Q theta")
F = symbols("F")


def picture(values: Values, shown: Shown) -> str:
    """Draw the boom with the load at its head."""
    place = crane(values["theta"], hook=False, axis=False)
    angle_at(place, angle=values["theta"], letter="theta", value=shown("theta"))
    head, high = place.end
    place.sketch.arrow((head, high - 5), (head, high - 40))
    at = (head + 5, high - 36)
    return place.sketch.label(at, letter="Q", value=shown("Q"), anchor="start").svg()


def check(given: Values) -> float:
    """Hang the load on a weightless boom, and read what its head carries across it."""
    made = textbook_machine(textbook_boom((20.0,)))
    load = given["Q"] / GRAVITY
    _, state, _ = lift(made, extension=(), load=load, angle=given["theta"])
    return -float(state.across[0, -1, 0])


FAMILY = Family(
    id="statics_load_parts",
    topic="statics",
    title="Part of the load across the boom",
    text="A gross load of {Q=} hangs at the head of a boom that stands at a boom angle of "
    "{theta=}. How large is the part of it that acts across the boom and bends it?",
    assume="The boom is straight.",
    givens=(
        Given(Q, "gross load", metric="8 to 120 kN by 0.5", us="2000 to 27000 lbf by 100"),
        Given(theta, "boom angle", metric="20 to 78 deg by 1", us="20 to 78 deg by 1"),
    ),
    steps=(
        Step(F, Q * cos(theta), "part across the boom",
             "Split the load into a part across the boom and a part along it: the one across goes "
             "with the cosine.", metric="kN", us="lbf"),
    ),
    slips=(
        Slip(F, Q * sin(theta), "took the part along the boom, which presses it"),
        Slip(F, Q, "took the whole load"),
        Slip(F, Q / cos(theta), "divided by the cosine, which makes the part larger than the load"),
        Slip(F, Q / 2, "halved the load"),
    ),
    check=check,
    picture=picture,
    seen="A boom at the boom angle with the load Q hanging at its head.",
)  # fmt: skip
