"""EN 1993-1-5:2006 with corrigendum AC:2009, 4.4(2) and Table 4.1: internal plates.

The problem families on slenderness and effective width, posed with plates worked by hand from the
standard's formulas (read in documents that quote it).

Tolerances: half a unit of the last worked figure.

Source: EN 1993-1-5:2006. Status: second-hand.
"""

import pytest

from boomsim.papers.family_registry import family_named
from boomsim.papers.problems.family import Family
from boomsim.papers.problems.problem import Problem
from boomsim.papers.problems.problem_making import problem_with

WIDTH = family_named("strength_effective_width")
SLENDERNESS = family_named("strength_plate_slenderness")
assert isinstance(WIDTH, Family)
assert isinstance(SLENDERNESS, Family)


def pressed(width: int, *, steel: int, ratio: str) -> Problem:
    """A plate 5 mm thick [mm], [MPa], [1]."""
    plate = {"b": f"{width} mm", "t": "5 mm", "f_y": f"{steel} MPa"}
    assert isinstance(WIDTH, Family)
    return problem_with(WIDTH, givens={**plate, "f_0": "235 MPa", "psi": ratio})


# b [mm] at t = 5 mm, f_y [MPa]; slenderness and share, worked to four decimals.
WORKED = ((300, 355, 1.2983, 0.6397), (250, 690, 1.5084, 0.5663), (200, 960, 1.4234, 0.5940))


@pytest.mark.parametrize(("width", "steel", "slenderness", "share"), WORKED)
def test_an_evenly_pressed_plate_keeps_the_share_of_eq_4_2(
    width: int, steel: int, slenderness: float, share: float
) -> None:
    results = pressed(width, steel=steel, ratio="1").results
    assert results["lambda_p"].value == pytest.approx(slenderness, abs=6e-5)
    assert results["rho"].value == pytest.approx(share, abs=6e-5)
    assert results["b_e"].value == pytest.approx(share * width / 1e3, rel=1e-4)


# Table 4.1; 8.2/1.05 is 7.8095, which the table rounds to 7.81.
@pytest.mark.parametrize(("ratio", "factor"), [("1", 4.0), ("0.5", 5.2903), ("0", 7.81)])
def test_buckling_factor_is_that_of_table_4_1(ratio: str, factor: float) -> None:
    results = pressed(500, steel=690, ratio=ratio).results
    assert results["k"].value == pytest.approx(factor, rel=1e-4)


def test_a_web_in_bending_is_as_slender_as_worked() -> None:
    # b/t 100, f_y 690 MPa, stress ratio -1 with k = 23.9: 1.2342, worked.
    givens = {"b": "500 mm", "t": "5 mm", "f_y": "690 MPa", "f_0": "235 MPa", "k": "23.9"}
    assert isinstance(SLENDERNESS, Family)
    posed = problem_with(SLENDERNESS, givens=givens)
    assert posed.results["lambda_p"].value == pytest.approx(1.2342, abs=6e-5)
