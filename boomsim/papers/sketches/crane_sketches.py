"""What questions on stability show: a crane from the side with its tipping line, and its floats.

Distances keep their proportion along the ground; heights do not, and pictures say so.
"""

from dataclasses import dataclass
from math import cos, sin

from boomsim.figures.colours_and_lines import INK, LOAD, PAPER, QUIET, STEEL
from boomsim.papers.sketches.sketch_svg import Point, Sketch

GROUND, TOP, HOOK = 62.0, 158.0, 84.0
"""Heights of ground, head and hook on the side view [pt]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Side:
    """A crane from the side.

    Attributes
    ----------
    axis, hook : float
        Where the axis of rotation and the hook are [pt]
    scale : float
        Points in a metre [pt/m]
    """

    sketch: Sketch
    axis: float
    hook: float
    scale: float

    def x(self, out: float) -> float:
        """Find a distance ahead of the axis of rotation on the sketch [pt]."""
        return self.axis + self.scale * out

    def mass(self, out: float, up: float | None, letter: str) -> "Side":
        """Mark a centre of gravity, its letter above it; without a height it is on the boom."""
        level = _on_boom(self.x(out), foot=self.axis - 8, head=self.hook) if up is None else up
        self.sketch.circle((self.x(out), level), radius=3.2, fill=INK)
        self.sketch.label((self.x(out), level + (9 if up is None else 6)), letter=letter)
        return self

    def span(
        self, start: float, end: float, level: float, *, letter: str, value: str = ""
    ) -> "Side":
        """Draw a dimension between two distances ahead of the axis of rotation."""
        left, right = (self.x(start), level), (self.x(end), level)
        self.sketch.dimension(left, right, letter=letter, value=value)
        return self


def side_view(radius: float, *, line: float, behind: float) -> Side:
    """Draw a crane from the side, with the tipping line that its load is beyond.

    Parameters
    ----------
    radius, line : float
        Of the load and of the tipping line, from the axis of rotation [m]
    behind : float
        Farthest thing behind the axis of rotation [m]
    """
    scale = 250.0 / (radius + behind)
    axis = 42.0 + scale * behind
    tip, hook = axis + scale * line, axis + scale * radius
    sketch = Sketch(hook + 46, height=TOP + 22)
    sketch.ground((14, GROUND), (hook + 34, GROUND))
    back = min(scale * max(behind, 1.5), axis - 24)
    sketch.shape(_box(axis - back, tip - 2, GROUND + 10, GROUND + 22), fill=PAPER)
    sketch.shape(_box(axis - back, axis + 0.5 * (tip - axis), GROUND + 22, GROUND + 40))
    heel = (axis - 8, GROUND + 34)
    sketch.bar(heel, (hook, TOP), depth=8).circle(heel, radius=2.6)
    sketch.line((axis, GROUND - 50), (axis, TOP + 4), width=0.6, color=QUIET, dash="7 2 1 2")
    sketch.line((tip, GROUND - 18), (tip, GROUND), width=0.6, color=QUIET, dash="3 2")
    sketch.shape([(tip, GROUND + 10), (tip - 6, GROUND), (tip + 6, GROUND)], fill=INK)
    sketch.line((hook, TOP), (hook, HOOK + 12), width=0.7).circle((hook, TOP), radius=3.4)
    sketch.shape(_box(hook - 6, hook + 6, HOOK, HOOK + 12), fill=STEEL)
    sketch.line((hook, GROUND - 50), (hook, HOOK), width=0.5, color=QUIET, dash="3 2")
    return Side(sketch=sketch, axis=axis, hook=hook, scale=scale)


def _on_boom(x: float, *, foot: float, head: float) -> float:
    """Height of the boom at a place along the ground [pt]."""
    return GROUND + 34 + (TOP - GROUND - 34) * (x - foot) / (head - foot)


def _box(left: float, right: float, low: float, high: float) -> list[Point]:
    """Corners of a rectangle."""
    return [(left, low), (right, low), (right, high), (left, high)]


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Plan:
    """Four floats seen from above, the rear to the right of the sketch.

    Attributes
    ----------
    centre : (float, float)
        Middle of the floats [pt]
    half : (float, float)
        Half the distances between floats, lengthwise and across [pt]
    """

    sketch: Sketch
    centre: Point
    half: Point

    def at(self, rear: float, right: float) -> Point:
        """Find a point by shares of the half distances; the right-hand side is below."""
        return self.centre[0] + rear * self.half[0], self.centre[1] - right * self.half[1]

    def boom(self, slew: float, *, long: float) -> Point:
        """Draw the boom from the middle; return its head."""
        head = self.centre[0] + long * cos(slew), self.centre[1] - long * sin(slew)
        self.sketch.bar(self.centre, head, depth=6).circle(head, radius=3.4, fill=LOAD)
        return head


def plan_view(length: float, *, width: float, room: float = 0.0) -> Plan:
    """Draw floats and outrigger beams from above.

    Parameters
    ----------
    length, width : float
        Between floats, along the carrier and across it [m]
    room : float
        Free on the right and below, for a boom [pt]
    """
    scale = 62.0 / max(length, width)
    u, v = scale * length, scale * width
    centre = (96.0 + u, 44.0 + v + room)
    sketch = Sketch(centre[0] + u + (90.0 if not room else 104.0), height=centre[1] + v + 34)
    x, y = centre
    sketch.shape(_box(x - u - 40, x + u + 14, y - 13, y + 13), fill=PAPER)
    for side in (-u, u):
        sketch.bar((x + side, y - v), (x + side, y + v), depth=6)
        for across in (-v, v):
            sketch.shape(_box(x + side - 9, x + side + 9, y + across - 9, y + across + 9))
    sketch.circle(centre, radius=2.4, fill=INK)
    sketch.label((x - u - 36, y - 3), value="front", anchor="start", color=QUIET, size=8)
    return Plan(sketch=sketch, centre=centre, half=(u, v))


def floats_measured(plan: Plan, *, along: tuple[str, str], across: tuple[str, str]) -> Plan:
    """Write both distances between floats beside a plan.

    Parameters
    ----------
    along, across : (str, str)
        Letter and value
    """
    (x, y), (u, v) = plan.centre, plan.half
    plan.sketch.dimension((x - u, y + v + 18), (x + u, y + v + 18), letter=along[0], value=along[1])
    left = x - u - 50
    plan.sketch.dimension((left, y - v), (left, y + v), letter="", of=across[0])
    plan.sketch.label((left - 4, y + v + 6), letter=across[0], value=across[1], anchor="middle")
    return plan
