"""What lesson 02 shows: who carries most, why, and what the counterweight does to it."""

from functools import lru_cache

import numpy as np

from boomsim.figures.comparison.comparison_figure import figure_of_comparison
from boomsim.figures.difference.difference_figure import figure_of_difference
from boomsim.lessons.lesson_01_what_a_section_is import MACHINE
from boomsim.lessons.lesson_02_same_length import FAR, NEAR, ways
from boomsim.lessons.lesson_display import Panel, Picture, picture, table
from boomsim.lessons.lesson_sliders import Slides
from boomsim.lessons.printed_figures import lengths_of
from boomsim.lessons.shown.shown_parts import Shown, Stack
from boomsim.machine.machine_files import load_machine
from boomsim.machine.model import Rigging
from boomsim.rating.comparison.comparison_sentences import tell_crossover
from boomsim.rating.comparison.comparison_study import Comparison, compare, demonstration
from boomsim.rating.comparison.difference_account import account, difference
from boomsim.rating.limits.limit_sentences import sign, signs_in_words, what_sets
from boomsim.rating.setup import set_up
from boomsim.units import show, show_rated

BETWEEN = 20.0
"""A boom length that no pins give [m]."""


def leads(units: str) -> Stack:
    """List what each way carries over radius, and say where the lead changes."""
    _, found = ways()
    rated, rows = found.rating, []
    for k in np.flatnonzero(found.best >= 0).tolist():
        cells = [
            f"{show_rated(float(rated.capacity[i, k]), units)}{sign(rated.limit(i, k))}"
            for i in range(3)
        ]
        rows.append((show(found.radii[k], "length", units), *cells, "ABC"[found.best[k]]))
    changes = tuple(tell_crossover(found, one, units=units) for one in found.crossovers)
    return Stack(
        Panel(words=(signs_in_words(), *changes)),
        table("radius | A | B | C | carries most", *rows, capacity=True),
    )


def in_kilograms(units: str) -> Picture:
    """Draw why A carries more than C far out, section by section."""
    setup, found = ways()
    out = found.configurations.extension
    a, c = (account(setup, extension=out[i], radius=FAR) for i in (0, 2))
    assert a is not None and c is not None
    figure = figure_of_difference(
        difference(a, c, radius=FAR), setup=setup, extensions=(out[0], out[2]),
        letters=("A", "C"), units=units,
    )  # fmt: skip
    return picture(figure, "Why A carries more than C far out, section by section.")


def close_in(units: str) -> Panel:
    """Say what sets the figures of A and C close in."""
    setup, found = ways()
    said = []
    for name, k in (("A", 0), ("C", 2)):
        one = account(setup, extension=found.configurations.extension[k], radius=NEAR)
        assert one is not None
        load = show_rated(float(one.capacity), units)
        said.append(f"{name} may carry {load}; {what_sets(one.limit)}.")
    return Panel(words=tuple(said))


def between(units: str) -> Panel:
    """Ask for a length that no pins give."""
    try:
        compare(ways()[0], length=BETWEEN)
    except ValueError as refused:
        return Panel(words=tuple(lengths_of(str(refused), units).splitlines()))
    raise AssertionError("The boom can be as long as that.")


@lru_cache(maxsize=4)
def with_slabs(slabs: int) -> Comparison:
    """Rate the three ways with so many slabs of counterweight on.

    Parameters
    ----------
    slabs : int
        None to all [1]
    """
    machine = load_machine(MACHINE)
    name = machine.counterweights[::-1][slabs].name
    setup = set_up(machine, rigging=Rigging(counterweight=name))
    return compare(setup, configurations=demonstration(machine.boom))


def live(units: str) -> Slides:
    """Put slabs of counterweight on."""

    def view(slabs_of_counterweight: int) -> Picture:
        figure = figure_of_comparison(with_slabs(slabs_of_counterweight), units=units)
        words = f"The three ways with {slabs_of_counterweight} slabs of counterweight."
        return picture(figure, words)

    most = len(load_machine(MACHINE).counterweights) - 1
    return Slides(view, slabs_of_counterweight=(0, most, 1, most))


SHOWN = Shown(
    views={
        "who carries most": leads,
        "the difference in kilograms": in_kilograms,
        "what sets the figures close in": close_in,
        "a length between": between,
    },
    live=live,
)
