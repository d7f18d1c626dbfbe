"""A report's text as HTML: its tables as tables, its paragraphs as paragraphs."""

import re
from html import escape

from boomsim.reports.text_in_trade_words import RULE, table_of

ITEM = re.compile(r"- |\d+\. [A-Z]")
"""Begins a line of a list."""


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
    return f"<p>{'<br>'.join(escape(item) for item in _items(lines))}</p>"


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
    note = f"\n<p>{escape(' '.join(below))}</p>" if below else ""
    return f"<table>\n<thead>{head}</thead>\n<tbody>{''.join(body)}</tbody>\n</table>{note}"


def _row(fields: list[str], tag: str) -> str:
    first, *others = (escape(field.strip()) for field in fields)
    cells = "".join(f'<{tag} style="text-align:right">{field}</{tag}>' for field in others)
    return f'<tr><th scope="row" style="text-align:left">{first}</th>{cells}</tr>'
