"""The report for the board: as a page and as plain text; no names beside candidate numbers."""

from html import escape

from boomsim.papers.board.board_sentences import Section, sections
from boomsim.papers.board.board_study import Board
from boomsim.papers.render.paper_html import page

STYLE = """
table { width: 100%; border: 0; } th { font-weight: 400; font-size: .8rem; color: var(--quiet); }
th, td { text-align: left; vertical-align: top; padding: .3rem .6rem .3rem 0; }
tr + tr td { border-top: 1px solid var(--line); } body { padding-right: 3rem; }
"""


def board_page(board: Board) -> str:
    """Write the page.

    Returns
    -------
    str
        HTML
    """
    title = board.marked.key.title
    head = (
        f'<header><div><p class="kind">Report for the board</p><h1>{escape(title)}</h1></div>'
        f'<div class="variant"><small>CANDIDATES</small>{board.count}</div></header>'
    )
    body = "".join(map(_section, sections(board)))
    footer = f"<footer>{escape(board.marked.key.caution)}</footer>"
    return page(f"{title} – report for the board", head + body + footer, style=STYLE)


def _section(one: Section) -> str:
    """One section as HTML."""
    said = "".join(f"<p>{escape(sentence)}</p>" for sentence in one.sentences)
    return f"<h2>{escape(one.title)}</h2>{said}{_table(one)}"


def _table(one: Section) -> str:
    """A section's table as HTML."""
    if not one.rows:
        return ""
    top = "".join(f"<th>{escape(cell)}</th>" for cell in one.head)
    rows = (
        "<tr>" + "".join(f"<td>{escape(cell)}</td>" for cell in row) + "</tr>" for row in one.rows
    )
    return f"<table><thead><tr>{top}</tr></thead><tbody>{''.join(rows)}</tbody></table>"


def board_text(board: Board) -> str:
    """Write the same as plain text."""
    title = f"Report for the board: {board.marked.key.title}"
    pieces = [title + "\n" + "=" * len(title), *map(_plain, sections(board))]
    return "\n\n".join([*pieces, board.marked.key.caution]) + "\n"


def _plain(one: Section) -> str:
    """One section as text."""
    lines = [one.title, "-" * len(one.title), *one.sentences]
    if one.rows:
        rows = [one.head, *one.rows]
        widths = [max(len(row[place]) for row in rows) for place in range(len(one.head))]
        lines += [
            "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip()
            for row in rows
        ]
    return "\n".join(lines)
