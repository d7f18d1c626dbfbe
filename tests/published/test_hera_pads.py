"""HERA Steel Design & Construction Bulletin 73 (New Zealand, 2003): a telescopic platform boom.

The problem family on pad forces, posed with the bulletin's numbers, gives the bulletin's answers.
The overlap of 1.70 m is inferred: it reproduces the printed reaction.

Source: HERA Bulletin 73 (2003). Status: read.
"""

from boomsim.papers.family_registry import family_named
from boomsim.papers.language.formula_markup import PLAIN
from boomsim.papers.language.formula_printing import in_numbers
from boomsim.papers.problems.family import Family
from boomsim.papers.problems.problem_making import problem_with

PADS = family_named("statics_pad_force")
assert isinstance(PADS, Family)
# Bulletin: 5.30 kN across the boom (7.50 kN at 45 degrees), 3.30 m beyond the front pad.
POSED = problem_with(PADS, givens={"F": "5.30 kN", "a": "3.30 m", "c": "1.70 m"})


def test_moment_at_the_front_pad_is_the_printed_one() -> None:
    # Bulletin: 17.5 kN m, printed to three figures, so the figures must be the same.
    assert POSED.shown("M") == "17.5\u00a0kN\u00a0m"


def test_front_pad_force_is_the_printed_one() -> None:
    # Bulletin: F (a + c)/c = 15.6 kN, printed to three figures, so the figures must be the same.
    assert POSED.shown("R_f") == "15.6\u00a0kN"


def test_worked_solution_shows_the_bulletins_numbers() -> None:
    step = PADS.steps[-1]
    line = in_numbers(step.formula, POSED.letters, PLAIN, shown=POSED.shown).replace("\u00a0", " ")
    assert line == "5.30 kN + 10.3 kN"  # 17.49 kN m / 1.70 m = 10.29 kN, by hand
