"""Wear pads: the pressure that their maker permits, at the mouth and at the tail."""

from boomsim.mechanics.geometry import Array
from boomsim.rating.limits.limit_kind import (
    MOVING_SECTIONS,
    PERMISSIBLE,
    PERMISSIBLE_VALUE,
    Case,
    Kind,
    utilisation_of_joints,
)


def _front(case: Case) -> Array:
    return utilisation_of_joints(case.forces.front_pad, strength=case.bear.front_pad)


def _rear(case: Case) -> Array:
    return utilisation_of_joints(case.forces.rear_pad, strength=case.bear.rear_pad)


FRONT_PAD = Kind(
    name="front pad",
    words="pressure of the front pad on",
    short="front pad",
    code="f",
    utilisation=_front,
    of=MOVING_SECTIONS,
    set_by=PERMISSIBLE_VALUE,
    passed=PERMISSIBLE,
)

REAR_PAD = Kind(
    name="rear pad",
    words="pressure of the rear pad of",
    short="rear pad",
    code="r",
    utilisation=_rear,
    of=MOVING_SECTIONS,
    set_by=PERMISSIBLE_VALUE,
    passed=PERMISSIBLE,
)
