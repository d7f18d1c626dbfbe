"""The table of limits: a row for each kind, in the order in which every result has them."""

from functools import lru_cache

import numpy as np

from boomsim.machine.model import Machine
from boomsim.mechanics.geometry import Array
from boomsim.rating.limits.backward_tipping import BACKWARD
from boomsim.rating.limits.boom_buckling import BOOM_BUCKLING
from boomsim.rating.limits.crushing_with_bending import CRUSHING_WITH_BENDING
from boomsim.rating.limits.limit_kind import (
    EVERY_SECTION,
    MOVING_SECTIONS,
    WHOLE,
    Case,
    Kind,
    Limit,
)
from boomsim.rating.limits.line_pull import LINE_PULL
from boomsim.rating.limits.luffing_cylinder import LUFFING_CYLINDER
from boomsim.rating.limits.plate_buckling import PLATE_BUCKLING
from boomsim.rating.limits.section_lock import LOCK
from boomsim.rating.limits.shear_buckling import SHEAR_BUCKLING
from boomsim.rating.limits.slewing_ring import SLEWING_RING
from boomsim.rating.limits.tipping import TIPPING
from boomsim.rating.limits.tyres import TYRES
from boomsim.rating.limits.wear_pads import FRONT_PAD, REAR_PAD
from boomsim.rating.limits.web_crushing import WEB_CRUSHING
from boomsim.rating.limits.yielding import YIELDING

KINDS = (
    YIELDING,
    PLATE_BUCKLING,
    SHEAR_BUCKLING,
    FRONT_PAD,
    REAR_PAD,
    WEB_CRUSHING,
    CRUSHING_WITH_BENDING,
    LOCK,
    BOOM_BUCKLING,
    LUFFING_CYLINDER,
    LINE_PULL,
    SLEWING_RING,
    TYRES,
    TIPPING,
    BACKWARD,
)
"""All that a crane is judged by, unless its setup says otherwise."""


def limits_of(machine: Machine, *, kinds: tuple[Kind, ...] = KINDS) -> tuple[Limit, ...]:
    """All limits of a machine, in the order of :func:`uses`."""
    return _limits(len(machine.boom.sections), kinds)


@lru_cache(maxsize=64)
def _limits(sections: int, kinds: tuple[Kind, ...]) -> tuple[Limit, ...]:
    numbers: dict[str, tuple[int | None, ...]] = {
        EVERY_SECTION: tuple(range(sections)),
        MOVING_SECTIONS: tuple(range(1, sections)),
        WHOLE: (None,),
    }
    return tuple(Limit(kind=kind, section=i) for kind in kinds for i in numbers[kind.of])


def utilisations(case: Case, *, kinds: tuple[Kind, ...] = KINDS) -> Array:
    """How much of every limit is used.

    Returns
    -------
    ndarray, shape (limits, configurations, cells)
        In the order of :func:`limits_of`; NaN where there is no equilibrium [1]
    """
    found = [kind.utilisation(case) for kind in kinds]
    return np.concatenate(
        [
            utilisation[None] if kind.of == WHOLE else utilisation
            for kind, utilisation in zip(kinds, found, strict=True)
        ]
    )
