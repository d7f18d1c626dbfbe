"""What lesson 05 shows: tipping lines, the load all around, and the crane's own slabs."""

import numpy as np

import boomsim as bs
from boomsim.face.slabs_result import SettingUp
from boomsim.figures.plan.plan_figure import figure_of_plan
from boomsim.lessons.first_guess import Guess, Truth
from boomsim.lessons.lesson_05_turns_over import (
    DIRECTIONS,
    LOAD,
    MACHINE,
    RADIUS,
    half_out,
    over,
)
from boomsim.lessons.lesson_display import Picture, Table, picture, table
from boomsim.lessons.lesson_sliders import Slides
from boomsim.lessons.shown.shown_parts import Exercise, Shown
from boomsim.machine.machine_files import load_machine
from boomsim.machine.model import Rigging
from boomsim.rating.around.centres_of_gravity import hung_at
from boomsim.rating.around.slew_study import around
from boomsim.rating.capacity import rate
from boomsim.rating.setup import set_up
from boomsim.rating.slabs.slabs_study import Bands, Slabs
from boomsim.units import show, show_rated

LIGHT = np.array([0.0, 0.0, 0.0, 0.9])
"""Way out of the yard crane [1]."""

TURNS = (0, 45, 90, 135, 180)
"""Slew angles of the table [deg]."""


def from_above(units: str, *, slew: float = 90.0) -> Picture:
    """Draw the crane from above.

    Parameters
    ----------
    units : str
    slew : float
        [deg]
    """
    at = hung_at(set_up(load_machine(MACHINE)), extension=half_out(), load=LOAD, radius=RADIUS)
    figure = figure_of_plan(at, slew=float(np.radians(slew)), units=units)
    return picture(figure, f"The crane from above, slewed to {slew:g} degrees.")


def all_around(units: str) -> Table:
    """List the rated load all the way round."""
    turn = np.radians(TURNS)
    setup = set_up(load_machine(MACHINE))
    found = around(setup, extension=half_out(), radius=np.array([RADIUS]), slew=turn)
    rows = [
        (show(float(angle), "angle"), show_rated(float(found.capacity[k, 0]), units))
        for k, angle in enumerate(turn)
    ]
    return table("slewed to (rear is zero) | rated", *rows, capacity=True)


def holds(units: str) -> Table:
    """List what holds the crane down in each direction, and on which arm the load pulls."""
    rows: list[tuple[str, ...]] = []
    names: tuple[str, ...] = ()
    for name in DIRECTIONS:
        one = over(name)
        names = tuple(one.holds)
        moments = [show(moment, "moment", units) for moment in one.holds.values()]
        rows.append((name, *moments, show(float(one.account.lever), "length", units)))
    return table(f"over the | {' | '.join(names)} | load’s lever arm", *rows)


def other_crane(units: str) -> Table:
    """Rate the yard crane in the three directions."""
    yard, rows = load_machine("yard60"), []
    for name, slew in DIRECTIONS.items():
        rated = rate(set_up(yard, slew=slew), extension=LIGHT, radius=np.array([RADIUS]))
        rows.append((name, show_rated(float(rated.capacity[0, 0]), units)))
    return table("the yard crane, over the | rated", *rows, capacity=True)


def outriggers(units: str) -> Table:
    """Rate the crane on full and on half outriggers."""
    rows = []
    for name in ("full", "half"):
        other = set_up(load_machine(MACHINE), rigging=Rigging(support=name))
        rated = rate(other, extension=half_out(), radius=np.array([RADIUS]))
        rows.append((name, show_rated(float(rated.capacity[0, 0]), units)))
    return table("outriggers | rated all around", *rows, capacity=True)


def bare(units: str) -> Table:
    """Rate what is left half out, over the side, without a counterweight, all the way out."""
    rigging = Rigging(support="half", counterweight="none")
    worst = set_up(load_machine(MACHINE), rigging=rigging, slew=DIRECTIONS["side"])
    radii = np.array([10.0, 18.0, 26.0])
    rated = rate(worst, extension=np.ones(3), radius=radii)
    rows = [
        (
            show(float(radius), "length", units),
            show_rated(float(load), units) if load else "nothing",
        )
        for radius, load in zip(radii, rated.capacity[0], strict=True)
    ]
    return table("radius | rated", *rows, capacity=True)


def live(units: str) -> Slides:
    """Slew the crane."""

    def view(slew_in_degrees: float) -> Picture:
        return from_above(units, slew=slew_in_degrees)

    return Slides(view, slew_in_degrees=(-180, 180, 15, 90))


FIRST_SLAB = 6000.0
"""Of the yard crane [kg]."""

LIES = 11.0
"""How far out the first slab lies [m]."""


def first_bands(found: Slabs) -> tuple[Bands, ...]:
    """Give the bands of the first slab, one for each sort of supports."""
    return tuple(one for one in found.bands if one.stage is found.stages[0])


def slabs(units: str) -> Exercise:
    """Ask on which outriggers the yard crane may fetch its own first slab."""

    def found() -> SettingUp:
        return bs.slabs("yard60", extension="45,45,45,0")

    def truths() -> tuple[Truth, Truth]:
        far = {
            one.support.name: float(np.nanmax(one.far))
            for one in first_bands(found().study)
            if one.best is not None
        }
        full, half = ("yes" if far[name] >= LIES else "no" for name in ("full", "half"))
        return (
            Truth(
                what="on full outriggers",
                answer=full,
                slips={"thought that without its counterweight a crane lifts nothing": "no"},
            ),
            Truth(
                what="on half",
                answer=half,
                slips={"forgot that outriggers half out bring the tipping lines nearer": "yes"},
            ),
        )

    return Exercise(
        guess=Guess(
            question=(
                "Before the first lift the yard crane fetches its own counterweight, with nothing "
                f"on yet. Its first slab of {show(FIRST_SLAB, 'mass', units)} lies at a radius of "
                f"{show(LIES, 'length', units)}. May it lift the slab on outriggers full? On "
                "outriggers half? (yes or no)"
            ),
            parts=2,
            answers=truths,
            units=units,
        ),
        call='bs.slabs("yard60", extension="45,45,45,0")',
        study=found,
        units=units,
    )


SHOWN = Shown(
    views={
        "from above": from_above,
        "the load all around": all_around,
        "what holds it down": holds,
        "another crane": other_crane,
        "outriggers half out": outriggers,
        "all the way out": bare,
    },
    live=live,
    exercises={"its own slabs": slabs},
)
