"""Locks: the pin, rope or cylinder that keeps a section from sliding in.

A section that is all the way in stands on its stop, which takes its thrust inwards; its lock holds
it only against a pull outwards. Pins hold both ways at every other position, at full stroke too.
"""

import numpy as np

from boomsim.mechanics.geometry import Array
from boomsim.rating.limits.limit_kind import (
    MOVING_SECTIONS,
    PERMISSIBLE_VALUE,
    Case,
    Kind,
    utilisation_of_joints,
)


def _utilisation(case: Case) -> Array:
    thrust = case.factored_forces.lock
    is_out = np.ones_like(thrust, dtype=bool)
    is_out[:, 1:] = case.boom.layout.extension[:, :, None] > 0.0
    held = np.where(is_out, thrust, np.minimum(thrust, 0.0))
    return utilisation_of_joints(held, strength=case.bear.lock)


LOCK = Kind(
    name="lock",
    words="the lock of",
    short="lock gives",
    code="k",
    utilisation=_utilisation,
    of=MOVING_SECTIONS,
    set_by=PERMISSIBLE_VALUE,
)
