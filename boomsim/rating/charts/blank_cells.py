"""Why cells of a chart are blank: each reason with its sign and its words, kept in one place."""

from dataclasses import dataclass

import numpy as np

from boomsim.machine.model import Machine
from boomsim.rating.charts.rated_cells import Cells
from boomsim.rating.charts.rows_and_rounding import whole_steps
from boomsim.rating.empty_hook.empty_hook_sentences import under_hook_words
from boomsim.rating.longest_boom import too_long


@dataclass(frozen=True, slots=True, kw_only=True)
class Reason:
    """Why a cell is blank.

    Attributes
    ----------
    key : str
        For other programs
    sign : str
        In the cell; nothing where the boom cannot be
    words : str
        In a legend
    """

    key: str
    sign: str
    words: str


PRINTED = -1
"""No reason: the cell holds a figure."""

LESS, UNDER_HOOK, TURNS_OVER, NO_REACH, TOO_LONG = range(5)
"""Places in `REASONS`; of several ways of one column the first of these counts. Those from
`NO_REACH` on say that the boom is not there at all."""

REASONS = (
    Reason(
        key="less than farther out",
        sign="<",
        words="less is rated here than farther out, and a chart never falls inwards",
    ),
    Reason(
        key="under the hook",
        sign="–",
        words="less is rated here than hook block, slings and rope weigh",
    ),
    Reason(
        key="turns over",
        sign="×",
        words="the crane turns over with its empty hook",
    ),
    Reason(key="out of reach", sign="", words="the boom cannot be there"),
    Reason(key="too long on tyres", sign="L", words="on tyres the boom may not be so long"),
)


def reasons_of_cells(cells: Cells, *, step: float) -> np.ndarray:
    """Why cells of configurations are blank, each by itself.

    Parameters
    ----------
    cells : Cells
    step : float
        Capacities are rounded down to it [kg]

    Returns
    -------
    ndarray of int, shape (configurations, rows)
        Index into `REASONS`; `PRINTED` where there is a figure
    """
    steps = whole_steps(cells.capacity, step=step)
    least = np.maximum(cells.hanging, step)
    reasons = np.where(steps * step >= least, PRINTED, UNDER_HOOK)
    lies = cells.empty_hook.lies_over(radius=cells.radii[:, None]).T
    reasons = np.where(lies & (reasons == UNDER_HOOK), TURNS_OVER, reasons)
    reasons = np.where(steps < 0, NO_REACH, reasons)
    beyond = too_long(cells.setup, length=cells.configurations.length)
    return np.where(beyond[:, None], TOO_LONG, reasons)


def falls_inwards(steps: np.ndarray) -> np.ndarray:
    """Rows of a column that hold less than one farther out.

    No way of the column lifts there what the column says farther out, so that the outer figure
    cannot be carried inwards.

    Parameters
    ----------
    steps : ndarray of int, shape (rows,)
        Most of all ways, -1 where blank
    """
    outer = np.maximum.accumulate(steps[::-1])[::-1]
    return np.asarray((steps >= 0) & (steps < outer))


def words_of(reason: Reason, machine: Machine) -> str:
    """Words of a reason, for a machine that may have neither hook block, slings nor rope weight."""
    return under_hook_words(machine) if reason is REASONS[UNDER_HOOK] else reason.words
