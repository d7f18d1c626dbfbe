"""``compare --plates`` as a person and a program use it: words, table, JSON, picture, refusals."""

import io
import json
import re
from contextlib import redirect_stdout
from functools import cache

import pytest

from boomsim.caution import CAUTION
from boomsim.cli import main
from boomsim.machine.machine_files import load_machine
from boomsim.machine.machine_text import machine_to_toml
from boomsim.machine.plate_thickness import with_plates

ASKED = ("compare", "yard60", "--plates", "0.8, 1, 1.3")


@cache
def answer(*arguments):
    out = io.StringIO()
    with redirect_stdout(out):
        assert main(list(arguments)) == 0
    return out.getvalue()


def refusal(capsys, *arguments):
    assert main(list(arguments)) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.strip().count("\n") == 0
    return said.err


@pytest.mark.slow
def test_the_sentences_come_first_then_the_rule_the_masses_and_the_table():
    said = answer(*ASKED)
    first, head, masses, table, legend, caution = said.strip().split("\n\n")
    assert first.startswith("Close in, from ")
    assert "\nStability sets the figure: " in first
    assert "\nOverloaded at " in first
    assert "what a section weighs beyond its plates" in " ".join(head.split())
    assert masses.splitlines()[0].split("  ")[-1].strip() == "plates x 1.3"
    assert table.startswith("radius")
    assert "strength sets this figure" in legend
    assert " ".join(caution.split()) == CAUTION


@pytest.mark.slow
def test_the_machine_itself_is_the_column_of_factor_one():
    found = json.loads(answer(*ASKED, "--radii", "6 m, 12 m", "--json"))
    usual = json.loads(
        answer("compare", "yard60", "--extension", "0,0,0,90", "--radii", "6 m, 12 m", "--json")
    )
    assert found["schema"].startswith("boomsim.compare-plates/")
    assert found["extension"] == usual["configurations"][0]["extension"]
    build = next(one for one in found["builds"] if one["plates"] == 1.0)
    assert build["machine"] == "yard60"
    for key in ("capacity", "governing", "set_by"):
        assert build[key] == usual["configurations"][0][key]


@pytest.mark.slow
def test_a_file_of_the_stout_machine_is_rated_as_its_column(tmp_path):
    path = tmp_path / "stout.toml"
    stout = with_plates(load_machine("yard60"), factor=1.3)
    path.write_text(machine_to_toml(stout), encoding="utf-8")
    at = ("--extension", "0,0,0,90", "--radii", "6 m, 12 m", "--json")
    found = json.loads(answer(*ASKED, *at))["builds"][-1]
    filed = json.loads(answer("compare", str(path), *at))["configurations"][0]
    assert found["capacity"] == filed["capacity"]
    assert found["set_by"] == filed["set_by"]


@pytest.mark.slow
def test_signs_in_the_table_are_what_sets_the_figures():
    said = answer(*ASKED)
    found = json.loads(answer(*ASKED, "--json"))
    rows = [line for line in said.splitlines() if re.match(r"\d+\.\d+ m +\d", line)]
    signs = {"strength": "*", "permissible value": "†", "stability": ""}
    carried = [k for k in range(len(found["radii"])) if found["builds"][0]["set_by"][k]]
    assert len(rows) == len(carried)
    for row, k in zip(rows, carried, strict=True):
        told = re.findall(r" t([*†]?)", row)
        assert told == [signs[one["set_by"][k]] for one in found["builds"]]


@pytest.mark.slow
def test_the_picture_is_written(tmp_path):
    path = tmp_path / "stout.svg"
    answer(*ASKED, "--figure", str(path))
    assert path.stat().st_size > 20_000


@pytest.mark.parametrize(
    ("more", "says"),
    [
        (("--plates", "0.5, 1"), r"--plates: a factor of 0\.5 is not between 0\.6 and 1\.8"),
        (("--plates", "thick"), "is not a list of factors"),
        (("--plates", "1"), "two to 6 at a time"),
        (("--plates", "1, nan"), "a factor of nan is not between"),
        (("--plates", "1, 1.3", "--every-way"), "Leave one of the two out"),
        (("--plates", "1, 1.3", "--length", "18.7 m"), "one configuration, and here are 10"),
        (("--plates", "1, 1.3", "--radii", "300 m"), "Nothing may be lifted at any"),
        (("--plates", "1, 1.3", "--figure", "x.txt"), "names no kind of picture"),
    ],
)
def test_what_cannot_be_is_refused_in_one_line(capsys, more, says):
    assert re.search(says, refusal(capsys, "compare", "yard60", *more))


def test_a_section_that_no_longer_fits_is_named(capsys):
    said = refusal(capsys, "compare", "bench", "--plates", "1, 1.6")
    assert "Section 1 is 34 mm wide outside" in said
    assert "plates x 1.4 fits" in said
