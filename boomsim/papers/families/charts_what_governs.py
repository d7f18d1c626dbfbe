"""The bold line: on one side strength governs, on the other stability, and it matters which."""

from dataclasses import replace
from functools import lru_cache

import numpy as np
from sympy import symbols

from boomsim.machine.files import load_machine
from boomsim.machine.model import Machine
from boomsim.papers.callpath.charts import (
    INVENTED,
    LENGTH,
    Piece,
    chart_of_piece,
    system_with,
    table,
)
from boomsim.papers.numbers.chance import Chance
from boomsim.papers.numbers.measures import METRIC, US, unit
from boomsim.papers.problems.family import ChoiceFamily, Given, Option, Posed, Values
from boomsim.rating.capacity import rate
from boomsim.rating.charts.chart import Chart
from boomsim.rating.setup import set_up
from boomsim.rating.strategies import label

R = symbols("R")

RADII = {
    METRIC: (5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 12.0),
    US: (17.0, 20.0, 23.0, 26.0, 30.0, 34.0, 40.0),
}
PIECE = Piece(
    machine="yard60",
    extensions=((0.0, 0.0, 0.0, 1.0), (0.0, 0.0, 0.45, 0.45), (1.0, 0.0, 0.0, 0.0)),
    radii=tuple(RADII.items()),
)
LABELS = tuple(label(np.array(one)) + " %" for one in PIECE.extensions)

CLEAR = ("tipping", "stress", "plate buckling", "web crushing")
"""Limits that one of the options moves."""

COUNTERWEIGHT = "A heavier counterweight."
STEEL = "Boom sections of stronger steel."
EITHER = "Stronger steel or a heavier counterweight, no matter which."
NEITHER = "Neither stronger steel nor a heavier counterweight."


def with_steel(machine: Machine) -> Machine:
    """Give all sections a tenth more yield stress."""
    sections = tuple(
        replace(s, material=replace(s.material, yield_stress=1.1 * s.material.yield_stress))
        for s in machine.boom.sections
    )
    return replace(machine, boom=replace(machine.boom, sections=sections))


def with_counterweight(machine: Machine) -> Machine:
    """Make the usual counterweight a fifth heavier."""
    usual = machine.counterweights[0]
    return replace(machine, counterweights=(replace(usual, mass=1.2 * usual.mass),))


@lru_cache(maxsize=8)
def gained(system: str, change: str) -> np.ndarray:
    """By which factor each cell grows with a change, rows by columns [1]."""
    machine = load_machine(PIECE.machine)
    radii = np.array(PIECE.rows(system)) * float(unit(LENGTH[system]).factor)
    changed = with_steel(machine) if change == STEEL else with_counterweight(machine)
    cells = [
        rate(set_up(one), extension=np.array(PIECE.extensions), radius=radii).capacity.T
        for one in (changed, machine)
    ]
    return np.asarray(cells[0] / cells[1])


def _is_clear(chart: Chart, row: int, column: int) -> bool:
    """Whether stability or a boom section sets a cell, and not, say, the line pull."""
    limit = chart.limit(row, column)
    return limit is not None and limit.name in CLEAR


def pose(chance: Chance, given: Values) -> Posed:
    """Choose a column and say what its value depends on."""
    system = system_with(given["R"], RADII, of="length")
    chart = chart_of_piece(PIECE, system)
    row = int(np.argmin(np.abs(chart.radii - given["R"])))
    column = chance.pick([n for n in range(len(LABELS)) if _is_clear(chart, row, n)])
    structural = bool(chart.structural[row, column])
    mixed = "mixed up the two sides of the bold line"
    return Posed(
        options=(
            Option(COUNTERWEIGHT, right=not structural, slip=mixed),
            Option(STEEL, right=structural, slip=mixed),
            Option(EITHER, slip="thought that both limits are reached at once"),
            Option(NEITHER, slip="did not see that one limit alone sets each value"),
        ),
        because="The cell {is_marked} an asterisk: {side} governs it, and only what raises that "
        "limit raises the value.",
        words={
            "configuration": LABELS[column], "is_marked": "has" if structural else "does not have",
            "side": "strength" if structural else "stability",
        },
        table=table(
            chart, system=system, heads=LABELS, mark=" *",
            caption=f"{INVENTED}; * strength governs",
        ),
    )  # fmt: skip


def check(given: Values, posed: Posed) -> int:
    """Change the machine, rate it again, and see which change helps."""
    system = system_with(given["R"], RADII, of="length")
    radii = np.array(RADII[system]) * float(unit(LENGTH[system]).factor)
    row = int(np.argmin(np.abs(radii - given["R"])))
    column = LABELS.index(posed.words["configuration"])
    gains = [gained(system, change)[row, column] - 1 > 1e-3 for change in (COUNTERWEIGHT, STEEL)]
    return {(True, False): 0, (False, True): 1, (True, True): 2, (False, False): 3}[tuple(gains)]


FAMILY = ChoiceFamily(
    id="charts_what_governs",
    topic="charts",
    title="What governs a cell",
    text="In this chart, strength governs the cells with an asterisk and stability the others: "
    "printed charts draw a bold line between them. Which of these would raise the value at a "
    "radius of {R} in the configuration {configuration}?",
    assume="The crane is otherwise the same.",
    givens=(
        Given(R, "radius", metric="5, 6, 7, 8, 9, 10, 12 m", us="17, 20, 23, 26, 30, 34, 40 ft"),
    ),
    difficulty=2,
    pose=pose,
    check=check,
)  # fmt: skip
