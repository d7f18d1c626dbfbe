"""Boom systems: how a boom lets its sections out, a row for each.

A system either locks sections at set positions, or couples them, so that one way leads from all in
to all out, or leaves each to itself.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

Path = Callable[[Sequence[float], float], tuple[float, ...]]
"""From strokes [m] and how far all are out together [m] to the fraction of each stroke [1]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class System:
    """One boom system.

    Attributes
    ----------
    name : str
        As in a machine file
    words : str
        What it does
    path : callable or None
        The one way from all in to all out, if sections are coupled
    locks : bool
        Whether sections stop at the boom's lock positions only
    """

    name: str
    words: str
    path: Path | None = None
    locks: bool = False


def one_after_another(stroke: Sequence[float], out: float) -> tuple[float, ...]:
    """Let sections out one after another, base side first.

    Parameters
    ----------
    stroke : sequence of float
        Of each moving section, base side first [m]
    out : float
        How far all are out together [m]

    Returns
    -------
    tuple of float
        Fraction of each stroke [1]

    Examples
    --------
    >>> one_after_another((8.0, 8.0, 4.0), 12.0)
    (1.0, 0.5, 0.0)
    """
    found, left = [], out
    for length in stroke:
        found.append(round(min(max(left / length, 0.0), 1.0), 12))
        left -= length
    return tuple(found)


def in_proportion(stroke: Sequence[float], out: float) -> tuple[float, ...]:
    """Let all sections out together, each by the same share of its stroke.

    Parameters
    ----------
    stroke : sequence of float
        Of each moving section, base side first [m]
    out : float
        How far all are out together [m]

    Returns
    -------
    tuple of float
        Fraction of each stroke [1]
    """
    return (out / sum(stroke),) * len(stroke)


BOOM_SYSTEMS = {
    system.name: system
    for system in (
        System(name="pinned", words="each section at one of `lock_positions`", locks=True),
        System(
            name="sequenced",
            words="one after another, the next when the one before is fully out",
            path=one_after_another,
        ),
        System(name="synchronised", words="all in proportion", path=in_proportion),
        System(name="free", words="any; for exploring and for the tabletop"),
    )
}
"""By the word in a machine file."""


def fractions_with(
    path: Path, stroke: Sequence[float], *, section: int, fraction: float
) -> tuple[float, ...]:
    """Move coupled sections until one of them is out by a share of its stroke.

    Parameters
    ----------
    path : callable
    stroke : sequence of float
        [m]
    section : int
        1 is the largest that moves
    fraction : float
        Wanted of that section's stroke [1]

    Returns
    -------
    tuple of float
        Fraction of each stroke [1]
    """
    # A hair inside its own travel: at its very ends other sections could be anywhere.
    wanted = min(max(fraction, 1e-11), 1.0 - 1e-11)
    low, high = 0.0, sum(stroke)
    for _ in range(60):
        middle = (low + high) / 2
        if path(stroke, middle)[section - 1] < wanted:
            low = middle
        else:
            high = middle
    return tuple(round(one, 9) for one in path(stroke, high))
