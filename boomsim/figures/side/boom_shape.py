"""The boom as it is drawn: axis and outline of every section, in the luffing plane.

All points are (out, up) in superstructure axes [m].
"""

from dataclasses import dataclass

import numpy as np

from boomsim.figures.side.bent_axis import bent, heights
from boomsim.machine.model import Machine
from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.boom.picked_configurations import pick
from boomsim.mechanics.geometry import Array
from boomsim.rating.lift_response import Response

FINE = 12
"""Pieces that each segment of a section is drawn in: smooth on a large sheet."""


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
    straight = bent(boom, angle=angle, rotation=None, pieces=FINE)
    loaded = straight
    if rotation is not None:
        loaded = bent(boom, angle=angle, rotation=rotation, pieces=FINE)
    heel = np.array([machine.heel_out, machine.heel_up])
    along, across = np.array([[np.cos(angle), np.sin(angle)], [-np.sin(angle), np.cos(angle)]])

    def drawn(unbent: Array, now: Array) -> Array:
        return np.asarray(unbent + exaggeration * (now - unbent))

    cylinder = machine.cylinder
    return BoomShape(
        machine=machine,
        axis=tuple(drawn(straight.axis, loaded.axis)),
        along=tuple(straight.along),
        inside=tuple(float(x) for x in boom.layout.overlap[0]),
        reach=tuple((float(top), float(bottom)) for top, bottom in heights(machine)),
        heel=heel,
        lug=heel + cylinder.attach_along * along - cylinder.attach_below * across,
        sheave=drawn(straight.sheave, loaded.sheave),
        rope=drawn(straight.rope, loaded.rope),
        straight=np.stack([heel, straight.axis[-1, -1]]),
        load=load,
        exaggeration=exaggeration,
    )


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
