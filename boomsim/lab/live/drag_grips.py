"""What can be taken hold of in the picture, where it is, and what it does when it is moved.

A place comes in as metres in the luffing plane, (out, up) from the axis of rotation on the ground;
the page's script turns a pointer into that with the frame of the picture. No physics here: a grip
only chooses the next scene.
"""

from dataclasses import dataclass, replace
from math import atan2, cos, degrees, hypot
from typing import Any

import numpy as np

from boomsim.figures.side.bent_axis import Bent, spot
from boomsim.lab.live.sliding_sections import ended, next_end, next_length, slides, with_length
from boomsim.lab.scene.scene import Look, Scene, machine_of
from boomsim.lab.scene.scene_changes import hold_radius
from boomsim.lab.solve.setup_constants import fixed
from boomsim.lab.solve.solved_scene import Answer
from boomsim.lab.views.kept_figures import say
from boomsim.lab.views.side_elevation import drawn_shape, hung
from boomsim.lab.views.svg_text import Frame
from boomsim.lab.widgets.control_map import holding, ranges
from boomsim.machine.part_names import section_name
from boomsim.units import show_rated

KEEPS = ("length", "radius", "angle")
"""What stays while something is dragged."""

FULL = 130.0
"""Dragging the load up by so much makes it heavier by the rated load [px]."""

APART = 27.0
"""So far apart are two grips at least [px]."""

LARGE = 10
"""A large step of the keyboard is so many small ones [1]."""

STEP_OUT = 0.01
"""A small step of a section where nothing locks, of its stroke [1]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Hold:
    """Something taken hold of, and where it is taken to.

    Attributes
    ----------
    grip : str
        "tip", "load" or "section 1" …
    keep : str
        One of `KEEPS`
    """

    grip: str
    keep: str


def keeps_of(scene: Scene) -> tuple[str, ...]:
    """What can be kept: the length only where sections can slide against each other."""
    return KEEPS if slides(scene) else KEEPS[1:]


def grips(now: Answer, look: Look, frame: Frame, *, keep: str) -> list[dict[str, Any]]:
    """Give every grip, tip first.

    Parameters
    ----------
    frame : Frame
        Of the picture
    keep : str
        One of `KEEPS`

    Returns
    -------
    list of dict
        Each with `name`, `words` (what it is, and what moving it does), `says` (where it stands),
        `place` [px], and `value` between `least` and `most`: degrees, percent or kilograms; the
        load also with what a `pixel` is worth [kg]
    """
    shape = drawn_shape(now)
    rows = [_tip(now, look, shape, keep), *_ends(now, look, shape, keep), _load(now, look, shape)]
    placed: list[tuple[float, float]] = []
    for row in rows:
        x, y = frame.place(np.array(row.pop("at"))).tolist()
        aside = row.pop("aside", (0.0, 1.0))
        while any(hypot(x - other, y - above) < APART for other, above in placed):
            x, y = x + 0.5 * APART * aside[0], y + 0.5 * APART * aside[1]
        if "foot" in row:
            row["foot"] = [round(one, 1) for one in frame.place(np.array(row["foot"])).tolist()]
        placed.append((x, y))
        row["place"] = [round(x, 1), round(y, 1)]
    return rows


TIP_WORDS = {
    "length": "Boom tip: up and down luffs the boom",
    "radius": "Boom tip: up and down makes the boom longer and shorter at this radius",
    "angle": "Boom tip: makes the boom longer and shorter at this angle",
}


def _tip(now: Answer, look: Look, shape: Bent, keep: str) -> dict[str, Any]:
    length = float(now.boom.layout.boom_length[0])
    says = f"{say(length, 'boom_length', look.units)} long at {say(now.angle, 'angle', look.units)}"
    where = [float(one) for one in shape.sheave]
    limits = now.setup.machine.boom
    return {
        "name": "tip",
        "words": TIP_WORDS[keep],
        "says": says,
        "at": where,
        "value": round(degrees(now.angle), 1),
        "least": round(degrees(limits.least_angle), 1),
        "most": round(degrees(limits.greatest_angle), 1),
    }


def _ends(now: Answer, look: Look, shape: Bent, keep: str) -> list[dict[str, Any]]:
    """Front ends of the sections that move; the last one's is at the tip."""
    reach, found = fixed(now.setup).reach, []
    what = "slides it against the next" if keep == "length" else "moves it out and in"
    for k in range(1, len(now.scene.extension)):
        axis, up = spot(shape, k, float(shape.along[k, -1]))
        # On the lower side: the sections' names stand on the upper one.
        where = axis - (1.2 * reach[k - 1, 1] + 0.1 * now.setup.machine.heel_up) * up
        found.append(
            {
                "name": f"section {k}",
                "words": f"End of {section_name(k)}: {what}",
                "says": f"{100 * now.scene.extension[k - 1]:.3g} % out",
                "at": [float(one) for one in where],
                "foot": [float(one) for one in axis],
                "mark": str(k),
                "aside": (-float(up[0]), float(up[1])),
                "value": round(100 * now.scene.extension[k - 1], 1),
                "least": 0,
                "most": 100,
            }
        )
    return found


def _load(now: Answer, look: Look, shape: Bent) -> dict[str, Any]:
    load, (bottom, side) = now.scene.load, hung(now, shape)
    says = say(load, "mass", look.units)
    if now.at is not None:
        says += f" at {say(float(now.at.radius[0, 0]), 'length', look.units)}"
    if now.capacity > 0.0:
        says += f", rated {show_rated(now.capacity, look.units)}"
    whole = now.capacity if now.capacity > 0.0 else max(load, 1.0)
    return {
        "name": "load",
        "words": "Load: sideways moves it out and in, up makes it heavier, down lighter",
        "says": says,
        "at": [float(shape.sheave[0]), bottom + max(side, 0.1 * now.setup.machine.heel_up) / 2],
        "value": load,
        "least": 0,
        "most": max(load, whole),
        "pixel": whole / FULL,
    }


def dragged(
    scene: Scene, hold: Hold, place: tuple[float, float], *, look: Look, now: Answer
) -> Scene:
    """Take hold of something and bring it to a place.

    Parameters
    ----------
    place : tuple of float
        Where the pointer is, (out, up) [m]
    look : Look
        Places are rounded to the sliders' steps, in the units shown
    now : Answer
        To `scene`
    """
    machine = machine_of(scene.machine)
    out, up = place[0] - machine.heel_out, place[1] - machine.heel_up
    if hold.grip == "load":
        return _at_radius(scene, place[0], look)
    shape = drawn_shape(now)
    sheave = shape.sheave - (machine.heel_out, machine.heel_up)
    if hold.grip == "tip":
        far = hypot(float(sheave[0]), float(sheave[1]))
        if hold.keep == "length":
            return _luffed(scene, atan2(up, out), far, look)
        length, angle = float(now.boom.layout.boom_length[0]), atan2(*reversed(sheave.tolist()))
        if hold.keep == "radius":
            along = hypot(float(sheave[0]), up)
            return with_length(holding(scene, "radius", now=now), length=length + along - far)
        along = out * cos(angle) + up * float(np.sin(angle))
        return with_length(holding(scene, "angle", now=now), length=length + along - far)
    section = int(hold.grip.split()[1])
    axis, _ = spot(shape, section, float(shape.along[section, -1]))
    ahead = (axis - (machine.heel_out, machine.heel_up)).tolist()
    turn = atan2(ahead[1], ahead[0])
    beyond = out * cos(turn) + up * float(np.sin(turn)) - hypot(*ahead)
    front = float(now.boom.layout.front[0, section]) + beyond
    return ended(scene, section=section, front=front, keeps_length=hold.keep == "length")


def weighed(scene: Scene, load: float, *, look: Look) -> Scene:
    """Hang another load, rounded to the slider's step.

    Parameters
    ----------
    load : float
        [kg]
    """
    span = ranges(scene, look)["load"]
    return replace(scene, load=span.to_si(span.to_shown(max(load, 0.0))))


def nudged(scene: Scene, hold: Hold, key: str, *, large: bool, look: Look, now: Answer) -> Scene:
    """Move a grip by a step of the keyboard.

    Parameters
    ----------
    key : str
        "up", "down", "left" or "right"
    large : bool
        A step ten times as large, where nothing locks
    """
    way = 1 if key in ("up", "right") else -1
    many = LARGE if large else 1
    span = ranges(scene, look)
    if hold.grip == "load" and key in ("up", "down"):
        step = span["load"].step * span["load"].shown.factor
        return weighed(scene, scene.load + way * many * step, look=look)
    step = span["radius"].step * span["radius"].shown.factor
    if hold.grip == "load" or (hold.grip == "tip" and hold.keep == "length"):
        farther = 1 if key in (("right",) if hold.grip == "load" else ("right", "down")) else -1
        radius = now.radius if np.isfinite(now.radius) else scene.radius
        return _at_radius(scene, radius + farther * many * step, look)
    if hold.grip == "tip":
        return next_length(holding(scene, hold.keep, now=now), way=way, step=many * step)
    return next_end(
        scene,
        section=int(hold.grip.split()[1]),
        way=way,
        share=many * STEP_OUT,
        keeps_length=hold.keep == "length",
    )


def _at_radius(scene: Scene, radius: float, look: Look) -> Scene:
    span = ranges(scene, look)["radius"]
    return hold_radius(scene, radius=span.to_si(span.to_shown(radius)))


def _luffed(scene: Scene, angle: float, far: float, look: Look) -> Scene:
    """Hold the radius at which the tip stands in that direction from the heel pin."""
    machine = machine_of(scene.machine)
    turn = min(max(angle, machine.boom.least_angle), machine.boom.greatest_angle)
    return _at_radius(scene, machine.heel_out + far * cos(turn), look)
