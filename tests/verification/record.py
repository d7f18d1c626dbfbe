"""What a test run found: every comparison, every outcome, every study.

A worker of pytest-xdist hands its record to the controller as plain lists; the controller joins
them and writes the page.
"""

import json
import math
import re
from dataclasses import dataclass, field
from typing import Any

from verification.checks import Check
from verification.reasons import Assertion


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """One number against another, and in which test and line."""

    nodeid: str
    order: int
    line: int
    expected: float
    computed: float
    tolerance: float
    within: bool

    @property
    def deviation(self) -> float:
        return self.computed - self.expected

    @property
    def used(self) -> float:
        """Deviation over tolerance [1]."""
        if not self.within:
            return math.inf
        return abs(self.deviation) / self.tolerance if self.tolerance else 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """Comparisons of one assertion: the one that comes nearest to its tolerance, of so many."""

    check: Check
    assertion: Assertion
    case: str
    worst: Comparison
    count: int


@dataclass(slots=True)
class Record:
    """Of one process; `joined` takes in another's."""

    comparisons: list[Comparison] = field(default_factory=list)
    outcomes: dict[str, str] = field(default_factory=dict)
    studies: dict[str, dict[str, Any]] = field(default_factory=dict)

    def add_study(self, kind: str, title: str, **found: Any) -> None:
        """Keep what a test measured beyond single numbers: lists, numbers and words only."""
        self.studies[f"{kind}: {title}"] = {"kind": kind, "title": title, **found}

    def packed(self) -> str:
        """As text, for the way from a worker to the controller, which takes no numpy numbers."""
        names = Comparison.__slots__
        found = [[getattr(one, name) for name in names] for one in self.comparisons]
        return json.dumps({"comparisons": found, "studies": self.studies}, default=float)

    def join(self, packed: str) -> None:
        """Take in what a worker found."""
        found = json.loads(packed)
        for values in found["comparisons"]:
            self.comparisons.append(
                Comparison(**dict(zip(Comparison.__slots__, values, strict=True)))
            )
        self.studies.update(found["studies"])

    def of_kind(self, kind: str) -> list[dict[str, Any]]:
        """The studies of one kind: what is promised first, then by title, numbers as numbers."""
        own = [study for study in self.studies.values() if study["kind"] == kind]
        return sorted(own, key=lambda s: (not s.get("promised", True), _natural(s["title"])))

    def ran(self, check: Check) -> list[str]:
        """The outcomes of a check's cases."""
        test = f"{check.path}::{check.name}"
        return [how for node, how in self.outcomes.items() if node.split("[")[0] == test]


def _natural(title: str) -> list[str]:
    return [part.zfill(6) if part.isdigit() else part for part in re.split(r"(\d+)", title)]


def rows_of(record: Record, checks: list[Check]) -> list[Row]:
    """The comparisons as rows: published figures case by case, random draws as their worst."""
    by_test = {f"{check.path}::{check.name}": check for check in checks}
    groups: dict[tuple[str, str, int], list[Comparison]] = {}
    for one in sorted(record.comparisons, key=lambda c: (c.order, c.line)):
        check = by_test.get(one.nodeid.split("[")[0])
        at = check and assertion_at(check, one.line)
        if check and at:
            case = _case(one) if check.folder == "published" else ""
            groups.setdefault((f"{check.path}::{check.name}", case, at.first), []).append(one)
    return [_row(by_test[key[0]], found) for key, found in groups.items()]


def assertion_at(check: Check, line: int) -> Assertion | None:
    """The assertion of the test itself on a line; what a helper asserts on the way is none."""
    return next((a for a in check.assertions if a.first <= line <= a.last), None)


def _row(check: Check, found: list[Comparison]) -> Row:
    worst = max(found, key=lambda one: one.used)
    at = assertion_at(check, worst.line)
    assert at is not None
    return Row(check=check, assertion=at, case=_case(worst), worst=worst, count=len(found))


def _case(one: Comparison) -> str:
    _, _, case = one.nodeid.partition("[")
    return case.removesuffix("]")
