"""Shear buckling of a section's flat plates, EN 1993-1-5:2006 section 5.

Derived in docs/theory.md, section 4.
"""

from math import sqrt

import numpy as np

from boomsim.mechanics.geometry import Array
from boomsim.mechanics.sections.section_properties import Properties

LONG_PANEL_FACTOR = 5.34
"""k_tau of a long plate without transverse stiffeners, Annex A.3."""

SLENDER_FROM = 0.83
"""Slenderness above which a plate buckles before it yields in shear, Table 5.1 with eta = 1."""


def shear_slenderness(
    width: float, *, thickness: float, yield_stress: float, modulus: float = 210e9
) -> float:
    """lambda_w = h_w / (37.4 t epsilon sqrt(k_tau)), for a long plate without stiffeners.

    Parameters
    ----------
    width, thickness : float
        h_w and t of the plate [m]
    yield_stress : float
        f_yw [Pa]
    modulus : float
        E; epsilon = sqrt(235 MPa / f_y) is multiplied by sqrt(E / 210 GPa) [Pa]

    Returns
    -------
    float
        EN 1993-1-5:2006, eq. (5.6) [1]

    Examples
    --------
    >>> round(shear_slenderness(100.0, thickness=1.0, yield_stress=235e6), 3)
    1.157
    """
    epsilon = sqrt(235e6 / yield_stress * modulus / 210e9)
    return width / thickness / (37.4 * epsilon * sqrt(LONG_PANEL_FACTOR))


def shear_reduction(slenderness: float) -> float:
    """chi_w, the share of the yield stress in shear that a plate reaches.

    The boom's mouths are taken as non-rigid end posts, and eta as 1: the standard lets steels up
    to S460 count on 1.2, strain hardening included.

    Parameters
    ----------
    slenderness : float
        lambda_w [1]

    Returns
    -------
    float
        EN 1993-1-5:2006, Table 5.1 [1]

    Examples
    --------
    >>> shear_reduction(0.5), shear_reduction(1.66)
    (1.0, 0.5)
    """
    return 1.0 if slenderness <= SLENDER_FROM else SLENDER_FROM / slenderness


def shear_strengths(
    shape: Properties, *, yield_stress: float, factor: float, modulus: float = 210e9
) -> Array:
    """Shear stress that each plate bears, chi_w f_yw / (sqrt(3) gamma_M1).

    Parameters
    ----------
    shape : Properties
        Of the profile [m]
    yield_stress : float
        f_yw [Pa]
    factor : float
        gamma_M1 [1]
    modulus : float
        E [Pa]

    Returns
    -------
    ndarray, shape (plates,)
        EN 1993-1-5:2006, eq. (5.2) without the flanges' help, over the plate's area [Pa]
    """
    chi = [
        shear_reduction(
            shear_slenderness(
                plate.width, thickness=plate.thickness, yield_stress=yield_stress, modulus=modulus
            )
        )
        for plate in shape.plates
    ]
    return np.array(chi) * yield_stress / (sqrt(3.0) * factor)


def utilisation_of_forces(shape: Properties, *, strengths: Array) -> Array:
    """Share of its shear strength that one unit of each force uses of every plate that can lead.

    A transverse force is an average over the plates that carry it, as in
    :func:`boomsim.mechanics.sections.elastic_stress.shear_stress`. Plates that another one always
    leads are left out.

    Parameters
    ----------
    shape : Properties
        Of the profile [m]
    strengths : ndarray, shape (plates,)
        From :func:`shear_strengths` [Pa]

    Returns
    -------
    ndarray, shape (plates that can lead, 3)
        By a shear force in the luffing plane [1/N], one sideways [1/N] and a torque [1/(N m)]
    """
    plates = shape.plates
    each = np.column_stack(
        [
            [plate.rise / shape.shear_area_y for plate in plates],
            [plate.run / shape.shear_area_z for plate in plates],
            [1.0 / (2.0 * shape.enclosed_area * plate.thickness) for plate in plates],
        ]
    )
    # Plates that mirror each other differ by rounding alone.
    used: Array = np.unique((each / strengths[:, None]).round(18), axis=0)
    led = np.all(used[:, None] <= used[None], axis=2)
    np.fill_diagonal(led, False)
    leading: Array = used[~np.any(led, axis=1)]
    return leading


def beside_bending(shear_utilisation: Array, *, bending_utilisation: Array) -> Array:
    """Utilisation of a section that is sheared and bent at once, eta_1 + (2 eta_3 - 1)^2.

    Shear up to half of what a plate bears takes nothing from bending. The standard multiplies the
    square by 1 - M_f,Rd/M_pl,Rd, what the flanges do not carry alone; 1 is taken.

    Parameters
    ----------
    shear_utilisation : ndarray
        eta_3 [1]
    bending_utilisation : ndarray
        eta_1 [1]

    Returns
    -------
    ndarray
        EN 1993-1-5:2006, eq. (7.1); nought where shear does not count [1]
    """
    beyond = 2.0 * shear_utilisation - 1.0
    return np.where(beyond > 0.0, bending_utilisation + beyond * beyond, 0.0)
