"""Records every comparison of the outside checks while the tests run.

    pytest tests/published tests/reference --verification docs/verification.md

Each `== pytest.approx(expected, ...)` in `tests/published` and `tests/reference` becomes a row of
the page: what was computed, what the source says, the deviation, the tolerance and the reason that
stands beside it in the test. Studies of many states reach the page through the fixture
`verification`. Nothing on that page is typed by hand. Workers of pytest-xdist send what they found
to the controller, which writes.
"""

import math
import sys
from pathlib import Path
from typing import Any

import pytest
from verification.checks import all_checks
from verification.record import Comparison, Record

ApproxScalar: Any = type(pytest.approx(1.0))
FOLDERS = ("tests/published/", "tests/reference/")
_plain_eq = ApproxScalar.__eq__
_record = Record()
_now: list[tuple[pytest.Item, int]] = []


@pytest.fixture(scope="session")
def verification() -> Record:
    """Where a test leaves a study for the verification page."""
    return _record


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--verification", metavar="FILE", help="write the verification page here")


def pytest_configure(config: pytest.Config) -> None:
    if config.getoption("--verification"):
        ApproxScalar.__eq__ = _recorded_eq
        all_checks()


def pytest_unconfigure() -> None:
    ApproxScalar.__eq__ = _plain_eq


@pytest.hookimpl(wrapper=True)
def pytest_runtest_call(item: pytest.Item) -> Any:
    outside = item.nodeid.startswith(FOLDERS)
    _now.append((item, item.session.items.index(item) if outside else -1))
    try:
        return (yield)
    finally:
        _now.pop()


def _recorded_eq(self: Any, actual: object) -> bool:
    same = bool(_plain_eq(self, actual))
    # An array comes back here once more for each of its values.
    if _now and not getattr(actual, "ndim", 0):
        item, order = _now[-1]
        if order >= 0:
            _keep(self, actual, item, order, same)
    return same


def _keep(approx: Any, actual: Any, item: pytest.Item, order: int, same: bool) -> None:
    try:
        expected, computed = float(approx.expected), float(actual)
    except (TypeError, ValueError):
        return
    if math.isfinite(expected):
        _record.comparisons.append(
            Comparison(
                nodeid=_plain(item.nodeid),
                order=order,
                line=_line_in(str(item.path)),
                expected=expected,
                computed=computed,
                tolerance=float(approx.tolerance),
                within=same,
            )
        )


def _plain(nodeid: str) -> str:
    """A test's name without the file that pytest-xdist adds to keep a group together."""
    return nodeid.removesuffix("@" + nodeid.split("::")[0])


def _line_in(path: str) -> int:
    """The line that is being run in a file, nearest to here."""
    frame = sys._getframe()
    while frame.f_back and frame.f_code.co_filename != path:
        frame = frame.f_back
    return frame.f_lineno


def pytest_runtest_logreport(report: pytest.TestReport) -> None:
    """Called on the controller for every worker's tests too."""
    if report.nodeid.startswith(FOLDERS) and (report.when == "call" or not report.passed):
        _record.outcomes[_plain(report.nodeid)] = report.outcome


@pytest.hookimpl(optionalhook=True)
def pytest_testnodedown(node: Any) -> None:
    if packed := getattr(node, "workeroutput", {}).get("verification"):
        _record.join(packed)


@pytest.hookimpl(trylast=True)
def pytest_sessionfinish(session: pytest.Session) -> None:
    target = session.config.getoption("--verification")
    if target and hasattr(session.config, "workeroutput"):
        session.config.workeroutput["verification"] = _record.packed()
    elif target and _record.outcomes:
        from verification.page import write

        write(_record, Path(target))
