"""Small pieces of Markdown."""

import re
from collections.abc import Iterable, Sequence

Lines = list[str]


def table(head: Sequence[str], rows: Iterable[Sequence[str]], *, right: int = 0) -> Lines:
    """A table; the columns from `right` on are numbers."""
    ruler = ["---" if not right or k < right else "---:" for k in range(len(head))]
    lines = ["| " + " | ".join(head) + " |", "|" + "|".join(ruler) + "|"]
    return [*lines, *("| " + " | ".join(map(cell, row)) + " |" for row in rows), ""]


def cell(text: str) -> str:
    """Text that cannot break a table."""
    return re.sub(r"[ \n\t]+", " ", text.replace("|", "\\|")).strip(" ")


def code(text: str) -> str:
    """Words of Python."""
    return f"`{text.replace('`', '').replace(chr(92) + 'xa0', ' ')}`"


def number(value: float) -> str:
    """Six figures at most; the thousands of a count stand apart."""
    return f"{value:,}".replace(",", "\u202f") if isinstance(value, int) else f"{value:.6g}"


def percent(value: float) -> str:
    """A share in two figures."""
    return f"{100.0 * value:.2g}\u00a0%"


def used(share: float) -> str:
    """How much of a tolerance is used up."""
    return "0\u00a0%" if share < 5e-3 else f"{100.0 * share:.0f}\u00a0%"
