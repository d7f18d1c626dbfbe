"""How near a boom is to its elastic critical load, in the luffing plane and sideways.

Rayleigh's quotient: work that the axial forces do on a shape over the strain energy of the shape,
1/lambda = (sum of -N rotation2 - rope) / (sum of M2/EI), with the shape of a force across the head
in either plane: 1.3 % above the critical load of an even column (2.500 against pi2/4 EI/L2). The
head ahead of the last front leans with it, as a rigid end of the column.
"""

import numpy as np

from boomsim.mechanics.condense import Condensed, Plane
from boomsim.mechanics.forces import Forces
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.state import State


def critical_ratio(boom: Condensed, *, state: State, forces: Forces) -> Array:
    """Load over elastic critical load, the larger of both planes.

    Parameters
    ----------
    boom : Condensed
    state : State
    forces : Forces

    Returns
    -------
    ndarray, shape (configurations, cells)
        1/lambda; one means that the boom buckles [1]
    """
    pull = state.line_pull / np.maximum(state.head_along, 1e-3)
    up = _quotient(boom, boom.up, forces.axial, pull)
    return np.maximum(up, _quotient(boom, boom.side, forces.axial, pull))


def _quotient(boom: Condensed, plane: Plane, axial: Array, rope: Array) -> Array:
    ahead, beyond = boom.machine.boom.head.ahead, boom.stations.beyond
    rotation = plane.rotation @ beyond + plane.rotation_head * ahead
    moment = plane.moment @ beyond + plane.moment_head * ahead
    tip = (boom.path @ rotation)[:, 0] + ahead * rotation[:, -1]
    weight = boom.stations.weight.reshape(len(axial), -1, 1)
    energy = np.sum(weight * moment**2 / plane.stiffness, axis=1)
    work = -((weight * rotation**2).transpose(0, 2, 1) @ axial)[:, 0]
    work -= ahead * rotation[:, -1] ** 2 * axial[:, -1]
    return np.asarray((work - rope * tip**2) / energy)
