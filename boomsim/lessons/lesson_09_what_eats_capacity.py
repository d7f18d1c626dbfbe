"""Lesson 09: what eats capacity that the chart does not know of."""

from functools import lru_cache

import numpy as np

from boomsim.lessons.first_guess import Guess, Truth
from boomsim.lessons.lesson_01_what_a_section_is import MACHINE
from boomsim.lessons.lesson_parts import Blank, Lesson, Sheet
from boomsim.lessons.printed_figures import rated_as_said
from boomsim.lessons.self_check import Check
from boomsim.machine.machine_files import load_machine
from boomsim.rating.chart_places import Places
from boomsim.rating.comparison.comparison_study import demonstration
from boomsim.rating.lift.lift_study import Lift, lift
from boomsim.rating.losses.capacity_effects import Amounts
from boomsim.rating.losses.losses_study import Effect, Losses, losses
from boomsim.rating.setup import Setup, set_up
from boomsim.units import show, show_rated

NEAR, FAR = 6.0, 16.0
"""Where strength sets the figure, and where stability does [m]."""

AMOUNTS = Amounts(side_pull=0.05)
"""The usual ones, but more of a side pull than the rule's allowances have."""

LETTERS = {"A": "lean", "B": "side pull", "C": "counterweight"}
"""Effects that the guess asks to be put in order."""

LISTED = ("lean", "side pull", "wind", "hoisting", "counterweight", "outrigger", "farther")
"""Effects of the handout."""

LEAN = float(np.radians(1.0))
"""Of the self-check [rad]."""


def places(setup: Setup) -> Places:
    """Put the lightest section far out alone, close in and far out."""
    light = demonstration(setup.machine.boom).extension[0]
    return Places(extension=np.array([light, light]), radius=np.array([NEAR, FAR]))


@lru_cache(maxsize=1)
def lost() -> Losses:
    """Find what each effect costs at the two places."""
    setup = set_up(load_machine(MACHINE))
    return losses(setup, places=places(setup), amounts=AMOUNTS)


def effect_words(effect: Effect, units: str) -> str:
    """Name an effect with its amount."""
    if effect.amount is None or effect.quantity is None:
        return effect.words
    return f"{effect.words} {show(effect.amount, effect.quantity, units)}"


def _left(effect: Effect, place: int, units: str) -> str:
    """What may still be lifted; over a short outrigger, after what might be without it there."""
    left = show_rated(float(effect.capacity[place]), units)
    if effect.slew is None:
        return left
    return f"{left} of {show_rated(float(effect.before[place]), units)} over that corner"


def _named(name: str) -> tuple[int, Effect]:
    return next((k, t) for k, t in enumerate(lost().effects) if t.name == name)


def _losses_guess(units: str) -> Guess:
    found = lost()
    listed = "; ".join(f"{k}: {effect_words(_named(n)[1], units)}" for k, n in LETTERS.items())
    return Guess(
        question=(
            f"At {show(NEAR, 'length', units)} the chart allows "
            f"{show_rated(float(found.capacity[0]), units)} with section 4 out: strength sets it. "
            f"Now one thing is not as the chart takes it. {listed}. Which costs most, and which "
            "least?"
        ),
        parts=2,
        answers=_losses_truths,
        units=units,
    )


def _losses_truths() -> tuple[Truth, Truth]:
    share = {k: float(lost().share[_named(n)[0], 0]) for k, n in LETTERS.items()}
    ranked = sorted(share, key=lambda k: share[k])
    return (
        Truth(
            what="costs most",
            answer=ranked[-1],
            slips={"thought of a crane near tipping: here strength sets the figure": ("A", "C")},
        ),
        Truth(
            what="costs least",
            answer=ranked[0],
            slips={
                "thought that a lean hardly moves the load: but the head stands high": "A",
                "thought that a boom does not feel a side pull: it bends it the weak way": "B",
            },
        ),
    )


def leaning() -> Lift:
    """Work out the lift that the self-check asks about."""
    setup = set_up(load_machine(MACHINE))
    row = demonstration(setup.machine.boom).extension[0]
    return lift(setup, extension=row, load=5000.0, radius=FAR)


def _losses_check(units: str) -> Check:
    at = leaning()
    tall = at.head_height

    def said(value: float, quantity: str = "length") -> str:
        return show(value, quantity, units)

    return Check(
        question=(
            f"The boom is {said(at.boom_length)} long, its head {said(tall)} above the ground, the "
            f"hoist line {said(at.radius)} from the axis of rotation. The crane stands "
            f"{said(LEAN, 'angle')} out of level, downhill ahead. By how much does the load hang "
            "farther out than on level ground?"
        ),
        answer=tall * float(np.tan(LEAN)),
        quantity="small_length",
        slips={
            "took the radius for the height of the head": at.radius * float(np.tan(LEAN)),
            "took the length of the boom for the height of its head":
                at.boom_length * float(np.tan(LEAN)),
            "took one degree for one percent": 0.01 * tall,
            "took degrees for radians": tall * float(np.tan(1.0)),
        },
        working=f"The head moves by its height x tan({said(LEAN, 'angle')}), {said(tall)} high.",
        tolerance=0.02,
        units=units,
    )  # fmt: skip


def _losses_sheet(units: str) -> Sheet:
    from boomsim.figures.handout.handout_drawings import figure_of_lifts
    from boomsim.rating.around.centres_of_gravity import hung_at

    found = lost()
    setup = found.setup
    responses = [
        hung_at(setup, extension=row, load=rated_as_said(float(load), units), radius=float(radius))
        for row, load, radius in zip(
            found.places.extension, found.capacity, found.places.radius, strict=True
        )
    ]
    rows: list[tuple[str | Blank, ...]] = [
        ("as the chart takes it", *(
            field for c in found.capacity for field in (show_rated(float(c), units), "0 %")
        ))
    ]  # fmt: skip
    for name in LISTED:
        number, effect = _named(name)
        fields: list[str | Blank] = []
        for place in (0, 1):
            left = _left(effect, place, units)
            # What the guess is about is told after it, by whoever has the answers.
            guessed = place == 0 and name in LETTERS.values()
            fields.append(Blank(text=left) if guessed else left)
            fields.append(Blank(text=f"{100 * float(found.share[number, place]):.0f} %"))
        rows.append((effect_words(effect, units), *fields))
    return Sheet(
        given=(
            "The invented crane yard60, section 4 far out alone: rated loads with one thing not as "
            f"the chart takes it. Close in, at {show(NEAR, 'length', units)}, strength sets the "
            f"figure, far out, at {show(FAR, 'length', units)}, stability does."
        ),
        figure=lambda: figure_of_lifts(responses, units=units, names=("close in", "far out")),
        seen="The crane from the side twice: boom steep close in, and lower farther out.",
        head=("one thing at a time", "close in", "loses", "far out", "loses"),
        rows=tuple(rows),
        task=(
            "Write your guess down. Then be told the figures that are missing close in, and work "
            "out what share is lost. Rank the losses close in: which would you look for first?"
        ),
        why="Why can one and the same thing cost much close in and nothing far out?",
        because=(
            "Where stability sets the figure, all that moves weight outwards costs; where strength "
            "does, what bends the boom costs, beyond what the rule's allowances have of it "
            "already. What does not touch the limit that sets the figure is free."
        ),
    )


LOSSES = Lesson(
    number="09",
    name="what-eats-capacity",
    title="What eats capacity that the chart does not know of?",
    able=(
        "list what a chart takes for granted: ground nearly level, little wind, a straight pull, a "
        "soft start",
        "estimate what a lean of the ground does to the radius",
        "say which loss matters where, from what governs there",
    ),
    machine=MACHINE,
    guess=_losses_guess,
    check=_losses_check,
    sheet=_losses_sheet,
)
