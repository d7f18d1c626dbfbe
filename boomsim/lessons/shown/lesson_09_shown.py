"""What lesson 09 shows: what each thing takes, and what neither chart nor indicator knows."""

import numpy as np

import boomsim as bs
from boomsim.face.dynamics_result import Moved
from boomsim.face.indicator_result import Indicator
from boomsim.figures.losses.losses_figure import figure_of_losses
from boomsim.figures.side.side_figure import figure_of_lift
from boomsim.lessons.first_guess import Guess, Truth
from boomsim.lessons.lesson_09_what_eats_capacity import (
    FAR,
    NEAR,
    effect_words,
    lost,
    places,
)
from boomsim.lessons.lesson_display import Panel, Picture, Table, percent, picture, table
from boomsim.lessons.lesson_sliders import Slides
from boomsim.lessons.shown.shown_parts import Exercise, Shown, Stack
from boomsim.rating.around.centres_of_gravity import hung_at
from boomsim.rating.lift.lift_study import lift
from boomsim.rating.limits.limit_sentences import what_sets
from boomsim.rating.losses.capacity_effects import Amounts
from boomsim.rating.losses.losses_study import losses
from boomsim.rating.losses.mass_sensitivity import sensitivity
from boomsim.rating.setup_variants import with_disturbances
from boomsim.units import show, show_rated

HUNG = 5000.0
"""A load for the head's height and the picture [kg]."""

BEYOND = 20.0
"""A lean that the model does not answer for [deg]."""


def takes(units: str) -> Picture:
    """Draw what each thing takes at the two places, and what a kilogram costs."""
    costs = sensitivity(lost().setup, places=places(lost().setup))
    figure = figure_of_losses(lost(), costs, units=units)
    return picture(figure, "What each thing takes at two places, and what a kilogram costs.")


def in_numbers(units: str) -> Table:
    """List what each thing takes."""
    found = lost()
    rows = [
        (effect_words(effect, units), *map(percent, found.share[k]))
        for k, effect in enumerate(found.effects)
    ]
    return table("one thing at a time | close in it takes | far out it takes", *rows, capacity=True)


def head_moves(units: str) -> Table:
    """List how far the head moves as the ground leans by one degree."""
    light, rows = lost().places.extension[0], []
    for radius in (NEAR, 11.0, FAR):
        height = lift(lost().setup, extension=light, load=HUNG, radius=radius).head_height
        moved = show(float(height * np.tan(np.radians(1.0))), "small_length", units)
        rows.append((show(radius, "length", units), show(float(height), "length", units), moved))
    return table("radius | head height | moved by one degree", *rows)


def sets(units: str) -> Panel:
    """Say what sets the figures at the two places."""
    near, far = lost().governing
    assert near is not None and far is not None
    return Panel(words=(f"Close in {what_sets(near)}.", f"Far out {what_sets(far)}."))


def four_at_once(units: str) -> Stack:
    """Take four things at once, and then more than the model answers for."""
    found = lost()
    rows = [
        (show_rated(float(before), units), show_rated(float(after), units))
        for before, after in zip(found.capacity, found.effects[-1].capacity, strict=True)
    ]
    left = table("the chart says | all four at once leave", *rows, capacity=True)
    steep = Amounts(lean=float(np.radians(BEYOND)))
    try:
        losses(found.setup, places=found.places, amounts=steep)
    except ValueError as refused:
        # The option of a command has no place in a notebook.
        said = str(refused).removeprefix("--amount ")
        return Stack(left, Panel(words=(said[0].upper() + said[1:],)))
    raise AssertionError("The model answered for so much.")


def live(units: str) -> Slides:
    """Let the ground lean."""
    found, light = lost(), lost().places.extension[0]

    def view(degrees_downhill: float) -> Stack:
        lean = float(np.radians(degrees_downhill))
        asked = Amounts(lean=lean)
        (one,) = losses(found.setup, places=found.places, amounts=asked, only="lean").share
        shares = [f"{100 * share:.1f} %" for share in one] if lean else ["0.0 %"] * 2
        leaning = with_disturbances(found.setup, lean=lean)
        at = hung_at(leaning, extension=light, load=HUNG, radius=FAR)
        head = "downhill ahead | close in it takes | far out it takes"
        return Stack(
            table(head, (f"{degrees_downhill:.1f}°", *shares), capacity=True),
            picture(
                figure_of_lift(at, units=units),
                f"The crane with a load far out, {degrees_downhill:.1f} degrees downhill ahead.",
            ),
        )

    return Slides(view, degrees_downhill=(0.5, 3.0, 0.5, 1.0)).also(degrees_downhill=2.0)


STOPS = {"A": "stopped evenly", "B": "stopped at once", "C": "dropped"}
"""Ways to be sudden with a load, the gentlest first."""


def sudden(units: str) -> Exercise:
    """Ask which stop is the first to count as more than the rated load."""

    def found() -> Moved:
        return bs.dynamics("yard60")

    def truths() -> tuple[Truth]:
        share = {one.key: one.share for one in found().study.effects}
        return (
            Truth(
                what="the gentlest that passes the rated load",
                answer=next(k for k, key in STOPS.items() if share[key] > 1.0),
                slips={
                    "thought that any stop doubles the load: an even one adds a little": "A",
                    "thought that only a fall is hard: a taut rope has no time to give": "C",
                },
            ),
        )

    return Exercise(
        guess=Guess(
            question=(
                "Hanging still, a load takes three quarters of the rated one. It is lowered at "
                f"{show(0.5, 'speed', units)}. A: it is stopped evenly within a second. B: it is "
                f"stopped at once. C: it falls {show(0.05, 'small_length', units)} into slack "
                "slings. Which is the gentlest of the three that counts as more than the rated "
                "load?"
            ),
            parts=1,
            answers=truths,
            units=units,
        ),
        call='bs.dynamics("yard60")',
        study=found,
        units=units,
    )


TOLD = {"A": "leaning ahead", "B": "outriggers", "C": "side pull"}
"""Conditions of the indicator that are guessed about."""


def not_known(units: str) -> Exercise:
    """Ask what an indicator can know nothing of."""

    def found() -> Indicator:
        return bs.indicator("yard60")

    def truths() -> tuple[Truth]:
        off = {
            one.condition.key: one.utilisation - one.shown_utilisation for one in found().study.rows
        }
        return (
            Truth(
                what="shows far too little",
                answer=max(TOLD, key=lambda k: off[TOLD[k]]),
                slips={
                    "forgot that its angle hangs by the plumb line and shows a lower boom": "A",
                    "thought of what it does not measure, not of how much that is here": "C",
                },
            ),
        )

    return Exercise(
        guess=Guess(
            question=(
                "A load indicator was told how the crane stands, and works out the rest from the "
                "boom’s angle, its length and the push of its cylinder. A: the crane leans "
                f"{show(float(np.radians(1.0)), 'angle', units)} ahead. B: it stands on outriggers "
                "half, and the indicator was told full. C: a side pull of "
                f"{show(0.05, 'share', units)} of the load. In which does it show far too little?"
            ),
            parts=1,
            answers=truths,
            units=units,
        ),
        call='bs.indicator("yard60")',
        study=found,
        units=units,
    )


SHOWN = Shown(
    views={
        "what each thing takes": takes,
        "in numbers": in_numbers,
        "how far the head moves": head_moves,
        "what sets the figures": sets,
        "four at once": four_at_once,
    },
    live=live,
    exercises={"a sudden stop": sudden, "what the indicator knows": not_known},
)
