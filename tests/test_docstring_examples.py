"""The examples in the docstrings: each is run and gives what it says."""

import doctest
from importlib import import_module
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]


def shown() -> list[str]:
    """Modules whose docstrings hold examples."""
    files = sorted((ROOT / "boomsim").rglob("*.py"))
    return [
        ".".join(file.relative_to(ROOT).with_suffix("").parts)
        for file in files
        if ">>> " in file.read_text(encoding="utf-8")
    ]


def test_examples_are_shown() -> None:
    assert len(shown()) > 20


@pytest.mark.parametrize("name", shown())
def test_every_example_gives_what_it_says(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    done = doctest.testmod(import_module(name))
    assert done.attempted
    assert not done.failed, capsys.readouterr().out
