"""What a wear pad does locally: its pressure, and crushing of the webs behind it.

EN 1993-1-5:2006, section 6, for a load through one flange.

Derived in docs/theory.md, section 4.
"""

from dataclasses import dataclass
from math import inf, sqrt

import numpy as np
from numpy.typing import ArrayLike, NDArray

from boomsim.machine.model import Pad
from boomsim.mechanics.sections.flat_plates import Plate
from boomsim.mechanics.sections.section_properties import Properties

Array = NDArray[np.float64]

PADS_PER_PAIR = 2


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Crushing:
    """Resistance to a local transverse force, and the steps to it.

    Attributes
    ----------
    resistance : float
        F_Rd of the whole section, vertically [N]
    loaded_length : float
        l_y, effective loaded length [m]
    slenderness : float
        lambda_F [1]
    reduction : float
        chi_F [1]
    """

    resistance: float
    loaded_length: float
    slenderness: float
    reduction: float


def pad_pressure(force: ArrayLike, *, pad: Pad) -> Array:
    """Pressure under a pair of pads that share a joint's force evenly.

    Parameters
    ----------
    force : array_like
        Of the joint, either way [N]
    pad : Pad
        One of the pair [m]

    Returns
    -------
    ndarray
        |F| / (2 length width) [Pa]

    Examples
    --------
    >>> round(float(pad_pressure(-20e3, pad=Pad(length=0.1, width=0.05, pressure=20e6))))
    2000000
    """
    pressure: Array = np.abs(np.asarray(force, dtype=float)) / (
        PADS_PER_PAIR * pad.length * pad.width
    )
    return pressure


def crushing_resistance(
    shape: Properties,
    *,
    side: str,
    bearing: float,
    yield_stress: float,
    factor: float,
    modulus: float = 210e9,
    spacing: float = inf,
    from_end: float | None = None,
) -> Crushing:
    """Local resistance of the two webs to a pad that presses on the top or bottom plate.

    Webs are the plates on both sides of the loaded one; the force in a sloping web has its
    vertical component. Away from the end the load goes through one flange and shear in the
    webs carries it, type (a); near an unstiffened end it is type (c).

    Parameters
    ----------
    shape : Properties
        Of the profile [m]
    side : str
        Plate the pad presses on: "top" or "bottom"
    bearing : float
        s_s, length of stiff bearing along the boom [m]
    yield_stress : float
        f_y of web and flange [Pa]
    factor : float
        gamma_M1 [1]
    modulus : float
        E [Pa]
    spacing : float
        a, between transverse stiffeners; infinite without [m]
    from_end : float or None
        c, from the bearing to an unstiffened end; None is away from the end or stiffened [m]

    Returns
    -------
    Crushing
        F_Rd of the section and the steps to it [N]
    """
    flange, webs = _flange_and_webs(shape, side)
    epsilon = sqrt(235e6 / yield_stress * modulus / 210e9)
    each = [
        web_crushing(
            web.width,
            web=web.thickness,
            flange=flange.thickness,
            flange_width=min(flange.width / 2.0, 15.0 * epsilon * flange.thickness) + web.thickness,
            bearing=bearing,
            yield_stress=yield_stress,
            factor=factor,
            modulus=modulus,
            spacing=spacing,
            from_end=from_end,
        )
        for web in webs
    ]
    weaker = min(each, key=lambda made: made.resistance)
    return Crushing(
        resistance=sum(m.resistance * w.rise for m, w in zip(each, webs, strict=True)),
        loaded_length=weaker.loaded_length,
        slenderness=weaker.slenderness,
        reduction=weaker.reduction,
    )


def web_crushing(
    height: float,
    *,
    web: float,
    flange: float,
    flange_width: float,
    bearing: float,
    yield_stress: float,
    factor: float,
    modulus: float = 210e9,
    spacing: float = inf,
    from_end: float | None = None,
) -> Crushing:
    """Resistance of one web, F_Rd = chi_F l_y t_w f_y / gamma_M1.

    ``F_cr = 0.9 k_F E t_w^3 / h_w``, ``chi_F = 0.5 / lambda_F <= 1``,
    ``lambda_F = sqrt(l_y t_w f_y / F_cr)``.

    Parameters
    ----------
    height : float
        h_w, clear height of the web [m]
    web, flange : float
        t_w and t_f [m]
    flange_width : float
        b_f that goes with this web, at most 15 epsilon t_f each side of it [m]
    bearing : float
        s_s, at most h_w is used [m]
    yield_stress : float
        f_y of web and flange [Pa]
    factor : float
        gamma_M1 [1]
    modulus : float
        E [Pa]
    spacing : float
        a, between transverse stiffeners; infinite without [m]
    from_end : float or None
        c, from the bearing to an unstiffened end; None is type (a) [m]

    Returns
    -------
    Crushing
        EN 1993-1-5:2006, 6.2 to 6.5 [N]
    """
    h_w, t_w, t_f, b_f, f_y, E = height, web, flange, flange_width, yield_stress, modulus
    s_s, a = min(bearing, height), spacing
    k_F = _force_factor(h_w, s_s=s_s, a=a, c=from_end)
    F_cr = 0.9 * k_F * E * t_w**3 / h_w

    def loaded(m_2: float) -> tuple[float, float]:
        spread = s_s + 2.0 * t_f * (1.0 + sqrt(b_f / t_w + m_2))
        if from_end is not None:
            l_e = min(k_F * E * t_w**2 / (2.0 * f_y * h_w), s_s + from_end)
            by_bending = l_e + t_f * sqrt(b_f / t_w / 2.0 + (l_e / t_f) ** 2 + m_2)
            spread = min(spread, by_bending, l_e + t_f * sqrt(b_f / t_w + m_2))
        l_y = min(spread, a)
        return l_y, sqrt(l_y * t_w * f_y / F_cr)

    # m_2 counts only for lambda_F > 0.5, which itself depends on m_2.
    l_y, lambda_F = loaded(0.02 * (h_w / t_f) ** 2)
    if lambda_F <= 0.5:
        l_y, lambda_F = loaded(0.0)
    chi_F = min(1.0, 0.5 / lambda_F)
    return Crushing(
        resistance=chi_F * l_y * t_w * f_y / factor,
        loaded_length=l_y,
        slenderness=lambda_F,
        reduction=chi_F,
    )


def with_bending(crushing_utilisation: ArrayLike, *, bending_utilisation: ArrayLike) -> Array:
    """Utilisation of a web that is crushed and bent at once, (eta_2 + 0.8 eta_1) / 1.4.

    Parameters
    ----------
    crushing_utilisation : array_like
        eta_2 = F / F_Rd [1]
    bending_utilisation : array_like
        eta_1 of eq. (4.15), see :func:`boomsim.mechanics.sections.section_resistance.plate_use` [1]

    Returns
    -------
    ndarray
        EN 1993-1-5:2006, eq. (7.2); at most 1 is needed [1]
    """
    eta_2, eta_1 = (
        np.asarray(crushing_utilisation, dtype=float),
        np.asarray(bending_utilisation, dtype=float),
    )
    used: Array = (eta_2 + 0.8 * eta_1) / 1.4
    return used


def _force_factor(h_w: float, *, s_s: float, a: float, c: float | None) -> float:
    """k_F, Figure 6.1: type (a), or type (c) at an end."""
    if c is None:
        return 6.0 + 2.0 * (h_w / a) ** 2
    return min(6.0, 2.0 + 6.0 * (s_s + c) / h_w)


def _flange_and_webs(shape: Properties, side: str) -> tuple[Plate, tuple[Plate, Plate]]:
    """Outermost plate on a side and its two neighbours."""
    if side not in ("top", "bottom"):
        raise ValueError(f'A pad presses on the "top" or the "bottom", not on "{side}".')
    sign = 1.0 if side == "top" else -1.0
    plates = shape.plates
    k = max(range(len(plates)), key=lambda j: sign * (plates[j].start[1] + plates[j].end[1]))
    return plates[k], (plates[k - 1], plates[(k + 1) % len(plates)])
