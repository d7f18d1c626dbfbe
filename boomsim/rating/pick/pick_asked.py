"""What an operator has measured, weighed and read before a pick; None for what nobody looked at."""

from dataclasses import dataclass

import numpy as np

from boomsim.mechanics.geometry import Array
from boomsim.rating.around.float_loads import slews_of
from boomsim.rating.setup import Setup, rear_sector
from boomsim.rating.setup_variants import with_sector

DEGREE = np.radians(1.0)
"""Between slew angles that are tried on a swing [rad]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """One pick.

    Attributes
    ----------
    radius : float
        Measured with the hook empty and over the load, where it hangs farthest out [m]
    load : float
        Net: what is hung on, without hook block and slings [kg]
    jib : float
        Deduction for a jib stowed on the boom [kg]
    swing : tuple of float or None
        Slew angles from which to which the boom turns with the load; None for a whole sector [rad]
    sector : str or None
        Of the chart in hand, "around" or "rear"; None: the one that the swing asks for
    wind, load_area : float or None
        Gusts at the boom head [m/s]; wind area of the load with its shape coefficient, for each
        kilogram of it [m2/kg]
    level : float or None
        Reading of the level, in its worst direction [rad]
    bearing, mat : float or None
        Pressure that the ground bears [Pa]; area under each float, None for the float alone [m2]
    block : float or None
        What is stamped on the hook block [kg]
    misread : float
        By how much a radius is easily read too short: what that would cost is told [m]
    """

    radius: float
    load: float
    jib: float = 0.0
    swing: tuple[float, ...] | None = None
    sector: str | None = None
    wind: float | None = None
    load_area: float | None = None
    level: float | None = None
    bearing: float | None = None
    mat: float | None = None
    block: float | None = None
    misread: float = 0.5


def refuse(asked: Asked) -> None:
    """Refuse figures that nobody can have measured.

    Raises
    ------
    ValueError
        Says which, and what is needed.
    """
    bounds = (
        ("--radius", asked.radius, 0.1, 1e3, "m, from the axis of rotation"),
        ("--load", asked.load, 1e-3, 1e7, "kg, without hook block and slings"),
        ("--jib", asked.jib, 0.0, 1e6, "kg"),
        ("--wind", asked.wind, 0.0, 60.0, "m/s"),
        ("--load-area", asked.load_area, 0.0, 0.1, "m2 for each kilogram"),
        ("--level", asked.level, 0.0, 0.18, "rad, some ten degrees, whichever way it leans"),
        ("--bearing", asked.bearing, 1e3, 1e8, "Pa"),
        ("--block", asked.block, 1.0, 1e7, "kg"),
        ("--misread", asked.misread, 0.0, 10.0, "m"),
    )
    for name, value, least, most, unit in bounds:
        if value is not None and not least <= value <= most:
            raise ValueError(
                f"{name}: {value:g} is outside {least:g} to {most:g} {unit}. Give a value inside."
            )
    if asked.swing is not None and not 1 <= len(asked.swing) <= 2:
        raise ValueError(
            f"--slew: {len(asked.swing)} angles are no swing. Give one, or two as '0 deg, 90 deg'."
        )


def leaves_rear(setup: Setup, asked: Asked) -> bool:
    """Whether the boom comes out of the sector over the rear.

    Returns
    -------
    bool
        Of a whole sector: whether it is all around
    """
    if asked.swing is None:
        return setup.sector != "over the rear"
    inside = np.abs(np.angle(np.exp(1j * slews(setup, asked)))) <= rear_sector(setup.support) + 1e-9
    return not bool(np.all(inside))


def slews(setup: Setup, asked: Asked) -> Array:
    """Slew angles that the boom passes, every degree, both ends and all corners between.

    Parameters
    ----------
    setup : Setup
        Of the whole sector where no swing is given

    Returns
    -------
    ndarray, shape (slews,)
        [rad]
    """
    if asked.swing is None:
        return slews_of(setup)
    low, high = min(asked.swing), max(asked.swing)
    even = np.linspace(low, high, max(2, int(np.ceil((high - low) / DEGREE)) + 1))
    turns = 2.0 * np.pi * np.arange(-2, 3)
    jacks = [np.arctan2(y, x) + turn for x, y in setup.support.points for turn in turns]
    return np.unique(np.concatenate([even, [jack for jack in jacks if low <= jack <= high]]))


def in_sector(setup: Setup, asked: Asked) -> Setup:
    """Set the crane up for the chart in hand, or the one that the swing asks for."""
    if asked.sector is not None:
        return with_sector(setup, slew=asked.sector)
    if asked.swing is None:
        return setup
    return with_sector(setup, slew="around" if leaves_rear(setup, asked) else "rear")
