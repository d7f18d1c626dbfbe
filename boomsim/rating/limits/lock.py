"""Locks: the pin, rope or cylinder that keeps a section from sliding in."""

from boomsim.mechanics.geometry import Array
from boomsim.rating.limits.kind import MOVING_SECTIONS, PERMISSIBLE_VALUE, Case, Kind, use_of_joints


def _use(case: Case) -> Array:
    return use_of_joints(case.factored_forces.lock, strength=case.bear.lock)


LOCK = Kind(
    name="lock",
    words="the lock of",
    short="lock gives",
    code="k",
    use=_use,
    of=MOVING_SECTIONS,
    set_by=PERMISSIBLE_VALUE,
)
