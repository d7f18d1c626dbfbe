"""Plate buckling: thin plates under compression leave only a part of the section to work."""

from functools import lru_cache

import numpy as np

from boomsim.mechanics.boom.critical_load import SEARCHES
from boomsim.mechanics.boom.internal_forces import Forces
from boomsim.mechanics.boom.stations import PER_SECTION
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.sections.section_resistance import plate_utilisation
from boomsim.rating.limits.limit_kind import EVERY_SECTION, Case, Kind, largest_of_sections
from boomsim.rating.limits.strengths import Strengths


@lru_cache(maxsize=SEARCHES)
def buckling_utilisation(forces: Forces, *, bear: Strengths) -> Array:
    """Utilisation of the effective sections that plate buckling leaves, EN 1993-1-5 eq. (4.15).

    Kept for the last forces of each search, for two limits ask for it.

    Returns
    -------
    ndarray, shape (configurations, K, cells)
        [1]
    """
    used = np.empty_like(forces.moment)
    for i, section in enumerate(bear.effective):
        own = slice(i * PER_SECTION, (i + 1) * PER_SECTION)
        used[:, own] = plate_utilisation(
            section,
            axial=forces.axial[:, own],
            moment_y=forces.moment[:, own],
            moment_z=forces.moment_side[:, own],
            strength=float(bear.stress[i]),
        ).total
    return used


def buckling_components(
    forces: Forces, *, station: int, section: int, bear: Strengths
) -> dict[str, float]:
    """Share of the utilisation at one station by each component.

    Parameters
    ----------
    forces : Forces
        Of one cell

    Returns
    -------
    dict of str to float
        They add up to the utilisation [1]
    """
    utilisation = plate_utilisation(
        bear.effective[section],
        axial=float(forces.axial[0, station, 0]),
        moment_y=float(forces.moment[0, station, 0]),
        moment_z=float(forces.moment_side[0, station, 0]),
        strength=float(bear.stress[section]),
    )
    return {
        "axial force": float(utilisation.axial),
        "bending": float(utilisation.luffing),
        "sideways bending": float(utilisation.sideways),
    }


def _utilisation(case: Case) -> Array:
    return largest_of_sections(buckling_utilisation(case.factored_forces, bear=case.bear))


PLATE_BUCKLING = Kind(
    name="plate buckling",
    words="plate buckling in",
    short="plates buckle",
    code="p",
    utilisation=_utilisation,
    of=EVERY_SECTION,
    along=lambda forces, bear, boom: buckling_utilisation(forces, bear=bear),
    components=buckling_components,
)
