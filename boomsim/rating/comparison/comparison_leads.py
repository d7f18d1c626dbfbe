"""Who leads from which radius to which, and where the lead passes: corners of the envelope."""

from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np

from boomsim.mechanics.boom.condense import Condensed
from boomsim.rating.charts.rows_and_rounding import row_step
from boomsim.rating.comparison.capacity_envelope import SAME, Envelope, envelope
from boomsim.rating.limits.limit_kind import PERMISSIBLE_VALUE, Limit
from boomsim.rating.limits.limit_table import limits_of
from boomsim.rating.setup import Setup

SHORTEST = 0.01
"""A lead over less than this share of a row of the table is not told: its ends would be printed as
one and the same radius [1]."""

SHORTEST_TIE = 0.25
"""The same for ways that are level without one value that holds them all: curves that cross at a
small angle are level for a while before and after [1]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Lead:
    """Radii over which the same ways carry most.

    Attributes
    ----------
    near, far : float
        [m]
    ways : tuple of int
        One that leads, or several that carry the same: a tie
    limit : Limit or None
        What sets the figure of all of them over all these radii, if it is the same
    capacity : tuple of float
        At the near and at the far end [kg]
    by_reach : bool
        Whether they lead only as a better one does not reach: it comes into reach at the far end,
        or left it at the near one
    """

    near: float
    far: float
    ways: tuple[int, ...]
    limit: Limit | None
    capacity: tuple[float, float]
    by_reach: bool

    @property
    def leader(self) -> int | None:
        """The one that leads; None in a tie."""
        return self.ways[0] if len(self.ways) == 1 else None


def is_held(limit: Limit | None) -> bool:
    """Whether a permissible value of the whole crane, such as the line pull, sets a figure."""
    return limit is not None and limit.set_by == PERMISSIBLE_VALUE and limit.section is None


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Crossover:
    """Where one way takes the lead from another as the radius grows.

    Attributes
    ----------
    radius : float
        [m]
    before, after : int
        Configurations that lead on the near and on the far side
    capacity : float
        Of both there [kg]
    """

    radius: float
    before: int
    after: int
    capacity: float


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Leads:
    """Who leads where among ways to one length.

    Attributes
    ----------
    leads : tuple of Lead
        By growing radius, at all radii that any of the ways reaches
    crossovers : tuple of Crossover
        Of two leaders; where a tie ends, or where one no longer reaches, no curves cross
    least : tuple of int
        The one that carries least close in, where they first differ, and the one that does far
        out; both where all of them reach
    """

    leads: tuple[Lead, ...]
    crossovers: tuple[Crossover, ...]
    least: tuple[int, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Run:
    """Columns of an envelope, first to last, over which the same ways are on top."""

    first: int
    last: int
    ways: tuple[int, ...]


def leads_of(setup: Setup, *, boom: Condensed) -> Leads:
    """Find who leads where, at all radii that any of the ways reaches.

    Parameters
    ----------
    boom : Condensed
        The ways, of nearly one length
    """
    found = envelope(setup, boom=boom)
    limits = limits_of(setup.machine, kinds=setup.kinds)
    row = row_step(setup.machine, length=boom.layout.boom_length)
    runs = _worth_telling(found, limits, row=row)
    met = [_crossover(found, one, two) for one, two in pairwise(runs)]
    return Leads(
        leads=tuple(_leads(found, limits, runs)),
        crossovers=tuple(crossover for crossover in met if crossover is not None),
        least=_least(found),
    )


def _runs(found: Envelope) -> list[_Run]:
    """Cut the envelope where those on top change; without the parts where nobody carries."""
    top = found.on_top
    starts = [0, *(np.flatnonzero((top[:, 1:] != top[:, :-1]).any(axis=0)) + 1), top.shape[1]]
    every = [
        _Run(first=int(a), last=int(b) - 1, ways=tuple(map(int, np.flatnonzero(top[:, a]))))
        for a, b in pairwise(starts)
    ]
    return [run for run in every if run.ways]


def _worth_telling(found: Envelope, limits: tuple[Limit, ...], *, row: float) -> list[_Run]:
    """Leave out what is too short, the shortest first; its neighbours then meet."""
    runs = _runs(found)
    while True:
        spare = [_width(found, run) / (row * _shortest(found, limits, run)) for run in runs]
        if not spare or min(spare) >= 1.0:
            return runs
        del runs[int(np.argmin(spare))]
        runs = _merged(found, runs)


def _width(found: Envelope, run: _Run) -> float:
    """At most as wide as from the column before it to the one after it [m]."""
    last = len(found.radius) - 1
    before, after = max(run.first - 1, 0), min(run.last + 1, last)
    return float(found.radius[after] - found.radius[before])


def _shortest(found: Envelope, limits: tuple[Limit, ...], run: _Run) -> float:
    is_curves = len(run.ways) > 1 and not is_held(_limit(found, limits, run))
    return SHORTEST_TIE if is_curves else SHORTEST


def _merged(found: Envelope, runs: list[_Run]) -> list[_Run]:
    made: list[_Run] = []
    for run in runs:
        if made and made[-1].ways == run.ways and _touch(found, made[-1], run):
            made[-1] = replace(made[-1], last=run.last)
        else:
            made.append(run)
    return made


def _touch(found: Envelope, one: _Run, two: _Run) -> bool:
    """Whether something is carried all the way from one to the other."""
    return bool(np.all(found.most[one.last : two.first + 1] > 0.0))


def _limit(found: Envelope, limits: tuple[Limit, ...], run: _Run) -> Limit | None:
    """What sets all their figures, if it is one and the same limit; at the very ends it changes."""
    ends = 1 if run.last - run.first > 1 else 0
    columns = slice(run.first + ends, run.last + 1 - ends)
    ways = list(run.ways)
    governing = found.governing[ways, columns][found.rated[ways, columns]]
    return limits[governing[0]] if len(set(governing.tolist())) == 1 else None


def _crossover(found: Envelope, one: _Run, two: _Run) -> Crossover | None:
    """Where the curves of two leaders meet: a straight line between the last columns [kg], [m]."""
    if len(one.ways) > 1 or len(two.ways) > 1 or not _touch(found, one, two):
        return None
    before, after = one.ways[0], two.ways[0]
    ends = [one.last, two.first]
    ahead = found.capacity[before, ends] - found.capacity[after, ends]
    if not (ahead[0] >= 0.0 >= ahead[1] and ahead[0] > ahead[1]):
        return None  # one of them does not reach the other end
    share = ahead[0] / (ahead[0] - ahead[1])
    radius, capacity = (
        float(values[0] + share * (values[1] - values[0]))
        for values in (found.radius[ends], found.capacity[before, ends])
    )
    return Crossover(radius=radius, before=before, after=after, capacity=capacity)


def _meeting(found: Envelope, one: _Run, two: _Run) -> float | None:
    """Radius at which one run ends and the next begins; None if nobody carries in between [m]."""
    crossover = _crossover(found, one, two)
    if crossover is not None:
        return crossover.radius
    ends = found.radius[[one.last, two.first]]
    return float(ends.mean()) if _touch(found, one, two) else None


def _leads(found: Envelope, limits: tuple[Limit, ...], runs: list[_Run]) -> list[Lead]:
    ends = [_meeting(found, one, two) for one, two in pairwise(runs)]
    made = []
    for k, run in enumerate(runs):
        near = ends[k - 1] if k > 0 else None
        far = ends[k] if k < len(ends) else None
        made.append(
            Lead(
                near=float(found.radius[run.first]) if near is None else near,
                far=float(found.radius[run.last]) if far is None else far,
                ways=run.ways,
                limit=_limit(found, limits, run),
                capacity=(float(found.most[run.first]), float(found.most[run.last])),
                by_reach=_by_reach(found, runs, k),
            )
        )
    return made


def _by_reach(found: Envelope, runs: list[_Run], k: int) -> bool:
    """Whether who led before has left its reach here, or who leads next is not yet in reach."""
    out = found.rated & ~np.isfinite(found.capacity)
    left = k > 0 and out[list(runs[k - 1].ways), runs[k].first].any()
    to_come = k + 1 < len(runs) and out[list(runs[k + 1].ways), runs[k].last].any()
    return bool(left or to_come)


def _least(found: Envelope) -> tuple[int, int]:
    """Who carries least at the first and at the last radius at which as many as can are rated."""
    carried = np.where(found.capacity > 0.0, found.capacity, np.nan)
    count = np.isfinite(carried).sum(axis=0)
    columns = np.flatnonzero(count == count.max())
    poorest = np.argmin(np.where(np.isfinite(carried), carried, np.inf)[:, columns], axis=0)
    smallest = carried[poorest, columns]
    apart = np.flatnonzero(smallest < found.most[columns] * (1.0 - SAME))
    near = int(apart[0]) if len(apart) else 0
    return int(poorest[near]), int(poorest[-1])
