"""What each section, pad, pin and cylinder carries, once the boom is in equilibrium.

Derived in docs/theory.md, section 2.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.mechanics.boom.boom_state import State
from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.boom.stations import PER_SECTION
from boomsim.mechanics.geometry import Array


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Forces:
    """Internal forces; a drooping boom has negative moments, a pressed one negative axial forces.

    Shapes: (configurations, K, cells) at stations, (configurations, sections, cells) at joints.

    Attributes
    ----------
    moment, moment_side : ndarray, K
        Bending moments: in the luffing plane (positive curls the boom up), and sideways [N m]
    axial, shear, shear_side : ndarray, K
        Along the deflected axis (tension positive), across it in the luffing plane, sideways [N]
    torsion : ndarray, K
        About the axis [N m]
    front_pad, rear_pad : ndarray, sections
        The outer section's mouth pressing this one up, across this axis; its own tail pressing the
        outer section up, across that axis; base section: the lug's push, the heel pin's pull [N]
    front_pad_side, rear_pad_side : ndarray, sections
        The same sideways; zero for the base section [N]
    lock : ndarray, sections
        Thrust along the outer axis that the tail's lock bears; base section: none [N]
    cylinder : ndarray, shape (configurations, cells)
        Push of the luffing cylinder [N]
    """

    moment: Array
    moment_side: Array
    axial: Array
    shear: Array
    shear_side: Array
    torsion: Array
    front_pad: Array
    rear_pad: Array
    front_pad_side: Array
    rear_pad_side: Array
    lock: Array
    cylinder: Array


def section_forces(boom: Condensed, *, state: State) -> Forces:
    """Resolve the equilibrium into section forces.

    Parameters
    ----------
    state : State
        Of the same boom
    """
    size = state.across.shape[1]
    moment = boom.bending[:, :size] @ state.acting
    pads = boom.bending[:, size:] @ state.acting
    axial = state.force_along * state.cos
    axial += state.force_above * state.sin
    axial[:, :PER_SECTION] += boom.stations.in_overlap[:, :PER_SECTION] * state.lug_along[:, None]
    pads[:, 0] = state.lug_above
    shear = _with_pads(boom, state.across, pads)
    rear, lock = _tails(boom, pads, state)
    side_pads, side_moment, side_shear, side_rear, torsion = _sideways(boom, state, moment)
    return Forces(
        moment=moment,
        moment_side=side_moment,
        axial=axial,
        shear=shear,
        shear_side=side_shear,
        torsion=torsion,
        front_pad=pads,
        rear_pad=rear,
        front_pad_side=side_pads,
        rear_pad_side=side_rear,
        lock=lock,
        cylinder=state.cylinder,
    )


def _with_pads(boom: Condensed, across: Array, pads: Array) -> Array:
    """Shear: the known force across, the own front pad inside the overlap, the inner's beyond."""
    shear = boom.pressing @ pads
    shear += across
    return np.asarray(shear)


def _tails(boom: Condensed, pads: Array, state: State) -> tuple[Array, Array]:
    """Rear-pad forces and lock thrusts: the tail's reaction across and along the outer axis.

    The reaction balances all that is outboard and the front pad, which presses across the inner
    axis at the mouth. Heel pin: across and along the base section.
    """
    # Copied: arithmetic on arrays with gaps takes three times as long.
    along = state.force_along[:, ::PER_SECTION].copy()
    above = state.force_above[:, ::PER_SECTION].copy()
    (mouth_cos, cos), (mouth_sin, sin) = _at_joints(boom, state)
    rear = above * cos - along * sin + pads * (mouth_cos * cos + mouth_sin * sin)
    lock = pads * (mouth_sin * cos - mouth_cos * sin) - along * cos - above * sin
    lock[:, 0] = 0.0
    return rear, lock


def _at_joints(boom: Condensed, state: State) -> tuple[Array, Array]:
    """Cosine and sine of the inner axis at each mouth, and of the outer axis at each tail.

    The heel pin and the lug press on the base section across its own axis.
    """
    stations = boom.stations
    joints = np.array([stations.at_mouth, np.roll(stations.at_inner_tail, 1, axis=1)])
    joints[:, :, 0] = 0
    which = np.arange(joints.shape[1])[:, None]
    return state.cos[which, joints], state.sin[which, joints]


def _sideways(
    boom: Condensed, state: State, moment: Array
) -> tuple[Array, Array, Array, Array, Array]:
    joints = (*moment.shape[:1], len(boom.machine.boom.sections), moment.shape[2])
    if not np.any(state.across_side):
        nought, none = np.broadcast_to(0.0, moment.shape), np.broadcast_to(0.0, joints)
        return none, nought, nought, none, nought
    head = state.head_moment_side[:, None]
    pads = boom.side.pads @ state.across_side + boom.side.pads_head * head
    bending = boom.side.moment @ state.across_side + boom.side.moment_head * head
    shear = _with_pads(boom, state.across_side, pads)
    rear = pads + state.across_side[:, ::PER_SECTION]
    rear[:, 0] = 0.0
    return pads, bending, shear, rear, _torsion(boom, state, moment, bending)


def _torsion(boom: Condensed, state: State, moment: Array, bending: Array) -> Array:
    """Torsion from the head's offset and from bending in two planes at once.

    Local equilibrium of a bent rod: dT/ds = M_up M_side (1/EI_up - 1/EI_side), summed from the
    front inwards along each section; joints pass torsion through. Twist is not fed back: the
    sections are closed cells.
    """
    sections = len(boom.machine.boom.sections)
    rate = moment * bending * (1.0 / boom.up.stiffness - 1.0 / boom.side.stiffness)
    shape = (moment.shape[0], sections, PER_SECTION, moment.shape[2])
    along = boom.stations.weight * boom.stations.beyond[..., 0].reshape(shape[:3])
    gain = (rate.reshape(shape) * along[..., None]).sum(axis=2)
    outer = np.cumsum(gain[:, ::-1], axis=1)[:, ::-1]
    torsion = state.head_torsion[:, None] + outer
    return np.repeat(torsion, PER_SECTION, axis=1)
