"""Every long command shows how far it is, with one and the same bar, and only to a person."""

import io
import re
import sys
from pathlib import Path
from types import SimpleNamespace

import pytest

from boomsim.cli import main
from boomsim.cli import progress_bar as progress
from boomsim.files.work_progress import counted

PACKAGE = Path(__file__).parents[2] / "boomsim"
LONG = {
    "chart bench --all {}/book": "rating",
    "paper quiz-10-minutes --variants 2 --format json --out {}/papers": "setting papers",
    "handouts {}/sheets --lesson 01 --lesson 02": "setting handouts",
    "page {}/page.html bench": "drawing ways",
    "losses bench": "rating again",
    "overload bench --map": "raising loads",
    "chart bench --breaks-first": "raising loads",
    "game bench --picks 2 --seed 1 --page {}/game.html": "drawing picks",
}


class Screen(io.StringIO):
    """Standard error of somebody who sits before it."""

    def isatty(self):
        return True


@pytest.fixture
def screen(monkeypatch):
    monkeypatch.setattr(progress, "PATIENCE", 0.0)
    seen = Screen()
    monkeypatch.setattr(progress, "sys", SimpleNamespace(stderr=seen))
    return seen.getvalue


def left(drawn):
    """What stands on the last line of a terminal after all this was written to it."""
    line = ""
    for part in drawn.split("\n")[-1].split("\r"):
        line = part + line[len(part) :]
    return line.strip()


@pytest.mark.slow
@pytest.mark.parametrize("words", LONG)
def test_a_long_command_counts_up_to_the_end_and_wipes_its_bar(words, screen, tmp_path):
    assert main(words.format(tmp_path).split()) == 0
    drawn = screen()
    counts = re.findall(rf"{LONG[words]}  \[[#.]{{30}}\] (\d+)/(\d+)", drawn)
    assert [int(done) for done, _ in counts] == list(range(int(counts[0][1]) + 1))
    assert left(drawn) == ""


def test_marking_counts_the_candidates(screen, tmp_path):
    assert main(f"paper quiz-10-minutes --variants 3 --format json --out {tmp_path}".split()) == 0
    sheet = tmp_path / "answers.csv"
    named = re.sub(r"\n,(\d+)", r"\nwho \1,\1", sheet.read_text(encoding="utf-8"))
    sheet.write_text(named, encoding="utf-8")
    assert main(["mark", f"{tmp_path}/keys/key.json", str(sheet)]) == 0
    assert re.search(r"marking  \[#{30}\] 3/3", screen())


def test_where_nobody_watches_no_bar_is_drawn(capsys, monkeypatch, tmp_path):
    monkeypatch.setattr(progress, "PATIENCE", 0.0)
    assert main(["overload", "bench", "--map"]) == 0
    assert capsys.readouterr().err == ""


def test_what_is_done_at_once_needs_no_bar(screen, monkeypatch):
    monkeypatch.setattr(progress, "PATIENCE", 60.0)
    with progress.Bar() as bar:
        bar.tell("counting", 1, 2)
    assert screen() == ""


def test_a_bar_without_any_standard_error_is_no_fault(monkeypatch):
    monkeypatch.setattr(sys, "stderr", None)
    with progress.Bar() as bar:
        bar.tell("counting", 1, 2)


def test_work_that_breaks_off_is_not_told_to_be_done():
    told = []
    each = counted([1, 2, 3], what="x", told=lambda *said: told.append(said))
    assert next(each) == 1
    each.close()
    assert told == [("x", 0, 3)]


def test_there_is_one_bar():
    drawers = {path for path in PACKAGE.rglob("*.py") if r"\r" in path.read_text(encoding="utf-8")}
    writes = {path for path in drawers if "stderr" in path.read_text(encoding="utf-8")}
    assert writes == {PACKAGE / "cli" / "progress_bar.py"}
