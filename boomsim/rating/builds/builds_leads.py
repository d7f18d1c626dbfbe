"""Which build leads, and what sets its figure, from which radius to which.

Builds of one configuration are rated on a coarse grid, and between two of its radii again, five
times finer each time, wherever the leader or what sets a figure changes in between.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.geometry import Array
from boomsim.rating.capacity import rate
from boomsim.rating.charts.rows_and_rounding import even_radii, row_step
from boomsim.rating.comparison.capacity_envelope import SAME
from boomsim.rating.empty_hook.less_than_the_hook import blank_under_hook
from boomsim.rating.setup import Setup

COARSE, FINER, ROUNDS = 8, 5, 3
"""Grid radii to a row of the table, how much finer each round is, and how many rounds: from
0.125 m to 1 mm for a crane whose rows are a metre apart [1]."""

SHORTEST_TIE = 0.25
"""A tie over less than this share of a row is where two lines cross, and is not told [1]."""

NOTHING = ""
"""Stands for what sets a figure where there is none."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Followed:
    """Builds rated at growing radii, closest together where something changes.

    Attributes
    ----------
    radius : ndarray, shape (radii,)
        [m]
    capacity : ndarray, shape (builds, radii)
        NaN out of reach [kg]
    set_by : ndarray of str, shape (builds, radii)
        What sets the figure; empty out of reach
    row : float
        Distance of the rows of a chart [m]
    """

    radius: Array
    capacity: Array
    set_by: np.ndarray
    row: float

    @property
    def on_top(self) -> np.ndarray:
        """Which builds carry most, where all of them reach."""
        return level_at(self.capacity) & np.isfinite(self.capacity).all(axis=0)


def level_at(capacity: Array) -> np.ndarray:
    """Which builds carry most at each radius: one, or several that are level.

    Parameters
    ----------
    capacity : ndarray, shape (builds, radii)
        NaN out of reach [kg]

    Returns
    -------
    ndarray of bool, shape (builds, radii)
        None where none carries anything
    """
    most = np.nan_to_num(capacity).max(axis=0)
    with np.errstate(invalid="ignore"):
        return np.asarray((capacity >= most * (1.0 - SAME)) & (most > 0.0))


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """Radii over which something stays as it is.

    Attributes
    ----------
    near, far : float
        [m]
    what : str or tuple of int
        What sets a figure; or numbers of the builds that carry most
    """

    near: float
    far: float
    what: str | tuple[int, ...]


def followed(setups: Sequence[Setup], *, extension: Array) -> Followed:
    """Rate builds wherever they reach.

    Parameters
    ----------
    setups : sequence of Setup
        Of machines that differ in their plates alone
    extension : ndarray, shape (1, moving sections)
        [1]
    """
    booms = [condense(setup.machine, extension=extension) for setup in setups]
    machine, length = setups[0].machine, booms[0].layout.boom_length
    row = row_step(machine, length=length)
    radius = even_radii(setups[0], length=length, step=row / COARSE)
    found = _rated(setups, booms, radius, row)
    for _ in range(ROUNDS):
        inside = _inside(found)
        if not len(inside):
            break
        found = _together(found, _rated(setups, booms, inside, row))
    return found


def _rated(
    setups: Sequence[Setup], booms: Sequence[Condensed], radius: Array, row: float
) -> Followed:
    capacity, set_by = [], []
    for setup, boom in zip(setups, booms, strict=True):
        rated = rate(setup, extension=boom.layout.extension, radius=radius, boom=boom)
        rating = blank_under_hook(rated)
        kinds = np.array([*(limit.set_by for limit in rating.limits), NOTHING])
        capacity.append(rating.capacity[0])
        set_by.append(kinds[rating.governing[0]])
    return Followed(radius=radius, capacity=np.array(capacity), set_by=np.array(set_by), row=row)


def _inside(found: Followed) -> Array:
    """Radii to add wherever who leads or what sets a figure changes between neighbours."""
    changes = np.zeros(len(found.radius) - 1, dtype=bool)
    for now in (found.on_top, found.set_by):
        changes |= (now[:, 1:] != now[:, :-1]).any(axis=0)
    share = np.arange(1, FINER) / FINER
    places = np.flatnonzero(changes)
    start, end = found.radius[places, None], found.radius[places + 1, None]
    return np.asarray((start + share * (end - start)).ravel())


def _together(one: Followed, other: Followed) -> Followed:
    order = np.argsort(np.concatenate([one.radius, other.radius]), kind="stable")

    def merged(name: str) -> np.ndarray:
        both = np.concatenate([getattr(one, name), getattr(other, name)], axis=-1)
        return np.asarray(both[..., order])

    return replace(
        one, radius=merged("radius"), capacity=merged("capacity"), set_by=merged("set_by")
    )


def setting(found: Followed, build: int) -> tuple[Stretch, ...]:
    """Tell what sets one build's figures from which radius to which.

    Parameters
    ----------
    found : Followed
    build : int
        Its number

    Returns
    -------
    tuple of Stretch
        By growing radius; radii out of its reach are left out
    """
    return _stretches(found.radius, [str(kind) for kind in found.set_by[build]])


def leading(found: Followed) -> tuple[Stretch, ...]:
    """Tell which builds carry most from which radius to which.

    Returns
    -------
    tuple of Stretch
        By growing radius, where all of them reach
    """
    top = found.on_top
    told = _stretches(found.radius, [tuple(map(int, np.flatnonzero(one))) for one in top.T])
    return _without_crossings(told, least=SHORTEST_TIE * found.row)


def _stretches(radius: Array, what: Sequence[str | tuple[int, ...]]) -> tuple[Stretch, ...]:
    """Join neighbours that are alike; two stretches that touch meet halfway between their radii."""
    starts = [k for k in range(len(what)) if k == 0 or what[k] != what[k - 1]]
    made = []
    for start, end in zip(starts, [*starts[1:], len(what)], strict=True):
        if what[start]:
            near = radius[start] if start == 0 or not what[start - 1] else _middle(radius, start)
            last = end == len(what) or not what[end]
            far = radius[end - 1] if last else _middle(radius, end)
            made.append(Stretch(near=float(near), far=float(far), what=what[start]))
    return tuple(made)


def _middle(radius: Array, number: int) -> float:
    return float(radius[number - 1] + radius[number]) / 2


def _without_crossings(told: tuple[Stretch, ...], *, least: float) -> tuple[Stretch, ...]:
    """Leave out ties too short to be any; who leads before and after then meet in their middle."""
    made: list[Stretch] = []
    for one in told:
        tie = len(one.what) > 1
        if tie and one.far - one.near < least and len(told) > 1:
            continue
        if made and 0.0 < one.near - made[-1].far < least:
            middle = (one.near + made[-1].far) / 2
            made[-1], one = replace(made[-1], far=middle), replace(one, near=middle)
        if made and made[-1].what == one.what and made[-1].far == one.near:
            one = replace(made.pop(), far=one.far)
        made.append(one)
    return tuple(made)
