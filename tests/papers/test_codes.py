"""Right paper, right answers: every form carries one code, and answers of another sitting are
noticed."""

import csv
import json
import zipfile
from pathlib import Path

import pytest

from boomsim.papers import check_code as codes
from boomsim.papers.blueprint import Blueprint, make_blueprint
from boomsim.papers.check_code import LENGTH, LETTERS, code_of, tidy
from boomsim.papers.marking.mark_class import Marked, mark
from boomsim.papers.paper import make_paper
from boomsim.papers.paper_errors import PaperError
from boomsim.papers.paper_writing import Written, write_plan

PLAN = {
    "title": "Spring", "minutes": 10, "variants": 2, "seed": "secret",
    "part": [{"families": ["statics_pad_force"], "questions": 1}],
}  # fmt: skip


def plan(**changes: object) -> Blueprint:
    return make_blueprint(PLAN | changes)


def code(variant: int = 0, **changes: object) -> str:
    return code_of(make_paper(plan(**changes), variant=variant))


@pytest.fixture(scope="module")
def spring(tmp_path_factory: pytest.TempPathFactory) -> Written:
    formats = ["json", "html", "md", "qti"]
    return write_plan(plan(), tmp_path_factory.mktemp("spring"), formats=formats)


@pytest.fixture(scope="module")
def autumn(tmp_path_factory: pytest.TempPathFactory) -> Written:
    return write_plan(plan(seed="other"), tmp_path_factory.mktemp("autumn"), formats=["json"])


def right_row(made: Written, name: str, variant: str) -> dict[str, str]:
    """A row of the sheet in which everything is right."""
    data = json.loads(made.key.read_text())["variants"]
    one = next(entry for entry in data if entry["variant"] == variant)
    answer = one["questions"][0]["answer"].values()
    cells = dict(zip(("1a", "1b", "1c"), (a.replace("*", " ") for a in answer), strict=True))
    return {"candidate": name, "variant": variant, "code": one["code"], **cells}


def marked(made: Written, rows: list[dict[str, str]], folder: Path) -> Marked:
    path = folder / "answers.csv"
    with path.open("w", newline="") as sheet:
        writer = csv.DictWriter(sheet, ["candidate", "variant", "code", "1a", "1b", "1c"])
        writer.writeheader()
        writer.writerows(rows)
    return mark(made.key, path)


def test_a_code_has_six_consonants() -> None:
    assert len(code()) == LENGTH and set(code()) <= set(LETTERS)
    assert tidy(" bcd-fgh ") == "BCDFGH"


def test_whatever_makes_another_paper_makes_another_code(monkeypatch: pytest.MonkeyPatch) -> None:
    known = {code(), code(1), code(seed="other"), code(units="us"), code(minutes=11),
             code(title="Autumn"), code(guided=False), code(form="choice")}  # fmt: skip
    assert len(known) == 8
    assert code(variants=7) == code()  # more variants leave those that are there as they are
    monkeypatch.setattr(codes, "__version__", "another")
    assert code() not in known


def test_every_form_carries_the_code(spring: Written) -> None:
    wanted = code()
    kinds = ("papers", "keys/solutions", "keys/marking")
    for name in (f"{kind}/01.{form}" for kind in kinds for form in ("json", "html", "md")):
        assert wanted in (spring.folder / name).read_text(), name
    assert wanted in spring.sheet.read_text()
    with zipfile.ZipFile(spring.folder / "keys" / "qti" / "01.zip") as archive:
        for name in ("test.xml", "imsmanifest.xml", "items/q01.xml"):
            assert wanted in archive.read(name).decode(), name


def test_answers_of_another_sitting_are_refused_in_one_sentence(
    spring: Written, autumn: Written, tmp_path: Path
) -> None:
    rows = [right_row(autumn, "Ada", "01"), right_row(autumn, "Grace", "02")]
    with pytest.raises(PaperError, match="the key of their own sitting") as refused:
        marked(spring, rows, tmp_path)
    assert "\n" not in str(refused.value)
    assert rows[0]["code"] in str(refused.value) and code() in str(refused.value)


def test_one_row_of_another_sitting_or_variant_is_refused_and_the_rest_is_marked(
    spring: Written, autumn: Written, tmp_path: Path
) -> None:
    swapped = right_row(spring, "Eve", "02") | {"variant": "01"}
    made = marked(
        spring,
        [right_row(spring, "Ada", "01"), right_row(autumn, "Bob", "01"), swapped],
        tmp_path,
    )
    assert [(one.candidate, one.marks) for one in made.candidates] == [("Ada", 3)]
    assert [(one.candidate, one.column) for one in made.refusals] == [
        ("Bob", "code"), ("Eve", "code"),
    ]  # fmt: skip
    assert "another sitting" in made.refusals[0].reason
    assert "variant 02" in made.refusals[1].reason


def test_a_row_without_a_code_is_marked_and_said_to_be_unchecked(
    spring: Written, tmp_path: Path
) -> None:
    rows = [right_row(spring, "Ada", "01"), right_row(spring, "Bob", "02") | {"code": " "}]
    made = marked(spring, rows, tmp_path)
    assert [one.marks for one in made.candidates] == [3, 3]
    assert made.uncoded == (3,)
    assert "row 3" in made.unchecked
    assert marked(spring, rows[:1], tmp_path).unchecked == ""


def test_a_code_may_be_typed_in_small_letters_and_groups(spring: Written, tmp_path: Path) -> None:
    row = right_row(spring, "Ada", "01")
    typed = f"{row['code'][:3].lower()} {row['code'][3:].lower()}"
    assert marked(spring, [row | {"code": typed}], tmp_path).candidates[0].marks == 3
