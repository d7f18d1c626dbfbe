"""Two telescoped sections on rigid pads: closed forms, computed by two independent ways.

Outer section 0 to 5 m, clamped at 0, EI 20 MN m2; inner section 5 m long, EI 8 MN m2; 10 kN at its
head, weightless. The problem family must give the same head deflection.

Tolerance: half a unit of the last figure.

Source: Castigliano's theorem. Status: worked.
"""

import pytest

from boomsim.papers.family_registry import family_named
from boomsim.papers.problems.family import Family
from boomsim.papers.problems.problem_making import problem_with

FAMILY = family_named("deflection_two_sections")
assert isinstance(FAMILY, Family)


# Overhang and overlap [m], deflection of the head [mm].
@pytest.mark.parametrize(("overhang", "overlap", "deflection"), [(4, 1, 138.1667), (3, 2, 91.5833)])
def test_the_head_droops_as_the_closed_form_says(
    overhang: int, overlap: int, deflection: float
) -> None:
    givens = {
        "F": "10 kN", "l_0": "5 m", "a": f"{overhang} m", "c": f"{overlap} m",
        "E": "200 GPa", "I_0": "10000 cm^4", "I_1": "4000 cm^4",
    }  # fmt: skip
    assert isinstance(FAMILY, Family)
    posed = problem_with(FAMILY, givens=givens)
    assert posed.results["v"].value * 1e3 == pytest.approx(deflection, abs=5e-5)
