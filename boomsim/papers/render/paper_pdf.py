"""PDF through Typst: no network, its own fonts, and the same bytes every time."""

import json
from functools import lru_cache
from pathlib import Path

import typst

from boomsim.papers.paper import Paper
from boomsim.papers.render.typst_data import typst_data

TEMPLATES = Path(__file__).parent / "templates"
MOMENT = 946684800
"""Creation time written into every PDF, so that the same seed gives the same bytes [s]."""


def render_pdf(paper: Paper, *, kind: str) -> bytes:
    """Set one paper.

    Parameters
    ----------
    paper : Paper
    kind : str
        "paper", "solutions" or "marking"

    Returns
    -------
    bytes
        PDF
    """
    data = json.dumps(typst_data(paper, kind=kind), ensure_ascii=False)
    made = _compiler().compile(format="pdf", sys_inputs={"data": data}, timestamp=MOMENT)
    if not isinstance(made, bytes):
        raise TypeError("Typst gave no single PDF.")
    return made


@lru_cache(maxsize=1)
def _compiler() -> typst.Compiler:
    """One compiler keeps fonts and the parsed template."""
    return typst.Compiler(
        input=TEMPLATES / "paper.typ", root=TEMPLATES, ignore_system_fonts=True, sys_inputs={}
    )
