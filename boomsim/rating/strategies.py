"""Which configurations a boom system allows, and which of them have one wanted length."""

from dataclasses import dataclass
from itertools import product

import numpy as np

from boomsim.machine.boom_systems import BOOM_SYSTEMS, in_proportion, one_after_another
from boomsim.machine.model import Boom
from boomsim.mechanics.geometry import Array, layout
from boomsim.units import is_named

EQUAL_LENGTH = 0.10
"""Lengths that differ by no more than this count as one and the same [m]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Configurations:
    """Some ways to extend one boom.

    Attributes
    ----------
    extension : ndarray, shape (configurations, moving sections)
        Fraction of each stroke, base side first [1]
    length : ndarray, shape (configurations,)
        Boom length [m]
    system : tuple of str
        Boom system that each belongs to
    """

    extension: Array
    length: Array
    system: tuple[str, ...]


def label(extension: Array) -> str:
    """Write a configuration as the trade does: percent, base side first.

    Parameters
    ----------
    extension : ndarray, shape (moving sections,)
        [1]

    Returns
    -------
    str
        Such as "0, 0, 45, 45"
    """
    return ", ".join(f"{100 * fraction:.3g}" for fraction in extension)


def letter(number: int) -> str:
    """Name a configuration by a letter: A, B to Z, then A2, B2 and so on.

    Parameters
    ----------
    number : int
        Place among the configurations, from 0 [1]
    """
    turn, place = divmod(number, 26)
    return chr(ord("A") + place) + (str(turn + 1) if turn else "")


def pinned_configurations(boom: Boom) -> Array:
    """All combinations of lock positions, retracted first.

    Returns
    -------
    ndarray, shape (positions ** moving sections, moving sections)
        [1]
    """
    moving = len(boom.sections) - 1
    return np.array(list(product(boom.lock_positions, repeat=moving)))


def range_of_length(boom: Boom) -> tuple[float, float]:
    """Boom length with all sections in and all sections out [m]."""
    moving = len(boom.sections) - 1
    ends = layout(boom, extension=np.array([[0.0] * moving, [1.0] * moving])).boom_length
    return float(ends[0]), float(ends[1])


def checked_system(boom: Boom, system: str) -> str:
    """Refuse a boom system that there is not, or that the boom has not.

    Returns
    -------
    str
        As it is kept

    Raises
    ------
    ValueError
        If it is not one of the boom's; says which there are, and which are its own.
    """
    for known in boom.systems:
        if is_named(known, system):
            return known
    wrong = f"This boom has no system {system!r}."
    if system not in BOOM_SYSTEMS:
        wrong = f"There is no boom system {system!r}; there are {', '.join(BOOM_SYSTEMS)}."
    raise ValueError(f"{wrong} It has: {', '.join(boom.systems)}.")


def configurations_of(boom: Boom, *, extension: Array, system: str | None = None) -> Configurations:
    """Put chosen extensions side by side, whatever their lengths.

    Parameters
    ----------
    extension : ndarray, shape (configurations, moving sections)
        [1]
    system : str, optional
        Default: the boom's usual one
    """
    system = boom.systems[0] if system is None else checked_system(boom, system)
    placed = layout(boom, extension=extension)
    return Configurations(
        extension=placed.extension,
        length=placed.boom_length,
        system=(system,) * len(placed.extension),
    )


def configurations_of_length(
    boom: Boom, *, length: float, system: str | None = None, tolerance: float = EQUAL_LENGTH
) -> Configurations:
    """All legal configurations of one length.

    A free boom has endlessly many; three stand for them: base side out first, head side out first,
    and all in proportion.

    Parameters
    ----------
    length : float
        Wanted boom length [m]
    system : str, optional
        One of the boom's systems; default: all of them
    tolerance : float
        [m]

    Returns
    -------
    Configurations
        The one with most weight at the base side out last

    Raises
    ------
    ValueError
        If there is none; says which lengths there are.
    """
    shortest, longest = range_of_length(boom)
    if not shortest - tolerance <= length <= longest + tolerance:
        raise ValueError(
            f"The boom cannot be {length:.2f} m long: it is {shortest:.2f} m with all sections in "
            f"and {longest:.2f} m with all out. Choose a length between these."
        )
    systems = boom.systems if system is None else (checked_system(boom, system),)
    found: dict[tuple[float, ...], str] = {}
    for name in systems:
        for extension in _of_system(boom, name, length, tolerance):
            found.setdefault(tuple(extension), name)
    extensions = np.array(sorted(found))
    return Configurations(
        extension=extensions,
        length=layout(boom, extension=extensions).boom_length,
        system=tuple(found[tuple(row)] for row in extensions),
    )


def _of_system(boom: Boom, name: str, length: float, tolerance: float) -> list[list[float]]:
    system = BOOM_SYSTEMS[name]
    if system.locks:
        return _pinned(boom, length, tolerance)
    stroke = [section.stroke for section in boom.sections[1:]]
    out = min(max(length - range_of_length(boom)[0], 0.0), sum(stroke))
    if system.path is not None:
        return [list(system.path(stroke, out))]
    head_first = one_after_another(stroke[::-1], out)[::-1]
    ways = one_after_another(stroke, out), head_first, in_proportion(stroke, out)
    return [list(way) for way in ways]


def _pinned(boom: Boom, length: float, tolerance: float) -> list[list[float]]:
    every = pinned_configurations(boom)
    lengths = layout(boom, extension=every).boom_length
    near = every[np.abs(lengths - length) <= tolerance + 1e-9]
    if len(near) == 0:
        below = lengths[lengths < length].max(initial=-np.inf)
        above = lengths[lengths > length].min(initial=np.inf)
        nearest = " and ".join(f"{x:.2f} m" for x in (below, above) if np.isfinite(x))
        raise ValueError(
            f"No combination of lock positions is {length:.2f} m long within {tolerance:.2f} m. "
            f"The nearest lengths are {nearest}."
        )
    return [list(map(float, row)) for row in near]
