"""For how many parts of line the rope on the drum reaches, the hook on the ground."""

from dataclasses import replace
from math import pi

import numpy as np
from sympy import pi as half_turn
from sympy import sin, symbols

from boomsim.machine.machine_files import load_machine
from boomsim.mechanics.rope_reach import parts_reached
from boomsim.papers.numbers.dice import Chance
from boomsim.papers.problems.family import ChoiceFamily, Given, Option, Posed, Values

L, K, S, H = symbols("L K S H")

REACH = (L - K - S) / H
"""Parts for which the rope would just be enough, if a part could be divided [1]."""

LEAD = "forgot the lead line from the winch to the boom head"
KEPT = "forgot the turns that stay on the drum"
ALL = "divided all the rope by the height of the head"
UP = "rounded up: the hook would stay above the ground"
LESS = "took a part less than the rope reaches for"
TWICE = "took off the lead line or the turns on the drum twice"
COUNTED = "counted the lead line as a part of line"


def wrong_numbers(given: Values, *, right: int) -> dict[int, str]:
    """Numbers that slips lead to, the likelier ones last."""
    rope, kept, lead, height = (given[k] for k in "LKSH")
    found = {
        right - 2: TWICE, right - 1: LESS, right + 2: COUNTED, right + 1: UP,
        int((rope - lead) // height): KEPT, int((rope - kept) // height): LEAD,
        int(rope // height): ALL,
    }  # fmt: skip
    return {parts: why for parts, why in found.items() if parts != right and parts > 0}


def pose(chance: Chance, given: Values) -> Posed:
    """Offer the right number among those that slips lead to."""
    right = int((given["L"] - given["K"] - given["S"]) // given["H"])
    wrong = wrong_numbers(given, right=right)
    likely = sorted(wrong, key=lambda parts: abs(parts - right))
    below, above = ([n for n in likely if (n < right) == low] for low in (True, False))
    smaller = chance.pick([n for n in range(3) if n <= len(below) and 2 - n <= len(above)])
    return Posed(
        options=tuple(
            Option(f"{parts}", right=parts == right, slip=wrong.get(parts, ""))
            for parts in sorted([right, *below[:smaller], *above[: 2 - smaller]])
        ),
        because="Of the rope the turns on the drum and the lead line are gone first; what is left "
        "is {times} times the height of the head. {right} parts of line reach the ground, {more} "
        "do not.",
        words={
            "right": f"{right}", "more": f"{right + 1}",
            "times": f"{(given['L'] - given['K'] - given['S']) / given['H']:.2f}",
        },
    )  # fmt: skip


def check(given: Values, posed: Posed) -> int:
    """Ask the call path about a boom that stands upright beside its winch, its head so high."""
    machine = load_machine("yard60")
    boom = replace(
        machine.boom, least_angle=pi / 2 - 1e-9, greatest_angle=pi / 2,
        head=replace(machine.boom.head, rope_above=0.0),
    )  # fmt: skip
    length = given["H"] - machine.heel_up
    # The winch stands so far below or above that the lead line has its length.
    hoist = replace(
        machine.hoist, winch_out=machine.heel_out, winch_up=given["H"] - given["S"],
        rope_length=given["L"], drum_diameter=given["K"] / (3.0 * pi),
    )  # fmt: skip
    machine = replace(machine, boom=boom, hoist=hoist)
    reached = int(parts_reached(machine, length=np.array([length]))[0])
    return [option.text for option in posed.options].index(f"{reached}")


FAMILY = ChoiceFamily(
    id="rigging_rope_reaches",
    topic="rigging",
    title="Parts of line that the drum's rope reaches for",
    text="The drum holds {L=} of rope, of which {K=} always stay on it. From the winch to the boom "
    "head it is {S=}, and the head sheaves are {H=} above the ground. In how many parts of line at "
    "most may the rope be reeved, if the hook is to come down to the ground?",
    assume="The height of the hook block is left out.",
    givens=(
        Given(L, "rope on the drum", metric="120 to 300 m by 5", us="400 to 1000 ft by 10"),
        Given(K, "rope that stays on it", metric="3 to 6 m by 0.5", us="10 to 20 ft by 1"),
        Given(S, "lead line", metric="14 to 40 m by 1", us="46 to 130 ft by 2"),
        Given(H, "height of the head", metric="16 to 42 m by 1", us="52 to 138 ft by 2"),
    ),
    difficulty=2,
    marks=2,
    pose=pose,
    check=check,
    where=(
        REACH > 3.1, REACH < 12.9, sin(half_turn * REACH) ** 2 > 0.03,
        S > 0.8 * H, S < 1.2 * H, sin(half_turn * L / H) ** 2 > 0.001,
    ),
)  # fmt: skip
