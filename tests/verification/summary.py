"""The short tables on top: how the figures were come by, and whose they are."""

from verification.checks import STATUSES, Check
from verification.record import Row
from verification.text import Lines, number, table, used


def by_status(checks: list[Check], rows: list[Row]) -> Lines:
    """How many checks of each status."""
    lines = ["## How the figures were come by", ""]
    found = []
    for status, meaning in STATUSES.items():
        own = [row for row in rows if row.check.status == status]
        tests = sum(check.status == status for check in checks)
        found.append([status, meaning, number(tests), number(sum(row.count for row in own))])
    return [*lines, *table(["status", "meaning", "checks", "comparisons"], found, right=2)]


def by_source(checks: list[Check], rows: list[Row]) -> Lines:
    """How many checks of each source, and how near they come to their tolerance."""
    lines = [
        "## Whose they are",
        "",
        "*Nearest* is the largest deviation of any comparison, as a share of its own tolerance."
        " Random states that are judged together are not counted here but below.",
        "",
    ]
    head = ["source", "status", "checks", "comparisons", "nearest", "missed"]
    return [*lines, *table(head, (_of(s, checks, rows) for s in sources(checks)), right=2)]


def sources(checks: list[Check]) -> list[str]:
    """Names of the sources, in the order of the files."""
    return list(dict.fromkeys(check.source for check in checks))


def _of(source: str, checks: list[Check], rows: list[Row]) -> list[str]:
    own = [check for check in checks if check.source == source]
    found = [row for row in rows if row.check.source == source]
    within = [row.worst.used for row in found if row.worst.within]
    return [
        f"[{source}](#{anchor(source)})",
        ", ".join(dict.fromkeys(check.status for check in own)),
        number(len(own)),
        number(sum(row.count for row in found)) if found else "–",
        used(max(within)) if within else "–",
        number(sum(not row.worst.within for row in found)),
    ]


def anchor(heading: str) -> str:
    """The address of a heading on the page."""
    kept = "".join(c for c in heading.lower() if c.isalnum() or c in " -_")
    return kept.replace(" ", "-")
