"""Standard output that is full, closed or read in part, and terminals with an old code page."""

import json
import os
import subprocess
from pathlib import Path

import pytest
from apart import PROGRAM, environment, one_line, ran

from boomsim.cli import main
from boomsim.machine.machine_files import builtin_text, load_machine

full = pytest.mark.skipif(not Path("/dev/full").exists(), reason="no device that is always full")
posix = pytest.mark.skipif(os.name == "nt", reason="a POSIX shell closes the streams")
OLD = {"PYTHONUTF8": "0", "PYTHONIOENCODING": "cp1252", "LC_ALL": "C"}
BARE = {"PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0", "LC_ALL": "C", "PYTHONIOENCODING": "ascii"}


@pytest.mark.slow
@full
@pytest.mark.parametrize("words", [("machines",), ("chart", "--json"), ("describe", "--toml")])
@pytest.mark.parametrize("buffered", ["", "1"])
def test_a_full_disk_under_the_answer_is_said_in_one_line(
    words: tuple[str, ...], buffered: str, tmp_path: Path
) -> None:
    with Path("/dev/full").open("w") as nowhere:
        code, _, err = ran(
            *words, cwd=tmp_path, stdout=nowhere, env=environment(PYTHONUNBUFFERED=buffered)
        )
    assert code == 2
    assert "cannot be written to standard output: No space left" in one_line(err)


@pytest.mark.slow
@posix
@pytest.mark.parametrize("words", ["machines", "chart --json", "compare --figure a.svg"])
def test_a_reader_who_has_seen_enough_is_no_fault(words: str, tmp_path: Path) -> None:
    command = " ".join(PROGRAM)
    done = subprocess.run(
        ["bash", "-c", f'{command} {words} | head -1; exit "${{PIPESTATUS[0]}}"'],
        cwd=tmp_path, env=environment(), capture_output=True, text=True,
    )  # fmt: skip
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.count("\n") == 1
    assert ("--figure" in words) is (tmp_path / "a.svg").is_file()


@posix
@pytest.mark.parametrize(
    ("words", "code"),
    [("machines >&-", 0), ("describe none 2>&-", 2), ("describe none >&- 2>&-", 2)],
)
def test_closed_streams_are_no_fault_and_nothing_goes_to_the_other_one(
    words: str, code: int, tmp_path: Path
) -> None:
    done = subprocess.run(
        ["bash", "-c", f"{' '.join(PROGRAM)} {words}"],
        cwd=tmp_path, env=environment(), capture_output=True, text=True,
    )  # fmt: skip
    assert (done.returncode, done.stdout, done.stderr) == (code, "", "")


@pytest.mark.slow
@pytest.mark.parametrize("old", [OLD, BARE], ids=["cp1252", "ascii"])
@pytest.mark.parametrize(
    "words", [("machines",), ("lift",), ("compare", "bench"), ("describe",), ("around", "--help")]
)
def test_a_character_that_a_code_page_has_not_is_no_fault(
    old: dict[str, str], words: tuple[str, ...], tmp_path: Path
) -> None:
    code, out, err = ran(*words, cwd=tmp_path, env=environment(**old), encoding="cp1252")
    assert (code, err) == (0, "")
    assert len(out) > 200


@pytest.mark.parametrize("old", [OLD, BARE], ids=["cp1252", "ascii"])
def test_a_machine_file_written_on_an_old_code_page_can_be_read_anywhere(
    old: dict[str, str], tmp_path: Path
) -> None:
    mine = tmp_path / "mine.toml"
    text = builtin_text("bench").replace('title = "', 'title = "Größe ½ 🏗 ', 1)
    mine.write_text(text, encoding="utf-8")
    written = tmp_path / "written.toml"
    with written.open("wb") as file:
        code, _, err = ran(
            "describe", "mine.toml", "--toml", cwd=tmp_path, env=environment(**old), stdout=file
        )
    assert (code, err) == (0, "")
    assert load_machine(written) == load_machine(mine)


@pytest.mark.parametrize("old", [OLD, BARE], ids=["cp1252", "ascii"])
def test_json_on_an_old_code_page_loses_no_character(old: dict[str, str], tmp_path: Path) -> None:
    mine = tmp_path / "mine.toml"
    text = builtin_text("bench").replace('title = "', 'title = "Größe ½ 🏗 ', 1)
    mine.write_text(text, encoding="utf-8")
    code, out, _ = ran(
        "describe", "mine.toml", "--json", cwd=tmp_path, env=environment(**old), encoding="ascii"
    )
    assert code == 0
    assert json.loads(out)["title"].startswith("Größe ½ 🏗 ")


def test_a_refusal_names_what_no_terminal_can_show(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["describe", "\udce9.toml"]) == 2
    assert "There is no such machine" in capsys.readouterr().err
