"""What lesson 01 shows: where each section lies, and what a longer stroke would do."""

import numpy as np

from boomsim.figures.handout.sections_apart import figure_of_sections
from boomsim.lessons.lesson_01_what_a_section_is import MACHINE, last_out
from boomsim.lessons.lesson_display import Panel, Picture, Table, picture, table
from boomsim.lessons.lesson_sliders import Slides
from boomsim.lessons.printed_figures import length_of
from boomsim.lessons.shown.shown_parts import Shown
from boomsim.machine.machine_files import builtin_text, load_machine, read_machine
from boomsim.mechanics.geometry import layout


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
        found = placed.tail[0, k], placed.front[0, k], placed.overlap[0, k]
        rows.append((k, *(length_of(float(place), units) for place in found)))
    return table("section | tail at | front at | overlap", *rows)


def by_hand(units: str) -> Panel:
    """Work the overlap out as on paper."""
    last, out = load_machine(MACHINE).boom.sections[-1], float(last_out()[-1])
    gone = last.stroke * out
    inside = last.length - last.nose - gone
    terms = (length_of(x, units) for x in (last.length, last.nose, gone, inside))
    said = "length {} less nose {} less what is out {}: overlap {}.".format(*terms)
    return Panel(words=(said.capitalize(),))


def longer(units: str) -> Panel:
    """Lengthen a stroke in the machine's file, and let it be read."""
    text = builtin_text(MACHINE).replace('stroke = "8.00 m"', 'stroke = "9.50 m"')
    try:
        read_machine(text, "longer.toml")
    except ValueError as refused:
        return Panel(words=tuple(str(refused).splitlines()))
    raise AssertionError("The longer stroke was taken.")


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
