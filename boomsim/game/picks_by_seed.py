"""Picks drawn by a seed, so that the answer is never in doubt and never where the last one was."""

from dataclasses import dataclass
from itertools import pairwise
from math import floor, log10
from random import Random

import numpy as np

from boomsim.files.work_progress import Told, counted
from boomsim.game.stated_pick import Pick
from boomsim.machine.boom_systems import BOOM_SYSTEMS
from boomsim.machine.model import Boom
from boomsim.mechanics.geometry import Array, layout
from boomsim.rating.capacity import Rating, rate
from boomsim.rating.charts.rows_and_rounding import row_step
from boomsim.rating.comparison.comparison_study import default_radii
from boomsim.rating.longest_boom import too_long
from boomsim.rating.mass_sums import scale_of
from boomsim.rating.parts_reeved import hanging_mass
from boomsim.rating.setup import Setup
from boomsim.rating.strategies import (
    configurations_of_length,
    pinned_configurations,
    range_of_length,
)

MOST_WAYS, MOST_PICKS = 4, 50
"""More ways than these nobody weighs up at a glance; more picks nobody plays at a time [1]."""

APART = 0.01
"""Share of the larger by which two rated loads differ, at least, that have the load between them.
The wider apart two are, the more often it is between them, in the middle half [1]."""

LEAD = 0.01
"""Share by which the best is ahead of the next: nearer ones nobody could tell apart [1]."""

TOO_MUCH = 0.16
"""So much more than any of them carries hangs there at most, where none carries it [1]."""

NOBODY = 6
"""In one pick out of so many none of the ways carries the load [1]."""

TRIES = 300
"""Draws for one pick after which the machine is said to have none [1]."""

THIRDS = 3
"""What sets a figure differs close in, half out and far out, so they take turns [1]."""


def draw(
    setup: Setup, *, picks: int, seed: int, units: str = "metric", told: Told | None = None
) -> list[Pick]:
    """Draw the picks of a game, by turns close in, half out and far out.

    Parameters
    ----------
    setup : Setup
    picks : int
        How many, 1 to 50
    seed : int
        The same seed draws the same picks
    units : str
        "metric" or "us": in which loads and radii are round figures
    told : callable, optional
        Hears what is done

    Raises
    ------
    ValueError
        If `picks` is out of its range, or the machine set up like this has no such pick.
    """
    if not 1 <= picks <= MOST_PICKS:
        raise ValueError(f"A game has 1 to {MOST_PICKS} picks, and {picks} were asked for.")
    drawing = _Drawing(setup, Random(f"{setup.machine.name} {seed}"), units)
    first = drawing.chance.randrange(THIRDS)
    numbers = counted(range(picks), what="drawing picks", told=told)
    return [drawing.pick((first + number) % THIRDS) for number in numbers]


@dataclass(slots=True)
class _Drawing:
    """What the picks of one game share: what has been asked is not asked again."""

    setup: Setup
    chance: Random
    units: str
    asked: set[tuple[float, float]]
    lengths: list[float]

    def __init__(self, setup: Setup, chance: Random, units: str) -> None:
        self.setup, self.chance, self.units = setup, chance, units
        lengths = _lengths(setup.machine.boom)
        self.lengths = lengths[~too_long(setup, length=lengths)].tolist()
        self.asked = set()

    def pick(self, third: int) -> Pick:
        for _ in range(TRIES if self.lengths else 0):
            length = self.chance.choice(self.lengths)
            found = self.at(length, third)
            if found is not None and (length, found.radius) not in self.asked:
                self.asked.add((length, found.radius))
                return found
        raise ValueError(
            "As the crane is set up, too few of its boom lengths have two ways out that carry "
            "clearly different loads. Ask for fewer picks, or choose another machine, "
            "counterweight or support."
        )

    def at(self, length: float, third: int) -> Pick | None:
        """Try a length: a radius in one third of the reach, some of the ways, a load."""
        rating = self.rated(length)
        with np.errstate(invalid="ignore"):
            lengths = rating.boom.layout.boom_length
            known = rating.capacity > hanging_mass(self.setup, length=lengths, angle=rating.angle)
        columns = np.flatnonzero(known.sum(axis=0) > 1)
        columns = np.array_split(columns, THIRDS)[third]
        if not len(columns):
            return None
        column = self.chance.choice(columns.tolist())
        there = np.flatnonzero(known[:, column]).tolist()
        ways = self.chance.sample(there, min(len(there), MOST_WAYS))
        capacity = rating.capacity[ways, column]
        load = self.load(capacity)
        if load is None:
            return None
        return Pick(
            setup=self.setup,
            length=float(rating.boom.layout.boom_length.mean()),
            radius=float(rating.radius[0, column]),
            load=load,
            extension=rating.boom.layout.extension[ways],
            capacity=capacity,
            limits=tuple(rating.limits[number] for number in rating.governing[ways, column]),
        )

    def rated(self, length: float) -> Rating:
        """Rate all ways to a length at the rows of a chart."""
        ways = configurations_of_length(self.setup.machine.boom, length=length)
        step = row_step(self.setup.machine, length=ways.length, units=self.units)
        radii = default_radii(self.setup, ways, step=step)
        return rate(self.setup, extension=ways.extension, radius=radii)

    def load(self, capacity: Array) -> float | None:
        """Choose a round load between two capacities, or beyond all; None if there is no room."""
        by_size = np.sort(capacity)
        gaps = [(low, high) for low, high in pairwise(by_size) if high - low >= APART * high]
        if not gaps or by_size[-1] - by_size[-2] < LEAD * by_size[-1]:
            return None
        low, high = self.chance.choices(gaps, weights=[high - low for low, high in gaps])[0]
        if self.chance.randrange(NOBODY) == 0:
            low, high = by_size[-1], by_size[-1] * (1.0 + TOO_MUCH)
        scale = scale_of(low, self.units)
        wanted = (low + (high - low) * self.chance.uniform(0.25, 0.75)) / scale.step
        step = max(10 ** floor(log10(0.2 * (high - low) / scale.step)), 1)
        steps = step * round(wanted / step)
        # Told figures are rounded down: the answer must be the same by them.
        told = scale.down(low) < steps < scale.down(high)
        return float(steps * scale.step) if told else None


def _lengths(boom: Boom) -> Array:
    """Lengths that a game asks for: all that pins make, or tenths of the way out [m]."""
    if BOOM_SYSTEMS[boom.systems[0]].locks:
        return np.unique(layout(boom, extension=pinned_configurations(boom)).boom_length.round(2))
    shortest, longest = range_of_length(boom)
    return shortest + (longest - shortest) * np.arange(2, 10) / 10
