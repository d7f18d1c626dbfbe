"""PDF through Typst: no network, its own fonts, and the same bytes every time."""

import json
from functools import lru_cache
from pathlib import Path
from typing import Literal

import typst

from boomsim.papers.paper import Paper
from boomsim.papers.render.typst_data import typst_data

STANDARD: Literal["ua-1"] = "ua-1"
"""Typst refuses to write what breaks a rule of it that a program can see."""
TEMPLATES = Path(__file__).parent / "templates"
MOMENT = 946684800
"""Creation time written into every PDF, so that the same seed gives the same bytes [s]."""


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
    made = _compiler().compile(
        format="pdf", sys_inputs={"data": data}, timestamp=MOMENT, pdf_standards=[STANDARD]
    )
    if not isinstance(made, bytes):
        raise TypeError("Typst gave no single PDF.")
    return made


@lru_cache(maxsize=1)
def _compiler() -> typst.Compiler:
    """One compiler keeps fonts and the parsed template."""
    return typst.Compiler(
        input=TEMPLATES / "paper.typ", root=TEMPLATES, ignore_system_fonts=True, sys_inputs={}
    )
