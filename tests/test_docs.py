"""The documentation builds with warnings as errors, and says the caution."""

import contextlib
import importlib.util
import io
import re
import subprocess
import sys
from pathlib import Path

import pytest

from boomsim.caution import CAUTION

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
    done = subprocess.run(line, cwd=ROOT, capture_output=True, text=True, timeout=300)
    assert done.returncode == 0, done.stderr
    assert (tmp_path / "site" / "commands.html").exists()
    assert (tmp_path / "site" / "api.html").exists()


@pytest.mark.parametrize("page", ["README.md", "docs/index.md", "docs/safety.md", "docs/theory.md"])
def test_the_caution_stands_in_the_words_of_the_code(page):
    text = " ".join((ROOT / page).read_text(encoding="utf-8").replace("*", "").split())
    # "A teaching model" may begin inside a sentence.
    assert CAUTION[2:].rstrip(".") in text


def test_the_example_of_the_contributor_guide_runs_and_says_what_governs():
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    blocks = re.findall(r"```python\n(.*?)```", text, re.S)
    assert blocks
    for block in blocks:
        said = io.StringIO()
        with contextlib.redirect_stdout(said):
            exec(block, {})
        assert re.search(r"\d+ kg: \w+", said.getvalue())
