"""The typeface of chart pages: glyphs, widths, and lines that fit. Loaded once."""

from functools import cache, lru_cache
from pathlib import Path

from fontTools.ttLib import TTFont  # type: ignore[import-untyped]

from boomsim.figures.charts.page_marks import POINT
from boomsim.figures.line_breaks import lines_that_fit

FAMILY = "STIXGeneral"

FILES = {False: "STIXGeneral.ttf", True: "STIXGeneralBol.ttf"}
"""A book face, regular and bold, that matplotlib brings along: its figures are all of one width and
a fifth narrower than those of the sans serif of the other pictures, and a chart is made of figures.
"""


@cache
def face(bold: bool) -> TTFont:
    """Open the face."""
    return TTFont(face_file(bold), lazy=True)


def face_file(bold: bool) -> Path:
    """Find the file of the face."""
    import matplotlib

    return Path(matplotlib.get_data_path()) / "fonts" / "ttf" / FILES[bold]


@cache
def _tables(bold: bool) -> tuple[dict[int, str], dict[str, tuple[int, int]], int, dict[str, int]]:
    font = face(bold)
    return (
        font.getBestCmap(),
        font["hmtx"].metrics,
        font["head"].unitsPerEm,
        font.getReverseGlyphMap(),
    )


@lru_cache(maxsize=4096)
def glyph(character: str, *, bold: bool) -> tuple[int, float]:
    """Look up the glyph of a character.

    Returns
    -------
    number : int
    width : float
        [em]
    """
    names, widths, em, numbers = _tables(bold)
    name = names.get(ord(character), ".notdef")
    return numbers[name], widths[name][0] / em


@lru_cache(maxsize=16384)
def width_of(text: str, *, size: float, bold: bool = False) -> float:
    """Width of a line of type [mm].

    Parameters
    ----------
    size : float
        [pt]
    """
    return sum(glyph(c, bold=bold)[1] for c in text) * size * POINT


def broken(text: str, *, width: float, size: float, bold: bool = False) -> list[str]:
    """Break a text into lines.

    Parameters
    ----------
    width : float
        [mm]
    size : float
        [pt]

    Returns
    -------
    list of str
        A word wider than the line stands alone on one
    """
    return lines_that_fit(text, width=width, size=size, measure=width_of, bold=bold)
