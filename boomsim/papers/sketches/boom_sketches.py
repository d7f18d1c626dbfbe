"""What many questions show: a boom on its crane, a section in another one, a box from its end.

Angles are to scale, and so are the lengths that a picture shows, or it says that they are not.
"""

from dataclasses import dataclass
from itertools import pairwise
from math import cos, radians, sin, tan

from boomsim.figures.colours_and_lines import INK, PAPER, QUIET, STEEL
from boomsim.papers.sketches.sketch_svg import Point, Sketch

FOOT, GROUND, LONG = 60.0, 38.0, 168.0
"""Heel pin along the ground, the ground, and the boom length of :func:`crane` [pt]."""
UNTOLD = (17.0, 2.8, 3.4)
"""Boom length, heel pin behind the axis and above the ground where they are not to scale [m]."""
SLOPED = 0.82
"""Boom angle where it is not to scale, since it could be measured [rad]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Place:
    """A sketch under construction, and where things are on it.

    Attributes
    ----------
    start, end : (float, float)
        Of the boom, or of what stands out of a mouth [pt]
    hook : float or None
        Where the hoist line is, if there is one [pt]
    axis : float
        Where the axis of rotation is [pt]
    scale : float
        Points in a metre [pt/m]
    """

    sketch: Sketch
    start: Point
    end: Point
    hook: float | None = None
    axis: float = 0.0
    scale: float = 1.0

    def at(self, share: float, *, off: float = 0.0) -> Point:
        """Find a point between start and end, so far to the left of the line."""
        (x1, y1), (x2, y2) = self.start, self.end
        length = ((x2 - x1) ** 2 + (y2 - y1) ** 2) ** 0.5
        u, v = -(y2 - y1) / length * off, (x2 - x1) / length * off
        return x1 + share * (x2 - x1) + u, y1 + share * (y2 - y1) + v


def crane(
    angle: float, *, length: float = UNTOLD[0], behind: float = UNTOLD[1],
    heel: float = UNTOLD[2], hook: bool = True, axis: bool = True, above: float = 18.0,
) -> Place:  # fmt: skip
    """Draw a boom on a superstructure, its heel pin behind the axis of rotation.

    Parameters
    ----------
    angle : float
        Boom angle [rad]
    length, behind, heel : float
        Boom length, heel pin behind the axis and above the ground: in proportion [m]
    hook : bool
        Draw the hoist line and what hangs on it
    axis : bool
        Draw the axis of rotation
    above : float
        Room above the head [pt]

    Returns
    -------
    Place
        From the heel pin to the head
    """
    scale = LONG / length
    turning, pin = FOOT + scale * behind, (FOOT, GROUND + scale * heel)
    head = (pin[0] + LONG * cos(angle), pin[1] + LONG * sin(angle))
    sketch = Sketch(max(head[0] + 80, 240), height=max(head[1], 80.0) + above)
    sketch.ground((20, GROUND), (max(head[0] + 36, 190), GROUND))

    def body(*corners: Point) -> list[Point]:
        """Corners in heights of the heel pin, so that the crane is as large as its boom asks."""
        return [(FOOT + scale * heel * x, GROUND + scale * heel * y) for x, y in corners]

    sketch.shape(body((-0.7, 0.0), (2.3, 0.0), (2.3, 0.4), (-0.7, 0.4)), fill=PAPER)
    sketch.shape(body((-0.5, 0.47), (1.2, 0.47), (1.2, 0.8), (0.35, 1.2), (-0.3, 1.2), (-0.5, 0.8)))
    if axis:
        line = (turning, 8), (turning, pin[1] + 26)
        sketch.line(*line, width=0.6, color=QUIET, dash="7 2 1 2")
    sketch.bar(pin, head, depth=6, of="L").circle(pin, radius=2.5)
    rope = head[0]
    if hook:
        low = max(GROUND + 8, min(59.0, head[1] - 24))
        sketch.line((rope, head[1]), (rope, low + 11), width=0.7)
        sketch.shape([(rope - 4, low + 11), (rope + 4, low + 11), (rope + 4, low), (rope - 4, low)])
    sketch.circle(head, radius=4)
    return Place(
        sketch=sketch, start=pin, end=head, hook=rope if hook else None, axis=turning, scale=scale
    )


def level_lengths(place: Place, *, heel: str, radius: str) -> Place:
    """Dimension, below the ground, the heel pin behind the axis (d) and the radius (R).

    Parameters
    ----------
    heel, radius : str
        Printed values; "" for the letter alone
    """
    sketch, head, axis, level = place.sketch, place.end[0], place.axis, 14.0
    pin = place.start
    sketch.line(pin, (pin[0], level - 4), width=0.4, color=QUIET)
    sketch.line((head, GROUND), (head, level - 4), width=0.4, color=QUIET)
    sketch.dimension((pin[0], level), (axis, level), letter="", of="d")
    sketch.label((pin[0] - 4, level - 3), letter="d", value=heel, anchor="end")
    narrow = head - axis < 54  # too narrow for a label between the lines
    sketch.dimension((axis, level), (head, level), letter="" if narrow else "R",
                     value="" if narrow else radius, of="R")  # fmt: skip
    if narrow:
        sketch.label((head + 5, level - 3), letter="R", value=radius, anchor="start")
    return place


def arc(sketch: Sketch, centre: Point, *, radius: float, start: float, end: float) -> Sketch:
    """Draw an arc, such as that of an angle.

    Parameters
    ----------
    centre : (float, float)
    radius : float
        [pt]
    start, end : float
        From the horizontal [rad]
    """
    steps = max(2, round((end - start) / radians(7.5)))
    turns = [start + (end - start) * k / steps for k in range(steps + 1)]
    points = [(centre[0] + radius * cos(t), centre[1] + radius * sin(t)) for t in turns]
    for one, other in pairwise(points):
        sketch.line(one, other, width=0.6, color=QUIET)
    return sketch


def angle_at(place: Place, *, angle: float, letter: str, value: str, radius: float = 36) -> Place:
    """Draw the boom angle at the heel pin, with its letter outside the arc.

    Parameters
    ----------
    angle : float
        [rad]
    radius : float
        At least; more where the angle is so flat that the label would touch the boom [pt]
    """
    x, y = place.start
    radius = max(radius, 17 / tan(angle))
    place.sketch.line((x, y), (x + radius + 14, y), width=0.5, color=QUIET)
    arc(place.sketch, (x, y), radius=radius, start=0.0, end=angle)
    turn = min(angle / 2, radians(22))
    reach, high = x + radius * cos(turn), y + radius * sin(turn)
    if place.hook and reach + 44 > place.hook:  # the hoist line would cross the label
        place.sketch.line((reach, high), (place.hook + 4, high), width=0.4, color=QUIET)
        reach = place.hook
    place.sketch.label((reach + 5, high - 3), letter=letter, value=value, anchor="start")
    return place


def telescoped(overlap: float, *, overhang: float, outer: float = 0.0) -> Place:
    """Draw a section that stands out of the mouth of the next larger one.

    Parameters
    ----------
    overlap, overhang : float
        Their proportion is kept [m]
    outer : float
        Length of the outer section, held by a wall on its left; 0 for a piece of it [m]

    Returns
    -------
    Place
        From the mouth to the head; the tail is at ``at(-overlap/overhang)``
    """
    scale = 280 / (outer + overhang) if outer else 225 / (overlap + overhang)
    head = 300.0
    mouth = head - scale * overhang
    tail = mouth - scale * overlap
    sketch = Sketch(345, height=112)
    if outer:
        sketch.line((20, 40), (20, 92), width=1.2)
        for step in range(8):
            sketch.line((20, 42 + 6.5 * step), (14, 38 + 6.5 * step), width=0.5, color=QUIET)
    sketch.bar((20, 66), (mouth, 66), depth=30)
    sketch.bar((tail, 66), (head, 66), depth=18, fill=PAPER)
    for x, y in ((tail + 3, 78), (mouth - 3, 54)):
        sketch.shape([(x - 3, y - 3), (x + 3, y - 3), (x + 3, y + 3), (x - 3, y + 3)], fill=INK)
    return Place(sketch=sketch, start=(mouth, 66), end=(head, 66), scale=scale)


def bar_of(*, supports: tuple[float, ...] = (), wall: bool = False) -> Place:
    """Draw one level section, on supports or clamped at its left end.

    Parameters
    ----------
    supports : tuple of float
        Where they are, as shares of the length [1]

    Returns
    -------
    Place
        From the left end to the head
    """
    left, right, level = 40.0, 290.0, 66.0
    sketch = Sketch(345, height=112)
    if wall:
        sketch.line((left, 44), (left, 88), width=1.2)
        for step in range(7):
            sketch.line((left, 46 + 6.5 * step), (left - 6, 42 + 6.5 * step), width=0.5,
                        color=QUIET)  # fmt: skip
    sketch.bar((left, level), (right, level), depth=13)
    for share in supports:
        x = left + share * (right - left)
        sketch.shape([(x, level - 6), (x - 6, level - 17), (x + 6, level - 17)], fill=PAPER)
        sketch.line((x - 9, level - 17), (x + 9, level - 17), width=1.0)
    return Place(sketch=sketch, start=(left, level), end=(right, level))


def box_end(*, width: float, height: float) -> Place:
    """Draw a box section from its end; plates thicker than they are.

    Parameters
    ----------
    width, height : float
        Their proportion is kept [m]

    Returns
    -------
    Place
        From the bottom left to the top right corner of the outside
    """
    tall = 110.0
    wide = tall * width / height
    x, y = 90.0, 34.0
    sketch = Sketch(x + wide + 130, height=y + tall + 14)
    for inside, fill in ((0.0, STEEL), (9.0, PAPER)):
        left, right, low, high = x + inside, x + wide - inside, y + inside, y + tall - inside
        sketch.shape([(left, low), (right, low), (right, high), (left, high)], fill=fill)
    return Place(sketch=sketch, start=(x, y), end=(x + wide, y + tall))
