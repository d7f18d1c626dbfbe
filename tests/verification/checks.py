"""Reads the outside checks from the tests' own text: sentence, status, place, reason.

Nothing is run. A test's name is its sentence. `Source: ... Status: ...` at the end of its file's
docstring says whose its figures are and how they were come by; the same words in a class, a
docstring or a comment say so for one test. The reason of a tolerance is the comment right at the
comparison or at its constant, or what the test or its file say of figures and tolerances.
"""

import ast
import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from verification.comments import Comments
from verification.reasons import SOURCE, STATUS, Assertion, assertions, without_status, words

TESTS = Path(__file__).resolve().parents[1]
FOLDERS = ("published", "reference")

STATUSES = {
    "read": "the figure or formula was read in the source",
    "second-hand": "read in a document that quotes the source",
    "from memory": "remembered, and reproduced by a formula where there is one",
    "common practice": "a fact of the trade, no source",
    "worked": "a closed form or plain statics, worked by hand in the test",
    "reference program": "computed by a program or a formula written apart from boomsim",
}

PLACE = re.compile(
    r"[Tt]able \d[\d.]*\d|eqs?\.? ?\(?\d+\.\d+\)?|\(\d\.\d+\)|\b\d\.\d+\(\d\)|\b[Ss]ection \d(?!\d)"
    r"|[Cc]ase \d|\b5-26\b|\bR4-1\b|\b5-1\.1\.\d"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """One test of the outside checks."""

    path: str
    name: str
    source: str
    about: str
    sentence: str
    status: str
    place: str
    remark: str
    assertions: tuple[Assertion, ...]

    @property
    def folder(self) -> str:
        return self.path.split("/")[-2]


@cache
def all_checks() -> tuple[Check, ...]:
    """Every check of `tests/published` and `tests/reference`, in the order of the files.

    Read once: a file that is changed while its tests run would have other lines by the end.
    """
    files = (f for folder in FOLDERS for f in sorted((TESTS / folder).glob("test_*.py")))
    return tuple(check for file in files for check in checks_of(file))


def checks_of(file: Path) -> list[Check]:
    """The checks of one file."""
    text = file.read_text(encoding="utf-8")
    tree, comments = ast.parse(text), Comments.of(text)
    return [_check(file, tree, comments, *found) for found in _tests(tree)]


def _tests(tree: ast.Module) -> Iterator[tuple[ast.FunctionDef, ast.ClassDef | None]]:
    """Test functions, with the class they stand in."""
    for node in tree.body:
        inside = node.body if isinstance(node, ast.ClassDef) else [node]
        for one in inside:
            if isinstance(one, ast.FunctionDef) and one.name.startswith("test_"):
                yield one, node if isinstance(node, ast.ClassDef) else None


def _check(
    file: Path,
    tree: ast.Module,
    comments: Comments,
    test: ast.FunctionDef,
    owner: ast.ClassDef | None,
) -> Check:
    head, group = words(tree), words(owner) if owner else ""
    own = f"{words(test)} {comments.inside(test)} {comments.above(test)}"
    sentence = sentence_of(test.name)
    return Check(
        path="/".join((TESTS / file).parts[-3:]),
        name=f"{owner.name}::{test.name}" if owner else test.name,
        source=_source(own) or _source(group) or _source(head),
        about=without_status(head),
        sentence=sentence,
        status=_status(own) or _status(group) or _status(head),
        place=", ".join(_places(f"{own} {group}", sentence)),
        remark=without_status(own),
        assertions=tuple(assertions(tree, comments, test, owner)),
    )


def sentence_of(name: str) -> str:
    """A test's name as a sentence; digits that an underscore parts are decimals."""
    words = name.removeprefix("test_")
    return re.sub(r"(?<![a-z\d])(\d+)_(\d+)(?![a-z\d])", r"\1.\2", words).replace("_", " ")


def _source(text: str) -> str:
    found = SOURCE.search(text)
    return found.group(1) if found else ""


def _status(text: str) -> str:
    found = STATUS.search(text)
    return found.group(1) if found else ""


def _places(text: str, sentence: str) -> list[str]:
    named = [place.strip("()") for place in PLACE.findall(f"{sentence} {text}")]
    unlike = {re.sub(r"[^\d.()-]", "", place).strip("."): place for place in reversed(named)}
    return list(unlike.values())[::-1]
