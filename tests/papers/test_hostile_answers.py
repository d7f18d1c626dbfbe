"""Answers that are wrong in every way: refused by row and name, and the rest is marked."""

import csv
import json
from pathlib import Path

import pytest

from boomsim.papers.blueprint import make_blueprint
from boomsim.papers.marking.mark_class import Marked, mark
from boomsim.papers.marking.marking_report import write_report
from boomsim.papers.paper_errors import PaperError
from boomsim.papers.paper_writing import write_plan

PLAN = make_blueprint(
    {
        "title": "Test & <b>proof</b>", "minutes": 10, "variants": 2,
        "part": [{"families": ["statics_pad_force"], "questions": 1},
                 {"families": ["strategy_own_weight"], "questions": 1, "form": "choice"}],
    }
)  # fmt: skip
HEAD = "candidate,variant,1a,1b,1c,2\n"


@pytest.fixture(scope="module")
def key(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return write_plan(PLAN, tmp_path_factory.mktemp("papers"), formats=["json"]).key


@pytest.fixture(scope="module")
def right(key: Path) -> str:
    """A row without its name in which everything is right, 5 of 5 marks."""
    pads, choice = json.loads(key.read_text())["variants"][0]["questions"]
    numbers = [text.replace("*", " ") for text in pads["answer"].values()]
    return ",".join(["01", *numbers, choice["right"]])


def marked(key: Path, content: str | bytes, folder: Path, name: str = "a.csv") -> Marked:
    path = folder / name
    path.write_bytes(content if isinstance(content, bytes) else content.encode())
    return mark(key, path)


def test_everything_right_earns_everything(key: Path, right: str, tmp_path: Path) -> None:
    made = marked(key, f"{HEAD}Ada,{right}\n", tmp_path)
    assert [(one.candidate, one.marks, one.most) for one in made.candidates] == [("Ada", 5, 5)]
    assert made.refusals == ()
    assert made.unanswered == ("02",)


@pytest.mark.parametrize(
    ("row", "reason"),
    [
        ("=HYPERLINK(1)&A1,01,,,,", "spreadsheet"),
        ("@SUM(1),01,,,,", "spreadsheet"),
        ("+cmd|' /C calc'!A0,01,,,,", "spreadsheet"),
        (",01,1,2,3,A", "no name"),
        ("x" * 81 + ",01,,,,", "81 characters"),
        ("Eve\u202egnp,01,,,,", "cannot be seen"),
        ("Eve\x00,01,,,,", "cannot be seen"),
        ("Eve,17,,,,", "no variant"),
        ("Eve,,1,,,", "no variant"),
        ("Eve,01,1,2,3,A,7,8", "8 cells"),
        ('Eve,01,"1', "quotation mark"),
        ("Eve,01,=1+1,,,", "formula"),
        ("Eve,01,9**9**9,,,", "cannot be read"),
        ("Eve,01,<script>alert(1)</script>,,,", "not a number"),
        ("Eve,01,__import__('os').system('x'),,,", "not a number"),
        ('Eve,01,"12,5",,,', "comma"),
        ("Eve,01," + "9" * 10_000_000 + ",,,", "10000000 characters"),
        ("Eve,01,,,,Z", "none of A, B, C, D"),
        ("Eve,01,1e999999999,,,", "cannot be read"),
    ],
)  # fmt: skip
def test_a_strange_row_is_refused_and_the_rest_is_marked(
    key: Path, right: str, tmp_path: Path, row: str, reason: str
) -> None:
    made = marked(key, f"{HEAD}Ada,{right}\n{row}\nGrace,{right}\n", tmp_path)
    full = {
        one.candidate: one.marks for one in made.candidates if one.candidate in ("Ada", "Grace")
    }
    assert full == {"Ada": 5, "Grace": 5}
    assert [one.row for one in made.refusals] == [3]
    assert reason in str(made.refusals[0])
    assert len(str(made.refusals[0])) < 300


@pytest.mark.parametrize("line_end", ["\n", "\r\n", "\r"])
def test_a_line_break_in_a_name_makes_no_second_candidate(
    key: Path, right: str, tmp_path: Path, line_end: str
) -> None:
    rows = f'{HEAD}"Ada\nLovelace",{right}\nGrace,{right}\n"Eve\n\nMary\nAnn",{right}\n'
    made = marked(key, rows.replace("\n", line_end), tmp_path)
    assert [(one.row, one.candidate, one.marks) for one in made.candidates] == [
        (2, "Ada Lovelace", 5), (4, "Grace", 5), (5, "Eve Mary Ann", 5),
    ]  # fmt: skip
    assert made.refusals == ()


def test_a_line_break_in_an_answer_is_none(key: Path, right: str, tmp_path: Path) -> None:
    variant, first, *others = right.split(",")
    row = ",".join(["Ada", variant, f'"{first}\n"', *others])
    assert marked(key, f"{HEAD}{row}\n", tmp_path).candidates[0].marks == 5


def test_a_line_break_in_a_name_leaves_decimal_commas_in_other_cells(
    key: Path, right: str, tmp_path: Path
) -> None:
    variant, *answers = right.split(",")
    row = ",".join([variant, *(f'"{one.replace(".", ",")}"' for one in answers)])
    path = tmp_path / "a.csv"
    path.write_text(f'{HEAD}"Ada\nLovelace",{row}\n')
    made = mark(key, path, locale="de")
    assert [(one.candidate, one.marks) for one in made.candidates] == [("Ada Lovelace", 5)]


def test_a_name_with_a_line_break_and_a_comma_is_in_doubt_and_refused(
    key: Path, right: str, tmp_path: Path
) -> None:
    rows = f'{HEAD}"Love\nlace, Ada",{right}\nGrace,{right}\n'
    made = marked(key, rows, tmp_path)
    assert [one.candidate for one in made.candidates] == ["Grace"]
    assert [one.row for one in made.refusals] == [2, 3]


def test_refused_answers_stand_in_the_order_of_the_questions(tmp_path: Path) -> None:
    part = {"families": ["geometry_radius"], "questions": 11}
    plan = make_blueprint({"title": "Order", "minutes": 9, "guided": False, "part": [part]})
    path = write_plan(plan, tmp_path, formats=["json"]).key
    head = ",".join(["candidate", "variant", *(f"{n}" for n in range(1, 12))])
    made = marked(path, f"{head}\nAda,01{',what' * 11}\n", tmp_path)
    assert [one.column for one in made.refusals] == [f"{n}" for n in range(1, 12)]


def test_two_rows_with_stray_quotation_marks_are_both_refused(
    key: Path, right: str, tmp_path: Path
) -> None:
    rows = f'{HEAD}Eve,01,"1,,,\nBob,01,5",,,\nGrace,{right}\n'
    made = marked(key, rows, tmp_path)
    assert [(one.row, one.candidate) for one in made.refusals] == [(2, "Eve"), (3, "Bob")]
    assert [one.candidate for one in made.candidates] == ["Grace"]


def test_a_candidate_with_two_rows_is_marked_in_neither(
    key: Path, right: str, tmp_path: Path
) -> None:
    made = marked(key, f"{HEAD}Ada,{right}\nGrace,{right}\n ADA ,01,,,,\n", tmp_path)
    assert [one.candidate for one in made.candidates] == ["Grace"]
    assert [one.row for one in made.refusals] == [2, 4]
    assert "rows 2, 4" in made.refusals[0].reason


@pytest.mark.parametrize("mark_", [";", "\t"])
@pytest.mark.parametrize("line_end", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16"])
def test_usual_spreadsheet_files_are_read(
    key: Path, right: str, tmp_path: Path, mark_: str, line_end: str, encoding: str
) -> None:
    text = f"{HEAD}Zoë Ångström,{right}\n".replace(",", mark_).replace("\n", line_end)
    made = marked(key, text.encode(encoding), tmp_path)
    assert [(one.candidate, one.marks) for one in made.candidates] == [("Zoë Ångström", 5)]


def test_one_row_in_another_encoding_spoils_no_other(key: Path, right: str, tmp_path: Path) -> None:
    made = marked(key, f"{HEAD}Ada,{right}\nZo".encode() + b"\xeb,01,1\n", tmp_path)
    assert [one.marks for one in made.candidates] == [5]
    assert "UTF-8" in made.refusals[0].reason


def test_a_spreadsheet_that_dropped_the_zero_of_01_is_understood(
    key: Path, right: str, tmp_path: Path
) -> None:
    made = marked(key, f"{HEAD}Ada,{right.replace('01', '1', 1)}\n", tmp_path)
    assert made.candidates[0].marks == 5


def test_a_column_that_is_no_question_is_named(key: Path, tmp_path: Path) -> None:
    made = marked(key, "candidate,variant,remarks,9\nAda,01,none,7\n", tmp_path)
    assert [(one.row, one.column) for one in made.refusals] == [(1, "remarks"), (2, "9")]


@pytest.mark.parametrize(
    "content",
    [b"", b"name,1a\nAda,1\n", b"candidate,variant,1a,1.A\n", b"\xff\xfea", b"[1", b"{}",
     b"[" * 10**6],
)  # fmt: skip
def test_a_file_without_sense_is_refused_as_a_whole(
    key: Path, tmp_path: Path, content: bytes
) -> None:
    with pytest.raises(PaperError):
        marked(key, content, tmp_path)


def test_json_answers_are_marked_the_same(key: Path, right: str, tmp_path: Path) -> None:
    variant, *cells = right.split(",")
    answers = dict(zip(("1.a", "1b", "1 (c)", "2"), cells, strict=True))
    number = float(cells[0].split()[0])
    rows = [
        {"candidate": "Ada", "variant": variant, "answers": answers},
        {"candidate": "Grace", "variant": variant, "answers": answers | {"1.a": number}},
        {"candidate": "Eve", "variant": variant, "answers": {"1a": {"x": 1}, "1b": None, "q": 1}},
        {"candidate": None, "variant": variant, "answers": {}},
        "nobody",
    ]
    made = marked(key, json.dumps(rows), tmp_path, "a.json")
    assert {one.candidate: one.marks for one in made.candidates} == {"Ada": 5, "Grace": 5, "Eve": 0}
    assert [one.row for one in made.refusals] == [3, 3, 3, 4, 5]


def test_numbers_in_json_that_no_number_type_holds_do_no_harm(key: Path, tmp_path: Path) -> None:
    answers = '{"1a": %s, "1b": NaN, "1c": 1, "1c": 2}' % ("9" * 100_000)
    text = f'[{{"candidate": "Eve", "variant": "01", "answers": {answers}}}]'
    made = marked(key, text, tmp_path, "a.json")
    assert made.candidates[0].marks == 0
    assert len(made.refusals) == 3


def test_reports_hold_nothing_that_runs(key: Path, right: str, tmp_path: Path) -> None:
    name = "<script>alert(1)</script>"
    rows = f"{HEAD}{name},{right}\nEve,01,<img src=x onerror=alert(1)>,,,\n=1+1,01,,,,\n"
    write_report(marked(key, rows, tmp_path), tmp_path / "report")
    pages = list((tmp_path / "report").rglob("*.html"))
    assert len(pages) == 3
    for page in pages:
        text = page.read_text()
        assert "<script" not in text
        assert "<img src=x" not in text
        assert "<b>proof" not in text
        assert "not for planning a lift" in text
    table = (tmp_path / "report" / "marks.csv").read_text()
    cells = [cell for row in csv.reader(table.splitlines()) for cell in row]
    assert all(not cell.startswith(("=", "+", "-", "@")) for cell in cells)
    assert "5,5" in table
    data = json.loads((tmp_path / "report" / "marks.json").read_text())
    assert data["candidates"][0]["marks"] == 5
    assert len(data["refused"]) == 2


def test_marks_are_provisional_while_an_answer_is_not_read(
    key: Path, right: str, tmp_path: Path
) -> None:
    variant, _first, _second, *others = right.split(",")
    rows = f"{HEAD}Ada,{right}\n{','.join(['Eve', variant, 'about 17', '3 m', *others])}\n"
    made = marked(key, rows, tmp_path)
    write_report(made, tmp_path / "report")
    table = list(csv.DictReader((tmp_path / "report" / "marks.csv").open()))
    assert [(one["provisional"], one["not read"]) for one in table] == [("no", "0"), ("yes", "2")]
    data = json.loads((tmp_path / "report" / "marks.json").read_text())["candidates"]
    assert [(one["provisional"], one["not_read"]) for one in data] == [(False, 0), (True, 2)]
    pages = [path.read_text() for path in sorted((tmp_path / "report" / "candidates").iterdir())]
    assert ["provisional: 2 answers" in page for page in pages] == [False, True]


def test_a_unit_copied_from_the_paper_is_quoted_as_it_looks(key: Path, tmp_path: Path) -> None:
    made = marked(key, f"{HEAD}Ada,01,1\u202f250\u00a0kN,,,\n", tmp_path)
    assert '"1 250 kN"' in str(made.refusals[0])


def test_a_report_shows_no_candidate_of_an_earlier_sheet(
    key: Path, right: str, tmp_path: Path
) -> None:
    two = marked(key, f"{HEAD}Ada,{right}\nGrace,{right}\n", tmp_path)
    write_report(two, tmp_path / "report")
    write_report(marked(key, f"{HEAD}Grace,{right}\n", tmp_path), tmp_path / "report")
    pages = list((tmp_path / "report" / "candidates").iterdir())
    assert [page.name for page in pages] == ["row-0002.html"]
    assert "Grace" in pages[0].read_text()


def test_a_key_that_does_not_fit_is_refused(key: Path, tmp_path: Path) -> None:
    sheet = tmp_path / "a.csv"
    sheet.write_text(f"{HEAD}Ada,01,,,,\n")
    data = json.loads(key.read_text())
    question = data["variants"][0]["questions"][0]
    for change in (
        {"answer": {"M": "1 kN*m"}},
        {"family": "nothing"},
        {"givens": {"F": "1**9 kN"}},
    ):
        data["variants"][0]["questions"][0] = question | change
        path = tmp_path / "key.json"
        path.write_text(json.dumps(data))
        with pytest.raises(PaperError):
            mark(path, sheet)
    path.write_text('{"schema": "boomsim-key/1"}')
    with pytest.raises(PaperError, match=r"key\.json"):
        mark(path, sheet)
