"""Web crushing and bending at once: at the outer section's mouth both are largest.

EN 1993-1-5:2006, eq. (7.2), for a force on the compressed flange. The front pad presses on that
one: it holds up a section that bends down beyond it, or holds down one that bends up. A rear pad
presses on the outer section's plate in tension, which the code judges by section 6 alone.
"""

import numpy as np

from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.boom.internal_forces import Forces
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.sections.patch_loading import with_bending
from boomsim.rating.limits.limit_kind import MOVING_SECTIONS, Case, Kind, utilisation_of_joints
from boomsim.rating.limits.plate_buckling import buckling_components, buckling_utilisation
from boomsim.rating.limits.strengths import Strengths


def utilisation_at_mouths(forces: Forces, *, bear: Strengths, boom: Condensed) -> Array:
    """Utilisation by eq. (7.2) where the outer section's mouth presses on each moving section.

    Returns
    -------
    ndarray, shape (moving sections, configurations, cells)
        (eta_2 + 0.8 eta_1)/1.4 [1]
    """
    bending = buckling_utilisation(forces, bear=bear)
    mouth = boom.stations.at_mouth[:, 1:, None]
    return with_bending(
        utilisation_of_joints(forces.front_pad, strength=bear.crushing),
        bending_utilisation=np.moveaxis(np.take_along_axis(bending, mouth, axis=1), 1, 0),
    )


def _along(forces: Forces, *, bear: Strengths, boom: Condensed) -> Array:
    """The utilisation at the mouths, and none at the other stations."""
    used = np.zeros_like(forces.moment)
    at_mouths = np.moveaxis(utilisation_at_mouths(forces, bear=bear, boom=boom), 0, 1)
    np.put_along_axis(used, boom.stations.at_mouth[:, 1:, None], at_mouths, axis=1)
    return used


def _components(forces: Forces, *, station: int, section: int, bear: Strengths) -> dict[str, float]:
    """The pad's force and what eq. (4.15) sums, each with its weight in eq. (7.2)."""
    pressing = abs(float(forces.front_pad[0, section, 0])) / float(bear.crushing[section])
    bent = buckling_components(forces, station=station, section=section, bear=bear)
    return {
        "pad force": pressing / 1.4,
        **{name: 0.8 * utilisation / 1.4 for name, utilisation in bent.items()},
    }


def _utilisation(case: Case) -> Array:
    return utilisation_at_mouths(case.factored_forces, bear=case.bear, boom=case.boom)


CRUSHING_WITH_BENDING = Kind(
    name="crushing with bending",
    words="web crushing with bending at the mouth around",
    short="crushed and bent",
    code="x",
    utilisation=_utilisation,
    of=MOVING_SECTIONS,
    along=_along,
    components=_components,
)
