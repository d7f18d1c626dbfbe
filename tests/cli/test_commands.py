"""The commands as a person or a program uses them: output, JSON keys, refusals."""

import json
import re

import numpy as np
import pytest

from boomsim.caution import CAUTION
from boomsim.cli import main

GRAVITY = 9.80665


def answer(capsys, *arguments):
    assert main(list(arguments)) == 0
    return capsys.readouterr().out


def data(capsys, *arguments):
    return json.loads(answer(capsys, *arguments, "--json"))


def refusal(capsys, *arguments):
    assert main(list(arguments)) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert "Traceback" not in said.err
    return said.err


def in_one_line(text):
    return " ".join(text.split())


@pytest.mark.slow
def test_compare_alone_runs_the_demonstration_and_names_its_picture(capsys, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    said = in_one_line(answer(capsys, "compare"))
    assert "yard60 (invented)" in said
    assert "(0, 0, 45, 45)" in said
    assert "carries most up to" in said
    assert "Why, at" in said
    assert CAUTION in said
    assert "boomsim-compare.png" in said
    assert (tmp_path / "boomsim-compare.png").stat().st_size > 20_000


def test_compare_json_has_the_keys_that_outsiders_rely_on(capsys):
    found = data(capsys, "compare")
    assert found["schema"] == "boomsim.compare/4"
    assert found["machine"] == "yard60"
    assert found["caution"] == CAUTION
    radii = len(found["radii"])
    for configuration in found["configurations"]:
        assert len(configuration["extension"]) == 4
        assert configuration["length"] == pytest.approx(found["length"])
        for name in ("capacity", "governing", "set_by"):
            assert len(configuration[name]) == radii
        known = {"stability", "strength", "permissible value", None}
        assert set(configuration["set_by"]) <= known
    assert len(found["best"]) == radii
    for crossover in found["crossovers"]:
        assert set(crossover) >= {"radius", "from", "to"}


def test_compare_at_a_length_takes_every_legal_configuration(capsys):
    found = data(capsys, "compare", "yard60", "--length", "18.7 m", "--radii", "6 m, 12 m")
    # One section at 90 % of four, or two at 45 %: four and six ways.
    assert len(found["configurations"]) == 10
    assert found["radii"] == [6.0, 12.0]


@pytest.mark.slow
def test_by_default_ways_that_matter_are_listed_and_every_way_on_demand(capsys):
    arguments = ("compare", "yard60", "--length", "18.7 m")
    short = answer(capsys, *arguments)
    full = answer(capsys, *arguments, "--every-way")
    count = len(data(capsys, *arguments)["configurations"])
    listed = dict(re.findall(r"([A-Z]) (\([\d., ]+\))", in_one_line(full)))
    assert len(listed) == count
    # Each way keeps its letter, and the text says how many it leaves out.
    kept = dict(re.findall(r"([A-Z]) (\([\d., ]+\))", in_one_line(short)))
    assert kept.items() < listed.items()
    assert f"{count - len(kept)} of the {count} ways are left out" in in_one_line(short)
    assert "left out" not in full
    table = [line for line in short.splitlines() if line.startswith("radius")]
    assert table[0].split() == ["radius", *sorted(kept), "most"]


@pytest.mark.slow
def test_where_several_carry_the_same_the_table_says_tie(capsys):
    said = answer(capsys, "compare", "yard60", "--parts", "1")
    found = data(capsys, "compare", "yard60", "--parts", "1")
    rows = [line.split() for line in said.splitlines() if re.match(r"\d+\.\d+ m +\d", line)]
    carried = [level for level in found["level"] if level]
    assert ["tie" if len(level) > 1 else "ABC"[level[0]] for level in carried] == [
        row[-1] for row in rows
    ]
    assert "tie" in {row[-1] for row in rows}


def test_the_answer_begins_with_three_sentences(capsys):
    said = answer(capsys, "compare", "yard60").split("\n\n")[0]
    assert said.startswith("Close in, from ")
    assert "\nFar out, from " in said
    assert "\nAt " in said


def test_a_system_without_a_length_is_obeyed(capsys):
    for system in ("sequenced", "synchronised"):
        found = data(capsys, "compare", "truck18", "--system", system)
        assert {way["system"] for way in found["configurations"]} == {system}


def test_lift_json_has_the_keys_that_outsiders_rely_on(capsys):
    found = data(
        capsys, "lift", "yard60", "--extension", "0,0,45,45", "--radius", "10 m", "--load", "8 t"
    )
    assert found["radius"] == pytest.approx(10.0, abs=1e-6)
    assert found["boom_length"] == pytest.approx(18.7)
    assert 0.0 < found["tip_deflection"] < 0.5
    assert found["capacity"] < found["tipping_load"]
    assert {"boom_angle", "governing"} <= set(found)
    for section in found["sections"]:
        assert {"moment_max", "axial_max", "front_pad", "rear_pad"} <= set(section)
    assert {limit["set_by"] for limit in found["limits"]} == {
        "stability",
        "strength",
        "permissible value",
    }
    assert all({"name", "utilisation"} <= set(limit) for limit in found["limits"])


def test_an_outsider_can_rebuild_a_moment_and_a_pad_force_from_describe(capsys):
    """First-order statics of the outermost section, by hand from the described numbers."""
    machine = data(capsys, "describe", "yard60", "--extension", "0,0,0,90")
    lift = data(
        capsys, "lift", "yard60", "--extension", "0,0,0,90", "--angle", "40 deg", "--load", "1 t"
    )
    section, head, hoist = machine["sections"][4], machine["head"], machine["hoist"]
    angle, mouth = lift["boom_angle"], section["front_pad_at"]
    across = GRAVITY * np.cos(angle)
    along = GRAVITY * np.sin(angle)
    hung = lift["load"] + head["mass"]
    arm = section["front"] + head["ahead"] - mouth
    own = section["given"]["mass"] / section["given"]["length"]
    overhang = section["front"] - mouth
    moment = across * (hung * arm + own * overhang**2 / 2) - hung * along * head["below"] * -1.0
    pull = lift["load"] * GRAVITY / machine["tackle_advantage"][str(hoist["parts"][-1])]
    moment += pull * head["rope_above"] * -1.0
    # The rope runs nearly along the boom, and the deflection adds its second-order part: 2 %.
    assert lift["sections"][4]["moment_max"] == pytest.approx(moment, rel=0.02)
    total = moment + across * own * (section["overlap"] ** 2 / 2) * -1.0
    assert lift["sections"][4]["front_pad"] == pytest.approx(
        total / section["overlap"] + across * (hung + own * section["given"]["length"]), rel=0.03
    )


@pytest.mark.slow
def test_describe_as_toml_is_a_machine_file_of_ones_own(capsys, tmp_path):
    mine = tmp_path / "mein kran ü.toml"
    mine.write_text(answer(capsys, "describe", "yard60", "--toml"), encoding="utf-8")
    ours = data(capsys, "compare", "yard60", "--length", "18.7 m", "--radii", "8 m")
    theirs = data(capsys, "compare", str(mine), "--length", "18.7 m", "--radii", "8 m")
    assert ours["configurations"] == theirs["configurations"]


@pytest.mark.parametrize("machine", ["bench", "truck18", "yard60"])
def test_a_machine_alone_is_compared_at_radii_that_it_reaches(machine, capsys):
    found = data(capsys, "compare", machine)
    assert len(found["radii"]) >= 10
    assert any(best is not None for best in found["best"])


@pytest.mark.slow
def test_us_customary_units_are_an_output_choice_only(capsys):
    arguments = ("compare", "yard60", "--length", "61.4 ft", "--radii", "20 ft, 40 ft")
    said = answer(capsys, *arguments, "--units", "us")
    assert " ft" in said
    assert " lb" in said
    assert " kg" not in said
    assert data(capsys, *arguments)["radii"] == pytest.approx([6.096, 12.192])


def test_machines_lists_all_three(capsys):
    assert [m["name"] for m in data(capsys, "machines")["machines"]] == [
        "bench",
        "truck18",
        "yard60",
    ]


def test_json_holds_no_nan_and_nothing_else_is_printed(capsys):
    text = answer(capsys, "compare", "yard60", "--length", "18.7 m", "--radii", "1 m", "--json")
    assert "NaN" not in text
    assert json.loads(text)["best"] == [None]


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["compare", "yard6"], "yard60"),
        (["compare", "yard60", "--length", "18,9 m"], "decimal point"),
        (["compare", "yard60", "--length", "18.7"], "unit"),
        (["compare", "yard60", "--length", "nan m"], "--length"),
        (["compare", "yard60", "--length", "100 m"], "43.50 m"),
        (["compare", "yard60", "--length", "13 m"], "nearest lengths"),
        (["compare", "yard60", "--length", "18.7 m", "--radii", "0 m"], "above 0"),
        (["compare", "yard60", "--length", "18.7 m", "--slew", "sideways"], "around"),
        (["compare", "yard60", "--length", "18.7 m", "--rule", "shares"], "'share'"),
        (["compare", "yard60", "--length", "18.7 m", "--counterweight", "11 t"], "'10 t'"),
        (["compare", "yard60", "--length", "18.7 m", "--support", "hal"], "'half'"),
        (["compare", "yard60", "--length", "18.7 m", "--parts", "99"], "12"),
        (["compare", "yard60", "--length", "18.7 m", "--system", "free"], "pinned"),
        (["compare", "yard60", "--system", "foo"], "pinned, sequenced, synchronised, free"),
        (["compare", "yard60", "--system", "sequenced"], "no system 'sequenced'"),
        (["compare", "yard60", "--extension", "0,0,0,0", "--system", "foo"], "no boom system"),
        (["compare", "yard60", "--length", "18.7 m", "--wind", "90 m/s"], "60"),
        (["compare", "yard60", "--length", "18.7 m", "--figure", "a.doc"], ".png"),
        (["compare", "yard60", "--radii", "1 m"], "Nothing may be lifted"),
        (["chart", "yard60", "--rows", "0.000001 m"], "more than 1000 rows"),
        (["chart", "yard60", "--radii", ",".join(f"{k} mm" for k in range(1, 1500))], "1 to 1000"),
        (["lift", "yard60", "--extension", "0,0,30,0"], "45"),
        (["lift", "yard60", "--extension", "0,0,0"], "4 percentages"),
        (["lift", "yard60", "--extension", "0,0,0,x"], "percentages"),
        (["lift", "yard60", "--extension", "0.45,0.45,0,0"], "Write 45,45,0,0"),
        (["lift", "yard60", "--extension", "0,0,1,1"], "Write 0,0,100,100"),
        (["lift", "yard60", "--extension", "0,0,0,120"], "0 to 100"),
        (["lift", "yard60", "--radius", "30 m"], "reaches"),
        (["lift", "yard60", "--load", "-1 t"], "-1 t is outside 0 t"),
        (["lift", "yard60", "--load", "5 ton"], "short_ton"),
        (["lift", "yard60", "--load", "500 t", "--extension", "100,100,100,100"], "equilibrium"),
        (["lift", "yard60", "--angle", "120 deg"], "85 deg"),
        (["describe", "no-such-file.toml"], "no-such-file.toml"),
        (["lift", "yard60", "--load=--"], "two dashes"),
        (["losses", "yard60", "--amount=--"], "two dashes"),
    ],
)
def test_bad_input_is_refused_in_a_sentence_with_the_way_out(capsys, arguments, says):
    assert says in in_one_line(refusal(capsys, *arguments))


def test_a_refused_picture_leaves_no_file(capsys, tmp_path):
    target = tmp_path / "no" / "such" / "folder" / "a.png"
    refusal(capsys, "compare", "yard60", "--length", "18.7 m", "--figure", str(target))
    assert list(tmp_path.iterdir()) == []
