"""How hard the front pads are pressed, and how much of what they may bear."""

from sympy import symbols

from boomsim.gravity import GRAVITY
from boomsim.machine.model import Pad
from boomsim.mechanics.sections.patch_loading import pad_pressure
from boomsim.papers.check_models.textbook_boom import lift, textbook_boom, textbook_machine
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values, as_written
from boomsim.papers.sketches.boom_sketches import telescoped

F, a, c, l, b, p_0 = symbols("F a c l b p_0")  # noqa: E741 - the book's letter of a length
R_f, p, u = symbols("R_f p u")


def picture(values: Values, shown: Shown) -> str:
    """Draw the section standing out of the next larger one."""
    place = telescoped(values["c"], overhang=values["a"])
    (mouth, _), (head, _), sketch = place.start, place.end, place.sketch
    sketch.arrow((head, 108), (head, 77)).label((head + 6, 98), letter="F", anchor="start")
    sketch.dimension((75, 24), (mouth, 24), letter="c", value=shown("c"))
    return sketch.dimension((mouth, 24), (head, 24), letter="a", value=shown("a")).svg()


def check(given: Values) -> float:
    """Take the front pad's force from the call path, and press a pair of pads with it."""
    overhang, overlap = given["a"], given["c"]
    boom = textbook_boom((2 * overlap, overlap + overhang), strokes=(overhang,))
    _, _, forces = lift(textbook_machine(boom), extension=(1.0,), load=given["F"] / GRAVITY)
    pad = Pad(length=given["l"], width=given["b"], pressure=given["p_0"])
    return float(pad_pressure(forces.front_pad[0, 1, 0], pad=pad)) / pad.pressure


with as_written():
    LEVER = F * (a + c) / c
    PAIR = R_f / (2 * l * b)

FAMILY = Family(
    id="strength_pad_pressure",
    topic="strength",
    title="Pressure under the front pads",
    text="A boom section stands {a=} out of the mouth of the next larger one; {c=} of it is still "
    "inside. A force {F=} acts across the boom at its head. At the mouth it lies on two pads, left "
    "and right, each {l=} by {b=}, which may be pressed with {p_0=}. How much of that is used?",
    assume="The section is weightless, each pair of pads acts at a point along the boom, and left "
    "and right carry alike. More than 100 % may come out: then they are overloaded.",
    givens=(
        Given(F, "force across the boom", metric="5 to 60 kN by 0.5",
              us="1100 to 13000 lbf by 100"),
        Given(a, "overhang", metric="3 to 8.5 m by 0.1", us="10 to 28 ft by 0.5"),
        Given(c, "overlap", metric="1.2 to 3 m by 0.1", us="4 to 10 ft by 0.5"),
        Given(l, "length of a pad", metric="100 to 200 mm by 10", us="4 to 8 in by 0.5"),
        Given(b, "width of a pad", metric="50 to 100 mm by 5", us="2 to 4 in by 0.25"),
        Given(p_0, "allowed pressure", metric="12, 15, 18, 20 MPa",
              us="1800, 2200, 2600, 3000 psi"),
    ),
    steps=(
        Step(R_f, LEVER, "force on the front pads",
             "Take moments about the rear pads: the force has the whole length for a lever arm, "
             "the front pads have the overlap.", metric="kN", us="lbf"),
        Step(p, PAIR, "pressure under the front pads",
             "Two pads share the force: divide it by both areas.", metric="MPa", us="psi"),
        Step(u, p / p_0, "utilisation of the allowed pressure",
             "Utilisation is what is there over what is allowed.", metric="%", us="%"),
    ),
    slips=(
        Slip(p, R_f / (l * b), "let one pad carry the whole force"),
        Slip(R_f, F * a / c, "took the force on the rear pads"),
        Slip(R_f, F, "let the front pads carry the force at the head and no more"),
        Slip(R_f, F * (a + c) / a, "divided by the overhang instead of the overlap"),
        Slip(p, R_f / (4 * l * b), "shared the force among four pads"),
        Slip(R_f, LEVER + F, "added the force once more, though its lever arm has it already"),
    ),
    where=(c < a, a < 5 * c, u < 1.15, u > 0.2),
    check=check,
    picture=picture,
    seen="A section lies in the larger one over the length c and stands out over the length a; F "
    "acts downwards at its head; the pads are at the mouth and at the tail.",
)  # fmt: skip
