"""How near a boom is to its elastic critical load, in the luffing plane and sideways.

Rayleigh's quotient: work that the axial forces do on a shape over the strain energy of the shape,
1/lambda = (sum of -N rotation2 - rope) / (sum of M2/EI). In the luffing plane the shape is the
boom's own deflection; sideways, where a straight boom does not deflect, that of a side force at
the head. A tip force's shape is 1.3 % above the critical load of an even column (2.500 against
pi2/4 EI/L2).
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
    up = _quotient(
        boom, boom.up, forces.axial, state.rotation, forces.moment, state.head_above, pull
    )
    rotation, moment, tip = _side_shape(boom)
    side = _quotient(boom, boom.side, forces.axial, rotation, moment, tip, pull)
    return np.maximum(up, side)


def _side_shape(boom: Condensed) -> tuple[Array, Array, Array]:
    ahead = boom.machine.boom.head.ahead
    beyond = boom.stations.beyond
    rotation = boom.side.rotation @ beyond + boom.side.rotation_head * ahead
    moment = boom.side.moment @ beyond + boom.side.moment_head * ahead
    tip = (boom.path @ rotation)[:, 0] + ahead * rotation[:, -1]
    return rotation, moment, tip


def _quotient(
    boom: Condensed,
    plane: Plane,
    axial: Array,
    rotation: Array,
    moment: Array,
    tip: Array,
    rope: Array,
) -> Array:
    weight = boom.stations.weight.reshape(len(boom.layout.front), -1)
    energy = np.einsum("ck,ckr->cr", weight, moment * moment / plane.stiffness)
    work = -np.einsum("ck,ckr,ckr->cr", weight, axial, rotation * rotation)
    with np.errstate(divide="ignore", invalid="ignore"):
        return np.asarray((work - rope * tip**2) / energy)
