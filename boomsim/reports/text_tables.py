"""A table and paragraphs as text."""

import re
from collections.abc import Sequence


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

_FIGURE = re.compile(rf"(?<=\d) (?=(?:{_UNITS})(?:[ ),;.:*†‡]|$))")


def glued(text: str) -> str:
    """Keep figures and their units on one line.

    Returns
    -------
    str
        With spaces that do not break
    """
    return _FIGURE.sub(NO_BREAK, text)
