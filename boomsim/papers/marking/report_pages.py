"""Pages of a marked class: one for the examiner, one for each candidate.

Names and answers come from outside: they are escaped.
"""

import base64
import math
from collections.abc import Iterable, Sequence
from html import escape

from boomsim.papers.marking.class_figures import FEW, QuestionFigures
from boomsim.papers.marking.mark_class import CandidateMark, Marked
from boomsim.papers.marking.mark_question import BLANK, CARRIED, REFUSED, PartMark
from boomsim.papers.marking.own_outcomes import own_outcomes
from boomsim.papers.render.paper_html import page

STYLE = """
table { width: 100%; border: 0; } th { font-weight: 400; font-size: .8rem; color: var(--quiet); }
th, td { text-align: left; vertical-align: top; padding: .3rem .6rem .3rem 0; }
td.n, th.n { text-align: right; white-space: nowrap; }
tr + tr td { border-top: 1px solid var(--line); }
td b { font-weight: 600; } .slip { color: var(--slip); } .quiet { color: var(--quiet); }
body { padding-right: 3rem; } img { max-width: 100%; display: block; margin: 1rem auto; }
.marks-of { table-layout: fixed; font-size: .95rem; }
.q td { padding-top: 1.1rem; border-top: 0 !important; }
.bar { display: inline-block; height: .55rem; background: var(--bar); border-radius: 1px; }
"""


def class_page(marked: Marked, picture: bytes) -> str:
    """Write the examiner's page.

    Parameters
    ----------
    picture : bytes
        PNG

    Returns
    -------
    str
        HTML
    """
    shown = base64.b64encode(picture).decode()
    few = len(marked.candidates) < FEW
    warning = f"Fewer than {FEW} candidates: the figures say little." if few else ""
    body = "".join(
        [
            _head("Class report", marked.key.title, f"{len(marked.candidates)}", "CANDIDATES"),
            f'<p class="notes">{escape(_summary(marked))} {warning} {escape(marked.unchecked)}</p>',
            _refusals(marked),
            "<h2>Candidates</h2>",
            _table(
                ("row", "candidate", "variant", "marks", ""), map(_candidate_row, marked.candidates)
            ),
            "<h2>Questions</h2>",
            '<img alt="Facility and discrimination of each question" '
            f'src="data:image/png;base64,{shown}">',
            _table(
                ("", "question", "facility", "discrimination", "most frequent slip"),
                map(_question_row, marked.figures),
            ),
            f"<footer>{escape(marked.key.caution)}</footer>",
        ]
    )
    return page(f"{marked.key.title} – class report", body, style=STYLE)


def candidate_page(one: CandidateMark, *, title: str, caution: str) -> str:
    """Write one candidate's page.

    Returns
    -------
    str
        HTML
    """
    body = "".join(
        [
            _head(
                "Your marks", title, f"{one.marks} / {one.most}", f"VARIANT {escape(one.variant)}"
            ),
            f'<p class="notes"><strong>{escape(one.candidate)}</strong></p>',
            _provisional(one),
            '<p class="quiet">“Carried forward” means: right for your own earlier value.</p>',
            _questions(one),
            _outcomes(one),
            f"<footer>{escape(caution)}</footer>",
        ]
    )
    return page(f"{title} – {one.candidate}", body, style=STYLE)


def _outcomes(one: CandidateMark) -> str:
    """Marks by topic: where to go on learning."""
    rows = [[topic, f"{marks} / {most}"] for topic, marks, most in own_outcomes(one.questions)]
    return f"<h2>By topic</h2>{_table(('topic', 'marks'), rows)}"


def _provisional(one: CandidateMark) -> str:
    """Say that an examiner has still to look at something."""
    if not one.unread:
        return ""
    count = "one answer" if one.unread == 1 else f"{one.unread} answers"
    return f'<p class="slip">These marks are provisional: {count} could not be read.</p>'


def _head(kind: str, title: str, number: str, words: str) -> str:
    """Head of a page."""
    return (
        f'<header><div><p class="kind">{kind}</p><h1>{escape(title)}</h1></div>'
        f'<div class="variant"><small>{words}</small>{number}</div></header>'
    )


def _summary(marked: Marked) -> str:
    """Mean and range in a sentence."""
    shares = [one.marks / one.most for one in marked.candidates]
    if not shares:
        return "Nobody could be marked."
    mean = math.fsum(shares) / len(shares)
    missing = (
        f" No answers came for {len(marked.unanswered)} variants." if marked.unanswered else ""
    )
    return f"Mean {mean:.0%} of the marks, from {min(shares):.0%} to {max(shares):.0%}.{missing}"


def _refusals(marked: Marked) -> str:
    """Say what an examiner has to look at."""
    rows = (
        [escape(str(one.row)), escape(one.candidate), escape(one.column), escape(one.reason)]
        for one in marked.refusals
    )
    if not marked.refusals:
        return ""
    return "<h2>Could not be read: please look</h2>" + _table(
        ("row", "candidate", "answer", "why"), rows
    )


def _candidate_row(one: CandidateMark) -> list[str]:
    """One candidate in the class table."""
    width = 120 * one.marks / one.most
    link = f'<a href="candidates/row-{one.row:04d}.html">{escape(one.candidate)}</a>'
    bar = f'<span class="bar" style="width:{width:.0f}px"></span>'
    marks = f"<b>{one.marks}</b> / {one.most}{' provisional' if one.unread else ''}"
    return [str(one.row), link, escape(one.variant), marks, bar]


def _question_row(one: QuestionFigures) -> list[str]:
    """One question in the class table."""
    said = f"{one.discrimination:.2f}" if math.isfinite(one.discrimination) else "–"
    slip = f"{one.slips[0][1]} × {one.slips[0][0]}" if one.slips else ""
    return [escape(one.name), escape(one.title), f"{one.facility:.2f}", said, escape(slip)]


def _questions(one: CandidateMark) -> str:
    """All answers of a candidate in one table, a line above each question."""
    rows = []
    for question in one.questions:
        head = f"<b>{question.number} {escape(question.title)}</b>"
        total = f"<b>{question.marks} / {question.most}</b>"
        rows.append(f'<tr class="q"><td colspan="3">{head}</td><td>{total}</td><td></td></tr>')
        rows += [_part(part) for part in question.parts if part.label or part.status != BLANK]
    widths = "".join(f'<col style="width:{width}">' for width in ("9%", "20%", "19%", "11%", "41%"))
    return f'<table class="marks-of">{widths}<tbody>{"".join(rows)}</tbody></table>'


def _part(part: PartMark) -> str:
    """One answer on a candidate's page."""
    said = [f'<span class="slip">You probably {escape(part.slip)}.</span>'] if part.slip else []
    said += [escape(part.note)] if part.note else []
    said += ["Your examiner looks at it."] if part.status == REFUSED else []
    if part.answer and (part.marks < part.most or part.status == CARRIED):
        said.append(f'<span class="quiet">Right: {escape(part.answer)}</span>')
    cells = (
        escape(part.label or f"({part.letter})"),
        escape(part.given),
        escape("not read" if part.status == REFUSED else part.status),
        f"{part.marks} / {part.most}",
        "<br>".join(said),
    )
    return "<tr>" + "".join(f"<td>{cell}</td>" for cell in cells) + "</tr>"


def _table(head: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """Write a table of cells that are HTML already."""
    top = "".join(f"<th>{one}</th>" for one in head)
    body = "".join("<tr>" + "".join(f"<td>{cell}</td>" for cell in row) + "</tr>" for row in rows)
    return f"<table><thead><tr>{top}</tr></thead><tbody>{body}</tbody></table>"
