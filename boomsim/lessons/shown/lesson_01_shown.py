"""What lesson 01 shows: where each section lies, and what a longer stroke would do."""

from dataclasses import replace

import numpy as np

from boomsim.figures.handout.sections_apart import figure_of_sections
from boomsim.lessons.lesson_01_what_a_section_is import MACHINE, last_out
from boomsim.lessons.lesson_display import Panel, Picture, Table, picture, table
from boomsim.lessons.lesson_sliders import Slides
from boomsim.lessons.printed_figures import length_of
from boomsim.lessons.shown.shown_parts import Shown, Stack
from boomsim.machine.boom_check import overlap_left
from boomsim.machine.machine_files import builtin_text, load_machine, read_machine
from boomsim.machine.part_names import section_name
from boomsim.mechanics.geometry import layout

LONGER = 9.5
"""A stroke that leaves too little inside [m]."""


def apart(units: str) -> Picture:
    """Draw the sections apart, the lightest far out."""
    figure = figure_of_sections(load_machine(MACHINE), extension=last_out(), units=units)
    return picture(figure, "The sections drawn apart, each with its overlap.")


def places(units: str) -> Table:
    """Say where each section begins and ends, and how much of it stays inside the next."""
    boom = load_machine(MACHINE).boom
    placed = layout(boom, extension=last_out())
    rows = []
    for k in range(len(boom.sections)):
        found = (placed.tail[0, k], placed.front[0, k], *([placed.overlap[0, k]] if k else []))
        said = [length_of(float(place), units) for place in found]
        rows.append((section_name(k), *said, *([] if k else ["in no other"])))
    return table("section | tail at | front at | overlap", *rows)


def by_hand(units: str) -> Panel:
    """Work the overlap out as on paper."""
    last, out = load_machine(MACHINE).boom.sections[-1], float(last_out()[-1])
    gone = last.stroke * out
    inside = last.length - last.nose - gone
    terms = (length_of(x, units) for x in (last.length, last.nose, gone, inside))
    said = "length {} less nose {} less what is out {}: overlap {}.".format(*terms)
    return Panel(words=(said.capitalize(),))


def longer(units: str) -> Stack:
    """Lengthen the strokes in the machine's file, and let it be read."""
    text = builtin_text(MACHINE).replace('stroke = "8.00 m"', f'stroke = "{LONGER:.2f} m"')
    try:
        read_machine(text, "longer.toml")
    except ValueError as refused:
        faults = str(refused).count("least_overlap")
    else:
        raise AssertionError("The longer stroke was taken.")
    rows = []
    for k, section in enumerate(load_machine(MACHINE).boom.sections[1:], start=1):
        left = overlap_left(replace(section, stroke=LONGER))
        most = section.length - section.nose - section.least_overlap
        rows.append(
            (section_name(k), *(length_of(x, units) for x in (left, section.least_overlap, most)))
        )
    words = (
        f"With a stroke of {length_of(LONGER, units)} for every section the file is refused, for "
        f"{faults} faults: all the way out, too little of each section would stay inside.",
    )
    head = "section | overlap left | needed at least | longest stroke"
    return Stack(Panel(words=words), table(head, *rows))


def live(units: str) -> Slides:
    """Move each section."""
    machine = load_machine(MACHINE)

    def view(section_1: int, section_2: int, section_3: int, section_4: int) -> Picture:
        percent = section_1, section_2, section_3, section_4
        figure = figure_of_sections(machine, extension=np.array(percent) / 100.0, units=units)
        return picture(figure, f"Sections with {percent} percent out.")

    way = (0, 100, 1)
    return Slides(view, section_1=way, section_2=way, section_3=way, section_4=way)


SHOWN = Shown(
    views={
        "the sections apart": apart,
        "where each lies": places,
        "the overlap by hand": by_hand,
        "a longer stroke": longer,
    },
    live=live,
)
