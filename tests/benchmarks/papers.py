"""Speed of papers: print, never assert.

    python tests/benchmarks/papers.py

Papers of ten questions, drawn from all families, on one thread: set (numbers drawn, solved, and
each answer held against the call path), then written in every format. A first round, in which
formulas are compiled and the charts of the built-in machines computed, is timed by itself.
"""

import os
import time
from collections.abc import Callable, Sequence
from functools import partial

for name in ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[name] = "1"

import numpy as np  # noqa: E402
import pypdfium2  # noqa: E402

from boomsim.papers.blueprint import make_blueprint  # noqa: E402
from boomsim.papers.family_registry import families  # noqa: E402
from boomsim.papers.paper import Paper, make_paper  # noqa: E402
from boomsim.papers.problems.problem_making import make_problem  # noqa: E402
from boomsim.papers.qti.qti_package import qti_package  # noqa: E402
from boomsim.papers.qti.qti_versions import QTI_3  # noqa: E402
from boomsim.papers.render.paper_data import paper_data, to_json  # noqa: E402
from boomsim.papers.render.paper_html import render_html  # noqa: E402
from boomsim.papers.render.paper_markdown import render_markdown  # noqa: E402
from boomsim.papers.render.paper_notes import KINDS  # noqa: E402
from boomsim.papers.render.paper_pdf import render_pdf  # noqa: E402
from boomsim.papers.scans.bubble_reading import answers_in  # noqa: E402
from boomsim.papers.scans.scan_images import PER_INCH  # noqa: E402
from boomsim.papers.scans.scan_reading import sheet_in  # noqa: E402
from boomsim.papers.scans.sheet_drawing import answer_sheet_pdf  # noqa: E402
from boomsim.papers.scans.sheet_layout import sheet_pages  # noqa: E402

ROUNDS, PAPERS = 5, 20
PLAN = make_blueprint(
    {
        "title": "Speed", "minutes": 60, "form": "mixed", "variants": (ROUNDS + 1) * PAPERS,
        "vary": "families", "part": [{"families": list(families()), "questions": 10}],
    }
)  # fmt: skip


def spread(values: Sequence[float], *, unit: str) -> str:
    """Middle, lowest and highest."""
    ordered = sorted(values)
    middle, low, high = ordered[len(ordered) // 2], ordered[0], ordered[-1]
    return f"{middle:.3g} {unit}" + f" (from {low:.3g} to {high:.3g})" * (len(values) > 1)


def timed(action: Callable[[], object]) -> tuple[float, float]:
    """Time on the clock, and of the processor: on a machine that is shared they differ [s]."""
    clock, processor = time.perf_counter(), time.process_time()
    action()
    return time.perf_counter() - clock, time.process_time() - processor


def told(name: str, runs: Sequence[tuple[float, float]], *, unit: str, inverse: float = 0) -> None:
    """Print one line; `inverse` papers a run make a rate of a time."""
    clock, processor = (
        [inverse / one if inverse else 1e3 * one for one in kind]
        for kind in zip(*runs, strict=True)
    )
    print(f"{name}: {spread(clock, unit=unit)}; of processor time {spread(processor, unit=unit)}")


def sets() -> list[Paper]:
    """Set papers, round by round."""
    made: list[Paper] = []

    def some(turn: int) -> None:
        numbers = range(turn * PAPERS, (turn + 1) * PAPERS)
        made.extend(make_paper(PLAN, variant=number) for number in numbers)

    first, *runs = [timed(partial(some, turn)) for turn in range(ROUNDS + 1)]
    told("first round", [first], unit="papers a second", inverse=PAPERS)
    told("set, solved and checked", runs, unit="papers a second", inverse=PAPERS)
    return made


def written(papers: Sequence[Paper]) -> None:
    """Write them in every format."""
    ways: dict[str, Callable[[Paper], object]] = {
        "JSON": lambda paper: to_json(paper_data(paper, kind="paper")),
        "HTML": lambda paper: render_html(paper, kind="paper"),
        "Markdown": lambda paper: render_markdown(paper, kind="paper"),
        "QTI": qti_package,
        "QTI 3": lambda paper: qti_package(paper, version=QTI_3),
        "answer sheet": answer_sheet_pdf,
        "PDF, large print": lambda paper: render_pdf(paper, kind="paper", large=True),
    } | {f"PDF, {kind}": lambda paper, kind=kind: render_pdf(paper, kind=kind) for kind in KINDS}
    for name, way in ways.items():
        way(papers[0])
        told(name, [timed(partial(way, one)) for one in papers[1 : 1 + PAPERS]], unit="ms each")


def read(paper: Paper) -> None:
    """Read an empty answer sheet, as often as papers are written."""
    page = pypdfium2.PdfDocument(answer_sheet_pdf(paper))[0]
    picture = page.render(scale=PER_INCH / 72, grayscale=True).to_pil().convert("L")
    grey = np.asarray(picture, dtype=np.float32) / 255.0
    plan = sheet_pages(paper.questions, units=paper.plan.units)[0]

    def one() -> None:
        found, _, _ = sheet_in(grey, plan.size)
        answers_in(found, plan, sign=".")

    one()
    told("answer sheet read", [timed(one) for _ in range(PAPERS)], unit="ms a page")


def slowest(count: int = 6) -> None:
    """Name the families that take longest to set."""
    times = {}
    for name, family in families().items():
        make_problem(family, seed="warm")
        runs = [timed(partial(make_problem, family, seed=str(k))) for k in range(8)]
        times[name] = 1e3 * sum(processor for _, processor in runs) / len(runs)
    for name in sorted(times, key=times.__getitem__, reverse=True)[:count]:
        print(f"  {name}: {times[name]:.2f} ms a problem")
    print(f"  all: {sum(times.values()) / len(times):.2f} ms a problem on average")


if __name__ == "__main__":
    PAPERS_MADE = sets()
    written(PAPERS_MADE)
    read(PAPERS_MADE[0])
    slowest()
