"""Published figures on stability, answered by the problem families they belong to.

ISO 4305 (from memory; arithmetic computed): T 88.636 kN, F 34.286 kN give a rated load of
68.166 kN by test load, and 75.341 kN as 85 % (ASME B30.5). Hibbeler, Statics, 14th edition, 5-26
(from memory): a truck crane tips at 70.3 degrees from the vertical. Published outrigger guidance
(read): 186000 lb on a round 24 in pad press 411 psi.

Tolerances: half a unit of the last printed figure, else rounding.

Source: ISO 4305. Status: from memory.
"""

from math import degrees, pi

import pytest

from boomsim.papers.family_registry import family_named
from boomsim.papers.problems.problem import Problem
from boomsim.papers.problems.problem_making import problem_with


def posed(name: str, *, system: str = "metric", **givens: str) -> Problem:
    """The family with the source's numbers; its call path is asked too, and must agree."""
    return problem_with(family_named(name), givens=givens, system=system)


def test_iso_4305_rates_68_166_kn_by_test_load() -> None:
    # A boom of 80 kN with its centre at 6/14 of its length has F = 34.2857 kN.
    found = posed(
        "stability_rated_by_test_load", T="88.636 kN", G="80 kN", L="14 m", a="6 m"
    ).results
    assert found["F"].value == pytest.approx(34.286e3, abs=0.5)
    assert found["P"].value == pytest.approx(68.166e3, abs=0.5)
    assert found["k"].value < 0.80
    assert found["P"].text() == "68.16\u00a0kN"  # 68.166: a rated load is never rounded up


def test_85_percent_of_the_same_tipping_load_are_75_341_kn() -> None:
    # A righting moment of 886.36 at a lever arm of 10 tips at 88.636, whatever the unit.
    # Source: ASME B30.5. Status: second-hand.
    givens = {"M": "886.36 t*m", "d": "3 m", "R": "13 m", "f": "85 %", "f_1": "75 %"}
    found = posed("stability_rated_by_share", **givens).results
    assert found["T"].value == pytest.approx(88.636e3, rel=1e-9)
    assert found["P"].value == pytest.approx(75.341e3, abs=0.5)


def test_asme_b30_5_rates_75_percent_on_tyres() -> None:
    # Source: ASME B30.5. Status: second-hand.
    givens = {"M": "886.36 t*m", "d": "3 m", "R": "13 m", "f": "75 %", "f_1": "85 %"}
    found = posed("stability_rated_by_share", **givens).results
    assert found["P"].value == pytest.approx(0.75 * 88.636e3, rel=1e-9)


def test_hibbelers_truck_crane_tips_at_70_3_degrees_from_the_vertical() -> None:
    # Truck 18 Mg, centre 1 m inside the outriggers; boom 1.8 Mg, foot 2 m inside, centre at 6 m;
    # load 1.2 Mg at 12.25 m. 70.25 degrees may be rounded either way. The family asks for the
    # angle above horizontal. Source: Hibbeler, Statics.
    found = posed(
        "stability_tipping_angle",
        m="18 t", x="1 m", m_b="1.8 t", f="2 m", a="6 m", P="1.2 t", L="12.25 m",
    ).results  # fmt: skip
    assert 90.0 - degrees(found["theta"].value) == pytest.approx(70.3, abs=0.06)


def test_a_24_inch_pad_under_186000_pounds_presses_411_psi() -> None:
    # 186000/452.39 = 411.15, printed without decimals.
    # Source: Published outrigger guidance. Status: read.
    found = posed("stability_ground_pressure", system="us", F="186000 lbf", D="24 in").results
    assert float(found["A"].number) == pytest.approx(pi / 4 * 24**2, rel=1e-3)
    assert found["p"].text(system="us") == "411\u00a0psi"


@pytest.mark.parametrize(("x", "y"), [(1.0, 0.5), (0.3, 1.6), (1.4, 0.2)])
def test_floats_share_by_the_standard_formula(x: float, y: float) -> None:
    # Standard statics: V/4 + V ex/(2 Lx) + V ey/(2 B), Lx and B from float to float.
    # Source: Plain geometry and statics. Status: worked.
    found = posed(
        "stability_float_reactions", V="600 kN", L_x="7 m", B="6 m", e_x=f"{x} m", e_y=f"{y} m"
    ).results
    by_hand = 600e3 / 4 + 600e3 * x / (2 * 7) + 600e3 * y / (2 * 6)
    assert found["F"].value == pytest.approx(by_hand, rel=1e-12)


def test_square_on_the_diagonal_a_float_comes_up_when_the_resultant_is_halfway_to_the_corner() -> (
    None
):
    # Standard statics: ex/Lx + ey/B = 1/2, so halfway to the corner on a square base; the crane
    # tips about a side when the resultant reaches it.
    # Source: Plain geometry and statics. Status: worked.
    found = posed(
        "stability_one_float_up", m="40 t", L_x="6 m", B="6 m", psi="45 deg", R="10 m"
    ).results
    lifted, tipped = found["P"].value, found["T"].value
    out = 10.0 * lifted / (40e3 + lifted)
    assert out * 2**0.5 == pytest.approx(3.0, rel=1e-12)
    assert 10.0 * tipped / (40e3 + tipped) * 0.5**0.5 == pytest.approx(3.0, rel=1e-12)
