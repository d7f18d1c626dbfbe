"""One load all around the crane: how much room it has in each direction."""

from dataclasses import dataclass

import numpy as np

from boomsim.mechanics.geometry import Array
from boomsim.rating.around.slew_study import Around
from boomsim.rating.lift_response import Response
from boomsim.rating.resultant import turned

HAIR = 1e-5
"""A load that is a rated one, to this share, counts as rated: two searches found them [1]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Margins:
    """Room of one load. Shapes (slews,).

    Attributes
    ----------
    load, radius : float
        Gross [kg], [m]
    slew : ndarray
        From -180 to 180 degrees [rad]
    share : ndarray
        Load over the rated load; infinite where nothing is rated [1]
    tips : ndarray
        Load that would tip the crane, without any margin and with the boom where it is, over this
        one; infinite where none does [1]
    spans : tuple of (float, float)
        Slew angles between which the load is rated, the second never smaller than the first and
        beyond 180 degrees where the span goes over the front [rad]
    """

    load: float
    radius: float
    slew: Array
    share: Array
    tips: Array
    spans: tuple[tuple[float, float], ...]

    @property
    def rated(self) -> np.ndarray:
        """True where the load is no more than is rated."""
        return np.asarray(self.share <= 1.0 + HAIR)


def margins(found: Around, at: Response) -> Margins:
    """Set one load against what is rated, and what tips, in each direction.

    Parameters
    ----------
    found : Around
        All around; the last radius counts
    at : Response
        The load at that radius: one configuration, one cell
    """
    load, capacity = float(at.state.load[0, 0]), found.capacity[:, -1]
    tipping = turned(at, slew=found.slew).tipping_load[:, :, 0, 0].min(axis=1)
    with np.errstate(divide="ignore", invalid="ignore"):
        share = np.where(capacity > 0.0, load / capacity, np.inf)
        tips = tipping / load
    return Margins(
        load=load,
        radius=float(found.radius[-1]),
        slew=found.slew,
        share=share,
        tips=np.where(np.isnan(tips), np.inf, tips),
        spans=_spans(found.slew, capacity * (1.0 + HAIR) - load),
    )


def _spans(slew: Array, room: Array) -> tuple[tuple[float, float], ...]:
    """Where there is room, by straight lines between slew angles; the circle joins at its ends."""
    inside = room >= 0.0
    if np.all(inside):
        return ((-np.pi, np.pi),)
    if not np.any(inside):
        return ()
    edges = np.flatnonzero(inside[:-1] != inside[1:])
    share = room[edges] / (room[edges] - room[edges + 1])
    at = slew[edges] + share * (slew[edges + 1] - slew[edges])
    begins = [float(a) for a, k in zip(at, edges, strict=True) if inside[k + 1]]
    ends = [float(a) for a, k in zip(at, edges, strict=True) if inside[k]]
    if inside[-1]:
        # What goes on over the front ends beyond the half turn.
        over_front = ends.pop(0) + 2.0 * np.pi if inside[0] and ends else np.pi
        ends.append(float(over_front))
    elif inside[0]:
        begins.insert(0, -np.pi)
    return tuple(zip(begins, ends, strict=True))
