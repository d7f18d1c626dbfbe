"""What the foot of a chart tells: why its cells are blank."""

import numpy as np

from boomsim.rating.charts.blank_cells import REASONS, Reason
from boomsim.rating.charts.load_chart import Chart


def reasons_told(chart: Chart) -> tuple[Reason, ...]:
    """Reasons for which cells of a chart are blank, each once."""
    return tuple(REASONS[k] for k in np.unique(chart.blank[chart.blank >= 0]))
