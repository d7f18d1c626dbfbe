"""Slewing ring: moment of all that turns, and of the load, about the axis of rotation."""

import numpy as np

from boomsim.mechanics.geometry import Array
from boomsim.mechanics.loads import GRAVITY
from boomsim.rating.limits.kind import PERMISSIBLE, PERMISSIBLE_VALUE, Case, Kind


def _use(case: Case) -> Array:
    placed = case.placed
    own = np.tensordot(placed.mass[: placed.turning], placed.out, axes=1)
    moment = GRAVITY * (own + case.service.load * placed.head_out)
    return np.abs(moment) / case.machine.ring.moment


SLEWING_RING = Kind(
    name="slewing ring",
    words="the slewing ring",
    short="slewing ring",
    code="s",
    use=_use,
    set_by=PERMISSIBLE_VALUE,
    passed=PERMISSIBLE,
)
