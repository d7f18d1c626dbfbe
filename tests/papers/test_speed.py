"""How fast papers are made: measured on one core, with room for a busy machine."""

import time
from pathlib import Path

import pytest

from boomsim.papers.blueprint import make_blueprint
from boomsim.papers.html import render_html
from boomsim.papers.paper import Paper, make_paper
from boomsim.papers.pdf import render_pdf
from boomsim.papers.plain_data import paper_data, to_json
from boomsim.papers.registry import families

WANTED = 50
"""Papers of ten questions a second [1/s]."""
ROOM = 4
"""A machine that does other things at the same time may be so many times slower [1]."""

PLAN = make_blueprint(
    {
        "title": "Speed", "minutes": 60, "form": "mixed", "variants": 40,
        "part": [{"families": list(families()), "questions": 10}],
    }
)  # fmt: skip


def made(count: int) -> list[Paper]:
    return [make_paper(PLAN, variant=number) for number in range(count)]


def test_fifty_papers_a_second_without_pdf(tmp_path: Path) -> None:
    made(2)  # compiles the formulas
    begun = time.perf_counter()
    for paper in made(20):
        assert len(paper.questions) == 10
        to_json(paper_data(paper, kind="paper"))
        render_html(paper, kind="paper")
    assert 20 / (time.perf_counter() - begun) > WANTED / ROOM


@pytest.mark.parametrize("kind", ["paper", "solutions", "marking"])
def test_a_pdf_within_a_tenth_of_a_second(kind: str) -> None:
    papers = made(6)
    render_pdf(papers[0], kind=kind)
    begun = time.perf_counter()
    for paper in papers[1:]:
        assert render_pdf(paper, kind=kind).startswith(b"%PDF")
    assert (time.perf_counter() - begun) / 5 < 0.1 * ROOM
