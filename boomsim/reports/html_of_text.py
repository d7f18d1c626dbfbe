"""A report's text as HTML: its tables as tables, its paragraphs as paragraphs."""

import re
from html import escape
from itertools import pairwise

_RULE = re.compile(r"-+(?:  -+)*")


def html_of(text: str) -> str:
    """Lay out a report for a notebook.

    Parameters
    ----------
    text : str
        Of paragraphs and tables from :mod:`boomsim.reports.text_and_data`, parted by blank lines

    Returns
    -------
    str
        HTML
    """
    return "\n".join(_block(block.splitlines()) for block in text.split("\n\n") if block.strip())


def _block(lines: list[str]) -> str:
    if len(lines) > 1 and _RULE.fullmatch(lines[1]):
        return _table(lines)
    if any(line.startswith(" ") for line in lines):
        return f"<pre>{escape(chr(10).join(lines))}</pre>"
    return f"<p>{escape(' '.join(lines))}</p>"


def _table(lines: list[str]) -> str:
    """Cut the lines where the rule has its gaps; what stands below the table is a paragraph."""
    columns = [match.span() for match in re.finditer("-+", lines[1])]
    gaps = [(a[1], b[0]) for a, b in pairwise(columns)]
    below = next((k for k, line in enumerate(lines) if _crosses(line, gaps)), len(lines))
    rows = [[line[a:b].strip() for a, b in columns] for line in (lines[0], *lines[2:below])]
    head, *body = (_row(row, "th" if k == 0 else "td") for k, row in enumerate(rows))
    note = f"\n<p>{escape(' '.join(lines[below:]))}</p>" if lines[below:] else ""
    return f"<table>\n<thead>{head}</thead>\n<tbody>{''.join(body)}</tbody>\n</table>{note}"


def _crosses(line: str, gaps: list[tuple[int, int]]) -> bool:
    """Whether a line writes where a table's row is blank."""
    return any(line[a:b].strip() for a, b in gaps)


def _row(fields: list[str], tag: str) -> str:
    first, *others = map(escape, fields)
    cells = "".join(f'<{tag} style="text-align:right">{field}</{tag}>' for field in others)
    return f'<tr><th scope="row" style="text-align:left">{first}</th>{cells}</tr>'
