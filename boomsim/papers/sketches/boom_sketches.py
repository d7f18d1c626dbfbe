"""What many questions show: a boom on its crane, a section in another one, a box from its end.

Nothing is to scale but the angles; the numbers stand beside the lines.
"""

from dataclasses import dataclass
from itertools import pairwise
from math import cos, radians, sin, tan

from boomsim.papers.sketches.sketch_svg import INK, QUIET, STEEL, Point, Sketch

HEEL, AXIS, GROUND, LONG = (60.0, 74.0), 88.0, 38.0, 148.0
"""Heel pin, axis of rotation, ground and boom length of :func:`crane` [pt]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Place:
    """A sketch under construction, and where things are on it.

    Attributes
    ----------
    start, end : (float, float)
        Of the boom, or of what stands out of a mouth [pt]
    hook : float or None
        Where the hoist line is, if there is one [pt]
    """

    sketch: Sketch
    start: Point
    end: Point
    hook: float | None = None

    def at(self, share: float, *, off: float = 0.0) -> Point:
        """Find a point between start and end, so far to the left of the line."""
        (x1, y1), (x2, y2) = self.start, self.end
        length = ((x2 - x1) ** 2 + (y2 - y1) ** 2) ** 0.5
        u, v = -(y2 - y1) / length * off, (x2 - x1) / length * off
        return x1 + share * (x2 - x1) + u, y1 + share * (y2 - y1) + v


def crane(angle: float, *, hook: bool = True, axis: bool = True, above: float = 18.0) -> Place:
    """Draw a boom on a superstructure, its heel pin behind the axis of rotation.

    Parameters
    ----------
    angle : float
        Boom angle [rad]
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
    (x, y), (u, v) = HEEL, (cos(angle), sin(angle))
    head = (x + LONG * u, y + LONG * v)
    sketch = Sketch(max(head[0] + 80, 240), height=head[1] + above)
    sketch.ground((20, GROUND), (max(head[0] + 36, 190), GROUND))
    sketch.shape([(36, GROUND), (140, GROUND), (140, 52), (36, 52)], fill="#fff")
    sketch.shape([(42, 55), (102, 55), (102, 66), (72, 82), (50, 82), (42, 66)])
    if axis:
        sketch.line((AXIS, 8), (AXIS, 100), width=0.6, color=QUIET, dash="7 2 1 2")
    sketch.bar(HEEL, head, depth=8).circle(HEEL, radius=3)
    if hook:
        sketch.line((head[0] + 4, head[1]), (head[0] + 4, 70), width=0.7)
        sketch.shape([(head[0], 70), (head[0] + 8, 70), (head[0] + 8, 59), (head[0], 59)])
    sketch.circle(head, radius=4)
    return Place(sketch=sketch, start=HEEL, end=head, hook=head[0] + 4 if hook else None)


def level_lengths(place: Place, *, heel: str, radius: str) -> Place:
    """Dimension, below the ground, the heel pin behind the axis (d) and the radius (R).

    Parameters
    ----------
    heel, radius : str
        Printed values; "" for the letter alone
    """
    sketch, hook, level = place.sketch, place.end[0] + 4, 14.0
    sketch.line(HEEL, (HEEL[0], level - 4), width=0.4, color=QUIET)
    sketch.line((hook, 59), (hook, level - 4), width=0.4, color=QUIET)
    sketch.dimension((HEEL[0], level), (AXIS, level), letter="")
    sketch.label((HEEL[0] - 4, level - 3), letter="d", value=heel, anchor="end")
    narrow = hook - AXIS < 54  # too narrow for a label between the lines
    sketch.dimension((AXIS, level), (hook, level), letter="" if narrow else "R",
                     value="" if narrow else radius)  # fmt: skip
    if narrow:
        sketch.label((hook + 5, level - 3), letter="R", value=radius, anchor="start")
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


def telescoped(overlap: float, *, overhang: float, wall: bool = False) -> Place:
    """Draw a section that stands out of the mouth of the next larger one.

    Parameters
    ----------
    overlap, overhang : float
        Their proportion is kept [m]
    wall : bool
        Hold the outer section by a wall on its left

    Returns
    -------
    Place
        From the mouth to the head; the tail is at ``at(-overlap/overhang)``
    """
    scale = 225 / (overlap + overhang)
    tail, head = 75.0, 300.0
    mouth = tail + scale * overlap
    sketch = Sketch(345, height=112)
    if wall:
        sketch.line((20, 40), (20, 92), width=1.2)
        for step in range(8):
            sketch.line((20, 42 + 6.5 * step), (14, 38 + 6.5 * step), width=0.5, color=QUIET)
    sketch.bar((20, 66), (mouth, 66), depth=30)
    sketch.bar((tail, 66), (head, 66), depth=18, fill="#fff")
    for x, y in ((tail + 3, 78), (mouth - 3, 54)):
        sketch.shape([(x - 3, y - 3), (x + 3, y - 3), (x + 3, y + 3), (x - 3, y + 3)], fill=INK)
    return Place(sketch=sketch, start=(mouth, 66), end=(head, 66))


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
        sketch.shape([(x, level - 6), (x - 6, level - 17), (x + 6, level - 17)], fill="#fff")
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
    for inside, fill in ((0.0, STEEL), (9.0, "#fff")):
        left, right, low, high = x + inside, x + wide - inside, y + inside, y + tall - inside
        sketch.shape([(left, low), (right, low), (right, high), (left, high)], fill=fill)
    return Place(sketch=sketch, start=(x, y), end=(x + wide, y + tall))
