"""Lesson 03: stiffness is not capacity."""

from functools import lru_cache

import numpy as np

from boomsim.lab.lessons.check import Check
from boomsim.lab.lessons.parts import Blank, Guess, Lesson, Sheet, Truth, as_said
from boomsim.lab.lessons.same_length import column
from boomsim.lab.lessons.section import MACHINE, far_lock
from boomsim.machine.files import load_machine
from boomsim.rating.comparison.compare import Comparison, compare
from boomsim.rating.response import Response, respond
from boomsim.rating.setup import Setup, set_up
from boomsim.rating.strategies import Configurations, configurations_of
from boomsim.units import show

LOAD, AT, FAR = 3000.0, 16.0, 24.0
"""A load at a radius for the deflections, and a radius far out [kg], [m], [m]."""


def half_ways() -> Configurations:
    """Three configurations of one length: all at half, the light half out, the heavy half out."""
    boom = load_machine(MACHINE).boom
    half, far = boom.lock_positions[1], far_lock()
    out = np.array([[half] * 4, [0.0, 0.0, far, far], [far, far, 0.0, 0.0]])
    return configurations_of(boom, extension=out)


@lru_cache(maxsize=1)
def half_compared() -> tuple[Setup, Comparison]:
    """Rate the same over radius."""
    setup = set_up(load_machine(MACHINE))
    return setup, compare(setup, configurations=half_ways())


def half_bent(setup: Setup, found: Comparison) -> Response:
    """Bend the same under one load at one radius."""
    return respond(setup, boom=found.rating.boom, load=np.array([[LOAD]]), radius=np.array([[AT]]))


def _half_guess(units: str) -> Guess:
    setup, found = half_compared()
    bends = half_bent(setup, found).tip_deflection[:, 0]
    far = found.rating.capacity[:, column(found, FAR)]
    length = show(float(found.configurations.length.mean()), "boom_length", units)
    return Guess(
        question=(
            f"A boom of {length} again in three ways. A: every section out by half. B: the two "
            "heavier moving sections in, the two lighter far out. C: the heavier far out, the "
            f"lighter in. Which tip goes down least under {show(LOAD, 'mass', units)} at "
            f"{show(AT, 'length', units)}? And which carries most at {show(FAR, 'length', units)}?"
        ),
        truths=(
            Truth(what="bends least", answer="ABC"[int(np.argmin(bends))]),
            Truth(what="carries most far out", answer="ABC"[int(np.argmax(far))]),
        ),
        units=units,
    )


def _half_check(units: str) -> Check:
    setup, found = half_compared()
    rated = found.rating.capacity[:, column(found, FAR)]
    a, b, c = (as_said(float(v), "mass", units) for v in rated)
    down = half_bent(setup, found).tip_deflection[:, 0]
    bends = float(down[1] / down[0]) - 1.0

    def said(value: float) -> str:
        return show(value, "mass", units)

    return Check(
        question=(
            f"At {show(FAR, 'length', units)} A (all at half) carries {said(a)}, B (light half "
            f"out) {said(b)} and C (heavy half out) {said(c)}. How many percent more than A does B "
            "carry?"
        ),
        answer=b / a - 1.0,
        quantity="share",
        slips={
            "divided by what B carries instead of what A carries": 1.0 - a / b,
            "gave B as a share of A, without taking off the whole": b / a,
            "compared B with C instead of A": b / c - 1.0,
            "compared how far the tips go down instead of what they carry": bends,
        },
        working=f"(B - A)/A = ({said(b)} - {said(a)})/{said(a)}.",
        units=units,
    )


def _half_sheet(units: str) -> Sheet:
    from boomsim.figures.handout.drawings import figure_of_ways

    setup, found = half_compared()
    down, capacity = half_bent(setup, found).tip_deflection[:, 0], found.rating.capacity
    shown = (8.0, 12.0, AT, 19.0, FAR)
    rows: list[tuple[str | Blank, ...]] = []
    for radius in shown:
        values = capacity[:, column(found, radius)]
        lead = "ABC"[int(np.argmax(values))]
        cells = [show(float(v), "mass", units) for v in values]
        rows.append((f"carries at {show(radius, 'length', units)}", *cells, Blank(text=lead)))
    bends = [show(float(v), "length", units) for v in down]
    rows.append(("tip goes down by", *bends, Blank(text="least: " + "ABC"[int(np.argmin(down))])))
    return Sheet(
        given=(
            f"The invented crane yard60. The last row is for {show(LOAD, 'mass', units)} at "
            f"{show(AT, 'length', units)}, the same for all three."
        ),
        figure=lambda: figure_of_ways(
            setup.machine, extension=found.configurations.extension, radius=float(found.radii[-1]),
            capacity=1.05 * float(capacity[:, column(found, shown[0])].max()), units=units,
        ),
        seen="Three booms of one length, A, B and C, and empty axes of rated load over radius.",
        head=("", "A", "B", "C", "which"),
        rows=tuple(rows),
        task="Guess first. Then draw A and B over radius and find where their curves cross.",
        why="Why does the boom that bends more carry more far out?",
        because=(
            "Far out the crane would tip before anything gives way. Tipping does not ask how far "
            "the boom bends, but where its weight lies: in B the heavy sections stay near the "
            "crane."
        ),
    )  # fmt: skip


HALF = Lesson(
    number="03",
    name="why-not-half",
    title="Why not run every section out by half?",
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
