"""A simulated load-moment indicator: what it measures, what it was taught, what it makes of it.

It measures the luffing cylinder's push (by its pressure), the boom angle against the plumb line and
the boom length. It was told way out, counterweight, supports and parts of line, and was taught,
with the crane level and the air still, the push under the empty hook and how far a load bends the
boom outwards. All else is the balance about the heel pin,

    (F - F_empty) h = g (m - m_empty) (X - p/E),

with the cylinder's lever h, the load's lever X, the lead line's lever p and the advantage E of the
tackle, all of a straight boom. It is no maker's device: the simplest that the statics give.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.gravity import GRAVITY
from boomsim.machine.model import Machine
from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.rope_tackle import tackle_advantage
from boomsim.rating.lift_response import Response, respond
from boomsim.rating.parts_reeved import hanging_mass, reeved
from boomsim.rating.setup import Setup

ROUNDS = 60
"""Of load and radius, each from the other, until neither changes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sensors:
    """What is measured.

    Attributes
    ----------
    push : float
        Of the luffing cylinder [N]
    angle : float
        Of the base section against the plumb line [rad]
    length : float
        Boom length [m]
    """

    push: float
    angle: float
    length: float


def measure(at: Response) -> Sensors:
    """Read the sensors of a lift.

    Parameters
    ----------
    at : Response
        Of one configuration and one cell

    Returns
    -------
    Sensors
        On ground that leans the plumb line hangs aslant in the crane
    """
    return Sensors(
        push=float(at.forces.cylinder[0, 0]),
        angle=float(at.state.angle[0, 0]) - at.setup.disturbances.lean,
        length=float(at.boom.layout.boom_length[0]),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What the indicator makes of its sensors: gross load [kg] and radius [m]."""

    load: float
    radius: float


def shown(
    entered: Setup,
    *,
    extension: Array,
    sensors: Sensors,
    teach: float,
    bends: bool = True,
) -> Shown:
    """Work load and radius out as the indicator does.

    Parameters
    ----------
    entered : Setup
        Calm: what the operator told it
    extension : ndarray, shape (moving sections,)
        The way out that was told it [1]
    teach : float
        Load with which it was taught how the boom bends [kg]
    bends : bool
        Whether it counts the bending at all
    """
    machine = entered.machine
    boom = condense(machine, extension=np.atleast_2d(extension))
    length = boom.layout.boom_length
    empty = float(hanging_mass(entered, length=length, angle=sensors.angle)[0, 0])
    taught = _taught(entered, boom, sensors.angle, (empty, teach))
    straight = straight_lever(machine, length=sensors.length, angle=sensors.angle)
    first, more = 0.0, 0.0
    if bends:
        first = taught.lever[0] - straight_lever(
            machine, length=float(boom.layout.boom_length[0]), angle=sensors.angle
        )
        more = (taught.lever[1] - taught.lever[0]) / (teach - empty)
    moment = (sensors.push - taught.push[0]) * cylinder_lever(machine, angle=sensors.angle)
    advantage = tackle_advantage(
        int(reeved(entered, length=length)[0]), sheave_efficiency=machine.hoist.sheave_efficiency
    )
    line = lead_line_lever(machine, length=sensors.length, angle=sensors.angle) / advantage
    load = empty
    for _ in range(ROUNDS):
        lever = straight + first + more * (load - empty)
        load = max(empty + moment / (GRAVITY * (lever - line)), 0.0)
    return Shown(load=load, radius=machine.heel_out + straight + first + more * (load - empty))


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class _Taught:
    """Pushes [N] and levers of the head about the heel pin [m], shape (loads,)."""

    push: Array
    lever: Array


def _taught(entered: Setup, boom: Condensed, angle: float, loads: tuple[float, float]) -> _Taught:
    at = respond(entered, boom=boom, load=np.array([loads]), angle=np.full((1, len(loads)), angle))
    return _Taught(
        push=at.forces.cylinder[0], lever=at.placed.head_out[0] - entered.machine.heel_out
    )


def straight_lever(machine: Machine, *, length: float, angle: float) -> float:
    """Lever of the load about the heel pin under a boom that does not bend.

    Parameters
    ----------
    length : float
        [m]
    angle : float
        [rad]

    Returns
    -------
    float
        X = L cos a + b sin a, with the sheave b below the axis [m]
    """
    return float(length * np.cos(angle) + machine.boom.head.below * np.sin(angle))


def cylinder_lever(machine: Machine, *, angle: float) -> float:
    """Lever of the luffing cylinder about the heel pin, from its two pins [m].

    Parameters
    ----------
    angle : float
        [rad]
    """
    cylinder = machine.cylinder
    along, below = cylinder.attach_along, cylinder.attach_below
    cos, sin = np.cos(angle), np.sin(angle)
    upper = np.array([along * cos + below * sin, along * sin - below * cos])
    lower = np.array([cylinder.base_out - machine.heel_out, cylinder.base_up - machine.heel_up])
    return _moment(lower, upper - lower)


def lead_line_lever(machine: Machine, *, length: float, angle: float) -> float:
    """Lever with which the line from head to winch raises the boom; negative where it lowers it.

    Parameters
    ----------
    length : float
        [m]
    angle : float
        [rad]

    Returns
    -------
    float
        [m]
    """
    above = machine.boom.head.rope_above
    cos, sin = np.cos(angle), np.sin(angle)
    head = np.array([length * cos - above * sin, length * sin + above * cos])
    hoist = machine.hoist
    winch = np.array([hoist.winch_out - machine.heel_out, hoist.winch_up - machine.heel_up])
    return _moment(winch, winch - head)


def _moment(at: Array, way: Array) -> float:
    """Moment about the heel pin of a unit force at a point along a way, raising positive [m]."""
    return float((at[0] * way[1] - at[1] * way[0]) / np.hypot(*way))
