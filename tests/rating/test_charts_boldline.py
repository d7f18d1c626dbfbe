"""The bold line: all edges between the families, no others, joined into whole lines."""

from collections import Counter
from itertools import pairwise

import numpy as np
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra import numpy as hnp

from boomsim.machine.machine_files import load_machine
from boomsim.rating.charts.bold_line import bold_edges, crossings, edges_between, paths
from boomsim.rating.charts.load_chart import best_chart
from boomsim.rating.setup import set_up

GRIDS = hnp.arrays(
    np.int8,
    st.tuples(st.integers(1, 7), st.integers(1, 7)),
    elements=st.integers(-1, 1),
)
"""1 structural, 0 stability, -1 blank."""


def by_hand(grid):
    """Every pair of neighbours looked at by itself; a set of unordered pairs of corners."""
    found = set()
    rows, columns = grid.shape
    for r in range(rows):
        for c in range(columns):
            for dr, dc in ((1, 0), (0, 1)):
                if r + dr >= rows or c + dc >= columns:
                    continue
                pair = {int(grid[r, c]), int(grid[r + dr, c + dc])}
                if pair == {0, 1}:
                    ends = ((r + 1, c), (r + 1, c + 1)) if dr else ((r, c + 1), (r + 1, c + 1))
                    found.add(frozenset(ends))
    return found


@given(GRIDS)
def test_edges_are_all_and_only_those_between_the_families(grid):
    edges = edges_between(grid == 1, rated=grid >= 0)
    assert {frozenset(edge) for edge in edges} == by_hand(grid)
    assert len(edges) == len(by_hand(grid))


@given(GRIDS)
def test_lines_run_over_every_edge_once(grid):
    edges = edges_between(grid == 1, rated=grid >= 0)
    drawn = Counter(frozenset(step) for line in paths(edges) for step in pairwise(line))
    assert drawn == Counter({frozenset(edge): 1 for edge in edges})


@given(GRIDS)
def test_lines_have_no_more_loose_ends_than_they_must(grid):
    # A corner where an odd number of edges meet is an end of some line; two ends to a line.
    edges = edges_between(grid == 1, rated=grid >= 0)
    meet = Counter(corner for edge in edges for corner in edge)
    odd = {corner for corner, count in meet.items() if count % 2}
    open_lines = [line for line in paths(edges) if line[0] != line[-1]]
    assert len(open_lines) == len(odd) // 2
    assert {end for line in open_lines for end in (line[0], line[-1])} == odd


def test_one_family_alone_has_no_line():
    assert edges_between(np.ones((4, 3), bool), rated=np.ones((4, 3), bool)) == frozenset()


def test_blank_cells_part_nothing():
    structural = np.array([[True], [False], [False]])
    rated = np.array([[True], [False], [True]])
    assert edges_between(structural, rated=rated) == frozenset()


def test_a_staircase_by_hand():
    # S S t     the line goes down after two columns, left below the first row,
    # S t t     down after one, and left below the second.
    # t t t
    grid = np.array([[1, 1, 0], [1, 0, 0], [0, 0, 0]])
    (line,) = paths(edges_between(grid == 1, rated=grid >= 0))
    staircase = [(0, 2), (1, 2), (1, 1), (2, 1), (2, 0)]
    assert list(line) in (staircase, staircase[::-1])


def test_the_line_of_a_built_in_machine_parts_what_the_rating_says():
    chart = best_chart(set_up(load_machine("truck18")))
    edges = bold_edges(chart)
    assert edges
    for (r, c), (r2, c2) in edges:
        lying = r == r2
        one, two = ((r - 1, c), (r, c)) if lying else ((r, c - 1), (r, c))
        assert (r2, c2) == ((r, c + 1) if lying else (r + 1, c))
        families = {chart.limit(*cell).set_by for cell in (one, two)}
        assert "stability" in families and len(families) == 2


def test_crossings_count_the_changes_down_a_column():
    chart = best_chart(set_up(load_machine("truck18")))
    lying = Counter(c for (r, c), (r2, _) in bold_edges(chart) if r == r2)
    assert crossings(chart).tolist() == [lying[c] for c in range(len(chart.length))]
