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

    Returns
    -------
    str

    Examples
    --------
    >>> direction(0.0), direction(np.radians(-135.0))
    ('over the rear', 'slewed to -135°')
    """
    for angle, words in NAMED:
        if abs(np.angle(np.exp(1j * (slew - angle)))) < NEAR:
            return words
    return f"slewed to {np.degrees(slew):.0f}°"
