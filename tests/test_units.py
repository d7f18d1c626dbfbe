"""Figures with units: what is read, what is refused and how the refusal helps, what is shown."""

import math
import subprocess
import sys
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boomsim.units import (
    QUANTITIES,
    SYSTEMS,
    UnitError,
    display,
    parse,
    registry,
    rounded_down,
    show,
    show_rated,
)
from boomsim.units._unit_factors import ALIASES, COMMON


def refusal(value: object, quantity: str) -> str:
    """Message with which a figure is refused."""
    with pytest.raises(UnitError) as caught:
        parse(value, quantity)
    return str(caught.value)


# --- reading -----------------------------------------------------------------------------------


@pytest.mark.parametrize("unit", [unit for unit in COMMON if unit])
def test_every_common_unit_agrees_with_pint(unit: str) -> None:
    factor, si = COMMON[unit]
    one = registry().Quantity(1.0, registry().parse_units(unit))
    assert math.isclose(one.to(registry().parse_units(si)).magnitude, factor, rel_tol=1e-12)


@pytest.mark.parametrize("alias", ALIASES)
def test_every_other_spelling_of_a_unit_agrees_with_pint(alias: str) -> None:
    theirs = registry().Quantity(1.0, registry().parse_units(alias)).to_base_units()
    ours = registry().Quantity(1.0, registry().parse_units(ALIASES[alias])).to_base_units()
    assert theirs == ours


@pytest.mark.parametrize(
    ("text", "quantity", "expected"),
    [
        # international foot 0.3048 m, pound 0.45359237 kg, standard gravity 9.80665 m/s2: exact
        ("41.8 ft", "length", 41.8 * 0.3048),
        ("11000 lb", "mass", 11000 * 0.45359237),
        ("5 short_ton", "mass", 10000 * 0.45359237),
        ("12000 lbf", "force", 12000 * 0.45359237 * 9.80665),
        ("100 ksi", "stress", 100e3 * 0.45359237 * 9.80665 / 0.0254**2),
        ("22 mph", "speed", 22 * 1609.344 / 3600),
        ("18 m", "length", 18.0),
        ("  -2.5m ", "length", -2.5),
        ("−2.5 m", "length", -2.5),
        ("1.2e1 m", "length", 12.0),
        ("5 t", "mass", 5000.0),
        ("5 tonnes", "mass", 5000.0),
        ("900 kN m", "moment", 9e5),
        ("900 kN·m", "moment", 9e5),
        ("900 kN*m", "moment", 9e5),
        ("30 N/mm²", "stress", 30e6),
        ("30 N/mm2", "stress", 30e6),
        ("30 N / mm**2", "stress", 30e6),
        ("7850 kg/m^3", "density", 7850.0),
        ("180 deg", "angle", math.pi),
        ("180°", "angle", math.pi),
        ("46.5 %", "share", 0.465),
        ("0.465", "share", 0.465),
        (0.465, "share", 0.465),
        (1, "number", 1.0),
        ("3 yd", "length", 2.7432),
        ("1 bar", "pressure", 1e5),
        ("5 kilonewton", "force", 5000.0),
    ],
)
def test_a_figure_reads_as_its_si_value(text: object, quantity: str, expected: float) -> None:
    assert parse(text, quantity) == pytest.approx(expected, rel=1e-14)


def test_a_figure_reads_as_the_nearest_float_and_not_a_rounding_step_beside_it() -> None:
    assert 9 * 0.001 != 0.009  # why plain multiplication is not enough
    assert [parse(f"{n} mm", "length") for n in range(1, 100)] == [
        float(f"{n}e-3") for n in range(1, 100)
    ]


@given(value=st.floats(-1e9, 1e9), quantity=st.sampled_from(sorted(QUANTITIES)))
def test_a_figure_in_its_si_unit_reads_back_exactly(value: float, quantity: str) -> None:
    assert parse(f"{value!r} {QUANTITIES[quantity].unit}".strip(), quantity) == value


# --- refusing ----------------------------------------------------------------------------------


def test_a_decimal_comma_is_refused_and_the_point_is_named() -> None:
    says = refusal("9,8 m", "length")
    assert '"9,8 m"' in says
    assert "comma" in says
    assert 'Write "9.8" with a point' in says


def test_a_thousands_comma_is_refused_because_it_could_be_a_decimal_one() -> None:
    assert "comma" in refusal("11,000 lb", "mass")


def test_thousands_parted_by_a_space_are_refused() -> None:
    assert "gap" in refusal("11 000 lb", "mass")


@pytest.mark.parametrize("text", ["11_000 lb", "41' 6\"", "1 2", "1 .5 m"])
def test_a_mark_inside_the_number_is_refused(text: str) -> None:
    assert "Write it like" in refusal(text, "mass")


@pytest.mark.parametrize("text", ["nan m", "NaN", "inf m", "-inf m", "+Infinity m"])
def test_a_number_that_is_not_finite_is_refused(text: str) -> None:
    assert "not a finite number" in refusal(text, "length")


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_a_bare_float_that_is_not_finite_is_refused(value: float) -> None:
    assert "not a finite number" in refusal(value, "share")


@pytest.mark.parametrize("value", ["8.2", 8.2, 8])
def test_a_length_without_a_unit_is_refused(value: object) -> None:
    says = refusal(value, "length")
    assert "has no unit" in says
    assert '"8.20 m"' in says


@pytest.mark.parametrize("text", ["5 ton", "5 tons", "5 Ton", "5 kton", "5 ton_force"])
def test_a_ton_is_refused_and_t_and_short_ton_are_named(text: str) -> None:
    says = refusal(text, "mass")
    assert "Write t for 1000 kg or short_ton for 2000 lb" in says


@pytest.mark.parametrize(
    ("text", "quantity"),
    [
        ("5 kg", "length"),
        ("5 t", "force"),
        ("5 lb", "force"),
        ("5 T", "mass"),
        ("5 m2", "length"),
        ("5 s", "speed"),
        ("5 degC", "angle"),
    ],
)
def test_a_unit_of_another_quantity_is_refused(text: str, quantity: str) -> None:
    says = refusal(text, quantity)
    assert f"is not a{'n' if quantity == 'angle' else ''} {quantity}" in says


def test_a_percentage_is_no_angle_and_an_angle_is_no_share() -> None:
    # pint has both without dimension and would let them pass
    assert "is not an angle" in refusal("5 %", "angle")
    assert "is not a share" in refusal("5 deg", "share")


def test_an_unknown_unit_is_refused_with_the_nearest_known_one() -> None:
    assert 'Did you mean "MPa"?' in refusal("5 MPaa", "stress")
    assert "not known" in refusal("5 furlongz", "length")


@pytest.mark.parametrize("text", ["", "   ", "m", "about 5 m", "five m", "--5 m", "0x10 m", "٣ m"])
def test_text_that_does_not_begin_with_a_number_is_refused(text: str) -> None:
    assert "Write it like" in refusal(text, "length")


@pytest.mark.parametrize("value", [None, True, [1], {"m": 1}, b"5 m"])
def test_a_value_that_is_no_figure_is_refused(value: object) -> None:
    assert "is not a figure" in refusal(value, "share")


def test_an_endless_integer_is_refused() -> None:
    assert "unreasonably large" in refusal(10**5000, "share")


def test_a_number_beyond_the_floats_is_refused() -> None:
    assert "too large" in refusal("1e400 m", "length")


def test_an_endless_text_is_refused_and_not_repeated_in_full() -> None:
    says = refusal("1" * 5000 + " m", "length")
    assert "too long" in says
    assert len(says) < 200


@pytest.mark.parametrize("unit", ["km^9^9^9", "m**999999999", "m^99", "km^4*km^4*km^4*km^4" * 3])
def test_a_unit_made_to_keep_the_computer_busy_is_refused_at_once(unit: str) -> None:
    registry()
    # It would not come back from working such a power out.
    refusal(f"5 {unit}", "length")


def test_an_unknown_quantity_is_refused_with_the_nearest_known_one() -> None:
    assert 'Did you mean "length"?' in refusal("5 m", "lenght")


def test_the_name_of_the_figure_stands_before_the_message() -> None:
    with pytest.raises(UnitError, match=r'^radius: "9,8 m"'):
        parse("9,8 m", "length", what="radius")


@given(text=st.text(max_size=90), quantity=st.sampled_from(sorted(QUANTITIES)))
def test_any_text_is_a_finite_number_or_a_unit_error(text: str, quantity: str) -> None:
    try:
        assert math.isfinite(parse(text, quantity))
    except UnitError as error:
        assert str(error)


UNIT_PIECES = st.sampled_from(
    ["m", "k", "kg", "t", "in", "^2", "*", "/", " ", "%", "and", "°", "N"]
)


@given(
    number=st.sampled_from(["5", "-.5", "1e9", "0"]),
    pieces=st.lists(UNIT_PIECES, max_size=6),
    quantity=st.sampled_from(sorted(QUANTITIES)),
)
def test_any_chain_of_units_is_a_finite_number_or_a_unit_error(
    number: str, pieces: list[str], quantity: str
) -> None:
    try:
        assert math.isfinite(parse(number + " " + "".join(pieces), quantity))
    except UnitError as error:
        assert str(error)


# --- showing -----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("value", "quantity", "metric", "us"),
    [
        (18.0, "length", "18.0 m", "59.1 ft"),
        (1.25, "length", "1.25 m", "4.10 ft"),
        (5000.0, "mass", "5.00 t", "11,020 lb"),
        (450.0, "mass", "450 kg", "992 lb"),
        (0.05, "mass", "0.05 kg", "0.11 lb"),
        (999.7, "mass", "1.00 t", "2,200 lb"),
        (55e3, "force", "55.0 kN", "12.4 kip"),
        (50.0, "force", "50.0 N", "11.2 lbf"),
        (690e6, "stress", "690 MPa", "100.1 ksi"),
        (math.radians(62.5), "angle", "62.5°", "62.5°"),
        (0.465, "share", "47 %", "47 %"),
        (0.005, "share", "0.5 %", "0.5 %"),
        (0.008, "small_length", "8.0 mm", "0.315 in"),
        (-0.0001, "length", "0.00 m", "0.00 ft"),
        (0.012, "section_area", "120.0 cm²", "18.60 in²"),
    ],
)
def test_a_value_is_shown_in_the_unit_and_digits_people_use(
    value: float, quantity: str, metric: str, us: str
) -> None:
    assert (show(value, quantity), show(value, quantity, "us")) == (metric, us)


@pytest.mark.parametrize("value", [math.nan, math.inf])
def test_a_value_that_is_not_finite_is_shown_as_none(value: float) -> None:
    assert show(value, "mass") == "none"


def test_a_column_keeps_one_unit_for_small_and_large_values() -> None:
    column = display("mass", like=12000.0)
    assert [column.number(m) for m in (12000.0, 800.0)] == ["12.00", "0.80"]
    assert column.symbol == "t"


def test_an_unknown_system_of_units_is_refused() -> None:
    with pytest.raises(UnitError, match='Choose "metric" or "us"'):
        show(1.0, "length", "imperial")


@given(
    value=st.floats(-1e8, 1e8),
    quantity=st.sampled_from(sorted(QUANTITIES)),
    system=st.sampled_from(SYSTEMS),
)
def test_what_is_shown_reads_back_as_the_same_value_within_its_last_digit(
    value: float, quantity: str, system: str
) -> None:
    shown = display(quantity, system, like=value)
    back = parse(show(value, quantity, system).replace(",", ""), quantity)
    assert abs(back - value) <= 0.5001 * 10**-shown.digits * shown.factor + 1e-9 * abs(value)


@given(quantity=st.sampled_from(sorted(QUANTITIES)), system=st.sampled_from(SYSTEMS))
def test_every_unit_shown_belongs_to_its_quantity(quantity: str, system: str) -> None:
    rows = QUANTITIES[quantity].metric if system == "metric" else QUANTITIES[quantity].us
    assert {COMMON[row.unit][1] for row in rows} == {QUANTITIES[quantity].unit}
    starts = [row.least * row.factor for row in rows]
    assert starts == sorted(starts)


# --- speed -------------------------------------------------------------------------------------


def test_common_units_are_read_and_shown_without_loading_pint() -> None:
    code = (
        "import sys; from boomsim.units import parse, show; parse('41.8 ft', 'length');"
        "parse('62 deg', 'angle'); show(5.0, 'mass', 'us'); print('pint' in sys.modules)"
    )
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert run.stdout.strip() == "False"


@pytest.mark.parametrize(
    ("value", "text"),
    [(38.65, "38.7 m"), (-38.65, "-38.7 m"), (41.25, "41.3 m"), (39.21, "39.2 m")],
)
def test_a_half_is_rounded_away_from_nought_however_its_last_bit_fell(value, text):
    """As people do by hand; 38.65 is a little less than that in binary, 41.25 is exact."""
    assert show(value, "length") == text


# --- rated loads are never rounded up ------------------------------------------------------------


def exact_mass(text: str) -> Fraction:
    """Mass that a text says, without any rounding of our own [kg]."""
    number, unit = text.replace(",", "").split(" ")
    return Fraction(number) * COMMON[unit][0]


@given(value=st.floats(0.0, 1e7), system=st.sampled_from(SYSTEMS))
def test_a_rated_load_never_reads_as_more_than_it_is(value: float, system: str) -> None:
    # A hair of 1e-12 is left: what a division loses must not cost a whole digit.
    assert exact_mass(show_rated(value, system)) <= Fraction(value) * (1 + Fraction(1, 10**12))


@given(value=st.floats(0.01, 1e7), system=st.sampled_from(SYSTEMS))
def test_a_rated_load_reads_as_less_by_no_more_than_its_last_digit(
    value: float, system: str
) -> None:
    shown = show_rated(value, system)
    number, unit = shown.split(" ")
    tens = unit == "lb" and exact_mass(shown) >= 1000 * COMMON["lb"][0]
    digit = Fraction(10 if tens else 1, 10 ** len(number.partition(".")[2])) * COMMON[unit][0]
    assert Fraction(value) - exact_mass(shown) < digit


@given(steps=st.integers(0, 10_000), system=st.sampled_from(SYSTEMS))
def test_a_whole_number_of_steps_of_a_chart_reads_as_itself(steps: int, system: str) -> None:
    step, unit, digits = {"metric": (50.0, "t", 2), "us": (45.359237, "lb", 0)}[system]
    shown = display("mass", system).number_down(steps * step)
    assert shown == f"{steps * (0.05 if unit == 't' else 100):,.{digits}f}"


@pytest.mark.parametrize(
    ("value", "shown"),
    [
        (5229.0, "5.22 t"),
        (7950.0, "7.95 t"),
        (999.9999, "999 kg"),
        (1000.0, "1.00 t"),
        (9.995, "9.99 kg"),
        (0.0, "0.00 kg"),
    ],
)
def test_a_rated_load_is_rounded_down(value: float, shown: str) -> None:
    assert show_rated(value) == shown


def test_rounding_down_holds_before_the_point_and_below_nought() -> None:
    assert rounded_down(11_527.9, -1) == "11,520"
    assert rounded_down(-0.001, 2) == "-0.01"
