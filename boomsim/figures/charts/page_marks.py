"""Marks on a page, in millimetres from its upper left corner: what a chart page is made of.

One layout becomes a PDF, an SVG or a matplotlib figure: each writer knows four marks only.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from boomsim import units
from boomsim.figures.colours_and_lines import INK

INCH = float(1000 * units.INCH)
POINT = INCH / 72.0
"""An inch, and a point of type [mm]."""

Place = tuple[float, float]


class Words(NamedTuple):
    """One line of type; `x` is its left end, middle or right end, `y` its base line."""

    x: float
    y: float
    text: str
    size: float
    align: str = "left"
    bold: bool = False
    colour: str = INK


class Stroke(NamedTuple):
    """A line through points, with mitred corners; `dash` in mm."""

    points: Sequence[Place]
    width: float
    colour: str = INK
    dash: tuple[float, ...] = ()


class Fill(NamedTuple):
    """A filled polygon."""

    points: Sequence[Place]
    colour: str


class Jump(NamedTuple):
    """A rectangle that leads to another page; only a PDF follows it."""

    left: float
    top: float
    width: float
    height: float
    page: int


Mark = Words | Stroke | Fill | Jump


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """One page.

    Attributes
    ----------
    width, height : float
        [mm]
    marks : tuple of Mark
        In the order of drawing
    title : str
        For the reader of a screen and the bookmarks
    level : int
        Of its bookmark; 0 for none
    """

    width: float
    height: float
    marks: tuple[Mark, ...]
    title: str
    level: int = 0


PAPERS = {"a4": (210.0, 297.0), "letter": (215.9, 279.4)}
"""Width and height upright [mm]."""


def paper_size(paper: str, *, lying: bool) -> Place:
    """Look up a paper.

    Parameters
    ----------
    paper : str
        "a4" or "letter"
    lying : bool
        True for landscape

    Returns
    -------
    width, height : float
        [mm]
    """
    if paper not in PAPERS:
        raise ValueError(f'There is no paper "{paper}" here. Choose one of: {", ".join(PAPERS)}.')
    width, height = PAPERS[paper]
    return (height, width) if lying else (width, height)


def box(left: float, top: float, width: float, height: float) -> list[Place]:
    """Corners of a rectangle [mm]."""
    right, bottom = left + width, top + height
    return [(left, top), (right, top), (right, bottom), (left, bottom)]


def rule(x: float, y: float, length: float, *, width: float, colour: str = INK) -> Stroke:
    """Draw a level line [mm]."""
    return Stroke(points=((x, y), (x + length, y)), width=width, colour=colour)
