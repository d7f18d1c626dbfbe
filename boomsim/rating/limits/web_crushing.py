"""Web crushing: a pad presses the webs in, those of the inner section or those of the outer one."""

import numpy as np

from boomsim.mechanics.geometry import Array
from boomsim.rating.limits.limit_kind import MOVING_SECTIONS, Case, Kind, utilisation_of_joints


def _utilisation(case: Case) -> Array:
    """The front pad crushes the section that it carries, the rear pad the one around it."""
    forces, bear = case.factored_forces, case.bear
    return np.maximum(
        utilisation_of_joints(forces.front_pad, strength=bear.crushing),
        utilisation_of_joints(forces.rear_pad, strength=bear.crushing_outer),
    )


WEB_CRUSHING = Kind(
    name="web crushing",
    words="web crushing at the pads of",
    short="web crushed",
    code="w",
    utilisation=_utilisation,
    of=MOVING_SECTIONS,
)
