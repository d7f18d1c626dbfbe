"""How a boom runs out from where it is: which section moves when, without any coming back in."""

from dataclasses import dataclass
from itertools import combinations, pairwise

import numpy as np

from boomsim.machine.boom_systems import BOOM_SYSTEMS, System
from boomsim.machine.model import Boom
from boomsim.mechanics.geometry import Array
from boomsim.rating.strategies import checked_system, label

CLOSE = 0.01
"""A typed extension this near to the way of its boom system is on it [1]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Stage:
    """One straight part of the way out.

    Attributes
    ----------
    moving : tuple of int
        Numbers of the sections that move, from 1
    start, end : ndarray, shape (moving sections,)
        Extensions [1]
    travel : float
        By how much the boom grows [m]
    """

    moving: tuple[int, ...]
    start: Array
    end: Array
    travel: float

    def at(self, out: Array) -> Array:
        """Extensions so many metres after the start of the stage, shape (places, sections) [1]."""
        share = np.clip(np.asarray(out) / self.travel, 0.0, 1.0)[:, None]
        # Not start + share (end - start): at a share of one that may be a hair beyond the end.
        return np.asarray((1.0 - share) * self.start + share * self.end)


def run_out(boom: Boom, *, extension: Array, system: str | None = None) -> tuple[Stage, ...]:
    """Let a boom out from where it is, as its boom system does.

    Pinned: one section at a time, and only while all larger moving ones are all the way in (see
    :mod:`boomsim.rating.path.pins_study`): so the largest that is out goes on to its last lock,
    then the next larger, and so on. Coupled: along the one way there is. Free: base side first.

    Parameters
    ----------
    extension : ndarray, shape (moving sections,)
        [1]
    system : str, optional
        Default: the boom's usual one

    Raises
    ------
    ValueError
        If the extension is not on the system's way, or nothing is left to run out.
    """
    name = boom.systems[0] if system is None else checked_system(boom, system)
    start = np.asarray(extension, dtype=float)
    knots = _knots(boom, BOOM_SYSTEMS[name], start)
    stages = [_stage(boom, a, b) for a, b in pairwise(knots)]
    found = tuple(stage for stage in stages if stage.travel > 1e-9)
    if not found:
        raise ValueError(
            f"With ({label(start)}) % out nothing more can be run out"
            + (
                ", unless larger sections come in first: boomsim pins tells the order."
                if BOOM_SYSTEMS[name].locks and np.any(start < boom.lock_positions[-1])
                else ": begin with less."
            )
        )
    return found


def _stage(boom: Boom, start: Array, end: Array) -> Stage:
    stroke = np.array([section.stroke for section in boom.sections[1:]])
    moved = np.flatnonzero(np.abs(end - start) > 1e-12)
    travel = float(((end - start) * stroke).sum())
    return Stage(moving=tuple(int(k) + 1 for k in moved), start=start, end=end, travel=travel)


def _knots(boom: Boom, system: System, start: Array) -> list[Array]:
    """Extensions between which the boom runs straight, the start first."""
    if system.path is not None:
        return _coupled(boom, system, start)
    moving = range(len(start))
    if not system.locks:
        return _one_by_one(start, list(moving), 1.0)
    out = np.flatnonzero(start > 0.0)
    first = int(out[0]) if len(out) else len(start) - 1
    return _one_by_one(start, list(range(first, -1, -1)), boom.lock_positions[-1])


def _one_by_one(start: Array, order: list[int], last: float) -> list[Array]:
    knots = [start]
    for k in order:
        after = knots[-1].copy()
        after[k] = last
        knots.append(after)
    return knots


def _coupled(boom: Boom, system: System, start: Array) -> list[Array]:
    """Follow the one way there is; it can only bend where some sections together are all out."""
    assert system.path is not None
    stroke = [section.stroke for section in boom.sections[1:]]
    out = float(np.dot(stroke, start))
    on_way = np.array(system.path(stroke, out))
    if np.max(np.abs(on_way - start)) > CLOSE:
        raise ValueError(
            f"A {system.name} boom is never ({label(start)}) % out: at this length it is "
            f"({label(on_way)}) %. Begin there, or name another --system."
        )
    sums = {sum(some) for n in range(len(stroke) + 1) for some in combinations(stroke, n)}
    bends = [out, *sorted(one for one in sums if one > out + 1e-9)]
    knots = [np.array(system.path(stroke, one)) for one in bends]
    return _merged(knots)


def _merged(knots: list[Array]) -> list[Array]:
    """Leave out knots at which the same sections go on as before."""
    kept = knots[:1]
    for before, here, after in zip(knots, knots[1:], knots[2:], strict=False):
        if not np.array_equal(here - before > 1e-12, after - here > 1e-12):
            kept.append(here)
    return kept + knots[1:][-1:]
