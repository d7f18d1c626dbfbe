"""The answer sheet as a PDF."""

import json
from typing import Any

from boomsim.papers.check_code import code_of, paper_qr_svg
from boomsim.papers.numbers.printed_units import unit
from boomsim.papers.paper import Paper
from boomsim.papers.paper_errors import PaperError
from boomsim.papers.render.typst_pdf import typst_pdf
from boomsim.papers.scans.sheet_layout import (
    ACROSS,
    CANDIDATE,
    CELL_SIDE,
    LETTER,
    NUMBER,
    RADIUS,
    SQUARE,
    Field,
    SheetPage,
    paper_name,
    sheet_pages,
)  # fmt: skip
from boomsim.papers.scans.sheet_strip import PAGE_BITS, cells_of, places

HOW = (
    "Fill a bubble wholly, with a dark pencil or pen. To change an answer, rub it out; what cannot "
    "be read for certain is looked at by hand.",
    "Numbers: one sign to a column, from the left, the decimal point in a column of its own. "
    "Without a unit the first one, which the paper prints, is taken.",
)


def answer_sheet_pdf(paper: Paper) -> bytes:
    """Draw the answer sheet of one variant.

    Returns
    -------
    bytes
        PDF

    Raises
    ------
    PaperError
        If it takes more pages than a strip can number
    """
    pages = sheet_pages(paper.questions, units=paper.plan.units)
    if len(pages) >= 1 << PAGE_BITS:
        raise PaperError(
            f'The answer sheet of "{paper.plan.title}" would have {len(pages)} pages, and at most '
            f"{(1 << PAGE_BITS) - 1} can be numbered. Set two papers, or ask for fewer steps."
        )
    code = code_of(paper)
    data = {
        "title": paper.plan.title, "variant": paper.variant, "code": code,
        "qr": paper_qr_svg(paper),
        "sheet": paper_name(paper.plan.units), "how": HOW, "radius": RADIUS, "square": SQUARE,
        "cell": CELL_SIDE, "pages": [_page(one, code, len(pages)) for one in pages],
    }  # fmt: skip
    return typst_pdf("sheet.typ", json.dumps(data, ensure_ascii=False))


def _page(page: SheetPage, code: str, count: int) -> dict[str, Any]:
    """One page: what is black, what is round, and what is written."""
    cells = zip(places(), cells_of(code, page.number), strict=True)
    return {
        "number": page.number,
        "count": count,
        "corners": page.corners,
        "cells": [at for at, black in cells if black],
        "fields": [_field(one) for one in page.fields],
    }


def _field(one: Field) -> dict[str, Any]:
    """Frame, label, bubbles, and the boxes in which the number is written by hand."""
    digits = () if one.kind == LETTER else one.columns if one.kind == CANDIDATE else one.columns[2:]
    return {
        "label": one.label,
        "kind": one.kind,
        "box": one.box,
        "unit": unit(one.unit).shown,
        "bubbles": [
            (b.x, b.y, "" if one.kind == NUMBER and place == 1 else b.says.replace("-", "−"))
            for place, column in enumerate(one.columns)
            for b in column
        ],
        "words": [
            (b.x + RADIUS + 0.6, b.y, unit(b.says).shown)
            for b in (one.columns[1] if one.kind == NUMBER else ())
        ],
        "written": [(column[0].x - ACROSS / 2, column[0].y - 6.9) for column in digits],
        "pitch": ACROSS,
    }
