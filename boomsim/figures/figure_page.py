"""A page of a given size with its title and the caution, and how it becomes a file."""

import os
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from io import BytesIO
from pathlib import Path
from typing import Any

from matplotlib import rc_context
from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.axis import Axis
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.text import Text

from boomsim.caution import CAUTION
from boomsim.figures.colours_and_lines import BODY, INK, PAPER, QUIET, TINY, TITLE, type_of
from boomsim.figures.text_width import INCH, POINT, wrap
from boomsim.files.whole_files import refuse_target, whole_file

MARGIN = 4e-3
"""White left round everything [m]."""

DOTS = 200
"""Dots to the inch in a PNG."""

KINDS = {".png": "png", ".svg": "svg", ".pdf": "pdf"}
"""What a file's suffix asks for."""

_DATE = datetime(2000, 1, 1, tzinfo=UTC)
_CAUTION_ID = "caution"


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Page:
    """A figure with its title at the head and the caution at the foot.

    Attributes
    ----------
    width, height : float
        Of the whole page [m]
    left, bottom, right, top : float
        Room between head and foot, from the lower left corner of the page [m]
    """

    figure: Figure
    width: float
    height: float
    left: float
    bottom: float
    right: float
    top: float

    def axes(self, *, left: float, bottom: float, width: float, height: float) -> Axes:
        """Add axes at a place on paper.

        Parameters
        ----------
        left, bottom, width, height : float
            From the lower left corner of the room between head and foot [m]
        """
        place = (
            (self.left + left) / self.width,
            (self.bottom + bottom) / self.height,
            width / self.width,
            height / self.height,
        )
        return self.figure.add_axes(place)

    @property
    def room(self) -> tuple[float, float]:
        """Width and height between head and foot [m]."""
        return self.right - self.left, self.top - self.bottom


def new_page(
    *, width: float, height: float, title: str = "", subtitle: str = "", foot: str = ""
) -> Page:
    """Start a figure.

    Parameters
    ----------
    width, height : float
        Of the whole page [m]
    title, subtitle : str
        At the head; broken into lines where they are too long
    foot : str
        Small print above the caution

    Returns
    -------
    Page
        With the caution at its foot
    """
    figure = Figure(figsize=(width / INCH, height / INCH), dpi=DOTS, facecolor=PAPER)
    FigureCanvasAgg(figure)
    inside = width - 2.0 * MARGIN
    top = height - MARGIN
    for text, size, colour, bold in ((title, TITLE, INK, True), (subtitle, BODY, QUIET, False)):
        if text:
            lines = wrap(text, width=inside, size=size, bold=bold)
            style = type_of(size, colour=colour, bold=bold)
            _text(figure, (MARGIN, top), (width, height), "\n".join(lines), va="top", style=style)
            top -= len(lines) * 1.35 * size * POINT + 0.6e-3
    bottom = MARGIN / 2
    for text, name in ((CAUTION, _CAUTION_ID), (foot, "foot")):
        if text:
            lines = wrap(text, width=inside, size=TINY)
            style, shown = type_of(TINY, colour=QUIET), "\n".join(lines)
            made = _text(figure, (MARGIN, bottom), (width, height), shown, va="bottom", style=style)
            made.set_gid(name)
            bottom += len(lines) * 1.35 * TINY * POINT + 0.4e-3
    return Page(
        figure=figure,
        width=width,
        height=height,
        left=MARGIN,
        bottom=bottom + 0.6e-3,
        right=width - MARGIN,
        top=top - 1.0e-3,
    )


def _text(
    figure: Figure,
    at: tuple[float, float],
    page: tuple[float, float],
    words: str,
    *,
    va: str,
    style: dict[str, Any],
) -> Any:
    x, y = at[0] / page[0], at[1] / page[1]
    return figure.text(x, y, words, ha="left", va=va, linespacing=1.25, **style)


def picture(figure: Figure, *, kind: str) -> bytes:
    """Draw a figure into bytes: the same bytes for the same figure.

    Parameters
    ----------
    kind : str
        "png", "svg" or "pdf"
    """
    made = BytesIO()
    # The ids in an SVG come from this salt alone; the setting ends with the block.
    with rc_context({"svg.hashsalt": "boomsim"}):
        figure.savefig(made, format=kind, dpi=DOTS, metadata=_metadata(kind))
    _let_bitmap_go(figure)
    return made.getvalue()


def _let_bitmap_go(figure: Figure) -> None:
    """Free a drawn page's bitmap, some 9 MB, which canvas and words would hold.

    Artists refer to one another in circles, and Python's collector, which finds these late, counts
    objects and not their size: from call to call a process would grow by a bitmap each.
    """
    if type(figure.canvas) is FigureCanvasAgg:
        FigureCanvasAgg(figure)  # takes the place of the one that holds the bitmap
    for text in _drawn_words(figure):
        text._renderer = None  # type: ignore[attr-defined, unused-ignore]


def _drawn_words(artist: Artist) -> Iterator[Text]:
    """All words on a figure, without making ticks of axes that show none, as `findobj` does."""
    if isinstance(artist, Text):
        yield artist
    if isinstance(artist, Axis):
        made = vars(artist)
        ticks = [*made.get("majorTicks", ()), *made.get("minorTicks", ())]
        inside = [artist.label, artist.offsetText, *ticks]
    else:
        inside = artist.get_children()
    for one in inside:
        yield from _drawn_words(one)


def _metadata(kind: str) -> Mapping[str, Any]:
    if kind == "png":
        return {"Software": "boomsim", "Description": CAUTION}
    if kind == "svg":
        return {"Creator": "boomsim", "Date": _DATE.date().isoformat(), "Description": CAUTION}
    dates = {"CreationDate": _DATE, "ModDate": _DATE}
    return {"Creator": "boomsim", "Producer": "boomsim", "Subject": CAUTION, **dates}


def write(figure: Figure, path: str | os.PathLike[str]) -> Path:
    """Write a figure to a file, whole or not at all.

    Parameters
    ----------
    path : str or path
        Ends in .png, .svg or .pdf

    Returns
    -------
    Path
        What was written

    Raises
    ------
    ValueError
        If the suffix is another, or the folder does not exist
    """
    target = check_path(path)
    made = picture(figure, kind=KINDS[target.suffix.lower()])
    with whole_file(target) as part:
        part.write_bytes(made)
    return target


def check_path(path: str | os.PathLike[str]) -> Path:
    """Refuse a path that no figure can be written to, before any work is done."""
    target = Path(path)
    if target.suffix.lower() not in KINDS:
        ending = f'ends in "{target.suffix}"' if target.suffix else "has no ending"
        raise ValueError(
            f'The figure\'s file "{target.name}" {ending}, which names no kind of picture. '
            f'End it in .png, .svg or .pdf, such as "{target.stem or "figure"}.svg".'
        )
    refuse_target(target)
    return target


def caution_of(figure: Figure) -> str:
    """Read the caution at a figure's foot as one line.

    Returns
    -------
    str
        Nothing if there is none
    """
    found = [text.get_text() for text in figure.texts if text.get_gid() == _CAUTION_ID]
    return " ".join(" ".join(found).split())
