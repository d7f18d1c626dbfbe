"""The documentation builds with warnings as errors, and says the caution."""

import contextlib
import importlib.util
import io
import re
import subprocess
import sys
import zlib
from pathlib import Path
from typing import Any

import pytest

from boomsim.caution import CAUTION
from boomsim.face.offered_names import OFFERED
from boomsim.machine.boom_systems import BOOM_SYSTEMS

ROOT = Path(__file__).parents[1]


@pytest.mark.slow
@pytest.mark.skipif(
    importlib.util.find_spec("sphinx") is None, reason="needs the docs extra: sphinx"
)
def test_the_documentation_builds_without_a_warning(tmp_path):
    line = [
        sys.executable,
        "-m",
        "sphinx",
        "-q",
        "-W",
        "-b",
        "html",
        "docs",
        str(tmp_path / "site"),
    ]
    done = subprocess.run(line, cwd=ROOT, capture_output=True, text=True, timeout=1200)
    assert done.returncode == 0, done.stderr
    assert (tmp_path / "site" / "commands.html").exists()
    site = tmp_path / "site"
    lesson = (site / "lessons" / "02-same-length.html").read_text(encoding="utf-8")
    before, after = lesson.split("after-guess", 1)
    # What the lesson asks for is not to be seen before the fold; what it draws is behind it.
    assert "lesson-picture" not in before and "lesson-picture" in after
    # Other sites can link to a function, by the name it is called by as well.
    packed = (site / "objects.inv").read_bytes().split(b"\n", 4)[4]
    held = zlib.decompress(packed).decode()
    for name in ("rating.capacity.rate", *OFFERED):
        assert f"boomsim.{name} py:function " in held, name


@pytest.mark.parametrize("page", ["README.md", "docs/index.md", "docs/safety.md", "docs/theory.md"])
def test_the_caution_stands_in_the_words_of_the_code(page):
    text = " ".join((ROOT / page).read_text(encoding="utf-8").replace("*", "").split())
    # "A teaching model" may begin inside a sentence.
    assert CAUTION[2:].rstrip(".") in text


@pytest.fixture(scope="module")
def example():
    """Runs the example below a heading of the contributor guide: what it says, what it defines."""
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    known = dict(BOOM_SYSTEMS)

    def run(heading: str) -> tuple[list[str], dict[str, Any]]:
        below = text.split(f"## {heading}\n")[1].split("\n## ")[0]
        (block,) = re.findall(r"```python\n(.*?)```", below, re.S)
        said, names = io.StringIO(), {}
        with contextlib.redirect_stdout(said):
            exec(block, names)
        return said.getvalue().splitlines(), names

    yield run
    BOOM_SYSTEMS.clear()
    BOOM_SYSTEMS.update(known)


def test_the_guide_rates_a_lift_and_says_what_governs(example):
    said, _ = example("One call path")
    assert len(said) == 2 and all(re.fullmatch(r"\d+ kg: [a-z ]+\d?", line) for line in said)


def test_the_guide_adds_a_limit_that_then_governs(example):
    said, names = example("Where a new limit goes")
    (usual, _), (stiff, why) = (line.split(" kg: ") for line in said)
    assert why == "sag of the boom" and int(stiff) < int(usual)
    # What the limit says of itself: 2 % of the boom length, to a capacity's own millionth.
    rating = names["rating"]
    share = rating.tip_deflection[0, 0] / rating.boom.layout.boom_length[0]
    assert share == pytest.approx(0.02, rel=1e-6)


def test_the_guide_lets_the_lightest_section_of_a_new_machine_out_first(example):
    said, names = example("Where a new machine goes")
    assert names["machine"].name == "mine"
    # 15.00 m less the 9.00 m of the retracted boom, over a stroke of 6.50 m: 92.3 %.
    ways = {line.split(" (")[1].split(")")[0]: line.split(" (")[0] for line in said}
    assert ways == {"sequenced": "92.3, 0, 0", "head first": "0, 0, 92.3"}
    assert all(re.search(r": [1-9]\d+ kg$", line) for line in said)


def test_the_guide_asks_a_new_question_and_marks_it(example):
    said, names = example("Where a new problem family goes")
    given = names["question"].problem.values
    right, wrong = said
    # Both sections out by the fraction of their stroke; printed to three figures.
    assert float(right.split()[0]) == pytest.approx(2 * given["s"] * given["k"], rel=5e-3)
    assert right.endswith("1 of 1")
    assert wrong.endswith("0 of 1 counted one section only")


def test_the_guide_answers_each_of_the_three_questions_in_ten_lines():
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    for heading in ("a new limit", "a new machine", "a new problem family"):
        below = text.split(f"## Where {heading} goes\n")[1].split("```python")[0]
        assert len([line for line in below.splitlines() if line.strip()]) <= 10
