"""Between the code and docs/theory.md the way is short in both directions."""

import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
THEORY = (ROOT / "docs" / "theory.md").read_text(encoding="utf-8")
HEADS = dict(re.findall(r"(?m)^## (\d+)\. (.+)$", THEORY))
FILES = {path.name: path for path in (ROOT / "boomsim").rglob("*.py")}
DERIVED = re.compile(r"Derived in docs/theory\.md, section (\d+)\.")


def named() -> dict[str, set[str]]:
    """File names that each section of the theory begins with."""
    found = {}
    for number, section in re.findall(r"(?ms)^## (\d+)\. (.*?)(?=^## |\Z)", THEORY):
        first = next((ln for ln in section.splitlines() if ln.startswith("`boomsim/")), "")
        found[number] = {Path(name).name for name in re.findall(r"`([\w/]+\.py)`", first)}
    return found


@pytest.mark.parametrize("number, names", [(n, sorted(f)) for n, f in named().items() if f])
def test_a_file_that_the_theory_derives_says_in_which_section(number, names):
    for name in names:
        said = DERIVED.search(FILES[name].read_text(encoding="utf-8"))
        assert said and said[1] == number, f"{name} should say section {number}"


def test_a_section_that_a_file_names_is_there_and_names_the_file():
    for name, path in FILES.items():
        for number in DERIVED.findall(path.read_text(encoding="utf-8")):
            assert number in HEADS and name in named()[number], name
