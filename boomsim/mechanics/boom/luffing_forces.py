"""What the boom angle turns: gravity, the winch and the luffing cylinder, seen from the base.

In axes of the base section all of these are a c cos(angle) + s sin(angle) with constants of the
machine, so that one product of a matrix gives them all.

Derived in docs/theory.md, section 3.
"""

from typing import NamedTuple

import numpy as np

from boomsim.machine.model import Disturbances, Machine
from boomsim.mechanics.external_loads import gravity_in_base
from boomsim.mechanics.geometry import Array

Pair = tuple[float, float]


class Luffed(NamedTuple):
    """The crane as the base section sees it at a boom angle; pairs are along and above it.

    Attributes
    ----------
    unit : ndarray, shape (2, configurations, cells)
        Cosine and sine of the boom angle [1]
    gravity : ndarray, shape (2, configurations, cells)
        Free fall [m/s2]
    winch : ndarray, shape (2, configurations, cells)
        From the heel pin [m]
    rod : ndarray, shape (2, configurations, cells)
        From the luffing cylinder's lower pin to its lug [m]
    leverage : ndarray, shape (configurations, cells)
        Moment about the heel pin of a push along `rod` as large as `rod` is long [m2]
    own : ndarray, shape (configurations, cells)
        The same of the half of the cylinder's weight that hangs on its upper pin [N m]
    """

    unit: Array
    gravity: Array
    winch: Array
    rod: Array
    leverage: Array
    own: Array


class Luffing:
    """The constants of a machine, on ground that may lean."""

    def __init__(self, machine: Machine, *, hanging: float, change: Disturbances) -> None:
        cylinder, hoist = machine.cylinder, machine.hoist
        x, y = cylinder.attach_along, -cylinder.attach_below
        # Free fall at no boom angle, and with the boom straight up: the factors on cos and sin.
        level, steep = (
            gravity_in_base(*unit, lean=change.lean, lean_across=change.lean_across)
            for unit in ((1.0, 0.0), (0.0, 1.0))
        )
        self.left = level[2]
        winch = _from_heel(machine, hoist.winch_out, hoist.winch_up)
        (a, b), (c, d) = _from_heel(machine, cylinder.base_out, cylinder.base_up)
        self.rows = np.array([
            [level[0], steep[0]],
            [level[1], steep[1]],
            *winch,
            [-a, -b],
            [-c, -d],
            [y * a - x * c, y * b - x * d],
            [hanging * (x * fall[1] - y * fall[0]) for fall in (level, steep)],
        ])  # fmt: skip
        self.lug = np.array([x, y])[:, None, None]

    def to(self, cos: Array, sin: Array) -> Luffed:
        """Luff.

        Parameters
        ----------
        cos, sin : ndarray, shape (configurations, cells)
            Of the boom angle [1]
        """
        unit = np.concatenate([cos[None], sin[None]])
        seen = (self.rows @ unit.reshape(2, -1)).reshape(-1, *cos.shape)
        rod = seen[4:6] + self.lug
        return Luffed(unit, seen[:2], seen[2:4], rod, seen[6], seen[7])


def _from_heel(machine: Machine, out: float, up: float) -> tuple[Pair, Pair]:
    """Factors on cos(angle) and sin(angle) of a point's place along and above the base [m]."""
    out, up = out - machine.heel_out, up - machine.heel_up
    return (out, up), (up, -out)
