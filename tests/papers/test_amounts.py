"""Numbers as they are printed, their units, and the short notation for their values."""

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given as hypothesis_given
from hypothesis import strategies as st

from boomsim.papers.numbers.amounts import given, grouped, read_amount, result, round_figures
from boomsim.papers.numbers.printed_units import FACTORS, unit
from boomsim.papers.numbers.value_ranges import spread
from boomsim.papers.paper_errors import FamilyError
from boomsim.units import UnitError, parse


@pytest.mark.parametrize(
    ("value", "figures", "printed"),
    [
        (15.588235, 3, "15.6"),
        (12.25, 3, "12.3"),  # halves go up, where binary formatting gives 12.2
        (12.249999999999998, 3, "12.3"),  # 12.25 but for the last bit
        (9.996, 3, "10.0"),
        (0.00995, 2, "0.0100"),
        (51234.0, 3, "51200"),
        (100.0, 3, "100"),
        (0.0, 3, "0"),
    ],
)
def test_figures_are_rounded_as_by_hand(value: float, figures: int, printed: str) -> None:
    expected = printed if value != 0.00995 else "0.010"  # 0.00995 to two figures is 0.010
    assert f"{round_figures(value, figures=figures):f}" == expected


@hypothesis_given(st.floats(1e-6, 1e9), st.integers(2, 6))
def test_rounding_never_moves_a_value_by_more_than_half_a_figure(
    value: float, figures: int
) -> None:
    rounded = round_figures(value, figures=figures)
    step = Decimal(1).scaleb(Decimal(value).adjusted() - figures + 1)
    assert abs(rounded - Decimal(value)) <= step * Decimal("0.5001")


READ = [name for units in FACTORS.values() for name in units if name and unit(name).quantity]


@pytest.mark.parametrize("name", READ)
def test_factors_agree_with_the_units_that_answers_are_read_in(name: str) -> None:
    of = unit(name)
    try:
        read = parse(f"1 {name}", of.quantity)
    except UnitError:
        pytest.fail(f"an answer in {name} could be asked for and not be read")
    assert read == pytest.approx(
        float(of.factor), rel=1e-12
    )  # the two tables differ in the last bit


def test_a_given_is_exactly_its_printed_number() -> None:
    amount = given(Decimal("5.30"), unit("kN"))
    assert amount.text() == "5.30\u00a0kN"
    assert amount.value == float(Fraction(5300))
    assert read_amount(amount.plain()) == amount


def test_thousands_are_parted_as_the_system_does() -> None:
    number = Decimal("12500")
    assert (grouped(number), grouped(number, system="us")) == ("12\u202f500", "12,500")
    assert grouped(Decimal("1250.5")) == "1250.5"


def test_degrees_stand_without_a_gap() -> None:
    assert result(1.0, unit("deg"), figures=3).text() == "57.3°"


def test_values_of_a_given_are_listed_by_its_short_notation() -> None:
    even = spread("2 to 3 kN by 0.25")
    assert [str(even.number(i)) for i in range(even.count)] == [
        "2.00", "2.25", "2.50", "2.75", "3.00",
    ]  # fmt: skip
    listed = spread("4, 6, 8 m")
    assert [str(listed.number(i)) for i in range(listed.count)] == ["4", "6", "8"]
    assert spread("9.81 m/s2").count == 1
    assert spread("drawn in t by 0.05").nearest(12_330.0) == Decimal("12.35")


@pytest.mark.parametrize(
    "text", ["2 to 3 kN by 0.3", "3 to 2 kN by 0.1", "about 3 kN", "", "2 kNn"]
)
def test_notation_that_says_nothing_certain_is_refused(text: str) -> None:
    with pytest.raises(FamilyError):
        spread(text)


def test_an_unknown_unit_comes_with_a_suggestion() -> None:
    with pytest.raises(FamilyError, match="kip"):
        unit("kipp")
