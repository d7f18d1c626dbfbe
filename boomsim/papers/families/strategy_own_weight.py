"""Three configurations of one length, and which leaves most where the crane would tip."""

import numpy as np
from sympy import symbols

from boomsim.mechanics.geometry import layout
from boomsim.papers.callpath.boom import textbook_boom
from boomsim.papers.numbers.chance import Chance
from boomsim.papers.problems.family import ChoiceFamily, Given, Option, Posed, Values

m_1, m_2, m_3, s, R = symbols("m_1 m_2 m_3 s R")

WAYS = (
    ("100 %, 0 %, 0 %", "0 %, 100 %, 0 %", "0 %, 0 %, 100 %"),
    ("100 %, 100 %, 0 %", "100 %, 0 %, 100 %", "0 %, 100 %, 100 %"),
    ("50 %, 50 %, 0 %", "50 %, 0 %, 50 %", "0 %, 50 %, 50 %"),
)
"""Three ways to one boom length: from the one that moves most weight out to the one that moves
least."""

SAME = "It makes no difference, for the boom length is the same."


def pose(chance: Chance, _: Values) -> Posed:
    """Offer three configurations of one length, and none of them."""
    most, middle, least = chance.pick(WAYS)
    return Posed(
        options=(
            Option(most, slip="thought of strength: the stiff sections bend least, but all that is "
                   "inside a section travels with it"),
            Option(middle, slip="took the middle way: the lighter sections still travel with the "
                   "heavier one"),
            Option(least, right=True),
            Option(SAME, slip="looked at the boom length only and forgot the boom's own weight"),
        ),
        because="A section carries all smaller ones with it. The fewer and the lighter the masses "
        "that move outwards, the less the boom's own weight turns the crane over, and the more is "
        "left for the load. With section 1 in, its mass does not move at all.",
    )  # fmt: skip


def check(given: Values, posed: Posed) -> int:
    """Find the least moment of the sections' weight about the heel pin."""
    boom = textbook_boom(
        (10.0,) * 4, strokes=(given["s"],) * 3,
        masses=(0.0, given["m_1"], given["m_2"], given["m_3"]),
    )  # fmt: skip
    offered = [option.text for option in posed.options if option.text != SAME]
    placed = layout(boom, extension=[fractions(text) for text in offered])
    moments = (placed.front + placed.tail) / 2 @ [section.mass for section in boom.sections]
    best = offered[int(np.argmin(moments))]
    return [option.text for option in posed.options].index(best)


def fractions(text: str) -> list[float]:
    """Read a configuration as it is written."""
    return [float(part.strip(" %")) / 100.0 for part in text.split(",")]


FAMILY = ChoiceFamily(
    id="strategy_own_weight",
    topic="strategy",
    title="Which section to extend when tipping governs",
    text="Three moving sections of masses {m_1=}, {m_2=} and {m_3=} each have a stroke of {s}. At "
    "a radius of {R} the crane would tip long before the boom gave way. Which configuration, "
    "written base side first, leaves the greatest rated capacity?",
    assume="The boom angle is the same for all three, and the boom does not bend.",
    givens=(
        Given(m_1, "mass of section 1", metric="1.6 to 2.4 t by 0.1", us="3600 to 5400 lb by 100"),
        Given(m_2, "mass of section 2", metric="1 to 1.5 t by 0.1", us="2400 to 3400 lb by 100"),
        Given(m_3, "mass of section 3", metric="0.5 to 0.9 t by 0.1", us="1200 to 2200 lb by 100"),
        Given(s, "stroke", metric="5 to 9 m by 0.5", us="16 to 30 ft by 1"),
        Given(R, "radius", metric="14 to 20 m by 1", us="45 to 65 ft by 5"),
    ),
    difficulty=3,
    marks=2,
    pose=pose,
    check=check,
)  # fmt: skip
