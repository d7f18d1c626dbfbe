"""How long a configuration makes the boom."""

from sympy import symbols

from boomsim.mechanics.geometry import layout
from boomsim.papers.check_models.textbook_boom import textbook_boom
from boomsim.papers.problems.family import Family, Given, Slip, Step, Values

L_0, n, s_1, s_2, k_1, k_2, h = symbols("L_0 n s_1 s_2 k_1 k_2 h")
E, L = symbols("E L")

LENGTHS = {"metric": "8 to 14 m by 0.1", "us": "26 to 46 ft by 0.5"}
STROKES = {"metric": "5 to 9 m by 0.1", "us": "16 to 30 ft by 0.5"}
OUT = {"metric": "0, 25, 50, 75, 100 %", "us": "0, 25, 50, 75, 100 %"}


def check(given: Values) -> float:
    """Lay the sections out as the call path does."""
    strokes = given["s_1"], given["s_2"]
    boom = textbook_boom(
        (given["L_0"],) * 3, strokes=strokes, noses=(given["n"],) * 2, ahead=given["h"]
    )
    return float(layout(boom, extension=(given["k_1"], given["k_2"])).boom_length[0])


FAMILY = Family(
    id="geometry_boom_length",
    topic="geometry",
    title="Boom length of a configuration",
    text="A boom has a base section of length {L_0=} and two moving sections with the strokes "
    "{s_1=} and {s_2=}. Retracted, each moving section stands {n=} ahead of the one around it. "
    "The head sheave centre is {h=} ahead of the last front. How long is the boom in the "
    "configuration {k_1=}, {k_2=}?",
    assume="Lengths count along the boom axis; a configuration is written base side first.",
    givens=(
        Given(L_0, "length of the base section", **LENGTHS),
        Given(n, "nose of each section", metric="0.2 to 0.6 m by 0.05", us="1 to 2 ft by 0.25"),
        Given(s_1, "stroke of section 1", **STROKES),
        Given(k_1, "fraction out of section 1", **OUT),
        Given(s_2, "stroke of section 2", **STROKES),
        Given(k_2, "fraction out of section 2", **OUT),
        Given(h, "head ahead of the front", metric="0.3 to 1 m by 0.05", us="1 to 3 ft by 0.25"),
    ),
    steps=(
        Step(E, s_1 * k_1 + s_2 * k_2, "extension of both sections",
             "Each moving section is out by its stroke times its fraction; add them.",
             metric="m", us="ft"),
        Step(L, L_0 + 2 * n + h + E, "boom length",
             "From the heel pin: base section, two noses, the extension, and the head.",
             metric="m", us="ft", tolerance=0.004),
    ),
    slips=(
        Slip(E, s_1 * k_2 + s_2 * k_1, "read the configuration from the head side"),
        Slip(E, s_1 + s_2, "took both sections for fully out"),
        Slip(L, L_0 + 2 * n + E, "forgot the head sheave ahead of the last front"),
        Slip(L, L_0 + h + E, "forgot that each section stands ahead when retracted"),
        Slip(L, L_0 + n + h + E, "counted the nose of one section only"),
        Slip(E, s_1 * k_1, "left out the second section"),
    ),
    where=(k_1 + k_2 > 0,),
    usual=(s_1 < 0.86 * L_0, s_2 < 0.86 * L_0),
    check=check,
)  # fmt: skip
