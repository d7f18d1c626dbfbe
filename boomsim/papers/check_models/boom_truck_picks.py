"""One pick of the invented boom truck: its chart with every way to stand, and its float loads."""

from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import product

import numpy as np

from boomsim.machine.machine_files import load_machine
from boomsim.machine.model import Rigging
from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.geometry import Array
from boomsim.papers.check_models.question_charts import LENGTH, STEP, Piece, chart_of_piece, number
from boomsim.papers.numbers.amounts import grouped
from boomsim.papers.numbers.dice import Chance
from boomsim.papers.numbers.printed_units import METRIC, US, unit
from boomsim.papers.problems.family import Table
from boomsim.rating.around.float_loads import float_loads, slews_of
from boomsim.rating.capacity import rate
from boomsim.rating.lift_response import respond
from boomsim.rating.setup import Setup, set_up

MACHINE = "truck18"
WAYS = {"even": (0.5, 0.5, 0.5), "in turn": (1.0, 0.5, 0.0)}
"""Two ways to one boom length [1]."""
SUPPORTS = {"full": "full", "half": "half"}
SECTORS = {"all around": "around", "rear": "rear"}
ROWS = {METRIC: (6.0, 7.0, 8.0, 9.0, 10.0, 12.0, 14.0),
        US: (20.0, 23.0, 26.0, 30.0, 34.0, 40.0, 46.0)}  # fmt: skip

BLOCK = {METRIC: (0.1, 0.15, 0.2, 0.25), US: (200.0, 300.0, 400.0, 500.0)}
SLINGS = {METRIC: (0.05, 0.1, 0.15), US: (100.0, 200.0, 300.0)}
"""Masses of hook block and slings, in the unit of the chart."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """One column of the chart: way out, outriggers and sector, as printed."""

    way: str
    support: str
    sector: str


COLUMNS = tuple(
    Column(way=way, support=support, sector=sector)
    for way, support, sector in product(WAYS, SUPPORTS, SECTORS)
)


def cell(system: str, *, row: int, column: Column) -> float:
    """Read a figure of the chart.

    Parameters
    ----------
    system : str
    row : int
        [1]
    column : Column

    Returns
    -------
    float
        NaN where the chart is blank [unit of the chart]
    """
    chart = chart_of_piece(_piece(column), system)
    found = number(chart, row, list(WAYS).index(column.way), system=system)
    return float("nan") if found is None else float(found)


def _piece(column: Column) -> Piece:
    """Both ways out on one sort of outriggers in one sector."""
    return Piece(
        machine=MACHINE, extensions=tuple(WAYS.values()), radii=tuple(ROWS.items()),
        sector=SECTORS[column.sector], support=SUPPORTS[column.support],
    )  # fmt: skip


@lru_cache(maxsize=2)
def whole_chart(system: str) -> Table:
    """Write all columns, with what belongs to each above it."""
    heads = [
        ("way out", *(one.way for one in COLUMNS)),
        ("beams", *(one.support for one in COLUMNS)),
        ("sector", *(one.sector for one in COLUMNS)),
    ]
    rows = [
        (f"{radius:g} {LENGTH[system]}", *(_text(system, row, one) for one in COLUMNS))
        for row, radius in enumerate(ROWS[system])
    ]
    mass = {METRIC: "t", US: "lb"}[system]
    caption = f"Gross rated capacity [{mass}] by radius; invented machine"
    return Table(rows=(*heads, *rows), caption=caption)


def _text(system: str, row: int, column: Column) -> str:
    """Write one cell."""
    chart = chart_of_piece(_piece(column), system)
    found = number(chart, row, list(WAYS).index(column.way), system=system)
    return "–" if found is None else grouped(found.quantize(STEP[system]), system=system)


def radii_at(chance: Chance, system: str, row: int) -> tuple[float, float]:
    """Draw the radii at both ends of a pick; the larger lies below a row of the chart.

    Parameters
    ----------
    chance : Chance
    system : str
    row : int
        From 1 on [1]

    Returns
    -------
    float, float
        The smaller first [unit of the chart]
    """
    low, high = ROWS[system][row - 1 : row + 1]
    far = low + (high - low) * (2 + chance.integer(7)) / 10
    return round(far * (6 + chance.integer(3)) / 10, 1), round(far, 1)


def row_beyond(system: str, radius: float) -> int:
    """Find the row of the next larger radius.

    Parameters
    ----------
    system : str
    radius : float
        [m]
    """
    foot = float(unit(LENGTH[system]).factor)
    return next(n for n, one in enumerate(ROWS[system]) if one * foot >= radius - 1e-9)


@lru_cache(maxsize=16)
def _setup(column: Column) -> Setup:
    """Set up the machine as a column of the chart has it."""
    rigging = Rigging(support=SUPPORTS[column.support])
    return set_up(load_machine(MACHINE), rigging=rigging, slew=SECTORS[column.sector])


@lru_cache(maxsize=len(COLUMNS))
def _boom(column: Column) -> Condensed:
    """Condense the boom as a column of the chart has it."""
    return condense(_setup(column).machine, extension=np.array([WAYS[column.way]]))


@lru_cache(maxsize=len(COLUMNS))
def _unjudged(column: Column) -> Setup:
    """Leave out what float loads do not depend on: allowances for strength, and most limits."""
    setup = _setup(column)
    return replace(setup, rule=setup.rule.without_allowances(), kinds=setup.kinds[:1])


def rated(column: Column, *, row: int, system: str) -> float:
    """Rate one column at the radius of one row, not rounded.

    Parameters
    ----------
    column : Column
    row : int
        [1]
    system : str

    Returns
    -------
    float
        [kg]
    """
    return float(_rated(column, system)[row])


@lru_cache(maxsize=2 * len(COLUMNS))
def _rated(column: Column, system: str) -> Array:
    """Rate one column at the radii of all rows, not rounded [kg]."""
    radius = np.array(ROWS[system]) * float(unit(LENGTH[system]).factor)
    found = rate(_setup(column), extension=np.array([WAYS[column.way]]), radius=radius)
    return np.asarray(found.capacity[0])


@lru_cache(maxsize=512)
def largest_float(column: Column, *, load: float, radius: float) -> float:
    """Find what the most loaded float carries anywhere in the sector.

    Parameters
    ----------
    column : Column
    load : float
        Gross [kg]
    radius : float
        [m]

    Returns
    -------
    float
        NaN where the crane tips [N]
    """
    setup = _unjudged(column)
    at = respond(setup, boom=_boom(column), load=np.array([[load]]), radius=np.array([[radius]]))
    return float(float_loads(at, slew=slews_of(setup)).reactions.force.max())
