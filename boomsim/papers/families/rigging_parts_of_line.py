"""How many parts of line a load asks for, friction and hook block included."""

from math import ceil

from sympy import log, pi, sin, symbols

from boomsim.mechanics.rope_tackle import tackle_advantage
from boomsim.papers.numbers.dice import Chance
from boomsim.papers.problems.family import ChoiceFamily, Given, Option, Posed, Values

W, B, F, E = symbols("W B F E")

NEEDED = log(1 - (W + B) / F * (1 - E) / E) / log(E)
"""Parts that would just carry all, if a part could be divided [1]."""
FRICTION = "did not count on friction"
BLOCK = "forgot the hook block"
BOTH = "forgot both the hook block and friction"
SHORT = "rounded down instead of up"
LEAD = "counted the lead line as a part of line, and rounded down instead of up"
EVERY = "let every part of line lose at every sheave"
RESERVE = "took two more as a reserve, which the permissible pull has already"
SAFE = "took more than are needed; fewer parts hoist faster and use less rope"


def fewest(weight: float, *, pull: float, efficiency: float) -> int:
    """Add parts of line up until they carry a weight."""
    carried, part, parts = 0.0, pull, 0
    while carried < weight and parts < 99:
        part, parts = part * efficiency, parts + 1
        carried += part
    return parts


def with_every_sheave(gross: float, *, pull: float, efficiency: float) -> int:
    """Let every part lose at every sheave, which is too much; where that never ends, far more."""
    return next((n for n in range(1, 40) if n * efficiency**n * pull >= gross), 99)


def wrong_numbers(given: Values, *, right: int) -> dict[int, str]:
    """Numbers that slips lead to, the likelier ones last."""
    gross, pull, efficiency = given["W"] + given["B"], given["F"], given["E"]
    found = {
        right - 2: LEAD, right - 1: SHORT, right + 2: RESERVE, right + 1: SAFE,
        with_every_sheave(gross, pull=pull, efficiency=efficiency): EVERY,
        ceil(given["W"] / pull): BOTH,
        fewest(given["W"], pull=pull, efficiency=efficiency): BLOCK,
        ceil(gross / pull): FRICTION,
    }  # fmt: skip
    return {parts: why for parts, why in found.items() if parts not in (right, 99)}


def pose(chance: Chance, given: Values) -> Posed:
    """Offer the right number among those that slips lead to, in any rank among them."""
    gross, pull, efficiency = given["W"] + given["B"], given["F"], given["E"]
    right = fewest(gross, pull=pull, efficiency=efficiency)
    wrong = wrong_numbers(given, right=right)
    likely = sorted(wrong, key=lambda parts: abs(parts - right))
    below, above = ([n for n in likely if (n < right) == low] for low in (True, False))
    smaller = chance.pick([n for n in range(4) if n <= len(below) and 3 - n <= len(above)])
    return Posed(
        options=tuple(
            Option(f"{parts}", right=parts == right, slip=wrong.get(parts, ""))
            for parts in sorted([right, *below[:smaller], *above[: 3 - smaller]])
        ),
        because="Load and hook block are {times} times the permissible pull. The advantage of "
        "{right} parts of line is {most}, that of {fewer} only {less}.",
        words={
            "right": f"{right}", "fewer": f"{right - 1}", "times": f"{gross / pull:.2f}",
            "most": f"{tackle_advantage(right, sheave_efficiency=efficiency):.2f}",
            "less": f"{tackle_advantage(right - 1, sheave_efficiency=efficiency):.2f}",
        },
    )  # fmt: skip


def check(given: Values, posed: Posed) -> int:
    """Try one reeving after the other with the call path's tackle."""
    wanted, parts = (given["W"] + given["B"]) / given["F"], 1
    while tackle_advantage(parts, sheave_efficiency=given["E"]) < wanted:
        parts += 1
    return [option.text for option in posed.options].index(f"{parts}")


FAMILY = ChoiceFamily(
    id="rigging_parts_of_line",
    topic="rigging",
    title="Parts of line needed",
    text="A load weighs {W=}, the hook block {B=}. The lead line may be pulled with {F=}; the "
    "efficiency of every sheave is {E=}. What is the least number of parts of line?",
    assume="The rope runs over as many sheaves as there are parts of line, and has no weight.",
    givens=(
        Given(W, "weight of the load", metric="120 to 400 kN by 5", us="27000 to 90000 lbf by 500"),
        Given(B, "weight of the hook block", metric="4 to 9 kN by 0.5",
              us="1000 to 2000 lbf by 50"),
        Given(F, "permissible line pull", metric="40 to 60 kN by 1", us="9000 to 14000 lbf by 250"),
        Given(E, "efficiency of a sheave", metric="95, 96, 97, 98 %", us="95, 96, 97, 98 %"),
    ),
    difficulty=3,
    marks=2,
    pose=pose,
    check=check,
    where=(NEEDED > 3.1, NEEDED < 11.9, sin(pi * NEEDED) ** 2 > 0.03),
)  # fmt: skip
