"""Drawing the bold line: the printed table alone decides, and the rating with all limits agrees."""

import itertools

import numpy as np
import pytest

from boomsim.machine.machine_files import load_machine
from boomsim.papers.check_models.bold_line_columns import COLUMNS
from boomsim.papers.families.charts_bold_line import FAMILY
from boomsim.papers.marking.mark_question import mark_question
from boomsim.papers.paper import Question
from boomsim.papers.problems.problem_making import make_problem
from boomsim.rating.capacity import rate
from boomsim.rating.setup import set_up

SYSTEMS = ("metric", "us")
SEEDS = [*itertools.product(range(25), SYSTEMS)]


def by_eye(rows: tuple[tuple[str, ...], ...], column: int) -> str:
    """Radius of the last row in which the smaller of two printed figures is not stability's."""
    above = ""
    for radius, *cells in rows[1:]:
        stability, others = (
            float(cell.replace("\u202f", "").replace(",", ""))
            for cell in cells[2 * column : 2 * column + 2]
        )
        if others < stability:
            above = radius
    return above


@pytest.mark.parametrize(("seed", "system"), SEEDS)
def test_the_line_is_where_the_printed_figures_say(seed: int, system: str) -> None:
    problem = make_problem(FAMILY, seed=str(seed), system=system)
    assert problem.table is not None
    answers = [by_eye(problem.table.rows, column) for column in range(3)]
    printed = [float(problem.results[name].number) for name in ("R_A", "R_B", "R_C")]
    assert [float(one) for one in answers] == printed
    assert len(set(answers)) == 3
    for row in problem.table.rows[1:]:
        assert "–" not in row


@pytest.mark.parametrize(("seed", "system"), SEEDS[::5])
def test_the_rating_with_all_limits_at_once_changes_there_too(seed: int, system: str) -> None:
    """The smaller of the two figures is the rated capacity itself, and so is what sets it."""
    problem = make_problem(FAMILY, seed=str(seed), system=system)
    assert problem.table is not None
    foot, mass, step = {"metric": (1.0, 1000.0, 0.05), "us": (0.3048, 0.45359237, 100.0)}[system]
    for place, (answer, number) in enumerate(zip("abc", ("k_1", "k_2", "k_3"), strict=True)):
        machine, extension = COLUMNS[round(problem.values[number])]
        radii = np.array([float(row[0]) for row in problem.table.rows[1:]]) * foot
        whole = rate(set_up(load_machine(machine)), extension=np.array([extension]), radius=radii)
        above = radii <= problem.values[answer] + 1e-6
        assert whole.is_stability[0].tolist() == (~above).tolist()
        for row, capacity in zip(problem.table.rows[1:], whole.capacity[0] / mass, strict=True):
            cells = row[1 + 2 * place : 3 + 2 * place]
            smaller = min(float(one.replace("\u202f", "").replace(",", "")) for one in cells)
            # Capacities are good to some 1e-6 of themselves: at the edge of a step either is right.
            assert smaller - 1e-4 * capacity <= capacity < smaller + step + 1e-4 * capacity


def test_each_column_has_a_mark_of_its_own_and_its_slips_are_named() -> None:
    drawn = (make_problem(FAMILY, seed=str(seed)) for seed in range(99))
    # The line in A ends highest, and more than a row above that in C: each slip has its own radius.
    problem = next(
        one for one in drawn if one.values["a"] < min(one.values[n] for n in ("b", "c_1"))
    )
    question = Question(number=1, problem=problem)
    assert question.labels == ("1a", "1b", "1c") and question.marks == 3
    right = {label: problem.shown(name) for label, name in
             zip(question.labels, ("R_A", "R_B", "R_C"), strict=True)}  # fmt: skip
    assert mark_question(question, right, sign="").marks == 3
    below = right | {"1b": problem.shown("b_2")}
    mark = mark_question(question, below, sign="")
    assert mark.marks == 2
    assert mark.slips == ("named the first row of B that stability sets, below the line",)
    straight = right | {"1c": right["1a"]}
    assert mark_question(question, straight, sign="").marks == 2


def test_the_line_ends_in_many_rows_of_both_machines() -> None:
    problems = [make_problem(FAMILY, seed=str(seed)) for seed in range(60)]
    assert len({one.shown("R_A") for one in problems}) >= 4
    machines = {COLUMNS[round(one.values["k_1"])][0] for one in problems}
    assert machines == {"truck18", "yard60"}
