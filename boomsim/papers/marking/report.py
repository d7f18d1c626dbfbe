"""Reports of a marked class: a page for the examiner, one for each candidate, tables.

Names and answers come from outside: they are escaped in HTML, and a table never holds a cell that
a spreadsheet would run.
"""

import base64
import csv
import io
import json
import math
from collections.abc import Iterable, Sequence
from html import escape
from pathlib import Path
from typing import Any

from boomsim.files.turns import only_writer
from boomsim.files.writing import write_whole
from boomsim.papers.marking.class_figures import FEW, QuestionFigures
from boomsim.papers.marking.class_plot import class_png
from boomsim.papers.marking.mark import CandidateMark, Marked
from boomsim.papers.marking.question import BLANK, CARRIED, REFUSED, PartMark
from boomsim.papers.render.html import page

SCHEMA = "boomsim-marks/1"
STYLE = """
table { width: 100%; border: 0; } th { font-weight: 400; font-size: .8rem; color: var(--quiet); }
th, td { text-align: left; vertical-align: top; padding: .3rem .6rem .3rem 0; }
td.n, th.n { text-align: right; white-space: nowrap; } tr + tr td { border-top: 1px solid #e7e9ec; }
td b { font-weight: 600; } .slip { color: #8a3b12; } .quiet { color: var(--quiet); }
body { padding-right: 3rem; } img { max-width: 100%; display: block; margin: 1rem auto; }
.marks-of { table-layout: fixed; font-size: .95rem; }
.q td { padding-top: 1.1rem; border-top: 0 !important; }
.bar { display: inline-block; height: .55rem; background: #1f5a99; border-radius: 1px; }
"""


def write_report(marked: Marked, folder: str | Path) -> list[Path]:
    """Write everything about a marked class.

    Parameters
    ----------
    marked : Marked
    folder : str or Path

    Returns
    -------
    list of Path
        class.html, marks.csv, marks.json, class.png, and candidates/row-….html
    """
    base = Path(folder)
    picture = class_png(marked.figures)
    files: dict[str, bytes] = {
        "class.html": class_page(marked, picture).encode(),
        "marks.csv": marks_csv(marked).encode(),
        "marks.json": (
            json.dumps(marks_data(marked), indent=1, ensure_ascii=False) + "\n"
        ).encode(),
        "class.png": picture,
    }
    for one in marked.candidates:
        text = candidate_page(one, title=marked.key.title, caution=marked.key.caution)
        files[f"candidates/row-{one.row:04d}.html"] = text.encode()
    with only_writer(base):
        for name, content in files.items():
            write_whole(base / name, content)
        for stale in (base / "candidates").glob("row-*.html"):
            if f"candidates/{stale.name}" not in files:  # of an earlier sheet with more rows
                stale.unlink()
    return [base / name for name in files]


def class_page(marked: Marked, picture: bytes) -> str:
    """Write the examiner's page.

    Parameters
    ----------
    marked : Marked
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
            f'<p class="notes">{escape(_summary(marked))} {warning}</p>',
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

    Parameters
    ----------
    one : CandidateMark
    title, caution : str

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
            '<p class="quiet">“Carried forward” means: right for your own earlier value.</p>',
            _questions(one),
            f"<footer>{escape(caution)}</footer>",
        ]
    )
    return page(f"{title} – {one.candidate}", body, style=STYLE)


def marks_csv(marked: Marked) -> str:
    """Write the marks as a table, a column for each question.

    Parameters
    ----------
    marked : Marked

    Returns
    -------
    str
        CSV
    """
    count = max((len(one.questions) for one in marked.candidates), default=0)
    buffer = io.StringIO()
    writer = csv.writer(buffer, lineterminator="\n")
    writer.writerow(["row", "candidate", "variant", *map(str, range(1, count + 1)), "marks", "of"])
    for one in marked.candidates:
        marks = [question.marks for question in one.questions]
        blanks = [""] * (count - len(marks))
        writer.writerow(
            [one.row, harmless(one.candidate), one.variant, *marks, *blanks, one.marks, one.most]
        )
    return buffer.getvalue()


def harmless(text: str) -> str:
    """Keep a spreadsheet from running a text as a formula.

    Parameters
    ----------
    text : str

    Returns
    -------
    str
    """
    return f"'{text}" if text[:1] in ("=", "+", "-", "@", "|", "%", "\t", "\r") else text


def marks_data(marked: Marked) -> dict[str, Any]:
    """Turn the marks into plain data.

    Parameters
    ----------
    marked : Marked

    Returns
    -------
    dict
    """
    return {
        "schema": SCHEMA,
        "title": marked.key.title,
        "caution": marked.key.caution,
        "candidates": [_candidate_data(one) for one in marked.candidates],
        "questions": [
            {
                "name": one.name, "title": one.title, "count": one.count, "facility": one.facility,
                "discrimination": one.discrimination if math.isfinite(one.discrimination) else None,
                "slips": dict(one.slips),
            }
            for one in marked.figures
        ],
        "refused": [
            {"row": one.row, "candidate": one.candidate, "column": one.column, "reason": one.reason}
            for one in marked.refusals
        ],
        "unanswered": list(marked.unanswered),
    }  # fmt: skip


def _candidate_data(one: CandidateMark) -> dict[str, Any]:
    """One candidate."""
    parts = [(question, part) for question in one.questions for part in question.parts]
    return {
        "row": one.row, "candidate": one.candidate, "variant": one.variant,
        "marks": one.marks, "of": one.most,
        "parts": [
            {
                "question": question.number, "label": part.label, "step": part.letter,
                "given": part.given, "status": part.status, "marks": part.marks, "of": part.most,
                "slip": part.slip, "note": part.note,
            }
            for question, part in parts
        ],
    }  # fmt: skip


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
    return [str(one.row), link, escape(one.variant), f"<b>{one.marks}</b> / {one.most}", bar]


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
