"""How far a load's place gives under the load: boom, rope and floats, one spring after another.

What gives far takes a blow gently: the sag under the still load is all that a blow asks of a crane.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.gravity import GRAVITY
from boomsim.machine.hoist_rope import head_height, lead_line
from boomsim.machine.model import Machine
from boomsim.mechanics.boom.condense import Condensed
from boomsim.rating.around.float_loads import float_loads
from boomsim.rating.lift_response import Response, respond
from boomsim.rating.limits.line_pull import LINE_PULL
from boomsim.rating.parts_reeved import reeved
from boomsim.rating.setup import Setup

WIRE_STRENGTH, SPINNING, ROPE_MODULUS = 1770e6, 0.85, 100e9
"""Of the hoist rope, assumed: strength of its wires [Pa], share of it that is left in the rope [1],
modulus of the rope [Pa]. With what makes the rope part they say how stiff it is."""

SHORTEST = 0.5
"""A rope between head and hook is never taken shorter [m]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sag:
    """What gives under a still load, at the head or below it.

    Attributes
    ----------
    boom, rope, floats : float
        By how far each lowers the load, taken in proportion to it [m]
    rope_length, lead : float
        Of each part of line from the head sheave to the hook, and from the winch to the head, on
        the straight boom as the reeving has them [m]
    parts : int
        Parts of line [1]
    """

    boom: float
    rope: float
    floats: float
    rope_length: float
    lead: float
    parts: int

    @property
    def whole(self) -> float:
        """All of them [m]."""
        return self.boom + self.rope + self.floats


def sag_of(setup: Setup, *, boom: Condensed, load: float, angle: float, hook: float) -> Sag:
    """Find how far a load lowers itself.

    Parameters
    ----------
    boom : Condensed
        Of one configuration
    load : float
        Gross [kg]
    angle : float
        Boom angle, kept [rad]
    hook : float
        Height of the hook above the ground [m]

    Returns
    -------
    Sag
        Boom and floats between half the load and all of it, twice: how stiff they are there
    """
    half, whole = (
        respond(setup, boom=boom, load=np.array([[m]]), angle=np.array([[angle]]))
        for m in (load / 2.0, load)
    )
    up, out = float(whole.placed.head_up[0, 0]), float(whole.placed.head_out[0, 0])
    long, cos, sin = float(boom.layout.boom_length[0]), float(np.cos(angle)), float(np.sin(angle))
    length = max(head_height(setup.machine, length=long, cos=cos, sin=sin) - hook, SHORTEST)
    parts = int(reeved(setup, length=boom.layout.boom_length)[0])
    lead = lead_line(setup.machine, length=long, cos=cos, sin=sin)
    return Sag(
        boom=2.0 * (float(half.placed.head_up[0, 0]) - up),
        rope=load * GRAVITY / rope_stiffness(setup.machine, parts, length, lead),
        floats=2.0 * out * _tilt(setup, half, whole),
        rope_length=length,
        lead=lead,
        parts=parts,
    )


def rope_stiffness(machine: Machine, parts: int, length: float, lead: float) -> float:
    """Stiffness of the hoist rope at the hook: its parts side by side, the lead line behind them.

    A pull F in n parts stretches each by F l/(n EA), and the lead line, whose stretch the hook sees
    over n, by F l'/(n EA): 1/k = l/(n EA) + l'/(n2 EA). Friction of sheaves is left out.

    Parameters
    ----------
    parts : int
        Parts of line n [1]
    length, lead : float
        From head to hook l, from winch to head l' [m]

    Returns
    -------
    float
        [N/m]
    """
    end = LINE_PULL.ultimate
    assert end is not None
    area = end.times * machine.hoist.line_pull / (SPINNING * WIRE_STRENGTH)
    return ROPE_MODULUS * area / (length / parts + lead / parts**2)


def _tilt(setup: Setup, half: Response, whole: Response) -> float:
    """By how much the second half of the load leans the carrier, the least over slew angles [rad].

    The least is the stiffest, and so on the large side for a blow; zero where the floats hold
    nothing.
    """
    first, last = (float_loads(at, slew=setup.slew).lean[:, 0, 0] for at in (half, whole))
    leans = (last - first)[np.isfinite(last - first)]
    return float(max(leans.min(), 0.0)) if len(leans) else 0.0
