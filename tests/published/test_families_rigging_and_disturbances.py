"""Published figures on rigging, wind, dynamics and level, answered by their problem families.

Pipeline Rules of Thumb Handbook (read): four parts with sheaves of efficiency 0.917 gain 3.236 (the
book prints 3.25). Wire-rope handbooks (formula from memory): lead-line factors for K 1.04 and 1.09.
ISO 4302: q = 0.613 v2. EN 13001-2 / FEM 1.001 booklet 9 (read second-hand): hoisting factors.
Geometry: a head 30 m up moves out by 0.524 m when the crane leans by one degree.

Source: Pipeline Rules of Thumb Handbook. Status: read.
"""

import pytest

from boomsim.papers.families import rigging_rope_reaches
from boomsim.papers.family_registry import family_named
from boomsim.papers.numbers.dice import Chance
from boomsim.papers.problems.problem import Problem
from boomsim.papers.problems.problem_making import problem_with


def posed(name: str, **givens: str) -> Problem:
    """The family with the source's numbers; its call path is asked too, and must agree."""
    return problem_with(family_named(name), givens=givens)


def test_four_parts_with_sheaves_of_0_917_gain_3_236() -> None:
    # Half a unit of the last figure; the pull has it from the gain.
    found = posed("rigging_lead_line_pull", W="100 kN", N="4", E="91.7 %").results
    assert found["A"].value == pytest.approx(3.236, abs=5e-4)
    # The book's 3.25 comes from a table of its own: 0.5 %.
    assert found["A"].value == pytest.approx(3.25, rel=5e-3)
    assert found["F"].value == pytest.approx(100e3 / 3.236, rel=2e-4)


LEAD_LINE = {2: 0.5302, 3: 0.3603, 4: 0.2755, 5: 0.2246, 6: 0.1908, 7: 0.1666, 8: 0.1485}


@pytest.mark.parametrize(("parts", "factor"), LEAD_LINE.items())
def test_lead_line_factors_for_k_1_04(parts: int, factor: float) -> None:
    # K is the friction of a sheave, so its efficiency is 1/1.04; four decimals are printed.
    # Source: Wire-rope handbooks. Status: from memory.
    found = posed("rigging_lead_line_pull", W="1 kN", N=f"{parts}", E="0.961538461538").results
    assert found["F"].value / 1e3 == pytest.approx(factor, abs=6e-5)


def test_the_lead_line_factor_for_k_1_09_and_four_parts_is_0_3087() -> None:
    # Four decimals are printed. Source: Wire-rope handbooks. Status: from memory.
    found = posed("rigging_lead_line_pull", W="1 kN", N="4", E="0.917431192661").results
    assert found["F"].value / 1e3 == pytest.approx(0.3087, abs=6e-5)


def test_the_reeving_loses_what_the_advantage_lacks() -> None:
    # 1 - 3.236/4 = 19.1 %.
    found = posed("rigging_reeving_loss", F="10 kN", N="4", E="91.7 %").results
    assert found["k"].value == pytest.approx(1 - 3.236 / 4, abs=2e-4)


@pytest.mark.parametrize(
    ("speed", "pressure"), [("14 m/s", 120.15), ("20 m/s", 245.20), ("28.5 m/s", 497.91)]
)
def test_wind_presses_with_0_613_v2(speed: str, pressure: float) -> None:
    # 0.613 v2 to two decimals; 4e-5 of it at 14 m/s. Source: ISO 4302. Status: from memory.
    givens = {"v_0": "10 m/s", "q_0": "61.3 Pa", "A": "10 m2", "c": "1", "h": "20 m"}
    found = posed("disturbances_wind_on_load", v=speed, **givens).results
    assert found["q"].value == pytest.approx(pressure, abs=0.005)
    assert found["M"].value == pytest.approx(pressure * 10 * 20, rel=1e-4)


CLASSES = [(1, 1.05, 0.17, 1.135), (2, 1.10, 0.34, 1.270), (3, 1.15, 0.51, 1.405),
           (4, 1.20, 0.68, 1.540)]  # fmt: skip


@pytest.mark.parametrize(("number", "least", "slope", "factor"), CLASSES)
def test_hoisting_factors_at_half_a_metre_a_second(
    number: int, least: float, slope: float, factor: float
) -> None:
    # Source: EN 13001-2, FEM 1.001. Status: second-hand.
    found = posed(
        "disturbances_hoisting_factor",
        m="10 t", v="0.5 m/s", v_0="1 m/s", a=f"{least}", b=f"{slope}", a_1="1", b_1="1",
        k=f"{number}",
    ).results  # fmt: skip
    assert found["phi"].value == pytest.approx(factor, abs=1e-12)
    assert found["P"].value == pytest.approx(10e3 * factor, rel=1e-12)


def test_a_lean_of_one_degree_moves_a_head_30_m_up_by_0_524_m() -> None:
    # 2 m of heel pin and half of a boom of 56 m at 30 degrees; exact but for rounding.
    # Source: Plain geometry and statics. Status: worked.
    found = posed("disturbances_out_of_level", u="2 m", L="56 m", theta="30 deg", delta="1 deg")
    assert found.results["h"].value == pytest.approx(30.0, rel=1e-12)
    assert found.results["D"].text() == "0.524\u00a0m"


def test_the_falls_of_an_eight_part_rope_by_hand() -> None:
    """8 falls of 40 m at 1.5 kg/m are 480 kg; of 10 t, with 520 kg of block and slings, 9 t.

    Exact in binary to some 1e-12. Source: a product and a sum. Status: worked.
    """
    found = posed("rigging_rope_weight", G="10 t", m_b="0.52 t", N="8", H="40 m", mu="1.5 kg/m")
    assert found.results["m_r"].value == pytest.approx(480.0)
    assert found.results["P"].value == pytest.approx(9000.0)


def test_a_rope_of_200_m_reaches_for_six_parts_by_hand() -> None:
    """200 m less 5 m and 25 m are 170 m: six falls of 27 m, and not seven.

    Whole numbers, so no tolerance. Source: a sum and a division. Status: worked.
    """
    given = {"L": 200.0, "K": 5.0, "S": 25.0, "H": 27.0}
    found = rigging_rope_reaches.pose(Chance("any"), given)
    right = [option.text for option in found.options if option.right]
    assert right == ["6"]
    assert found.options[rigging_rope_reaches.check(given, found)].right
