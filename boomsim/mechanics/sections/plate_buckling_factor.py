"""Buckling of one internal plate, EN 1993-1-5:2006 section 4.4 and Table 4.1.

Derived in docs/theory.md, section 4.
"""

from math import sqrt

LEAST_STRESS_RATIO = -3.0
"""Table 4.1 ends here; a plate in steeper bending is given this ratio's factor."""


def buckling_factor(stress_ratio: float) -> float:
    """k_sigma of an internal plate.

    Parameters
    ----------
    stress_ratio : float
        psi, stress at the less compressed edge over the other, tension negative, -3 to 1 [1]

    Returns
    -------
    float
        k_sigma, EN 1993-1-5:2006 Table 4.1 [1]

    Examples
    --------
    >>> buckling_factor(1.0), buckling_factor(-1.0)
    (4.0, 23.9)
    """
    psi = stress_ratio
    if not LEAST_STRESS_RATIO <= psi <= 1.0:
        raise ValueError(
            f"A stress ratio of {psi} is outside Table 4.1, which runs from -3 to 1. Divide by "
            "the larger compressive stress of the two edges."
        )
    if psi == 1.0:
        return 4.0
    if psi >= 0.0:
        return 7.81 if psi == 0.0 else 8.2 / (1.05 + psi)
    if psi > -1.0:
        return 7.81 - 6.29 * psi + 9.78 * psi**2
    return 23.9 if psi == -1.0 else 5.98 * (1.0 - psi) ** 2


def plate_slenderness(
    width: float,
    *,
    thickness: float,
    yield_stress: float,
    stress_ratio: float = 1.0,
    modulus: float = 210e9,
) -> float:
    """lambda_p = sqrt(f_y / sigma_cr) = (b / t) / (28.4 epsilon sqrt(k_sigma)).

    Parameters
    ----------
    width, thickness : float
        b and t of the plate [m]
    yield_stress : float
        f_y [Pa]
    stress_ratio : float
        psi [1]
    modulus : float
        E; epsilon = sqrt(235 MPa / f_y) is multiplied by sqrt(E / 210 GPa) [Pa]

    Returns
    -------
    float
        EN 1993-1-5:2006, 4.4(2) [1]

    Examples
    --------
    >>> round(plate_slenderness(60.0, thickness=1.0, yield_stress=355e6), 3)
    1.298
    """
    b, t, f_y = width, thickness, yield_stress
    if not (b > 0 and t > 0 and f_y > 0 and modulus > 0):
        raise ValueError(
            f"Width {b} m, thickness {t} m, yield stress {f_y} Pa and modulus {modulus} Pa "
            "of a plate must all be positive."
        )
    epsilon = sqrt(235e6 / f_y * modulus / 210e9)
    return b / t / (28.4 * epsilon * sqrt(buckling_factor(stress_ratio)))


def stocky_limit(stress_ratio: float) -> float:
    """Slenderness up to which a plate is fully effective, 0.5 + sqrt(0.085 - 0.055 psi).

    Parameters
    ----------
    stress_ratio : float
        psi [1]

    Returns
    -------
    float
        EN 1993-1-5:2006, 4.4(2) with corrigendum AC:2009 [1]

    Examples
    --------
    >>> round(stocky_limit(1.0), 3)
    0.673
    """
    return 0.5 + sqrt(0.085 - 0.055 * stress_ratio)


def reduction(slenderness: float, *, stress_ratio: float) -> float:
    """rho, the share of the compressed width that stays effective.

    Parameters
    ----------
    slenderness : float
        lambda_p [1]
    stress_ratio : float
        psi [1]

    Returns
    -------
    float
        rho = (lambda_p - 0.055 (3 + psi)) / lambda_p^2, at most 1; EN 1993-1-5:2006, eq. (4.2) [1]

    Examples
    --------
    >>> reduction(0.6, stress_ratio=1.0), round(reduction(2.0, stress_ratio=1.0), 3)
    (1.0, 0.445)
    """
    lambda_p, psi = slenderness, stress_ratio
    if lambda_p <= stocky_limit(psi):
        return 1.0
    return min(1.0, (lambda_p - 0.055 * (3.0 + psi)) / lambda_p**2)


def effective_widths(width: float, *, stress_ratio: float, share: float) -> tuple[float, float]:
    """Where the effective width lies: b_e1 at the more compressed edge, b_e2 the rest.

    With psi < 0 b_e2 ends at the neutral axis and the stretched part stays as well.

    Parameters
    ----------
    width : float
        b, or of psi < 0 the whole plate with its stretched part [m]
    stress_ratio : float
        psi [1]
    share : float
        rho [1]

    Returns
    -------
    tuple of float
        b_e1 and b_e2, EN 1993-1-5:2006 Table 4.1 [m]

    Examples
    --------
    >>> effective_widths(1.0, stress_ratio=1.0, share=0.5)
    (0.25, 0.25)
    """
    psi, rho = stress_ratio, share
    if psi >= 0.0:
        b_eff = rho * width
        b_e1 = 2.0 * b_eff / (5.0 - psi)
    else:
        b_eff = rho * width / (1.0 - psi)
        b_e1 = 0.4 * b_eff
    return b_e1, b_eff - b_e1
