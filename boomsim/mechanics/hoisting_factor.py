"""Factor on a load that is lifted off the ground, by hoisting speed and class (EN 13001-2)."""

HOISTING_CLASSES = {1: (1.05, 0.17), 2: (1.10, 0.34), 3: (1.15, 0.51), 4: (1.20, 0.68)}
"""Least factor and slope beta2 [s/m] of hoisting classes HC1 to HC4 (EN 13001-2)."""


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
