"""HERA Steel Design & Construction Bulletin 73 (New Zealand, 2003): a telescopic platform boom.

The problem families, posed with the bulletin's numbers, give its parts of a force, its shear stress
by torsion and its uses of the bending capacity. The section moduli are the printed capacities at
yield over the yield stress.

Source: HERA Bulletin 73 (2003). Status: read.
"""

from boomsim.papers.family_registry import family_named
from boomsim.papers.problems.family import Family
from boomsim.papers.problems.problem import Problem
from boomsim.papers.problems.problem_making import problem_with

USE = family_named("strength_bending_use")
assert isinstance(USE, Family)


def posed(force: str, modulus: str) -> Problem:
    """Bulletin: 3.30 m beyond the front pad, grade C350, 0.60 of the capacity at yield allowed."""
    givens = {"F": force, "a": "3.30 m", "W_y": modulus, "f_y": "350 MPa", "alpha": "60 %"}
    assert isinstance(USE, Family)
    return problem_with(USE, givens=givens)


def test_in_the_luffing_plane_moment_and_utilisation_are_the_printed_ones() -> None:
    # Bulletin: 5.30 kN across, 17.5 kN m; M_sx 62.8 kN m at 350 MPa is 179.4 cm3;
    # utilisation 0.464.
    made = posed("5.30 kN", "179.4 cm^3")
    assert made.shown("M") == "17.5\u00a0kN\u00a0m"
    assert made.shown("u") == "46.4\u00a0%"


def test_sideways_moment_and_utilisation_are_the_printed_ones() -> None:
    # Bulletin: 1.30 kN sideways; M_sy 31.6 kN m at 350 MPa is 90.29 cm3; utilisation
    # 0.226. It prints 4.30 kN m for 1.30 x 3.30 = 4.29, and its use follows from 4.29.
    made = posed("1.30 kN", "90.29 cm^3")
    assert made.shown("M") == "4.29\u00a0kN\u00a0m"
    assert made.shown("u") == "22.6\u00a0%"


def test_the_parts_of_7_50_kn_at_45_degrees_are_the_printed_ones() -> None:
    # Bulletin: 5.30 kN across and 5.30 kN along, three figures.
    parts = family_named("statics_load_parts")
    assert isinstance(parts, Family)
    made = problem_with(parts, givens={"Q": "7.50 kN", "theta": "45 deg"})
    assert made.shown("F") == "5.30\u00a0kN"


def test_the_torque_shears_the_wall_as_printed() -> None:
    # Bulletin: 200 x 100 x 5, A_e 18.5e-3 m2, M_z 2.30 kN m, 12.4 MPa: three figures each.
    torsion = family_named("strength_torsion")
    assert isinstance(torsion, Family)
    givens = {"T": "2.30 kN*m", "w": "100 mm", "h": "200 mm", "t": "5 mm"}
    made = problem_with(torsion, givens=givens)
    assert made.shown("A_e") == "185\u00a0cm²"
    assert made.shown("tau") == "12.4\u00a0MPa"
