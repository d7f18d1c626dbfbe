"""The page of claims: every command on it runs, every check is a test that says what it is."""

import re
import shlex
from pathlib import Path

import pytest
from verification.checks import STATUSES, checks_of, sentence_of

from boomsim.caution import CAUTION
from boomsim.cli import main
from boomsim.lessons.shown.shown_in_order import shown_of

ROOT = Path(__file__).parents[1]
TEXT = (ROOT / "docs" / "claims.md").read_text(encoding="utf-8")
INSTRUCTOR = (ROOT / "docs" / "instructor.md").read_text(encoding="utf-8")


def rows(text):
    """Cells of a page's tables, without their heads."""
    lines = [line for line in text.splitlines() if line.startswith("| ")]
    return [[cell.strip() for cell in line.strip("|").split(" | ")] for line in lines]


CLAIMS, HELD = (
    [row for row in rows(part) if row[0] not in ("", "|")] for part in TEXT.split("## What each")
)


def test_every_claim_is_held_by_a_check_and_no_check_holds_another():
    assert len(CLAIMS) >= 12
    assert list(dict.fromkeys(row[0] for row in HELD)) == [row[0] for row in CLAIMS]


@pytest.mark.parametrize("row", HELD, ids=lambda row: row[1].split(":")[0])
def test_a_check_is_a_test_with_this_source_and_status(row):
    sentence, path = re.fullmatch(r"(.*): `(tests/[\w/]+\.py)`", row[1]).groups()
    (check,) = [one for one in checks_of(ROOT / path) if sentence_of(one.name) == sentence]
    assert [check.source, check.status] == row[2:]
    assert check.status in STATUSES
    assert f"*{check.status}*" in TEXT


@pytest.mark.slow
@pytest.mark.parametrize("row", CLAIMS, ids=lambda row: row[0])
def test_the_command_of_a_claim_runs_and_says_the_caution(row, capsys):
    (command,) = re.findall(r"`boomsim ([^`]*)`", row[2])
    assert main(shlex.split(command)) == 0
    assert CAUTION in " ".join(capsys.readouterr().out.split())


@pytest.mark.parametrize("row", CLAIMS, ids=lambda row: row[0])
def test_a_class_meets_each_claim_in_a_lesson_or_a_scene(row):
    (command,) = re.findall(r"`boomsim (\w+)", row[2])
    if lesson := re.fullmatch(r"lesson (\d\d), \*(.*)\*", row[3]):
        shown = shown_of(lesson[1])
        assert lesson[2] in {**shown.views, **shown.exercises}
    else:
        (number,) = re.fullmatch(r"scene (\d+)", row[3]).groups()
        assert re.search(rf"^{number}\. .*`boomsim {command}\b", INSTRUCTOR, re.M)
