"""A chart book as one HTML file that asks before it tells: no network, no library."""

import json
from base64 import b64encode
from html import escape
from importlib.resources import files
from typing import Any

import numpy as np

from boomsim.caution import CAUTION
from boomsim.figures.charts.cell_text import Numbers, code, numbers_of
from boomsim.figures.charts.chart_head import facts_of
from boomsim.figures.setup_words import rule_words
from boomsim.rating.charts.blank_cells import REASONS, words_of
from boomsim.rating.charts.chart_book import Book, Chapter
from boomsim.rating.charts.chart_questions import questions
from boomsim.rating.limits.limit_kind import STABILITY
from boomsim.rating.limits.limit_sentences import WHAT_SETS
from boomsim.rating.parts_reeved import parts_words
from boomsim.rating.strategies import label

BLANK = 0xFFFF
"""Stands for a blank cell where steps are written in 16 bits."""


QUESTIONS = 60
"""On one page: more than a class asks in a term."""


def book_html(book: Book) -> str:
    """Write a book as a page.

    Returns
    -------
    str
        HTML
    """
    folder = files("boomsim.figures.charts.book")
    page = folder.joinpath("book.html").read_text(encoding="utf-8")
    # "</" inside the data would end the script element that holds it.
    data = json.dumps(book_data(book), separators=(",", ":"), allow_nan=False).replace("</", "<\\/")
    filled = {
        "TITLE": escape(f"{book.machine.name}: chart book"),
        "STYLE": folder.joinpath("book.css").read_text(encoding="utf-8"),
        "SCRIPT": folder.joinpath("book.js").read_text(encoding="utf-8"),
        "CAUTION": escape(CAUTION),
    }
    for name, text in filled.items():
        page = page.replace(f"@{name}@", text)
    return page.replace("@DATA@", data)


def book_data(book: Book) -> dict[str, Any]:
    """Gather what the page shows, in the units of the book.

    Returns
    -------
    dict
        Of plain values; arrays are packed, little end first, configurations before radii
    """
    chart = book.chapters[0].best
    numbers = numbers_of(chart, units=book.units)
    wide = max(int(c.stated.steps.max()) for c in book.chapters) >= BLANK
    return {
        "name": book.machine.name,
        "title": book.machine.title,
        "mass": numbers.mass,
        "length": numbers.length,
        "scale": numbers.scale,
        "decimals": numbers.decimals,
        "radii": [numbers.radius(float(r)) for r in book.radii],
        "ways": _ways(book, numbers),
        "groups": [
            {"length": numbers.boom(float(length)), "ways": list(choice)}
            for length, choice in zip(chart.length, chart.choices, strict=True)
        ],
        "limits": [
            {
                "words": limit.words,
                "code": code(limit),
                "breaks": limit.set_by != STABILITY,
                "sets": WHAT_SETS[limit.set_by],
            }
            for limit in chart.limits
        ],
        "wide": wide,
        "reasons": [{"sign": r.sign, "words": words_of(r, book.machine)} for r in REASONS],
        "questions": _asked(book),
        "chapters": [_chapter(book, chapter, wide=wide) for chapter in book.chapters],
    }


def _asked(book: Book) -> list[dict[str, Any]]:
    """Write questions as places in the page's own lists."""
    return [
        {"chapter": one.chapter, "row": one.row, "ways": list(one.ways), "right": one.right}
        for one in questions(book, count=QUESTIONS)
    ]


def _ways(book: Book, numbers: Numbers) -> list[dict[str, Any]]:
    chart = book.chapters[0].best
    group = {way: k for k, choice in enumerate(chart.choices) for way in choice}
    found = book.configurations
    return [
        {
            "name": label(row),
            "percent": [round(100.0 * float(f), 3) for f in row],
            "length": round(float(length) / numbers.unit + 1e-9, 3),
            "boom": numbers.boom(float(length)),
            "group": group[k],
        }
        for k, (row, length) in enumerate(zip(found.extension, found.length, strict=True))
    ]


def _chapter(book: Book, chapter: Chapter, *, wide: bool) -> dict[str, Any]:
    setup, facts = chapter.setup, dict(facts_of(chapter.setup))
    steps = _on_all_rows(book, chapter.stated.radii, chapter.stated.steps)
    governing = _on_all_rows(book, chapter.stated.radii, chapter.stated.governing)
    used = _on_all_rows(book, chapter.best.radii, chapter.best.used)
    why = _on_all_rows(book, chapter.stated.radii, chapter.stated.blank)
    best_why = _on_all_rows(book, chapter.best.radii, chapter.best.blank)
    return {
        "sector": setup.sector,
        "counterweight": facts["counterweight"],
        "support": facts["standing on"],
        "rule": setup.rule.name,
        "words": rule_words(setup.rule, support_kind=setup.support.kind),
        "parts": parts_words(setup),
        "steps": _packed(steps, "<u4" if wide else "<u2"),
        "governing": _packed(governing, "u1"),
        "best": _packed(used, "<u2"),
        "why": _packed(why, "u1"),
        "bestWhy": _packed(best_why, "u1"),
    }


def _on_all_rows(book: Book, radii: np.ndarray, values: np.ndarray) -> np.ndarray:
    """Put the rows of a chart back among all rows of the book; columns first."""
    whole = np.full((len(book.radii), values.shape[1]), -1)
    start = int(np.searchsorted(book.radii, radii[0])) if len(radii) else 0
    whole[start : start + len(values)] = values
    return whole.T


def _packed(values: np.ndarray, kind: str) -> str:
    """Pack whole numbers; -1 becomes the largest that fits."""
    return b64encode(np.ascontiguousarray(values).astype(kind).tobytes()).decode("ascii")
