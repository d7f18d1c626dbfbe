"""Slew angles as people say them."""

import numpy as np

NEAR = np.radians(0.5)
"""Jacks need not stand quite square for a boom to be over the side [rad]."""

NAMED = (
    (0.0, "over the rear"),
    (np.pi / 2, "over the right side"),
    (np.pi, "over the front"),
    (-np.pi / 2, "over the left side"),
)


def direction(slew: float) -> str:
    """Say where the boom points.

    Parameters
    ----------
    slew : float
        0 over the rear, anticlockwise seen from above [rad]

    Examples
    --------
    >>> direction(0.0), direction(np.radians(-135.0))
    ('over the rear', 'slewed to -135°')
    """
    return _square(slew) or f"slewed to {np.degrees(slew):.0f}°"


def over(slew: float) -> str:
    """Say which part of the carrier the boom is over, without an angle.

    Parameters
    ----------
    slew : float
        [rad]

    Examples
    --------
    >>> over(0.0), over(np.radians(-135.0))
    ('over the rear', 'over the front left corner')
    """
    along = "rear" if np.cos(slew) > 0.0 else "front"
    side = "right" if np.sin(slew) > 0.0 else "left"
    return _square(slew) or f"over the {along} {side} corner"


def _square(slew: float) -> str:
    """Words for a direction square to the carrier; empty for others."""
    for angle, words in NAMED:
        if abs(np.angle(np.exp(1j * (slew - angle)))) < NEAR:
            return words
    return ""
