"""A load that does not hang still, as what it weighs hanging still: textbook formulas, one each.

All of them take the load for a point and the crane for a spring without mass, and no friction or
air slows anything: what they give is on the large side.
"""

from math import asin, floor, sqrt, tan

from boomsim.gravity import GRAVITY


def stopped_in(speed: float, *, time: float) -> float:
    """Factor on a load that is lowered and stopped evenly: 1 + v/(g t) [1].

    Parameters
    ----------
    speed : float
        Of lowering v [m/s]
    time : float
        In which it stops t, above zero [s]

    Notes
    -----
    Newton's second law, F = m (g + v/t).

    Examples
    --------
    >>> stopped_in(0.980665, time=0.5)
    1.2
    """
    return 1.0 + speed / (GRAVITY * time)


def stopped_at_once(speed: float, *, sag: float) -> float:
    """Factor on a load that moves down and is held at once: 1 + v/sqrt(g delta) [1].

    The crane is a spring that the still load stretches by delta; it takes the load's energy of
    motion up. A slack rope that comes taut while the hook goes up at v does the same to a load on
    the ground.

    Parameters
    ----------
    speed : float
        v [m/s]
    sag : float
        Stretch under the still load delta, above zero [m]

    Notes
    -----
    Strength-of-materials textbooks, under impact: P = W + v sqrt(k m), with k = W/delta (from
    memory). Energy: k x2/2 = m v2/2 + ... about the place where the load hangs still.

    Examples
    --------
    >>> stopped_at_once(0.980665, sag=0.0980665)
    2.0
    """
    return 1.0 + speed / sqrt(GRAVITY * sag)


def dropped(height: float, *, sag: float) -> float:
    """Factor on a load that falls into its slack slings: 1 + sqrt(1 + 2h/delta).

    Parameters
    ----------
    height : float
        Of the fall h [m]
    sag : float
        Stretch under the still load delta, above zero [m]

    Returns
    -------
    float
        Two for a load that is let go without any fall [1]

    Notes
    -----
    Strength-of-materials textbooks, under impact (from memory): n = 1 + sqrt(1 + 2 h/delta).

    Examples
    --------
    >>> dropped(0.0, sag=0.1), dropped(0.4, sag=0.1)
    (2.0, 4.0)
    """
    return 1.0 + sqrt(1.0 + 2.0 * height / sag)


USUAL_SWING, USUAL_OUTWARDS = 1.5, 0.1
"""Speed of a boom head that slews as usual [m/s], and the largest part of its weight that a load
is then pulled outwards by, as it would be close to a small crane [1]."""


def usual_swing(radius: float) -> float:
    """Speed of the boom head that is taken where none is given [m/s].

    Parameters
    ----------
    radius : float
        [m]
    """
    return min(USUAL_SWING, sqrt(USUAL_OUTWARDS * GRAVITY * radius))


def swung_out(speed: float, *, radius: float, rope: float) -> float:
    """Angle at which a load hangs that is slewed round steadily: tan a = w2 (R + L sin a)/g.

    Parameters
    ----------
    speed : float
        Of the boom head v = w R [m/s]
    radius : float
        Of the boom head R [m]
    rope : float
        From the head to the load L [m]

    Returns
    -------
    float
        Off the plumb line, outwards [rad]

    Raises
    ------
    ValueError
        If the load flies so far out that no such formula is meant for it: beyond 30 degrees.

    Notes
    -----
    The conical pendulum of mechanics textbooks (worked); v2/(g R) for a short rope.
    """
    turning = (speed / radius) ** 2 / GRAVITY
    sine = 0.0
    for _ in range(200):
        before, sine = sine, _sine_of(turning * (radius + rope * sine))
        if abs(sine - before) < 1e-14:
            break
    if not sine <= 0.5:
        # At 30 degrees tan a = 1/sqrt(3) = w2 (R + L/2)/g.
        most = radius * sqrt(GRAVITY / sqrt(3.0) / (radius + rope / 2.0))
        raise ValueError(
            f"--swing: at {speed:g} m/s and a radius of {radius:.2f} m the load swings out by more "
            "than 30 degrees, and that is more than this model is meant for. Give up to "
            f"{floor(100.0 * most) / 100.0:g} m/s, or a larger radius."
        )
    return asin(sine)


def _sine_of(tangent: float) -> float:
    return tangent / sqrt(1.0 + tangent**2)


def swung_back(speed: float, *, time: float) -> float:
    """Pull across the boom when slewing starts or stops evenly, over the load: 2 v/(g t) [1].

    The load lags by the angle whose tangent is (v/t)/g, and swings as far again beyond it, for
    nothing stops it there.

    Parameters
    ----------
    speed : float
        Of the boom head v [m/s]
    time : float
        In which slewing starts or stops t, above zero [s]

    Notes
    -----
    A pendulum whose hinge is accelerated evenly from rest swings to twice the angle of rest
    (worked, small angles); 2 is also phi5 of EN 13001-2 for sudden changes (from memory).

    Examples
    --------
    >>> swung_back(0.980665, time=1.0)
    0.2
    """
    return 2.0 * speed / (GRAVITY * time)


def outwards(angle: float) -> float:
    """Horizontal pull of a rope that hangs off the plumb line, over its vertical pull [1]."""
    return tan(angle)
