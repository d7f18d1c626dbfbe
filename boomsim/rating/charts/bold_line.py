"""The bold line: the edges of a chart's cells at which stability stops setting the figures."""

from collections import defaultdict

import numpy as np

from boomsim.rating.charts.load_chart import Chart

Corner = tuple[int, int]
"""A corner of cells: (row, column) of the cell below and to the right of it."""

Edge = tuple[Corner, Corner]
"""From one corner to the next, rightwards or downwards."""


def bold_edges(chart: Chart) -> frozenset[Edge]:
    """All edges between a structural and a stability cell, and no others.

    Returns
    -------
    frozenset of Edge
        Blank cells have none
    """
    return edges_between(chart.structural, rated=chart.rated)


def edges_between(structural: np.ndarray, *, rated: np.ndarray) -> frozenset[Edge]:
    """Edges at which neighbours that are both rated differ in family.

    Parameters
    ----------
    structural, rated : ndarray of bool, shape (rows, columns)
    """
    family = np.where(rated, np.where(structural, 1, -1), 0)
    below = np.argwhere(family[:-1] * family[1:] < 0)
    beside = np.argwhere(family[:, :-1] * family[:, 1:] < 0)
    lying = [((int(r) + 1, int(c)), (int(r) + 1, int(c) + 1)) for r, c in below]
    upright = [((int(r), int(c) + 1), (int(r) + 1, int(c) + 1)) for r, c in beside]
    return frozenset(lying + upright)


def paths(edges: frozenset[Edge]) -> tuple[tuple[Corner, ...], ...]:
    """Join edges end to end into lines, so that they can be drawn with whole corners.

    Returns
    -------
    tuple of tuple of Corner
        Every edge is in one line, once; the first lines are those with loose ends
    """
    beside: dict[Corner, set[Corner]] = defaultdict(set)
    for start, end in edges:
        beside[start].add(end)
        beside[end].add(start)
    found = []
    loose = sorted(corner for corner, near in beside.items() if len(near) % 2)
    for start in [*loose, *sorted(beside)]:
        while beside[start]:
            found.append(tuple(_walk(beside, start)))
    return tuple(found)


def _walk(beside: dict[Corner, set[Corner]], start: Corner) -> list[Corner]:
    """Go on from corner to corner, taking each edge away, until none is left here."""
    line = [start]
    while beside[line[-1]]:
        here = line[-1]
        there = min(beside[here])
        beside[here].remove(there)
        beside[there].remove(here)
        line.append(there)
    return line


def crossings(chart: Chart) -> np.ndarray:
    """How often the bold line is crossed on the way down each column.

    Returns
    -------
    ndarray of int, shape (columns,)
    """
    family = np.where(chart.rated, np.where(chart.structural, 1, -1), 0)
    return np.asarray(np.sum(family[:-1] * family[1:] < 0, axis=0))
