"""A paper, its solutions or its marking key as PDF."""

import json
from typing import Literal

from boomsim.papers.paper import Paper
from boomsim.papers.render.typst_data import typst_data
from boomsim.papers.render.typst_pdf import typst_pdf

STANDARD: Literal["ua-1"] = "ua-1"
"""Typst refuses to write what breaks a rule of it that a program can see."""


def render_pdf(paper: Paper, *, kind: str, large: bool = False) -> bytes:
    """Set one paper.

    Parameters
    ----------
    kind : str
        "paper", "solutions" or "marking"
    large : bool
        Large print, for those who read badly

    Returns
    -------
    bytes
        PDF/UA-1: tagged, with language, title, headings, and words for every formula and drawing
    """
    data = json.dumps(typst_data(paper, kind=kind, large=large), ensure_ascii=False)
    return typst_pdf("paper.typ", data, standard=STANDARD)
