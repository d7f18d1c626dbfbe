"""Which ways to extend a boom belong in a chart, and which of them are of one length."""

import numpy as np

from boomsim.machine.boom_systems import BOOM_SYSTEMS, in_proportion
from boomsim.machine.model import Boom
from boomsim.mechanics.geometry import Array
from boomsim.rating.longest_boom import refuse_too_long, too_long
from boomsim.rating.setup import Setup
from boomsim.rating.strategies import (
    EQUAL_LENGTH,
    Configurations,
    checked_system,
    configurations_of,
    configurations_of_length,
    pinned_configurations,
    range_of_length,
)


def every_configuration(boom: Boom, *, system: str | None = None) -> Configurations:
    """All configurations that belong in a chart book.

    A boom that locks: all combinations of its lock positions. Any other system: what it does at the
    lengths where a section that goes out alone, base side first, is half out or out.

    Parameters
    ----------
    system : str, optional
        Boom system to stay with; default: all of the boom's

    Returns
    -------
    Configurations
        By length, then base side least out first
    """
    if system is not None and system not in boom.systems:
        raise ValueError(
            f"This boom is not {system}. Choose one of its systems: {', '.join(boom.systems)}."
        )
    parts = []
    for name in boom.systems if system is None else (system,):
        if BOOM_SYSTEMS[name].locks:
            locked = pinned_configurations(boom)
            parts.append(configurations_of(boom, extension=locked, system=name))
            continue
        parts += [
            configurations_of_length(boom, length=float(length), system=name)
            for length in _lengths(boom)
        ]
    return _sorted(_merged(parts))


def one_way_for_each_length(boom: Boom, *, system: str | None = None) -> Configurations:
    """Follow a boom from all in to all out along one way, which a class can keep in mind.

    A boom that locks goes out evenly: from one to the next, one section goes out to its next lock
    position, the largest first. A boom whose sections are coupled goes its one way, and a free one
    lets all out in proportion; both stop where a section that goes out alone, base side first, is
    half out or out.

    Parameters
    ----------
    system : str, optional
        Default: the boom's usual one

    Returns
    -------
    Configurations
        The shortest first, each longer than the one before
    """
    name = boom.systems[0] if system is None else checked_system(boom, system)
    if BOOM_SYSTEMS[name].locks:
        return configurations_of(boom, extension=_evenly(boom), system=name)
    stroke = [section.stroke for section in boom.sections[1:]]
    path = BOOM_SYSTEMS[name].path or in_proportion
    shortest = range_of_length(boom)[0]
    ways = [path(stroke, float(length - shortest)) for length in np.unique(_lengths(boom))]
    return configurations_of(boom, extension=np.array(ways), system=name)


def _evenly(boom: Boom) -> Array:
    """From lock position to lock position, the largest section first."""
    first, *later = boom.lock_positions
    rows = [[first] * (len(boom.sections) - 1)]
    for position in later:
        for k in range(len(rows[0])):
            rows.append([*rows[-1][:k], position, *rows[-1][k + 1 :]])
    return np.array(rows)


def one_way_words(boom: Boom, *, system: str | None = None) -> str:
    """Say by which rule :func:`one_way_for_each_length` extends a boom."""
    name = boom.systems[0] if system is None else checked_system(boom, system)
    if BOOM_SYSTEMS[name].locks:
        return (
            "from column to column one section goes out to its next lock position, the largest "
            "first"
        )
    coupled = BOOM_SYSTEMS[name].path is not None
    return f"the sections go out {BOOM_SYSTEMS[name].words if coupled else 'all in proportion'}"


def _lengths(boom: Boom) -> Array:
    halves = np.repeat([s.stroke / 2 for s in boom.sections[1:]], 2)
    return range_of_length(boom)[0] + np.concatenate([[0.0], np.cumsum(halves)])


def _merged(parts: list[Configurations]) -> Configurations:
    found: dict[tuple[float, ...], tuple[Array, float, str]] = {}
    for part in parts:
        for row, length, system in zip(part.extension, part.length, part.system, strict=True):
            key = tuple(float(f) for f in np.round(row, 9))
            found.setdefault(key, (row, float(length), system))
    rows, lengths, systems = zip(*found.values(), strict=True)
    return Configurations(extension=np.array(rows), length=np.array(lengths), system=systems)


def _sorted(found: Configurations) -> Configurations:
    length = np.round(found.length, 6)
    order = np.lexsort((*found.extension.T[::-1], length))
    return Configurations(
        extension=found.extension[order],
        length=found.length[order],
        system=tuple(found.system[i] for i in order),
    )


def configurations_at_lengths(
    boom: Boom, *, length: list[float], system: str | None = None
) -> Configurations:
    """All legal configurations of some lengths.

    Parameters
    ----------
    length : list of float
        [m]
    system : str, optional
        Boom system to stay with

    Raises
    ------
    ValueError
        If there is none of one of these lengths; says which there are.
    """
    return _sorted(
        _merged([configurations_of_length(boom, length=one, system=system) for one in length])
    )


def short_enough(setup: Setup, found: Configurations) -> Configurations:
    """Leave out the configurations that are too long for the tyres.

    Raises
    ------
    ValueError
        If none is left.
    """
    short = ~too_long(setup, length=found.length)
    if not short.any():
        refuse_too_long(setup, length=found.length)
    return Configurations(
        extension=found.extension[short],
        length=found.length[short],
        system=tuple(one for one, kept in zip(found.system, short, strict=True) if kept),
    )


def same_length(length: Array, *, tolerance: float = EQUAL_LENGTH) -> list[list[int]]:
    """Group configurations of one length, the shortest first.

    Parameters
    ----------
    length : ndarray, shape (configurations,)
        [m]
    tolerance : float
        Lengths closer than this are one [m]
    """
    order = np.argsort(length, kind="stable")
    apart = np.flatnonzero(np.diff(length[order]) > tolerance) + 1
    return [sorted(int(i) for i in group) for group in np.split(order, apart)]
