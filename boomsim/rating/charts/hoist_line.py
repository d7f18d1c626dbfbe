"""What the hoist line allows: a limit beside the cells of a chart."""

import numpy as np

from boomsim.mechanics.external_loads import GRAVITY, tackle_advantage
from boomsim.rating.charts.load_chart import Chart
from boomsim.rating.charts.rows_and_rounding import whole_steps


def line_limit(chart: Chart, *, parts: int) -> float:
    """Gross load that the rope carries, rounded down to the chart's step.

    Permissible line pull x advantage of the tackle / g.

    Parameters
    ----------
    chart : Chart
    parts : int
        Parts of line [1]

    Returns
    -------
    float
        [kg]
    """
    hoist = chart.setup.machine.hoist
    if parts not in hoist.parts:
        offered = ", ".join(str(p) for p in hoist.parts)
        raise ValueError(f"{parts} parts of line cannot be reeved here. Choose one of {offered}.")
    advantage = tackle_advantage(parts, sheave_efficiency=hoist.sheave_efficiency)
    carried = np.array(hoist.line_pull * advantage / GRAVITY)
    return float(whole_steps(carried, step=chart.step) * chart.step)


def fewest_parts(chart: Chart, *, gross: float) -> int | None:
    """Fewest parts of line that carry a gross load.

    Parameters
    ----------
    chart : Chart
    gross : float
        [kg]

    Returns
    -------
    int or None
        None where no reeving of this machine does
    """
    enough = [p for p in chart.setup.machine.hoist.parts if line_limit(chart, parts=p) >= gross]
    return min(enough, default=None)
