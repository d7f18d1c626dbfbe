"""Chart pages into files, whole or not at all."""

import os
from collections.abc import Sequence
from pathlib import Path

from boomsim.figures.charts.page_marks import Sheet
from boomsim.figures.figure_page import check_path
from boomsim.files.whole_files import whole_file


def write_sheets(sheets: Sequence[Sheet], path: str | os.PathLike[str]) -> Path:
    """Write pages to a file.

    Parameters
    ----------
    path : str or path
        Ends in .pdf, .svg or .png; only a .pdf holds several pages

    Returns
    -------
    Path
        What was written

    Raises
    ------
    ValueError
        If the suffix is another, the folder does not exist, or the pages are too many
    """
    target = check_path(path)
    kind = target.suffix.lower()
    if kind != ".pdf" and len(sheets) > 1:
        raise ValueError(
            f"This chart takes {len(sheets)} pages and a {kind} file holds one. Name a .pdf file, "
            "or choose fewer boom lengths."
        )
    with whole_file(target) as part:
        part.write_bytes(_drawn(sheets, kind))
    return target


def _drawn(sheets: Sequence[Sheet], kind: str) -> bytes:
    if kind == ".pdf":
        from boomsim.figures.charts.pdf_writer import pdf_bytes

        return pdf_bytes(sheets, title=sheets[0].title)
    if kind == ".svg":
        from boomsim.figures.charts.sheet_svg import svg_text

        return svg_text(sheets[0]).encode("utf-8")
    from boomsim.figures.charts.sheet_figure import figure_of_sheet
    from boomsim.figures.figure_page import picture

    return picture(figure_of_sheet(sheets[0]), kind="png")
