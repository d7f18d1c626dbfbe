"""A report's text as HTML: its tables as tables, its paragraphs as paragraphs."""

import re
from html import escape

from boomsim.reports.text_in_trade_words import RULE, table_of
from boomsim.reports.text_tables import glued

ITEM = re.compile(r"- |\d+\. [A-Z]")
"""Begins a line of a list."""

FIGURE = re.compile(r"[-+]?\d[\d,.]*(?:[°%*†‡]| \S+){0,2}")
"""A field that is a figure and its unit, and a sign behind it, and nothing else."""


def html_of(text: str) -> str:
    """Lay out a report for a notebook.

    Parameters
    ----------
    text : str
        Of paragraphs and tables from :mod:`boomsim.reports.text_tables`, parted by blank lines

    Returns
    -------
    str
        HTML
    """
    return "\n".join(_block(block.splitlines()) for block in text.split("\n\n") if block.strip())


def _block(lines: list[str]) -> str:
    if len(lines) > 1 and RULE.fullmatch(lines[1]):
        return _table(lines)
    if any(line.startswith(" ") for line in lines):
        return f"<pre>{escape(chr(10).join(lines))}</pre>"
    return f"<p>{'<br>'.join(escape(glued(item)) for item in _items(lines))}</p>"


def _items(lines: list[str]) -> list[str]:
    """Join the lines of a paragraph; what is counted or listed stands on lines of its own."""
    items: list[str] = []
    for line in lines:
        if not items or ITEM.match(line):
            items.append(line)
        else:
            items[-1] += f" {line}"
    return items


def _table(lines: list[str]) -> str:
    """Lay out a table; what stands below it is a paragraph."""
    first, rows, below = table_of(lines)
    head, *body = (_row(row, "th" if k == 0 else "td") for k, row in enumerate([first, *rows]))
    note = f"\n<p>{escape(glued(' '.join(below)))}</p>" if below else ""
    return f"<table>\n<thead>{head}</thead>\n<tbody>{''.join(body)}</tbody>\n</table>{note}"


def _row(fields: list[str], tag: str) -> str:
    first, *others = (field.strip() for field in fields)
    cells = "".join(f"<{tag}{_styled(field, 'right')}</{tag}>" for field in others)
    return f'<tr><th scope="row"{_styled(first, "left")}</th>{cells}</tr>'


def _styled(field: str, side: str) -> str:
    """Style a cell and write it: a column may be narrow, and a figure keeps its unit beside it."""
    if FIGURE.fullmatch(field):
        return f' style="text-align:{side};white-space:nowrap">{escape(field)}'
    return f' style="text-align:{side}">{escape(glued(field))}'
