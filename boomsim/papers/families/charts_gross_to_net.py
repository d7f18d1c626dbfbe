"""Read a load chart between two of its radii, and take off what hangs with the load."""

from decimal import ROUND_FLOOR, Decimal
from functools import lru_cache

import numpy as np
from sympy import symbols

from boomsim.machine.machine_files import load_machine
from boomsim.papers.numbers.amounts import grouped
from boomsim.papers.numbers.dice import Chance
from boomsim.papers.numbers.printed_units import unit
from boomsim.papers.problems.family import Drawn, Family, Given, Slip, Step, Table, Values
from boomsim.rating.capacity import rate
from boomsim.rating.setup import set_up
from boomsim.rating.strategies import label

G, N, C, C_1, C_2, R, k, m_b, m_s = symbols("G N C C_1 C_2 R k m_b m_s")

MACHINE = "yard60"
EXTENSIONS = ((0.0, 0.0, 0.45, 0.45), (0.45, 0.45, 0.0, 0.0), (0.9, 0.9, 0.9, 0.9))
RADII = {"metric": (6, 7, 8, 9, 10, 12, 14), "us": (20, 24, 28, 32, 36, 40, 46)}
UNITS = {"metric": ("m", "t", "0.05"), "us": ("ft", "lb", "50")}


@lru_cache(maxsize=2)
def chart(system: str) -> tuple[tuple[Decimal, ...], ...]:
    """Rate the machine and round down, as charts do: rows by radius, columns by configuration."""
    length, mass, step = UNITS[system]
    radii = np.array(RADII[system]) * float(unit(length).factor)
    rated = rate(set_up(load_machine(MACHINE)), extension=np.array(EXTENSIONS), radius=radii)
    cells = rated.capacity.T / float(unit(mass).factor) / float(step)
    return tuple(
        tuple(Decimal(f"{c:.9g}").quantize(Decimal(1), ROUND_FLOOR) * Decimal(step) for c in row)
        for row in cells
    )


def draw(chance: Chance, system: str, _: Values) -> Drawn:
    """Choose a configuration and a radius between two rows of the chart."""
    length, mass, _step = UNITS[system]
    rows, radii, labels = chart(system), RADII[system], [label(np.array(e)) for e in EXTENSIONS]
    row, column = 1 + chance.integer(len(rows) - 1), chance.integer(len(EXTENSIONS))
    between = radii[row - 1] + (radii[row] - radii[row - 1]) * (2 + chance.integer(7)) / 10
    one = float(unit(mass).factor)
    other = rows[row][(column + 1) % len(EXTENSIONS)]
    head = (f"radius [{length}]", *(f"{one} %" for one in labels))
    body = (
        (str(r), *(_cell(c, system) for c in cells)) for r, cells in zip(radii, rows, strict=True)
    )
    return Drawn(
        values={
            "C": float(rows[row][column]) * one, "C_1": float(rows[row - 1][column]) * one,
            "C_2": float(other) * one, "R": between * float(unit(length).factor), "k": column,
        },
        words={"configuration": f"{labels[column]} %"},
        table=Table(rows=(head, *body), caption=f"Gross rated capacity [{mass}]; invented machine"),
    )  # fmt: skip


def _cell(number: Decimal, system: str) -> str:
    """Write one cell; out of reach there is none."""
    return grouped(number, system=system) if number.is_finite() else "–"


def check(given: Values) -> float:
    """Read the chart again from the configuration and the radius alone."""
    system = next(s for s in RADII if _is_on_step(given["C"], s))
    length, mass, _ = UNITS[system]
    radii = [r * float(unit(length).factor) for r in RADII[system]]
    row = next(number for number, radius in enumerate(radii) if radius >= given["R"] - 1e-9)
    read = float(chart(system)[row][round(given["k"])]) * float(unit(mass).factor)
    return read - given["m_b"] - given["m_s"]


def _is_on_step(mass: float, system: str) -> bool:
    """Whether a capacity is one of this system's chart."""
    one = float(unit(UNITS[system][1]).factor)
    return any(abs(mass - float(cell) * one) < 1e-6 * mass for row in chart(system) for cell in row)


FAMILY = Family(
    id="charts_gross_to_net",
    topic="charts",
    title="From gross to net capacity",
    text="The crane stands at a radius of {R} with its boom in the configuration {configuration}. "
    "The hook block weighs {m_b=}, slings and shackles {m_s=}. What is the heaviest load that may "
    "hang in the slings?",
    assume="Between two radii the chart is read at the larger one.",
    givens=(
        Given(C, "rated capacity", metric="drawn in t by 0.05", us="drawn in lb by 50"),
        Given(C_1, "the row above", metric="drawn in t by 0.05", us="drawn in lb by 50"),
        Given(C_2, "the next column", metric="drawn in t by 0.05", us="drawn in lb by 50"),
        Given(R, "radius", metric="drawn in m by 0.1", us="drawn in ft by 0.1"),
        Given(k, "column of the chart", metric="drawn by 1", us="drawn by 1"),
        Given(m_b, "hook block", metric="0.35 to 0.6 t by 0.05", us="800 to 1300 lb by 50"),
        Given(m_s, "slings", metric="0.1 to 0.3 t by 0.05", us="200 to 600 lb by 50"),
    ),
    steps=(
        Step(G, C, "gross rated capacity",
             "Find the column of the configuration and the row of the next larger radius.",
             metric="t", us="lb", nearest=("0.05", "50")),
        Step(N, G - m_b - m_s, "heaviest net load",
             "All that hangs below the head counts as load: take off hook block and slings.",
             metric="t", us="lb", nearest=("0.05", "50")),
    ),
    slips=(
        Slip(G, C_1, "read the row of the smaller radius, where the crane may lift more"),
        Slip(G, C_2, "read the column of another configuration", safer=True),
        Slip(N, G, "took the gross capacity for the net load"),
        Slip(N, G - m_b, "forgot the slings"),
        Slip(N, G + m_b + m_s, "added the deductions"),
        Slip(N, G - 2 * m_b - 2 * m_s, "took the deductions off twice", safer=True),
        Slip(N, G - 2 * m_b - m_s, "took the hook block off twice", safer=True),
    ),
    check=check,
    draw=draw,
    safe="less",
)  # fmt: skip
