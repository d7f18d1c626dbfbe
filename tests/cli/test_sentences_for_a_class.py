"""What the commands say, read as a class hears it: no leave given, one unit, sums that come out."""

import re

import pytest

from boomsim.cli import main
from boomsim.mechanics.moving_loads import swung_out, usual_swing

PLACE = ("--extension", "50,50,50", "--radius", "30 ft")

LEAVE = re.compile(r"\byou may\b|may be lifted|\bsafe(ly)?\b|\ballowed to\b", re.IGNORECASE)
"""Words that would give leave to lift."""


def said(capsys: pytest.CaptureFixture[str], *given: str) -> str:
    """Text of a command, its lines joined by single spaces."""
    assert main(list(given)) == 0
    return re.sub(r"\s+", " ", capsys.readouterr().out)


@pytest.mark.parametrize(
    ("given", "sentence"),
    [
        (
            ("chart", "truck18", "--read", "10 m, 18.75 m", "--load", "2 t"),
            "A load of 2.00 t is rated on this chart; it needs at least 1 part of line.",
        ),
        (
            ("chart", "truck18", "--read", "10 m, 18.75 m", "--load", "4 t"),
            "A load of 4.00 t is more than is rated.",
        ),
        (("lower", "bench", "--load", "0.3 kg"), "this boom is rated all the way down, to 0.0°"),
        (("telescope", "truck18", "--load", "1 t", "--angle", "60 deg"), "is rated all the way"),
    ],
)
def test_a_verdict_gives_no_leave(given, sentence, capsys) -> None:
    told = said(capsys, *given)
    assert sentence in told
    assert not LEAVE.search(told)


@pytest.mark.parametrize("name", ["around", "lift"])
def test_forces_of_one_crane_are_told_in_one_unit(name, capsys) -> None:
    told = said(capsys, name, "truck18", *PLACE, "--load", "4000 lb", "--units", "us")
    told = re.sub(r"line pull [\d,]+ lbf", "", told)
    assert " kip" in told
    assert not re.search(r"\d lbf( |\b)", told)


def test_where_the_rope_reaches_for_fewer_parts_feet_stay_feet(capsys) -> None:
    place = ("--extension", "0,0,45,45", "--radius", "10 m", "--load", "8 t", "--units", "us")
    # 260 m and 18.7 m, over 0.3048.
    told = said(capsys, "lift", "yard60", *place)
    assert "the 853.0 ft of line on the drum reach for no more with 61.4 ft of boom" in told


@pytest.mark.slow
def test_an_indicator_names_one_part_and_pounds(capsys) -> None:
    told = said(capsys, "indicator", "truck18", *PLACE, "--units", "us")
    assert "1 part of line, told 3" in told
    # 2 t over 0.45359237 kg, to ten pounds.
    assert "counterweight none, told 4,410 lb" in told


@pytest.mark.slow
def test_the_tabletop_has_a_usual_slewing_speed_of_its_own(capsys) -> None:
    said(capsys, "dynamics", "bench")
    said(capsys, "indicator", "bench")
    # v2/(g R) is a tenth there, and the crane's own 1.5 m/s from 2.3 m outwards.
    assert usual_swing(0.5) ** 2 / (9.80665 * 0.5) == pytest.approx(0.1)
    assert usual_swing(2.3) == 1.5


def test_a_load_that_swings_out_too_far_is_refused_with_a_speed_that_is_not(capsys) -> None:
    with pytest.raises(ValueError, match=r"--swing: at 1.5 m/s .* Give up to ([\d.]+) m/s") as told:
        swung_out(1.5, radius=0.4, rope=0.5)
    most = float(re.search(r"up to ([\d.]+) m/s", str(told.value))[1])
    swung_out(most, radius=0.4, rope=0.5)
    with pytest.raises(ValueError, match="--swing"):
        swung_out(most + 0.02, radius=0.4, rope=0.5)


def test_what_a_command_does_not_take_is_refused_with_the_way_out(capsys) -> None:
    with pytest.raises(SystemExit):
        main(["slabs", "--foo", "3"])
    assert "--help behind the command lists what it takes" in capsys.readouterr().err
    assert main(["chart", "truck18", "--read", "40 m, 10 m"]) == 2
    assert "the radius is given first, then the boom length" in capsys.readouterr().err


def test_a_range_of_one_boom_names_its_own_parts_of_line(capsys) -> None:
    reeved = said(capsys, "reeving", "truck18", "--extension", "50,50,50")
    parts = re.search(r"is reeved in (\d+) parts of line", reeved)[1]
    assert f"; {parts} parts of line;" in said(capsys, "range", "truck18", *PLACE[:2])


@pytest.mark.slow
def test_a_kilogram_that_costs_nothing_has_no_sign(capsys) -> None:
    assert not re.search(r"[-+]0\.000", said(capsys, "losses", "truck18", *PLACE))
