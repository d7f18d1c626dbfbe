"""HERA Steel Design & Construction Bulletin 73 (New Zealand, 2003): a telescopic platform boom.

The problem family on bending stress, posed with the bulletin's numbers, gives its uses of the
bending capacity. The section moduli are the printed capacities at yield over the yield stress.
"""

from boomsim.papers.family import Family
from boomsim.papers.problem import Problem, problem_with
from boomsim.papers.registry import family_named

USE = family_named("strength_bending_use")
assert isinstance(USE, Family)


def posed(force: str, modulus: str) -> Problem:
    """Bulletin: 3.30 m beyond the front pad, grade C350, 0.60 of the capacity at yield allowed."""
    givens = {"F": force, "a": "3.30 m", "W_y": modulus, "f_y": "350 MPa", "alpha": "60 %"}
    assert isinstance(USE, Family)
    return problem_with(USE, givens=givens)


def test_in_the_luffing_plane_moment_and_use_are_the_printed_ones() -> None:
    # Bulletin: 5.30 kN across, 17.5 kN m; M_sx 62.8 kN m at 350 MPa is 179.4 cm3; use 0.464.
    made = posed("5.30 kN", "179.4 cm^3")
    assert made.shown("M") == "17.5\u00a0kN\u00a0m"
    assert made.shown("u") == "46.4\u00a0%"


def test_sideways_moment_and_use_are_the_printed_ones() -> None:
    # Bulletin: 1.30 kN sideways; M_sy 31.6 kN m at 350 MPa is 90.29 cm3; use 0.226. It prints
    # 4.30 kN m for 1.30 x 3.30 = 4.29, and its use follows from 4.29.
    made = posed("1.30 kN", "90.29 cm^3")
    assert made.shown("M") == "4.29\u00a0kN\u00a0m"
    assert made.shown("u") == "22.6\u00a0%"
