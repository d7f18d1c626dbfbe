"""How far two markers agree: the share of equal marks, and Cohen's kappa."""

from collections import Counter
from collections.abc import Hashable, Sequence


def agreement(pairs: Sequence[tuple[Hashable, Hashable]]) -> float:
    """Share of decisions that are the same [1].

    Parameters
    ----------
    pairs : sequence of (object, object)
        What the first and the second marker decided; at least one
    """
    return sum(one == other for one, other in pairs) / len(pairs)


def kappa(pairs: Sequence[tuple[Hashable, Hashable]]) -> float | None:
    """Cohen's kappa: how much of the agreement that chance would not give is there (Cohen, 1960).

    Unweighted: marks that differ by two are no worse than marks that differ by one.

    Parameters
    ----------
    pairs : sequence of (object, object)
        What the first and the second marker decided

    Returns
    -------
    float or None
        None where both gave one and the same mark throughout, or there is nothing to compare [1]

    Examples
    --------
    >>> kappa([(1, 1)] * 20 + [(1, 0)] * 5 + [(0, 1)] * 10 + [(0, 0)] * 15)
    0.4
    """
    if not pairs:
        return None
    count = len(pairs)
    ones, others = (Counter(pair[side] for pair in pairs) for side in (0, 1))
    by_chance = sum(ones[mark] * others[mark] for mark in ones)
    same = count * sum(one == other for one, other in pairs)
    left = count * count - by_chance
    return (same - by_chance) / left if left else None
