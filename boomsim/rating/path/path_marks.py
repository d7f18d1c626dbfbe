"""Places on the way of a load: where it is as much as is rated, where it would break or tip."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from boomsim.mechanics.boom.boom_state import solve_state
from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.geometry import Array
from boomsim.rating.lift_response import Response
from boomsim.rating.limits.boom_buckling import BOOM_BUCKLING
from boomsim.rating.limits.limit_kind import GIVES_WAY, TIPS, Limit
from boomsim.rating.load_search import no_margin, rows_of
from boomsim.rating.parts_reeved import reeved
from boomsim.rating.path.first_crossing import first_beyond
from boomsim.rating.setup import Setup

ResponsesAt = Callable[[Setup, Array], Response]
"""From a setup and places along a way to the cells there, shape (1, places) or (places, 1)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where the boom is with the load on.

    Attributes
    ----------
    at : float
        How far along the way [unit of the way]
    angle : float
        Boom angle [rad]
    radius : float
        Of the load, on level ground in still air [m]
    is_valid : bool
        False where the boom bends beyond the range of the model
    """

    at: float
    angle: float
    radius: float
    is_valid: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """Where something is met, and what."""

    place: Place
    limit: Limit


@dataclass(frozen=True, slots=True, kw_only=True)
class Marks:
    """What a kept load meets on a way; None for what it does not meet.

    Attributes
    ----------
    rated : Mark or None
        Where the load is as much as is rated: beyond it, more
    fails, tips : Mark or None
        Where, without any margin, a first part gives way, and where the crane tips
    """

    rated: Mark | None
    fails: Mark | None
    tips: Mark | None

    def first_of_ends(self, *, direction: float) -> Mark | None:
        """Tell what comes first without margins.

        Parameters
        ----------
        direction : float
            1 where places along the way grow, -1 where they become less [1]
        """
        ends = [mark for mark in (self.fails, self.tips) if mark is not None]
        return min(ends, key=lambda mark: direction * mark.place.at, default=None)


def marks_on(setup: Setup, responses_at: ResponsesAt, *, start: float, end: float) -> Marks:
    """Go along a way with a load until it is more than is rated, until it breaks, until it tips.

    Parameters
    ----------
    setup : Setup
    responses_at : callable
    start, end : float
        [unit of the way]
    """
    real = no_margin(setup)
    limits = responses_at(real, np.array([start])).limits
    every = np.ones(len(responses_at(setup, np.array([start])).limits), dtype=bool)

    def meet(judged: Setup, rows: np.ndarray, *, collapses: bool) -> Mark | None:
        if not rows.any():
            return None

        def utilisations_at(at: Array) -> Array:
            utilisation = responses_at(judged, at).utilisation
            return np.asarray(utilisation.reshape(len(utilisation), -1)[rows])

        met = first_beyond(utilisations_at, start=start, end=end)
        if met is None or (met.row < 0 and not collapses):
            return None
        response = responses_at(judged, np.array([met.at]))
        return Mark(place=place_of(response, met.at), limit=_limit(response, rows, met.row))

    return Marks(
        rated=meet(setup, every, collapses=True),
        fails=meet(real, rows_of(limits, GIVES_WAY), collapses=True),
        tips=meet(real, rows_of(limits, TIPS), collapses=False),
    )


def _limit(response: Response, rows: np.ndarray, row: int) -> Limit:
    """Which limit a crossing is about; a boom without equilibrium has buckled."""
    own = [limit for limit, kept in zip(response.limits, rows, strict=True) if kept]
    if row >= 0:
        return own[row]
    return next(limit for limit in own if limit.kind is BOOM_BUCKLING)


def place_of(response: Response, at: float) -> Place:
    """Tell where one cell has its load.

    Parameters
    ----------
    response : Response
        Of one cell
    at : float
        How far along the way [unit of the way]
    """
    return Place(
        at=float(at),
        angle=float(response.state.angle.flat[0]),
        radius=float(radii_of(response).flat[0]),
        is_valid=bool(response.is_valid.flat[0]),
    )


def radii_of(response: Response) -> Array:
    """Radii as charts count them: with the load on, on level ground, in still air.

    Returns
    -------
    ndarray
        NaN where the boom finds no equilibrium [m]
    """
    state = response.state
    return loaded_radius(response.setup, boom=response.boom, load=state.load, angle=state.angle)


def loaded_radius(setup: Setup, *, boom: Condensed, load: Array, angle: Array) -> Array:
    """Radius of a load on a boom at an angle, on level ground in still air.

    Parameters
    ----------
    setup : Setup
    boom : Condensed
    load, angle : ndarray, shape (configurations, cells) or broadcastable
        [kg], [rad]

    Returns
    -------
    ndarray, shape (configurations, cells)
        [m]
    """
    parts = reeved(setup, length=boom.layout.boom_length)
    state = solve_state(boom, load=load, parts=parts, angle=angle)
    machine = setup.machine
    out = state.head_along * np.cos(state.angle) - state.head_above * np.sin(state.angle)
    return np.asarray(machine.heel_out + out)
