"""The verification page: no row lacks a status or a reason, and the kept page lists every check."""

import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import execnet
import numpy as np
import pytest
from verification.checks import STATUSES, Check, all_checks, checks_of
from verification.page import COMMAND, page
from verification.record import Comparison, Record, rows_of

ROOT = Path(__file__).parents[1]
KEPT = ROOT / "docs" / "verification.md"
CHECKS = all_checks()
UNNAMED = '''"""Figures.{}"""

import pytest


def test_two_is_two():
    assert 1 + 1 == pytest.approx(2.0, abs=0.1){}
'''


@pytest.fixture
def written(tmp_path: Path, request: pytest.FixtureRequest) -> Check:
    """The one check of a test file with these words in its docstring and beside its comparison."""
    file = tmp_path / "tests" / "published" / "test_figures.py"
    file.parent.mkdir(parents=True)
    file.write_text(UNNAMED.format(*request.param), encoding="utf-8")
    return checks_of(file)[0]


def test_there_are_checks_of_both_kinds() -> None:
    for folder in ("published", "reference"):
        assert sum(check.folder == folder for check in CHECKS) > 30


def lacking(check: Check) -> Iterator[str]:
    """What a check does not say, and where to say it."""
    way = "End the docstring of its file with 'Source: .... Status: ....'"
    if not check.source:
        yield f"{check.path} does not say whose figures it has. {way}"
    if check.status not in STATUSES:
        known = ", ".join(STATUSES)
        yield f"{check.path}, {check.name}: status '{check.status}' is none of {known}. {way}"
    for one in check.assertions:
        if one.compares and not one.reason:
            yield (
                f"{check.path}, line {one.first}: no reason for the tolerance of '{one.text}'."
                " Write it in a comment above."
            )


def test_every_check_has_a_source_a_status_and_reasons_for_its_tolerances() -> None:
    faults = [fault for check in CHECKS for fault in lacking(check)]
    assert not faults, "\n".join(faults)


@pytest.mark.parametrize("written", [("", "  # a tenth")], indirect=True)
def test_a_check_without_a_source_and_a_status_is_noticed(written: Check) -> None:
    source, status = lacking(written)
    assert "does not say whose figures" in source
    assert "status '' is none of read, second-hand" in status


@pytest.mark.parametrize("written", [(" Source: A. Status: read.", "")], indirect=True)
def test_a_tolerance_without_a_reason_is_noticed(written: Check) -> None:
    (fault,) = lacking(written)
    assert "line 7: no reason for the tolerance of '1 + 1 == pytest.approx" in fault


@pytest.mark.parametrize("written", [(" Source: A. Status: read.", "  # a tenth")], indirect=True)
def test_the_reason_is_the_comment_beside_the_comparison(written: Check) -> None:
    assert written.assertions[0].reason == "a tenth"
    assert not list(lacking(written))


def listed(text: str) -> Iterator[tuple[str, str]]:
    """Source and sentence of every check that stands on a page."""
    source = ""
    for line in text.partition("one by one")[2].splitlines():
        if line.startswith("### "):
            source = line.removeprefix("### ")
        first = line.removeprefix("| ").split(" | ")[0].split(" [")[0].split(" (worst of")[0]
        if line.startswith("| ") and first not in ("check", "″"):
            yield source, first


def test_the_kept_page_lists_the_checks_that_the_tests_make() -> None:
    expected = {(check.source, check.sentence) for check in CHECKS}
    found = set(listed(KEPT.read_text(encoding="utf-8")))
    again = f"Write the page again: {COMMAND}"
    assert found == expected, f"missing {expected - found}, too many {found - expected}. {again}"


def invented(*, computed: float = 2.0, within: bool = True) -> Record:
    """A run of one check with one comparison, expected to be 2."""
    check = next(c for c in CHECKS if c.folder == "published" and c.assertions[0].compares)
    nodeid = f"{check.path}::{check.name}"
    one = Comparison(
        nodeid=nodeid, order=0, line=check.assertions[0].first, expected=2.0,
        computed=computed, tolerance=0.1, within=within,
    )  # fmt: skip
    return Record(comparisons=[one], outcomes={nodeid: "passed" if within else "failed"})


def shown(record: Record) -> str:
    checks = [check for check in CHECKS if record.ran(check)]
    return "\n".join(
        page(record, checks, rows_of(record, checks), {"deviations": False, "convergence": False})
    )


def test_a_miss_stands_on_top_of_the_page_and_in_its_row() -> None:
    text = shown(invented(computed=2.5, within=False))
    assert "1 lie outside their tolerance, 1 tests failed" in text
    assert "outside its tolerance." in text.partition("## Not met")[2].partition("\n## ")[0]
    assert "+0.5 (**missed**)" in text


def test_what_was_not_run_is_counted() -> None:
    assert f"{len(CHECKS) - 1} checks were not run" in shown(invented())


def test_a_workers_record_comes_over_whole() -> None:
    """By execnet, as pytest-xdist sends it: that refuses numpy's numbers, and ends the worker."""
    own, joined = invented(computed=2.01), Record()
    own.add_study("convergence", "pieces 2", sizes=[1.0, 0.5], errors=[0.4, np.float64(0.1)],
                  slope=np.float64(2.0), expected=2.0, size="h", against="nothing")  # fmt: skip
    joined.join(execnet.loads(execnet.dumps(own.packed())))
    joined.outcomes = own.outcomes
    assert shown(joined) == shown(own)
    assert "pieces 2" in shown(joined)


@pytest.mark.slow
def test_a_run_of_one_file_writes_its_rows(tmp_path: Path) -> None:
    # Published outrigger guidance: 186000 lb on a round pad of 24 in are 411 psi; 411.15 exactly.
    target = tmp_path / "page.md"
    line = [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", "--verification"]
    file = "tests/published/test_ground_pressure.py"
    subprocess.run([*line, str(target), file], cwd=ROOT, check=True, capture_output=True)
    text = target.read_text(encoding="utf-8")
    assert "**1 checks compare 1 numbers** in 1 rows" in text
    assert "| 411 | 411.15 | +0.15 (30\u00a0%) | 0.5 |" in text
    assert text.count("### ") == 1
