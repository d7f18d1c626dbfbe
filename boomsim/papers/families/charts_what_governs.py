"""The bold line: on one side strength governs, on the other stability, and it matters which."""

from dataclasses import replace
from functools import lru_cache

import numpy as np
from sympy import symbols

from boomsim.machine.machine_files import load_machine
from boomsim.machine.model import Machine
from boomsim.papers.check_models.question_charts import (
    INVENTED,
    LENGTH,
    Piece,
    chart_of_piece,
    system_with,
    table,
)
from boomsim.papers.numbers.dice import Chance
from boomsim.papers.numbers.printed_units import METRIC, US, unit
from boomsim.papers.problems.family import ChoiceFamily, Given, Option, Posed, Values
from boomsim.rating.capacity import rate
from boomsim.rating.charts.load_chart import Chart
from boomsim.rating.setup import set_up
from boomsim.rating.strategies import label

R_1, R_2 = symbols("R_1 R_2")

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

COUNTERWEIGHT, STEEL = "a heavier counterweight", "boom sections of stronger steel"

PATTERNS = ((True, False), (False, True), (True, True), (False, False))
"""Whether the value at the smaller and at the larger radius grows, in the order of the options."""
TEXTS = ("Only the one at {R_1}.", "Only the one at {R_2}.", "Both of them.", "Neither of them.")


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


def _rows(given: Values, chart: Chart) -> tuple[int, int]:
    """Rows of the smaller and of the larger radius."""
    near, far = (int(np.argmin(np.abs(chart.radii - given[name]))) for name in ("R_1", "R_2"))
    return near, far


def pose(chance: Chance, given: Values) -> Posed | None:
    """Choose a column and a change so that each of the four answers is right about as often."""
    system = system_with(given["R_1"], RADII, of="length")
    chart = chart_of_piece(PIECE, system)
    rows = _rows(given, chart)
    ways: dict[tuple[bool, bool], list[tuple[int, str]]] = {}
    for column in range(len(LABELS)):
        if all(_is_clear(chart, row, column) for row in rows):
            near, far = (bool(chart.structural[row, column]) for row in rows)
            ways.setdefault((near, far), []).append((column, STEEL))
            ways.setdefault((not near, not far), []).append((column, COUNTERWEIGHT))
    if not ways:
        return None
    right = chance.pick(sorted(ways))
    column, change = chance.pick(ways[right])
    return Posed(
        options=tuple(
            Option(text, right=pattern == right, slip=_slip(pattern, right))
            for pattern, text in zip(PATTERNS, TEXTS, strict=True)
        ),
        because="At {R_1} the cell {near_mark} an asterisk, at {R_2} it {far_mark} one. Only what "
        "raises the limit that governs a cell raises its value: stronger steel where there is an "
        "asterisk, a heavier counterweight where there is none.",
        words={
            "configuration": LABELS[column], "change": change,
            "near_mark": _mark(chart, rows[0], column), "far_mark": _mark(chart, rows[1], column),
        },
        table=table(
            chart, system=system, heads=LABELS, mark=" *",
            caption=f"{INVENTED}; * strength governs",
        ),
    )  # fmt: skip


def _mark(chart: Chart, row: int, column: int) -> str:
    """Say whether a cell has an asterisk."""
    return "has" if chart.structural[row, column] else "does not have"


def _slip(chosen: tuple[bool, bool], right: tuple[bool, bool]) -> str:
    """Why someone would choose another pattern."""
    wrong = [n for n in (0, 1) if chosen[n] != right[n]]
    if len(wrong) == 2:
        return "mixed up the two sides of the bold line"
    if not wrong:
        return ""
    where = ("smaller", "larger")[wrong[0]]
    if chosen[wrong[0]]:
        return f"thought that it helps at the {where} radius too, where the other limit governs"
    return f"did not see that it helps at the {where} radius, where its own limit governs"


def check(given: Values, posed: Posed) -> int:
    """Change the machine, rate it again, and see where that helps."""
    system = system_with(given["R_1"], RADII, of="length")
    column = LABELS.index(posed.words["configuration"])
    rows = _rows(given, chart_of_piece(PIECE, system))
    near, far = (bool(gained(system, posed.words["change"])[r, column] - 1 > 1e-3) for r in rows)
    return PATTERNS.index((near, far))


_OFFERED = {"metric": "5, 6, 7, 8, 9, 10, 12 m", "us": "17, 20, 23, 26, 30, 34, 40 ft"}

FAMILY = ChoiceFamily(
    id="charts_what_governs",
    topic="charts",
    title="What governs a cell",
    text="In this chart, strength governs the cells with an asterisk and stability the others: "
    "printed charts draw a bold line between them. Look at the values for {R_1} and for {R_2} in "
    "the configuration {configuration}. Which of them would {change} raise?",
    assume="The crane is otherwise the same.",
    givens=(
        Given(R_1, "smaller radius", **_OFFERED),
        Given(R_2, "larger radius", **_OFFERED),
    ),
    difficulty=2,
    pose=pose,
    check=check,
    where=(R_1 < R_2,),
)
