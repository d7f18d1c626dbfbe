"""How often somebody may ask something: a bucket that fills at a steady rate."""

from collections import OrderedDict
from collections.abc import Callable
from time import monotonic

MOST_KNOWN = 2000
"""So many are remembered; whoever has been quiet longest is forgotten first."""


class RateLimit:
    """Allows a burst, then a steady rate, for each who asks.

    Parameters
    ----------
    rate : float
        Steady [1/s]
    burst : float
        At once [1]
    clock : callable, optional
        Gives the time [s]

    Examples
    --------
    >>> limit = RateLimit(rate=1.0, burst=2.0, clock=lambda: 0.0)
    >>> [limit.allows("somebody") for _ in range(3)]
    [True, True, False]
    """

    def __init__(
        self, *, rate: float, burst: float, clock: Callable[[], float] = monotonic
    ) -> None:
        self._rate, self._burst, self._clock = rate, burst, clock
        self._left: OrderedDict[str, tuple[float, float]] = OrderedDict()

    def allows(self, who: str) -> bool:
        """Take one from somebody's bucket.

        Returns
        -------
        bool
            False where it is empty
        """
        now = self._clock()
        left, then = self._left.pop(who, (self._burst, now))
        left = min(self._burst, left + (now - then) * self._rate)
        allowed = left >= 1.0
        self._left[who] = (left - 1.0 if allowed else left, now)
        if len(self._left) > MOST_KNOWN:
            self._left.popitem(last=False)
        return allowed
