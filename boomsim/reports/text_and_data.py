"""Ways to answer: a table of text, or data for JSON with stable keys."""

import math
import re
from collections.abc import Sequence
from typing import Any

from boomsim.caution import CAUTION
from boomsim.version import __version__

SCHEMA = 4
"""Version of the keys of every --json answer; grows when a key changes its meaning.

2: a rule is told with all that is in it; where the crane turns over with its empty hook; a chart's
blank cells have reasons of many kinds.
3: losses list "effects", which were "takers"; parts of line are those that a boom is reeved in, and
the empty hook hangs with the falls of its rope.
"""


def table(head: Sequence[str], rows: Sequence[Sequence[str]]) -> str:
    """Lay out columns, the first to the left, the others to the right.

    Parameters
    ----------
    rows : sequence of sequence of str
        As many fields as `head`
    """
    widths = [max(len(row[k]) for row in [head, *rows]) for k in range(len(head))]

    def line(row: Sequence[str]) -> str:
        first = row[0].ljust(widths[0])
        return "  ".join([first, *(f.rjust(w) for f, w in zip(row[1:], widths[1:], strict=True))])

    rule = "  ".join("-" * width for width in widths)
    return "\n".join(text.rstrip() for text in [line(head), rule, *map(line, rows)])


WIDTH = 96
"""Of a line [characters]."""


def paragraph(text: str, *, width: int = WIDTH, indent: str = "") -> str:
    """Break a paragraph into lines."""
    from textwrap import fill

    filled = fill(glued(text), width=width, initial_indent=indent, subsequent_indent=indent)
    return filled.replace(NO_BREAK, " ")


NO_BREAK = "\u00a0"

_UNITS = "%|kg|t|lb|lbf|kN|N|kip|kPa|MPa|psi|ksi|m|mm|ft|cm²|m²|ft²|in²|m/s|ft/min|mph|deg"

_FIGURE = re.compile(rf"(?<=\d) (?=(?:{_UNITS})(?:[ ),;.:]|$))")


def glued(text: str) -> str:
    """Keep figures and their units on one line.

    Returns
    -------
    str
        With spaces that do not break
    """
    return _FIGURE.sub(NO_BREAK, text)


def headed(kind: str, answer: dict[str, Any]) -> dict[str, Any]:
    """Put the schema's version and the caution before an answer, and null for NaN.

    Parameters
    ----------
    kind : str
        Which study answers
    answer : dict
        SI numbers, arrays and strings

    Returns
    -------
    dict
        Of what JSON can hold
    """
    head = {
        "schema": f"boomsim.{kind}/{SCHEMA}",
        "boomsim": __version__,
        "caution": CAUTION,
    }
    found: dict[str, Any] = plain({**head, **answer})
    return found


def plain(value: Any) -> Any:
    """Turn arrays and dataclasses into lists and dicts, and what is not a number into null."""
    from dataclasses import fields, is_dataclass

    if isinstance(value, dict):
        return {str(key): plain(item) for key, item in value.items()}
    if hasattr(value, "as_data"):
        return plain(value.as_data())
    if is_dataclass(value) and not isinstance(value, type):
        return {field.name: plain(getattr(value, field.name)) for field in fields(value)}
    if isinstance(value, (list, tuple)):
        return [plain(item) for item in value]
    if hasattr(value, "tolist"):
        return plain(value.tolist())
    if isinstance(value, float) and not math.isfinite(value):
        return None
    return value
