"""How much of a section is used when plate buckling leaves only a part of it to work.

Derived in docs/theory.md, section 4.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from boomsim.mechanics.sections.effective_section import EffectiveSection

Array = NDArray[np.float64]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class PlateUse:
    """The terms of eq. (4.15), all positive; arrays of the shape of the forces.

    Attributes
    ----------
    axial, luffing, sideways : ndarray
        Share of the strength used by n, by m_y with the shift, by m_z [1]
    total : ndarray
        Their sum [1]
    """

    axial: Array
    luffing: Array
    sideways: Array
    total: Array


def plate_utilisation(
    section: EffectiveSection,
    *,
    axial: ArrayLike,
    moment_y: ArrayLike,
    moment_z: ArrayLike,
    strength: float,
) -> PlateUse:
    """How much of a section's strength is used, plate buckling included.

    ``|n| / (A_eff f) + |m_y + n e_N| / (W_eff,y f) + |m_z| / (W_eff,z f)``,
    EN 1993-1-5:2006 eq. (4.15); tension uses the gross area and no shift. A shift that would
    relieve is left out, because it is computed at yield (as EN 1993-1-3, 6.1.3(3); from memory).

    Parameters
    ----------
    section : EffectiveSection
        Of the section [m]
    axial : array_like
        n, tension positive [N]
    moment_y : array_like
        m_y, positive curls the axis up [N m]
    moment_z : array_like
        m_z, either way [N m]
    strength : float
        f: yield stress over its factor, or allowable stress [Pa]

    Returns
    -------
    PlateUse
        Terms and sum, shape of the forces broadcast together [1]

    Examples
    --------
    >>> from boomsim.machine.shapes.box import box
    >>> from boomsim.mechanics.sections.section_properties import properties
    >>> from boomsim.mechanics.sections.effective_section import effective_section
    >>> shape = properties(box(0.22, width=0.22, top=0.01, bottom=0.01, web=0.01))
    >>> made = effective_section(shape, yield_stress=235e6)
    >>> found = plate_utilisation(made, axial=-84e3, moment_y=0.0, moment_z=0.0, strength=100e6)
    >>> round(float(found.total), 6)
    0.1
    """
    n, m_y, m_z = (np.asarray(force, dtype=float) for force in (axial, moment_y, moment_z))
    used_n = np.abs(n) / (np.where(n < 0, section.area, section.gross_area) * strength)
    used_y = _luffing_utilisation(section, m_y) / strength
    if section.shift:
        shifted = m_y + np.minimum(n, 0.0) * section.shift
        used_y = np.maximum(used_y, _luffing_utilisation(section, shifted) / strength)
    used_z = np.abs(m_z) / (section.sideways.modulus * strength)
    return PlateUse(axial=used_n, luffing=used_y, sideways=used_z, total=used_n + used_y + used_z)


def _luffing_utilisation(section: EffectiveSection, moment: Array) -> Array:
    """Stress of a luffing moment by the modulus of its direction."""
    return np.maximum(-moment / section.drooping.modulus, moment / section.lifting.modulus)
