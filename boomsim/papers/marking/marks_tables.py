"""Marks as tables for other programs; no cell is one that a spreadsheet would run."""

import csv
import io
import math
from typing import Any

from boomsim.papers.marking.mark_class import CandidateMark, Marked

SCHEMA = "boomsim-marks/1"
_LAST = ("marks", "of", "provisional", "not read")
"""Last columns: marks are provisional while an answer could not be read."""


def marks_csv(marked: Marked) -> str:
    """Write the marks as a table, a column for each question.

    Returns
    -------
    str
        CSV
    """
    count = max((len(one.questions) for one in marked.candidates), default=0)
    buffer = io.StringIO()
    writer = csv.writer(buffer, lineterminator="\n")
    writer.writerow(["row", "candidate", "variant", *map(str, range(1, count + 1)), *_LAST])
    for one in marked.candidates:
        marks = [question.marks for question in one.questions]
        blanks = [""] * (count - len(marks))
        last = [one.marks, one.most, "yes" if one.unread else "no", one.unread]
        writer.writerow([one.row, harmless(one.candidate), one.variant, *marks, *blanks, *last])
    return buffer.getvalue()


def harmless(text: str) -> str:
    """Keep a spreadsheet from running a text as a formula."""
    return f"'{text}" if text[:1] in ("=", "+", "-", "@", "|", "%", "\t", "\r") else text


def marks_data(marked: Marked) -> dict[str, Any]:
    """Turn the marks into plain data."""
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
        "rows_without_code": list(marked.uncoded),
    }  # fmt: skip


def _candidate_data(one: CandidateMark) -> dict[str, Any]:
    """One candidate."""
    parts = [(question, part) for question in one.questions for part in question.parts]
    return {
        "row": one.row, "candidate": one.candidate, "variant": one.variant,
        "marks": one.marks, "of": one.most,
        "provisional": one.unread > 0, "not_read": one.unread,
        "parts": [
            {
                "question": question.number, "label": part.label, "step": part.letter,
                "given": part.given, "status": part.status, "marks": part.marks, "of": part.most,
                "slip": part.slip, "note": part.note,
            }
            for question, part in parts
        ],
    }  # fmt: skip
