"""Side view to scale: every section, how much it is used, how it bends, what the pads push."""

from functools import lru_cache

import numpy as np

from boomsim.figures.side.bent_axis import Bent, bent, outlines, spot
from boomsim.lab.scene.scene import Look
from boomsim.lab.solve.setup_constants import fixed
from boomsim.lab.solve.solved_scene import Answer
from boomsim.lab.views.kept_figures import say
from boomsim.lab.views.label_places import spread
from boomsim.lab.views.scene_sentences import percent
from boomsim.lab.views.side_elevation_marks import angle_mark, centres, key, pads, ruler
from boomsim.lab.views.stylesheet import level, type_scale
from boomsim.lab.views.svg_text import (
    Box,
    Frame,
    between,
    circle,
    polygon,
    polyline,
    rect,
    text,
    view,
)
from boomsim.machine.part_names import section_name
from boomsim.mechanics.geometry import Array

LOAD_DENSITY = 2400.0
"""A load is drawn as a cube of concrete [kg/m3]."""

RULER = 30.0
"""Height of the radius ruler under the ground [px]."""


def section_utilisations(answer: Answer) -> list[float]:
    """Largest utilisation of any limit that belongs to a section, base section first.

    Returns
    -------
    list of float
        Zero where there is no lift [1]
    """
    at, found = answer.at, [0.0] * len(answer.setup.machine.boom.sections)
    if at is not None and answer.solved:
        for limit, utilisation in zip(at.limits, at.utilisation[:, 0, 0].tolist(), strict=True):
            if limit.section is not None:
                found[limit.section] = max(found[limit.section], utilisation)
    return found


def side_view(
    answer: Answer,
    look: Look,
    box: Box,
    *,
    uid: str,
    small: bool = False,
    keyed: bool = True,
    frame: Frame | None = None,
) -> str:
    """Draw it.

    Parameters
    ----------
    uid : str
        Prefix of names
    small : bool
        Without ruler, forces and words, for pictures side by side
    keyed : bool
        With a key to the patterns, where the box has room for it
    frame : Frame, optional
        Default: all of the boom at the largest scale; see :func:`frame_of`

    Returns
    -------
    str
        SVG
    """
    large, utilisations = type_scale(look), section_utilisations(answer)
    frame = frame or frame_of(answer, box, small=small, large=large)
    shape = drawn_shape(answer)
    parts = [
        f'<clipPath id="{uid}-clip"><rect x="{box.x}" y="{box.y}" width="{box.width}" '
        f'height="{box.height}"/></clipPath><g clip-path="url(#{uid}-clip)">',
        rect(box.x, frame.y, box.width, 2.0, "solid"),
        _crane(answer, frame),
        *_hoist(answer, frame, shape, look, small),
        *cylinder_parts(answer, frame, shape),
        *section_parts(answer, frame, shape, utilisations),
    ]
    if small:
        return view("side", _label(answer, look, utilisations), [*parts, "</g>"])
    parts += _bends(answer, frame, look)
    parts += pads(answer, frame, shape)
    parts += centres(frame, shape)
    parts += [*angle_mark(answer, frame, large, look), "</g>"]
    parts += _names(answer, frame, shape, utilisations, box, large)
    parts += ruler(answer, frame, box, look, large)
    if keyed and not look.projector:
        parts.append(key(box, large))
    return view("side", _label(answer, look, utilisations), parts)


def _label(answer: Answer, look: Look, utilisations: list[float]) -> str:
    if answer.lies:
        return "Side view: the crane would lie on its side there. Drawn: as low as it stands."
    if answer.at is None:
        return "Side view: the boom cannot be there."
    said = ", ".join(
        f"{section_name(i)} {percent(utilisation)}" for i, utilisation in enumerate(utilisations)
    )
    units, at = look.units, answer.at
    length = float(at.boom.layout.boom_length[0])
    return (
        f"Side view to scale. Boom {say(length, 'boom_length', units)} long at "
        f"{say(float(at.state.angle[0, 0]), 'angle', units)}, load at "
        f"{say(float(at.radius[0, 0]), 'length', units)}. Used: {said}."
    )


def frame_of(answer: Answer, box: Box, *, small: bool, large: float) -> Frame:
    """One scale for all angles and loads of a boom length, so that nothing but the boom moves.

    Parameters
    ----------
    small : bool
        Without room for words
    large : float
        Type scale [1]
    """
    machine = answer.setup.machine
    length, size = float(answer.boom.layout.boom_length[0]), machine.heel_up
    back, ahead = fixed(answer.setup).back, machine.heel_out + length + 0.5 * size
    high = machine.heel_up + length + 0.3 * size
    below = 4.0 if small else RULER * large
    left, right, top = (4.0, 4.0, 4.0) if small else (14.0, 54.0 * large, 16.0 * large)
    scale = min((box.width - left - right) / (back + ahead), (box.height - below - top) / high)
    first = max(left + back * scale, 0.0 if small else 128.0 * large)
    return Frame(x=box.x + first, y=box.bottom - below, scale=scale)


@lru_cache(maxsize=4)
def drawn_shape(answer: Answer) -> Bent:
    """Bend the boom as it is; straight, and as near as it gets, where it cannot be or stand."""
    at = answer.at
    rotation = None if at is None else at.state.rotation[0, :, 0]
    return bent(answer.boom, angle=answer.angle, rotation=rotation)


def _crane(answer: Answer, frame: Frame) -> str:
    return (
        f'<g transform="translate({frame.x:.2f} {frame.y:.2f}) '
        f'scale({frame.scale:.4f} {-frame.scale:.4f})">{fixed(answer.setup).crane}</g>'
    )


def cylinder_parts(answer: Answer, frame: Frame, shape: Bent) -> list[str]:
    """Draw the luffing cylinder.

    Returns
    -------
    list of str
        SVG
    """
    machine = answer.setup.machine
    cylinder, arm = machine.cylinder, 0.06 * machine.cylinder.attach_along
    axis, up = spot(shape, 0, cylinder.attach_along)
    lug = axis - cylinder.attach_below * up
    root = [spot(shape, 0, cylinder.attach_along + side * arm)[0] for side in (-1.0, 1.0)]
    placed = frame.place(np.array([[cylinder.base_out, cylinder.base_up], lug, *root, lug]))
    foot, top = placed[0].tolist(), placed[1].tolist()
    middle = (0.4 * placed[0] + 0.6 * placed[1]).tolist()
    thick = max(0.09 * machine.heel_up * frame.scale, 2.0)
    return [
        polygon(placed[2:], "dark"),
        between(foot, top, "ink", more=f' style="stroke-width:{0.5 * thick:.1f}"'),
        between(foot, middle, "ink", more=f' style="stroke-width:{thick:.1f}"'),
    ]


def section_parts(
    answer: Answer, frame: Frame, shape: Bent, utilisations: list[float]
) -> list[str]:
    """Draw the sections, innermost first, so that each outer one covers what lies inside it.

    Parameters
    ----------
    utilisations : list of float
        Of each section [1]

    Returns
    -------
    list of str
        SVG
    """
    reach = fixed(answer.setup).reach
    bodies = frame.place(outlines(shape, reach))
    foot = shape.axis[-1, -1] - reach[-1, 1] * shape.up[-1, -1]
    top = shape.axis[-1, -1] + reach[-1, 0] * shape.up[-1, -1]
    head = frame.place(np.array([top, shape.rope, shape.sheave, foot]))
    found, hidden = [polygon(head, "dark")], []
    for i in reversed(range(len(utilisations))):
        more = f' data-section="{i}" data-utilisation="{utilisations[i]:.4f}"'
        found.append(polygon(bodies[i], f"edge {level(utilisations[i])}", more=more))
        if i:
            hidden.append(polygon(bodies[i], "hidden"))
    return [*found, *hidden, *_mouths(bodies)]


def _mouths(bodies: Array) -> list[str]:
    """Draw the collar at each outer section's front."""
    half = bodies.shape[1] // 2
    over = 0.075 * (bodies[:-1, half - 1] - bodies[:-1, half])
    ends = np.concatenate([bodies[:-1, half - 1] + over, bodies[:-1, half] - over], axis=1)
    return [between(end[:2], end[2:], "collar") for end in ends.tolist()]


def hung(answer: Answer, shape: Bent) -> tuple[float, float]:
    """Where the load hangs, and how large it is drawn.

    Returns
    -------
    float, float
        Its underside over the ground, its side; no size where it is not lifted [m]
    """
    side = (answer.scene.load / LOAD_DENSITY) ** (1.0 / 3.0) if answer.solved else 0.0
    room = max(float(shape.sheave[1]) - side - 0.3, 0.0)
    return min(0.25 * answer.setup.machine.heel_up, room), side


def _hoist(answer: Answer, frame: Frame, shape: Bent, look: Look, small: bool) -> list[str]:
    machine, load = answer.setup.machine, answer.scene.load
    bottom, side = hung(answer, shape)
    winch, rope, sheave, hook = frame.place(
        np.array(
            [
                [machine.hoist.winch_out, machine.hoist.winch_up],
                shape.rope,
                shape.sheave,
                [shape.sheave[0], bottom + side],
            ]
        )
    ).tolist()
    wide, block = side * frame.scale, max(0.05 * machine.heel_up * frame.scale, 2.0)
    found = [
        between(winch, rope, "thin"),
        between(sheave, hook, "ink"),
        rect(hook[0] - block, hook[1] - 2 * block, 2 * block, 2 * block, "dark"),
    ]
    if wide > 0.5:
        more = ' data-part="load"'
        found.append(rect(hook[0] - wide / 2, hook[1], wide, wide, "load", more=more))
    radius = max(0.045 * machine.heel_up * frame.scale, 1.6)
    found.append(circle(sheave[0], sheave[1], radius, "paper"))
    if not small and wide > 0.5:
        x, y = hook[0] + wide / 2 + 6, hook[1] + wide / 2 + 5
        found.append(text(x, y, say(load, "mass", look.units), "t load-word halo num"))
    return found


def _bends(answer: Answer, frame: Frame, look: Look) -> list[str]:
    """Where the axis would be if nothing bent, and the bending many times over."""
    at, machine = answer.at, answer.setup.machine
    if at is None:
        return []
    angle = float(at.state.angle[0, 0])
    heel = np.array([machine.heel_out, machine.heel_up])
    far = float(answer.boom.layout.front[0, -1])
    straight = np.stack([heel, heel + far * np.array([np.cos(angle), np.sin(angle)])])
    found = [polyline(frame.place(straight), "dots")]
    if look.exaggeration > 1.0:
        rotation = at.state.rotation[0, :, 0]
        shape = bent(answer.boom, angle=angle, rotation=rotation, exaggeration=look.exaggeration)
        curve = frame.place(shape.axis.reshape(-1, 2))
        found.append(polyline(curve, "bend", more=' data-part="bend"'))
        found.append(_bend_words(curve, look))
    return found


def _bend_words(curve: Array, look: Look) -> str:
    (x, y), (x0, y0) = curve[-1].tolist(), curve[-7].tolist()
    length = max(((x - x0) ** 2 + (y - y0) ** 2) ** 0.5, 1e-9)
    along, down = (x - x0) / length, (y - y0) / length
    kind = "s halo bend-word" + (" e" if along < -0.2 else "")
    return text(x + 14 * along, y + 14 * down + 4, f"bend × {look.exaggeration:g}", kind)


def _names(
    answer: Answer, frame: Frame, shape: Bent, utilisations: list[float], box: Box, large: float
) -> list[str]:
    reach, inside = fixed(answer.setup).reach, answer.boom.layout.overlap[0]
    spots = [
        spot(shape, i, 0.5 * float(inside[i] + shape.along[i, -1]))
        for i in range(len(utilisations))
    ]
    edges = frame.place(np.array([axis + reach[i, 0] * up for i, (axis, up) in enumerate(spots)]))
    wanted = [
        (x + 13.0 * float(up[0]) - 2.0, y - 13.0 * float(up[1]))
        for (x, y), (_, up) in zip(edges.tolist(), spots, strict=True)
    ]
    words = [_named(i, utilisation, answer.solved) for i, utilisation in enumerate(utilisations)]
    places = spread(wanted, [6.4 * large * len(w) for w in words], high=15.0 * large, box=box)
    found = []
    for (x, y), edge, said, utilisation in zip(
        places, edges.tolist(), words, utilisations, strict=True
    ):
        found.append(between((x + 2, y - 4 * large), edge, "thin"))
        found.append(text(x, y, said, "t e halo num b" if utilisation > 0.85 else "t e halo num"))
    return found


def _named(section: int, utilisation: float, solved: bool) -> str:
    name = "base" if section == 0 else f"section {section}"
    return f"{name} {percent(utilisation)}" if solved else name
