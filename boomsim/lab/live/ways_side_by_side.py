"""Which way out carries more here, by how much and why: the ways of one length, side by side.

Lifted and rated in one call with the scene itself, by :mod:`boomsim.lab.solve.lifted_ways`. The
reasons are those of :mod:`boomsim.rating.comparison`.
"""

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any

import numpy as np

from boomsim.figures.colours_and_lines import identity, ink_on
from boomsim.lab.scene.scene import FREE, Scene, machine_of
from boomsim.lab.scene.scene_changes import systems_of
from boomsim.lab.solve.lifted_ways import condensed_ways
from boomsim.lab.solve.setup_constants import fixed
from boomsim.lab.solve.solved_scene import Answer
from boomsim.machine.model import Boom, Machine
from boomsim.mechanics.boom.boom_state import State
from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.geometry import Array, layout
from boomsim.rating.comparison.capacity_envelope import SAME
from boomsim.rating.comparison.comparison_study import demonstration
from boomsim.rating.limits.limit_kind import STABILITY, Limit
from boomsim.rating.limits.limit_sentences import WHAT_SETS, what_happens
from boomsim.rating.mass_sums import scale_of
from boomsim.rating.setup import Setup
from boomsim.rating.strategies import (
    EQUAL_LENGTH,
    configurations_of_length,
    label,
    letter,
)
from boomsim.units import show, show_rated

MOST = 3
"""So many ways are shown at once: more outlines over each other cannot be told apart."""

Way = tuple[tuple[float, ...], str]
"""An extension [1] and the boom system that it belongs to."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Ways:
    """Ways of one length in one lift.

    Attributes
    ----------
    ways : tuple of Way
        Weight at the head side out first, weight at the base side out last
    present : int
        Which of them the boom is out by
    radius : float
        [m]
    capacity : ndarray, shape (ways,)
        NaN where there is none [kg]
    first : tuple of Limit or None
        What sets each figure
    boom : Condensed
        Of all ways
    state : State
        Of the lift, in its first cell
    rows : tuple of int
        Where each way is in `state`
    """

    setup: Setup
    ways: tuple[Way, ...]
    present: int
    radius: float
    capacity: Array
    first: tuple[Limit | None, ...]
    boom: Condensed
    state: State
    rows: tuple[int, ...]

    @property
    def extension(self) -> Array:
        """Fractions of each stroke, shape (ways, moving sections) [1]."""
        return np.array([extension for extension, _ in self.ways])


def chosen(scene: Scene, *, before: tuple[Way, ...] = ()) -> tuple[Way, ...]:
    """Choose up to three ways of a scene's length, its own among them.

    Parameters
    ----------
    before : tuple of Way
        That were chosen before; they stay while they can, so that no letter changes its meaning

    Returns
    -------
    tuple of Way
        The two that differ most, and one between
    """
    return _chosen(machine_of(scene.machine), (scene.extension, scene.system), before)


@lru_cache(maxsize=64)
def _chosen(machine: Machine, own: Way, before: tuple[Way, ...]) -> tuple[Way, ...]:
    boom = machine.boom
    listed = _legal(boom, own)
    places = [way for way, _ in listed]
    if before and _same(before, places, own, boom):
        return before
    if not any(way == own[0] for way in places):
        listed = tuple(sorted([*listed, own]))
    if len(listed) <= MOST:
        return listed
    between = own if own not in (listed[0], listed[-1]) else _between(boom, listed)
    return listed[0], between, listed[-1]


def _same(before: tuple[Way, ...], places: list[tuple[float, ...]], own: Way, boom: Boom) -> bool:
    """Whether these ways still belong to the scene, and it is one of them."""
    known = [way for way, _ in before]
    if own[0] not in known or len(known[0]) != len(own[0]):
        return False
    lengths = layout(boom, extension=np.array(known)).boom_length
    now = layout(boom, extension=own[0]).boom_length
    return bool(np.all(np.abs(lengths - now) <= EQUAL_LENGTH)) and all(
        one == own[0] or one in places for one in known
    )


def _between(boom: Boom, listed: tuple[Way, ...]) -> Way:
    """The demonstration's own way between, where it is one of these; the middle one elsewhere."""
    shown = demonstration(boom)
    middle = tuple(float(f) for f in shown.extension[len(shown.extension) // 2])
    inner = listed[1:-1]
    return next((way for way in inner if way[0] == middle), inner[len(inner) // 2])


def _legal(boom: Boom, own: Way) -> tuple[Way, ...]:
    length = float(layout(boom, extension=own[0]).boom_length[0])
    return _of_length(boom, own[1] == FREE, round(length, 6))


@lru_cache(maxsize=64)
def _of_length(boom: Boom, free: bool, length: float) -> tuple[Way, ...]:
    """Ways that the machine has; of a boom whose locks are taken out, three for all of them."""
    if free:
        boom = replace(boom, systems=systems_of(boom))
    try:
        found = configurations_of_length(boom, length=length, system=FREE if free else None)
    except ValueError:  # nothing that locks is so long
        return ()
    return tuple(
        (tuple(float(f) for f in row), system)
        for row, system in zip(found.extension, found.system, strict=True)
    )


def ways_of(now: Answer, ways: tuple[Way, ...]) -> Ways | None:
    """Read off an answer what each way does at its radius under its load.

    Parameters
    ----------
    ways : tuple of Way
        From :func:`chosen`, and answered beside the scene

    Returns
    -------
    Ways or None
        None where the scene has no lift to compare at
    """
    radius = now.radius
    if not np.isfinite(radius) or not radius > 0.0 or now.lies:
        return None
    if now.lift is None:
        return None
    setup, rows = now.setup, tuple(now.lift.ways.index(extension) for extension, _ in ways)
    boom = condensed_ways(setup.machine, tuple(way for way, _ in ways))
    rated, limits = [now.lift.rated[row] for row in rows], fixed(setup).limits
    listed = [limits[one.limit] if one.limit >= 0 else None for one in rated]
    capacity = np.array([one.capacity for one in rated])
    present = rows.index(0)
    # One figure, one number: what the page says of the present way is the answer's own.
    capacity[present], listed[present] = now.capacity, now.first
    return Ways(
        setup=setup,
        ways=ways,
        present=present,
        radius=radius,
        capacity=capacity,
        first=tuple(listed),
        boom=boom,
        state=now.lift.at.state,
        rows=rows,
    )


def told_ways(found: Ways | None, now: Answer, *, units: str) -> dict[str, Any]:
    """Tell what a page shows of them first.

    Returns
    -------
    dict
        `title`; `ways`: rows with `letter`, `colour`, `ink`, `label`, `carries`, `less`, `share`
        and `gap` [1], `set_by`, `what`, `present`, `best`, `extension` and `boom`, the
        sections as pairs of start and end over the length [1]
    """
    length = show(float(now.boom.layout.boom_length[0]), "boom_length", units)
    if found is None:
        return {"title": f"One length, {length}: no lift to compare here", "ways": []}
    radius = show(found.radius, "length", units)
    most = float(np.nanmax(np.nan_to_num(found.capacity)))
    title = f"Boom {length} long, load at {radius}: which way out carries more?"
    if len(found.ways) == 1:
        title = f"Boom {length} long, load at {radius}: there is only this way out"
    scale = scale_of(most, units)
    steps = [scale.down(float(c)) if c > 0.0 else 0 for c in found.capacity]
    gaps = [max(steps) - one for one in steps]
    rows = [
        _row(found, k, units)
        | {
            "share": round(steps[k] / max(max(steps), 1), 4),
            "gap": round(gaps[k] / max(*gaps, 1), 4),
            "less": scale.text(gaps[k]) if gaps[k] and steps[k] else "",
            "best": bool(most > 0.0 and found.capacity[k] >= most * (1.0 - SAME)),
        }
        for k in range(len(found.ways))
    ]
    return {"title": title, "ways": rows}


def _row(found: Ways, k: int, units: str) -> dict[str, Any]:
    capacity, limit = float(found.capacity[k]), found.first[k]
    extension = found.ways[k][0]
    paint, known = identity(k).colour, np.isfinite(capacity)
    sets = WHAT_SETS[limit.set_by] if limit is not None else ""
    return {
        "letter": letter(k),
        "colour": paint,
        "ink": ink_on(paint),
        "label": label(np.array(extension)),
        "carries": show_rated(capacity, units) if known else "–",
        "set_by": sets,
        "what": what_happens(limit) if limit is not None else "no rated load here",
        "tips": limit is not None and limit.set_by == STABILITY,
        "present": k == found.present,
        "extension": list(extension),
        "boom": _sections(found.boom, k),
    }


def _sections(boom: Condensed, way: int) -> list[list[float]]:
    """Where each section begins and ends along the boom, over its length [1]."""
    placed = boom.layout
    length = float(placed.boom_length[way])
    ends = np.stack([placed.tail[way], placed.front[way]], axis=1) / length
    return [[round(float(one), 4) for one in row] for row in ends]
