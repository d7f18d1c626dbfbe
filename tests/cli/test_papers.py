"""``boomsim paper`` and ``boomsim mark`` from end to end, as an examiner uses them."""

import csv
import hashlib
import json
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from boomsim.caution import CAUTION
from boomsim.cli import main

BLUEPRINT = """
title = "Prüfung: der Ausleger"
minutes = 30
variants = 3
seed = "end to end"

[[part]]
families = ["statics_pad_force", "geometry_radius"]
questions = 2

[[part]]
families = ["strategy_own_weight"]
questions = 1
form = "choice"
"""

FULL = 7
"""Three steps of the pads, two of the radius, two marks for the choice [1]."""


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Papers of three variants, written by the command; spaces and accents in the path."""
    place = tmp_path_factory.mktemp("Prüfung é")
    plan = place / "mein plan é.toml"
    plan.write_text(BLUEPRINT, encoding="utf-8")
    out = place / "März 1"
    formats = [word for one in ("json", "html", "md", "qti") for word in ("--format", one)]
    assert main(["paper", str(plan), "--out", str(out), *formats]) == 0
    return out


def refused(capsys: pytest.CaptureFixture[str], *arguments: str) -> str:
    """Say what a command refuses, on one line."""
    capsys.readouterr()
    assert main(list(arguments)) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert "Traceback" not in said.err
    return " ".join(said.err.split())


def in_one_line(text: str) -> str:
    return " ".join(text.split())


def solved(folder: Path, variant: str) -> list[dict]:
    """The questions of one variant with their worked solutions."""
    text = (folder / "keys" / "solutions" / f"{variant}.json").read_text(encoding="utf-8")
    return json.loads(text)["questions"]


def right_answers(folder: Path, variant: str) -> dict[str, str]:
    """What the worked solutions say, by column of the answer sheet."""
    answers = {}
    for question in solved(folder, variant):
        found = {step["letter"]: step["answer"] for step in question["steps"]}
        for part in question["parts"]:
            answers[part["label"]] = found[part["letter"]]
        if question["right"]:
            answers[str(question["number"])] = question["right"]
    return answers


def filled(folder: Path, rows: list[tuple[str, str, dict[str, str]]], path: Path) -> Path:
    """Fill in the answer sheet that came with the papers."""
    with (folder / "answers.csv").open(encoding="utf-8", newline="") as sheet:
        head = next(csv.reader(sheet))
    with path.open("w", encoding="utf-8", newline="") as sheet:
        writer = csv.DictWriter(sheet, head)
        writer.writeheader()
        for candidate, variant, answers in rows:
            code = codes(folder).get(variant, "")
            named = {"candidate": candidate, "variant": variant, "code": code}
            writer.writerow({**named, **answers})
    return path


def codes(folder: Path) -> dict[str, str]:
    """The code of every variant, as its row of the answer sheet has it."""
    with (folder / "answers.csv").open(encoding="utf-8", newline="") as sheet:
        return {row["variant"]: row["code"] for row in csv.DictReader(sheet)}


def marks(capsys: pytest.CaptureFixture[str], folder: Path, sheet: Path, *more: str) -> dict:
    """Mark, and read what the command says as JSON."""
    capsys.readouterr()
    assert main(["mark", str(folder / "keys" / "key.json"), str(sheet), "--json", *more]) == 0
    return json.loads(capsys.readouterr().out)


def fingerprints(folder: Path) -> dict[str, str]:
    files = sorted(path for path in folder.rglob("*") if path.is_file())
    return {
        path.relative_to(folder).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in files
    }


def test_the_command_says_what_it_wrote_and_how_to_go_on(tmp_path, capsys):
    plan = tmp_path / "plan.toml"
    plan.write_text(BLUEPRINT, encoding="utf-8")
    out = tmp_path / "one two"
    assert main(["paper", str(plan), "--out", str(out), "--variants", "1"]) == 0
    said = capsys.readouterr().out
    assert "3 files written" in said
    assert CAUTION in in_one_line(said)
    command = next(line for line in said.splitlines() if line.startswith("To mark: "))
    assert f"'{out / 'keys' / 'key.json'}'" in command  # quoted, so that it can be copied
    assert sorted(p.name for p in out.rglob("*.pdf")) == ["01.pdf"] * 3
    assert "nor the seed" in in_one_line(said)


def test_json_is_all_that_is_said_when_it_is_asked_for(tmp_path, capsys):
    plan = tmp_path / "plan.toml"
    plan.write_text(BLUEPRINT, encoding="utf-8")
    words = ["paper", str(plan), "--out", str(tmp_path / "out"), "--format", "md", "--json"]
    assert main(words) == 0
    told = json.loads(capsys.readouterr().out)
    assert told["schema"] == "boomsim.paper/4"
    assert (told["variants"], told["kept"]) == (3, 0)
    assert Path(told["key"]).is_file()
    assert main(words) == 0
    assert json.loads(capsys.readouterr().out)["made"] == 0


def test_the_solutions_answers_earn_full_marks_in_every_variant(folder, tmp_path, capsys):
    rows = [(f"Zoë {n}", n, right_answers(folder, n)) for n in ("01", "02", "03")]
    told = marks(capsys, folder, filled(folder, rows, tmp_path / "a.csv"))
    assert [(one["candidate"], one["marks"], one["of"]) for one in told["candidates"]] == [
        ("Zoë 01", FULL, FULL), ("Zoë 02", FULL, FULL), ("Zoë 03", FULL, FULL),
    ]  # fmt: skip
    assert told["refused"] == []


def test_one_slip_is_named_and_costs_its_step_alone(folder, tmp_path, capsys):
    pads = next(q for q in solved(folder, "02") if q["family"] == "statics_pad_force")
    rear = {step["letter"]: step["answer"] for step in pads["steps"]}["R_r"]
    end = pads["parts"][-1]["label"]
    rows = [("Ada", "02", right_answers(folder, "02") | {end: rear})]
    sheet = filled(folder, rows, tmp_path / "a.csv")
    told = marks(capsys, folder, sheet, "--report", str(tmp_path / "report é"))
    assert told["candidates"][0]["marks"] == FULL - 1
    assert main(["mark", str(folder / "keys" / "key.json"), str(sheet)]) == 0
    said = capsys.readouterr().out
    assert "6 of 7" in said
    assert "forgot that the front pad also carries the force itself" in in_one_line(said)
    page = (tmp_path / "report é" / "candidates" / "row-0002.html").read_text(encoding="utf-8")
    assert "forgot that the front pad also carries the force itself" in page


def test_an_error_carried_forward_is_shown_beside_the_right_value(folder, tmp_path, capsys):
    pads = next(q for q in solved(folder, "02") if q["family"] == "statics_pad_force")
    first, second, third = (one["label"] for one in pads["parts"])
    givens = {letter: float(text.split()[0]) for letter, text in pads["givens"].items()}
    moment = 2 * givens["F"] * givens["a"]  # twice the moment; the rest follows from it
    rear = moment / givens["c"]
    wrong = {
        first: f"{moment:.4g} kNm", second: f"{rear:.4g}", third: f"{rear + givens['F']:.4g}",
    }  # fmt: skip
    rows = [("Ada", "02", right_answers(folder, "02") | wrong)]
    sheet = filled(folder, rows, tmp_path / "a.csv")
    told = marks(capsys, folder, sheet, "--report", str(tmp_path / "report"))
    assert told["candidates"][0]["marks"] == FULL - 1
    page = (tmp_path / "report" / "candidates" / "row-0002.html").read_text(encoding="utf-8")
    assert page.count("carried forward</td>") == 2
    assert page.count("from your earlier value") == 2


def test_a_hostile_row_is_refused_and_the_rest_is_marked(folder, tmp_path, capsys):
    right = right_answers(folder, "01")
    rows = [
        ("Ada", "01", right),
        ('=HYPERLINK("x")', "01", right),
        ("Eve", "77", right),
        ("Mal", "01", right | {"1a": "9**9**9", "3": "<script>"}),
        ("Grace", "01", right),
    ]
    told = marks(capsys, folder, filled(folder, rows, tmp_path / "a.csv"))
    found = {one["candidate"]: one["marks"] for one in told["candidates"]}
    assert found["Ada"] == found["Grace"] == FULL
    assert set(found) == {"Ada", "Grace", "Mal"}
    assert found["Mal"] < FULL
    assert [one["row"] for one in told["refused"]] == [3, 4, 5, 5]


def test_where_all_earn_the_same_nothing_is_told_apart_and_no_number_is_shown(
    folder, tmp_path, capsys
):
    sheet = filled(folder, [("Ada", "01", right_answers(folder, "01"))], tmp_path / "a.csv")
    capsys.readouterr()
    assert main(["mark", str(folder / "keys" / "key.json"), str(sheet)]) == 0
    assert "nan" not in capsys.readouterr().out.split()


def test_a_decimal_comma_is_read_only_when_its_locale_is_named(folder, tmp_path, capsys):
    right = {k: v.replace(".", ",") for k, v in right_answers(folder, "01").items()}
    sheet = filled(folder, [("Ada", "01", right)], tmp_path / "a.csv")
    assert marks(capsys, folder, sheet, "--locale", "de")["candidates"][0]["marks"] == FULL
    told = marks(capsys, folder, sheet)
    assert told["candidates"][0]["marks"] < FULL
    assert "comma" in told["refused"][0]["reason"]


@pytest.mark.slow
def test_the_same_seed_gives_the_same_bytes_and_another_seed_others(tmp_path):
    plan = tmp_path / "plan.toml"
    plan.write_text(BLUEPRINT, encoding="utf-8")
    forms = ("pdf", "html", "md", "json", "qti", "moodle")
    every = [word for one in forms for word in ("--format", one)]
    for name, seed, salt in (("a", "7", "1"), ("b", "7", "99"), ("c", "8", "1")):
        run_apart(
            "paper", str(plan), "--out", str(tmp_path / name), "--seed", seed, *every,
            environment={"PYTHONHASHSEED": salt},
        )  # fmt: skip
    a, b, c = (fingerprints(tmp_path / name) for name in "abc")
    assert len(a) > 30
    assert a == b
    assert a.keys() == c.keys()
    assert a["papers/01.pdf"] != c["papers/01.pdf"]


def run_apart(*arguments: str, environment: dict[str, str] | None = None) -> str:
    """Run the program in a process of its own."""
    done = subprocess.run(
        [sys.executable, "-m", "boomsim", *arguments], cwd=Path(__file__).parents[2],
        env=os.environ | (environment or {}), capture_output=True, text=True, check=True,
    )  # fmt: skip
    return done.stdout


@pytest.mark.slow
@pytest.mark.skipif(os.name == "nt", reason="Windows has no SIGINT for another process")
def test_a_run_that_is_interrupted_leaves_whole_files_and_the_next_one_completes(tmp_path):
    plan, out = tmp_path / "plan.toml", tmp_path / "out"
    plan.write_text(BLUEPRINT.replace("variants = 3", "variants = 12"), encoding="utf-8")
    words = ["paper", str(plan), "--out", str(out)]
    running = subprocess.Popen(
        [sys.executable, "-m", "boomsim", *words], cwd=Path(__file__).parents[2],
        stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True,
    )  # fmt: skip
    until = time.monotonic() + 300
    while len(list(out.glob("papers/*.pdf"))) < 3 and time.monotonic() < until:
        time.sleep(0.01)
    running.send_signal(signal.SIGINT)
    _, said = running.communicate(timeout=120)
    assert running.returncode == 130
    assert "goes on from here" in said
    assert "Traceback" not in said

    there = [path for path in out.rglob("*") if path.is_file()]
    made = [path for path in there if path.suffix == ".pdf"]
    assert 3 <= len(made) < 3 * 12
    assert all(p.read_bytes().startswith(b"%PDF") and b"%%EOF" in p.read_bytes() for p in made)
    assert {p.name for p in there} - {p.name for p in made} == {
        "key.json", "answers.csv", "manifest.json",
    }  # fmt: skip
    assert len(json.loads((out / "keys" / "key.json").read_text())["variants"]) == 12

    told = json.loads(run_apart(*words, "--json"))
    assert told["kept"] == len(made)
    assert told["made"] == 3 * 12 - len(made)
    run_apart("paper", str(plan), "--out", str(tmp_path / "whole"))
    assert fingerprints(out) == fingerprints(tmp_path / "whole")


def test_all_faults_of_a_blueprint_are_named_at_once_and_nothing_is_written(tmp_path, capsys):
    plan = tmp_path / "schlechter plan.toml"
    plan.write_text(
        'title = ""\nminutes = 0\nunits = "metrisch"\nvariant = 3\n'
        '[[part]]\ntopics = ["geometri"]\nquestions = 99\n',
        encoding="utf-8",
    )
    out = tmp_path / "out"
    said = refused(capsys, "paper", str(plan), "--out", str(out))
    assert "has 6 faults" in said
    for word in ("title", "minutes", "units", "variants", "geometry", "questions", plan.name):
        assert word in said
    assert not out.exists()


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (("--format", "pfd"), "pdf"),
        (("--variants", "0"), "variants"),
        (("--variants", "99999"), "5000"),
        (("--seed", ""), "seed"),
    ],
)
def test_options_that_make_no_sense_are_refused(tmp_path, capsys, arguments, says):
    plan = tmp_path / "plan.toml"
    plan.write_text(BLUEPRINT, encoding="utf-8")
    out = tmp_path / "out"
    assert says in refused(capsys, "paper", str(plan), "--out", str(out), *arguments)
    assert not out.exists()


@pytest.mark.parametrize("place", ["a file", "/sys/boomsim"])
def test_a_folder_that_cannot_be_written_is_refused_in_a_sentence(tmp_path, capsys, place):
    plan = tmp_path / "plan.toml"
    plan.write_text(BLUEPRINT, encoding="utf-8")
    (tmp_path / "a file").write_text("x")
    out = Path(place) if place.startswith("/") else tmp_path / place
    if place.startswith("/") and not out.parent.is_dir():
        pytest.skip("this system has no /sys, which nobody may write to")
    said = refused(capsys, "paper", str(plan), "--out", str(out))
    assert "cannot be written" in said
    assert "Choose another folder" in said
    assert sorted(p.name for p in tmp_path.iterdir()) == ["a file", "plan.toml"]


@pytest.mark.skipif(getattr(os, "geteuid", lambda: 1)() == 0, reason="root may write anywhere")
def test_a_read_only_folder_is_refused_in_a_sentence(tmp_path, capsys):
    plan = tmp_path / "plan.toml"
    plan.write_text(BLUEPRINT, encoding="utf-8")
    out = tmp_path / "locked"
    out.mkdir(mode=0o555)
    assert "Permission denied" in refused(capsys, "paper", str(plan), "--out", str(out))


def test_other_papers_in_the_folder_are_not_written_over(folder, capsys):
    before = fingerprints(folder)
    plan = folder.parent / "mein plan é.toml"
    said = refused(capsys, "paper", str(plan), "--out", str(folder), "--seed", "another")
    assert "holds other papers" in said
    assert fingerprints(folder) == before


def test_a_key_or_a_sheet_that_is_none_is_refused(folder, tmp_path, capsys):
    nothing = tmp_path / "nichts.csv"
    key = str(folder / "keys" / "key.json")
    assert "nichts.csv" in refused(capsys, "mark", key, str(nothing))
    nothing.write_text("")
    refused(capsys, "mark", key, str(nothing))
    assert "not a key" in refused(capsys, "mark", str(nothing), str(nothing))
    sheet = filled(folder, [], tmp_path / "a.csv")
    assert "locale" in refused(capsys, "mark", key, str(sheet), "--locale", "klingon").lower()
