"""Yield: the largest stress in a section over what its steel may bear."""

import numpy as np

from boomsim.mechanics.boom.internal_forces import Forces
from boomsim.mechanics.boom.stations import PER_SECTION
from boomsim.mechanics.geometry import Array
from boomsim.rating.limits.limit_kind import EVERY_SECTION, Case, Kind, largest_of_sections
from boomsim.rating.limits.strengths import Strengths


def stress_utilisation(forces: Forces, *, bear: Strengths) -> Array:
    """Largest von Mises stress at the corners of the gross section over the allowed stress.

    Normal stress of axial force and both moments; shear of the webs and of torsion, which is
    nowhere larger than here, is taken at the corner too.

    Returns
    -------
    ndarray, shape (configurations, K, cells)
        [1]
    """
    shapes = bear.shapes
    axial = forces.axial * _each([1.0 / p.area for p in shapes])
    top = np.abs(axial - forces.moment * _each([1.0 / p.modulus_top for p in shapes]))
    bottom = np.abs(axial + forces.moment * _each([1.0 / p.modulus_bottom for p in shapes]))
    normal = np.maximum(top, bottom)
    shear = np.abs(forces.shear) * _each([1.0 / p.shear_area_y for p in shapes])
    if np.any(forces.moment_side):
        normal = normal + np.abs(forces.moment_side) * _each(
            [1.0 / min(p.modulus_left, p.modulus_right) for p in shapes]
        )
        shear = shear + np.abs(forces.torsion) * _each(
            [1.0 / (2.0 * p.enclosed_area * min(w.thickness for w in p.plates)) for p in shapes]
        )
    return np.sqrt(normal * normal + 3.0 * shear * shear) * _each(1.0 / bear.stress)


def _each(values: list[float] | Array) -> Array:
    """One value for each section, spread over its stations, shape (K, 1)."""
    return np.repeat(np.asarray(values, dtype=float), PER_SECTION)[:, None]


def stress_components(
    forces: Forces, *, station: int, section: int, bear: Strengths
) -> dict[str, float]:
    """Share of the utilisation at one station by each component.

    Parameters
    ----------
    forces : Forces
        Of one cell
    station, section : int
    bear : Strengths

    Returns
    -------
    dict of str to float
        They add up to the utilisation [1]
    """
    shape, allowed = bear.shapes[section], bear.stress[section]
    axial = float(forces.axial[0, station, 0])
    up, side = float(forces.moment[0, station, 0]), float(forces.moment_side[0, station, 0])
    top = axial / shape.area - up / shape.modulus_top
    bottom = axial / shape.area + up / shape.modulus_bottom
    sign, modulus = (
        (np.sign(top), -shape.modulus_top)
        if abs(top) > abs(bottom)
        else (np.sign(bottom), shape.modulus_bottom)
    )
    across = abs(side) / min(shape.modulus_left, shape.modulus_right)
    parts = {
        "axial force": float(sign * axial / shape.area / allowed),
        "bending": float(sign * up / modulus / allowed),
        "sideways bending": float(across / allowed),
    }
    whole = float(stress_utilisation(forces, bear=bear)[0, station, 0])
    parts["shear"] = whole - sum(parts.values())
    return parts


def _utilisation(case: Case) -> Array:
    return largest_of_sections(stress_utilisation(case.factored_forces, bear=case.bear))


YIELDING = Kind(
    name="stress",
    words="yield in",
    short="steel yields",
    code="y",
    utilisation=_utilisation,
    of=EVERY_SECTION,
    along=lambda forces, bear, boom: stress_utilisation(forces, bear=bear),
    components=stress_components,
)
