"""Once it tips: the righting moment against the lean, so that "it does not come back" is computed.

The crane turns as one rigid body about its tipping line while the load goes on hanging plumb:

M(lean) = (righting - load lever) cos(lean) - g (sum of m h + load H) sin(lean)

with heights h of the masses and H of the head above the tipping line. Both terms say that leaning
makes it worse: arms shorten, and what stands high moves out. The load is taken to hang clear: one
that comes down on the ground is off the hook, and an unloaded crane may fall back on its floats.

Derived in docs/theory.md, section 10.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.gravity import GRAVITY
from boomsim.mechanics.geometry import Array
from boomsim.rating.lift_response import Response

LEANS = np.radians(np.linspace(0.0, 12.0, 97))
"""Where the curves are drawn [rad]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Fall:
    """Righting moment over lean for a few loads.

    Attributes
    ----------
    slew : float
        [rad]
    line : int
        Tipping line, as in :func:`boomsim.mechanics.stability.tipping_lines.tipping_lines`
    load : ndarray, shape (loads,)
        Gross loads [kg]
    lean : ndarray, shape (leans,)
        Outwards about the tipping line [rad]
    moment : ndarray, shape (loads, leans)
        Positive: it comes back [N m]
    no_return : ndarray, shape (loads,)
        Lean from which it does not come back: tan = net moment at rest / g sum of m h;
        0 where it tips from rest [rad]
    """

    slew: float
    line: int
    load: Array
    lean: Array
    moment: Array
    no_return: Array


def worst_direction(at: Response, *, cell: int = 0) -> tuple[int, int]:
    """Slew angle and tipping line with the least moment left, as indices into the balance.

    Unlike the least tipping load it is defined too where no load can tip the crane.
    """
    left = net_moment(at)[:, :, 0, cell]
    # Equal ones to the last digits are one and the same by symmetry: take the first of them.
    near = left <= left.min() + 1e-9 * np.abs(left).max()
    turn, line = np.argwhere(near)[0]
    return int(turn), int(line)


def net_moment(at: Response) -> Array:
    """Moment that still holds the crane down about every line, load and all.

    Returns
    -------
    ndarray, shape (slews, lines, configurations, cells)
        Negative once it tips [N m]
    """
    return np.asarray(at.balance.righting - at.state.load * at.balance.lever)


def fall(at: Response, *, turn: int, line: int, lean: Array = LEANS) -> Fall:
    """Follow the crane as it turns over.

    Parameters
    ----------
    at : Response
        Of one configuration; one cell for each load
    turn, line : int
        Slew angle and tipping line, as indices
    lean : ndarray, shape (leans,)
        [rad]
    """
    placed, load = at.placed, at.state.load[0]
    high = np.tensordot(placed.mass[: placed.turning], placed.up, axes=1)[0]
    high = high + placed.mass[placed.turning :] @ placed.z + load * placed.head_up[0]
    at_rest = net_moment(at)[turn, line, 0]
    moment = np.outer(at_rest, np.cos(lean)) - np.outer(GRAVITY * high, np.sin(lean))
    return Fall(
        slew=float(at.balance.slew[turn]),
        line=line,
        load=load,
        lean=lean,
        moment=moment,
        no_return=np.maximum(np.arctan2(at_rest, GRAVITY * high), 0.0),
    )
