"""Where the crane turns over."""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from boomsim.lessons.first_guess import Guess, Truth
from boomsim.lessons.lesson_parts import Blank, Lesson, Sheet
from boomsim.lessons.printed_figures import as_said, divide, divided
from boomsim.lessons.self_check import Check
from boomsim.machine.machine_files import load_machine
from boomsim.mechanics.geometry import Array
from boomsim.rating.around.centres_of_gravity import GROUPS, hung_at
from boomsim.rating.around.over_rear_sector import group_of
from boomsim.rating.comparison.comparison_study import demonstration
from boomsim.rating.comparison.difference_account import Account, account
from boomsim.rating.setup import Setup, set_up
from boomsim.rating.setup_variants import with_sector
from boomsim.units import show

DIRECTIONS = {"front": float(np.pi), "side": float(np.pi / 2), "rear": 0.0}
"""Slew angles; 0 is over the rear [rad]."""

MACHINE = "truck18"
"""Its heavy end lies so far ahead that the directions differ; on yard60 they hardly do."""

RADIUS, LOAD = 14.0, 2000.0
"""Where the load hangs, and a load for the picture and the self-check [m], [kg]."""


def half_out() -> Array:
    """Extend all sections by half [1]."""
    return np.asarray(demonstration(load_machine(MACHINE).boom).extension[0])


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Over:
    """One direction: its capacity, and what holds the crane down.

    Attributes
    ----------
    name : str
        A key of `DIRECTIONS`
    setup : Setup
    account : Account
    holds : dict of str to float
        Moment of each group of masses about the tipping line, righting positive [N m]
    """

    name: str
    setup: Setup
    account: Account
    holds: dict[str, float]


@lru_cache(maxsize=8)
def over(name: str, *, setup: Setup | None = None) -> Over:
    """Account for the capacity in one direction.

    Parameters
    ----------
    name : str
        A key of `DIRECTIONS`
    setup : Setup, optional
        Default: the machine's usual one

    Raises
    ------
    ValueError
        If there is no such direction, or no rated load
    """
    if name not in DIRECTIONS:
        raise ValueError(f"There is no direction {name!r}. Choose front, side or rear.")
    turned = with_sector(setup or set_up(load_machine(MACHINE)), slew=DIRECTIONS[name])
    found = account(turned, extension=half_out(), radius=RADIUS)
    if found is None:
        raise ValueError(f"The boom does not reach {RADIUS:g} m in this setup. Choose another.")
    holds = dict.fromkeys(GROUPS, 0.0)
    for part, moment in found.parts.items():
        holds[group_of(turned, part)] += moment
    return Over(name=name, setup=turned, account=found, holds=holds)


def _over_guess(units: str) -> Guess:
    return Guess(
        question=(
            f"{MACHINE} is an invented boom truck. The same boom, the same radius of "
            f"{show(RADIUS, 'length', units)}, full outriggers. The load hangs over the front (the "
            "cab of the carrier), over the side, or over the rear. Where may it be least, and "
            "where most? (front, side or rear)"
        ),
        parts=2,
        answers=_over_truths,
        units=units,
    )


def _over_truths() -> tuple[Truth, Truth]:
    found = {name: over(name).account.capacity for name in DIRECTIONS}
    ranked = sorted(found, key=lambda name: found[name])
    return (
        Truth(
            what="least",
            answer=ranked[0],
            slips={
                "thought of the width of the crane, and not of where its weight lies": "side",
                "looked for the nearest tipping line only, not for where the weight lies": "rear",
            },
        ),
        Truth(
            what="most",
            answer=ranked[-1],
            slips={
                "looked for the farthest tipping line only, not for where the weight lies":
                    "front",
                "thought of how wide the outriggers stand, and not of where the weight lies":
                    "side",
            },
        ),
    )  # fmt: skip


def _over_check(units: str) -> Check:
    # The row of the sheet for the side, reckoned from what it prints.
    one, setup = over("side"), set_up(load_machine(MACHINE))
    righting = sum(as_said(one.holds[group], "moment", units) for group in GROUPS)
    radius = as_said(RADIUS, "length", units)
    line = as_said(radius - one.account.lever, "length", units)
    tips = divided(righting, radius - line, units)
    share = setup.rule.stability.share(setup.support.kind)

    def said(value: float, quantity: str = "length") -> str:
        return show(value, quantity, units)

    return Check(
        question=(
            f"Over the side, the weight of the crane itself holds it down with "
            f"{said(righting, 'moment')} about the tipping line. This line lies {said(line)} "
            f"from the axis of rotation; the hoist line hangs {said(radius)} from the axis. "
            "Which gross load tips the crane?"
        ),
        answer=tips,
        quantity="mass",
        slips={
            "took the load's lever arm from the axis of rotation, not from the tipping line":
                divided(righting, radius, units),
            "added the distance of the tipping line instead of subtracting it":
                divided(righting, radius + line, units),
            "took the lever arm that the tipping line has, not the load":
                divided(righting, line, units),
            f"took the rated load, which is {said(share, 'share')} of it":
                share * tips,
        },
        working=(
            f"The load's lever arm is {said(radius)} - {said(line)}. {divide(units)}"
        ),
        units=units,
    )  # fmt: skip


def _over_sheet(units: str) -> Sheet:
    from boomsim.figures.handout.handout_drawings import figure_of_plan_bare

    setup = set_up(load_machine(MACHINE))
    at = hung_at(setup, extension=half_out(), load=LOAD, radius=RADIUS)
    rows: list[tuple[str | Blank, ...]] = []
    for name in DIRECTIONS:
        one = over(name)
        # Reckoned from what the sheet prints, as the class does.
        whole = sum(as_said(one.holds[group], "moment", units) for group in GROUPS)
        lever = as_said(one.account.lever, "length", units)
        rows.append((
            f"over the {name}",
            *(show(one.holds[group], "moment", units) for group in GROUPS),
            show(lever, "length", units),
            Blank(text=show(whole, "moment", units)),
            Blank(text=show(divided(whole, lever, units), "mass", units)),
        ))  # fmt: skip
    return Sheet(
        given=(
            f"The invented boom truck {MACHINE} from above with {show(LOAD, 'mass', units)} at "
            f"{show(RADIUS, 'length', units)} over the side. Heavy line: tipping line. Ring: path "
            "of the point where all the weight bears as the crane slews. The table has the moments "
            "that hold the crane down (minus: that help to turn it over)."
        ),
        figure=lambda: figure_of_plan_bare(at, slew=DIRECTIONS["side"], units=units),
        seen=(
            "The carrier from above, its four outriggers joined by tipping lines, the boom over "
            "the side."
        ),
        head=("", *GROUPS, "lever arm of the load", "holds in all", "tips at"),
        rows=tuple(rows),
        task="Add up what holds. " + divide(units),
        why="Why may less hang in one direction than in another?",
        because=(
            "The crane turns over about the line between two supports. How far that line lies from "
            "the load, and how far on its other side the carrier's weight lies, changes with the "
            "direction. Over the front the line is nearest to the load, but the carrier's heavy "
            "end lies beyond it, on the load's side, and holds nothing down."
        ),
    )


TURNS_OVER = Lesson(
    number="05",
    name="where-it-turns-over",
    title="Where does the crane turn over?",
    able=(
        "draw the tipping lines of a crane and find the one that matters",
        "work out a tipping load from moments about it",
        "say why over the rear is not all around",
    ),
    machine=MACHINE,
    guess=_over_guess,
    check=_over_check,
    sheet=_over_sheet,
)
