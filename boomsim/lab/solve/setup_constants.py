"""What the views need of a setup and no slider changes: worked out once."""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from boomsim.figures.side.bent_axis import heights
from boomsim.figures.side.carrier_shape import pieces
from boomsim.figures.svg_elements import point_list
from boomsim.mechanics.geometry import Array
from boomsim.rating.lift_response import bear
from boomsim.rating.limits.limit_kind import STABILITY, Limit
from boomsim.rating.limits.limit_table import limits_of
from boomsim.rating.setup import Setup, rear_sector


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Fixed:
    """Of one setup.

    Attributes
    ----------
    reach : ndarray, shape (sections, 2)
        Axis to top and to bottom of each section [m]
    crane : str
        SVG of the crane without its boom, in metres, y upwards
    back : float
        How far the crane reaches behind the axis of rotation [m]
    strongest_pad : float
        Force that the strongest pad bears [N]
    points : ndarray, shape (supports, 2)
        Carrier axes [m]
    rear : float
        Half the over-rear sector [rad]
    limits : tuple of Limit
    keys : tuple of str
        Of each limit, unique in a machine
    of_stability : frozenset of str
        Keys of what tips the crane
    """

    reach: Array
    crane: str
    back: float
    strongest_pad: float
    points: Array
    rear: float
    limits: tuple[Limit, ...]
    keys: tuple[str, ...]
    of_stability: frozenset[str]


@lru_cache(maxsize=256)
def fixed(setup: Setup) -> Fixed:
    """Work it out once for each setup object."""
    machine, strong = setup.machine, bear(setup)
    limits = limits_of(machine, kinds=setup.kinds)
    shapes = pieces(machine, counterweight=setup.counterweight, support=setup.support)
    pads = np.concatenate([strong.front_pad, strong.rear_pad])
    return Fixed(
        reach=heights(machine),
        crane="".join(in_metres(piece.corners, piece.tone) for piece in shapes),
        back=-min(float(piece.corners[:, 0].min()) for piece in pieces(machine)),
        strongest_pad=float(pads[np.isfinite(pads)].max(initial=0.0)) or 1.0,
        points=np.array(setup.support.points),
        rear=rear_sector(setup.support),
        limits=limits,
        keys=tuple(limit.key for limit in limits),
        of_stability=frozenset(one.key for one in limits if one.set_by == STABILITY),
    )


def in_metres(corners: Array, tone: str) -> str:
    """Write a shape in metres, y upwards, for a group that brings it to its scale.

    Parameters
    ----------
    corners : ndarray, shape (points, 2)
        [m]
    tone : str
        Class

    Returns
    -------
    str
        SVG
    """
    # A wheel of forty corners looks no rounder than one of twenty, and makes the picture longer.
    fewer = corners[::2] if len(corners) > 24 else corners
    points = point_list(fewer.tolist(), ".3g")
    return f'<polygon class="{tone}" vector-effect="non-scaling-stroke" points="{points}"/>'
