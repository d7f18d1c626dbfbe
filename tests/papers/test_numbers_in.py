"""Reading candidates' numbers: decimal commas only in a named locale, nothing guessed."""

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boomsim.papers.numbers.number_reading import decimal_sign, read_number
from boomsim.papers.numbers.printed_units import unit
from boomsim.papers.paper_errors import AnswerError, PaperError

KN, PERCENT, KNM = unit("kN"), unit("%"), unit("kN m")


def newtons(text: str, locale: str | None = None, system: str = "metric") -> float:
    return read_number(text, unit=KN, sign=decimal_sign(locale, system=system)).value


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("15.6", 15600), ("15.6 kN", 15600), ("15600 N", 15600), ("1.56e4 N", 15600),
        (" 15.6kN ", 15600),
        ("15\u00a0600 N", 15600), ("15 600 N", 15600), ("−3", -3000), ("+3", 3000), (".5", 500),
        ("1,234.5 N", 1234.5), ("1,234,567 N", 1234567),
        ("3507 lbf", 15599.9), ("3507 lb", 15599.9),
    ],
)  # fmt: skip
def test_clear_numbers_are_read(text: str, value: float) -> None:
    assert newtons(text) == pytest.approx(value, rel=1e-5)


@pytest.mark.parametrize("locale", ["de", "fr-FR", "pt_BR", "nl", "ru", "en-ZA"])
def test_a_decimal_comma_is_read_where_the_locale_is_named(locale: str) -> None:
    assert newtons("12,5", locale) == 12500
    assert newtons("1.234,5 N", locale) == 1234.5
    assert newtons("12,500", locale) == 12500  # 12.500 kN


@pytest.mark.parametrize(
    ("text", "locale"),
    [
        ("12,5", None), ("1,234", None), ("12,500 N", None), (",5", None), ("1.234,5", None),
        ("12,5", "en-GB"), ("12,5", "de-CH"), ("12.5", "de"), ("1.234", "de"), ("1,2,3", "de"),
    ],
)  # fmt: skip
def test_what_could_mean_two_numbers_is_left_to_the_examiner(text: str, locale: str | None) -> None:
    with pytest.raises(AnswerError):
        newtons(text, locale)


def test_a_us_paper_prints_and_reads_thousands_with_a_comma() -> None:
    assert newtons("12,500 N", None, "us") == 12500
    with pytest.raises(AnswerError, match="comma"):
        newtons("12,5", None, "us")


def test_an_unknown_locale_is_refused_with_the_way_out() -> None:
    with pytest.raises(PaperError, match='"de"'):
        decimal_sign("klingon")


@pytest.mark.parametrize(
    "text",
    [
        "9**9**9", "=1+1", "@SUM(A1)", "1+1", "__import__('os')", "15.6 m", "kN", "1e99", "inf",
        "nan",
        "15.6 kN; rm", "0x10", "1_000", "3 ft 6 in", "１５", "15.6" + " " * 60, "1" * 61, "", "--1",
        "1e5e5",
        "<b>1</b>", "15.6 kN 3", "1 2 3",
    ],
)  # fmt: skip
def test_everything_else_is_refused(text: str) -> None:
    with pytest.raises(AnswerError):
        newtons(text)


@pytest.mark.parametrize(
    ("text", "value", "figures"),
    [
        ("4.90 x 10^2", 490e3, 3), ("4.90 × 10² kN", 490e3, 3), ("4.90*10^2", 490e3, 3),
        ("4.90·10^2 kN", 490e3, 3), ("4.90x10**2 kN", 490e3, 3), ("4.9 x 10^(-1) MN", 490e3, 2),
        ("49 × 10⁻² MN", 490e3, 2), ("F = 490 kN", 490e3, 3), ("F=490", 490e3, 3),
        ("F: 490 kN", 490e3, 3), ("≈ 490", 490e3, 3), ("F ≈ 490", 490e3, 3),
        ("35/4", 8750.0, 15), ("35 / 4 kN", 8750.0, 15), ("-35/4", -8750.0, 15),
        ("F = 35/4 kN", 8750.0, 15), ("8750/3 N", 8750.0 / 3, 15),
        ("F = 4.90 x 10^2 kN", 490e3, 3),
    ],
)  # fmt: skip
def test_other_ways_to_write_one_number_are_read(text: str, value: float, figures: int) -> None:
    number = read_number(text, unit=KN, sign=".", letter="F")
    assert number.value == pytest.approx(value, rel=1e-11)  # a quotient is cut to twelve digits
    assert number.figures == figures


@pytest.mark.parametrize("text", ["M_max = 490 kNm", "Mmax=490", "m_max: 490", "490 kN m"])
def test_the_letter_of_the_answer_line_may_stand_before_it(text: str) -> None:
    assert read_number(text, unit=KNM, sign=".", letter="M_max").value == pytest.approx(490e3)


def test_a_greek_letter_may_be_written_as_a_sign_or_as_a_word() -> None:
    for text in ("θ = 45", "theta = 45", "Theta=45°"):
        number = read_number(text, unit=unit("deg"), sign=".", letter="theta")
        assert number.value == pytest.approx(0.7853981634)  # pi/4


def test_the_letter_of_another_line_is_left_to_the_examiner() -> None:
    with pytest.raises(AnswerError, match="gives R, and this line asks for M"):
        read_number("R = 490", unit=KNM, sign=".", letter="M")


@pytest.mark.parametrize(
    "text",
    ["35/0", "35/4/2", "3.5/4", "35/-4", "1e3/4", "4.90 x 10^", "4.90 x 10^(2", "x 10^2", "10^2",
     "4.90 x 10^222", "4.90 x 10^2^2", "4.90 x 10^2.5", "4.9 x 11^2", "F = ", "F = G = 3",
     "F = 1 = 2", "35/4 + 1", "2*3", "=35/4", "1 x 10^2 x 10^2", "8 3/4"],
)  # fmt: skip
def test_what_would_have_to_be_worked_out_is_left_to_the_examiner(text: str) -> None:
    with pytest.raises(AnswerError):
        read_number(text, unit=KN, sign=".", letter="F")


@given(st.text(alphabet="0123456789.,/x×*^()-+eE =F²⁻kN", max_size=30))
def test_no_mixture_of_signs_does_worse_than_being_refused(text: str) -> None:
    with suppress(AnswerError):
        assert abs(read_number(text, unit=KN, sign=".", letter="F").value) < 1e22


@given(st.text(max_size=80))
def test_no_text_does_worse_than_being_refused(text: str) -> None:
    for locale in (None, "de", "en"):
        with suppress(AnswerError):
            assert abs(newtons(text, locale)) < 1e22


@pytest.mark.parametrize(
    ("text", "figures", "half"),
    [
        ("15.6", 3, 50.0), ("16", 2, 500.0), ("0.0156 MN", 3, 50.0), ("1.6e1", 2, 500.0),
        ("16.0", 3, 50.0),
    ],
)  # fmt: skip
def test_figures_are_counted_as_written(text: str, figures: int, half: float) -> None:
    number = read_number(text, unit=KN, sign="")
    assert number.figures == figures
    assert number.half_step == pytest.approx(half, rel=1e-9)


def test_a_share_is_read_in_percent_or_as_a_number() -> None:
    assert read_number("46.5 %", unit=PERCENT, sign="").value == pytest.approx(0.465)
    assert read_number("46.5", unit=PERCENT, sign="").value == pytest.approx(0.465)  # as printed


TONNE_METRE = 9806.65  # what a tonne weighs at standard gravity (ISO 80000-4), at one metre [N m]
FOOT_POUND = 1.3558179  # lbf ft, NIST SP 811, table B.8 [N m]


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("12 kNm", 12e3), ("12 KNm", 12e3), ("12 kN·m", 12e3), ("12 kN.m", 12e3), ("12kN-m", 12e3),
        ("12 m·kN", 12e3), ("12000 Nm", 12e3), ("1200 daNm", 12e3), ("12 kN m", 12e3),
        ("12", 12e3), ("12 MN mm", 12e3),
        ("12 t m", 12 * TONNE_METRE), ("12 t·m", 12 * TONNE_METRE), ("12 tm", 12 * TONNE_METRE),
        ("12 t-m", 12 * TONNE_METRE), ("12 tonne-metres", 12 * TONNE_METRE),
        ("12 m·t", 12 * TONNE_METRE), ("12000 kg m", 12 * TONNE_METRE),
        ("12 tf·m", 12 * TONNE_METRE), ("12000 kgf m", 12 * TONNE_METRE),
        ("900 ft-lb", 900 * FOOT_POUND), ("900 ft·lbs", 900 * FOOT_POUND),
        ("900 lb-ft", 900 * FOOT_POUND), ("900 ft-lbf", 900 * FOOT_POUND),
        ("900 lb ft", 900 * FOOT_POUND), ("900 FT-LB", 900 * FOOT_POUND),
        ("900 foot-pounds", 900 * FOOT_POUND), ("10800 in-lb", 900 * FOOT_POUND),
        ("9 kip-ft", 9000 * FOOT_POUND), ("9 ft-kips", 9000 * FOOT_POUND),
        ("9 k-ft", 9000 * FOOT_POUND), ("9 ft k", 9000 * FOOT_POUND),
        ("9 Kip-Ft", 9000 * FOOT_POUND), ("108 kip in", 9000 * FOOT_POUND),
    ],
)  # fmt: skip
def test_a_moment_is_read_as_the_trade_writes_it(text: str, value: float) -> None:
    # Eight figures are given of the foot-pound; the others are exact.
    assert read_number(text, unit=KNM, sign="").value == pytest.approx(value, rel=5e-8)


@pytest.mark.parametrize(
    "text",
    ["12 t", "12 mt", "12 mN", "12 kft", "12 ton-m", "12 ft-tons", "12 kN", "12 nm", "12 t/m",
     "12 kips", "12 kN m m", "12 ft ft"],
)  # fmt: skip
def test_what_is_no_moment_or_could_be_two_is_left_to_the_examiner(text: str) -> None:
    with pytest.raises(AnswerError):
        read_number(text, unit=KNM, sign="")


def test_a_tonne_is_no_force() -> None:
    # As a moment "t m" has one meaning; a bare tonne for a force is what the question is about.
    with pytest.raises(AnswerError, match="not a force"):
        newtons("12 t")
