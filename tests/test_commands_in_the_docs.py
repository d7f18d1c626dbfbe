"""Every command that a page shows is one that boomsim takes, and those of the door run."""

import io
import re
import shlex
from pathlib import Path

import pytest

from boomsim.cli import main, parser

ROOT = Path(__file__).parents[1]
WRITTEN = {
    "commands",
    "families",
    "gallery",
    "class-plan",
    "changelog",
    "contributing",
    "developers",
}
"""Written when the site is built: their commands are run then, or stand elsewhere."""

PAGES = [
    *(ROOT / f"{name}.md" for name in ("README", "DEVELOPERS", "CONTRIBUTING", "SECURITY")),
    *(path for path in sorted((ROOT / "docs").glob("*.md")) if path.stem not in WRITTEN),
]
FENCED = re.compile(r"^(?:\$ |\.venv/bin/)?(boomsim .*?)(?:\s+#.*)?$", re.M)
QUOTED = re.compile(r"`(boomsim [^`]*)`")
NOT_RUN = (
    "boomsim lab",
    "boomsim class",
    "boomsim lessons",
    "boomsim describe mine.toml",
    "boomsim compare mine.toml",
    "boomsim page --live",
    "boomsim scan",
    "boomsim markers",
)
"""Serve until they are stopped, want a file or a runtime of one's own, or run every notebook, which
tests/classroom does."""


def shown(path):
    """Commands of a page: in fences, and quoted in a line."""
    text = path.read_text(encoding="utf-8")
    fences = re.findall(r"^```(?:sh|powershell)?\n(.*?)^```", text, re.M | re.S)
    found = [line for fence in fences for line in FENCED.findall(fence)]
    found += QUOTED.findall(re.sub(r"^```.*?^```", "", text, flags=re.M | re.S))
    return [line.split(" > ")[0].split(" && ")[0].strip() for line in found]


def told(path):
    """Those that say what is to be done, and not only how a command is called."""
    return [line for line in dict.fromkeys(shown(path)) if not line.endswith("…")]


EVERY = sorted({line for path in PAGES for line in told(path)})


@pytest.mark.parametrize("line", EVERY)
def test_a_command_on_a_page_is_one_that_boomsim_takes(line, capsys):
    words = shlex.split(line)[1:]
    try:
        parser().parse_args(words)
    except SystemExit as stopped:
        missing = capsys.readouterr().err
        # `boomsim handouts` names a command; what it needs stands elsewhere.
        assert stopped.code == 0 or (len(words) == 1 and "arguments are required" in missing), line


def test_the_pages_show_commands_at_all():
    assert len(EVERY) > 50
    assert len(told(ROOT / "README.md")) > 12


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    return tmp_path_factory.mktemp("door")


DOOR = [line for name in ("README.md", "docs/how-do-i.md") for line in told(ROOT / name)]


@pytest.mark.slow
@pytest.mark.parametrize("line", list(dict.fromkeys(DOOR)))
def test_a_command_of_the_front_door_does_what_it_says(line, folder, monkeypatch, capsys):
    """In their order in one folder: what one writes, a later one reads."""
    if line.startswith(NOT_RUN):
        pytest.skip("serves until it is stopped, or wants a file of one's own")
    monkeypatch.chdir(folder)
    # A game asks until nothing more comes.
    monkeypatch.setattr("sys.stdin", io.StringIO(""))
    # The small machine's book is made the same way, and sooner.
    line = line.replace("chart --all", "chart bench --all")
    assert main(shlex.split(line)[1:]) == 0
    assert len(capsys.readouterr().out) > 40
