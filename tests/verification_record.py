"""Records every comparison of the outside checks while the tests run.

    pytest tests/published tests/reference --verification docs/verification.md

Each `== pytest.approx(expected, ...)` in `tests/published` and `tests/reference` becomes a row:
what was computed, what the source says, the deviation, the tolerance and the reason that stands
beside it in the test. Nothing on that page is typed by hand.
"""

import inspect
import math
import re
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

ApproxScalar: Any = type(pytest.approx(1.0))
FOLDERS = ("published", "reference")
_rows: list["Row"] = []
_now: list[pytest.Item] = []
_plain_eq = ApproxScalar.__eq__


@dataclass(frozen=True, slots=True)
class Row:
    """One comparison."""

    folder: str
    source: str
    status: str
    what: str
    expected: float
    computed: float
    tolerance: float
    reason: str

    @property
    def deviation(self) -> float:
        return self.computed - self.expected


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--verification", metavar="FILE", help="write the verification page here")


def pytest_configure(config: pytest.Config) -> None:
    if config.getoption("--verification"):
        ApproxScalar.__eq__ = _recorded_eq  # type: ignore[method-assign]


def pytest_unconfigure(config: pytest.Config) -> None:
    ApproxScalar.__eq__ = _plain_eq  # type: ignore[method-assign]
    target = config.getoption("--verification")
    if target and not hasattr(config, "workerinput"):
        Path(target).write_text(page(_rows), encoding="utf-8")


@pytest.hookimpl(wrapper=True)
def pytest_runtest_call(item: pytest.Item) -> Any:
    _now.append(item)
    try:
        return (yield)
    finally:
        _now.pop()


def _recorded_eq(self: ApproxScalar, actual: object) -> bool:
    same = bool(_plain_eq(self, actual))
    try:
        expected, computed = float(self.expected), float(actual)  # type: ignore[arg-type]
    except (TypeError, ValueError):
        return same
    if same and _now and math.isfinite(expected):
        folder = Path(str(_now[-1].path)).parent.name
        if folder in FOLDERS:
            _rows.append(_row(_now[-1], folder, expected, computed, float(self.tolerance)))
    return same


def _row(item: pytest.Item, folder: str, expected: float, computed: float, tolerance: float) -> Row:
    module = item.module  # type: ignore[attr-defined]
    head = " ".join((module.__doc__ or "").split())
    function = item.function  # type: ignore[attr-defined]
    text = inspect.getsource(function)
    comments = " ".join(re.findall(r"#\s?(.*)", text))
    about = head + " " + comments + " " + (function.__doc__ or "")
    status = "read"
    if "common practice" in about:
        status = "common practice, no source"
    elif "from memory" in about:
        status = "from memory"
    elif folder == "reference":
        status = "computed by another program or formula"
    name = item.name.split("[")[0].removeprefix("test_").replace("_", " ")
    case = f" [{item.name.split('[', 1)[1]}" if "[" in item.name else ""
    return Row(
        folder=folder,
        source=head.split(". ")[0].rstrip("."),
        status=status,
        what=name + case,
        expected=expected,
        computed=computed,
        tolerance=tolerance,
        reason=comments,
    )


def page(rows: list[Row]) -> str:
    """The page in Markdown."""
    from boomsim import __version__

    lines = [
        "# Verification",
        "",
        f"Written by the test run of boomsim {__version__}; nothing here is typed by hand.",
        "Every row is a comparison with something outside the project, made by a test each time.",
        "",
        "    pytest tests/published tests/reference --verification docs/verification.md",
        "",
        f"{len(rows)} comparisons, all within their tolerance (the run fails otherwise).",
        "",
    ]
    for folder, title in (("published", "Published figures"), ("reference", "Other programs")):
        lines += [f"## {title}", ""]
        found = [row for row in rows if row.folder == folder]
        for source in dict.fromkeys(row.source for row in found):
            own = [row for row in found if row.source == source]
            lines += [f"### {source}", "", f"Status: {own[0].status}.", ""]
            lines += [
                "| check | expected | computed | deviation | tolerance | reason |",
                "|---|---|---|---|---|---|",
            ]
            lines += [_line(row) for row in own]
            lines.append("")
    return "\n".join(lines)


def _line(row: Row) -> str:
    cells = [
        row.what,
        f"{row.expected:.6g}",
        f"{row.computed:.6g}",
        f"{row.deviation:+.2g}",
        f"{row.tolerance:.2g}",
        row.reason,
    ]
    return "| " + " | ".join(cell.replace("|", "\\|") for cell in cells) + " |"
