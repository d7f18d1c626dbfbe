"""The plan at the head of a chart: the crane from above, and where its boom may point."""

from collections.abc import Callable, Iterator
from math import cos, pi, sin

import numpy as np

from boomsim.figures.charts.chart_layout import CAP
from boomsim.figures.charts.chart_sizes_and_tints import TINY
from boomsim.figures.charts.page_marks import POINT, Fill, Mark, Place, Stroke, Words, box
from boomsim.figures.charts.typeface import width_of
from boomsim.figures.colours_and_lines import FAINT, INK, LOAD, PAPER, QUIET
from boomsim.figures.plan.plan_shape import ground_shapes
from boomsim.rating.setup import Setup, rear_sector

EDGE = 0.8
"""White between the crane and the edge of its plan [mm]."""

REAR = "rear"
"""Written behind the carrier."""

ONE_WAY = 0.03
"""Half of the wedge that stands for a single slew angle [rad]."""

LOOKS = {"tyre": QUIET, "chassis": PAPER, "cab": QUIET, "float": INK}
"""Fills of what stands on the ground, from below to the top."""

AXIS = 0.7
"""Radius of the dot on the axis of rotation [mm]."""

Put = Callable[[float, float], Place]
"""From carrier axes [m] to the page [mm]."""


def plan_marks(
    setup: Setup, *, left: float, top: float, width: float, height: float
) -> Iterator[Mark]:
    """Draw the crane from above as it stands, and shade the sector in which its boom may point.

    As in every plan the rear is to the right and the crane's right side is up.

    Parameters
    ----------
    left, top, width, height : float
        Of the rectangle that it fills [mm]
    """
    put = _placed(setup, left=left, top=top, width=width, height=height)
    frame = box(left, top, width, height)
    shade, edges = _sector_marks(setup, put(0.0, 0.0), frame)
    yield shade
    yield from _crane(setup, put)
    yield from edges
    yield Stroke(points=[*frame, frame[0]], width=0.4, colour=QUIET)
    base = put(0.0, 0.0)[1] + CAP * TINY * POINT / 2
    yield Words(left + width - EDGE, base, REAR, TINY, align="right")


def _placed(setup: Setup, *, left: float, top: float, width: float, height: float) -> Put:
    """Fit the crane into the rectangle, with room for a word behind it."""
    every = np.concatenate([points for some in ground_shapes(setup).values() for points in some])
    low, high = every.min(axis=0), every.max(axis=0)
    room = width - 3 * EDGE - width_of(REAR, size=TINY), height - 2 * EDGE
    scale = float(min(room / (high - low)))
    middle = (low + high) / 2
    across, down = left + EDGE + room[0] / 2, top + height / 2

    def put(x: float, y: float) -> Place:
        return across + scale * (x - float(middle[0])), down - scale * (y - float(middle[1]))

    return put


def _sector_marks(setup: Setup, axis: Place, frame: list[Place]) -> tuple[Fill, list[Stroke]]:
    """Shade all of the frame, or the wedge of it between the first and the last slew angle."""
    if setup.sector == "all around":
        return Fill(points=frame, colour=FAINT), []
    first, last = sector_of(setup)
    corners = [_slew_of(corner, axis) for corner in frame]
    between = sorted(a for a in corners if first < a < last)
    edge = [_at_edge(a, axis, frame) for a in (first, *between, last)]
    lines = Stroke(points=[edge[0], axis, edge[-1]], width=0.5, colour=INK)
    return Fill(points=[axis, *edge], colour=FAINT), [lines]


def sector_of(setup: Setup) -> tuple[float, float]:
    """First and last slew angle that a chart holds for.

    Returns
    -------
    float, float
        [rad]
    """
    if setup.sector == "all around":
        return -pi, pi
    if setup.sector == "over the rear":
        half = rear_sector(setup.support)
        return -half, half
    return float(setup.slew.min()) - ONE_WAY, float(setup.slew.max()) + ONE_WAY


def _slew_of(place: Place, axis: Place) -> float:
    """Slew angle at which a place lies from the axis of rotation [rad]."""
    return float(np.arctan2(axis[1] - place[1], place[0] - axis[0]))


def _at_edge(slew: float, axis: Place, frame: list[Place]) -> Place:
    """Where the line from the axis of rotation at a slew angle leaves the frame."""
    (left, top), (right, bottom) = frame[0], frame[2]
    out, down = cos(slew), -sin(slew)
    sideways = ((right if out > 0.0 else left) - axis[0]) / out if out else np.inf
    upright = ((bottom if down > 0.0 else top) - axis[1]) / down if down else np.inf
    far = min(sideways, upright)
    return axis[0] + far * out, axis[1] + far * down


def _crane(setup: Setup, put: Put) -> Iterator[Mark]:
    """Draw carrier, tyres, outriggers as set, the lines between them, and the axis of rotation."""
    shapes = ground_shapes(setup)
    drawn = {
        name: [[put(float(x), float(y)) for x, y in points] for points in shapes.get(name, [])]
        for name in (*LOOKS, "beam")
    }
    for beam in drawn["beam"]:
        yield Stroke(points=beam, width=1.1, colour=QUIET)
    for name, colour in LOOKS.items():
        for points in drawn[name]:
            yield Fill(points=points, colour=colour)
            yield Stroke(points=[*points, points[0]], width=0.3, colour=QUIET)
    ring = [put(x, y) for x, y in _around(setup)]
    yield Stroke(points=[*ring, ring[0]], width=0.35, colour=INK, dash=(0.8, 0.5))
    yield from _axis(put)


def _around(setup: Setup) -> list[tuple[float, float]]:
    """Supports in the order in which the tipping lines join them."""
    points = np.array(setup.support.points)
    order = np.argsort(np.arctan2(*(points - points.mean(axis=0)).T[::-1]))
    return [(float(x), float(y)) for x, y in points[order]]


def _axis(put: Put) -> Iterator[Mark]:
    x, y = put(0.0, 0.0)
    turn = np.linspace(0.0, 2.0 * pi, 24, endpoint=False)
    yield Fill(points=[(x + AXIS * cos(a), y + AXIS * sin(a)) for a in turn], colour=LOAD)
