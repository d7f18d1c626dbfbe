"""Lesson 01: what a section is, and where it lies."""

import numpy as np

from boomsim.lessons.first_guess import Guess, Truth
from boomsim.lessons.lesson_parts import Blank, Lesson, Sheet
from boomsim.lessons.printed_figures import length_of
from boomsim.lessons.self_check import Check
from boomsim.machine.machine_files import load_machine
from boomsim.mechanics.geometry import Array, layout
from boomsim.units import show

MACHINE = "yard60"
"""Of all lessons with a crane."""


def far_lock() -> float:
    """Return the pin position that is far out, but not all the way [1]."""
    return load_machine(MACHINE).boom.lock_positions[-2]


def last_out() -> Array:
    """Extension of this lesson: the lightest section far out alone."""
    moving = len(load_machine(MACHINE).boom.sections) - 1
    return np.array([0.0] * (moving - 1) + [far_lock()])


def _section_guess(units: str) -> Guess:
    machine, out = load_machine(MACHINE), last_out()
    last = len(out)
    section = machine.boom.sections[last]
    return Guess(
        question=(
            f"{machine.name} is an invented crane. Its section {last}, the lightest, is "
            f"{length_of(section.length, units)} long. It is pinned at "
            f"{show(out[-1], 'share', units)} of its stroke of "
            f"{length_of(section.stroke, units)}; all others are in. How much of it stays "
            f"inside section {last - 1}?"
        ),
        parts=1,
        answers=_section_truths,
        units=units,
    )


def _section_truths() -> tuple[Truth]:
    boom, out = load_machine(MACHINE).boom, last_out()
    last = len(out)
    section, gone = boom.sections[last], boom.sections[last].stroke * float(out[-1])
    return (
        Truth(
            what=f"overlap of section {last}",
            answer=float(layout(boom, extension=out).overlap[0, last]),
            quantity="length",
            slips={
                "took what is out for what is inside": section.nose + gone,
                "took the stroke for the length of the section": section.stroke - gone,
                "took it to be all the way out": section.length - section.nose - section.stroke,
                "took the half-way pin": (
                    section.length - section.nose - section.stroke * boom.lock_positions[1]
                ),
            },
        ),
    )


def _section_check(units: str) -> Check:
    boom, f = load_machine(MACHINE).boom, far_lock()
    section = boom.sections[1]
    length, stroke, nose = section.length, section.stroke, section.nose
    out = np.zeros(len(boom.sections) - 1)
    out[0] = f

    def said(value: float) -> str:
        return length_of(value, units)

    share = show(f, "share", units)
    return Check(
        question=(
            f"Section 1 is {said(length)} long, with a nose of {said(nose)} that stands out of the "
            f"base section even when it is in. Its stroke is {said(stroke)}, and it is pinned at "
            f"{share} of it. How long is its overlap with the base section?"
        ),
        answer=float(layout(boom, extension=out).overlap[0, 1]),
        quantity="length",
        slips={
            "forgot the nose": length - stroke * f,
            "took what is out for what is inside": nose + stroke * f,
            "took the stroke for the length of the section": stroke - nose - stroke * f,
            "took it to be all the way out": length - nose - stroke,
            "took the half-way pin": length - nose - stroke * boom.lock_positions[1],
        },
        working=(
            f"Overlap = length - nose - stroke x fraction = {said(length)} - {said(nose)} - "
            f"{said(stroke)} x {share}."
        ),
        tolerance=0.005,
        units=units,
    )


def _section_sheet(units: str) -> Sheet:
    from boomsim.figures.handout.handout_drawings import figure_of_rows

    machine, out = load_machine(MACHINE), last_out()
    placed = layout(machine.boom, extension=out)

    def said(value: float) -> str:
        return length_of(value, units)

    rows = [
        (
            f"section {k}",
            said(section.length),
            said(section.stroke),
            show(out[k - 1], "share", units),
            Blank(text=said(placed.tail[0, k])),
            Blank(text=said(placed.front[0, k])),
            Blank(text=said(placed.overlap[0, k])),
        )
        for k, section in enumerate(machine.boom.sections)
        if k
    ]
    return Sheet(
        given=(
            "Each section is drawn in a row of its own, where it lies along the boom. Hatched: "
            "inside the next larger section. Black: pads. Red: head sheave. Heights are "
            "exaggerated."
        ),
        figure=lambda: figure_of_rows(machine, extension=out, units=units),
        seen="The five sections of the boom, one to a row, over a scale in metres.",
        head=("section", "length", "stroke", "out", "tail at", "front at", "overlap"),
        rows=tuple(rows),
        task=(
            "Read tail and front from the scale. Overlap: front of the next larger section - tail."
        ),
        why="Why must some overlap remain, however far a section goes out?",
        because=(
            "The two pads hold the section like a lever: the shorter the overlap, the harder they "
            "press for the same load, and with none the section falls out."
        ),
    )


SECTION = Lesson(
    number="01",
    name="what-a-section-is",
    title="What is a section, and where does it lie?",
    able=(
        "name base section, moving sections, tail, front, nose and overlap",
        "work out an overlap and the boom length from strokes and fractions",
        "say why some overlap must always remain",
    ),
    machine=MACHINE,
    guess=_section_guess,
    check=_section_check,
    sheet=_section_sheet,
)
