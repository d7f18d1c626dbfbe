"""Read a load chart whose rows and columns do not have what is asked for."""

from functools import lru_cache

import numpy as np
from sympy import symbols

from boomsim.papers.check_models.question_charts import LENGTH, STEP, Piece, chart_of_piece, table
from boomsim.papers.numbers.dice import Chance
from boomsim.papers.numbers.printed_units import METRIC, US, unit
from boomsim.papers.problems.family import Drawn, Family, Given, Slip, Step, Table, Values
from boomsim.rating.charts.chart_reading import Reading, read_chart
from boomsim.rating.charts.misreadings import misreadings
from boomsim.units import rounded

P, C, R, L = symbols("P C R L")
C_1, C_2, C_3, C_4, C_5, C_6, C_7 = symbols("C_1 C_2 C_3 C_4 C_5 C_6 C_7")

PIECE = Piece(
    machine="truck18",
    extensions=tuple((share,) * 3 for share in (0.0, 0.25, 0.5, 0.75, 1.0)),
    radii=((METRIC, (3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 10.0, 12.0)),
           (US, (10.0, 13.0, 16.0, 20.0, 24.0, 28.0, 34.0, 40.0))),
)  # fmt: skip
WRONG = {
    "C_1": "next smaller radius", "C_2": "larger of two booms", "C_3": "rounded the wrong way",
    "C_4": "interpolated radius", "C_5": "interpolated both",
}  # fmt: skip
"""Wrong ways of reading, as :mod:`boomsim.rating.charts.misreadings` names them."""


def read(system: str, *, radius: float, length: float) -> Reading:
    """Read the chart; nothing is deducted."""
    chart = chart_of_piece(PIECE, system)
    return read_chart(chart, radius=radius, length=length, deductions=(), units=system)


@lru_cache(maxsize=2)
def printed(system: str) -> Table:
    """Write the chart with boom lengths above its columns."""
    chart, foot = chart_of_piece(PIECE, system), float(unit(LENGTH[system]).factor)
    heads = [f"{rounded(length / foot, 1)} {LENGTH[system]}" for length in chart.length]
    return table(chart, system=system, heads=heads)


def draw(chance: Chance, system: str, _: Values) -> Drawn:
    """Choose a radius between two rows and a boom length between two columns."""
    chart = chart_of_piece(PIECE, system)
    row, column = (1 + chance.integer(n - 1) for n in chart.steps.shape)
    across, down = (np.array([2, 8]) + chance.integer(7) * np.array([1, -1]) for _ in range(2))
    radius = float(chart.radii[row - 1 : row + 1] @ down) / 10
    length = float(chart.length[column - 1 : column + 1] @ across) / 10
    spread = 0.1 * float(unit(LENGTH[system]).factor)
    radius, length = (round(value / spread) * spread for value in (radius, length))
    found = read(system, radius=radius, length=length)
    ways = {way.key: way.gross for way in misreadings(found)}
    wrong = {letter: ways.get(key, float("nan")) for letter, key in WRONG.items()}
    right = found.cell or float("nan")
    values = {"C": right, "R": radius, "L": length, **wrong, **too_careful(found)}
    return Drawn(values=values, table=printed(system))


def too_careful(found: Reading) -> dict[str, float]:
    """Go a row or a column further than the chart asks for; at its edge there is none [kg]."""
    cells = found.chart.capacity
    row, column = found.row + 1, max(found.column, found.beside or 0) + 1
    further = float(cells[row, found.column]) if row < len(cells) else float("nan")
    longer = float(cells[found.row, column]) if column < cells.shape[1] else float("nan")
    return {"C_6": further, "C_7": longer}


def check(given: Values) -> float:
    """Read the chart again from radius and boom length alone."""
    steps = given["C"] / (1000 * float(STEP[METRIC]))
    system = METRIC if abs(steps - round(steps)) < 1e-6 else US
    return read(system, radius=given["R"], length=given["L"]).cell


CAPACITY = {"metric": "drawn in t by 0.05", "us": "drawn in lb by 100"}

FAMILY = Family(
    id="charts_reading",
    topic="charts",
    title="Reading a chart between its rows and columns",
    text="The boom moves all its sections in proportion. It is {L=} long, and the load hangs at a "
    "radius of {R=}. Which gross load does this chart allow?",
    assume="Between two radii the chart is read at the larger one, between two boom lengths at "
    "the smaller of the two figures.",
    givens=(
        Given(C, "the cell that counts", **CAPACITY),
        Given(C_1, "the row above", **CAPACITY),
        Given(C_2, "the larger figure beside", **CAPACITY),
        Given(C_3, "the row above beside", **CAPACITY),
        Given(C_4, "between two rows", **CAPACITY),
        Given(C_5, "between four cells", **CAPACITY),
        Given(C_6, "the row below", **CAPACITY),
        Given(C_7, "the column after the two", **CAPACITY),
        Given(R, "radius", metric="drawn in m by 0.1", us="drawn in ft by 0.1"),
        Given(L, "boom length", metric="drawn in m by 0.1", us="drawn in ft by 0.1"),
    ),
    steps=(
        Step(P, C, "gross rated capacity",
             "Take the row of the next larger radius, and in it the smaller of the two figures "
             "beside the boom length; nothing is interpolated.",
             metric="t", us="lb", marks=2, nearest=("0.05", "100")),
    ),
    slips=(
        Slip(P, C_1, "took the next smaller radius"),
        Slip(P, C_2, "took the larger of the two figures beside the boom length"),
        Slip(P, C_3, "took the next smaller radius and the larger of its two figures"),
        Slip(P, C_4, "interpolated between two radii"),
        Slip(P, C_5, "interpolated between radii and between boom lengths"),
        Slip(P, C_6, "went a row further than the next larger radius, and gave capacity away",
             safer=True),
        Slip(P, C_7, "went a column further than the two beside the boom length", safer=True),
    ),
    check=check,
    draw=draw,
    safe="less",
)  # fmt: skip
