"""Load charts of invented machines, as questions print them.

The built-in machines' charts are rated once for each unit system; a question shows a piece of one
as a table of text.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from functools import lru_cache

import numpy as np

from boomsim.machine.machine_files import load_machine
from boomsim.machine.model import Rigging
from boomsim.papers.numbers.amounts import grouped
from boomsim.papers.numbers.printed_units import METRIC, US, unit
from boomsim.papers.paper_errors import FamilyError
from boomsim.papers.problems.family import Table
from boomsim.rating.charts.load_chart import Chart, stated_chart
from boomsim.rating.setup import set_up
from boomsim.rating.strategies import configurations_of

LENGTH, MASS = {METRIC: "m", US: "ft"}, {METRIC: "t", US: "lb"}
STEP = {METRIC: Decimal("0.05"), US: Decimal(100)}
"""What capacities are rounded down to, in the unit of `MASS`."""

INVENTED = "Gross rated capacity [{mass}]; invented machine"


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """Which piece of a chart a question shows.

    Attributes
    ----------
    machine : str
        Built-in
    extensions : tuple of tuple of float
        Of each column [1]
    radii : tuple of (str, tuple of float)
        By unit system, in metres or feet
    support : str or None
        Default: the machine's usual one
    """

    machine: str
    extensions: tuple[tuple[float, ...], ...]
    radii: tuple[tuple[str, tuple[float, ...]], ...]
    sector: str = "around"
    support: str | None = None

    def rows(self, system: str) -> tuple[float, ...]:
        """Radii in metres or feet."""
        return dict(self.radii)[system]


@lru_cache(maxsize=64)
def chart_of_piece(piece: Piece, system: str) -> Chart:
    """Rate a piece, once."""
    machine = load_machine(piece.machine)
    setup = set_up(machine, rigging=Rigging(support=piece.support), slew=piece.sector)
    mass = float(unit(MASS[system]).factor)
    return stated_chart(
        setup,
        configurations=configurations_of(machine.boom, extension=np.array(piece.extensions)),
        radii=np.array(piece.rows(system)) * float(unit(LENGTH[system]).factor),
        step=float(STEP[system]) * mass,
    )


def number(chart: Chart, row: int, column: int, *, system: str) -> Decimal | None:
    """Find a cell as it is printed, in the unit of `MASS`; None where it is blank."""
    steps = int(chart.steps[row, column])
    return steps * STEP[system] if steps > 0 else None


def table(
    chart: Chart,
    *,
    system: str,
    heads: Sequence[str],
    mark: str = "",
    caption: str = INVENTED,
) -> Table:
    """Write a chart as a table.

    Parameters
    ----------
    heads : sequence of str
        Of the columns
    mark : str
        Behind the numbers of structural cells
    caption : str
        May have a place for {mass}
    """
    foot = float(unit(LENGTH[system]).factor)
    rows = [(f"radius [{LENGTH[system]}]", *heads)]
    for row, radius in enumerate(chart.radii):
        cells = (_cell(chart, row, column, system, mark) for column in range(len(heads)))
        rows.append((f"{radius / foot:.9g}", *cells))
    return Table(rows=tuple(rows), caption=caption.format(mass=MASS[system]))


def _cell(chart: Chart, row: int, column: int, system: str, mark: str) -> str:
    """Write one cell; out of reach there is a dash."""
    found = number(chart, row, column, system=system)
    if found is None:
        return "–"
    return grouped(found, system=system) + (mark if chart.structural[row, column] else "")


def system_with(value: float, spreads: Mapping[str, Sequence[float]], *, of: str) -> str:
    """Tell the unit system from a value that only one of them offers.

    Parameters
    ----------
    value : float
        [SI]
    spreads : mapping of str to sequence of float
        Values offered, by unit system, in `of`
    of : str
        "length" or "mass"
    """
    names = LENGTH if of == "length" else MASS
    for system, offered in spreads.items():
        one = float(unit(names[system]).factor)
        if any(abs(value - one * number) < 1e-9 * value for number in offered):
            return system
    raise FamilyError(f"No unit system offers {value:g} [SI]: add it to the values offered.")
