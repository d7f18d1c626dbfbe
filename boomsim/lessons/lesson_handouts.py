"""Handouts: one page for each lesson, and the answers for the instructor, as PDF."""

import json
import re
from typing import Any

from boomsim.caution import CAUTION
from boomsim.figures.qr_code import qr_svg
from boomsim.lessons.first_guess import said_of
from boomsim.lessons.lesson_display import PROSE
from boomsim.lessons.lesson_parts import Blank, Lesson, Sheet

Data = dict[str, Any]

PAPERS = {"metric": "a4", "us": "us-letter"}
"""Paper that goes with each system of units."""

ANSWERS = "answers"
"""Name of the instructor's file, and the kind of page that it has."""

_UNIT = re.compile(r"(?<=\d) (?=(?:%|°|m|mm|t|kg|g|kN|ft|in|lb|lbf|kip|oz)\b|%)")
"""The space between a number and its unit, at which no line may end."""

SMALLEST = 8.0
"""Type of the widest tables [pt]."""


def handout_pdf(lesson: Lesson, *, units: str = "metric", link: str = "") -> bytes:
    """Set one lesson's handout: one page.

    Parameters
    ----------
    units : str
        "metric" (A4) or "us" (Letter)
    link : str
        To the lesson's lift on a live page; it stands on the sheet with its QR code

    Returns
    -------
    bytes
        PDF, the same bytes every time
    """
    data = {
        "kind": "handout",
        "title": lesson.title,
        "foot": f"boomsim, lesson {lesson.number}",
        "lessons": [{**_student(lesson, units), **_linked(link)}],
    }
    return _set(data, units)


def answers_pdf(lessons: tuple[Lesson, ...], *, units: str = "metric") -> bytes:
    """Set the answers to the handouts, with the wrong ones to expect.

    Parameters
    ----------
    units : str
        "metric" (A4) or "us" (Letter)

    Returns
    -------
    bytes
        PDF, the same bytes every time
    """
    data = {
        "kind": ANSWERS,
        "title": "Answers to the handouts",
        "foot": "boomsim, answers",
        "lessons": [_answered(lesson, units) for lesson in lessons],
    }
    return _set(data, units)


def _set(data: Data, units: str) -> bytes:
    from boomsim.papers.render.typst_pdf import typst_pdf

    whole = {**data, "caution": CAUTION, "sheet": PAPERS[units]}
    text = _UNIT.sub("\u00a0", json.dumps(whole, ensure_ascii=False))
    return typst_pdf("handout.typ", text)


def _student(lesson: Lesson, units: str) -> Data:
    """Gather what the student sees: no answer is in it."""
    from boomsim.figures.handout.bare_drawing import svg_of

    guess, sheet = lesson.guess(units), lesson.sheet(units)
    svg = svg_of(sheet.figure())
    return {
        "number": lesson.number,
        "title": lesson.title,
        "able": lesson.able,
        "guess": guess.question,
        "parts": [truth.what for truth in guess.truths],
        "given": sheet.given,
        "svg": svg,
        "width": _width(svg),
        "seen": sheet.seen,
        "table": _table(sheet, shown=False),
        "task": sheet.task,
        "why": sheet.why,
        "check": lesson.check(units).question,
    }


def _linked(link: str) -> Data:
    return {"link": link, "code": qr_svg(link)} if link else {}


def _answered(lesson: Lesson, units: str) -> Data:
    guess, sheet, check = lesson.guess(units), lesson.sheet(units), lesson.check(units)
    slips = sorted(check.slips.items(), key=lambda item: item[1])
    spread = check.tolerance * abs(check.answer)
    return {
        "number": lesson.number,
        "title": lesson.title,
        "truths": [(truth.what, said_of(truth, units)) for truth in guess.truths],
        "blanks": any(isinstance(field, Blank) for row in sheet.rows for field in row),
        "table": _table(sheet, shown=True),
        "why": sheet.why,
        "because": sheet.because,
        "check": check.question,
        "right": check.exact,
        "low": check.said(check.answer - spread, finer=True),
        "high": check.said(check.answer + spread, finer=True),
        "working": check.working,
        "slips": [(check.said(value), words) for words, value in slips],
    }


def _width(svg: str) -> float:
    found = re.search(r'width="([\d.]+)pt"', svg)
    return float(found[1]) if found else 500.0


def _table(sheet: Sheet, *, shown: bool) -> Data:
    """Lay out the table to fill in; what the student must find is left out of it altogether."""
    texts = [[f.text if isinstance(f, Blank) else f for f in row] for row in sheet.rows]
    columns = range(len(sheet.head))
    prose = [max(len(row[k].split()) for row in texts) > PROSE for k in columns]
    wide = len(sheet.head) > 6
    return {
        "head": sheet.head,
        "rows": [[_field(field, shown) for field in row] for row in sheet.rows],
        "prose": prose,
        "widths": [0 if k == 0 or prose[k] else 1 for k in columns],
        "size": SMALLEST if wide else 9.0,
        "inset": 3.0 if shown else 4.2 if len(sheet.rows) < 9 else 3.2,
    }


def _field(field: str | Blank, shown: bool) -> Any:
    if isinstance(field, str):
        return field
    return {"blank": field.text if shown else ""}
