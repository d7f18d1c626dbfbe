"""Seen from above: tipping lines, over-rear sector, supports, and where the weight comes down."""

import numpy as np

from boomsim.lab.scene.scene import Look
from boomsim.lab.solve.setup_constants import fixed
from boomsim.lab.solve.solved_scene import Answer, Standing
from boomsim.lab.views.kept_figures import say
from boomsim.lab.views.scene_sentences import percent
from boomsim.lab.views.stylesheet import type_scale
from boomsim.lab.views.svg_text import (
    Box,
    Frame,
    Point,
    arrow,
    between,
    circle,
    line,
    polygon,
    text,
    view,
)
from boomsim.mechanics.geometry import Array


def plan_view(answer: Answer, look: Look, box: Box) -> str:
    """Draw it.

    Returns
    -------
    str
        SVG
    """
    large = type_scale(look)
    title = text(box.x, box.y + 12 * large, "From above", "h")
    standing = answer.standing
    if standing is None:
        return view("plan", "From above: no lift here.", [title])
    points = fixed(answer.setup).points
    room = Box(x=box.x, y=box.y + 16 * large, width=box.width, height=box.height - 16 * large)
    frame = _frame(points, room, large)
    utilisations = line_utilisations(answer, standing)
    parts = [title, _sector(answer, frame, room, large)]
    parts += _lines(standing, frame, utilisations, large)
    parts += _supports(answer, standing, points, frame, look, large)
    parts += _boom(answer, frame, room, look, large)
    parts += _resultant(standing, frame, large)
    return view("plan", _label(answer, standing, utilisations, look), parts)


def line_utilisations(answer: Answer, standing: Standing) -> Array:
    """Overturning over righting moment about each line at the scene's slew angle [1]."""
    load = answer.scene.load if answer.solved else 0.0
    righting = standing.balance.righting[0, :, 0, 0]
    lever = standing.balance.lever[0, :, 0, 0]
    with np.errstate(divide="ignore", invalid="ignore"):
        return np.where(righting > 0.0, np.maximum(load * lever, 0.0) / righting, np.inf)


def _frame(points: Array, room: Box, large: float) -> Frame:
    """Put the supports in the middle, at one scale for all slew angles."""
    middle = (points.max(axis=0) + points.min(axis=0)) / 2
    half = (points.max(axis=0) - points.min(axis=0)) / 2
    scale = min(
        (room.width / 2 - 46 * large) / max(float(half[0]), 1e-6),
        (room.height / 2 - 24 * large) / max(float(half[1]), 1e-6),
    )
    return Frame(
        x=room.x + room.width / 2 - float(middle[0]) * scale,
        y=room.y + room.height / 2 + float(middle[1]) * scale,
        scale=scale,
    )


def _label(answer: Answer, standing: Standing, utilisations: Array, look: Look) -> str:
    worst = int(np.argmax(utilisations))
    lifted = int(standing.reactions.lifted[:, 0].sum())
    tipped = bool(standing.reactions.tipped[0])
    state = "The crane tips." if tipped else f"{lifted} supports have lifted."
    return (
        f"From above, slewed to {say(answer.scene.slew, 'angle', look.units)}, 0 being over the "
        f"rear. Most used tipping line: number {worst + 1}, "
        f"{percent(float(utilisations[worst]))} of what holds the crane down. {state}"
    )


def _sector(answer: Answer, frame: Frame, room: Box, large: float) -> str:
    edge = fixed(answer.setup).rear
    reach = min(room.right - 4 - frame.x, 0.5 * room.height / max(np.sin(edge), 1e-6))
    turn = np.linspace(-edge, edge, 12)
    arc = np.stack([frame.x + reach * np.cos(turn), frame.y - reach * np.sin(turn)], axis=1)
    middle = np.array([[frame.x, frame.y]])
    return (
        polygon(np.concatenate([middle, arc]), "sector")
        + text(room.right - 2, frame.y - 26 * large, "over", "s e")
        + text(room.right - 2, frame.y - 13 * large, "the rear", "s e")
    )


def _lines(standing: Standing, frame: Frame, utilisations: Array, large: float) -> list[str]:
    lines, worst = standing.balance.lines, int(np.argmax(utilisations))
    found = []
    for k, (start, end) in enumerate(zip(lines.start, lines.end, strict=True)):
        a, b = frame.place(np.array([start, end]))
        ends = a.tolist(), b.tolist()
        heavy = k == worst and utilisations[k] > 0.0
        more = f' data-line="{k}" data-utilisation="{utilisations[k]:.4f}"'
        found.append(between(*ends, "heavy" if heavy else "ink", more=more))
        if heavy:
            out = np.array([lines.normal[k][0], -lines.normal[k][1]])
            share = 0.75 if abs(out[0]) > abs(out[1]) else 0.5
            far = (22 * abs(out[0]) + 12 * abs(out[1])) * large
            x, y = share * a + (1.0 - share) * b + far * out
            words = f"{percent(float(utilisations[k]))} of tipping"
            upright = abs(out[0]) > abs(out[1])
            for row, one in enumerate(words.split(" of ") if upright else [words]):
                said = f"of {one}" if row else one
                found.append(text(x, y + 4 + 13 * large * row, said, "s b m halo tips-word num"))
    return found


def _supports(
    answer: Answer, standing: Standing, points: Array, frame: Frame, look: Look, large: float
) -> list[str]:
    """Draw a disc as large as its force; an open one has lifted."""
    force, lifted = standing.reactions.force[:, 0], standing.reactions.lifted[:, 0]
    tipped, found = bool(standing.reactions.tipped[0]), []
    middle = points.mean(axis=0)
    for (x, y), push, up in zip(points, force, lifted, strict=True):
        px, py = frame.place(np.array([x, y])).tolist()
        radius = 3.0 if up or tipped else 3.0 + 9.0 * float(np.sqrt(push / standing.weight))
        kind = "paper" if up or tipped else "solid"
        found.append(circle(px, py, radius, kind, more=f' data-lifted="{int(bool(up))}"'))
        if len(points) <= 4:
            words = "lifted" if up else "" if tipped else say(float(push), "force", look.units)
            beyond = -(radius + 5) if y > middle[1] else radius + 12 * large
            found.append(text(px, py + beyond, words, "s num halo m"))
    return found


def _boom(answer: Answer, frame: Frame, room: Box, look: Look, large: float) -> list[str]:
    """Draw the boom over the carrier, as far as the picture goes."""
    slew, at = answer.scene.slew, answer.at
    machine = answer.setup.machine
    way = np.array([np.cos(slew), -np.sin(slew)])
    start = np.array([frame.x, frame.y]) + machine.heel_out * frame.scale * way
    radius = float(at.radius[0, 0]) if at is not None else machine.heel_out
    room_left = [
        (edge - origin) / w
        for edge, origin, w in (
            (room.right - 6 if way[0] > 0 else room.x + 6, frame.x, way[0]),
            (room.bottom - 6 if way[1] > 0 else room.y + 6, frame.y, way[1]),
        )
        if abs(w) > 1e-9
    ]
    end = np.array([frame.x, frame.y]) + min(radius * frame.scale, *room_left) * way
    wide = max(0.3 * machine.heel_up * frame.scale, 5.0)
    tail = np.array([frame.x, frame.y]) + answer.setup.counterweight.out * frame.scale * way
    return [
        between(_point(start), _point(end), "boom", more=f' style="stroke-width:{wide / 2:.1f}"'),
        between(_point(start), _point(tail), "boom", more=f' style="stroke-width:{wide:.1f}"'),
        circle(frame.x, frame.y, 3.0, "paper"),
        arrow(_point(end - 14 * way), _point(end), "push", head=9.0),
    ]


def _point(place: Array) -> Point:
    return float(place[0]), float(place[1])


def _resultant(standing: Standing, frame: Frame, large: float) -> list[str]:
    x, y = frame.place(np.array([standing.x, standing.y])).tolist()
    size = 7.0 * large
    tipped = bool(standing.reactions.tipped[0])
    more = f' data-part="resultant" data-x="{standing.x:.3f}" data-y="{standing.y:.3f}"'
    return [
        circle(x, y, size, "load" if tipped else "paper", more=more),
        line(x - size, y, x + size, y, "ink"),
        line(x, y - size, x, y + size, "ink"),
    ]
