"""Speed of papers: print, never assert.

    python tests/benchmarks/papers.py

Papers of ten questions, drawn from all families, on one thread: set (numbers drawn, solved, and
each answer held against the call path), then written in every format.
"""

import os
import time
from collections.abc import Callable, Sequence
from functools import partial

for name in ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[name] = "1"

from boomsim.papers.blueprint import make_blueprint  # noqa: E402
from boomsim.papers.html import render_html  # noqa: E402
from boomsim.papers.markdown import render_markdown  # noqa: E402
from boomsim.papers.paper import Paper, make_paper  # noqa: E402
from boomsim.papers.pdf import render_pdf  # noqa: E402
from boomsim.papers.plain_data import paper_data, to_json  # noqa: E402
from boomsim.papers.problem import make_problem  # noqa: E402
from boomsim.papers.qti import qti_package  # noqa: E402
from boomsim.papers.registry import families  # noqa: E402
from boomsim.papers.usual import KINDS  # noqa: E402

ROUNDS, PAPERS = 5, 20
PLAN = make_blueprint(
    {
        "title": "Speed", "minutes": 60, "form": "mixed", "variants": ROUNDS * PAPERS + 1,
        "vary": "families", "part": [{"families": list(families()), "questions": 10}],
    }
)  # fmt: skip


def spread(values: Sequence[float], *, unit: str) -> str:
    """Middle, lowest and highest."""
    low, *_, high = ordered = sorted(values)
    return f"{ordered[len(ordered) // 2]:.3g} {unit} (from {low:.3g} to {high:.3g})"


def seconds(action: Callable[[], object]) -> float:
    begun = time.perf_counter()
    action()
    return time.perf_counter() - begun


def sets() -> list[Paper]:
    """Set papers, round by round."""
    made: list[Paper] = [make_paper(PLAN, variant=0)]
    rates = []
    for turn in range(ROUNDS):
        numbers = range(1 + turn * PAPERS, 1 + (turn + 1) * PAPERS)
        begun = time.perf_counter()
        made += [make_paper(PLAN, variant=number) for number in numbers]
        rates.append(PAPERS / (time.perf_counter() - begun))
    print("set, solved and checked:", spread(rates, unit="papers a second"))
    return made


def written(papers: Sequence[Paper]) -> None:
    """Write them in every format."""
    ways: dict[str, Callable[[Paper], object]] = {
        "JSON": lambda paper: to_json(paper_data(paper, kind="paper")),
        "HTML": lambda paper: render_html(paper, kind="paper"),
        "Markdown": lambda paper: render_markdown(paper, kind="paper"),
        "QTI": qti_package,
    } | {f"PDF, {kind}": lambda paper, kind=kind: render_pdf(paper, kind=kind) for kind in KINDS}
    for name, way in ways.items():
        way(papers[0])
        times = [1e3 * seconds(partial(way, one)) for one in papers[1 : 1 + PAPERS]]
        print(f"{name}:", spread(times, unit="ms each"))


def slowest(count: int = 6) -> None:
    """Name the families that take longest to set."""
    times = {}
    for name, family in families().items():
        make_problem(family, seed="warm")
        runs = [seconds(lambda f=family, k=k: make_problem(f, seed=str(k))) for k in range(8)]
        times[name] = 1e3 * sum(runs) / len(runs)
    for name in sorted(times, key=times.__getitem__, reverse=True)[:count]:
        print(f"  {name}: {times[name]:.2f} ms a problem")
    print(f"  all: {sum(times.values()) / len(times):.2f} ms a problem on average")


if __name__ == "__main__":
    PAPERS_MADE = sets()
    written(PAPERS_MADE)
    slowest()
