"""Typst sets a template's data: no network, its own fonts, and the same bytes every time."""

from functools import lru_cache
from pathlib import Path
from typing import Literal

import typst

TEMPLATES = Path(__file__).parent / "templates"
MOMENT = 946684800
"""Creation time written into every PDF, so that the same seed gives the same bytes [s]."""


def typst_pdf(template: str, data: str, *, standard: Literal["ua-1"] | None = None) -> bytes:
    """Set one document.

    Parameters
    ----------
    template : str
        File in the folder of the templates
    data : str
        JSON that the template reads
    standard : str, optional
        Whose rules the file must keep; Typst refuses to write what breaks one that it can see
    """
    made = _compiler(template).compile(
        format="pdf", sys_inputs={"data": data}, timestamp=MOMENT, pdf_standards=standard
    )
    if not isinstance(made, bytes):
        raise TypeError("Typst gave no single PDF.")
    return made


@lru_cache(maxsize=3)
def _compiler(template: str) -> typst.Compiler:
    """One compiler for a template keeps fonts and what it has parsed."""
    return typst.Compiler(
        input=TEMPLATES / template, root=TEMPLATES, ignore_system_fonts=True, sys_inputs={}
    )
