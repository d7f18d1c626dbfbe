"""The boom as it is drawn: axis and outline of every section, in the luffing plane.

All points are (out, up) in superstructure axes [m]. Geometry only: rotations come from the solved
state, and this module adds them up to places.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.machine.model import Machine
from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.boom.picked_configurations import pick
from boomsim.mechanics.boom.stations import NODES, SEGMENTS
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.sections.section_properties import properties
from boomsim.rating.lift_response import Response

FINE = 4
"""Pieces that each third of a segment's rotation is drawn in."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class BoomShape:
    """Points to draw a boom by, (out, up) in superstructure axes.

    Attributes
    ----------
    axis : tuple of ndarray, shape (points, 2)
        Axis of each section from its tail to its front [m]
    along : tuple of ndarray, shape (points,)
        Distance of the same points from the section's tail [m]
    inside : tuple of float
        How far from its tail each section lies in the outer one; 0 for the base section [m]
    reach : tuple of (float, float)
        Axis to top and to bottom of each section [m]
    heel, lug, sheave, rope : ndarray, shape (2,)
        Heel pin; luffing cylinder's upper pin; head sheave centre; lead line at the head [m]
    straight : ndarray, shape (2, 2)
        Axis if nothing bent: heel pin, and the last front [m]
    load : float
        Gross load that hangs from it [kg]
    exaggeration : float
        What the deflection is multiplied by [1]
    """

    machine: Machine
    axis: tuple[Array, ...]
    along: tuple[Array, ...]
    inside: tuple[float, ...]
    reach: tuple[tuple[float, float], ...]
    heel: Array
    lug: Array
    sheave: Array
    rope: Array
    straight: Array
    load: float
    exaggeration: float


def bent_boom(
    response: Response, *, configuration: int = 0, cell: int = 0, exaggeration: float = 1.0
) -> BoomShape:
    """Shape of a boom under load.

    Parameters
    ----------
    configuration, cell : int
        Which of its states
    exaggeration : float
        Multiplies the deflection; the boom angle stays as solved [1]

    Raises
    ------
    ValueError
        If that state found no equilibrium
    """
    state = response.state
    if not bool(state.converged[configuration, cell]):
        raise ValueError(
            f"State {configuration}, {cell} (configuration, cell) found no equilibrium, so it has "
            "no shape to draw. Choose a smaller load or a radius within reach."
        )
    return _shape(
        pick(response.boom, np.array([configuration])),
        angle=float(state.angle[configuration, cell]),
        rotation=state.rotation[configuration, :, cell],
        load=float(state.load[configuration, cell]),
        exaggeration=exaggeration,
    )


def straight_boom(
    machine: Machine, *, extension: Array, angle: float, boom: Condensed | None = None
) -> BoomShape:
    """Shape of a boom that nothing bends.

    Parameters
    ----------
    extension : array_like, shape (moving sections,)
        Fraction of each stroke [1]
    angle : float
        Boom angle [rad]
    boom : Condensed, optional
        The same configuration alone, where it is condensed already
    """
    if boom is None:
        boom = condense(machine, extension=np.atleast_2d(np.asarray(extension, dtype=float)))
    return _shape(boom, angle=angle, rotation=None, load=0.0, exaggeration=1.0)


def _shape(
    boom: Condensed,
    *,
    angle: float,
    rotation: Array | None,
    load: float,
    exaggeration: float,
) -> BoomShape:
    machine = boom.machine
    position = boom.stations.position[0].reshape(-1, SEGMENTS, NODES)
    none = np.zeros_like(position)
    inner_tail = np.append(np.diff(boom.layout.tail[0]), np.inf)
    straight = _Chain.of(machine, position, none, inner_tail)
    turned = none if rotation is None else rotation.reshape(position.shape)
    bent = _Chain.of(machine, position, turned, inner_tail)

    def placed(unbent: Array, now: Array) -> Array:
        return _to_world(machine, angle, unbent + exaggeration * (now - unbent))

    cylinder, nought = machine.cylinder, np.zeros(2)
    shapes = [properties(s.profile) for s in machine.boom.sections]
    return BoomShape(
        machine=machine,
        axis=tuple(placed(f, b) for f, b in zip(straight.axis, bent.axis, strict=True)),
        along=straight.along,
        inside=tuple(float(x) for x in boom.layout.overlap[0]),
        reach=tuple((p.top, p.bottom) for p in shapes),
        heel=_to_world(machine, angle, nought),
        lug=_to_world(machine, angle, np.array([cylinder.attach_along, -cylinder.attach_below])),
        sheave=placed(straight.sheave, bent.sheave),
        rope=placed(straight.rope, bent.rope),
        straight=_to_world(machine, angle, np.stack([nought, straight.axis[-1][-1]])),
        load=load,
        exaggeration=exaggeration,
    )


def _to_world(machine: Machine, angle: float, points: Array) -> Array:
    """From axes of the base section to (out, up) of the superstructure."""
    cos, sin = np.cos(angle), np.sin(angle)
    turned = points @ np.array([[cos, sin], [-sin, cos]])
    return np.asarray(turned + np.array([machine.heel_out, machine.heel_up]))


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class _Chain:
    """Sections joined tail to mouth, in axes of the base section."""

    axis: tuple[Array, ...]
    along: tuple[Array, ...]
    sheave: Array
    rope: Array

    @classmethod
    def of(cls, machine: Machine, position: Array, turned: Array, inner_tail: Array) -> "_Chain":
        start, axis, along = np.zeros(2), [], []
        for where, turn, tail in zip(position, turned, inner_tail, strict=True):
            far, points = _integrate(where, turn)
            axis.append(start + points)
            along.append(far)
            start = start + [np.interp(tail, far, points[:, k]) for k in (0, 1)]
        head, tip = machine.boom.head, float(turned[-1, -1, -1])
        ahead = np.array([np.cos(tip), np.sin(tip)])
        up = np.array([-np.sin(tip), np.cos(tip)])
        front = axis[-1][-1]
        return cls(
            axis=tuple(axis),
            along=tuple(along),
            sheave=front + head.ahead * ahead - head.below * up,
            rope=front + head.ahead * ahead + head.rope_above * up,
        )


def _integrate(where: Array, turn: Array) -> tuple[Array, Array]:
    """Places along one section from the parabolas that the mechanics puts through its stations.

    From the start of a segment to its share t: f0 (t - 3t2/2 + 2t3/3) + f1 (2t2 - 4t3/3)
    + f2 (-t2/2 + 2t3/3), times its length. At t = 1 that is Simpson's rule.
    """
    t = np.linspace(0.0, 1.0, SEGMENTS * FINE + 1)[1:]
    basis = np.stack(
        [t - 1.5 * t**2 + 2 * t**3 / 3, 2 * t**2 - 4 * t**3 / 3, 2 * t**3 / 3 - t**2 / 2]
    )
    far, points = [np.zeros(1)], [np.zeros((1, 2))]
    for ends, angles in zip(where, turn, strict=True):
        length = ends[-1] - ends[0]
        if length > 1e-9:
            direction = np.stack([np.cos(angles), np.sin(angles)], axis=1)
            far.append(ends[0] + length * t)
            points.append(points[-1][-1] + length * (basis.T @ direction))
    return np.concatenate(far), np.concatenate(points)


def outline(
    shape: BoomShape, section: int, *, start: float = 0.0, end: float = np.inf, thick: float = 1.0
) -> Array:
    """Outline of a part of a section: along its top, then back along its bottom.

    Parameters
    ----------
    start, end : float
        From the section's tail; default: all of it [m]
    thick : float
        Multiplies the height, for small pictures [1]

    Returns
    -------
    ndarray, shape (points, 2)
        Not closed [m]
    """
    axis, along = shape.axis[section], shape.along[section]
    cut = np.unique(np.clip([start, *along, end], max(start, 0.0), min(end, along[-1])))
    points = np.stack([np.interp(cut, along, axis[:, k]) for k in (0, 1)], axis=1)
    slope = np.gradient(points, cut, axis=0) if len(cut) > 1 else np.array([[1.0, 0.0]])
    slope = slope / np.linalg.norm(slope, axis=1, keepdims=True)
    up = np.stack([-slope[:, 1], slope[:, 0]], axis=1)
    top, bottom = shape.reach[section]
    return np.concatenate([points + thick * top * up, (points - thick * bottom * up)[::-1]])
