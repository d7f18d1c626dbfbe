"""Load cases and the arrays for their solution."""

from dataclasses import dataclass, replace
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from boomsim.machine.model import Disturbances
from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.external_loads import gusts
from boomsim.mechanics.geometry import Array


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Lifts:
    """Cells, each with a load and an angle or a radius that is kept.

    Attributes
    ----------
    boom : Condensed
        Of `c` configurations
    load : ndarray, shape (c, cells)
        Gross load [kg]
    held : ndarray, shape (c, cells)
        Boom angle [rad], or loaded radius [m]
    hold_radius : bool
        Whether `held` is the radius
    parts : ndarray of int, shape (c,)
        Parts of line [1]
    dead, live : float
        Factors on weights and on the load [1]
    """

    boom: Condensed
    load: Array
    held: Array
    hold_radius: bool
    parts: NDArray[np.int_]
    dead: float
    live: float
    disturbances: Disturbances

    def some(self, cells: slice) -> "Lifts":
        """Some of the cells."""
        return replace(self, load=self.load[:, cells], held=self.held[:, cells])

    @property
    def wind_from_behind(self) -> float:
        """Pressure of a wind in the luffing plane [Pa]."""
        return gusts(self.disturbances)[0]

    @property
    def wind_across(self) -> float:
        """Pressure of a wind across it [Pa]."""
        return gusts(self.disturbances)[1]

    @property
    def is_pushed_sideways(self) -> bool:
        """Whether anything acts across the luffing plane."""
        change = self.disturbances
        return bool(change.side_pull or change.lean_across or self.wind_across)


class AtStations(NamedTuple):
    """What a solution keeps of every station; see :class:`boomsim.mechanics.boom.boom_state.State`.

    Cut from one piece: memory that an operating system has just handed out costs as much time as
    the numbers that go into it, and one large piece is more often handed out again as it is. Each
    array is without gaps, for arithmetic on arrays with gaps takes three times as long.

    Attributes
    ----------
    rotation : ndarray, shape (configurations, K, cells)
        Of the axis [rad]
    direction : ndarray, shape (2, configurations, K, cells)
        Its cosine and sine [1]
    force : ndarray, shape (2, configurations, K, cells)
        From all that is outboard, along and above the base section [N]
    acting : ndarray, shape (configurations, K + 2 + parts + 2 moving sections, cells)
        What turns the axis: force across it [N], the moment at the head [N m], forces of longer
        arms [N], the moments at the lug and on each moving section at its mouth [N m], what each
        turns by as a whole [rad]
    rotation_side, across_side : ndarray, shape (configurations, K, cells)
        Sideways: rotation [rad] and force [N]
    """

    rotation: Array
    direction: Array
    force: Array
    acting: Array
    rotation_side: Array
    across_side: Array

    @classmethod
    def empty(cls, lifts: Lifts) -> "AtStations":
        """Make room for an answer."""
        configurations, size, most = lifts.boom.turning.shape
        cells = lifts.load.shape[1]
        one, all_acting = size * configurations * cells, most * configurations * cells
        sideways = lifts.is_pushed_sideways
        piece = np.empty(5 * one + all_acting + 2 * one * sideways)
        stacked = piece[: 5 * one].reshape(5, configurations, size, cells)
        acting = piece[5 * one :][:all_acting].reshape(configurations, most, cells)
        beside = np.broadcast_to(0.0, (2, configurations, size, cells))
        if sideways:
            beside = piece[5 * one + all_acting :].reshape(beside.shape)
        return cls(stacked[0], stacked[1:3], stacked[3:], acting, *beside)

    def put(self, cells: slice, found: "AtStations") -> None:
        """Put what was found for some of the cells to its place."""
        for whole, part in zip(self, found, strict=True):
            if whole.flags.writeable:
                whole[..., cells] = part

    def forget(self, lost: NDArray[np.bool_]) -> None:
        """Leave no number where there is no solution."""
        for values in self:
            if values.flags.writeable:
                np.moveaxis(values, -2, -1)[..., lost, :] = np.nan
