"""What acts on the boom: gravity on ground that leans, wind, hoisting dynamics."""

from math import cos as cosine
from math import sin as sine

from boomsim.gravity import GRAVITY as GRAVITY
from boomsim.machine.model import Disturbances

AIR_FACTOR = 0.613
"""Half the density of air: pressure = 0.613 v2 (ISO 4302) [kg/m3]."""

HOISTING_CLASSES = {1: (1.05, 0.17), 2: (1.10, 0.34), 3: (1.15, 0.51), 4: (1.20, 0.68)}
"""Least factor and slope beta2 [s/m] of hoisting classes HC1 to HC4 (EN 13001-2)."""


def wind_pressure(speed: float) -> float:
    """Dynamic pressure q = 0.613 v2 (ISO 4302).

    Parameters
    ----------
    speed : float
        Gust speed [m/s]

    Returns
    -------
    float
        Pressure [Pa]
    """
    return AIR_FACTOR * speed**2


def gusts(change: Disturbances) -> tuple[float, float]:
    """Dynamic pressure of the wind from behind the boom, and of that across it.

    Returns
    -------
    behind, across : float
        [Pa]
    """
    if change.wind_across:
        return 0.0, wind_pressure(change.wind_speed)
    return wind_pressure(change.wind_speed), wind_pressure(change.wind_beside)


def hoisting_factor(speed: float, *, hoist_class: int) -> float:
    """Factor phi2 = phi2_min + beta2 v on a load lifted off the ground (EN 13001-2).

    A hoist that does not move gives 1: the factor is for lifting, not for hanging.

    Parameters
    ----------
    speed : float
        Steady hoisting speed [m/s]
    hoist_class : int
        1 (soft) to 4 (stiff) [1]

    Returns
    -------
    float
        phi2 [1]

    Raises
    ------
    ValueError
        If the speed is negative or no number.
    """
    if not speed >= 0.0:
        raise ValueError(f"The hoisting speed must be 0 m/s or more, and this is {speed:g} m/s.")
    least, slope = HOISTING_CLASSES[hoist_class]
    return least + slope * speed if speed > 0.0 else 1.0


def gravity_in_base(
    cos: float, sin: float, *, lean: float, lean_across: float
) -> tuple[float, float, float]:
    """Acceleration of free fall in axes of the base section.

    Parameters
    ----------
    cos, sin : float
        Of the boom angle against the crane's own horizontal [1]
    lean, lean_across : float
        Ground out of level, downhill ahead of the boom and to its left [rad]

    Returns
    -------
    along, above : float
        Along the base section and upwards from it [m/s2]
    left : float
        Across, to the left [m/s2]
    """
    in_plane = GRAVITY * cosine(lean_across)
    level, downhill = in_plane * cosine(lean), in_plane * sine(lean)
    return (
        downhill * cos - level * sin,
        -level * cos - downhill * sin,
        GRAVITY * sine(lean_across),
    )
