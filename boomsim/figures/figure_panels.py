"""Panels on a page: each under a small heading of its own."""

from matplotlib.lines import Line2D
from matplotlib.text import Text

from boomsim.figures.colours_and_lines import BODY, PAPER, QUIET, SMALL, Identity, type_of
from boomsim.figures.figure_page import Page
from boomsim.figures.text_width import POINT, wrap


def heading(
    page: Page, words: str, *, left: float, top: float, width: float, note: str = ""
) -> Text:
    """Write a panel's heading, and a quiet note under it.

    Parameters
    ----------
    words : str
        One line
    left, top : float
        From the lower left corner of the room between head and foot [m]
    width : float
        In which the note breaks [m]

    Returns
    -------
    Text
        The heading
    """
    x, y = (page.left + left) / page.width, (page.bottom + top) / page.height
    made = page.figure.text(x, y, words, ha="left", va="top", **type_of(BODY, bold=True))
    if note:
        lines = wrap(note, width=width, size=SMALL)
        down = 1.5 * BODY * POINT / page.height
        style = type_of(SMALL, colour=QUIET)
        page.figure.text(
            x, y - down, "\n".join(lines), ha="left", va="top", linespacing=1.25, **style
        )
    return made


def name_marker(page: Page, look: Identity, *, x: float, y: float) -> None:
    """Draw a configuration's marker beside its name.

    Parameters
    ----------
    look : Identity
        Its colour and marker
    x, y : float
        Centre on the page, over its width and height [1]
    """
    page.figure.add_artist(
        Line2D(
            [x],
            [y],
            linestyle="none",
            marker=look.marker,
            markersize=4.6,
            markerfacecolor=PAPER,
            markeredgecolor=look.colour,
            markeredgewidth=1.1,
            transform=page.figure.transFigure,
        )
    )
