"""What a study gives back is what its command prints, to the byte."""

import json
from functools import cache

import numpy as np
import pytest

import boomsim as bs
from boomsim.caution import CAUTION
from boomsim.cli import main

TRUCK = ["truck18", "--extension", "50,50,50"]
PAIRS = {
    "around": (
        lambda **units: bs.around(
            "truck18", extension="50,50,50", radius="6 m, 12 m", mat="1 m2", **units
        ),
        ["around", *TRUCK, "--radius", "6 m, 12 m", "--mat", "1 m2"],
    ),
    "around, in SI": (
        lambda **units: bs.around(
            "truck18", extension=(0.5, 0.5, 0.5), radius=[6, 12.0], load=1000.0, **units
        ),
        ["around", *TRUCK, "--radius", "6 m, 12 m", "--load", "1 t"],
    ),
    "overload": (
        lambda **units: bs.overload(
            "truck18", extension="50,50,50", radius=6.0, hold="radius", **units
        ),
        ["overload", *TRUCK, "--radius", "6 m", "--hold", "radius"],
    ),
    "losses": (
        lambda **units: bs.losses(
            "truck18", radius=(5, 13), amounts={"wind": 14.0}, slew="rear", **units
        ),
        ["losses", "truck18", "--radius", "5 m, 13 m", "--amount", "wind=14 m/s", "--slew", "rear"],
    ),
    "range": (
        lambda **units: bs.range(
            extension=[(0, 0, 0.45, 0.45), "0,0,0,90"], counterweight="none", **units
        ),
        ["range", "--extension", "0,0,45,45", "--extension", "0,0,0,90", "--counterweight", "none"],
    ),
}
PAIRS |= {
    "reeving": (
        lambda **units: bs.reeving("truck18", length="20 m", radius=8.0, load=2e3, **units),
        ["reeving", "truck18", "--length", "20 m", "--radius", "8 m", "--load", "2 t"],
    ),
    "reeving of a machine without a rope": (
        lambda **units: bs.reeving("bench", **units),
        ["reeving", "bench"],
    ),
    "compare": (
        lambda **units: bs.compare("truck18", length="12 m", radius=[6, 8], **units),
        ["compare", "truck18", "--length", "12 m", "--radius", "6 m, 8 m"],
    ),
    "compare, written out": (
        lambda **units: bs.compare(
            extension=[(0.9, 0, 0, 0), (0, 0, 0.45, 0.45)], radii=(6, 12), **units
        ),
        ["compare", "--extension", "90,0,0,0", "--extension", "0,0,45,45", "--radii", "6 m, 12 m"],
    ),
    "lift": (
        lambda **units: bs.lift(extension=(0, 0, 0.45, 0.45), radius=10, load=8000, **units),
        ["lift", "--extension", "0,0,45,45", "--radius", "10 m", "--load", "8 t"],
    ),
    "chart": (
        lambda **units: bs.chart(
            extension=["0,0,0,90", (0, 0, 0.45, 0.45)], radii=(4, 8, 12), **units
        ),
        [
            "chart",
            "--extension",
            "0,0,0,90",
            "--extension",
            "0,0,45,45",
            "--radii",
            "4 m, 8 m, 12 m",
        ],
    ),
    "chart, the usual": (
        lambda **units: bs.chart("truck18", rows=2.0, step=100.0, breaks_first=True, **units),
        ["chart", "truck18", "--rows", "2 m", "--step", "100 kg", "--breaks-first"],
    ),
}
PAIRS |= {
    "pick": (
        lambda **units: bs.pick(
            extension=(0, 0, 0.45, 0.45), radius=9.8, load=12e3, slew="rear", wind=6, **units
        ),
        [
            "pick",
            *("--extension", "0,0,45,45", "--radius", "9.8 m", "--load", "12 t"),
            *("--slew", "rear", "--wind", "6 m/s"),
        ],
    ),
    "dynamics": (
        lambda **units: bs.dynamics(
            "truck18", extension=(0.5, 0.5, 0.5), radius=8, speed=0.8, stop="2 s", **units
        ),
        [
            "dynamics",
            *("truck18", "--extension", "50,50,50", "--radius", "8 m"),
            *("--speed", "0.8 m/s", "--stop", "2 s"),
        ],
    ),
    "indicator": (
        lambda **units: bs.indicator(
            "truck18", extension=(0.5, 0.5, 0.5), radius=8, lean="2 deg", **units
        ),
        [
            "indicator",
            *("truck18", "--extension", "50,50,50", "--radius", "8 m", "--lean", "2 deg"),
        ],
    ),
    "slabs": (
        lambda **units: bs.slabs(
            "truck18", extension=[(0, 0, 0), (0.5, 0.5, 0.5)], slew="rear", **units
        ),
        ["slabs", "truck18", "--extension", "0,0,0", "--extension", "50,50,50", "--slew", "rear"],
    ),
}
PAIRS = {name: (cache(study), command) for name, (study, command) in PAIRS.items()}
"""A result is made once, and asked for its text, its data and its picture."""
each = pytest.mark.parametrize(("study", "command"), PAIRS.values(), ids=PAIRS)


def printed(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    assert main(list(words)) == 0
    return capsys.readouterr().out


@pytest.mark.slow
@each
def test_the_dictionary_is_the_json_of_the_command(study, command, capsys):
    assert json.dumps(study().to_dict()) == json.dumps(
        json.loads(printed(capsys, *command, "--json"))
    )


@pytest.mark.slow
@pytest.mark.parametrize("units", ["metric", "us"])
@pytest.mark.parametrize("name", PAIRS)
def test_the_text_is_what_the_command_prints(name, units, capsys):
    study, command = PAIRS[name]
    # Told in the units in which it was made, where radii that nobody gave are round in them.
    any_units = name in ("range", "lift", "slabs")
    own = any_units or units == "metric"
    said = study().text(units) if own else study(units=units).text()
    assert f"{said}\n" == printed(capsys, *command, "--units", units)


@pytest.mark.slow
@pytest.mark.parametrize(
    ("study", "command"), [pair for name, pair in PAIRS.items() if name != "lift"]
)
def test_the_picture_is_the_figure_of_the_command(study, command, tmp_path, capsys):
    from boomsim.figures.figure_page import write

    ours, theirs = tmp_path / "ours.png", tmp_path / "theirs.png"
    write(study().plot(), str(ours))
    printed(capsys, *command, "--figure", str(theirs))
    assert ours.read_bytes() == theirs.read_bytes()


@each
def test_a_result_is_one_short_line_on_a_console(study, command):
    said = repr(study())
    assert "\n" not in said
    assert len(said) < 150
    assert said.startswith(f"<boomsim {command[0]}: ")


@each
def test_a_notebook_shows_tables_and_the_caution_once(study, command):
    page = study()._repr_html_()
    assert page.count("<table>") == page.count("</table>") >= 1
    assert " ".join(page.split()).count(CAUTION.replace("'", "&#x27;")) == 1
    assert "----" not in page


@each
def test_every_word_of_the_text_is_in_the_html(study, command):
    from html import unescape
    from re import sub

    found = study()
    shown = unescape(sub("<[^>]*>", " ", found._repr_html_())).split()
    # Dashes alone are rules under a table's head, or a blank cell.
    told = found.text().split()
    assert [w for w in shown if set(w) != {"-"}] == [w for w in told if set(w) != {"-"}]


@each
def test_rows_of_a_blank_figure_have_no_governing_limit(study, command):
    rows = study().rows()
    assert rows
    for row in rows:
        if "capacity" in row and (row["capacity"] is None or np.isnan(row["capacity"])):
            assert row["governing"] is None


def test_a_radius_out_of_reach_is_blank_and_has_no_governing_limit():
    rows = bs.around("truck18", extension="50,50,50", radius=(60.0, 6.0)).rows()
    far = [row for row in rows if row["radius"] == 60.0]
    near = [row for row in rows if row["radius"] == 6.0]
    assert {(row["governing"], row["set_by"]) for row in far} == {(None, None)}
    assert None not in {row["set_by"] for row in near}
