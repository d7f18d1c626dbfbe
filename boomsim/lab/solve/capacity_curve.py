"""Capacity over radius of one configuration, kept, and begun from the one before."""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from boomsim.lab.scene.slider_ranges import nice_step
from boomsim.lab.solve import nearby_search as near
from boomsim.machine.model import Machine
from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.geometry import Array
from boomsim.rating.capacity import rate
from boomsim.rating.empty_hook.empty_hook_study import EmptyHook, empty_hook
from boomsim.rating.lift_response import respond
from boomsim.rating.limits.limit_kind import STABILITY
from boomsim.rating.limits.limit_table import limits_of
from boomsim.rating.longest_boom import too_long
from boomsim.rating.setup import Setup

COLUMNS, BETWEEN = 9, 3
"""A chart has at most so many radii to read, and its curve so many points for each [1]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Curve:
    """Capacity over radius; every `BETWEEN`-th radius is a round one, the first among them.

    Attributes
    ----------
    radius : ndarray, shape (n,)
        Growing [m]
    capacity : ndarray, shape (n,)
        NaN out of reach, and where the crane would lie on its side [kg]
    tips : ndarray of bool, shape (n,)
        True where stability governs
    """

    radius: Array
    capacity: Array
    tips: np.typing.NDArray[np.bool_]


_last: dict[tuple[str, str], Curve] = {}
"""Curve that was worked out last, by machine and rule: where the next search begins. It changes
how long the next curve takes and not what it says."""


@lru_cache(maxsize=256)
def condensed(machine: Machine, extension: tuple[float, ...]) -> Condensed:
    """Condense a configuration once.

    Parameters
    ----------
    extension : tuple of float
        [1]
    """
    return condense(machine, extension=np.array(extension))


@lru_cache(maxsize=256)
def lowest(setup: Setup, extension: tuple[float, ...]) -> EmptyHook:
    """Find once how far down and out a configuration stands with its empty hook.

    Parameters
    ----------
    setup : Setup
        As :func:`boomsim.lab.scene.scene.setup_of` gives it, one object for equal choices
    extension : tuple of float
        [1]
    """
    return empty_hook(setup, extension=np.array(extension))


@lru_cache(maxsize=128)
def _place(setup: Setup, extension: tuple[float, ...], unit: float) -> list[Curve]:
    """Where a curve lies once it has been worked out."""
    return []


def known_curve(setup: Setup, extension: tuple[float, ...], unit: float) -> Curve | None:
    """Give what :func:`curve` has worked out already; None where it has not yet."""
    return next(iter(_place(setup, extension, unit)), None)


@lru_cache(maxsize=128)
def curve(setup: Setup, extension: tuple[float, ...], unit: float) -> Curve:
    """Rate one configuration at round radii and evenly between them.

    Parameters
    ----------
    setup : Setup
        As :func:`boomsim.lab.scene.scene.setup_of` gives it, one object for equal choices
    extension : tuple of float
        [1]
    unit : float
        Of the radii that are to be round [m]
    """
    radii = _radii(setup, condensed(setup.machine, extension), unit)
    name = setup.machine.name, setup.rule.name
    capacity, tips = _rated(setup, extension, radii, _last.get(name))
    capacity[lowest(setup, extension).lies_over(radius=radii)] = np.nan
    made = Curve(radius=radii, capacity=capacity, tips=tips)
    _last[name] = made
    _place(setup, extension, unit)[:] = [made]
    return made


def _radii(setup: Setup, boom: Condensed, unit: float) -> Array:
    length, limits = float(boom.layout.boom_length[0]), setup.machine.boom
    heel = setup.machine.heel_out
    closest = max(heel + length * float(np.cos(limits.greatest_angle)), 0.0)
    farthest = heel + length * float(np.cos(limits.least_angle))
    step = nice_step((farthest - closest) / unit, most=COLUMNS) * unit
    first = max(np.ceil(closest / step), 1.0)
    count = max(int(np.floor(farthest / step) - first) + 1, 1)
    return np.asarray(step * (first + np.arange(BETWEEN * (count - 1) + 1) / BETWEEN))


def _rated(
    setup: Setup, extension: tuple[float, ...], radii: Array, before: Curve | None
) -> tuple[Array, np.typing.NDArray[np.bool_]]:
    capacity, tips = np.full(len(radii), np.nan), np.zeros(len(radii), dtype=bool)
    boom = condensed(setup.machine, extension)
    if too_long(setup, length=boom.layout.boom_length)[0]:
        return capacity, tips
    open_ = np.ones(len(radii), dtype=bool)
    guessed = np.full(len(radii), np.nan)
    if before is not None and near.goes(setup):
        guessed = near.guesses(before.radius, before.capacity, radii)
    known = np.flatnonzero(guessed > 0.0)
    limits = limits_of(setup.machine, kinds=setup.kinds)
    families = np.array([limit.set_by == STABILITY for limit in limits])
    if 2 * len(known) > len(radii):
        tried = respond(
            setup,
            boom=boom,
            load=(guessed[known, None] * near.TRIALS).reshape(1, -1),
            radius=np.repeat(radii[known], len(near.TRIALS))[None],
        )
        for place, found in zip(known, near.crossings(tried, first=0), strict=True):
            if found is not None:
                capacity[place], open_[place] = found.capacity, False
                tips[place] = found.limit >= 0 and families[found.limit]
    if open_.any():
        rest = rate(setup, extension=np.array(extension), radius=radii[open_])
        capacity[open_], tips[open_] = rest.capacity[0], rest.is_stability[0]
    return capacity, tips
