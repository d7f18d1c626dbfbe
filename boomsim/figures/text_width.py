"""How wide type is on paper, and where to break lines."""

from functools import lru_cache

from matplotlib.font_manager import FontProperties
from matplotlib.textpath import TextToPath

from boomsim import units
from boomsim.figures.colours_and_lines import FONT
from boomsim.figures.line_breaks import lines_that_fit

INCH = float(units.INCH)
POINT = INCH / 72.0
"""[m]"""


@lru_cache(maxsize=512)
def text_width(text: str, *, size: float, bold: bool = False) -> float:
    """Width of one line of type [m].

    Parameters
    ----------
    size : float
        [pt]
    """
    font = FontProperties(family=FONT, size=size, weight="bold" if bold else "normal")
    width, _, _ = TextToPath().get_text_width_height_descent(text, font, ismath=False)
    return float(width) * POINT


def wrap(text: str, *, width: float, size: float, bold: bool = False) -> list[str]:
    """Break a text into lines that fit.

    Parameters
    ----------
    width : float
        [m]
    size : float
        [pt]

    Returns
    -------
    list of str
        A word wider than the line stands alone on one
    """
    if text_width(text, size=size, bold=bold) <= width:
        return [" ".join(text.split())]
    return lines_that_fit(text, width=width, size=size, measure=text_width, bold=bold)
