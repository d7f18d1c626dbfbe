"""Marks on the side view: pad forces, centres of gravity, boom angle, radius ruler, key."""

from functools import lru_cache

import numpy as np

from boomsim.figures.side.bent_axis import Bent, spot
from boomsim.lab.scene.scene import Look
from boomsim.lab.scene.slider_ranges import nice_step
from boomsim.lab.solve.setup_constants import fixed
from boomsim.lab.solve.solved_scene import Answer, forces_of
from boomsim.lab.views.kept_figures import say
from boomsim.lab.views.svg_text import Box, Frame, arrow, circle, line, polyline, rect, text
from boomsim.mechanics.geometry import Array
from boomsim.units import display

PUSH = 34.0
"""Length of an arrow for a force as large as the strongest pad bears [px]."""

KEY = (
    ("calm", "under 50 % used"),
    ("busy", "50 to 85 %"),
    ("full", "85 to 100 %"),
    ("over", "over"),
)
"""Patterns and what they mean."""


def pads(answer: Answer, frame: Frame, shape: Bent) -> list[str]:
    """Show how the outer section pushes the inner one: up at its mouth, down at the tail.

    Returns
    -------
    list of str
        SVG
    """
    at, known = answer.at, fixed(answer.setup)
    if at is None or not answer.solved:
        return []
    found, forces = [], forces_of(at)
    for i in range(1, len(known.reach)):
        inside = float(at.boom.layout.overlap[0, i])
        front, rear = float(forces.front_pad[0, i, 0]), float(forces.rear_pad[0, i, 0])
        for along, force, outer in (
            (inside, front, known.reach[i, 1]),
            (0.0, -rear, known.reach[i - 1, 0]),
        ):
            axis, up = spot(shape, i, along)
            found.append(_pad(frame, axis, up, force / known.strongest_pad, float(outer)))
    return found


def _pad(frame: Frame, axis: Array, up: Array, share: float, reach: float) -> str:
    side = -1.0 if share >= 0.0 else 1.0
    x, y = frame.place(axis + side * reach * up).tolist()
    # The square root lets the small pushes of the outer joints be seen beside the large ones.
    far = (3.0 + PUSH * min(abs(share), 1.5) ** 0.5) * side
    return arrow((x + far * float(up[0]), y - far * float(up[1])), (x, y), "push", head=7.0)


def centres(frame: Frame, shape: Bent) -> list[str]:
    """Centres of gravity of the sections.

    Returns
    -------
    list of str
        SVG
    """
    middles = [spot(shape, i, float(far[-1]) / 2)[0] for i, far in enumerate(shape.along)]
    return [_centre(x, y) for x, y in frame.place(np.array(middles)).tolist()]


def _centre(x: float, y: float) -> str:
    """Draw a quartered circle."""
    return circle(x, y, 4.2, "paper") + (
        f'<path class="solid" d="M{x:.1f},{y:.1f} h4.2 a4.2,4.2 0 0 1 -4.2,4.2 z '
        f'M{x:.1f},{y:.1f} h-4.2 a4.2,4.2 0 0 1 4.2,-4.2 z"/>'
    )


def angle_mark(answer: Answer, frame: Frame, large: float, look: Look) -> list[str]:
    """Mark the boom angle, where there is room for it.

    Parameters
    ----------
    large : float
        Type scale [1]

    Returns
    -------
    list of str
        SVG
    """
    at, machine = answer.at, answer.setup.machine
    angle = 0.0 if at is None else float(at.state.angle[0, 0])
    if angle < 0.2:
        return []
    x, y = frame.place(np.array([machine.heel_out, machine.heel_up])).tolist()
    radius = min(machine.cylinder.attach_along * frame.scale * 1.35, 150.0 * large)
    turn = np.linspace(0.0, angle, 16)
    arc = np.stack([x + radius * np.cos(turn), y - radius * np.sin(turn)], axis=1)
    at_x, at_y = x + (radius + 6) * np.cos(angle / 2), y - (radius + 6) * np.sin(angle / 2)
    return [
        line(x, y, x + radius + 12, y, "dots"),
        polyline(arc, "thin"),
        text(at_x, at_y + 4, say(angle, "angle", look.units), "t halo num"),
    ]


def ruler(answer: Answer, frame: Frame, box: Box, look: Look, large: float) -> list[str]:
    """Radius along the ground from the axis of rotation, with the load's own on it.

    Parameters
    ----------
    large : float
        Type scale [1]

    Returns
    -------
    list of str
        SVG
    """
    up = 1.25 * answer.setup.machine.heel_up * frame.scale
    found = [_ticks(frame, box, look.units, large)]
    found.append(line(frame.x, frame.y, frame.x, frame.y - up, "axle"))
    if answer.at is not None:
        long = float(answer.at.radius[0, 0]) * frame.scale
        found.append(rect(frame.x, frame.y + 3, long, 4, "tips", more=' data-part="radius"'))
    return found


@lru_cache(maxsize=64)
def _ticks(frame: Frame, box: Box, units: str, large: float) -> str:
    shown = display("length", units)
    unit = shown.factor * frame.scale
    farthest = (box.right - frame.x) / unit
    step = nice_step(farthest, most=max(int((box.right - frame.x) / (42 * large)), 1))
    y, found = frame.y + 4.0, []
    for k in range(int(farthest / step) + 1):
        x = frame.x + k * step * unit
        found.append(line(x, y, x, y + 5, "ink"))
        if x < box.right - 84 * large:
            found.append(text(x, y + 5 + 12 * large, f"{k * step:g}", "s m num"))
    found.append(text(box.right - 2, y + 5 + 12 * large, f"{shown.symbol} radius", "s e"))
    return "".join(found)


@lru_cache(maxsize=16)
def key(box: Box, large: float) -> str:
    """Say what patterns and marks mean, in the corner that no boom reaches.

    Parameters
    ----------
    large : float
        Type scale [1]

    Returns
    -------
    str
        SVG
    """
    x, y, step = box.right - 128 * large, box.y + 12 * large, 17 * large
    found = []
    for k, (name, words) in enumerate(KEY):
        found.append(rect(x, y + k * step - 9 * large, 22 * large, 11 * large, f"edge {name}"))
        found.append(text(x + 30 * large, y + k * step, words, "s"))
    row = y + len(KEY) * step - 4 * large
    found.append(arrow((x, row), (x + 22 * large, row), "push", head=7.0))
    found.append(text(x + 30 * large, row + 4 * large, "a pad pushes", "s"))
    found.append(_centre(x + 11 * large, row + step))
    found.append(text(x + 30 * large, row + step + 4 * large, "centre of gravity", "s"))
    return "".join(found)
