"""Bending in one plane: from the forces across a boom's stations to moments and rotations.

Derived in docs/theory.md, section 2.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.mechanics.boom.stations import NODES, PER_SECTION, SEGMENTS, Cuts
from boomsim.mechanics.geometry import Array


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Plane:
    """Bending in one plane: from the force across each station to moments and rotations.

    Attributes
    ----------
    moment : ndarray, shape (configurations, K, K)
        Bending moment for the known forces across the axis [m]
    moment_head, moment_lug : ndarray, shape (configurations, K, 1)
        The same for a moment at the head, and for that of the cylinder's axial pull at its
        eccentric lug [1]
    pads : ndarray, shape (configurations, sections, K)
        Front-pad force for the known forces across; base section: cylinder's force across [1]
    pads_head : ndarray, shape (configurations, sections, 1)
        The same for a moment at the head [1/m]
    rotation : ndarray, shape (configurations, K, K)
        Rotation of the axis for the known forces across [rad/N]
    rotation_head : ndarray, shape (configurations, K, 1)
        The same for a moment at the head [rad/(N m)]
    rotation_lug : ndarray, shape (configurations, K, 1)
        The same for the moment at the lug [rad/(N m)]
    rotation_mouths : ndarray, shape (configurations, K, moving sections)
        The same for a moment on each moving section at the mouth around it, which its pads balance:
        it grows in a straight line from the section's tail [rad/(N m)]
    stiffness : ndarray, shape (K, 1)
        E I [N m2]
    """

    moment: Array
    moment_head: Array
    moment_lug: Array
    pads: Array
    pads_head: Array
    rotation: Array
    rotation_head: Array
    rotation_lug: Array
    rotation_mouths: Array
    stiffness: Array


def planes_of(cuts: Cuts, *, stiffness: Array, in_shear: Array) -> tuple[Plane, Plane]:
    """Build the operators of the luffing plane and of sideways, where the heel is clamped.

    The axis turns by bending and by shear (Timoshenko), and a force counts as one across it where
    it acts across the axis as it then lies (Engesser).

    Parameters
    ----------
    stiffness, in_shear : ndarray, shape (2, sections)
        E I [N m2] and G A [N] of each section in the luffing plane and sideways
    """
    # Both at once, as axis 0. The last axis of an operator has the known forces across, then the
    # head moment and the lug moment.
    total = cuts.weight.reshape(*cuts.shape, PER_SECTION)
    integral, size = _integral(cuts), cuts.shape[1] * PER_SECTION
    pads = _pads(cuts, total)
    moment = _moments(cuts, total, integral, pads)
    stiff = np.repeat(stiffness, PER_SECTION, axis=1)
    bent = _turn(cuts, integral, total) / stiff[:, None, None]
    rotation = bent @ moment
    rotation += _sheared(cuts, total, pads, in_shear)
    mouths = bent @ _at_mouths(cuts)
    up, side = (
        Plane(
            moment=moment[k, :, :, :size],
            moment_head=moment[k, :, :, size : size + 1],
            moment_lug=moment[k, :, :, size + 1 :],
            pads=pads[k, :, :, :size],
            pads_head=pads[k, :, :, size : size + 1],
            rotation=rotation[k, :, :, :size],
            rotation_head=rotation[k, :, :, size : size + 1],
            rotation_lug=rotation[k, :, :, size + 1 :],
            rotation_mouths=mouths[k],
            stiffness=stiff[k, :, None],
        )
        for k in range(2)
    )
    return up, side


def _integral(cuts: Cuts) -> Array:
    """Matrix of each section that integrates a function from the tail to every station.

    Within a segment of length l: to the middle l (5 f0 + 8 f1 - f2)/24, to the end
    l (f0 + 4 f1 + f2)/6. Shape (configurations, sections, 9, 9).
    """
    within = np.array([[0.0, 0.0, 0.0], [5.0, 8.0, -1.0], [4.0, 16.0, 4.0]]) / 24.0
    configurations, sections = cuts.shape
    matrix = np.zeros((configurations, sections, SEGMENTS, NODES, SEGMENTS, NODES))
    for k in range(SEGMENTS):
        matrix[:, :, k, :, k, :] = cuts.seg_length[:, :, k, None, None] * within
        matrix[:, :, k + 1 :, :, k, :] = cuts.weight[:, :, None, None, k, :]
    return matrix.reshape(configurations, sections, PER_SECTION, PER_SECTION)


def _moments(cuts: Cuts, total: Array, integral: Array, pads: Array) -> Array:
    """Bending moments: what lies outboard in the section, its own front pad, the inner section's.

    Along the base section the lug's moment grows in a straight line from the heel pin to the lug.
    """
    configurations, sections = cuts.shape
    size = sections * PER_SECTION
    position = cuts.position.reshape(configurations, sections, PER_SECTION)
    inner_arm = cuts.length[..., None] - np.maximum(position, cuts.inner_tail[..., None])
    own_arm = np.maximum(cuts.support[..., None] - position, 0.0)
    moment = own_arm[..., None] * pads[:, :, :, None]
    moment[:, :, :-1] -= inner_arm[:, :-1, :, None] * pads[:, :, 1:, None]
    for i in range(sections):
        block = slice(i * PER_SECTION, (i + 1) * PER_SECTION)
        moment[:, :, i, :, block] += total[:, i, None, :] - integral[:, i]
    moment[:, :, -1, :, size] += 1.0
    moment[:, :, 0, :, size + 1] = _growing(cuts)[:, 0]
    return np.asarray(moment.reshape(2, configurations, size, size + 2))


def _growing(cuts: Cuts) -> Array:
    """From nought at each section's tail to one at the mouth around it (base section: at the lug).

    Shape (configurations, sections, 9).
    """
    position = cuts.position.reshape(*cuts.shape, PER_SECTION)
    return np.asarray(position / cuts.support[..., None] * cuts.spread(cuts.in_overlap))


def _at_mouths(cuts: Cuts) -> Array:
    """Bending moments of one at each moving section's mouth, shape (configurations, K, moving)."""
    configurations, sections = cuts.shape
    made = _growing(cuts)[..., None] * np.eye(sections)[:, None, 1:]
    return np.asarray(made.reshape(configurations, sections * PER_SECTION, sections - 1))


def _pads(cuts: Cuts, total: Array) -> Array:
    """Front-pad forces from the condition that no moment acts at a tail, head inwards.

    pad[i] overlap[i] = -(moment of what is outboard about the tail), where the inner section
    counts with the force pair it puts on this one. A base section clamped at the heel has none.
    """
    configurations, sections = cuts.shape
    size = sections * PER_SECTION
    pads = np.zeros((2, configurations, sections, size + 2))
    arm = (cuts.length - cuts.inner_tail) / cuts.support
    own = -total / cuts.support[..., None]
    pads[:, :, -1, size] = -1.0 / cuts.support[:, -1]
    for i in range(sections - 1, -1, -1):
        pads[:, :, i, i * PER_SECTION : (i + 1) * PER_SECTION] = own[:, i]
        if i + 1 < sections:
            pads[:, :, i] += arm[:, i, None] * pads[:, :, i + 1]
    pads[1, :, 0] = 0.0
    return pads


def _sheared(cuts: Cuts, total: Array, pads: Array, in_shear: Array) -> Array:
    """Rotation of the axis by shear: V/(G A) at every station, and what the joints make of it.

    Shape (2, configurations, K, K + 2).
    """
    same = np.broadcast_to(np.eye(PER_SECTION), (*cuts.shape, PER_SECTION, PER_SECTION))
    slope = np.repeat(1.0 / in_shear, PER_SECTION, axis=1)
    slope[:, -NODES:] *= AT_THE_FRONT
    return np.asarray((_turn(cuts, same, total) * slope[:, None, None]) @ _shear(cuts, pads))


AT_THE_FRONT = np.array([1.0, 1.25, 0.0])
"""Shares of shear strain at the last three stations: the head, which stands on the last one, turns
with the cross-section and not with the sheared axis. What it lacks the station before it has, so
that the head sinks by all of it (Simpson: 1 + 4 x 1.25 = 6) [1]."""


def _shear(cuts: Cuts, pads: Array) -> Array:
    """Shear: known forces across, the own front pad inside the overlap, the inner's past its tail.

    The lug's moment grows along the base section from nought at the heel pin: so does its shear
    pull down. Shape (2, configurations, K, K + 2).
    """
    configurations, sections = cuts.shape
    size = sections * PER_SECTION
    own = cuts.spread(cuts.in_overlap)[..., None]
    past = 1.0 - cuts.spread(cuts.has_inner)[..., None]
    shear = own * pads[:, :, :, None]
    shear[:, :, :-1] -= past[:, :-1] * pads[:, :, 1:, None]
    shear = shear.reshape(2, configurations, size, size + 2)
    shear[:, :, range(size), range(size)] += 1.0
    shear[:, :, :PER_SECTION, size + 1] -= own[:, 0, :, 0] / cuts.support[:, :1]
    return np.asarray(shear)


def _turn(cuts: Cuts, integral: Array, total: Array) -> Array:
    """Rotation of the axis at every station for a curvature at every station.

    Between its two pads an inner section's mean rotation is the outer section's there (both pads
    touch); the base section's is zero between heel pin and cylinder, or its rotation is zero at the
    heel when clamped. Shape (2, configurations, K, K).
    """
    configurations, sections = cuts.shape
    size = sections * PER_SECTION
    turn = np.zeros((2, configurations, sections, PER_SECTION, size))
    inside = total * cuts.spread(cuts.in_overlap) / cuts.support[..., None]
    mouth = total * (1.0 - cuts.spread(cuts.has_inner))
    own = (inside[:, :, None] @ integral)[:, :, 0]
    for i in range(sections):
        block = slice(i * PER_SECTION, (i + 1) * PER_SECTION)
        if i:
            share = mouth[:, i - 1] / cuts.support[:, i, None]
            turn[:, :, i] = share[:, None] @ turn[:, :, i - 1]
        clamped = 1 if i == 0 else 2
        turn[:clamped, :, i, :, block] -= own[:, i, None]
        turn[:, :, i, :, block] += integral[:, i]
    return turn.reshape(2, configurations, size, size)
