"""Thirds of a class by marks; who has equal marks is in the same third."""

from collections.abc import Sequence

LOWER, MIDDLE, UPPER = 0, 1, 2
FEWEST = 6
"""With fewer candidates a third is one person, and says who rather than what [1]."""


def thirds(shares: Sequence[float]) -> tuple[int, ...]:
    """Put each candidate into a third of the class.

    Parameters
    ----------
    shares : sequence of float
        Of all marks, by candidate [1]

    Returns
    -------
    tuple of int
        0 lower, 1 middle, 2 upper, by candidate

    Examples
    --------
    >>> thirds([0.9, 0.2, 0.5, 0.5, 0.1, 0.8])
    (2, 0, 1, 1, 0, 2)
    """
    return tuple(_third(one, shares) for one in shares)


def _third(share: float, shares: Sequence[float]) -> int:
    """By the middle of the ranks that candidates with equal marks share."""
    below, equal = sum(s < share for s in shares), sum(s == share for s in shares)
    rank = (2 * below + equal) * 3  # in sixths of a class: no rounding decides
    return LOWER if rank < 2 * len(shares) else UPPER if rank > 4 * len(shares) else MIDDLE
