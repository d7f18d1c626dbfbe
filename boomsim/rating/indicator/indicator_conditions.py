"""Conditions that an indicator does not see, each alone: what is, and what it was told."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np

from boomsim.mechanics.geometry import Array, layout
from boomsim.mechanics.stability.tipping_lines import tipping_lines
from boomsim.rating.capacity import rate
from boomsim.rating.setup import Setup
from boomsim.rating.setup_variants import (
    with_counterweight,
    with_disturbances,
    with_support,
)
from boomsim.rating.strategies import configurations_of_length


@dataclass(frozen=True, slots=True, kw_only=True)
class Amounts:
    """How much of each.

    Attributes
    ----------
    side_pull : float
        Share of the load [1]
    lean : float
        Out of level [rad]
    wind : float
        Gusts [m/s]
    load_area : float
        Wind area of each kilogram of load [m2/kg]
    swing : float
        Speed of the boom head while slewing [m/s]
    """

    side_pull: float = 0.05
    lean: float = np.radians(1.0)
    wind: float = 14.0
    load_area: float = 1.2e-3
    swing: float = 1.5


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Condition:
    """One condition.

    Attributes
    ----------
    key : str
        Stable name, such as "side pull"
    actual, entered : Setup
        As the crane is, and as it was told
    extension, told : ndarray, shape (moving sections,)
        The way out that is, and that it was told [1]
    swung : bool
        The load is slewed round and hangs outwards
    bends : bool
        Whether it counts the boom's bending
    """

    key: str
    actual: Setup
    entered: Setup
    extension: Array
    told: Array
    swung: bool = False
    bends: bool = True


def conditions(
    setup: Setup, *, extension: Array, radius: float, amounts: Amounts
) -> tuple[Condition, ...]:
    """List what may be, beside what it was told.

    Parameters
    ----------
    setup : Setup
        As the crane was told: calm
    extension : ndarray, shape (moving sections,)
        As it was told [1]
    radius : float
        [m]

    Returns
    -------
    tuple of Condition
        The first is as it was told; wrong entries only where the machine has another choice
    """

    def one(key: str, actual: Setup = setup, **more: object) -> Condition:
        given = {"extension": extension, "told": extension, **more}
        return Condition(key=key, actual=actual, entered=setup, **given)  # type: ignore[arg-type]

    def disturbed(**changes: float | bool) -> Setup:
        return with_disturbances(setup, **changes)

    wind = {"wind_speed": amounts.wind, "load_area": amounts.load_area}
    found = [
        one("as told"),
        one("bending ignored", bends=False),
        one("side pull", disturbed(side_pull=amounts.side_pull)),
        one("leaning ahead", disturbed(lean=amounts.lean)),
        one("leaning across", disturbed(lean_across=amounts.lean)),
        one("wind from behind", disturbed(**wind)),
        one("wind across", disturbed(wind_across=True, **wind)),
        one("swinging out", swung=True),
    ]
    found += [one("way out", extension=other) for other in _weakest_way(setup, extension, radius)]
    found += [one("counterweight", other) for other in _lighter(setup)]
    found += [one("outriggers", other) for other in _narrower(setup)]
    found += [one("parts of line", other) for other in _fewer_parts(setup)]
    return tuple(found)


def _weakest_way(setup: Setup, extension: Array, radius: float) -> Iterator[Array]:
    """Of the other ways to the same boom length the one that is rated least."""
    boom = setup.machine.boom
    length = float(layout(boom, extension=extension[None]).boom_length[0])
    ways = configurations_of_length(boom, length=length).extension
    others = ways[np.max(np.abs(ways - extension), axis=1) > 0.01]
    if not len(others):
        return
    capacity = rate(setup, extension=others, radius=np.array([radius])).capacity[:, 0]
    if np.isfinite(capacity).any():
        yield others[int(np.nanargmin(capacity))]


def _lighter(setup: Setup) -> Iterator[Setup]:
    """The next lighter counterweight."""
    lighter = [c for c in setup.machine.counterweights if c.mass < setup.counterweight.mass]
    if lighter:
        yield with_counterweight(setup, max(lighter, key=lambda choice: choice.mass))


def _narrower(setup: Setup) -> Iterator[Setup]:
    """Supports of the same kind whose tipping lines are nearest, all of them together."""
    own = tipping_lines(setup.support).distance.sum()
    near = [
        (float(tipping_lines(support).distance.sum()), support)
        for support in setup.machine.supports
        if support.kind == setup.support.kind
    ]
    nearest, support = min(near, key=lambda pair: pair[0])
    if nearest < own - 1e-9:
        yield with_support(setup, support)


def _fewer_parts(setup: Setup) -> Iterator[Setup]:
    """Half the parts of line, or the next that can be reeved."""
    fewer = [p for p in setup.machine.hoist.parts if p <= setup.parts // 2]
    if fewer:
        yield replace(setup, parts=max(fewer))
