"""Lesson 07: whether it breaks before it tips."""

from functools import lru_cache

import numpy as np

from boomsim.gravity import GRAVITY
from boomsim.lessons.first_guess import Guess, Truth
from boomsim.lessons.lesson_01_what_a_section_is import MACHINE, far_lock
from boomsim.lessons.lesson_parts import Blank, Lesson, Sheet
from boomsim.lessons.printed_figures import as_said, divide, divided, rated_as_said
from boomsim.lessons.self_check import Check
from boomsim.machine.machine_files import load_machine
from boomsim.rating.around.centres_of_gravity import hung_at
from boomsim.rating.comparison.comparison_study import demonstration
from boomsim.rating.lift.lift_study import lift
from boomsim.rating.overload.overload_study import Overload, overload
from boomsim.rating.setup import set_up
from boomsim.units import show, show_rated

NEAR, FAR = 3.5, 16.0
"""A radius close in and one far out [m]."""

ASKED = 10.0
"""Where the self-check asks about a longer boom [m]."""


@lru_cache(maxsize=32)
def past_rated(radius: float) -> Overload:
    """Raise the load on the lightest section, far out alone, past its rated load.

    Parameters
    ----------
    radius : float
        [m]
    """
    setup = set_up(load_machine(MACHINE))
    return overload(setup, extension=demonstration(setup.machine.boom).extension[0], radius=radius)


def _ends(found: Overload) -> str:
    return "tips" if found.warns else "breaks"


def _breaks_guess(units: str) -> Guess:
    near, far = (show(r, "length", units) for r in (NEAR, FAR))
    return Guess(
        question=(
            "Only section 4, the lightest, is out. Somebody goes on past the rated load until it "
            f"ends. Does the boom break first, or does the crane tip first: at {near}? At {far}? "
            "(breaks or tips)"
        ),
        parts=2,
        answers=lambda: _breaks_truths(near, far),
        units=units,
    )


def _breaks_truths(near: str, far: str) -> tuple[Truth, Truth]:
    return (
        Truth(
            what=f"first at {near}",
            answer=_ends(past_rated(NEAR)),
            slips={"thought that a crane always gets light before anything breaks": "tips"},
        ),
        Truth(
            what=f"first at {far}",
            answer=_ends(past_rated(FAR)),
            slips={"thought of the long lever, and forgot that the load is small here": "breaks"},
        ),
    )


def asked() -> Overload:
    """Raise the load on the two lightest sections, both far out, past its rated load."""
    return overload(
        set_up(load_machine(MACHINE)),
        extension=np.array([0.0, 0.0, far_lock(), far_lock()]),
        radius=ASKED,
    )


def _breaks_check(units: str) -> Check:
    found = asked()
    assert found.failure is not None and found.tipping is not None
    rated = rated_as_said(found.rated, units)
    breaks, tips = (as_said(end.load, "mass", units) for end in (found.failure, found.tipping))

    def said(value: float) -> str:
        return show(value, "mass", units)

    return Check(
        question=(
            f"Now sections 3 and 4 are out. At {show(ASKED, 'length', units)} the rated load is "
            f"{said(rated)}. At {said(breaks)} something gives way; at {said(tips)} the crane "
            "would tip. How far past the load that breaks the boom would one have to go before "
            "the crane tipped?"
        ),
        answer=tips - breaks,
        quantity="mass",
        slips={
            "counted from the rated load": tips - rated,
            "found the way from the rated load to breaking": breaks - rated,
            "wrote down the tipping load itself": tips,
            "wrote down the load that breaks it": breaks,
        },
        working=f"{said(tips)} - {said(breaks)}.",
        units=units,
    )


def _breaks_sheet(units: str) -> Sheet:
    from boomsim.figures.handout.handout_drawings import figure_of_lifts

    setup = set_up(load_machine(MACHINE))
    found = {"close in": past_rated(NEAR), "far out": past_rated(FAR)}
    return Sheet(
        given=(
            "The invented crane yard60 with section 4 far out alone, in two places. The load is "
            "raised past the rated one, with no margin left. In the moment of tipping the crane's "
            "weight holds as much about the tipping line as the load pulls:"
        ),
        figure=lambda: figure_of_lifts(
            [
                hung_at(
                    setup,
                    extension=o.extension,
                    load=rated_as_said(o.rated, units),
                    radius=o.radius,
                )
                for o in found.values()
            ],
            units=units,
            names=tuple(found),
        ),
        seen=(
            "The crane from the side twice: boom steep with the load close in, and boom low, far "
            "out."
        ),
        head=("", "rated", "gives way at", "holds", "lever arm of the load", "tips at", "first"),
        rows=tuple(_row(place, one, units) for place, one in found.items()),
        task=f"{divide(units)} Then write down what ends it first: does it break or tip?",
        why="Could anybody feel it coming, in either place?",
        because=(
            "Not by the floats. Close in the boom gives way long before the crane would tip, and "
            "no float lifts before it does. Far out a float lifts below the rated load already, "
            "and the crane stands. So a float says nothing; only the chart knows what is allowed."
        ),
    )


def _row(place: str, one: Overload, units: str) -> tuple[str | Blank, ...]:
    """What is needed to find the tipping load, and whether it comes first."""
    assert one.failure is not None and one.tipping is not None
    at = lift(
        one.setup,
        extension=one.extension,
        load=one.tipping.load,
        angle=one.angle_under(one.tipping),
    )
    worst = max(at.margins, key=lambda margin: margin.overturning_ratio)
    lever = worst.overturning / (one.tipping.load * GRAVITY)
    moment, lever = as_said(worst.righting, "moment", units), as_said(lever, "length", units)
    return (
        f"{place}, {show(one.radius, 'length', units)}",
        show_rated(one.rated, units),
        show(one.failure.load, "mass", units),
        show(moment, "moment", units),
        show(lever, "length", units),
        # Reckoned from what the sheet prints, as the class does.
        Blank(text=show(divided(moment, lever, units), "mass", units)),
        Blank(text=_ends(one)),
    )


BREAKS = Lesson(
    number="07",
    name="breaks-before-it-tips",
    title="Does it break before it tips?",
    able=(
        "find out for a place on the chart whether the boom would break or the crane tip first",
        "put in order what happens as a load grows past its rating",
        "explain why nobody can feel a structural limit coming",
    ),
    machine=MACHINE,
    guess=_breaks_guess,
    check=_breaks_check,
    sheet=_breaks_sheet,
)
