"""The verification page in Markdown: what was found, what was missed, then every check."""

import importlib.metadata
import platform
from collections.abc import Callable, Iterable
from datetime import date
from pathlib import Path

from verification.again import rated_again
from verification.checks import Check, all_checks
from verification.details import details
from verification.findings import convergence, deviations, misses
from verification.pictures import draw_convergence, draw_deviations
from verification.record import Record, Row, rows_of
from verification.speed import slow, speed
from verification.summary import by_source, by_status
from verification.text import Lines, number

COMMAND = "pytest tests/published tests/reference --verification docs/verification.md"
PROGRAMS = ("numpy", "scipy", "openseespy", "PyNiteFEA", "sectionproperties")


def write(record: Record, target: Path) -> None:
    """Write the page and the pictures beside it."""
    checks = [check for check in all_checks() if record.ran(check)]
    rows = rows_of(record, checks)
    pictures = {
        "deviations": draw_deviations(record, target.with_name("verification-deviations.svg")),
        "convergence": draw_convergence(record, target.with_name("verification-convergence.svg")),
    }
    target.write_text("\n".join(page(record, checks, rows, pictures)), encoding="utf-8")


def page(record: Record, checks: list[Check], rows: list[Row], pictures: dict[str, bool]) -> Lines:
    """The lines of the page."""
    parts: Iterable[Callable[[], Lines]] = (
        lambda: _head(record, checks, rows),
        lambda: not_met(record, rows),
        lambda: by_status(checks, rows),
        lambda: by_source(checks, rows),
        lambda: deviations(record, picture=pictures["deviations"]),
        lambda: rated_again(record),
        lambda: convergence(record, picture=pictures["convergence"]),
        speed,
        lambda: details(record, checks, rows, "published", "Published figures, one by one"),
        lambda: details(record, checks, rows, "reference", "Other programs, one by one"),
    )
    return [line for part in parts for line in part()]


def _head(record: Record, checks: list[Check], rows: list[Row]) -> Lines:
    from boomsim import __version__

    counted = sum(row.count for row in rows)
    return [
        "# Verification",
        "",
        "Whether boomsim computes what books, standards and other programs say. A test run wrote"
        f" this page on {date.today()}; nothing on it is typed by hand:",
        "",
        f"    {COMMAND}",
        "",
        f"boomsim {__version__}, {versions()}.",
        "",
        f"**{len(checks)} checks compare {number(counted)} numbers** in {len(rows)} rows below;"
        f" {_outcome(record, checks, rows)}.",
        "What the model leaves out, and which way that errs, is on the page on"
        " [limits](limits.md); agreement here does not make it fit for planning a lift.",
        "",
    ]


def not_met(record: Record, rows: list[Row]) -> Lines:
    """All that misses a promise or a tolerance, said before anything else."""
    said = [f"- {r.check.sentence}: outside its tolerance." for r in rows if not r.worst.within]
    said += [line for study in record.of_kind("deviations") for line in misses(study)]
    said += slow()
    return ["## Not met", "", *(said or ["Nothing: every promise that was measured is kept."]), ""]


def versions() -> str:
    """What the run was made with."""
    found = [f"Python {platform.python_version()}"]
    for name in PROGRAMS:
        try:
            found.append(f"{name} {importlib.metadata.version(name)}")
        except importlib.metadata.PackageNotFoundError:
            found.append(f"no {name}")
    return ", ".join(found)


def _outcome(record: Record, checks: list[Check], rows: list[Row]) -> str:
    outcomes = [how for check in checks for how in record.ran(check)]
    missed = sum(not row.worst.within for row in rows)
    left = len(all_checks()) - len(checks)
    return (
        f"{missed} lie outside their tolerance, {outcomes.count('failed')} tests failed,"
        f" {outcomes.count('skipped')} were skipped and {left} checks were not run"
    )
