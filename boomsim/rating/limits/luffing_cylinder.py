"""Luffing cylinder: push or pull over what its maker permits."""

import numpy as np

from boomsim.mechanics.geometry import Array
from boomsim.rating.limits.limit_kind import PERMISSIBLE, PERMISSIBLE_VALUE, Case, Kind, Ultimate


def _utilisation(case: Case) -> Array:
    return np.abs(case.forces.cylinder) / case.machine.cylinder.strength


LUFFING_CYLINDER = Kind(
    name="luffing cylinder",
    words="the luffing cylinder",
    short="luffing cylinder",
    code="c",
    utilisation=_utilisation,
    set_by=PERMISSIBLE_VALUE,
    passed=PERMISSIBLE,
    ultimate=Ultimate(times=1.6, words="the luffing cylinder gives way"),
)
