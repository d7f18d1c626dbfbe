"""Bending moment along the boom, section by section: overlaps hand it over from one to the next."""

import numpy as np

from boomsim.lab.scene.scene import Look
from boomsim.lab.scene.slider_ranges import nice_step
from boomsim.lab.solve.solved_scene import Answer, forces_of
from boomsim.lab.views.kept_figures import say
from boomsim.lab.views.side_elevation import section_utilisations
from boomsim.lab.views.stylesheet import level, type_scale
from boomsim.lab.views.svg_text import Box, line, polygon, rect, text, view
from boomsim.machine.part_names import section_name
from boomsim.mechanics.boom.stations import PER_SECTION
from boomsim.mechanics.geometry import Array
from boomsim.units import display


def moments_view(answer: Answer, look: Look, box: Box) -> str:
    """Draw it.

    Returns
    -------
    str
        SVG
    """
    large = type_scale(look)
    parts = [text(box.x, box.y + 12 * large, "Bending moment in each section", "h")]
    if answer.at is None or not answer.solved:
        return view("moments", "Bending moments: no lift here.", parts)
    where, moment = _curves(answer)
    most = max(float(np.abs(moment).max()), 1.0)
    plot = _plot(box, large, len(where))
    scale = plot.height / (1.08 * most), plot.width / float(where.max())
    utilisations = section_utilisations(answer)
    order = sorted(range(len(where)), key=lambda i: -float(np.abs(moment[i]).max()))
    for i in order:
        x = plot.x + scale[1] * where[i]
        y = plot.bottom - scale[0] * np.abs(moment[i])
        ends = np.array([[x[-1], plot.bottom], [x[0], plot.bottom]])
        shape = np.concatenate([np.stack([x, y], axis=1), ends])
        more = f' data-section="{i}" fill-opacity="0.85"'
        parts.append(polygon(shape, f"edge {level(utilisations[i])}", more=more))
    parts += _axis(plot, most, look, large)
    parts += _lanes(answer, plot, box, large, scale[1], utilisations)
    label = ", ".join(
        f"{section_name(i)} {say(float(np.abs(moment[i]).max()), 'moment', look.units)}"
        for i in range(len(where))
    )
    return view("moments", f"Largest bending moment in each section: {label}.", parts)


def _curves(answer: Answer) -> tuple[Array, Array]:
    """Distance from the heel pin [m] and moment [N m] at the stations, by section."""
    at = answer.at
    assert at is not None
    tail = at.boom.layout.tail[0]
    where = tail[:, None] + at.boom.stations.position[0]
    return where, forces_of(at).moment[0, :, 0].reshape(-1, PER_SECTION)


def _plot(box: Box, large: float, sections: int) -> Box:
    below = _lane(large) * sections + 8
    return Box(
        x=box.x + 42 * large,
        y=box.y + 22 * large,
        width=box.width - 50 * large,
        height=box.height - 22 * large - below,
    )


def _lane(large: float) -> float:
    return 10.5 if large == 1.0 else 17.0


def _axis(plot: Box, most: float, look: Look, large: float) -> list[str]:
    shown = display("moment", look.units, like=most)
    step = nice_step(most / shown.factor, most=4)
    parts = [line(plot.x, plot.bottom, plot.right, plot.bottom, "ink")]
    for k in range(1, int(most / shown.factor / step) + 1):
        y = plot.bottom - plot.height * k * step * shown.factor / (1.08 * most)
        parts.append(line(plot.x - 4, y, plot.x, y, "ink"))
        parts.append(text(plot.x - 6, y + 4, f"{k * step:,g}", "s e num"))
    parts.append(text(plot.x + 4, plot.y + 6 * large, shown.symbol, "s"))
    return parts


def _lanes(
    answer: Answer, plot: Box, box: Box, large: float, scale: float, utilisations: list[float]
) -> list[str]:
    """Where each section lies, one under the other: the overlaps stand out."""
    layout, parts, high = answer.boom.layout, [], _lane(large)
    for i, (tail, front) in enumerate(zip(layout.tail[0], layout.front[0], strict=True)):
        y = plot.bottom + 5 + i * high
        x = plot.x + scale * float(tail)
        parts.append(
            rect(x, y, scale * float(front - tail), high - 3, f"edge {level(utilisations[i])}")
        )
        name = "base" if i == 0 else str(i)
        parts.append(text(plot.x - 6, y + high - 2.5, name, "xs e num"))
    return parts
