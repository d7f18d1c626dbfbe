"""Lines of type and the foot of a book's first pages."""

from collections.abc import Iterator, Sequence

from boomsim.caution import CAUTION
from boomsim.figures.charts.chart_sizes_and_tints import LINE, MARGIN, TINY
from boomsim.figures.charts.page_marks import POINT, Mark, Place, Words, rule
from boomsim.figures.charts.typeface import broken
from boomsim.figures.colours_and_lines import FAINT, INK, QUIET

LARGE, HUGE = 14.0, 44.0
"""Sizes of type on these pages [pt]."""


def foot_marks(size: Place) -> Iterator[Mark]:
    """Draw the caution at the foot of a page.

    Parameters
    ----------
    size : (float, float)
        Width and height of the page [mm]
    """
    lines = broken(CAUTION, width=size[0] - 2 * MARGIN - 12.0, size=TINY)
    top = size[1] - MARGIN - len(lines) * LINE * TINY * POINT
    yield rule(MARGIN, top - 0.6, size[0] - 2 * MARGIN, width=0.3, colour=FAINT)
    yield from text_lines(lines, MARGIN, top, TINY, colour=QUIET)


def text_lines(
    lines: Sequence[str],
    x: float,
    top: float,
    size: float,
    *,
    colour: str = INK,
    bold: bool = False,
) -> Iterator[Mark]:
    """Set lines of type under one another.

    Parameters
    ----------
    x, top : float
        [mm]
    size : float
        [pt]
    """
    for k, line in enumerate(lines):
        base = top + (k + 0.85) * LINE * size * POINT
        yield Words(x, base, line, size, colour=colour, bold=bold)
