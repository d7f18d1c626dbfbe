"""Shapes of a boom that gives way: bent at the place that failed, let down, drawn in or bent more.

How far and how fast it goes on is drawn and not computed: the model ends where something gives way.
"""

from dataclasses import dataclass, replace

import numpy as np

from boomsim.figures.side.bent_axis import Bent, bent
from boomsim.mechanics.boom.stations import PER_SECTION
from boomsim.mechanics.geometry import Array
from boomsim.rating.lift_response import Response, bear
from boomsim.rating.limits.limit_kind import Limit

FOLDS, LOWERS, SLIDES, SWAYS, DROPS, TEARS = "folds", "lowers", "slides", "sways", "drops", "tears"
"""How a boom goes: at a place, about its heel pin, back into the outer section, ever more bent;
or its rope parts; or its slewing ring."""

WHOLE_BOOM = {
    "boom buckling": SWAYS,
    "luffing cylinder ultimate": LOWERS,
    "line pull ultimate": DROPS,
    "slewing ring ultimate": TEARS,
}
"""By the name of a limit that belongs to no section."""

STEEPEST = float(np.radians(75.0))
"""A fold is drawn no farther [rad]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Way:
    """How a boom gives way.

    Attributes
    ----------
    place : float or None
        Of a fold, from the heel pin along the unbent boom [m]
    """

    how: str
    section: int | None = None
    place: float | None = None


def way_of(limit: Limit, at: Response) -> Way:
    """Find how and where it gives way.

    Parameters
    ----------
    limit : Limit
        That fails
    at : Response
        One cell, under the load that it fails under
    """
    section, layout = limit.section, at.boom.layout
    if section is None:
        return Way(how=WHOLE_BOOM.get(limit.name, SWAYS))
    if limit.name == "lock":
        return Way(how=SLIDES, section=section)
    tail = float(layout.tail[0, section])
    if limit.kind.along is None:
        return Way(how=FOLDS, section=section, place=tail + float(layout.overlap[0, section]))
    own = slice(section * PER_SECTION, (section + 1) * PER_SECTION)
    utilisation = limit.kind.along(at.factored_forces, bear=bear(at.setup), boom=at.boom)[0, own, 0]
    along = at.boom.stations.position.reshape(-1)[own][int(np.nanargmax(utilisation))]
    return Way(how=FOLDS, section=section, place=tail + float(along))


def fallen(way: Way, at: Response, share: float) -> Bent:
    """Shape of the boom some way through giving way.

    Parameters
    ----------
    at : Response
        One cell, just before it gives way
    share : float
        From 0, as it stood, to 1, as far as it is drawn [1]
    """
    angle, rotation = float(at.state.angle[0, 0]), at.state.rotation[0, :, 0]
    if way.how == SWAYS:
        # The shape under load, ever larger: it is the one that it buckles in.
        return bent(at.boom, angle=angle, rotation=rotation, exaggeration=1.0 + 9.0 * share)
    shape = bent(at.boom, angle=angle, rotation=rotation)
    if way.how == FOLDS and way.place is not None:
        beyond = at.boom.layout.tail[0][:, None] + shape.along > way.place
        hinge = _hinge(shape, at.boom.layout.tail[0], way)
        return _turned(shape, beyond, hinge, -STEEPEST * share)
    if way.how == LOWERS:
        machine = at.boom.machine
        heel = np.array([machine.heel_out, machine.heel_up])
        most = angle - machine.boom.least_angle + 0.1
        return _turned(shape, np.ones(shape.along.shape, dtype=bool), heel, -most * share)
    if way.how == SLIDES and way.section is not None:
        return _drawn_in(shape, way.section, share * _out_by(at, way.section))
    return shape


def _hinge(shape: Bent, tail: Array, way: Way) -> Array:
    section = way.section or 0
    own = (way.place or 0.0) - float(tail[section])
    far, axis = shape.along[section], shape.axis[section]
    return np.array([np.interp(own, far, axis[:, k]) for k in (0, 1)])


def _turned(shape: Bent, which: np.ndarray, about: Array, turn: float) -> Bent:
    cos, sin = np.cos(turn), np.sin(turn)
    matrix = np.array([[cos, -sin], [sin, cos]])

    def moved(points: Array) -> Array:
        return np.asarray((points - about) @ matrix.T + about)

    axis, up = shape.axis.copy(), shape.up.copy()
    axis[which], up[which] = moved(axis[which]), up[which] @ matrix.T
    return replace(shape, axis=axis, up=up, sheave=moved(shape.sheave), rope=moved(shape.rope))


def _drawn_in(shape: Bent, section: int, by: float) -> Bent:
    way = shape.axis[section, -1] - shape.axis[section, 0]
    shift = -by * way / max(float(np.hypot(*way)), 1e-9)
    axis = shape.axis.copy()
    axis[section:] += shift
    return replace(shape, axis=axis, sheave=shape.sheave + shift, rope=shape.rope + shift)


def _out_by(at: Response, section: int) -> float:
    machine = at.boom.machine
    return float(at.boom.layout.extension[0, section - 1]) * machine.boom.sections[section].stroke
