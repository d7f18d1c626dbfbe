"""What stands together on a page: a question with its answer lines, a last step with its slips."""

import re
import shutil
import subprocess
from pathlib import Path

import pytest

from boomsim.papers.blueprint import make_blueprint
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
