"""What the hoist line allows: a limit beside the cells of a chart."""

import numpy as np

from boomsim.gravity import GRAVITY
from boomsim.mechanics.rope_reach import parts_reached
from boomsim.mechanics.rope_tackle import tackle_advantage
from boomsim.rating.charts.load_chart import Chart
from boomsim.rating.charts.rows_and_rounding import whole_steps
from boomsim.rating.parts_reeved import reeved
from boomsim.units import show


def line_limit(chart: Chart, *, parts: int) -> float:
    """Gross load that the rope carries, rounded down to the chart's step [kg].

    Permissible line pull x advantage of the tackle / g.

    Parameters
    ----------
    parts : int
        Parts of line [1]
    """
    hoist = chart.setup.machine.hoist
    if parts not in hoist.parts:
        offered = ", ".join(str(p) for p in hoist.parts)
        raise ValueError(f"{parts} parts of line cannot be reeved here. Choose one of {offered}.")
    advantage = tackle_advantage(parts, sheave_efficiency=hoist.sheave_efficiency)
    carried = np.array(hoist.line_pull * advantage / GRAVITY)
    return float(whole_steps(carried, step=chart.step) * chart.step)


def parts_of_column(chart: Chart, *, column: int, parts: int | None = None) -> int:
    """Parts of line that the boom of a column is reeved in.

    Parameters
    ----------
    parts : int, optional
        Wanted; default: those of the chart, or as many as the rope reaches for [1]

    Raises
    ------
    ValueError
        If the rope on the drum does not reach for the parts that are wanted.
    """
    length = float(chart.length[column])
    if parts is None:
        return int(reeved(chart.setup, length=[length])[0])
    machine = chart.setup.machine
    most = parts_reached(machine, length=[length])[0]
    if parts > most:
        assert machine.hoist.rope_length is not None
        raise ValueError(
            f"{parts} parts of line cannot be reeved with {show(length, 'boom_length')} of boom: "
            f"{show(machine.hoist.rope_length, 'length')} of rope on the drum reach for "
            f"{most:.0f}, if the hook is to come down to the ground. Choose {most:.0f} or fewer."
        )
    return parts


def fewest_parts(chart: Chart, *, gross: float, column: int | None = None) -> int | None:
    """Fewest parts of line that carry a gross load.

    Parameters
    ----------
    gross : float
        [kg]
    column : int, optional
        Of the boom, where only so many count as its rope reaches for

    Returns
    -------
    int or None
        None where no reeving of this machine does
    """
    machine, most = chart.setup.machine, np.inf
    if column is not None:
        most = parts_reached(machine, length=[float(chart.length[column])])[0]
    offered = [p for p in machine.hoist.parts if p <= most]
    enough = [p for p in offered if line_limit(chart, parts=p) >= gross]
    return min(enough, default=None)
