"""One boom length out several ways at one radius: the same load on each, and what each carries.

One call of :func:`boomsim.rating.lift_response.respond` for all of them, the load on the hook and
the trial loads of :mod:`boomsim.lab.solve.nearby_search` in it; what the trials do not enclose is
rated by :func:`boomsim.rating.capacity.rate`.
"""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from boomsim.lab.solve import nearby_search as near
from boomsim.lab.solve.capacity_curve import Curve, condensed, known_curve
from boomsim.machine.model import Machine
from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.geometry import Array
from boomsim.rating.capacity import rate
from boomsim.rating.empty_hook.empty_hook_study import EmptyHook, empty_hook
from boomsim.rating.lift_response import Response, respond
from boomsim.rating.longest_boom import too_long
from boomsim.rating.setup import Setup

Extension = tuple[float, ...]


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Lifted:
    """Ways under one load, the scene's own first.

    Attributes
    ----------
    ways : tuple of Extension
        [1]
    at : Response
        A row for each way; its first cell is the lift
    rated : tuple of Found
        What each carries at this radius
    """

    ways: tuple[Extension, ...]
    at: Response
    rated: tuple[near.Found, ...]


@lru_cache(maxsize=128)
def condensed_ways(machine: Machine, ways: tuple[Extension, ...]) -> Condensed:
    """Condense several configurations together, once.

    Parameters
    ----------
    machine : Machine
    ways : tuple of Extension
        [1]
    """
    if len(ways) == 1:
        return condensed(machine, ways[0])
    return condense(machine, extension=np.array(ways))


_last: dict[tuple[str, str, Extension], tuple[float, float]] = {}
"""Radius and capacity found last, by machine, rule and way: where the next trials begin. It changes
how long the next answer takes and not what it says."""

MOST_KEPT = 512
"""So many ways are remembered at once; then they are begun anew."""


@lru_cache(maxsize=512)
def _known(setup: Setup, radius: float) -> dict[Extension, near.Found]:
    """What has been rated at this radius: one answer to one question, whatever hangs there."""
    return {}


@lru_cache(maxsize=64)
def lifted(
    setup: Setup, ways: tuple[Extension, ...], unit: float, radius: float, load: float
) -> Lifted:
    """Hang a load on all ways at a radius, and rate them there.

    Parameters
    ----------
    setup : Setup
        As :func:`boomsim.lab.scene.scene.setup_of` gives it, one object for equal choices
    ways : tuple of Extension
        The scene's own first [1]
    unit : float
        Of the chart's radii [m]
    radius : float
        Loaded radius [m]
    load : float
        [kg]
    """
    boom, known = condensed_ways(setup.machine, ways), _known(setup, radius)
    loads, place = np.full((len(ways), 1), load), np.array([[radius]])
    if all(way in known for way in ways):
        at = respond(setup, boom=boom, load=loads, radius=place)
        return Lifted(ways=ways, at=at, rated=tuple(known[way] for way in ways))
    closed = _carries_nothing(setup, ways, radius)
    guess = np.array(
        [np.nan if closed[k] else _guess(setup, ways, k, unit, radius) for k in range(len(ways))]
    )[:, None]
    if (guess > 0.0).any():
        trials = np.where(guess > 0.0, guess * near.TRIALS, load)
        loads = np.concatenate([loads, trials], axis=1)
    at = respond(setup, boom=boom, load=loads, radius=place)
    found = [
        NOTHING if closed[k] else near.crossings(at, first=1, row=k)[0] if one > 0.0 else None
        for k, one in enumerate(guess)
    ]
    rated = _settled(setup, ways, radius, found)
    for way, one in zip(ways, rated, strict=True):
        known[way] = one
        if len(_last) > MOST_KEPT:
            _last.clear()
        _last[setup.machine.name, setup.rule.name, way] = radius, one.capacity
    return Lifted(ways=ways, at=at, rated=rated)


NOTHING = near.Found(capacity=np.nan, limit=-1)

STRETCH = 1.002
"""A boom is stretched by less than that: steel yields at some 0.2 % [1]."""


def _carries_nothing(setup: Setup, ways: tuple[Extension, ...], radius: float) -> list[bool]:
    """Whether a way cannot be there: out of reach of any angle, on its side empty, or too long."""
    machine, length = setup.machine, condensed_ways(setup.machine, ways).layout.boom_length
    out = beyond_reach(machine, length=length, radius=radius)
    out |= _lowest(setup, ways).lies_over(radius=radius) | too_long(setup, length=length)
    return [bool(one) for one in out]


def beyond_reach(machine: Machine, *, length: Array, radius: float) -> np.typing.NDArray[np.bool_]:
    """Tell where the head sheave could not be even if the boom lay level.

    Parameters
    ----------
    machine : Machine
    length : ndarray, shape (configurations,)
        Heel pin to head sheave, along the boom axis [m]
    radius : float
        [m]
    """
    return np.asarray(
        radius > machine.heel_out + STRETCH * np.hypot(length, machine.boom.head.below)
    )


@lru_cache(maxsize=128)
def _lowest(setup: Setup, ways: tuple[Extension, ...]) -> EmptyHook:
    return empty_hook(setup, extension=np.array(ways))


def _guess(
    setup: Setup, ways: tuple[Extension, ...], way: int, unit: float, radius: float
) -> float:
    """Guess what a way carries: its last capacity, changed as the scene's own curve changes."""
    if not near.goes(setup):
        return np.nan
    own = known_curve(setup, ways[0], unit)
    last = _last.get((setup.machine.name, setup.rule.name, ways[way]))
    if own is None:  # working it out would hold up the lift: what was found here last must do
        return last[1] if last is not None and last[0] == radius else np.nan
    here = _on(own, radius)
    if last is None or (way == 0 and here > 0.0):
        return here if way == 0 else np.nan
    then, capacity = last
    share = 1.0 if then == radius else here / _on(own, then)
    return capacity * share if share > 0.0 else capacity


def _on(known: Curve, radius: float) -> float:
    return float(near.guesses(known.radius, known.capacity, np.array([radius]))[0])


def _settled(
    setup: Setup,
    ways: tuple[Extension, ...],
    radius: float,
    found: list[near.Found | None],
) -> tuple[near.Found, ...]:
    """Rate by search what the trials have not enclosed."""
    open_ = [k for k, one in enumerate(found) if one is None]
    searched: dict[int, near.Found] = {}
    if open_:
        extension = np.array([ways[k] for k in open_])
        rating = rate(setup, extension=extension, radius=np.array([radius]))
        capacity, first = rating.capacity[:, 0].tolist(), rating.governing[:, 0].tolist()
        for k, most, limit in zip(open_, capacity, first, strict=True):
            searched[k] = near.Found(capacity=most, limit=int(limit))
    return tuple(one or searched[k] for k, one in enumerate(found))
