"""The commands overload, around and losses: what they print, what they refuse."""

import json
import math
import re
from pathlib import Path

import pytest

from boomsim.caution import CAUTION
from boomsim.cli import main
from boomsim.machine.machine_files import load_machine

ONE = ["truck18", "--extension", "50,50,50"]
FOUR = [*ONE, "--radius", "5 m, 6 m, 7 m, 8 m"]
RUNS = {
    "overload": ["overload", *ONE, "--radius", "6 m"],
    "overload-map": ["overload", "truck18", "--map"],
    "around": ["around", *ONE, "--radius", "6 m, 12 m", "--mat", "1 m2"],
    "losses": ["losses", *ONE, "--radius", "5 m, 13 m"],
}


def ran(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    code = main(list(words))
    said = capsys.readouterr()
    return code, said.out, said.err


def one_line(text: str) -> str:
    return " ".join(text.split())


@pytest.mark.parametrize("kind", RUNS)
@pytest.mark.parametrize("units", ["metric", "us"])
def test_every_answer_carries_the_caution(
    kind: str, units: str, capsys: pytest.CaptureFixture[str]
) -> None:
    code, out, err = ran(capsys, *RUNS[kind], "--units", units)
    assert code == 0
    assert err == ""
    assert one_line(CAUTION) in one_line(out)
    assert (" ft" in out) is (units == "us")
    assert (" t" in out.replace(" ton", "").replace(" the", "")) or units == "us"


@pytest.mark.parametrize("kind", RUNS)
def test_json_is_json_and_nothing_else(kind: str, capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = ran(capsys, *RUNS[kind], "--json")
    assert code == 0
    answer = json.loads(out)
    assert answer["schema"] == f"boomsim.{kind}/4"
    assert answer["caution"] == CAUTION
    assert answer["machine"] == "truck18"


@pytest.mark.parametrize(
    ("kind", "ending"),
    [("overload", "svg"), ("overload-map", "svg"), ("around", "png"), ("losses", "pdf")],
)
def test_a_figure_is_written_beside_the_answer(
    kind: str, ending: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / f"picture.{ending}"
    code, out, _ = ran(capsys, *RUNS[kind], "--figure", str(path))
    assert code == 0
    assert str(path) in out
    assert path.stat().st_size > 5_000
    assert [p.name for p in tmp_path.iterdir()] == [path.name]


@pytest.mark.parametrize("command", ["overload", "around", "losses"])
@pytest.mark.parametrize("machine", ["yard60", "truck18", "bench"])
def test_a_machine_alone_is_enough(
    command: str, machine: str, capsys: pytest.CaptureFixture[str]
) -> None:
    code, out, err = ran(capsys, command, machine)
    assert (code, err) == (0, "")
    assert f"{machine} (invented)" in out


def test_an_overload_study_tells_its_order_of_events(capsys: pytest.CaptureFixture[str]) -> None:
    _, out, _ = ran(capsys, *RUNS["overload"], "--json")
    answer = json.loads(out)
    loads = [event["load"] for event in answer["events"]]
    assert loads == sorted(loads)
    kinds = {event["kind"] for event in answer["events"]}
    assert {"tips", "gives way"} <= kinds
    assert answer["ratio"] == pytest.approx(answer["failure"] / answer["tipping"])
    assert answer["warns"] is (answer["ratio"] > 1.0)


def test_the_ground_only_leans_the_crane(capsys: pytest.CaptureFixture[str]) -> None:
    firm = json.loads(ran(capsys, *RUNS["overload"], "--json")[1])
    soft = json.loads(ran(capsys, *RUNS["overload"], "--json", "--ground", "0.5 MN/m")[1])
    assert firm["events"] == soft["events"]
    assert soft["feel"]["lean"][-1] > 5 * firm["feel"]["lean"][-1]


def test_all_around_the_least_capacity_is_the_sector_s(capsys: pytest.CaptureFixture[str]) -> None:
    answer = json.loads(ran(capsys, *RUNS["around"], "--json")[1])
    least = [min(row[k] for row in answer["capacity"]) for k in range(2)]
    table = dict(zip(answer["sectors"]["radii"], answer["sectors"]["around"], strict=True))
    for radius, capacity in zip(answer["radii"], least, strict=True):
        assert capacity == pytest.approx(table[radius], rel=1e-5)
    floats = answer["floats"]
    assert floats["pressure"][0][0] == pytest.approx(floats["force"][0][0] / floats["mat_area"])


def test_amounts_are_read_with_their_units(capsys: pytest.CaptureFixture[str]) -> None:
    words = [*RUNS["losses"], "--json", "--amount", "lean=2 deg", "--amount", "load-area=2 m2"]
    answer = json.loads(ran(capsys, *words)[1])
    effects = {effect["name"]: effect for effect in answer["effects"]}
    assert effects["lean"]["amount"] == pytest.approx(math.radians(2.0))
    assert effects["wind"]["amount"] == pytest.approx(10.0)


REFUSED = {
    "out of reach": (["overload", *ONE, "--radius", "60 m"], "no rated load at a radius"),
    "no radius": (["around", *ONE, "--radius", "sixty"], "--radius"),
    "no unit": (["overload", *ONE, "--radius", "6"], "--radius"),
    "two radii": (["overload", *ONE, "--radius", "6 m, 7 m"], "Give one radius"),
    "counterweight": (
        ["losses", *ONE, "--counterweight", "9 t"],
        "There is no counterweight '9 t'",
    ),
    "outrigger": (["around", *ONE, "--support", "quarter"], "There is no support 'quarter'"),
    "map and radius": (["overload", "truck18", "--map", "--radius", "6 m"], "--map takes every"),
    "small mat": (["around", *ONE, "--mat", "1 cm2"], "does not carry a float"),
    "heavy load": (["around", *ONE, "--radius", "8 m", "--load", "900 t"], "no equilibrium"),
    "four radii": (["around", *FOUR, "--figure", "a.svg"], "Give up to 3, or ask for no figure"),
    "five places": (["losses", *ONE, "--radius", "5 m,6 m,7 m,8 m,9 m"], "Give up to 4"),
    "no effect": (["losses", *ONE, "--amount", "rain=3 mm"], "names no effect"),
    "typo": (["losses", *ONE, "--amount", "wnd=3 m/s"], "wind"),
    "storm": (["losses", *ONE, "--amount", "wind=90 m/s"], "90 m/s is outside 0 m/s to 40 m/s"),
    "mud": (["overload", *ONE, "--radius", "6 m", "--ground", "1 N/m"], "no stiffness of a float"),
    "picture": (["losses", *ONE, "--figure", "losses.doc"], ".png, .svg or .pdf"),
    "folder": (["around", *ONE, "--figure", "/no/such/folder/a.png"], "does not exist"),
}


@pytest.mark.parametrize("case", REFUSED)
def test_bad_input_is_refused_in_a_sentence(case: str, capsys: pytest.CaptureFixture[str]) -> None:
    words, said = REFUSED[case]
    code, out, err = ran(capsys, *words)
    assert code == 2
    assert out == ""
    assert said in one_line(err)
    assert len(err.strip().splitlines()) == 1


def test_more_radii_than_a_figure_bears_are_told_in_words(
    capsys: pytest.CaptureFixture[str],
) -> None:
    code, out, _ = ran(capsys, "around", *FOUR)
    assert code == 0
    table = out.split("\n\n")[1]
    assert [f"{radius}.00 m" in table for radius in (5, 6, 7, 8)] == [True] * 4


@pytest.mark.parametrize("command", ["around", "lift"])
def test_every_mass_of_the_file_is_listed_and_they_add_up(
    command: str, capsys: pytest.CaptureFixture[str]
) -> None:
    crane = load_machine("truck18")
    _, out, _ = ran(capsys, command, *ONE, "--radius", "8 m")
    title = "what holds the crane down" if command == "lift" else "moment about the tipping line"
    table = next(part for part in out.split("\n\n") if part.startswith(title))
    masses = [*crane.carrier, *crane.superstructure]
    named = [*(part.name for part in masses), f"counterweight {crane.counterweights[0].name}"]
    named += ["base section", "section 3", "head"]
    for name in named:
        assert sum(line.startswith(f"{name}  ") for line in table.splitlines()) == 1
    # One unit down a column, so that a reader can add it up; each figure is rounded to a tenth.
    rows = table.split("in all")[0].splitlines()[2:]
    listed = [re.findall(r"(-?[\d.,]+) kN m", row)[-1] for row in rows]
    whole = re.findall(r"in all.* (-?[\d.,]+) kN m", table)[-1]
    total, *parts = (float(figure.replace(",", "")) for figure in (whole, *listed))
    assert sum(parts) == pytest.approx(total, abs=0.05 * len(listed))


def test_one_answer_has_one_unit_of_pressure_and_names_its_supports(
    capsys: pytest.CaptureFixture[str],
) -> None:
    _, lifted, _ = ran(capsys, "lift", *ONE, "--radius", "8 m", "--load", "2 t")
    _, turned, _ = ran(capsys, "around", *ONE, "--radius", "8 m", "--load", "2 t")
    for out in (lifted, turned):
        assert "kPa" in out
        assert "MPa" not in out
        for name in ("front left", "front right", "rear left", "rear right"):
            assert name in out
    _, tyres, _ = ran(capsys, "lift", *ONE, "--radius", "5 m", "--support", "tyres")
    assert "axle 1 left" in tyres
    assert "axle 3 right" in tyres
