"""Columns of charts with what stability allows and what all else allows, cell by cell.

Each column is rated twice, once with the limits of stability alone and once with all others; the
call path, which knows all limits at once, says where stability sets the figure.
"""

from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from boomsim.machine.machine_files import load_machine
from boomsim.papers.check_models.question_charts import LENGTH, MASS, STEP
from boomsim.papers.numbers.printed_units import METRIC, US, unit
from boomsim.rating.capacity import rate
from boomsim.rating.limits.limit_kind import STABILITY
from boomsim.rating.setup import Setup, set_up
from boomsim.rating.strategies import label

ROWS = {METRIC: (4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 12.0, 14.0, 16.0),
        US: (13.0, 16.0, 20.0, 23.0, 26.0, 30.0, 34.0, 40.0, 46.0, 52.0)}  # fmt: skip
"""Radii, in the unit of `LENGTH`."""

MACHINES = {
    "yard60": (
        (0.0, 0.0, 0.0, 0.9), (0.0, 0.0, 0.0, 1.0), (0.0, 0.0, 0.9, 0.0), (0.0, 0.45, 0.45, 0.0),
        (0.0, 0.45, 0.45, 0.45), (0.45, 0.0, 0.0, 0.45), (1.0, 0.0, 0.0, 1.0),
    ),
    "truck18": (
        (0.35, 0.35, 0.35), (0.4, 0.4, 0.4), (0.55, 0.55, 0.55), (0.65, 0.65, 0.65),
        (0.6, 0.6, 0.0), (1.0, 0.75, 0.0), (1.0, 1.0, 0.0),
    ),
}  # fmt: skip
"""Extensions through whose column of the chart the bold line goes [1]."""

COLUMNS = tuple((name, one) for name, extensions in MACHINES.items() for one in extensions)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class BoldColumn:
    """One column. Arrays have the shape (rows,).

    Attributes
    ----------
    words : str
        "0, 0, 45, 45 %"
    stability, others : ndarray of int
        What each allows, rounded down [steps of the chart]; below one where it is out of reach
    stands : ndarray of bool
        Whether stability sets the figure, by all limits at once
    """

    words: str
    stability: np.ndarray
    others: np.ndarray
    stands: np.ndarray


@lru_cache(maxsize=64)
def bold_column(number: int, system: str) -> BoldColumn:
    """Rate a column, once.

    Parameters
    ----------
    number : int
        In `COLUMNS` [1]
    """
    name, extension = COLUMNS[number]
    setup = set_up(load_machine(name))
    radius = np.array(ROWS[system]) * float(unit(LENGTH[system]).factor)
    whole = rate(setup, extension=np.array([extension]), radius=radius)
    tips = tuple(kind for kind in setup.kinds if kind.set_by == STABILITY)
    rest = tuple(kind for kind in setup.kinds if kind.set_by != STABILITY)
    return BoldColumn(
        words=f"{label(np.array(extension))} %",
        stability=_steps(replace(setup, kinds=tips), extension, radius, system),
        others=_steps(replace(setup, kinds=rest), extension, radius, system),
        stands=whole.is_stability[0],
    )


def _steps(
    setup: Setup, extension: tuple[float, ...], radius: np.ndarray, system: str
) -> np.ndarray:
    """What some of the limits allow, rounded down [steps of the chart]."""
    capacity = rate(setup, extension=np.array([extension]), radius=radius).capacity[0]
    step = float(STEP[system]) * float(unit(MASS[system]).factor)
    return np.asarray(np.floor(np.nan_to_num(capacity) / step + 1e-9), dtype=int)


def last_row(column: BoldColumn) -> int:
    """Find the last row that stability does not set [1]."""
    return int(np.flatnonzero(~column.stands & (column.others > 0)).max())
