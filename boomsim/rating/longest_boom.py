"""On tyres the boom may be so long and no longer: beyond that nothing is rated."""

from dataclasses import replace

import numpy as np

from boomsim.mechanics.geometry import Array
from boomsim.rating.setup import Setup
from boomsim.rating.strategies import Configurations
from boomsim.units import display

A_HAIR = 1e-6
"""A boom that is longer by no more is as long as it may be [m]."""


def too_long(setup: Setup, *, length: Array) -> np.ndarray:
    """Which booms are longer than may be on the tyres that the crane stands on.

    Parameters
    ----------
    setup : Setup
    length : ndarray, shape (configurations,)
        Boom length [m]

    Returns
    -------
    ndarray of bool, shape (configurations,)
        False everywhere on outriggers, and on tyres without a longest boom
    """
    longest = setup.support.longest_boom
    most = np.inf if longest is None else longest + A_HAIR
    return np.asarray(np.asarray(length) > most)


def tell_longest(setup: Setup, units: str = "metric") -> str:
    """Say how long the boom may be on these tyres.

    Parameters
    ----------
    setup : Setup
    units : str
        "metric" or "us"

    Returns
    -------
    str
        "on tyres the boom may be at most 20.0 m long"; empty where it may have any length
    """
    longest = setup.support.longest_boom
    if longest is None:
        return ""
    # Rounded down: a boom of the length that is told may be used.
    return (
        f"on tyres the boom may be at most {display('boom_length', units).text_down(longest)} long"
    )


def short_enough(setup: Setup, ways: Configurations) -> Configurations:
    """Keep the ways that are rated on the tyres that the crane stands on; all, if none is."""
    kept = np.flatnonzero(~too_long(setup, length=ways.length))
    if not len(kept):
        return ways
    systems = tuple(ways.system[k] for k in kept)
    return replace(ways, extension=ways.extension[kept], length=ways.length[kept], system=systems)


def refuse_too_long(setup: Setup, *, length: Array) -> None:
    """Refuse booms that are too long for the tyres.

    Parameters
    ----------
    setup : Setup
    length : ndarray, shape (configurations,)
        Boom length [m]

    Raises
    ------
    ValueError
        If one of them is; says how long it may be.
    """
    lengths = np.atleast_1d(length)
    beyond = lengths[too_long(setup, length=lengths)]
    if not len(beyond):
        return
    said = tell_longest(setup)
    raise ValueError(
        f"{said[0].upper()}{said[1:]}, and this one is {beyond[0]:.2f} m long: nothing is rated. "
        "Choose a shorter boom, or set the crane on outriggers."
    )
