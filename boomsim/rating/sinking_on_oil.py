"""How far a boom sinks on its luffing cylinder's oil as its load grows and nobody luffs."""

import numpy as np

from boomsim.mechanics.boom.boom_state import State, solve_state
from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.trapped_oil import angle_at_length, sunk_length
from boomsim.rating.parts_reeved import reeved
from boomsim.rating.setup import Setup

ROUNDS = 3
"""A boom that sinks by Δ raises its cylinder's push by what lets it sink by some hundredths of Δ:
after three rounds that leaves 1e-5 of it."""


class Trapped:
    """A boom whose oil was trapped with a load on: what angle it has under other loads.

    On level ground in still air, as the boom angle is that of a crane before anything acts on it.

    Parameters
    ----------
    load : ndarray, shape (configurations, cells)
        When the oil was trapped [kg]
    angle : ndarray, shape (configurations, cells)
        Boom angle then [rad]
    """

    def __init__(self, setup: Setup, *, boom: Condensed, load: Array, angle: Array) -> None:
        self.setup, self.boom, self.angle = setup, boom, angle
        self.push: Array | None = None
        if setup.machine.cylinder.bore is not None:
            self.push = self._hung(load, angle, None).cylinder

    def under(self, load: Array) -> Array:
        """Boom angles under loads.

        Parameters
        ----------
        load : ndarray, shape (configurations, cells)
            [kg]

        Returns
        -------
        ndarray
            Those at which the oil was trapped where the file gives no bore [rad]
        """
        if self.push is None:
            return self.angle
        angle, start = np.asarray(self.angle), None
        for _ in range(ROUNDS):
            state = self._hung(load, angle, start)
            more = state.cylinder - self.push
            length = sunk_length(self.setup.machine, angle=self.angle, more=more)
            found = angle_at_length(self.setup.machine, length=length)
            # Where a boom finds no equilibrium, it finds none at the angle it was last tried at.
            angle = np.where(np.isfinite(found), found, angle)
            start = np.nan_to_num(state.rotation)
        return angle

    def _hung(self, load: Array, angle: Array, start: Array | None) -> State:
        parts = reeved(self.setup, length=self.boom.layout.boom_length)
        return solve_state(self.boom, load=load, parts=parts, angle=angle, start=start)
