"""Lesson 02: one boom length in three ways."""

from functools import lru_cache

import numpy as np

from boomsim.lessons.first_guess import Guess, Truth
from boomsim.lessons.lesson_01_what_a_section_is import MACHINE
from boomsim.lessons.lesson_parts import Blank, Lesson, Sheet
from boomsim.lessons.printed_figures import rated_as_said
from boomsim.lessons.self_check import Check
from boomsim.machine.machine_files import load_machine
from boomsim.rating.comparison.comparison_study import Comparison, compare, demonstration
from boomsim.rating.setup import Setup, set_up
from boomsim.rating.strategies import label
from boomsim.units import show, show_rated

NEAR, FAR, ASKED = 6.0, 16.0, 14.0
"""Radii: close in, far out, and the one that the self-check asks for [m]."""


@lru_cache(maxsize=1)
def ways() -> tuple[Setup, Comparison]:
    """Rate the three configurations of lesson 02 over radius."""
    setup = set_up(load_machine(MACHINE))
    return setup, compare(setup, configurations=demonstration(setup.machine.boom))


def best_at(comparison: Comparison, radius: float) -> str:
    """Letter of the configuration that carries most at a radius.

    Parameters
    ----------
    radius : float
        One of its radii [m]
    """
    return "ABC"[int(comparison.best[column(comparison, radius)])]


def column(comparison: Comparison, radius: float) -> int:
    """Index of a radius in a comparison."""
    return int(np.argmin(np.abs(comparison.radii - radius)))


def _ways_guess(units: str) -> Guess:
    shown = demonstration(load_machine(MACHINE).boom)
    rows = shown.extension
    listed = "; ".join(f"{n}: {label(e)} %" for n, e in zip("ABC", rows, strict=True))
    near, far = (show(r, "length", units) for r in (NEAR, FAR))
    length = show(float(shown.length.mean()), "boom_length", units)
    return Guess(
        question=(
            f"One boom of {length}, run out in three ways (percent of stroke, base side first). "
            f"{listed}. Which carries most with the load at {near}, and which at {far}?"
        ),
        parts=2,
        answers=lambda: _ways_truths(near, far),
        units=units,
    )


MIDDLE = "expected the middle way to be the best of both"
"""A thought behind a guess wherever there are three ways."""


def _ways_truths(near: str, far: str) -> tuple[Truth, Truth]:
    _, found = ways()
    return (
        Truth(
            what=f"carries most at {near}",
            answer=best_at(found, NEAR),
            slips={"thought of tipping, as far out: close in stability sets no figure": "A",
                   MIDDLE: "B"},
        ),
        Truth(
            what=f"carries most at {far}",
            answer=best_at(found, FAR),
            slips={MIDDLE: "B", "thought that the strong sections carry most everywhere": "C"},
        ),
    )  # fmt: skip


def _ways_check(units: str) -> Check:
    _, found = ways()
    rated = found.rating.capacity[:, column(found, ASKED)]
    a, b, c = (rated_as_said(float(v), units) for v in rated)
    where = show(ASKED, "length", units)

    def said(value: float) -> str:
        return show(value, "mass", units)

    return Check(
        question=(
            f"At {where} the model rates A at {said(a)}, B at {said(b)} and C at {said(c)} gross. "
            "How much more gross load does A carry there than C?"
        ),
        answer=a - c,
        quantity="mass",
        slips={
            "wrote down what A carries, not the difference": a,
            "wrote down what C carries, not the difference": c,
            "compared A with B instead of C": a - b,
            "compared B with C instead of A": b - c,
            "added the two instead of subtracting": a + c,
        },
        working=f"A - C = {said(a)} - {said(c)}.",
        units=units,
    )


def _ways_sheet(units: str) -> Sheet:
    from boomsim.figures.handout.handout_drawings import figure_of_ways

    setup, found = ways()
    capacity = found.rating.capacity
    # Neither of the radii guessed about: who draws the curves can carry them on to both.
    shown = [7.0, 8.0, 10.0, 12.0, ASKED]
    rows: list[tuple[str | Blank, ...]] = []
    for radius in shown:
        cells = [show_rated(float(v), units) for v in capacity[:, column(found, radius)]]
        lead = best_at(found, radius)
        rows.append((show(radius, "length", units), *cells, Blank(text=lead)))
    return Sheet(
        given="Rated gross loads of the invented crane yard60, all around, on full outriggers.",
        figure=lambda: figure_of_ways(
            setup.machine,
            extension=found.configurations.extension,
            radius=float(found.radii[-1]),
            capacity=1.05 * float(np.nanmax(capacity[:, column(found, NEAR) :])),
            units=units,
        ),
        seen="Three booms of one length, A, B and C, and empty axes of rated load over radius.",
        head=("radius", "A", "B", "C", "carries most"),
        rows=tuple(rows),
        task=(
            "Guess first. Then draw the three curves from the table, mark where the lead changes, "
            f"and carry the curves on to {show(NEAR, 'length', units)} and to "
            f"{show(FAR, 'length', units)}."
        ),
        why="Why does the same boom length carry different loads?",
        because=(
            "Close in stability sets none of the figures: what is out must be strong, and the "
            "heavy sections are the strong ones. Far out stability sets them all, and then it "
            "counts that the heavy sections stay in, near the crane."
        ),
    )


SAME_LENGTH = Lesson(
    number="02",
    name="same-length",
    title="Why does one boom length carry different loads?",
    able=(
        "reach one boom length in several ways and name each by its percentages",
        "say which way carries most close in, which far out, and where the lead changes",
        "explain the difference in kilograms, section by section",
    ),
    machine=MACHINE,
    guess=_ways_guess,
    check=_ways_check,
    sheet=_ways_sheet,
)
