"""Papers on disk: same seed same bytes, whole files, resumed where it stopped."""

import hashlib
import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from boomsim.papers import paper_writing as writing
from boomsim.papers.paper_errors import BlueprintError, PaperError
from boomsim.papers.paper_manifest import MANIFEST, Manifest
from boomsim.papers.paper_writing import FORMATS, Written, write_papers

QUIZ = Path(__file__).parents[2] / "exercises" / "quiz-10-minutes.toml"


def quiz(folder: Path, *, formats: tuple[str, ...] = FORMATS, seed: str | None = None) -> Written:
    return write_papers(QUIZ, folder, formats=formats, variants=2, seed=seed)


def fingerprints(folder: Path) -> dict[str, str]:
    files = sorted(path for path in folder.rglob("*") if path.is_file())
    return {
        str(path.relative_to(folder)): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in files
    }


@pytest.mark.slow
def test_the_same_seed_gives_the_same_bytes_in_another_process(tmp_path: Path) -> None:
    quiz(tmp_path / "here")
    code = (
        "import sys; from boomsim.papers.paper_writing import *; "
        "write_papers(sys.argv[1], sys.argv[2], formats=FORMATS, variants=2)"
    )
    for number, salt in enumerate(("1", "77")):  # another hash seed orders sets otherwise
        there = tmp_path / f"there{number}"
        environment = os.environ | {"PYTHONHASHSEED": salt, "TZ": "Asia/Tokyo", "LC_ALL": "C"}
        subprocess.run(
            [sys.executable, "-c", code, str(QUIZ), str(there)], check=True, env=environment
        )
        assert fingerprints(there) == fingerprints(tmp_path / "here")


def test_another_seed_gives_other_papers(tmp_path: Path) -> None:
    quiz(tmp_path / "a", formats=("json",))
    quiz(tmp_path / "b", formats=("json",), seed="other")
    one, other = fingerprints(tmp_path / "a"), fingerprints(tmp_path / "b")
    assert one.keys() == other.keys()
    assert one["papers/01.json"] != other["papers/01.json"]


def test_complete_files_are_kept_and_damaged_ones_made_again(tmp_path: Path) -> None:
    first = quiz(tmp_path, formats=("html", "json"))
    assert (first.made, first.kept) == (12, 0)  # 2 variants, 3 kinds, 2 formats
    before = fingerprints(tmp_path)
    (tmp_path / "papers" / "01.html").write_text("half a p")
    (tmp_path / "keys" / "marking" / "02.json").unlink()
    second = quiz(tmp_path, formats=("html", "json"))
    assert (second.made, second.kept) == (2, 10)
    assert fingerprints(tmp_path) == before


def test_a_run_that_breaks_off_leaves_whole_files_and_goes_on_later(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    made: list[str] = []
    real = Manifest.write

    def breaks(self: Manifest, name: str, content: bytes, *, source: str) -> None:
        if len(made) == 5:  # key, answer sheet and three papers
            raise KeyboardInterrupt
        made.append(name)
        real(self, name, content, source=source)

    with monkeypatch.context() as patch, pytest.raises(KeyboardInterrupt):
        patch.setattr(writing.Manifest, "write", breaks)
        quiz(tmp_path, formats=("html",))
    there = {str(p.relative_to(tmp_path)) for p in tmp_path.rglob("*") if p.is_file()}
    assert there == {*made, MANIFEST}
    assert made[0] == "keys/key.json"  # so that what is there can be marked
    later = quiz(tmp_path, formats=("html",))
    assert (later.made, later.kept) == (3, 3)


def test_other_papers_in_the_folder_are_not_written_over(tmp_path: Path) -> None:
    quiz(tmp_path, formats=("json",))
    before = fingerprints(tmp_path)
    with pytest.raises(PaperError, match=r'seed "quiz 1".*another folder'):
        quiz(tmp_path, formats=("json",), seed="other")
    with pytest.raises(PaperError, match="Variant 02 would be"):
        write_papers(QUIZ, tmp_path, formats=("json",), variants=1)
    assert fingerprints(tmp_path) == before
    more = write_papers(QUIZ, tmp_path, formats=("json",), variants=3)
    assert (more.made, more.kept) == (3, 6)


def test_a_sheet_that_has_been_filled_in_is_left_alone(tmp_path: Path) -> None:
    sheet = quiz(tmp_path, formats=("json",)).sheet
    sheet.write_text("candidate,variant,1,2,3,4\nAda,01,A,B,C,D\n")
    again = quiz(tmp_path, formats=("json", "html"))
    assert again.sheet_kept
    assert "Ada" in sheet.read_text()
    assert not quiz(tmp_path / "fresh", formats=("json",)).sheet_kept


def test_nothing_is_written_if_anything_is_at_fault(tmp_path: Path) -> None:
    bad = tmp_path / "bad.toml"
    bad.write_text(QUIZ.read_text().replace('"geometry"', '"geometri"'))
    folder = tmp_path / "out"
    with pytest.raises(BlueprintError):
        write_papers(bad, folder)
    with pytest.raises(PaperError, match="Did you mean"):
        write_papers(QUIZ, folder, formats=("pfd",))
    with pytest.raises(PaperError):
        write_papers(QUIZ, folder, formats=())
    assert not folder.exists()


def test_a_candidates_paper_gives_no_answer_away(tmp_path: Path) -> None:
    quiz(tmp_path, formats=("html", "md", "json"))
    slip = json.loads((tmp_path / "keys" / "solutions" / "01.json").read_text())["questions"][0][
        "slips"
    ]
    words = next(iter(slip.values()))
    for path in (tmp_path / "papers").iterdir():
        assert words not in path.read_text()
    paper = json.loads((tmp_path / "papers" / "01.json").read_text())
    assert all(
        "right" not in question and "steps" not in question for question in paper["questions"]
    )


def test_every_paper_carries_the_caution(tmp_path: Path) -> None:
    quiz(tmp_path, formats=("html", "md", "json"))
    texts = [p for p in tmp_path.rglob("0*") if p.suffix in (".html", ".md", ".json")]
    assert len(texts) == 18
    assert all("not for planning a lift" in path.read_text() for path in texts)


def test_the_answer_sheet_has_a_column_for_every_answer(tmp_path: Path) -> None:
    sheet = quiz(tmp_path, formats=("json",)).sheet.read_text().splitlines()
    assert sheet[0] == "candidate,variant,code,1,2,3,4"
    rows = [row.split(",") for row in sheet[1:]]
    assert [row[:2] for row in rows] == [["", "01"], ["", "02"]]
    assert all(row[3:] == [""] * 4 for row in rows)


def test_what_has_answers_in_it_lies_in_a_folder_of_its_own(tmp_path: Path) -> None:
    quiz(tmp_path)
    kept = {path.relative_to(tmp_path).parts[0] for path in tmp_path.rglob("*") if path.is_file()}
    assert kept == {"papers", "keys", "answers.csv", MANIFEST}
    right = json.loads((tmp_path / "keys" / "key.json").read_text())["variants"][0]["questions"]
    assert all(question["right"] for question in right)
    outside = [path for path in tmp_path.rglob("*") if path.is_file() and "keys" not in path.parts]
    assert not any(b'"right"' in path.read_bytes() for path in outside)
