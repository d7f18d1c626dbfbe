"""Lesson 07: whether it breaks before it tips."""

from functools import lru_cache

from boomsim.lab.lessons.check import Check
from boomsim.lab.lessons.parts import Blank, Guess, Lesson, Sheet, Truth, as_said
from boomsim.lab.lessons.section import MACHINE
from boomsim.machine.files import load_machine
from boomsim.rating.around.centres import hung_at
from boomsim.rating.comparison.compare import demonstration
from boomsim.rating.overload.study import Overload, overload
from boomsim.rating.setup import set_up
from boomsim.units import show

NEAR, FAR = 6.0, 16.0
"""A radius close in and one far out [m]."""


@lru_cache(maxsize=4)
def past_rated(radius: float) -> Overload:
    """Raise the load on the lightest section, far out alone, past its rated load.

    Parameters
    ----------
    radius : float
        [m]

    Returns
    -------
    Overload
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
        truths=(
            Truth(what=f"first at {near}", answer=_ends(past_rated(NEAR))),
            Truth(what=f"first at {far}", answer=_ends(past_rated(FAR))),
        ),
        units=units,
    )


def _breaks_check(units: str) -> Check:
    found = past_rated(NEAR)
    assert found.failure is not None and found.tipping is not None
    rated, breaks, tips = (
        as_said(load, "mass", units)
        for load in (found.rated, found.failure.load, found.tipping.load)
    )

    def said(value: float) -> str:
        return show(value, "mass", units)

    return Check(
        question=(
            f"At {show(NEAR, 'length', units)} the rated load is {said(rated)}. At "
            f"{said(breaks)} something gives way; at {said(tips)} the crane would tip. How far "
            "past the load that breaks the boom would one have to go before the crane warned by "
            "tipping?"
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
    from boomsim.figures.handout.drawings import figure_of_lifts

    setup = set_up(load_machine(MACHINE))
    out = demonstration(setup.machine.boom).extension[0]
    found = {"close in": past_rated(NEAR), "far out": past_rated(FAR)}
    rows: list[tuple[str | Blank, ...]] = []
    for place, one in found.items():
        rows.append((place, "rated load", show(one.rated, "mass", units), "1.00"))
        ends = (one.failure, one.tipping)
        for event in (e for e in one.events if e.kind == "float" or e in ends):
            multiple = Blank(text=f"{event.multiple:.2f}")
            rows.append((place, event.words, show(event.load, "mass", units), multiple))
    return Sheet(
        given=(
            "The invented crane yard60 with section 4 far out alone, in two places. What happens "
            "as the load grows, with no margin left:"
        ),
        figure=lambda: figure_of_lifts(
            [hung_at(setup, extension=out, load=o.rated, radius=o.radius) for o in found.values()],
            units=units,
            names=tuple(found),
        ),
        seen=(
            "The crane from the side twice: boom steep with the load close in, and boom low, far "
            "out."
        ),
        head=("", "what happens", "at", "times rated"),
        rows=tuple(rows),
        task="Divide each load by the rated load. Underline what ends it in each place.",
        why="Why can nobody feel it coming close in?",
        because=(
            "Close in the boom gives way long before the crane would tip. A float that lifts is no "
            "warning: far out one lifts below the rated load already, and the crane stands. Only "
            "the chart knows, and its bold line parts the two."
        ),
    )


BREAKS = Lesson(
    number="07",
    name="breaks-before-it-tips",
    title="Does it break before it tips?",
    able=(
        "say for a place on the chart whether the boom would break or the crane tip first",
        "put in order what happens as a load grows past its rating",
        "explain why nobody can feel a structural limit coming",
    ),
    machine=MACHINE,
    guess=_breaks_guess,
    check=_breaks_check,
    sheet=_breaks_sheet,
)
