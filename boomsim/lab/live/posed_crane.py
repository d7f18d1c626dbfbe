"""The crane in a pose: leaning about its tipping line, or with a boom that gives way."""

from dataclasses import dataclass
from functools import lru_cache
from math import cos, degrees, sin

import numpy as np

from boomsim.figures.side.bent_axis import Bent
from boomsim.figures.side.carrier_shape import carrier_pieces, turning_pieces
from boomsim.lab.solve.setup_constants import in_metres
from boomsim.lab.solve.solved_scene import Answer
from boomsim.lab.views.side_elevation import LOAD_DENSITY, cylinder_parts, section_parts
from boomsim.lab.views.svg_text import Box, Frame, between, circle, rect, text, view
from boomsim.mechanics.geometry import Array
from boomsim.rating.setup import Setup


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Pose:
    """How the crane is drawn.

    Attributes
    ----------
    shape : Bent
        Of the boom, while the carrier stands level
    slew : float
        Where the boom points [rad]
    about : float
        How far out it turns over, on the ground [m]
    lean : float
        Of the whole crane about that place [rad]
    torn : float
        Of what turns with the boom against the carrier [rad]
    rope : float
        From the head down to the load's upper side [m]
    parted : float
        How far a load has fallen whose rope has parted [m]
    """

    shape: Bent
    slew: float
    about: float
    lean: float = 0.0
    torn: float = 0.0
    rope: float
    parted: float = 0.0


def side_of(load: float) -> float:
    """Side of the cube that a load is drawn as [m]."""
    return float((load / LOAD_DENSITY) ** (1.0 / 3.0))


def sheave_of(pose: Pose) -> Array:
    """Where the head sheave is, lean and all, (out, up) [m]."""
    turned = _about(pose.shape.sheave, _hinge(pose), pose.torn)
    return _about(turned, np.array([pose.about, 0.0]), pose.lean)


def _hinge(pose: Pose) -> Array:
    return np.array([pose.about * 0.25, 0.0])


def _about(point: Array, centre: Array, turn: float) -> Array:
    """Turn a point clockwise, as a crane goes over under its boom."""
    x, y = (point - centre).tolist()
    turned = np.array([x * cos(turn) + y * sin(turn), y * cos(turn) - x * sin(turn)])
    return np.asarray(centre + turned)


def posed_view(
    answer: Answer,
    pose: Pose,
    frame: Frame,
    box: Box,
    *,
    uid: str,
    words: str,
    utilisations: list[float],
) -> str:
    """Draw it.

    Parameters
    ----------
    answer : Answer
        Whose load hangs
    uid : str
        Prefix of names
    words : str
        What is seen, for those who do not see it
    utilisations : list of float
        Of each section [1]

    Returns
    -------
    str
        SVG
    """
    carrier, turning = _bodies(answer.setup, round(pose.slew, 6))
    machine = answer.setup.machine
    ring = frame.place(np.array([0.0, machine.ring.up]) + _hinge(pose)).tolist()
    over = frame.place(np.array([pose.about, 0.0])).tolist()
    winch, rope = frame.place(
        np.array([[machine.hoist.winch_out, machine.hoist.winch_up], pose.shape.rope])
    ).tolist()
    boom = [
        _scaled(turning, frame),
        between(winch, rope, "thin") if not pose.parted else "",
        *cylinder_parts(answer, frame, pose.shape),
        *section_parts(answer, frame, pose.shape, utilisations),
    ]
    parts = [
        f'<clipPath id="{uid}-box"><rect x="{box.x}" y="{box.y}" width="{box.width}" '
        f'height="{box.height}"/></clipPath><g clip-path="url(#{uid}-box)">',
        rect(box.x, frame.y, box.width, 2.0, "solid"),
        f'<g data-lean="{degrees(pose.lean):.2f}" transform="rotate({degrees(pose.lean):.3f} '
        f'{over[0]:.1f} {over[1]:.1f})">{_scaled(carrier, frame)}',
        f'<g transform="rotate({degrees(pose.torn):.3f} {ring[0]:.1f} {ring[1]:.1f})">',
        *boom,
        "</g></g>",
        *_load(answer, pose, frame),
        "</g>",
    ]
    return view("posed", words, parts)


@lru_cache(maxsize=16)
def _bodies(setup: Setup, slew: float) -> tuple[str, str]:
    machine = setup.machine
    carrier = carrier_pieces(machine, support=setup.support, slew=slew)
    turning = turning_pieces(machine, counterweight=setup.counterweight)
    return (
        "".join(in_metres(piece.corners, piece.tone) for piece in carrier),
        "".join(in_metres(piece.corners, piece.tone) for piece in turning),
    )


def _scaled(body: str, frame: Frame) -> str:
    return (
        f'<g transform="translate({frame.x:.2f} {frame.y:.2f}) '
        f'scale({frame.scale:.4f} {-frame.scale:.4f})">{body}</g>'
    )


def _load(answer: Answer, pose: Pose, frame: Frame) -> list[str]:
    """It goes on hanging plumb under the head."""
    sheave, side = sheave_of(pose), side_of(answer.scene.load)
    top = max(float(sheave[1]) - pose.rope - pose.parted, side)
    hook = np.array([sheave[0], top])
    (x, y), (hx, hy) = frame.place(np.array([sheave, hook])).tolist()
    wide, small = side * frame.scale, max(0.045 * answer.setup.machine.heel_up * frame.scale, 1.6)
    found = [] if pose.parted else [between((x, y), (hx, hy), "ink")]
    if wide > 0.5:
        found.append(rect(hx - wide / 2, hy, wide, wide, "load", more=' data-part="load"'))
    return [*found, circle(x, y, small, "paper")]


def over_mark(pose: Pose, frame: Frame) -> list[str]:
    """Mark the place about which the crane turns over."""
    x, y = frame.place(np.array([pose.about, 0.0])).tolist()
    return [
        f'<path class="load" d="M{x:.1f},{y + 3:.1f} l-6,11 h12 z"/>',
        text(x, y + 27, "tipping line", "s m load-word halo"),
    ]
