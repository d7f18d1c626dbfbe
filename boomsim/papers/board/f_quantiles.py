"""Quantiles of the F distribution, for intervals: a continued fraction and bisection."""

import math

_TINY, _ENOUGH = 1e-300, 1e-15


def f_quantile(share: float, above: float, below: float) -> float:
    """Value that an F-distributed ratio of variances stays under with a given probability [1].

    Parameters
    ----------
    share : float
        Probability, between 0 and 1 [1]
    above, below : float
        Degrees of freedom of numerator and denominator [1]

    Examples
    --------
    >>> round(f_quantile(0.95, 4, 10), 2)
    3.48
    """
    low, high = 0.0, 1.0
    for _ in range(200):  # of the beta variable x = above F / (above F + below)
        middle = 0.5 * (low + high)
        if _beta_share(middle, above / 2, below / 2) < share:
            low = middle
        else:
            high = middle
    return below * low / (above * (1.0 - low))


def _beta_share(x: float, a: float, b: float) -> float:
    """Regularised incomplete beta function; the fraction converges fast on one side of the mean."""
    if not 0.0 < x < 1.0:
        return float(x >= 1.0)
    front = math.exp(
        math.lgamma(a + b) - math.lgamma(a) - math.lgamma(b) + a * math.log(x) + b * math.log1p(-x)
    )
    if x < (a + 1.0) / (a + b + 2.0):
        return front * _fraction(x, a, b) / a
    return 1.0 - front * _fraction(1.0 - x, b, a) / b


def _fraction(x: float, a: float, b: float) -> float:
    """Lentz's way through the continued fraction of the incomplete beta function."""
    c, d = 1.0, 1.0 / _kept(1.0 - (a + b) * x / (a + 1.0))
    whole = d
    for m in range(1, 1000):
        even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m))
        odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1))
        for term in (even, odd):
            d = 1.0 / _kept(1.0 + term * d)
            c = _kept(1.0 + term / c)
            whole *= c * d
        if abs(c * d - 1.0) < _ENOUGH:
            break
    return whole


def _kept(value: float) -> float:
    """Away from zero, by which nothing can be divided."""
    return value if abs(value) > _TINY else _TINY
