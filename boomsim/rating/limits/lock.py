"""Locks: the pin, rope or cylinder that keeps a section from sliding in.

A section that is all the way in stands on its stop, which takes its thrust: its lock carries
nothing. Pins hold at every other position, at full stroke too.
"""

import numpy as np

from boomsim.mechanics.geometry import Array
from boomsim.rating.limits.kind import MOVING_SECTIONS, PERMISSIBLE_VALUE, Case, Kind, use_of_joints


def _use(case: Case) -> Array:
    used = use_of_joints(case.factored_forces.lock, strength=case.bear.lock)
    is_out = case.boom.layout.extension > 0.0
    # Times, not where: a state without equilibrium keeps its NaN.
    return np.asarray(used * is_out.T[:, :, None])


LOCK = Kind(
    name="lock",
    words="the lock of",
    short="lock gives",
    code="k",
    use=_use,
    of=MOVING_SECTIONS,
    set_by=PERMISSIBLE_VALUE,
)
