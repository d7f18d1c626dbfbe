"""Charts and books on disk: whole, the same every time, readable by other programs."""

import csv
import json
import re
import zlib
from base64 import b64decode
from functools import lru_cache
from io import StringIO

import numpy as np
import pytest

from boomsim.caution import CAUTION
from boomsim.figures.charts.book.book_files import write_book
from boomsim.figures.charts.book.book_html import book_data, book_html
from boomsim.figures.charts.book.book_pages import book_sheets
from boomsim.figures.charts.cell_text import numbers_of
from boomsim.figures.charts.chart_page import chart_sheets
from boomsim.figures.charts.chart_sizes_and_tints import CLASS
from boomsim.figures.charts.pdf_writer import pdf_bytes
from boomsim.figures.charts.sheet_files import write_sheets
from boomsim.machine.machine_files import load_machine
from boomsim.rating.charts.blank_cells import NO_REACH
from boomsim.rating.charts.chart_book import every_setup, make_book
from boomsim.rating.charts.chart_tables import BLANKS, plain_book, table_head, write_csv
from boomsim.rating.charts.load_chart import best_chart
from boomsim.rating.setup import set_up

POUND = 0.45359237


@lru_cache
def book():
    machine = load_machine("truck18")
    return make_book(every_setup(machine, rules=["share"], supports=["full", "tyres"]))


@lru_cache
def sheets():
    return tuple(chart_sheets(best_chart(set_up(load_machine("truck18")))))


def objects(raw: bytes) -> dict[int, bytes]:
    """Objects of a PDF, found through its own table of places."""
    start = int(re.search(rb"startxref\n(\d+)\n%%EOF", raw)[1])
    rows = re.findall(rb"(\d{10}) 00000 n ", raw[start:])
    found = {}
    for number, place in enumerate(rows, start=1):
        at = int(place)
        head = b"%d 0 obj\n" % number
        assert raw[at : at + len(head)] == head
        found[number] = raw[at + len(head) : raw.index(b"\nendobj", at)]
    return found


def streams(raw: bytes) -> list[bytes]:
    out = []
    for body in objects(raw).values():
        if b"stream\n" in body:
            packed = body.split(b"stream\n", 1)[1].removesuffix(b"\nendstream")
            length = int(re.search(rb"/Length (\d+)", body)[1])
            assert length == len(packed)
            out.append(zlib.decompress(packed))
    return out


def test_a_pdf_tells_where_each_of_its_objects_is():
    raw = pdf_bytes(sheets(), title="Charts")
    assert raw.startswith(b"%PDF-1.7\n")
    assert len(objects(raw)) > 8
    assert len(streams(raw)) == len(sheets()) + 4  # pages, two faces and two maps to Unicode


def test_the_figures_of_a_pdf_can_be_searched():
    raw = pdf_bytes(sheets(), title="Charts")
    maps = [s.decode() for s in streams(raw) if b"beginbfchar" in s]
    letters = {}
    for found in maps:
        for code, plain in re.findall(r"<([0-9a-f]{4})> <([0-9a-f]{4})>", found):
            letters[code] = bytes.fromhex(plain).decode("utf-16-be")
    page = next(s.decode() for s in streams(raw) if b" Tj ET" in s)
    texts = [
        "".join(letters[hexed[k : k + 4]] for k in range(0, len(hexed), 4))
        for hexed in re.findall(r"<([0-9a-f]+)> Tj", page)
    ]
    assert "truck18" in texts
    assert CAUTION in " ".join(texts)


def test_the_same_charts_make_the_same_pdf_byte_for_byte():
    assert pdf_bytes(sheets(), title="Charts") == pdf_bytes(sheets(), title="Charts")


@pytest.mark.parametrize("name", ["chart.pdf", "chart.svg", "chart.png"])
def test_a_chart_is_written_to_the_kind_of_file_that_is_named(tmp_path, name):
    written = write_sheets(sheets(), tmp_path / name)
    head = {".pdf": b"%PDF", ".svg": b"<svg", ".png": b"\x89PNG"}[written.suffix]
    assert written.read_bytes().startswith(head)
    assert [file.name for file in tmp_path.iterdir()] == [name]


def test_several_pages_need_a_pdf(tmp_path):
    with pytest.raises(ValueError, match=r"takes 2 pages .* Name a \.pdf file"):
        write_sheets([*sheets(), *sheets()], tmp_path / "chart.svg")
    assert not list(tmp_path.iterdir())


@pytest.mark.slow
def test_a_book_has_the_pages_that_its_contents_promise():
    pages = list(book_sheets(book()))
    jumps = [m for m in pages[1].marks if type(m).__name__ == "Jump"]
    assert len(jumps) == len(book().chapters)
    for jump, chapter in zip(jumps, book().chapters, strict=True):
        first = pages[jump.page]
        assert first.level == 1
        assert chapter.setup.sector in first.title
        assert str(jump.page + 1) in {getattr(m, "text", "") for m in pages[1].marks}
    for number, page in enumerate(pages[3:], start=4):
        said = [m.text for m in page.marks if hasattr(m, "text")]
        assert str(number) in said
    for page in pages:
        assert CAUTION in " ".join(m.text for m in page.marks if hasattr(m, "text"))


def test_bookmarks_of_a_book_are_its_chapters():
    raw = pdf_bytes(book_sheets(book()), title="Book")
    titles = [
        bytes.fromhex(t.decode()).decode("utf-16-be").lstrip("\ufeff")
        for t in re.findall(rb"/Title <([0-9a-f]+)> /Parent", raw)
    ]
    assert titles[:3] == ["Chart book of truck18", "Contents", "How to read these charts"]
    assert sum("counterweight" in title for title in titles) == len(book().chapters)


def test_all_files_of_a_book_are_written_together(tmp_path):
    told = []
    files = write_book(
        book(), tmp_path / "charts", class_version=True, progress=lambda *a: told.append(a)
    )
    names = {"pdf", "html", "csv", "json"}
    assert {file.suffix[1:] for file in files} == names
    assert len(files) == 6
    assert {file.name for file in (tmp_path / "charts").iterdir()} == {f.name for f in files}
    assert told
    for file in files:
        assert file.stat().st_size > 1000


@pytest.mark.parametrize("old", [True, False])
def test_a_book_that_is_interrupted_leaves_nothing(tmp_path, old):
    folder = tmp_path / "charts"
    if old:
        folder.mkdir()
        (folder / "mine.txt").write_text("kept")

    def stop(what, done, of):
        if what.endswith(".csv"):
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        write_book(book(), folder, progress=stop)
    left = [file.name for file in folder.iterdir()] if folder.exists() else []
    assert left == (["mine.txt"] if old else [])


def test_the_class_book_has_one_chart_to_a_chapter():
    pages = list(book_sheets(book(), look=CLASS, stated=False))
    assert len(pages) == 3 + len(book().chapters)


def test_the_page_of_a_book_is_one_file_that_loads_nothing():
    page = book_html(book())
    assert page.count(CAUTION.replace("'", "&#x27;")) == 2
    assert "@" not in re.sub(r"<style>.*?</style>", "", page, flags=re.S).replace("@media", "")
    assert not re.search(r"""(src|href)\s*=\s*["']""", page)
    assert "http" not in page
    for call in ("fetch(", "XMLHttpRequest", "import(", "eval("):
        assert call not in page


def test_the_data_of_the_page_are_those_of_the_book():
    data = json.loads(re.search(r'id="data">(.*?)</script>', book_html(book()), re.S)[1])
    assert data == json.loads(json.dumps(book_data(book())))
    heads = {way: group["length"] for group in data["groups"] for way in group["ways"]}
    numbers = numbers_of(book().chapters[0].best, units=book().units)
    for way, length in enumerate(book().configurations.length):
        # Ways of one column are of one length to 0.10 m, so that a heading may be one digit off.
        assert data["ways"][way]["boom"] == numbers.boom(float(length))
        assert abs(float(data["ways"][way]["boom"]) - float(heads[way])) < 0.11
    for made, chapter in zip(data["chapters"], book().chapters, strict=True):
        steps = np.frombuffer(b64decode(made["steps"]), "<u2")
        steps = steps.reshape(len(data["ways"]), len(data["radii"])).T
        rows = np.searchsorted(book().radii, chapter.stated.radii)
        shown = np.where(steps[rows] == 0xFFFF, -1, steps[rows].astype(int))
        assert np.array_equal(shown, chapter.stated.steps)
        limits = np.frombuffer(b64decode(made["governing"]), "u1").reshape(steps.T.shape).T
        rated = chapter.stated.rated
        assert np.array_equal(limits[rows][rated], chapter.stated.governing[rated])


def test_csv_rows_are_the_cells_that_the_boom_reaches_in_the_wanted_units():
    chart = book().chapters[0].stated
    file = StringIO()
    write_csv([chart], file, units="us")
    first, *rest = file.getvalue().splitlines()
    assert first == f"# {CAUTION} {BLANKS}"
    rows = list(csv.DictReader(rest))
    assert list(rows[0]) == table_head("us")
    figures = [row for row in rows if not row["blank"]]
    assert len(figures) == chart.rated.sum()
    assert len(rows) == (chart.blank != NO_REACH).sum()
    total = sum(float(row["gross_capacity_lb"]) for row in figures) * POUND
    assert total == pytest.approx(np.nansum(chart.capacity), rel=1e-9)


def test_json_holds_every_cell_of_the_book():
    made = json.loads(json.dumps(plain_book(book()), allow_nan=False))
    assert made["schema"] == "boomsim.book/3"
    assert made["caution"] == CAUTION
    rated = sum(s >= 0 for c in made["chapters"] for way in c["capacity_steps"] for s in way)
    assert rated == book().rated


def test_a_book_without_chapters_is_refused():
    with pytest.raises(ValueError, match="at least one way"):
        make_book([])
