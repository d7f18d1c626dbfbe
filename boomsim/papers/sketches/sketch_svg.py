"""Line drawings for questions, as SVG text: the same in the PDF, the page and the notebook.

Coordinates are in points with y upwards. No arrow markers, filters or ids: several drawings can
then stand in one page, and every renderer shows the same.
"""

from collections.abc import Sequence
from html import escape
from math import atan2, cos, dist, pi, sin

from boomsim.figures.colours_and_lines import INK, LOAD, PAPER, QUIET, STEEL
from boomsim.figures.svg_elements import document, element
from boomsim.papers.language.formula_markup import GREEK

Point = tuple[float, float]

NARROW = 10.0
"""Length of a dimension line between whose ends no arrow tips have room [pt]."""

NOT_TO_SCALE = "not to scale"
"""What a sketch says of lengths that it does not draw in their proportion."""

FONT = "'Libertinus Serif', Cambria, Georgia, serif"


class Sketch:
    """A drawing under construction.

    Parameters
    ----------
    width, height : float
        Of the whole drawing [pt]

    Examples
    --------
    >>> "<svg" in Sketch(100, height=20).line((0, 10), (100, 10)).svg()
    True
    """

    def __init__(self, width: float, *, height: float) -> None:
        self.width, self.height = width, height
        self._parts: list[str] = []

    def line(
        self, start: Point, end: Point, *, width: float = 0.8, color: str = INK, dash: str = "",
        of: str = "",
    ) -> "Sketch":  # fmt: skip
        """Draw a straight line; `of` is the letter of the length that it shows."""
        (x1, y1), (x2, y2) = self._at(start), self._at(end)
        return self._add(
            "line", x1=x1, y1=y1, x2=x2, y2=y2, stroke=color, stroke_width=width,
            stroke_linecap="round", stroke_dasharray=dash or None, data_of=of or None,
        )  # fmt: skip

    def shape(
        self, corners: Sequence[Point], *, fill: str = STEEL, edge: str = INK, of: str = ""
    ) -> "Sketch":
        """Draw a filled polygon; its first edge may show the length that a letter names."""
        points = " ".join(",".join(self._at(corner)) for corner in corners)
        return self._add(
            "polygon", points=points, fill=fill, stroke=edge, stroke_width=0.8,
            stroke_linejoin="round", data_of=of or None,
        )  # fmt: skip

    def bar(
        self, start: Point, end: Point, *, depth: float, fill: str = STEEL, of: str = ""
    ) -> "Sketch":
        """Draw a section seen from the side, from start to end along its axis."""
        (x1, y1), (x2, y2) = start, end
        turn = atan2(y2 - y1, x2 - x1)
        u, v = -sin(turn) * depth / 2, cos(turn) * depth / 2
        corners = ((x1 + u, y1 + v), (x2 + u, y2 + v), (x2 - u, y2 - v), (x1 - u, y1 - v))
        return self.shape(corners, fill=fill, of=of)

    def circle(self, centre: Point, *, radius: float, fill: str = PAPER) -> "Sketch":
        """Draw a circle: a pin, a sheave, a centre of gravity."""
        x, y = self._at(centre)
        return self._add("circle", cx=x, cy=y, r=radius, fill=fill, stroke=INK, stroke_width=0.8)

    def arrow(
        self, start: Point, end: Point, *, color: str = LOAD, width: float = 1.2, head: float = 6
    ) -> "Sketch":
        """Draw an arrow that ends at `end`: a force."""
        (x1, y1), (x2, y2) = start, end
        turn = atan2(y2 - y1, x2 - x1)
        foot = (x2 - 0.8 * head * cos(turn), y2 - 0.8 * head * sin(turn))
        wings = [
            (x2 - head * cos(turn + side), y2 - head * sin(turn + side)) for side in (0.38, -0.38)
        ]
        self.line(start, foot, color=color, width=width)
        return self.shape([end, *wings], fill=color, edge=color)

    def dimension(
        self, start: Point, end: Point, *, letter: str, value: str = "", of: str = ""
    ) -> "Sketch":
        """Draw a dimension line with its letter and value above the middle.

        Parameters
        ----------
        start, end : (float, float)
            [pt]
        of : str
            Letter of the length, where its label stands elsewhere
        """
        (x1, y1), (x2, y2) = start, end
        turn = atan2(y2 - y1, x2 - x1)
        u, v = -sin(turn) * 3.5, cos(turn) * 3.5
        for x, y in (start, end):
            self.line((x - u, y - v), (x + u, y + v), width=0.5, color=QUIET)
        middle = ((x1 + x2) / 2, (y1 + y2) / 2)
        self.line(start, end, width=0.5, color=QUIET, of=of or letter)
        if dist(start, end) > NARROW:
            for tip, way in ((start, turn + pi), (end, turn)):
                self._tip(tip, way)
        return self.label((middle[0] + u * 1.2, middle[1] + v * 1.2), letter=letter, value=value)

    def label(
        self, at: Point, *, letter: str = "", value: str = "", anchor: str = "middle",
        color: str = INK, size: float = 9,
    ) -> "Sketch":  # fmt: skip
        """Write a letter in italics with its index, and its value or any words."""
        x, y = self._at(at)
        equals = " = " if letter and value else ""
        text = _letter(letter, size) + escape(equals + value)
        return self._add(
            "text", text, x=x, y=y, font_size=size, text_anchor=anchor, fill=color,
            font_family=FONT,
        )  # fmt: skip

    def ground(self, start: Point, end: Point) -> "Sketch":
        """Draw the ground with short strokes below it."""
        (x1, y), (x2, _) = start, end
        self.line(start, end, width=1.0)
        count = int((x2 - x1) // 6)
        for place in range(1, count + 1):
            self.line((x1 + 6 * place, y), (x1 + 6 * place - 4, y - 4), width=0.5, color=QUIET)
        return self

    def not_to_scale(self, what: str = "", *, at: Point | None = None) -> "Sketch":
        """Say that the drawing, or something on it, is not in proportion: below on the right."""
        words = f"{what} {NOT_TO_SCALE}".strip()
        return self.label(at or (self.width - 4, 4), value=words, anchor="end", color=QUIET, size=8)

    def svg(self) -> str:
        """Return the drawing as SVG text."""
        w, h = _short(self.width), _short(self.height)
        return document(*self._parts, viewBox=f"0 0 {w} {h}", width=f"{w}pt", height=f"{h}pt")

    def _tip(self, at: Point, way: float) -> None:
        """Draw the small head at the end of a dimension line."""
        x, y = at
        wings = [(x - 4 * cos(way + side), y - 4 * sin(way + side)) for side in (0.3, -0.3)]
        self.shape([at, *wings], fill=QUIET, edge=QUIET)

    def _add(self, tag: str, *inside: str, **attributes: object) -> "Sketch":
        """Keep a part; returns the sketch, so that calls can follow each other."""
        self._parts.append(element(tag, *inside, **attributes))
        return self

    def _at(self, point: Point) -> tuple[str, str]:
        """Turn y over, as SVG counts it downwards."""
        return _short(point[0]), _short(self.height - point[1])


def _short(number: float) -> str:
    """Two decimals at most; no -0."""
    return f"{round(number, 2) + 0.0:.2f}".rstrip("0").rstrip(".")


def _letter(name: str, size: float) -> str:
    """Write a letter in italics, its index lower and smaller."""
    if not name:
        return ""
    base, _, below = name.partition("_")
    text = element("tspan", escape(GREEK.get(base, base)), font_style="italic")
    if not below:
        return text
    lowered = element("tspan", escape(below), dy=2, font_size=_short(0.72 * size))
    return text + lowered + element("tspan", "\u200b", dy=-2)
