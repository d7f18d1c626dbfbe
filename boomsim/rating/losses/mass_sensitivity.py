"""What a kilogram costs: the derivative of rated capacity with respect to each part's mass.

Where stability governs it follows from the sum that the rating itself is made of: a kilogram that
lies a distance d - n.x inside the tipping line is worth share (d - n.x)/lever of load. Where
strength governs, the machine is rated anew with the part a little lighter and a little heavier:
the rated load is hung on the changed machine and one step along the slopes of all utilisations
leads to the load at which the first of them is one.

Derived in docs/theory.md, section 11.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from boomsim.gravity import GRAVITY
from boomsim.machine.model import Machine
from boomsim.machine.part_names import section_name
from boomsim.mechanics.boom.condense import condense
from boomsim.mechanics.geometry import Array
from boomsim.rating.capacity import Rating
from boomsim.rating.chart_places import Places, rate_places
from boomsim.rating.lift_response import Response, respond
from boomsim.rating.limits.tipping import rated_share
from boomsim.rating.setup import Setup

STEP, SLOPE_STEP = 0.02, 1e-3
"""Share of a part's mass by which it is changed, and of the load for a slope over it [1]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Sensitivity:
    """Kilograms of capacity for a kilogram of mass. Shapes (parts, places).

    Attributes
    ----------
    name : tuple of str
        Parts: the sections, the head, the counterweight
    mass : ndarray, shape (parts,)
        [kg]
    by_sum : ndarray
        From the stability sum; NaN where strength governs [kg/kg]
    by_rating : ndarray
        From machines with a lighter and a heavier part [kg/kg]
    is_stability : ndarray of bool, shape (places,)
    kink : ndarray of bool
        True where another limit takes over within the step, so that there is no one slope
    """

    name: tuple[str, ...]
    mass: Array
    by_sum: Array
    by_rating: Array
    is_stability: np.ndarray
    kink: np.ndarray

    @property
    def best(self) -> Array:
        """The sum where there is one, else the difference [kg/kg]."""
        return np.where(np.isnan(self.by_sum), self.by_rating, self.by_sum)


def sensitivity(setup: Setup, *, places: Places) -> Sensitivity:
    """Differentiate the rated capacity at some places with respect to masses."""
    rating = rate_places(setup, places)
    parts = parts_of(setup)
    rated = _Rated.of(setup, rating)
    differences = [rated.difference(change) for _, _, change in parts]
    return Sensitivity(
        name=tuple(name for name, _, _ in parts),
        mass=np.array([mass for _, mass, _ in parts]),
        by_sum=np.where(rating.is_stability[:, 0], _by_sum(setup, rating, len(parts)), np.nan),
        by_rating=np.array([slope for slope, _ in differences]),
        is_stability=rating.is_stability[:, 0],
        kink=np.array([kink for _, kink in differences]),
    )


Change = Callable[[Setup, float], tuple[Setup, float]]


def parts_of(setup: Setup) -> list[tuple[str, float, Change]]:
    """Parts whose mass can be changed, each with its mass and the way to change it by a share."""
    boom = setup.machine.boom
    found: list[tuple[str, float, Change]] = [
        (section_name(k), s.mass, _section_change(k)) for k, s in enumerate(boom.sections)
    ]
    found.append(("head", boom.head.mass, _head_change))
    if setup.counterweight.mass > 0.0:
        found.append(("counterweight", setup.counterweight.mass, _counterweight_change))
    return found


def _section_change(number: int) -> Change:
    def change(setup: Setup, share: float) -> tuple[Setup, float]:
        boom = setup.machine.boom
        more = share * boom.sections[number].mass
        heavier = replace(boom.sections[number], mass=boom.sections[number].mass + more)
        sections = (*boom.sections[:number], heavier, *boom.sections[number + 1 :])
        return _with(setup, replace(setup.machine, boom=replace(boom, sections=sections))), more

    return change


def _head_change(setup: Setup, share: float) -> tuple[Setup, float]:
    boom = setup.machine.boom
    more = share * boom.head.mass
    head = replace(boom.head, mass=boom.head.mass + more)
    return _with(setup, replace(setup.machine, boom=replace(boom, head=head))), more


def _counterweight_change(setup: Setup, share: float) -> tuple[Setup, float]:
    more = share * setup.counterweight.mass
    heavier = replace(setup.counterweight, mass=setup.counterweight.mass + more)
    return replace(setup, counterweight=heavier), more


def _with(setup: Setup, machine: Machine) -> Setup:
    return replace(setup, machine=machine)


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class _Rated:
    """Rated places, and how every utilisation grows with the load there."""

    setup: Setup
    rating: Rating
    slope: Array

    @classmethod
    def of(cls, setup: Setup, rating: Rating) -> "_Rated":
        step = SLOPE_STEP * rating.capacity
        low, high = (
            respond(setup, boom=rating.boom, load=load, radius=rating.radius).utilisation
            for load in (rating.capacity - step, rating.capacity + step)
        )
        with np.errstate(divide="ignore", invalid="ignore"):
            return cls(setup=setup, rating=rating, slope=(high - low) / (2.0 * step))

    def difference(self, change: Change) -> tuple[Array, np.ndarray]:
        """Central difference of the capacity, and where another limit governs on one side."""
        (less, down), (more, up) = change(self.setup, -STEP), change(self.setup, STEP)
        (low, first), (high, second) = self._again(less), self._again(more)
        return (high - low) / (up - down), first != second

    def _again(self, changed: Setup) -> tuple[Array, np.ndarray]:
        """Rate a changed machine from where the unchanged one stands."""
        boom = condense(changed.machine, extension=self.rating.boom.layout.extension)
        load = self.rating.capacity
        utilisation = respond(changed, boom=boom, load=load, radius=self.rating.radius).utilisation
        with np.errstate(divide="ignore", invalid="ignore"):
            reach = load + (1.0 - utilisation) / self.slope
        # Limits that a load does not approach, and those of no load at all, never govern.
        reach = np.where((self.slope > 0.0) & np.isfinite(reach), reach, np.inf)[:, :, 0]
        return reach.min(axis=0), np.argmin(reach, axis=0)


def _by_sum(setup: Setup, rating: Rating, count: int) -> Array:
    """Worth of a kilogram of each part in the stability sum, shape (parts, places)."""
    load = np.nan_to_num(rating.capacity)
    at = respond(setup, boom=rating.boom, load=load, radius=rating.radius)
    sections = len(setup.machine.boom.sections)
    # Sections and head lead the list of masses; the counterweight is the last that turns.
    which = [*range(sections + 1), at.placed.turning - 1][:count]
    columns = [_worth(setup, at, which, cell) for cell in range(len(load))]
    return np.array(columns).T


def _worth(setup: Setup, at: Response, which: list[int], cell: int) -> Array:
    balance, placed, rule = at.balance, at.placed, setup.rule.stability
    least = balance.tipping_load[:, :, cell, 0]
    turn, line = np.unravel_index(np.argmin(least), least.shape)
    normal, slew = balance.lines.normal[line], balance.slew[turn]
    ahead = normal @ [np.cos(slew), np.sin(slew)]
    across = normal @ [-np.sin(slew), np.cos(slew)]
    change = setup.disturbances
    out = placed.out[which, cell, 0] + placed.up[which, cell, 0] * np.tan(change.lean)
    left = placed.left[which, cell, 0] + placed.up[which, cell, 0] * np.tan(change.lean_across)
    inside = balance.lines.distance[line] - ahead * out - across * left
    lever = balance.lever[turn, line, cell, 0] / GRAVITY
    scale = rated_share(
        rule, tipping_load=np.array(1.0), support_kind=setup.support.kind, at_head=np.array(0.0)
    )
    worth = scale * inside / lever
    if rule.kind != "share":
        arm = placed.out[which, cell, 0] - setup.machine.heel_out
        reach = placed.head_out[cell, 0] - setup.machine.heel_out
        boom = np.array(which) <= len(setup.machine.boom.sections)
        worth = worth - np.where(boom, rule.boom_share / rule.load_factor * arm / reach, 0.0)
    return np.asarray(worth)
