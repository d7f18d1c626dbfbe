"""Answer sheets from the printer to the marks: 50 known candidates, and what must be referred.

The pictures are made, not scanned: a page of the PDF is drawn by a library that is not ours, filled
in with strokes, and turned, scaled, skewed, lit and spoilt within what a scanner does. The check
code is also read by a QR reader that is not ours.
"""

import csv
import io
import json
from functools import cache
from pathlib import Path

import numpy as np
import pypdfium2
import pytest
from PIL import Image
from scanned_sheets import MM, Scanner, bubbles_for, cross, fields, fill, printed, scan

from boomsim.cli import main
from boomsim.papers.blueprint import make_blueprint
from boomsim.papers.check_code import code_of
from boomsim.papers.marking.mark_class import mark
from boomsim.papers.paper import Paper, make_paper
from boomsim.papers.paper_errors import PaperError
from boomsim.papers.paper_writing import write_plan
from boomsim.papers.scans.scan_reading import read_scans
from boomsim.papers.scans.sheet_drawing import answer_sheet_pdf
from boomsim.papers.scans.sheet_layout import LETTER, NUMBER, sheet_pages
from boomsim.papers.scans.sheet_strip import BITS, cells_of, read_cells

PLAN = make_blueprint(
    {
        "title": "Sheets", "minutes": 60, "variants": 2, "guided": False, "seed": "scans",
        "part": [
            {"topics": ["geometry", "statics", "stability"], "questions": 10},
            {"topics": ["strategy"], "questions": 4, "form": "choice"},
        ],
    }
)  # fmt: skip


@cache
def paper(variant: int) -> Paper:
    return make_paper(PLAN, variant=variant)


@cache
def empty(variant: int) -> list[Image.Image]:
    return printed(paper(variant))


@pytest.fixture(scope="module")
def key(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return write_plan(PLAN, tmp_path_factory.mktemp("scans"), formats=("json",)).key


def some_answers(variant: int, dice: np.random.Generator) -> dict[str, str]:
    """Answers as they could be filled in, one in ten left blank."""
    found = {}
    for label, field in fields(paper(variant), 0).items():
        if label == "candidate" or dice.random() < 0.1:
            continue
        if field.kind == LETTER:
            found[label] = str(dice.choice([one.says for one in field.columns[0]]))
            continue
        number = f"{dice.uniform(0.1, 99):.{dice.integers(1, 4)}f}"[:6]
        unit = [one.says for one in field.columns[1]]
        said = f" {dice.choice(unit)}" if unit and dice.random() < 0.4 else ""
        found[label] = f"{'-' if dice.random() < 0.1 else ''}{number}{said}"
    return found


def filled(variant: int, candidate: str, answers: dict[str, str], dice) -> Image.Image:
    image = empty(variant)[0].copy()
    for label, text in (answers | {"candidate": candidate}).items():
        for one in bubbles_for(fields(paper(variant), 0)[label], text):
            fill(image, one, dice)
    return image


def some_scanner(dice: np.random.Generator) -> Scanner:
    return Scanner(
        turn=dice.uniform(-3, 3), size=dice.uniform(0.9, 1.12), skew=dice.uniform(-0.01, 0.01),
        bright=dice.uniform(0.6, 1.0), slope=dice.uniform(0, 0.3), noise=dice.uniform(0, 0.06),
        blur=dice.uniform(0, 1.2), quarters=int(dice.choice([0, 0, 0, 2])),
    )  # fmt: skip


@pytest.mark.slow
@pytest.mark.parametrize("sheets", [10, pytest.param(50, marks=pytest.mark.long)])
def test_sheets_of_known_answers_are_read_without_a_wrong_one(
    key: Path, tmp_path: Path, sheets: int
) -> None:
    """And nothing but what is spoilt on purpose is referred: one answer on every fifth sheet."""
    dice = np.random.default_rng(14)
    known: dict[str, dict[str, str]] = {}
    spoilt: set[tuple[str, str]] = set()
    files = []
    for number in range(sheets):
        variant, candidate = number % 2, f"{700 + 13 * number:06d}"
        answers = some_answers(variant, dice)
        image = filled(variant, candidate, answers, dice)
        if number % 5 == 0:
            label = str(dice.choice([one for one in answers if answers[one]]))
            first = bubbles_for(fields(paper(variant), 0)[label], answers[label])[-1]
            column = next(
                column for column in fields(paper(variant), 0)[label].columns if first in column
            )
            if number % 10:
                cross(image, first)
            fill(image, next(one for one in column if one is not first), dice)
            spoilt.add((candidate, label))
        files.append(tmp_path / f"{number:02d}.png")
        scan(image, some_scanner(dice), dice).save(files[-1])
        known[candidate] = answers
    read = read_scans(key, files)
    assert {(one.candidate, one.label) for one in read.doubts} == spoilt
    assert all(one.picture.startswith(b"\x89PNG") for one in read.doubts)
    found = {row.candidate: row.answers for row in read.rows}
    assert found.keys() == known.keys()
    for candidate, answers in known.items():
        for label in answers.keys() | found[candidate].keys():
            if (candidate, label) in spoilt:
                assert found[candidate][label].startswith("?")
            else:
                assert found[candidate].get(label, "") == answers.get(label, "")


@pytest.mark.slow
@pytest.mark.parametrize(
    "how",
    [
        Scanner(), Scanner(turn=3), Scanner(turn=-3), Scanner(size=0.9), Scanner(size=1.5),
        Scanner(skew=0.015), Scanner(bright=0.5), Scanner(slope=0.5), Scanner(noise=0.08),
        Scanner(blur=2), Scanner(quarters=1), Scanner(quarters=2), Scanner(quarters=3),
    ],
    ids=str,
)  # fmt: skip
def test_a_sheet_is_read_however_it_lies(key: Path, tmp_path: Path, how: Scanner) -> None:
    dice = np.random.default_rng(1)
    answers = some_answers(0, dice)
    scan(filled(0, "004217", answers, dice), how, dice).save(tmp_path / "one.png")
    read = read_scans(key, [tmp_path / "one.png"])
    assert read.doubts == ()
    (row,) = read.rows
    assert (row.candidate, row.variant, row.code) == ("004217", "01", code_of(paper(0)))
    assert row.answers == answers
    assert read.certain == len(answers)


def one_sheet(tmp_path: Path, change) -> Path:
    """A sheet on which one thing is wrong."""
    dice = np.random.default_rng(2)
    image = filled(0, "000123", {}, dice)
    change(image, fields(paper(0), 0), dice)
    image.save(tmp_path / "one.png")
    return tmp_path / "one.png"


def first(found, kind: str):
    return next(one for one in found.values() if one.kind == kind)


def two_letters(image, found, dice):
    for one in first(found, LETTER).columns[0][:2]:
        fill(image, one, dice)


def a_faint_one(image, found, dice):
    fill(image, first(found, LETTER).columns[0][0], dice, share=0.9, grey=175)


def half_of_one(image, found, dice):
    fill(image, first(found, LETTER).columns[0][0], dice, share=0.5)


def only_a_cross(image, found, dice):
    cross(image, first(found, LETTER).columns[0][0])


def a_gap(image, found, dice):
    for place in (0, 2):
        fill(image, first(found, NUMBER).columns[2 + place][5], dice)


def two_points(image, found, dice):
    for place, row in ((0, 2), (1, 0), (2, 0)):
        fill(image, first(found, NUMBER).columns[2 + place][row], dice)


def a_sign_alone(image, found, dice):
    fill(image, first(found, NUMBER).columns[0][0], dice)


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (two_letters, "A and B are filled"), (a_faint_one, "A is not clearly filled"),
        (half_of_one, "A is not clearly filled"), (only_a_cross, "not clearly filled"),
        (a_gap, "between two digits"), (two_points, "two decimal points"),
        (a_sign_alone, "no number"),
    ],
)  # fmt: skip
def test_what_is_doubtful_is_referred_and_earns_nothing_until_somebody_has_looked(
    key: Path, tmp_path: Path, change, said: str
) -> None:
    read = read_scans(key, [one_sheet(tmp_path, change)])
    (doubt,) = read.doubts
    assert said in doubt.reason
    (tmp_path / "read.csv").write_text(read.csv(), encoding="utf-8")
    marked = mark(key, tmp_path / "read.csv")
    assert [one.column for one in marked.refusals] == [doubt.label]
    assert marked.candidates[0].unread == 1


def test_a_sheet_without_a_number_and_a_second_one_of_the_same_candidate_keep_their_answers(
    key: Path, tmp_path: Path
) -> None:
    dice = np.random.default_rng(3)
    answers = some_answers(0, dice)
    for name, candidate in (("a", ""), ("b", "17"), ("c", "17")):
        filled(0, candidate, answers, dice).save(tmp_path / f"{name}.png")
    read = read_scans(key, [tmp_path / f"{name}.png" for name in "abc"])
    assert [one.candidate for one in read.rows] == ["17", "unread 1", "unread 2"]
    assert [one.answers for one in read.rows] == [answers] * 3
    assert ["number of a candidate" in one.reason or "came already" in one.reason
            for one in read.doubts] == [True, True]  # fmt: skip


@pytest.mark.slow
def test_no_page_is_taken_for_another_one(key: Path, tmp_path: Path) -> None:
    """A blank page, a page without a corner, and a sheet of another sitting."""
    dice = np.random.default_rng(4)
    filled(0, "1", {}, dice).save(tmp_path / "good.png")
    Image.new("L", empty(0)[0].size, 255).save(tmp_path / "blank.png")
    torn = filled(0, "2", {}, dice)
    torn.paste(255, (0, 0, round(20 * MM), round(20 * MM)))
    torn.save(tmp_path / "torn.png")
    other = make_paper(make_blueprint(PLAN.model_dump() | {"seed": "other"}), variant=0)
    printed(other)[0].save(tmp_path / "other.png")
    read = read_scans(
        key, [tmp_path / f"{name}.png" for name in ("good", "blank", "torn", "other")]
    )
    assert [one.candidate for one in read.rows] == ["1"]
    reasons = [one.reason for one in read.doubts]
    assert ["corner marks" in reasons[0], "corner marks" in reasons[1]] == [True, True]
    assert code_of(other) in reasons[2] and "another sitting" in reasons[2]
    with pytest.raises(PaperError, match="the key of their own sitting"):
        read_scans(key, [tmp_path / "other.png"])


@pytest.mark.slow
def test_scans_of_a_whole_class_come_as_one_pdf_and_go_on_to_the_marks(
    key: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The right answers of the key, filled in as they are printed, earn all their marks."""
    dice = np.random.default_rng(5)
    images = []
    for variant in (0, 1):
        right = {}
        for question in paper(variant).questions:
            for asked in question.asked:
                amount = question.problem.results[asked.step.name]
                right[asked.label] = f"{amount.number:f}"[:6]
            if question.is_choice:
                right[str(question.number)] = question.problem.right
        images.append(scan(filled(variant, f"{variant + 1}", right, dice), Scanner(turn=1), dice))
    images[0].save(tmp_path / "class.pdf", save_all=True, append_images=images[1:], resolution=200)
    out = tmp_path / "read.csv"
    assert main(["scan", str(key), str(tmp_path / "class.pdf"), "--out", str(out), "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert (told["pages"], told["candidates"], told["doubtful"]) == (2, 2, [])
    marked = mark(key, out)
    assert [one.marks for one in marked.candidates] == [one.most for one in marked.candidates]
    assert marked.refusals == () and marked.uncoded == ()


def test_doubtful_answers_are_told_with_their_pictures(
    key: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "read.csv"
    assert main(["scan", str(key), str(one_sheet(tmp_path, two_letters)), "--out", str(out)]) == 0
    said = capsys.readouterr().out
    assert "A and B are filled" in said and "read-doubtful" in said and "To mark:" in said
    (picture,) = (tmp_path / "read-doubtful").iterdir()
    assert picture.name in said
    assert "? A" in next(csv.reader(io.StringIO(out.read_text().splitlines()[1])))


def test_a_comma_is_written_where_the_marking_will_be_told_so(key: Path, tmp_path: Path) -> None:
    dice = np.random.default_rng(6)
    label = first(fields(paper(0), 0), NUMBER).label
    filled(0, "1", {label: "12.345"}, dice).save(tmp_path / "one.png")
    assert read_scans(key, [tmp_path / "one.png"], locale="de").rows[0].answers[label] == "12,345"


@pytest.mark.parametrize("content", [b"", b"%PDF-1.7 nothing", b"\x89PNG\r\n\x1a\nbroken"])
def test_what_is_no_scan_is_refused_in_one_sentence(
    key: Path, tmp_path: Path, content: bytes, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "x.png").write_bytes(content)
    out = tmp_path / "read.csv"
    assert main(["scan", str(key), str(tmp_path / "x.png"), "--out", str(out)]) == 2
    assert "x.png" in capsys.readouterr().err
    assert not out.exists()


def test_every_strip_can_be_read_and_no_spoilt_one() -> None:
    """A checksum of 16 bits finds every burst of up to 16 cells; here any one or two of them."""
    cells = list(cells_of("BCDFGH", 3))
    assert len(cells) == BITS and read_cells(cells) == ("BCDFGH", 3)
    for one in range(BITS):
        for other in range(one, BITS):
            spoilt = [black ^ (place in (one, other)) for place, black in enumerate(cells)]
            assert read_cells(spoilt) == ("", 0)
    assert read_cells([False] * BITS) == ("", 0) and read_cells([True] * BITS) == ("", 0)


@pytest.mark.parametrize("units", ["metric", "us"])
def test_the_digits_are_printed_where_the_reader_looks(units: str) -> None:
    """Places of the digits in the PDF, by a library that is not ours, and those of the plan."""
    made = make_paper(make_blueprint(PLAN.model_dump() | {"units": units}), variant=0)
    pages = sheet_pages(made.questions, units=units)
    document = pypdfium2.PdfDocument(answer_sheet_pdf(made))
    assert len(document) == len(pages)
    for page, plan in zip(document, pages, strict=True):
        text, high = page.get_textpage(), page.get_height()
        spots: dict[str, list[tuple[float, float]]] = {}
        for place in range(text.count_chars()):
            left, bottom, right, top = text.get_charbox(place)
            middle = ((left + right) / 2 * 25.4 / 72, (high - (bottom + top) / 2) * 25.4 / 72)
            spots.setdefault(text.get_text_range(place, 1), []).append(middle)
        assert (page.get_width() * 25.4 / 72, high * 25.4 / 72) == pytest.approx(plan.size, abs=0.1)
        for one in (b for field in plan.fields for column in field.columns for b in column):
            if one.says.isdigit():
                off = min(np.hypot(x - one.x, y - one.y) for x, y in spots[one.says])
                assert off < 0.6  # a third of the radius: figures are not as high as their line


def test_another_reader_finds_the_check_code_on_paper_and_sheet() -> None:
    zxingcpp = pytest.importorskip("zxingcpp")
    from boomsim.papers.render.paper_pdf import render_pdf

    wanted = f"BOOMSIM {code_of(paper(0))} 01"
    page = pypdfium2.PdfDocument(render_pdf(paper(0), kind="paper"))[0]
    pages = [page.render(scale=DPI_SCALE).to_pil(), empty(0)[0]]
    for image in pages:
        assert wanted in [one.text for one in zxingcpp.read_barcodes(image)]


DPI_SCALE = 200 / 72


@pytest.mark.slow
def test_a_sheet_of_too_many_answers_is_refused() -> None:
    plan = {
        "title": "Long", "minutes": 600,
        "part": [{"families": ["statics_pad_force"], "questions": 60}] * 3,
    }  # fmt: skip
    made = make_paper(make_blueprint(plan), variant=0)
    if len(sheet_pages(made.questions, units="metric")) < 16:
        pytest.skip("fits")
    with pytest.raises(PaperError, match="pages"):
        answer_sheet_pdf(made)
