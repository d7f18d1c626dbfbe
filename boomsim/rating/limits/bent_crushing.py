"""Web crushing with bending: a pad presses on the plate that bending compresses already.

A boom that droops is compressed at the bottom, and there, where its moment is largest, the front
pad presses: the usual case and not the exception. EN 1993-1-5:2006, 7.2(1), holds for a force on
the compressed flange; one on the stretched flange is judged by crushing alone, 7.2(2), so that a
rear pad that presses the outer section's stretched top plate brings no share of bending.
"""

import numpy as np

from boomsim.mechanics.crushing import with_bending
from boomsim.mechanics.geometry import Array
from boomsim.rating.limits.kind import MOVING_SECTIONS, Case, Kind
from boomsim.rating.limits.plate_buckling import buckling_along


def bent_at_front_pads(case: Case) -> Array:
    """Use of the webs of each moving section where the outer section's mouth presses on it.

    Parameters
    ----------
    case : Case

    Returns
    -------
    ndarray, shape (configurations, moving sections, cells)
        eq. (7.2) [1]
    """
    pad, mouth = case.factored_forces.front_pad[:, 1:], case.boom.stations.at_mouth[:, 1:]
    bottom = pad > 0.0  # the mouth presses the section up
    return _bent(case, pad / case.bear.crushing[1:, None], at=mouth, bottom=bottom)


def bent_at_rear_pads(case: Case) -> Array:
    """Use of the webs of each outer section where the tail of the one inside presses on it.

    Parameters
    ----------
    case : Case

    Returns
    -------
    ndarray, shape (configurations, moving sections, cells)
        eq. (7.2) [1]
    """
    pad, tail = case.factored_forces.rear_pad[:, 1:], case.boom.stations.at_inner_tail[:, :-1]
    bottom = pad < 0.0  # the tail presses the outer section up when positive
    return _bent(case, pad / case.bear.crushing_outer[1:, None], at=tail, bottom=bottom)


def _bent(case: Case, crushed: Array, *, at: np.ndarray, bottom: np.ndarray) -> Array:
    """Both actions at a station; the next one lies at the same place, on the other side of a cut.

    A place's axial force may jump there, where a lock passes its thrust on: the larger use counts.
    """
    bent, which = buckling_along(case), np.arange(len(at))[:, None]
    bending = np.maximum(bent[which, at], bent[which, at + 1])
    drooping = case.factored_forces.moment[which, at] < 0.0
    # A place without equilibrium has no number in `crushed` either.
    return with_bending(np.abs(crushed), bending_use=np.where(bottom == drooping, bending, 0.0))


def _use(case: Case) -> Array:
    front, rear = bent_at_front_pads(case), bent_at_rear_pads(case)
    return np.moveaxis(np.maximum(front, rear), 1, 0)


BENT_CRUSHING = Kind(
    name="crushing with bending",
    words="web crushing with bending at the pads of",
    short="web crushed, bent",
    code="m",
    use=_use,
    of=MOVING_SECTIONS,
)
