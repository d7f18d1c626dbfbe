"""Three configurations of one length, and one that carries this load at this radius."""

from decimal import ROUND_HALF_UP, Decimal
from functools import lru_cache

import numpy as np
from sympy import symbols

from boomsim.machine.machine_files import load_machine
from boomsim.mechanics.geometry import Array
from boomsim.papers.check_models.question_charts import (
    LENGTH,
    MASS,
    STEP,
    Piece,
    chart_of_piece,
    number,
    system_with,
    table,
)
from boomsim.papers.numbers.amounts import grouped
from boomsim.papers.numbers.dice import Chance
from boomsim.papers.numbers.printed_units import METRIC, US, unit
from boomsim.papers.problems.family import ChoiceFamily, Given, Option, Posed, Values
from boomsim.rating.capacity import rate
from boomsim.rating.setup import set_up
from boomsim.rating.strategies import label
from boomsim.units import parse

R, m_b, m_s = symbols("R m_b m_s")

ROWS = {METRIC: (4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 12.0, 14.0, 16.0),
        US: (13.0, 16.0, 20.0, 23.0, 26.0, 30.0, 34.0, 40.0, 46.0, 52.0)}  # fmt: skip
BETWEEN = {METRIC: "4.5, 5.5, 6.4, 8.4, 9.6, 11, 12.8, 13.5, 15",
           US: "15, 18, 21.5, 28, 32, 37, 43, 48, 50"}  # fmt: skip
PIECE = Piece(
    machine="yard60",
    extensions=((0.0, 0.0, 0.0, 1.0), (0.0, 0.0, 0.45, 0.45), (1.0, 0.0, 0.0, 0.0)),
    radii=tuple(ROWS.items()),
)
LABELS = tuple(label(np.array(one)) + " %" for one in PIECE.extensions)
NONE = "None of them."
BELIEFS = (
    "thought that the lightest section out leaves most at any radius",
    "thought that two sections half out carry most at any radius",
    "thought that the strongest section out carries most at any radius",
)
"""Why someone would choose a configuration that carries most elsewhere."""
FORGOT = "forgot that hook block and slings are part of the gross load"


def row_for(radius: float) -> tuple[int, str]:
    """Find the row of the next larger radius, and the unit system."""
    offered = {system: [float(r) for r in text.split(",")] for system, text in BETWEEN.items()}
    system = system_with(radius, offered, of="length")
    foot = float(unit(LENGTH[system]).factor)
    return next(n for n, one in enumerate(ROWS[system]) if one * foot > radius), system


def pose(chance: Chance, given: Values) -> Posed:
    """Choose a load that one configuration carries, or that none does once all is counted."""
    row, system = row_for(given["R"])
    chart = chart_of_piece(PIECE, system)
    cells = [number(chart, row, n, system=system) or Decimal(0) for n in range(len(LABELS))]
    best = max(range(len(LABELS)), key=lambda n: cells[n])
    rigging, step = _mass(given["m_b"] + given["m_s"], system), STEP[system]
    second = sorted(cells)[-2]
    clear = int((cells[best] - second) / step)
    carried = clear > 2 and chance.integer(4) > 0
    # Above the second best, or out of reach of the best once hook block and slings count.
    low, room = (second, clear) if carried else (cells[best], int(rigging / step))
    gross = low + step * (1 + chance.integer(room - 1))
    right = best if carried else len(LABELS)
    return Posed(
        options=(
            *(Option(f"{one}.", right=right == n, slip=FORGOT if n == best else BELIEFS[n])
              for n, one in enumerate(LABELS)),
            Option(NONE, right=right == len(LABELS), slip="read a row too far out, or took the "
                   "rigging off twice"),
        ),
        because="Load, hook block and slings are {gross} gross. In the row of the next larger "
        "radius, {most} is the most, in the configuration {best}. " + _verdict(carried),
        words={
            "load": _text(gross - rigging, system), "gross": _text(gross, system),
            "most": _text(cells[best], system), "best": LABELS[best],
        },
        table=table(chart, system=system, heads=LABELS),
    )  # fmt: skip


def _mass(value: float, system: str) -> Decimal:
    """Write a round mass in the unit of the chart."""
    return (Decimal(f"{value / float(unit(MASS[system]).factor):.9g}") / STEP[system]).quantize(
        Decimal(1), ROUND_HALF_UP
    ) * STEP[system]


def _verdict(carried: bool) -> str:
    """Say how it ends."""
    return "That is enough, and nothing else is." if carried else "That is not enough."


def _text(load: Decimal, system: str) -> str:
    """Write a load."""
    return f"{grouped(load, system=system)}\u00a0{MASS[system]}"


@lru_cache(maxsize=len(ROWS))
def rated_at_rows(system: str) -> Array:
    """Rate all three configurations at the radii of all rows, not rounded [kg]."""
    setup = set_up(load_machine(PIECE.machine))
    radius = np.array(ROWS[system]) * float(unit(LENGTH[system]).factor)
    return rate(setup, extension=np.array(PIECE.extensions), radius=radius).capacity


def check(given: Values, posed: Posed) -> int:
    """Hang the load on each of them at the next larger radius."""
    row, system = row_for(given["R"])
    load = posed.words["load"].replace("\u202f", "").replace(",", "").replace("\u00a0", " ")
    gross = parse(load, "mass") + given["m_b"] + given["m_s"]
    carry = np.flatnonzero(rated_at_rows(system)[:, row] >= gross)
    return int(carry[0]) if len(carry) == 1 else len(LABELS) + len(carry)


FAMILY = ChoiceFamily(
    id="strategy_for_this_radius",
    topic="strategy",
    title="Which configuration for this radius",
    text="Three configurations of an invented crane have the same boom length; the chart is the "
    "one below. A load of {load} is to be set down at a radius of {R}. The hook block weighs "
    "{m_b=}, slings and shackles {m_s=}. Which configuration may be used?",
    assume="Between two radii the chart is read at the larger one.",
    givens=(
        Given(R, "radius", metric=f"{BETWEEN[METRIC]} m", us=f"{BETWEEN[US]} ft"),
        Given(m_b, "hook block", metric="0.35 to 0.6 t by 0.05", us="800 to 1300 lb by 100"),
        Given(m_s, "slings", metric="0.1 to 0.3 t by 0.05", us="200 to 600 lb by 100"),
    ),
    difficulty=3,
    marks=2,
    pose=pose,
    check=check,
)  # fmt: skip
