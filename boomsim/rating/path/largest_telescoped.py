"""The largest load that may be telescoped at each boom angle: as much as hangs, if it is pushed."""

from dataclasses import dataclass

import numpy as np

from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.geometry import Array
from boomsim.rating.lift_response import respond
from boomsim.rating.limits.limit_table import limits_of
from boomsim.rating.load_search import MOST_OF_LINE, largest_load, load_at_one
from boomsim.rating.path.telescope_drive import PUSH, with_push
from boomsim.rating.path.telescoping_stages import Stage
from boomsim.rating.setup import Setup

PLACES = 5
"""On a stage, its ends among them: the least counts."""

FIRST = 0.2
"""Of the most that the rope could lift, what is tried first [1]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Largest:
    """Loads of one stage, the least of the places on it. Shapes (angles,).

    Attributes
    ----------
    stage : Stage
    angle : ndarray
        Boom angle [rad]
    pushed : ndarray
        What the push could move if nothing else counted; zero where not even the boom, infinite
        where the push is never used up [kg]
    hangs : ndarray
        What is rated while the boom goes this way, the push left out [kg]
    """

    stage: Stage
    angle: Array
    pushed: Array
    hangs: Array

    @property
    def moved(self) -> Array:
        """What may be telescoped: the smaller of the two [kg]."""
        return np.minimum(self.pushed, self.hangs)


def largest_moved(setup: Setup, *, stage: Stage, angle: Array, friction: float) -> Largest:
    """Find the largest gross load that may be run out all the way of a stage, at each boom angle.

    Parameters
    ----------
    setup : Setup
    stage : Stage
    angle : ndarray, shape (angles,)
        Kept while the boom runs out [rad]
    friction : float
        [1]
    """
    judged = with_push(setup, moving=stage.moving, friction=friction)
    extension = stage.at(np.linspace(0.0, stage.travel, PLACES))
    boom = condense(setup.machine, extension=extension)
    held = np.broadcast_to(angle, (PLACES, len(angle)))
    limits = limits_of(judged.machine, kinds=judged.kinds)
    is_push = np.array([limit.name == PUSH for limit in limits])
    # Where the boom would buckle before the push is used up, the push sets nothing.
    pushed = _loads(judged, boom, held, is_push, collapse=False)
    hangs = _loads(judged, boom, held, ~is_push, collapse=True)
    return Largest(
        stage=stage, angle=np.asarray(angle), pushed=pushed.min(axis=0), hangs=hangs.min(axis=0)
    )


def _loads(
    setup: Setup, boom: Condensed, angle: Array, rows: np.ndarray, *, collapse: bool
) -> Array:
    """Loads at which some limits are used up, shape (configurations, angles) [kg]."""

    def utilisation_of(load: Array) -> Array:
        return np.asarray(respond(setup, boom=boom, load=load, angle=angle).utilisation[rows])

    most = largest_load(setup)
    return load_at_one(
        utilisation_of,
        low=np.zeros(angle.shape),
        high=np.full(angle.shape, most),
        first=np.full(angle.shape, FIRST * most / MOST_OF_LINE),
        collapse=collapse,
    )
