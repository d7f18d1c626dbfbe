"""The overlap is a lever: what presses on the front pad of a telescoped section."""

from sympy import symbols

from boomsim.figures.colours_and_lines import INK, PAPER
from boomsim.gravity import GRAVITY
from boomsim.papers.check_models.textbook_boom import lift, textbook_boom, textbook_machine
from boomsim.papers.problems.family import Family, Given, Shown, Slip, Step, Values
from boomsim.papers.sketches.sketch_svg import Sketch

F, a, c = symbols("F a c")
M, R_r, R_f = symbols("M R_r R_f")


def picture(values: Values, shown: Shown) -> str:
    """Draw the inner section standing out of the outer one."""
    scale = 230 / (values["a"] + values["c"])
    tail, mouth, head = 60, 60 + scale * values["c"], 290
    sketch = Sketch(330, height=96)
    sketch.bar((12, 48), (mouth, 48), depth=30).bar((tail, 48), (head, 48), depth=18, fill=PAPER)
    sketch.arrow((head, 88), (head, 58)).label((head + 6, 78), letter="F", anchor="start")
    for x, y in ((tail, 60), (mouth, 36)):
        sketch.shape([(x - 6, y - 3), (x, y - 3), (x, y + 3), (x - 6, y + 3)], fill=INK)
    sketch.dimension((tail, 16), (mouth, 16), letter="c", value=shown("c"))
    return sketch.dimension((mouth, 16), (head, 16), letter="a", value=shown("a")).svg()


def check(given: Values) -> float:
    """Hang the force on a level boom of two weightless sections."""
    overhang, overlap = given["a"], given["c"]
    boom = textbook_boom((2 * overlap, overlap + overhang), strokes=(overhang,))
    _, _, forces = lift(textbook_machine(boom), extension=(1.0,), load=given["F"] / GRAVITY)
    return float(forces.front_pad[0, 1, 0])


FAMILY = Family(
    id="statics_pad_force",
    topic="statics",
    title="Pad forces of a section",
    text="A boom section stands {a=} out of the mouth of the next larger one; {c=} of it is still "
    "inside. A force {F=} acts across the boom at its head. One pad sits at the mouth, one at the "
    "tail of the inner section. How hard does the front pad press?",
    assume="The section is weightless, and each pad acts at a point.",
    givens=(
        Given(F, "force across the boom", metric="2 to 20 kN by 0.1", us="500 to 4500 lbf by 50"),
        Given(a, "overhang", metric="1.5 to 8 m by 0.1", us="5 to 26 ft by 0.5"),
        Given(c, "overlap", metric="0.8 to 3 m by 0.1", us="2.5 to 10 ft by 0.5"),
    ),
    steps=(
        Step(M, F * a, "moment at the mouth", "Multiply the force by its distance from the mouth.",
             metric="kN m", us="lbf ft"),
        Step(R_r, M / c, "force on the rear pad",
             "The two pads hold this moment as a couple: divide it by the overlap.",
             metric="kN", us="lbf"),
        Step(R_f, F + R_r, "force on the front pad",
             "Across the boom the forces are in balance: the front pad carries both.",
             metric="kN", us="lbf"),
    ),
    slips=(
        Slip(R_f, R_r, "forgot that the front pad also carries the force itself"),
        Slip(R_r, M / a, "divided by the overhang instead of the overlap"),
        Slip(R_r, M / (a + c), "divided by the whole length instead of the overlap"),
        Slip(R_f, R_r - F, "took the force off instead of adding it"),
        Slip(M, F * (a + c), "took the lever arm from the tail instead of the mouth"),
    ),
    where=(c < a, a < 6 * c),
    check=check,
    picture=picture,
    seen="The inner section lies in the outer one, from its tail to the mouth over the length c, "
    "and stands out over the length a; F acts downwards at its head.",
)  # fmt: skip
