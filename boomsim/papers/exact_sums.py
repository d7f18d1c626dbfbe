"""Questions that add up: of all ways to reach given sums, draw one, each equally likely.

A question counts once, with its marks and its difficulty. Questions of equal marks and difficulty
form a group; the ways to reach every sum are counted group by group, from the last to the first,
and then a way is drawn from the first to the last.
"""

from collections.abc import Iterator, Sequence
from functools import lru_cache
from math import comb

import numpy as np
from numpy.typing import NDArray

from boomsim.papers.numbers.dice import Chance

Worth = tuple[int, int]
"""Marks and difficulty of one question [1]."""
Sums = tuple[int, int, int]
"""Number, marks and difficulty of some questions [1]."""
Ways = NDArray[np.float64]
"""Number of ways by sums; a float, for it may be very large [1]."""
FINE = 2**53


def reachable(worths: Sequence[Worth], most: Sums, *, times: int) -> Ways:
    """Count the ways to every sum up to a largest one.

    Parameters
    ----------
    worths : sequence of (int, int)
        Of the questions on offer
    most : (int, int, int)
    times : int
        How often the same question may be taken [1]

    Returns
    -------
    array of float, shape most + 1
        [1]
    """
    return _ways(_groups(worths, times), most)[0]


def draw(worths: Sequence[Worth], wanted: Sums, dice: Chance, *, times: int) -> list[int]:
    """Draw one of the ways to reach a sum.

    Parameters
    ----------
    worths : sequence of (int, int)
        Of the questions on offer
    wanted : (int, int, int)
        A sum that :func:`reachable` counts ways to
    dice : Chance
    times : int
        How often the same question may be taken [1]

    Returns
    -------
    list of int
        Places in `worths` [1]
    """
    ways = _ways(_groups(worths, times), wanted)
    left = wanted
    chosen: list[int] = []
    for place, (worth, members) in enumerate(_members(tuple(worths)), start=1):
        count = times * len(members)
        steps = list(_steps(left, worth, count))
        weights = [comb(count, taken) * float(ways[place][rest]) for taken, rest in steps]
        taken, left = steps[weighted(weights, dice)]
        chosen += dice.some(members * times, count=taken)
    return chosen


def weighted(weights: Sequence[float], dice: Chance) -> int:
    """Draw a place, each as likely as its weight.

    Parameters
    ----------
    weights : sequence of float
        At least one above 0 [1]
    dice : Chance

    Returns
    -------
    int
        [1]
    """
    left = dice.integer(FINE) / FINE * sum(weights)
    for place, weight in enumerate(weights):
        left -= weight
        if left < 0:
            return place
    return max(place for place, weight in enumerate(weights) if weight > 0)


def _groups(worths: Sequence[Worth], times: int) -> tuple[tuple[Worth, int], ...]:
    """Count the questions of each worth."""
    return tuple((worth, times * len(members)) for worth, members in _members(tuple(worths)))


@lru_cache(maxsize=32)
def _members(worths: tuple[Worth, ...]) -> tuple[tuple[Worth, tuple[int, ...]], ...]:
    """Find the places of each worth."""
    places: dict[Worth, list[int]] = {}
    for place, worth in enumerate(worths):
        places.setdefault(worth, []).append(place)
    return tuple((worth, tuple(members)) for worth, members in sorted(places.items()))


@lru_cache(maxsize=32)
def _ways(groups: tuple[tuple[Worth, int], ...], most: Sums) -> tuple[Ways, ...]:
    """For each place, the ways to every sum with the groups from there on."""
    number, marks, difficulty = most
    last = np.zeros((number + 1, marks + 1, difficulty + 1))
    last[0, 0, 0] = 1.0
    ways = [last]
    for worth, count in reversed(groups):
        here = np.zeros_like(last)
        for taken, (q, m, d) in _steps(most, worth, count):
            part = ways[-1][: q + 1, : m + 1, : d + 1]
            here[number - q :, marks - m :, difficulty - d :] += comb(count, taken) * part
        ways.append(here)
    return tuple(reversed(ways))


def _steps(left: Sums, worth: Worth, count: int) -> Iterator[tuple[int, Sums]]:
    """How many of a group can be taken, and what is left then."""
    for taken in range(count + 1):
        rest = (left[0] - taken, left[1] - taken * worth[0], left[2] - taken * worth[1])
        if min(rest) < 0:
            return
        yield taken, rest
