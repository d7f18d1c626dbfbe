"""What acts on the boom: gravity on ground that leans, and wind."""

from math import cos as cosine
from math import sin as sine

from boomsim.gravity import GRAVITY
from boomsim.machine.model import Disturbances

AIR_FACTOR = 0.613
"""Half the density of air: pressure = 0.613 v2 (ISO 4302) [kg/m3]."""


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
