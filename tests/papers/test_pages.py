"""What stands together on a page: a question with its answer lines, a last step with its slips."""

import re
import shutil
import subprocess
from pathlib import Path

import pytest

from boomsim.papers.blueprint import make_blueprint, read_blueprint, ready_names
from boomsim.papers.family_registry import families
from boomsim.papers.paper import Paper, make_paper
from boomsim.papers.problems.family import Family
from boomsim.papers.render.paper_pdf import render_pdf

EVERY = list(families())
NUMERIC = [name for name, family in families().items() if isinstance(family, Family)]
CHOICE = [name for name in EVERY if not getattr(families()[name], "by_check", False)]


def paper(form: str, units: str, *, guided: bool) -> Paper:
    names = {"numeric": NUMERIC, "choice": CHOICE}.get(form, EVERY)
    plan = {
        "title": "Pages", "minutes": 60, "units": units, "form": form, "guided": guided,
        "part": [{"families": names, "questions": len(names)}],
    }  # fmt: skip
    return make_paper(make_blueprint(plan), variant=0)


def pages(pdf: bytes, folder: Path) -> list[list[str]]:
    """Lines of each page."""
    if not shutil.which("pdftotext"):
        pytest.skip("pdftotext is not installed (Debian: poppler-utils)")
    path = folder / "paper.pdf"
    path.write_bytes(pdf)
    found = subprocess.run(
        ["pdftotext", "-layout", "-enc", "UTF-8", str(path), "-"], capture_output=True, check=True
    ).stdout.decode("utf-8")
    return [page.splitlines() for page in found.split("\f")[:-1]]


@pytest.mark.parametrize(
    ("form", "units", "guided"),
    [("numeric", "metric", True), ("numeric", "us", False), ("mixed", "us", True)],
)
def test_a_question_stands_on_one_page_with_its_answer_lines(
    tmp_path: Path, form: str, units: str, guided: bool
) -> None:
    made = paper(form, units, guided=guided)
    waiting = list(made.questions)
    for lines in pages(render_pdf(made, kind="paper"), tmp_path):
        wanted = 0  # marks in brackets: one for each answer line, or one for a choice
        for line in lines:
            if waiting and re.match(rf"\s*{waiting[0].number}\s+[A-Z]", line):
                question = waiting.pop(0)
                wanted += len(question.asked) or 1
        found = sum(len(re.findall(r"\[\d\]", line)) for line in lines)
        assert found == wanted, "\n".join(lines)
    assert waiting == []


def test_slips_are_never_alone_on_a_page(tmp_path: Path) -> None:
    made = paper("mixed", "metric", guided=True)
    for lines in pages(render_pdf(made, kind="solutions"), tmp_path):
        first = next(line.strip() for line in lines if line.strip())
        assert "perhaps you" not in first
        assert not first.startswith("If you had something else")


def test_words_beside_a_long_formula_stay_in_one_line(tmp_path: Path) -> None:
    # Beside the root of the cylinder's triangle there is room for one word in a line.
    part = {"families": ["statics_cylinder_force"], "questions": 1}
    plan = make_blueprint({"title": "Key", "minutes": 9, "units": "us", "part": [part]})
    made = pages(render_pdf(make_paper(plan, variant=0), kind="marking"), tmp_path)
    assert any(
        "distance between the cylinder's pins" in re.sub("[’']", "'", line) for line in made[0]
    )


@pytest.mark.parametrize("name", ready_names())
def test_a_ready_blueprint_is_printed_in_every_kind(name: str) -> None:
    made = make_paper(read_blueprint(name), variant=0)
    for kind in ("paper", "solutions", "marking"):
        assert render_pdf(made, kind=kind).startswith(b"%PDF")
    assert render_pdf(made, kind="paper", large=True).startswith(b"%PDF")


@pytest.mark.parametrize("titles", [("", "B", ""), ("A", "", ""), ("", "", "C"), ("A", "B", "C")])
def test_parts_with_and_without_a_title_are_printed_in_one_paper(titles: tuple[str, ...]) -> None:
    # PDF/UA lets no heading skip a level: the compiler refuses such a paper.
    parts = [{"title": one, "topics": ["geometry"], "questions": 1} for one in titles]
    plan = make_blueprint({"title": "Parts", "minutes": 9, "part": parts})
    made = make_paper(plan, variant=0)
    assert all(render_pdf(made, kind=kind) for kind in ("paper", "solutions", "marking"))


def test_a_question_of_large_print_has_a_page_of_its_own(tmp_path: Path) -> None:
    made = paper("choice", "metric", guided=False)
    sheets = pages(render_pdf(made, kind="paper", large=True), tmp_path)
    waiting = [one.number for one in made.questions]
    for lines in sheets:
        begun = [n for n in waiting if any(re.match(rf"\s*{n}\s+[A-Z]", line) for line in lines)]
        assert len(begun) <= 1, "\n".join(lines)
        waiting = [n for n in waiting if n not in begun]
    assert waiting == []
