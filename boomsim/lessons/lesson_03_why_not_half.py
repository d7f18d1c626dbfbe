"""Lesson 03: stiffness is not capacity."""

from functools import lru_cache

import numpy as np

from boomsim.lessons.first_guess import Guess, Truth
from boomsim.lessons.lesson_01_what_a_section_is import MACHINE, far_lock
from boomsim.lessons.lesson_02_same_length import column
from boomsim.lessons.lesson_parts import Blank, Lesson, Sheet
from boomsim.lessons.printed_figures import rated_as_said
from boomsim.lessons.self_check import Check
from boomsim.machine.machine_files import load_machine
from boomsim.rating.comparison.comparison_study import Comparison, compare
from boomsim.rating.lift_response import Response, respond
from boomsim.rating.setup import Setup, set_up
from boomsim.rating.strategies import Configurations, configurations_of
from boomsim.units import show, show_rated

LOAD, AT, NEAR, FAR = 3000.0, 16.0, 8.0, 24.0
"""A load at a radius for the deflections, a radius close in and one far out [kg], [m]."""


def half_ways() -> Configurations:
    """Three configurations of one length: all alike, the light ones out, the heavy ones out."""
    boom = load_machine(MACHINE).boom
    half, far = boom.lock_positions[1], far_lock()
    out = np.array([[half] * 4, [0.0, 0.0, far, far], [far, far, 0.0, 0.0]])
    return configurations_of(boom, extension=out)


@lru_cache(maxsize=1)
def pin_words() -> str:
    """How far every section is out where all are out alike: "45 %"."""
    return f"{100 * load_machine(MACHINE).boom.lock_positions[1]:g} %"


def half_compared() -> tuple[Setup, Comparison]:
    """Rate the same over radius."""
    setup = set_up(load_machine(MACHINE))
    return setup, compare(setup, configurations=half_ways())


def half_bent(setup: Setup, found: Comparison) -> Response:
    """Bend the same under one load at one radius."""
    return respond(setup, boom=found.rating.boom, load=np.array([[LOAD]]), radius=np.array([[AT]]))


def _half_guess(units: str) -> Guess:
    length = show(float(half_ways().length.mean()), "boom_length", units)
    return Guess(
        question=(
            f"A boom of {length} again in three ways. A: every section {pin_words()} out. B: the "
            "two heavier moving sections in, the two lighter far out. C: the heavier far out, the "
            f"lighter in. Which tip goes down least under {show(LOAD, 'mass', units)} at "
            f"{show(AT, 'length', units)}? And which carries most at {show(FAR, 'length', units)}?"
        ),
        parts=2,
        answers=_half_truths,
        units=units,
    )


def _half_truths() -> tuple[Truth, Truth]:
    setup, found = half_compared()
    bends = half_bent(setup, found).tip_deflection[:, 0]
    far = found.rating.capacity[:, column(found, FAR)]
    return (
        Truth(
            what="bends least",
            answer="ABC"[int(np.argmin(bends))],
            slips={
                "thought that light sections bend little, for they weigh little": "B",
                "thought that thick sections bend least, however short their overlaps": "C",
            },
        ),
        Truth(
            what="carries most far out",
            answer="ABC"[int(np.argmax(far))],
            slips={
                "took the stiffest for the one that carries most": "A",
                "thought that the strong sections carry most everywhere": "C",
            },
        ),
    )


def _half_check(units: str) -> Check:
    setup, found = half_compared()
    rated = found.rating.capacity[:, column(found, AT)]
    a, b, c = (rated_as_said(float(v), units) for v in rated)
    down = half_bent(setup, found).tip_deflection[:, 0]
    bends = float(down[1] / down[0]) - 1.0

    def said(value: float) -> str:
        return show(value, "mass", units)

    return Check(
        question=(
            f"At {show(AT, 'length', units)} A (all alike) carries {said(a)}, B (the light ones "
            f"out) {said(b)} and C (the heavy ones out) {said(c)}. How many percent more than B "
            "does A carry?"
        ),
        answer=a / b - 1.0,
        quantity="share",
        slips={
            "divided by what A carries instead of what B carries": 1.0 - b / a,
            "gave A as a share of B, without taking off the whole": a / b,
            "compared A with C instead of B": a / c - 1.0,
            "compared how far the tips go down instead of what they carry": bends,
        },
        working=f"(A - B)/B = ({said(a)} - {said(b)})/{said(b)}.",
        units=units,
    )


def _half_sheet(units: str) -> Sheet:
    from boomsim.figures.handout.handout_drawings import figure_of_ways

    setup, found = half_compared()
    capacity = found.rating.capacity
    # Not the radius guessed about: who draws the curves can carry them on to it.
    shown = (NEAR, 12.0, AT, 18.0, 20.0)
    rows: list[tuple[str | Blank, ...]] = []
    for radius in shown:
        values = capacity[:, column(found, radius)]
        lead = "ABC"[int(np.argmax(values))]
        cells = [show_rated(float(v), units) for v in values]
        rows.append((f"carries at {show(radius, 'length', units)}", *cells, Blank(text=lead)))
    return Sheet(
        given="Rated gross loads of the invented crane yard60, all around, on full outriggers.",
        figure=lambda: figure_of_ways(
            setup.machine, extension=found.configurations.extension, radius=float(found.radii[-1]),
            capacity=1.05 * float(capacity[:, column(found, shown[0])].max()), units=units,
        ),
        seen="Three booms of one length, A, B and C, and empty axes of rated load over radius.",
        head=("", "A", "B", "C", "most"),
        rows=tuple(rows),
        task=(
            "Guess first. Then draw A and B over radius and carry both curves on to "
            f"{show(FAR, 'length', units)}. Where do they cross?"
        ),
        why="Why does the stiffest boom not carry most everywhere?",
        because=(
            "A bends least and B most. But far out stability sets the figures of A and C, and it "
            "does not ask how far the boom bends, but where its weight lies. In B the heavy "
            "sections stay near the crane: stability would allow so much there that strength sets "
            "the figure, and it is still the largest."
        ),
    )  # fmt: skip


HALF = Lesson(
    number="03",
    name="why-not-half",
    title="Why not run every section out alike?",
    able=(
        "tell stiffness (how far the tip goes down) from capacity (what may hang there)",
        "say when the stiffest way is the best way and when it is not",
        "name the range of deflection in which the model may be believed",
    ),
    machine=MACHINE,
    guess=_half_guess,
    check=_half_check,
    sheet=_half_sheet,
)
