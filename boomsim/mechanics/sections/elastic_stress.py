"""Elastic stress of a section, apart for each action so that a limit can say what used it.

Tension is positive. ``sigma = n/A - m_y y/I_y - m_z z/I_z``: m_y positive curls the axis up
and so compresses the top; m_z positive curls it towards positive z. Stress is taken at the
outer surface, not at the midline.

Derived in docs/theory.md, section 4.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from boomsim.mechanics.sections.section_properties import Properties

Array = NDArray[np.float64]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class NormalStress:
    """Normal stress at points of a section; the last axis runs over the points.

    Attributes
    ----------
    axial, luffing, sideways : ndarray, shape (..., points)
        From the normal force, m_y and m_z, tension positive [Pa]
    total : ndarray, shape (..., points)
        Their sum [Pa]
    """

    axial: Array
    luffing: Array
    sideways: Array
    total: Array


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ShearStress:
    """Shear stress along the plates, as magnitudes; the last axis runs over the plates.

    Attributes
    ----------
    torsion, transverse : ndarray, shape (..., plates)
        From the torque and from both shear forces [Pa]
    total : ndarray, shape (..., plates)
        Their sum: on one side of the section they add [Pa]
    """

    torsion: Array
    transverse: Array
    total: Array


def fibre_points(shape: Properties) -> tuple[tuple[float, float], ...]:
    """Points (z, y) farthest up, down, left and right, on the centroid's axes.

    Parameters
    ----------
    shape : Properties
        Of the profile [m]

    Returns
    -------
    tuple of (float, float)
        Top, bottom, left and right, from the centroid [m]
    """
    return (0.0, shape.top), (0.0, -shape.bottom), (-shape.left, 0.0), (shape.right, 0.0)


def normal_stress(
    shape: Properties,
    *,
    axial: ArrayLike,
    moment_y: ArrayLike,
    moment_z: ArrayLike,
    points: Sequence[tuple[float, float]] | None = None,
) -> NormalStress:
    """Normal stress of plane bending in two planes.

    Plane sections stay plane; the whole section works, plate buckling is in
    :mod:`boomsim.mechanics.sections.section_resistance`.

    Parameters
    ----------
    shape : Properties
        Of the profile [m]
    axial : array_like
        n, tension positive [N]
    moment_y : array_like
        m_y, positive curls the axis up [N m]
    moment_z : array_like
        m_z, positive curls the axis towards positive z [N m]
    points : sequence of (float, float), optional
        (z, y) from the centroid; the outer corners if not given [m]

    Returns
    -------
    NormalStress
        Arrays of shape (..., points) [Pa]

    Examples
    --------
    A drooping boom is stretched on top:

    >>> from boomsim.machine.shapes.box import box
    >>> from boomsim.mechanics.sections.section_properties import properties
    >>> shape = properties(box(0.5, width=0.4, top=0.01, bottom=0.01, web=0.01))
    >>> made = normal_stress(shape, axial=0.0, moment_y=-1e5, moment_z=0.0,
    ...                      points=fibre_points(shape))
    >>> bool(made.total[0] > 0 > made.total[1])
    True
    """
    z, y = np.array(shape.corners if points is None else points, dtype=float).T
    n, m_y, m_z = (np.asarray(f, dtype=float)[..., None] for f in (axial, moment_y, moment_z))
    from_n = n / shape.area + 0.0 * y
    from_y = -m_y * y / shape.i_y
    from_z = -m_z * z / shape.i_z
    return NormalStress(
        axial=from_n, luffing=from_y, sideways=from_z, total=from_n + from_y + from_z
    )


def shear_stress(
    shape: Properties, *, torque: ArrayLike, shear_y: ArrayLike, shear_z: ArrayLike
) -> ShearStress:
    """Shear stress of every plate: T / (2 A_e t), and V / A_v along the plate.

    The transverse part is an average over the plates that carry it, V / (2 h t) in a box, where
    the peak at the neutral axis is up to 20 % higher (exact in a thin tube). Added as magnitudes.

    Parameters
    ----------
    shape : Properties
        Of the profile [m]
    torque : array_like
        T about the section's axis [N m]
    shear_y, shear_z : array_like
        Shear force in the luffing plane and sideways [N]

    Returns
    -------
    ShearStress
        Arrays of shape (..., plates) [Pa]
    """
    plates = shape.plates
    t = np.array([plate.thickness for plate in plates])
    T, V_y, V_z = (
        np.abs(np.asarray(f, dtype=float))[..., None] for f in (torque, shear_y, shear_z)
    )
    torsion = T / (2.0 * shape.enclosed_area * t)
    transverse = V_y / shape.shear_area_y * [plate.rise for plate in plates]
    transverse = transverse + V_z / shape.shear_area_z * [plate.run for plate in plates]
    return ShearStress(torsion=torsion, transverse=transverse, total=torsion + transverse)


def von_mises(normal: ArrayLike, *, shear: ArrayLike) -> Array:
    """Equivalent stress, sqrt(sigma^2 + 3 tau^2).

    Parameters
    ----------
    normal : array_like
        sigma [Pa]
    shear : array_like
        tau, broadcast with sigma [Pa]

    Returns
    -------
    ndarray
        EN 1993-1-1:2005, eq. (6.1) with one normal and one shear stress [Pa]

    Examples
    --------
    >>> float(von_mises(2.0, shear=2.0))
    4.0
    """
    sigma, tau = np.asarray(normal, dtype=float), np.asarray(shear, dtype=float)
    equivalent: Array = np.sqrt(sigma**2 + 3.0 * tau**2)
    return equivalent
