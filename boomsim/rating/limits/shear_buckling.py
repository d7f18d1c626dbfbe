"""Shear buckling: a thin web between two pads buckles askew before its steel yields in shear.

EN 1993-1-5:2006, section 5, and 7.1 where the section is bent as well.
"""

import numpy as np

from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.boom.internal_forces import Forces
from boomsim.mechanics.boom.stations import PER_SECTION
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.sections.shear_buckling_factor import beside_bending
from boomsim.rating.limits.limit_kind import EVERY_SECTION, Case, Kind, largest_of_sections
from boomsim.rating.limits.plate_buckling import buckling_components, buckling_utilisation
from boomsim.rating.limits.strengths import Strengths


def shear_utilisation(forces: Forces, *, bear: Strengths) -> Array:
    """Largest share of its shear strength that any plate of a section uses, eta_3.

    Returns
    -------
    ndarray, shape (configurations, K, cells)
        [1]
    """
    used = np.zeros_like(forces.moment)
    twisted = np.any(forces.shear_side) or np.any(forces.torsion)
    for i, of_plates in enumerate(bear.shear):
        own = slice(i * PER_SECTION, (i + 1) * PER_SECTION)
        up, across, torque = (
            np.abs(force[:, own]) for force in (forces.shear, forces.shear_side, forces.torsion)
        )
        for by_up, by_across, by_torque in of_plates:
            utilisation = up * by_up
            if twisted:
                utilisation += across * by_across + torque * by_torque
            np.maximum(used[:, own], utilisation, out=used[:, own])
    return used


def _along(forces: Forces, *, bear: Strengths, boom: Condensed) -> Array:
    """Shear by itself, or with what bending leaves of the plate."""
    sheared = shear_utilisation(forces, bear=bear)
    return np.maximum(
        sheared,
        beside_bending(sheared, bending_utilisation=buckling_utilisation(forces, bear=bear)),
    )


def _components(forces: Forces, *, station: int, section: int, bear: Strengths) -> dict[str, float]:
    """What shear uses, and what eq. (4.15) sums where eq. (7.1) governs."""
    sheared = float(shear_utilisation(forces, bear=bear)[0, station, 0])
    bent = buckling_components(forces, station=station, section=section, bear=bear)
    both = float(
        beside_bending(np.array(sheared), bending_utilisation=np.array(sum(bent.values())))
    )
    if both <= sheared:
        return {"shear": sheared}
    return {"shear": (2.0 * sheared - 1.0) ** 2, **bent}


def _utilisation(case: Case) -> Array:
    return largest_of_sections(_along(case.factored_forces, bear=case.bear, boom=case.boom))


SHEAR_BUCKLING = Kind(
    name="shear buckling",
    words="shear buckling in",
    short="webs wrinkle",
    code="v",
    utilisation=_utilisation,
    of=EVERY_SECTION,
    along=_along,
    components=_components,
)
