"""The other ways of one length as outlines over the boom that is drawn, each with its letter."""

import numpy as np

from boomsim.figures.colours_and_lines import INK, identity, ink_on
from boomsim.figures.side.bent_axis import Bent, bent, spot
from boomsim.lab.live.ways_side_by_side import Ways
from boomsim.lab.solve.capacity_curve import condensed
from boomsim.lab.solve.setup_constants import fixed
from boomsim.lab.solve.solved_scene import Answer
from boomsim.lab.views.side_elevation import drawn_shape
from boomsim.lab.views.svg_text import Frame, circle, polygon, text, view
from boomsim.mechanics.geometry import Array
from boomsim.rating.strategies import letter

BADGE, APART = 7.5, 18.0
"""Of a letter: radius, and from one to the next along the boom [px]."""


def ghosts(found: Ways | None, now: Answer, frame: Frame, *, large: float) -> str:
    """Draw them under the same load at the same radius.

    Parameters
    ----------
    large : float
        Type scale [1]

    Returns
    -------
    str
        SVG; empty where there is nothing to compare
    """
    if found is None or len(found.ways) < 2:
        return ""
    parts, reach = [], fixed(now.setup).reach
    others = [k for k in range(len(found.ways)) if k != found.present and _stands(found, k)]
    for k in others:
        shape = _shape(found, k)
        paint = f' style="stroke:{identity(k).colour}" data-ghost="{letter(k)}"'
        inside = found.boom.layout.overlap[k].tolist()
        for body in _bare(shape, reach, inside):
            parts.append(polygon(frame.place(body), "ghost", more=paint))
    parts += _badges(now, frame, [found.present, *others], large)
    said = ", ".join(letter(k) for k in others)
    return view("ghosts", f"Outlines of the other ways of this length: {said}.", parts)


def _stands(found: Ways, way: int) -> bool:
    return bool(found.state.converged[found.rows[way], 0])


def _shape(found: Ways, way: int) -> Bent:
    state, row = found.state, found.rows[way]
    boom = condensed(found.setup.machine, found.ways[way][0])
    return bent(boom, angle=float(state.angle[row, 0]), rotation=state.rotation[row, :, 0])


def _bare(shape: Bent, reach: Array, inside: list[float]) -> list[Array]:
    """Outline of what stands out of the next outer section, section by section."""
    found = []
    for i, (far, hidden) in enumerate(zip(shape.along, inside, strict=True)):
        beyond = far > hidden + 1e-6
        start, up = spot(shape, i, hidden)
        axis = np.vstack([start[None], shape.axis[i][beyond]])
        across = np.vstack([up[None], shape.up[i][beyond]])
        top, bottom = axis + reach[i, 0] * across, axis - reach[i, 1] * across
        found.append(np.concatenate([top, bottom[::-1]]))
    return found


def _badges(now: Answer, frame: Frame, ways: list[int], large: float) -> list[str]:
    """Letters in a row past the tip, that of the boom which is drawn first."""
    axis: Array = frame.place(drawn_shape(now).axis[-1])
    along = axis[-1] - axis[-2]
    along = along / max(float(np.hypot(*along)), 1e-9)
    found = []
    for place, way in enumerate(sorted(ways)):
        x, y = (axis[-1] + (24.0 + APART * place) * large * along).tolist()
        paint, ink = identity(way).colour, ink_on(identity(way).colour)
        rim = "3" if way == ways[0] else "0"
        more = f' style="fill:{paint};stroke:{INK};stroke-width:{rim}"'
        found.append(circle(x, y, BADGE * large, "", more=more))
        found.append(text(x, y + 4 * large, letter(way), "s m b", more=f' style="fill:{ink}"'))
    return found
