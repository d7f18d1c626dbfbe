"""The last run of the benchmark, as it was kept: a test run asserts nothing about time."""

import json
from pathlib import Path
from typing import Any

from verification.text import Lines, code, table

KEPT = Path(__file__).with_name("speed.json")
COMMAND = f"python tests/benchmarks/run.py --write tests/verification/{KEPT.name}"
HEAD = ["what", "promised", "median", "least", "most", "kept"]
PARTS = {
    False: "Ratios of two things timed in turn in one run, so that they say little of the machine:",
    True: "Times of the machine that the benchmark ran on:",
}


def speed() -> Lines:
    """Tables of ratios and of times."""
    found = _kept()
    if not found:
        return []
    lines = [
        "## Speed",
        "",
        f"Measured on {found['date']} by {code(COMMAND)} (Python {found['python']}, NumPy"
        f" {found['numpy']}, one thread on each side, {found['rounds']} rounds). Processor time,"
        " except by the clock where it says so;"
        f" {_busy(found)}. No test asserts a time.",
        "",
    ]
    for here, words in PARTS.items():
        rows = [_row(row) for row in found["rows"] if row["here"] == here]
        lines += [words, "", *table(HEAD, rows)]
    return lines


def slow() -> Lines:
    """What the benchmark misses."""
    return [
        f"- Speed, {row['what']}: promised {_amount(row, 'promise')}, measured"
        f" {_amount(row, 'median')}."
        for row in _kept().get("rows", [])
        if _short_of(row)
    ]


def _kept() -> dict[str, Any]:
    return dict(json.loads(KEPT.read_text(encoding="utf-8"))) if KEPT.exists() else {}


def _busy(found: dict[str, Any]) -> str:
    """How much else ran, which lengthens what is timed by the clock."""
    if found["load"] is None:
        return "how busy the machine was is not known"
    return f"in the minute before, {found['load']:.1f} processes wanted its {found['cores']} cores"


def _short_of(row: dict[str, Any]) -> bool:
    """Times should be no longer than promised, ratios no smaller."""
    if row["promise"] is None:
        return False
    over = row["median"] > row["promise"]
    return bool(over if row["unit"] == "s" else not over)


def _amount(row: dict[str, Any], key: str) -> str:
    return f"{row[key]:.3g} {row['unit']}" if row[key] is not None else "–"


def _row(row: dict[str, Any]) -> list[str]:
    kept = "–" if row["promise"] is None else "**no**" if _short_of(row) else "yes"
    amounts = [_amount(row, key) for key in ("promise", "median", "low", "high")]
    return [row["what"], *amounts, kept]
