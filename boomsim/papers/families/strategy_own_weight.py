"""Four configurations of one length, and what each leaves where the crane would tip."""

import numpy as np
from sympy import symbols

from boomsim.mechanics.geometry import layout
from boomsim.papers.check_models.textbook_boom import textbook_boom
from boomsim.papers.numbers.dice import Chance
from boomsim.papers.problems.family import ChoiceFamily, Given, Option, Posed, Values

m_1, m_2, m_3, s, R = symbols("m_1 m_2 m_3 s R")

WAYS = (
    ("100 %, 0 %, 0 %", "50 %, 50 %, 0 %", "0 %, 100 %, 0 %", "0 %, 0 %, 100 %"),
    ("100 %, 100 %, 0 %", "100 %, 50 %, 50 %", "100 %, 0 %, 100 %", "0 %, 100 %, 100 %"),
    ("50 %, 50 %, 0 %", "50 %, 25 %, 25 %", "50 %, 0 %, 50 %", "0 %, 50 %, 50 %"),
)
"""Four ways to one boom length: from the one that moves most weight out to the one that moves
least."""

PLACES = ("smallest", "second smallest", "second greatest", "greatest")
"""Of the rated capacity, in the order of `WAYS`."""


def pose(chance: Chance, _: Values) -> Posed:
    """Offer four configurations of one length, and ask for one place among them."""
    ways, asked = chance.pick(WAYS), chance.integer(len(PLACES))
    return Posed(
        options=tuple(
            Option(way, right=place == asked, slip="" if place == asked else _slip(place, asked))
            for place, way in enumerate(ways)
        ),
        because="A section carries all smaller ones with it. The fewer and the lighter the masses "
        "that move outwards, the less the boom's own weight turns the crane over, and the more is "
        "left for the load. From the smallest rated capacity to the greatest: {ranking}.",
        words={"place": PLACES[asked], "ranking": "; ".join(ways)},
    )


def _slip(place: int, asked: int) -> str:
    """Why someone would choose another place among the four."""
    said = f"this one leaves the {PLACES[place]}"
    if place + asked == len(PLACES) - 1:
        return f"took the order the other way round: {said}"
    return f"did not count all that travels with a section: {said}"


def check(given: Values, posed: Posed) -> int:
    """Put the moments of the sections' weight about the heel pin in order."""
    boom = textbook_boom(
        (10.0,) * 4, strokes=(given["s"],) * 3,
        masses=(0.0, given["m_1"], given["m_2"], given["m_3"]),
    )  # fmt: skip
    offered = [fractions(option.text) for option in posed.options]
    placed = layout(boom, extension=offered)
    moments = (placed.front + placed.tail) / 2 @ [section.mass for section in boom.sections]
    heaviest_first = np.argsort(-moments)
    return int(heaviest_first[PLACES.index(posed.words["place"])])


def fractions(text: str) -> list[float]:
    """Read a configuration as it is written."""
    return [float(part.strip(" %")) / 100.0 for part in text.split(",")]


FAMILY = ChoiceFamily(
    id="strategy_own_weight",
    topic="strategy",
    title="Which section to extend when tipping governs",
    text="Three moving sections of masses {m_1=}, {m_2=} and {m_3=} each have a stroke of {s}. At "
    "a radius of {R} the crane would tip long before the boom gave way. Four configurations, "
    "written base side first, have the same boom length. Which of them leaves the {place} rated "
    "capacity?",
    assume="The boom angle is the same for all four, and the boom does not bend.",
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
