"""Where a chart of best configurations changes from one to the next."""

from dataclasses import dataclass

import numpy as np

from boomsim.rating.charts.load_chart import Chart


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """Rows `first` to `last` of a column that use one configuration."""

    first: int
    last: int
    configuration: int


def runs(chart: Chart, column: int) -> tuple[Run, ...]:
    """Follow a column downwards: which configuration it uses from where to where.

    Returns
    -------
    tuple of Run
        Blank rows belong to none
    """
    used = chart.used[:, column]
    starts = np.flatnonzero(np.concatenate([[True], np.diff(used) != 0]))
    ends = np.concatenate([starts[1:], [len(used)]]) - 1
    return tuple(
        Run(first=int(a), last=int(b), configuration=int(used[a]))
        for a, b in zip(starts, ends, strict=True)
        if used[a] >= 0
    )


def first_rows(chart: Chart, column: int) -> dict[int, list[int]]:
    """Tell from which rows on a column uses each of its configurations.

    Returns
    -------
    dict
        From configuration, in the order of radius, to rows; of runs that blank cells alone part
        the first
    """
    found: dict[int, list[int]] = {}
    before = -1
    for run in runs(chart, column):
        if run.configuration != before:
            found.setdefault(run.configuration, []).append(run.first)
        before = run.configuration
    return found
