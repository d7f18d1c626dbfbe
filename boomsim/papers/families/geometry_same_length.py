"""The same boom length from other sections: how far they must be out."""

from sympy import Ne, symbols

from boomsim.mechanics.geometry import layout
from boomsim.papers.check_models.textbook_boom import textbook_boom
from boomsim.papers.problems.family import Family, Given, Slip, Step, Values

s_1, s_2, s_3, k_1, k_2 = symbols("s_1 s_2 s_3 k_1 k_2")
E, k = symbols("E k")

STROKES = {"metric": "5 to 9 m by 0.1", "us": "16 to 30 ft by 0.5"}
OUT = {"metric": "0, 25, 50, 75, 100 %", "us": "0, 25, 50, 75, 100 %"}


def check(given: Values) -> float:
    """Find the fraction at which both configurations are as long as each other."""
    boom = textbook_boom((12.0,) * 4, strokes=(given["s_1"], given["s_2"], given["s_3"]))
    ways = ((given["k_1"], given["k_2"], 0.0), (0.0, 0.0, 0.0), (0.0, 1.0, 1.0))
    wanted, shortest, longest = layout(boom, extension=ways).boom_length
    return float((wanted - shortest) / (longest - shortest))


FAMILY = Family(
    id="geometry_same_length",
    topic="geometry",
    title="The other configuration of the same length",
    text="Three moving sections have the strokes {s_1=}, {s_2=} and {s_3=}. The boom is in the "
    "configuration {k_1=}, {k_2=}, 0 %. It shall have the same length with section 1 in, and with "
    "sections 2 and 3 out by one and the same fraction. Which fraction is that?",
    assume="A configuration is written base side first, in percent of each stroke.",
    givens=(
        Given(s_1, "stroke of section 1", **STROKES),
        Given(k_1, "fraction out of section 1", **OUT),
        Given(s_2, "stroke of section 2", **STROKES),
        Given(k_2, "fraction out of section 2", **OUT),
        Given(s_3, "stroke of section 3", **STROKES),
    ),
    steps=(
        Step(E, s_1 * k_1 + s_2 * k_2, "extension to be kept",
             "What lengthens the boom is each stroke times its fraction; add them.",
             metric="m", us="ft"),
        Step(k, E / (s_2 + s_3), "fraction out of sections 2 and 3",
             "Both strokes share this extension: divide it by their sum.",
             metric="%", us="%"),
    ),
    slips=(
        Slip(E, s_1 * k_2 + s_2 * k_1, "read the configuration from the head side"),
        Slip(k, E / (s_1 + s_2), "divided by the strokes of the sections that were out before"),
        Slip(k, E / (s_1 + s_2 + s_3), "spread the extension over all three sections"),
        Slip(k, (k_1 + k_2) / 2, "took the mean of the percentages, as if all strokes were equal"),
        Slip(E, s_1 * k_1, "left out section 2, which is out as well"),
    ),
    where=(Ne(k_1, k_2), E > 0, k < 0.97),
    check=check,
)  # fmt: skip
