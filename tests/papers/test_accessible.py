"""Papers for those who hear them or need large print: held against a checker that is not ours.

Typst refuses to write what breaks a rule of PDF/UA-1 that a program can see. Beside that,
``outloud``, a checker by other people, looks at the checkpoints of the Matterhorn Protocol 1.1 and
of WCAG 2.2: no error, and no warning but two that are named here. The usual validator of the
standard, which needs a Java archive that was not to be had, has not seen them; nor has a person
with a screen reader.
"""

import itertools
import json
import re
import shutil
import subprocess
import sys
from functools import cache
from pathlib import Path

import pypdfium2
import pytest
import typst

from boomsim.papers.blueprint import make_blueprint
from boomsim.papers.family_registry import families
from boomsim.papers.paper import Paper, make_paper
from boomsim.papers.render.paper_pdf import render_pdf

KNOWN = {
    "HDG-010": "the heading of a question is its number",
    "ORD-001": "drawings are painted after the text around them; tags have the order of reading",
    "PAG-001": "the head of a table stands again on the next page",
    "TXT-004": "the root sign comes in several sizes, each of which is the root sign",
}
"""Warnings that are looked at and left."""

EVERY = list(families())
WAYS = [("paper", False), ("solutions", False), ("marking", False), ("paper", True)]


@cache
def paper(units: str) -> Paper:
    plan = {
        "title": "Read aloud", "minutes": 60, "units": units, "form": "mixed",
        "part": [{"title": "All", "families": EVERY, "questions": len(EVERY)}],
    }  # fmt: skip
    return make_paper(make_blueprint(plan), variant=0)


def findings(pdf: bytes, folder: Path) -> list[dict[str, str]]:
    program = Path(sys.executable).with_name("outloud")
    if not program.exists():
        pytest.skip("outloud, the checker, is not installed")
    (folder / "paper.pdf").write_bytes(pdf)
    ran = subprocess.run(
        [str(program), "-q", "--fail-on", "never", "--json", "-", str(folder / "paper.pdf")],
        capture_output=True, check=True,
    )  # fmt: skip
    (result,) = json.loads(ran.stdout)["results"]
    assert result["error"] is None
    return list(result["findings"])


@pytest.mark.slow
@pytest.mark.parametrize("units", ["metric", "us"])
@pytest.mark.parametrize(("kind", "large"), WAYS)
def test_a_checker_that_is_not_ours_finds_nothing_but_what_is_known(
    tmp_path: Path, kind: str, large: bool, units: str
) -> None:
    found = findings(render_pdf(paper(units), kind=kind, large=large), tmp_path)
    assert [one for one in found if one["severity"] == "error"] == []
    assert {one["rule"] for one in found if one["severity"] == "warning"} <= KNOWN.keys()


def test_the_checker_does_find_faults(tmp_path: Path) -> None:
    """A page without tags, title and language, and one whose picture has no words."""
    bare = typst.compile(b"= A heading\nand a text", format="pdf", pdf_tags=False)
    assert any(one["severity"] == "error" for one in findings(bare, tmp_path))
    size = 'width="9" height="9"'
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" {size}><rect {size}/></svg>'
    page = f"= A heading\n#image(bytes({json.dumps(svg)}))"
    found = findings(typst.compile(page.encode(), format="pdf"), tmp_path)
    assert any("alt" in one["message"].lower() for one in found)


def test_the_caution_is_heard_and_not_only_printed_at_the_foot() -> None:
    """What runs along at the foot of pages is left out when a page is read out."""
    last = pypdfium2.PdfDocument(render_pdf(paper("metric"), kind="paper"))
    text = last[len(last) - 1].get_textpage().get_text_range().replace("\r\n", " ")
    assert text.count("not for planning a lift") == 2


def tags(pdf: bytes) -> list[tuple[str, str]]:
    """Tags of all pages in the order of reading, each with its alternative text."""
    import pypdfium2.raw as raw

    def words(call, one) -> str:
        size = call(one, None, 0)
        buffer = (raw.c_ubyte * max(size, 2))()
        call(one, buffer, size)
        return bytes(buffer)[: max(size - 2, 0)].decode("utf-16-le")

    def walk(one) -> None:
        found.append((words(raw.FPDF_StructElement_GetType, one),
                      words(raw.FPDF_StructElement_GetAltText, one)))  # fmt: skip
        for place in range(raw.FPDF_StructElement_CountChildren(one)):
            child = raw.FPDF_StructElement_GetChildAtIndex(one, place)
            if child:
                walk(child)

    found: list[tuple[str, str]] = []
    document = pypdfium2.PdfDocument(pdf)
    for page in document:
        tree = raw.FPDF_StructTree_GetForPage(page)
        for place in range(raw.FPDF_StructTree_CountChildren(tree)):
            walk(raw.FPDF_StructTree_GetChildAtIndex(tree, place))
        raw.FPDF_StructTree_Close(tree)
    return found


def test_headings_pictures_formulas_and_heads_of_tables_are_tagged() -> None:
    found = tags(render_pdf(paper("metric"), kind="solutions"))
    kinds = [kind for kind, _ in found]
    levels = [int(kind[1]) for kind in kinds if re.fullmatch(r"H\d", kind)]
    assert levels[0] == 1
    assert all(after - before <= 1 for before, after in itertools.pairwise(levels))
    assert levels.count(3) >= len(EVERY)
    drawn = sum(bool(one.problem.picture) for one in paper("metric").questions)
    pictures = [words for kind, words in found if kind == "Figure"]
    assert len(pictures) >= drawn and all(pictures)
    formulas = [words for kind, words in found if kind == "Formula"]
    assert len(formulas) > 100 and all(formulas)
    tables = sum(one.problem.table is not None for one in paper("metric").questions)
    assert kinds.count("Table") >= tables > 0
    assert kinds.count("TH") >= 2 * tables


def test_large_print_is_large() -> None:
    """No letter of a question is below 16 pt; drawings and the foot of a page are what is left.

    16 pt is where guidance for large print begins. Status: common practice, no source.
    """
    if not shutil.which("pdftotext"):
        pytest.skip("pdftotext is not installed (Debian: poppler-utils)")
    import pypdfium2.raw as raw

    plan = {
        "title": "Large", "minutes": 9,
        "part": [{"topics": ["geometry"], "questions": 2}],
    }  # fmt: skip
    document = pypdfium2.PdfDocument(
        render_pdf(make_paper(make_blueprint(plan), variant=0), kind="paper", large=True)
    )
    sizes = {}
    for page in document:
        text = page.get_textpage()
        for place in range(text.count_chars()):
            bottom = text.get_charbox(place)[1]
            letter = text.get_text_range(place, 1)
            if letter.isalpha() and letter.isascii() and bottom > 100:
                size = raw.FPDFText_GetFontSize(text, place)
                sizes.setdefault(round(size, 1), []).append(letter)
    whole = sum(map(len, sizes.values()))
    small = sum(len(letters) for size, letters in sizes.items() if size < 15.9)
    assert whole > 500
    assert small < 0.02 * whole, sizes  # indices of letters in formulas
