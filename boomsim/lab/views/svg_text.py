"""Small words for drawing SVG: every view is a string made of these."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from html import escape
from math import hypot

import numpy as np

from boomsim.figures.colours_and_lines import PAPER
from boomsim.figures.svg_elements import element, point_list
from boomsim.mechanics.geometry import Array

Point = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """A place in a picture.

    Attributes
    ----------
    x, y, width, height : float
        Upper left corner and size [px]
    """

    x: float
    y: float
    width: float
    height: float

    @property
    def right(self) -> float:
        """Right edge [px]."""
        return self.x + self.width

    @property
    def bottom(self) -> float:
        """Lower edge [px]."""
        return self.y + self.height


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """From metres, y upwards, to a picture, y downwards.

    Attributes
    ----------
    x, y : float
        Where the origin lies [px]
    scale : float
        [px/m]
    """

    x: float
    y: float
    scale: float

    def place(self, points: Array) -> Array:
        """Place points of shape (..., 2) [m] in the picture [px]."""
        return np.asarray(points * (self.scale, -self.scale) + (self.x, self.y))


def dots(points: Array) -> str:
    """Write points of shape (n, 2) for a path or polygon."""
    # Here and below one format for all that a part has: a picture has some hundreds of parts and
    # is drawn while a slider moves; attribute by attribute, that takes half as long again.
    return (" %.1f,%.1f" * len(points))[1:] % tuple(points.ravel().tolist())


def polygon(points: Array, kind: str, *, more: str = "") -> str:
    """Draw a closed shape of one class."""
    return f'<polygon class="{kind}" points="{dots(points)}"{more}/>'


def polyline(points: Array, kind: str, *, more: str = "") -> str:
    """Draw an open line of one class."""
    return f'<polyline class="{kind}" points="{dots(points)}"{more}/>'


def line(x1: float, y1: float, x2: float, y2: float, kind: str, *, more: str = "") -> str:
    """Draw a straight line of one class."""
    return f'<line class="{kind}" x1="{x1:.1f}" y1="{y1:.1f}" x2="{x2:.1f}" y2="{y2:.1f}"{more}/>'


def between(start: Sequence[float], end: Sequence[float], kind: str, *, more: str = "") -> str:
    """Draw a straight line of one class between two points."""
    return line(start[0], start[1], end[0], end[1], kind, more=more)


def rect(x: float, y: float, width: float, height: float, kind: str, *, more: str = "") -> str:
    """Draw a rectangle of one class."""
    return (
        f'<rect class="{kind}" x="{x:.1f}" y="{y:.1f}" width="{max(width, 0.0):.1f}" '
        f'height="{max(height, 0.0):.1f}"{more}/>'
    )


def white(width: float, height: float) -> str:
    """Draw what lies behind a whole picture."""
    return element("rect", width=f"{width:g}", height=f"{height:g}", fill=PAPER)


def circle(x: float, y: float, radius: float, kind: str, *, more: str = "") -> str:
    """Draw a circle of one class."""
    return f'<circle class="{kind}" cx="{x:.1f}" cy="{y:.1f}" r="{radius:.1f}"{more}/>'


def text(x: float, y: float, words: str, kind: str, *, more: str = "") -> str:
    """Type of one class; the words are escaped."""
    # Nearly all words are plain; looking for what is not is quicker than replacing it.
    if "&" in words or "<" in words or ">" in words:
        words = escape(words, quote=False)
    return f'<text class="{kind}" x="{x:.1f}" y="{y:.1f}"{more}>{words}</text>'


def arrow(start: Point, end: Point, kind: str, *, head: float = 5.0) -> str:
    """Draw a line with a solid head at its end; nothing if it is too short for one."""
    (x1, y1), (x2, y2) = start, end
    length = hypot(x2 - x1, y2 - y1)
    if length < head / 2:
        return ""
    head = min(head, 0.8 * length)
    x, y = head * (x2 - x1) / length, head * (y2 - y1) / length
    neck_x, neck_y = x2 - x, y2 - y
    wings = ((neck_x - y / 2, neck_y + x / 2), (neck_x + y / 2, neck_y - x / 2))
    solid = point_list([end, *wings], ".1f")
    return line(x1, y1, neck_x, neck_y, kind) + element(
        "polygon", class_=f"{kind}-head", points=solid
    )


def view(name: str, label: str, parts: Iterable[str], *, more: str = "") -> str:
    """Group parts that screen readers take as one picture.

    Parameters
    ----------
    name : str
        Goes to `data-view`
    label : str
        What it shows, in words
    parts : iterable of str
        SVG
    more : str
        Further attributes

    Returns
    -------
    str
        SVG
    """
    return (
        f'<g role="img" data-view="{name}" aria-label="{escape(label, quote=True)}"{more}>'
        f"{''.join(parts)}</g>"
    )


def wrapped(words: str, *, most: int) -> list[str]:
    """Break a sentence into lines of at most so many letters."""
    from textwrap import wrap

    return wrap(words, most) or [""]
