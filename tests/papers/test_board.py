"""What a board is told about a class that was worked by hand."""

import csv
import io
import itertools
import json
import math
from html import unescape
from pathlib import Path

import pytest

from boomsim.caution import CAUTION
from boomsim.cli import main
from boomsim.papers.blueprint import read_blueprint
from boomsim.papers.board.board_report import board_page, board_text
from boomsim.papers.board.board_study import Board
from boomsim.papers.board.class_thirds import thirds
from boomsim.papers.board.item_analysis import FULL, items
from boomsim.papers.board.mark_reliability import Reliability
from boomsim.papers.marking.mark_class import Marked, mark
from boomsim.papers.paper import Paper, make_paper
from boomsim.papers.paper_writing import write_papers

BLUEPRINT = """
title = "Board"
minutes = 30
variants = 3
seed = "board"
order = "shuffled"
[[part]]
families = ["statics_pad_force", "geometry_radius"]
questions = 2
[[part]]
families = ["strategy_own_weight", "charts_what_governs"]
questions = 2
form = "choice"
"""
PADS, RADIUS = "statics_pad_force", "geometry_radius"
WEIGHT, GOVERNS = "strategy_own_weight", "charts_what_governs"

# Who has what right, from the best to the worst; worked by hand below.
NINE = (
    {PADS, RADIUS, WEIGHT, GOVERNS}, {PADS, RADIUS, WEIGHT}, {PADS, RADIUS, WEIGHT},
    {PADS, RADIUS}, {PADS, RADIUS}, {PADS, RADIUS}, {RADIUS}, {RADIUS, GOVERNS}, set(),
)  # fmt: skip


@pytest.fixture(scope="module")
def place(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Three variants with the same questions in other orders."""
    folder = tmp_path_factory.mktemp("board")
    (folder / "plan.toml").write_text(BLUEPRINT, encoding="utf-8")
    write_papers(folder / "plan.toml", folder / "out", formats=("json",))
    return folder


def papers(place: Path) -> list[Paper]:
    plan = read_blueprint(place / "plan.toml")
    return [make_paper(plan, variant=number) for number in range(3)]


def answers(paper: Paper, right: set[str]) -> dict[str, str]:
    """The answers of someone who has some families right and chooses wrongly, or nothing, else."""
    found: dict[str, str] = {}
    for question in paper.questions:
        problem, has_it = question.problem, question.problem.family.id in right
        if question.is_choice:
            wrong = next(one.letter for one in problem.choices if not one.right)
            found[str(question.number)] = problem.right if has_it else wrong
        elif has_it:
            found |= {one.label: problem.results[one.step.name].plain() for one in question.asked}
    return found


def marked(place: Path, who: tuple[set[str], ...] = NINE) -> Marked:
    ones = [
        {"candidate": f"{100 + n}", "variant": paper.variant, "answers": answers(paper, right)}
        for n, (paper, right) in enumerate(zip(itertools.cycle(papers(place)), who, strict=False))
    ]
    (place / "answers.json").write_text(json.dumps(ones), encoding="utf-8")
    return mark(place / "out" / "keys" / "key.json", place / "answers.json")


def test_questions_of_shuffled_variants_are_counted_together(place: Path) -> None:
    found = {one.key: one for one in items(marked(place))}
    # Right are 6, 8, 3 and 2 of nine.
    wanted = {PADS: 6 / 9, RADIUS: 8 / 9, WEIGHT: 3 / 9, GOVERNS: 2 / 9}
    assert {key: one.facility for key, one in found.items()} == pytest.approx(wanted)
    assert {one.count for one in found.values()} == {9}


def test_alpha_of_the_class_is_as_by_hand(place: Path) -> None:
    board = Board(marked=marked(place))
    most = {one.key: one.most for one in board.items}
    assert (most[PADS], most[WEIGHT]) == (3, 2)
    # Marks of a question are all or nothing: variance m² r (9 - r) / (9·8) for r of nine right.
    own = sum(most[key] ** 2 * r * (9 - r) / 72 for key, r in
              ((PADS, 6), (RADIUS, 8), (WEIGHT, 3), (GOVERNS, 2)))  # fmt: skip
    sums = [sum(most[key] for key in right) for right in NINE]
    whole = sum((one - sum(sums) / 9) ** 2 for one in sums) / 8
    assert isinstance(board.reliability, Reliability)
    assert board.reliability.alpha == pytest.approx(4 / 3 * (1 - own / whole), rel=1e-12)


def test_candidates_with_equal_marks_are_in_the_same_third() -> None:
    assert thirds([5, 4, 3, 2, 1, 0]) == (2, 2, 1, 1, 0, 0)
    assert thirds([1, 1, 1, 1, 1, 1]) == (1, 1, 1, 1, 1, 1)
    # Four equal ones fill the upper two thirds: their middle lies just between, and not above.
    assert thirds([2, 2, 2, 2, 1, 1]) == (1, 1, 1, 1, 0, 0)
    assert thirds([2, 2, 2, 1, 1, 1]) == (2, 2, 2, 0, 0, 0)


def test_every_wrong_choice_is_counted_by_thirds_and_those_nobody_took_are_shown(
    place: Path,
) -> None:
    found = {one.key: one for one in items(marked(place))}
    ways = {way.words: way for way in found[WEIGHT].ways}
    # The three best have it right; three of the middle and three of the lower third do not.
    assert ways[FULL].counts == (0, 0, 3)
    wrong = [way for way in found[WEIGHT].ways if way.is_slip]
    assert [sum(way.counts[third] for way in wrong) for third in (0, 1, 2)] == [3, 3, 0]
    offered = {
        one.slip
        for paper in papers(place)
        for question in paper.questions
        if question.problem.family.id == WEIGHT
        for one in question.problem.choices
        if not one.right
    }
    assert {way.words for way in wrong} == offered
    assert any(way.count == 0 for way in wrong)


def test_a_wrong_choice_of_the_best_is_named(place: Path) -> None:
    told = board_text(Board(marked=marked(place, ({GOVERNS},) * 4 + ({PADS, RADIUS},) * 4)))
    # Three and two marks of the pads and the radius outweigh the one choice: they are the upper.
    assert "more of the upper third than of the lower" in told
    assert "the better the rest of a paper, the worse this question" in told


@pytest.mark.parametrize("count", [1, 2, 3])
def test_a_small_class_is_told_what_cannot_be_told(place: Path, count: int) -> None:
    board = Board(marked=marked(place, NINE[3 : 3 + 2 * count : 2]))
    for told in (board_text(board), board_page(board)):
        assert "Reliability cannot be told" in told
        assert "Discrimination and reliability take at least 4 candidates" in told
        assert "nan" not in told.lower()
    assert all(math.isnan(one.discrimination) for one in board.items)


def test_a_class_of_nobody_is_no_crash(place: Path) -> None:
    told = board_text(Board(marked=marked(place, ())))
    assert "From no candidates only the marks can be told" in told


def test_variants_with_other_families_have_no_alpha(tmp_path: Path) -> None:
    plan = BLUEPRINT.replace('order = "shuffled"', 'vary = "families"').replace(
        f'families = ["{PADS}", "{RADIUS}"]', 'topics = ["statics", "geometry"]'
    )
    (tmp_path / "plan.toml").write_text(plan, encoding="utf-8")
    write_papers(tmp_path / "plan.toml", tmp_path / "out", formats=("json",))
    board = Board(marked=marked(tmp_path))
    assert "variants have questions of different families" in str(board.reliability)


def judges_file(place: Path, text: str) -> str:
    path = place / "judges.csv"
    path.write_text(text, encoding="utf-8")
    return str(path)


HEAD = f"judge,{PADS},{RADIUS},{WEIGHT},{GOVERNS}\n"


def run(place: Path, *more: str) -> int:
    marked(place)
    key = str(place / "out" / "keys" / "key.json")
    return main(["mark", key, str(place / "answers.json"), *more])


def test_the_cut_score_is_as_by_hand(place: Path, capsys: pytest.CaptureFixture[str]) -> None:
    board = Board(marked=marked(place))
    m = {one.key: one.most for one in board.items}
    judges = judges_file(place, f"{HEAD}J1,60,80,50,25\nJ2,70%,90,40,25\nJ3,50,70,30,25\n")
    assert run(place, "--judges", judges, "--json") == 0
    told = json.loads(capsys.readouterr().out)["board"]["standard"]
    by_hand = [
        (a * m[PADS] + b * m[RADIUS] + c * m[WEIGHT] + d * m[GOVERNS]) / 100
        for a, b, c, d in ((60, 80, 50, 25), (70, 90, 40, 25), (50, 70, 30, 25))
    ]
    assert told["cuts"][0]["by_judge"] == pytest.approx(by_hand)
    mean = sum(by_hand) / 3
    assert told["cuts"][0]["marks"] == pytest.approx(mean)
    spread = sum((one - mean) ** 2 for one in by_hand) / 2
    assert told["cuts"][0]["standard_error"] == pytest.approx((spread / 3) ** 0.5)
    sums = [sum(m[key] for key in right) for right in NINE]
    assert told["passed"] == sum(one >= mean for one in sums)
    assert 0 < told["passed"] < 9
    assert "Angoff" in told["method"]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("judge,1,2\nJ,50,50\n", "has no judgement of question"),
        (f"{HEAD}J,50,50,50,0.5\n", "could be a share or a percentage"),
        (f"{HEAD}J,50,50,50,120\n", "is no percentage"),
        (f"{HEAD}J,50,50,50,\n", "is no percentage"),
        (f"{HEAD}J,50,50,50,50\nJ,50,50,50,50\n", "twice"),
        (HEAD, "has no judge"),
        (f"{HEAD[:-1]},9\nJ,50,50,50,50,50\n", 'no question of this paper is "9"'),
        ("name,1\nJ,1\n", "needs a first line with judge"),
    ],
)
def test_a_faulty_table_of_judgements_is_refused_before_anything_is_written(
    place: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], text: str, said: str
) -> None:
    report = tmp_path / "report"
    judges = judges_file(place, text)
    assert run(place, "--judges", judges, "--report", str(report)) == 2
    told = capsys.readouterr()
    assert said in told.err
    assert told.out == ""
    assert not report.exists()


ROSTER = "candidate,name\n0100,Ada Example\n101,Ben Sample\n999,Cy Absent\n"


def test_names_are_in_the_gradebook_and_in_no_file_of_the_report(
    place: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "roster.csv").write_text(ROSTER, encoding="utf-8")
    judges = judges_file(place, f"{HEAD}J1,60,80,50,25\n")
    grades, report = tmp_path / "grades.csv", tmp_path / "report"
    words = ["--roster", str(tmp_path / "roster.csv"), "--gradebook", str(grades)]
    assert run(place, *words, "--judges", judges, "--report", str(report)) == 0
    told = capsys.readouterr().out
    rows = {row["candidate"]: row for row in csv.DictReader(io.StringIO(grades.read_text()))}
    assert rows["100"]["name"] == "Ada Example"
    assert (rows["100"]["percent"], rows["100"]["result"]) == ("100.0", "pass")
    assert (rows["108"]["marks"], rows["108"]["result"]) == ("0", "fail")
    assert (rows["999"]["name"], rows["999"]["marks"]) == ("Cy Absent", "")
    assert "Not in the roster: 102, 103, 104, 105, 106, 107, 108." in told
    assert "In the roster and without answers: 999." in told
    files = [one for one in report.rglob("*") if one.is_file()]
    assert {"board.html", "board.txt", "class.html"} <= {one.name for one in files}
    for one in files:
        assert b"Ada" not in one.read_bytes()
    assert "Ada" not in told


def test_a_gradebook_with_names_does_not_go_into_the_report(
    place: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "roster.csv").write_text(ROSTER, encoding="utf-8")
    report = tmp_path / "report"
    report.mkdir()
    words = ["--roster", str(tmp_path / "roster.csv"), "--report", str(report)]
    assert run(place, *words, "--gradebook", str(report / "grades.csv")) == 2
    assert "free of names" in capsys.readouterr().err
    assert run(place, *words) == 2
    assert "--gradebook" in capsys.readouterr().err
    assert list(report.iterdir()) == []


def test_page_and_text_say_the_same_and_carry_the_caution(place: Path) -> None:
    board = Board(marked=marked(place))
    page, text = board_page(board), board_text(board)
    for told in (page, text):
        assert CAUTION in unescape(told)
        assert "Cronbach" in told
    for one in board.items:
        assert f"{one.facility:.2f}" in text
        assert f"<td>{one.facility:.2f}</td>" in page


def test_each_candidate_reads_marks_by_topic(place: Path, tmp_path: Path) -> None:
    assert run(place, "--report", str(tmp_path / "report")) == 0
    page = (tmp_path / "report" / "candidates" / "row-0004.html").read_text(encoding="utf-8")
    # The fourth has the pads (three marks) and the radius (two) right, and no choice.
    assert "<td>statics</td><td>3 / 3</td>" in page
    assert "<td>strategy</td><td>0 / 2</td>" in page


FIRST = "candidate,1,2,marks\nA,2,1,3\nB,2,0,2\nC,1,0,1\nD,0,0,0\nE,1,1,2\n"
SECOND = "candidate;1;2\nA;2;1\nB;1;0\nC;1;0\nD;0;\nF;1;1\n"


def test_two_markers_are_compared_as_by_hand(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "a.csv").write_text(FIRST)
    (tmp_path / "b.csv").write_text(SECOND)
    files = [str(tmp_path / "a.csv"), str(tmp_path / "b.csv")]
    assert main(["markers", *files, "--json"]) == 0
    told = json.loads(capsys.readouterr().out)["compared"]
    one, two = told["questions"]
    # Question 1: 2 2 1 0 against 2 1 1 0. The same 3 of 4; by chance (2·1 + 1·2 + 1·1)/16 = 5/16.
    assert (one["count"], one["share"]) == (4, 0.75)
    assert one["kappa"] == pytest.approx((3 / 4 - 5 / 16) / (11 / 16))
    assert one["harder"] == 0.25
    # Question 2: 1 0 0 against 1 0 0; D has no mark of the second.
    assert (two["count"], two["share"], two["kappa"]) == (3, 1.0, 1.0)
    assert told["disagreements"] == [{"question": "1", "candidate": "B", "one": 2, "other": 1}]
    assert told["single"] == ["E", "F"]
    assert main(["markers", *files]) == 0
    words = capsys.readouterr().out
    assert "Marked by one of the two only: E, F." in words
    assert "nan" not in words


def test_one_candidate_and_equal_marks_have_no_kappa(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "a.csv").write_text("candidate,1\nA,2\n")
    assert main(["markers", *[str(tmp_path / "a.csv")] * 2]) == 0
    told = capsys.readouterr().out
    assert "There is no disagreement." in told
    assert "nan" not in told
    assert told.splitlines()[2].split()[-2] == "-"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("candidate,1\nA,two\n", "is no mark"),
        ("candidate,1\nA,1\nA,2\n", "twice"),
        ("name,1\nA,1\n", "needs a first line with candidate"),
        ("candidate,1\nZ,1\n", "have no candidate and question in common"),
        ("candidate,1,1\nA,1,1\n", "twice"),
        ('candidate,1\n"A,1\n', "is no file of marks"),
    ],
)
def test_a_faulty_file_of_marks_is_refused(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], text: str, said: str
) -> None:
    (tmp_path / "a.csv").write_text(FIRST)
    (tmp_path / "b.csv").write_text(text)
    assert main(["markers", str(tmp_path / "a.csv"), str(tmp_path / "b.csv")]) == 2
    told = capsys.readouterr()
    assert said in told.err
    assert told.out == ""
