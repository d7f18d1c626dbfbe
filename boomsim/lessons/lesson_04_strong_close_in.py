"""Lesson 04: why a nested boom is strong close in."""

from functools import lru_cache

import numpy as np

from boomsim.gravity import GRAVITY
from boomsim.lessons.first_guess import Guess, Truth
from boomsim.lessons.lesson_01_what_a_section_is import MACHINE, far_lock
from boomsim.lessons.lesson_parts import Blank, Lesson, Sheet
from boomsim.lessons.self_check import Check
from boomsim.machine.machine_files import load_machine
from boomsim.mechanics.geometry import layout
from boomsim.papers.check_models.textbook_boom import lift as textbook_lift
from boomsim.papers.check_models.textbook_boom import textbook_boom, textbook_machine
from boomsim.rating.comparison.comparison_study import demonstration
from boomsim.rating.lift.lift_study import Lift, lift
from boomsim.rating.setup import Setup, set_up
from boomsim.units import show

HEAVY, CLOSE = 20_000.0, 6.0
"""A load close in [kg], [m]."""

ACROSS = 100e3
"""The force of the self-check [N]."""


@lru_cache(maxsize=1)
def close_lifts() -> tuple[Setup, tuple[Lift, ...]]:
    """One load close in on the three configurations of the demonstration."""
    setup = set_up(load_machine(MACHINE))
    rows = demonstration(setup.machine.boom).extension
    return setup, tuple(lift(setup, extension=row, load=HEAVY, radius=CLOSE) for row in rows)


def first_section(found: Lift) -> str:
    """Name the section whose limits are used most."""
    of_sections = [u for u in found.limits if u.limit.section is not None]
    number = max(of_sections, key=lambda u: u.utilisation).limit.section
    return "base section" if not number else f"section {number}"


def _close_guess(units: str) -> Guess:
    return Guess(
        question=(
            f"{show(HEAVY, 'mass', units)} hang close in, at {show(CLOSE, 'length', units)}. In A "
            "only section 4, the lightest, is out; in C only section 1, the heaviest that moves. "
            "Which section is worked hardest in A, and which in C? (Write base section, or section "
            "1 to section 4.)"
        ),
        parts=2,
        answers=_close_truths,
        units=units,
    )


NESTED = "picked a section that lies nested: it carries hardly any moment"


def _close_truths() -> tuple[Truth, Truth]:
    _, found = close_lifts()
    return (
        Truth(
            what="worked hardest in A",
            answer=first_section(found[0]),
            slips={
                "looked where the moment is largest, and forgot what resists it": "base section",
                "looked at the mouth, and took the section that holds for the one held":
                    "section 3",
                NESTED: ("section 1", "section 2"),
            },
        ),
        Truth(
            what="worked hardest in C",
            answer=first_section(found[2]),
            slips={
                "took the section that is out, as in A: here it is strong": "section 1",
                NESTED: ("section 2", "section 3"),
                "thought of the lightest, which gave way in A: here it lies nested": "section 4",
            },
        ),
    )  # fmt: skip


def lever() -> tuple[float, float]:
    """Overhang and overlap of the lightest section, far out alone, in level [m]."""
    boom = load_machine(MACHINE).boom
    out = np.array([0.0, 0.0, 0.0, far_lock()])
    placed = layout(boom, extension=out)
    overlap = float(placed.overlap[0, -1])
    return boom.sections[-1].length - overlap + boom.head.ahead, overlap


def pad_forces(*, overhang: float, overlap: float, force: float) -> tuple[float, float]:
    """Front and rear pad of a weightless section, level, by the call path [N]."""
    boom = textbook_boom((2.0 * overlap, overlap + overhang), strokes=(overhang,))
    machine = textbook_machine(boom)
    _, _, forces = textbook_lift(machine, extension=(1.0,), load=force / GRAVITY)
    return float(forces.front_pad[0, 1, 0]), abs(float(forces.rear_pad[0, 1, 0]))


def _close_check(units: str) -> Check:
    a, c = lever()
    front, rear = pad_forces(overhang=a, overlap=c, force=ACROSS)

    def said(value: float, quantity: str = "length") -> str:
        return show(value, quantity, units)

    return Check(
        question=(
            f"A section stands {said(a)} out of the next larger one, and {said(c)} of it is "
            f"inside. A force of {said(ACROSS, 'force')} acts across it at the head. One pad sits "
            "at the mouth, one at its tail. Leave its own weight out. How hard does the pad at the "
            "mouth press?"
        ),
        answer=front,
        quantity="force",
        slips={
            "found the rear pad: the front one carries the force itself besides": rear,
            "took the force off instead of adding it": rear - ACROSS,
            "divided by the overhang instead of the overlap": ACROSS * (a + c) / a,
            "took the force at the head for the force on the pad": ACROSS,
            "forgot that the pads carry a moment, and shared the force between them": ACROSS / 2.0,
        },
        working=(
            f"About the tail: front pad x {said(c)} = {said(ACROSS, 'force')} x ({said(a)} + "
            f"{said(c)})."
        ),
        units=units,
    )


def _close_sheet(units: str) -> Sheet:
    from boomsim.figures.handout.section_joint import figure_of_joint

    _, found = close_lifts()
    a, c = lever()
    rows: list[tuple[str | Blank, ...]] = []
    for letter, one in zip("ABC", found, strict=True):
        out = int(np.argmax(one.extension)) + 1
        section = one.sections[out]
        assert section.front_pad is not None and section.rear_pad is not None
        overlap = float(one.response.boom.layout.overlap[0, out])
        rows.append((
            letter, section.name, show(overlap, "length", units),
            show(section.moment_max, "moment", units), show(abs(section.rear_pad), "force", units),
            show(abs(section.front_pad), "force", units),
            Blank(text=show(section.moment_max / overlap, "force", units)),
        ))  # fmt: skip
    return Sheet(
        given=(
            f"The invented crane yard60 with {show(HEAVY, 'mass', units)} at "
            f"{show(CLOSE, 'length', units)}. A: section 4 out. B: sections 3 and 4 half out. "
            "C: section 1 out."
        ),
        figure=lambda: figure_of_joint(overhang=a, overlap=c, force=ACROSS, units=units),
        seen=(
            "A section in the mouth of the next larger one, with its two pads and the force at its "
            "head."
        ),
        head=("", "the one out", "overlap", "moment", "rear pad", "front pad", "moment / overlap"),
        rows=tuple(rows),
        task="Divide each moment by its overlap. Which of the two pads is it near, and why?",
        why="Why is C the strongest close in?",
        because=(
            "The moment at the mouth must be carried by the section that is out. Section 1 is the "
            "tallest and thickest of those that move, with the largest section modulus, and the "
            "others lie nested in it; in A the lightest section must carry nearly as much."
        ),
    )


STRONG = Lesson(
    number="04",
    name="strong-close-in",
    title="Why is a nested boom strong close in?",
    able=(
        "find the pad forces of a joint from overhang and overlap",
        "follow a bending moment from one section to the next through their overlap",
        "say what section modulus has to do with the section that gives way",
    ),
    machine=MACHINE,
    guess=_close_guess,
    check=_close_check,
    sheet=_close_sheet,
)
