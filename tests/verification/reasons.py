"""The assertions of a test, and what the test's text says about their tolerances."""

import ast
import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from verification.comments import Comments

SOURCE = re.compile(r"\bSource: (.+?)\.(?= Status:|\s*$)")
STATUS = re.compile(r"\bStatus: ([a-z -]+)\.")
SPEAKS = re.compile(
    r"olerance|figure|decimal|round|%|percent|million|thousandth|[Ee]xact|printed|takes away|leave"
)
DEFAULT = "No tolerance of its own: one in a million, for rounding."
ROUNDING = "Rounding of double precision."


@dataclass(frozen=True, slots=True, kw_only=True)
class Assertion:
    """One `assert` of a test: its lines, its words, and what is said about it."""

    first: int
    last: int
    text: str
    compares: bool
    remark: str
    reason: str

    @property
    def said(self) -> str:
        """Remark, and the reason where the remark does not hold it."""
        both = self.reason if self.remark in self.reason else f"{self.remark} {self.reason}"
        return self.remark if self.reason in self.remark else both.strip()


def words(node: ast.Module | ast.ClassDef | ast.FunctionDef) -> str:
    return " ".join((ast.get_docstring(node) or "").split())


def without_status(text: str) -> str:
    """A text in one line without what it says for this record."""
    return " ".join(STATUS.sub("", SOURCE.sub("", " ".join(text.split()))).split())


def assertions(
    tree: ast.Module, comments: Comments, test: ast.FunctionDef, owner: ast.ClassDef | None
) -> Iterator[Assertion]:
    for node in ast.walk(test):
        if isinstance(node, ast.Assert):
            calls = [n for n in ast.walk(node.test) if _is_approx(n)]
            yield Assertion(
                first=node.lineno,
                last=node.end_lineno or node.lineno,
                text=ast.unparse(node.test),
                compares=bool(calls),
                remark=_remark(comments, test, node),
                reason=_reason(tree, comments, test, owner, node, calls) if calls else "",
            )


def _is_approx(node: ast.AST) -> bool:
    return isinstance(node, ast.Call) and ast.unparse(node.func) == "pytest.approx"


def _remark(comments: Comments, test: ast.FunctionDef, node: ast.Assert) -> str:
    """What the test says beside or above a comparison, else of itself."""
    return _first((comments.beside(node, test), words(test), comments.above(test)))


def _reason(
    tree: ast.Module,
    comments: Comments,
    test: ast.FunctionDef,
    owner: ast.ClassDef | None,
    node: ast.Assert,
    calls: list[ast.AST],
) -> str:
    """Why the tolerance: said at the comparison, of its constant, of the test, of the file."""
    own = f"{comments.inside(test)} {words(test)} {comments.above(test)}"
    return _first(
        (
            comments.right_at(node, test),
            comments.of_names(tree, calls),
            own if SPEAKS.search(own) else "",
            _by_rule(calls),
            _tolerance_of(owner) if owner else "",
            _tolerance_of(tree),
        )
    )


def _first(texts: Iterable[str]) -> str:
    """The first that says anything."""
    return next((words for text in texts if (words := without_status(text))), "")


def _tolerance_of(node: ast.Module | ast.ClassDef) -> str:
    """The docstring's paragraph on tolerances, from that word on."""
    found = re.search(r"\bTolerances?\b.*?(?=\n\n|\Z)", ast.get_docstring(node) or "", re.S)
    return found.group() if found else ""


def _by_rule(calls: list[ast.AST]) -> str:
    """What no test needs to say: no tolerance given, or one that only rounding can ask for."""
    given = [k.value for call in calls if isinstance(call, ast.Call) for k in call.keywords]
    if not given:
        return DEFAULT if calls else ""
    small = [isinstance(v, ast.Constant) and 0 < abs(float(v.value)) <= 1e-9 for v in given]  # type: ignore[arg-type]
    return ROUNDING if all(small) else ""
