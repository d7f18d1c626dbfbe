"""What lesson 04 shows: the moment from section to section, the pads, the stress."""

import numpy as np

from boomsim.figures.handout.moment_diagram import figure_of_moments
from boomsim.lessons.lesson_04_strong_close_in import CLOSE, HEAVY, close_lifts
from boomsim.lessons.lesson_display import Panel, Picture, Table, percent, picture, table
from boomsim.lessons.lesson_sliders import Slides, measured
from boomsim.lessons.shown.shown_parts import Shown, Stack
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.sections.section_properties import properties
from boomsim.rating.lift.lift_study import Lift, lift
from boomsim.rating.lift_response import respond
from boomsim.units import all_in_words, show

LIGHTER = 16_000.0
"""What the slider moves in and out [kg]."""


def _drawn(load: float, radius: float, units: str) -> Picture:
    setup, lifts = close_lifts()
    boom = condense(setup.machine, extension=np.array([one.extension for one in lifts]))
    at = respond(setup, boom=boom, load=np.array([[load]]), radius=np.array([[radius]]))
    figure = figure_of_moments(at, units=units)
    return picture(figure, "Bending moment of each section in A, B and C.")


def moments(units: str) -> Picture:
    """Draw the bending moment of each section."""
    return _drawn(HEAVY, CLOSE, units)


def _used(one: Lift, number: int) -> str:
    return percent(max(u.utilisation for u in one.limits if u.limit.section == number))


def used(units: str) -> Table:
    """List how much of each section is used."""
    _, lifts = close_lifts()
    names = [section.name for section in lifts[0].sections]
    rows = [(name, *(_used(one, k) for one in lifts)) for k, name in enumerate(names)]
    return table("section | A | B | C", *rows)


def pads(units: str) -> Table:
    """List how hard the front pad of the section that is out presses."""
    _, lifts = close_lifts()
    rows = []
    for way, one in zip("ABC", lifts, strict=True):
        out = int(np.argmax(one.extension)) + 1  # the first section that is out
        overlap = show(float(one.response.boom.layout.overlap[0, out]), "length", units)
        press = one.sections[out].front_pad
        assert press is not None
        pad = show(press, "force", units)
        rows.append((way, one.sections[out].name, overlap, pad))
    return table("way | out | overlap | front pad", *rows)


def stress(units: str) -> Table:
    """List section modulus and stress of each section."""
    setup, lifts = close_lifts()
    rows = []
    for k, section in enumerate(setup.machine.boom.sections):
        w = float(properties(section.profile).modulus_bottom)
        shown = [show(one.sections[k].moment_max / w, "stress", units) for one in lifts]
        rows.append((lifts[0].sections[k].name, show(w, "section_modulus", units), *shown))
    return table("section | modulus | stress in A | B | C", *rows)


def too_much(units: str) -> Panel:
    """Hang half as much again on A, then twice as much."""
    setup, lifts = close_lifts()
    said = []
    for factor in (1.5, 2.0):
        one = lift(setup, extension=lifts[0].extension, load=factor * HEAVY, radius=CLOSE)
        said.append(f"{show(factor * HEAVY, 'mass', units)}. {one.notes[0]}")
    return Panel(words=tuple(said))


def live(units: str) -> Slides:
    """Let a load go in and out."""

    def view(radius: float) -> Stack:
        setup, lifts = close_lifts()
        rows = []
        for way, at in zip("ABC", lifts, strict=True):
            one = lift(setup, extension=at.extension, load=LIGHTER, radius=radius)
            worst = max(one.limits, key=lambda u: u.utilisation)
            rows.append((way, worst.limit.words, percent(worst.utilisation)))
        hung, at_radius = show(LIGHTER, "mass", units), show(radius, "length", units)
        shown = table(f"way | most used by {hung} at {at_radius} | how much", *rows)
        return Stack(all_in_words(shown, units), _drawn(LIGHTER, radius, units))

    marks = {"m": (5.0, 10.0, 0.5, CLOSE), "ft": (16, 33, 1, 20)}
    return Slides(view, radius=measured("radius", "length", units, **marks))


SHOWN = Shown(
    views={
        "the moment of each section": moments,
        "how much is used": used,
        "the pads": pads,
        "the stress": stress,
        "too much": too_much,
    },
    live=live,
)
