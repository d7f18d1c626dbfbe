"""Rated capacity: the largest gross load at which no limit is used beyond one.

Derived in docs/theory.md, section 7.
"""

import os
import sys
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, fields, replace
from typing import Any

import numpy as np

from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.boom.critical_load import SEARCHES
from boomsim.mechanics.boom.picked_configurations import pick
from boomsim.mechanics.geometry import Array
from boomsim.rating.lift_response import Response, Start, judge_again, respond
from boomsim.rating.limits.limit_kind import STABILITY, Limit
from boomsim.rating.limits.limit_table import limits_of
from boomsim.rating.longest_boom import too_long
from boomsim.rating.parts_reeved import line_capacity
from boomsim.rating.setup import Setup

CLOSE = 1e-6
"""How near to one the largest utilisation must come; the capacity is then good to some 1e-6."""

MOST_TRIES = 40

BEYOND = 1.001
"""Of the load that uses up the line pull, where the search ends [1]."""

ALIKE, TOGETHER = 64, 5120
"""Configurations, and cells of them all, that are solved together at most: so many fit a
processor's cache."""

Block = tuple[np.ndarray, np.ndarray]
"""Rows, one below the other, and columns: together they pick a block of an array."""

FOUND = ("capacity", "governing", "angle", "tipping_load", "tip_deflection", "valid")
"""What a rating has one of for each cell."""

FIRST = 0.4
"""Of the tipping load, what is tried first: more is slow where the boom is near buckling [1]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Rating:
    """Rated cells. Shapes (configurations, cells) unless given.

    Attributes
    ----------
    radius : ndarray
        [m]
    capacity : ndarray
        Gross; NaN out of reach and for a boom too long for the tyres, 0 where a limit is passed
        without any load [kg]
    governing : ndarray of int
        Index into `limits`; -1 where blank
    utilisation : ndarray, shape (limits, configurations, cells)
        Of every limit at the rated load [1]
    angle, tipping_load, tip_deflection : ndarray
        At the rated load [rad], [kg], [m]
    valid : ndarray of bool
        False where the tip deflection is beyond the range of the model
    """

    setup: Setup
    boom: Condensed
    radius: Array
    capacity: Array
    governing: np.ndarray
    limits: tuple[Limit, ...]
    utilisation: Array
    angle: Array
    tipping_load: Array
    tip_deflection: Array
    valid: np.ndarray

    def limit(self, configuration: int, cell: int) -> Limit | None:
        """Limit that governs a cell; None where it is blank."""
        number = int(self.governing[configuration, cell])
        return self.limits[number] if number >= 0 else None

    @property
    def is_stability(self) -> np.ndarray:
        """True where stability sets the figure."""
        families = np.array([limit.set_by == STABILITY for limit in self.limits] + [False])
        return np.asarray(families[self.governing])


def rate(
    setup: Setup,
    *,
    extension: Array,
    radius: Array,
    boom: Condensed | None = None,
) -> Rating:
    """Rate every configuration at every radius.

    Parameters
    ----------
    extension : array_like, shape (configurations, moving sections)
        Fractions of the strokes [1]
    radius : array_like, shape (cells,) or (configurations, cells)
        Loaded radius, kept as the load grows [m]
    boom : Condensed, optional
        The same configurations, where they are condensed already

    Raises
    ------
    ValueError
        If an extension or a radius is not a number in its range.
    """
    boom, radii = _places(setup, boom=boom, extension=extension, radius=radius)
    whole = _blank(setup, boom=boom, radius=radii)

    def rated(cells: Block) -> Rating:
        some = boom if len(cells[0]) == len(radii) else pick(boom, cells[0].ravel())
        return _Search(setup, boom=some, radius=radii[cells]).run()

    # Long booms reach more radii: whoever begins with them ends with what is soon done.
    batches = list(_batches(setup, boom=boom, radius=radii))[::-1]
    for cells, found in zip(batches, _shared(rated, batches), strict=True):
        _fill(whole, found, cells)
    return whole


def _shared(work: Callable[[Block], Rating], pieces: Sequence[Block]) -> Iterator[Rating]:
    """Each piece's rating, in their order, by some of the processors' threads."""
    # A browser has one thread; elsewhere numpy lets the others run while it computes.
    most = 1 if sys.platform == "emscripten" else min(os.cpu_count() or 1, SEARCHES)
    threads = min(most, len(pieces))
    if threads < 2:
        yield from map(work, pieces)
        return
    with ThreadPoolExecutor(threads) as pool:
        yield from pool.map(work, pieces)


def rate_each(setups: Sequence[Setup], *, extension: Array, radius: Array) -> Iterator[Rating]:
    """Rate the same cells in set-ups whose booms bend alike, each as :func:`rate` does.

    What the boom alone bears is looked for once. Counterweights, supports, slew angles and
    stability rules are then judged with the booms bent so, and the search goes on only where one of
    them allows less.

    Parameters
    ----------
    setups : sequence of Setup
        Of one machine, with the same parts of line, disturbances, strength rule and allowances
    extension, radius : array_like
        As for :func:`rate`

    Raises
    ------
    ValueError
        If an extension or a radius is not a number in its range, or booms do not bend alike.
    """
    boom, radii = _places(setups[0], boom=None, extension=extension, radius=radius)
    alone = replace(setups[0], kinds=tuple(k for k in setups[0].kinds if k.boom_alone))
    columns = np.flatnonzero(_in_reach(alone, boom, radii).any(axis=0))
    near, every = radii[:, columns], np.arange(len(radii))[:, None]
    bent = _Search(alone, boom=boom, radius=near, remembers=True)
    if len(columns):
        bent.run()
    with np.errstate(all="ignore"):
        none = respond(alone, boom=boom, load=np.zeros_like(near), radius=near)
        most = respond(alone, boom=boom, load=bent.borne, radius=near, start=bent.start)
    for setup in setups:
        whole = _blank(setup, boom=boom, radius=radii)
        if len(columns) and not too_long(setup, length=boom.layout.boom_length).all():
            found = _Search(setup, boom=boom, radius=near).run(known=(none, most))
            _fill(whole, found, (every, columns))
        yield whole


def _places(
    setup: Setup, *, boom: Condensed | None, extension: Array, radius: Array
) -> tuple[Condensed, Array]:
    """Configurations, and a radius for each of their cells."""
    fractions = np.atleast_2d(np.asarray(extension, dtype=float))
    radii = np.asarray(radius, dtype=float)
    if not np.all(radii > 0.0):
        raise ValueError(
            "A radius must be above 0 m, from the axis of rotation, and one of these is "
            f"{radii[~(radii > 0.0)].flat[0]:g} m."
        )
    radii = np.array(np.broadcast_to(radii, (len(fractions), radii.shape[-1])))
    return boom or condense(setup.machine, extension=fractions), radii


def _batches(setup: Setup, *, boom: Condensed, radius: Array) -> Iterator[Block]:
    """Configurations to solve together, and the cells that one of them can reach."""
    # Neighbours in length reach the same radii, so that a batch holds few cells out of reach.
    lengths = boom.layout.boom_length
    order = np.argsort(lengths, kind="stable")
    if len(order) <= ALIKE:
        order = np.arange(len(order))
    order = order[~too_long(setup, length=lengths)[order]]
    reached = _in_reach(setup, boom, radius)
    for start in range(0, len(order), ALIKE):
        rows = order[start : start + ALIKE]
        columns = np.flatnonzero(reached[rows].any(axis=0))
        side = TOGETHER // len(rows)
        for first in range(0, len(columns), side):
            yield rows[:, None], columns[first : first + side]


def _in_reach(setup: Setup, boom: Condensed, radius: Array) -> np.ndarray:
    """False where no boom angle and no deflection could put the head there."""
    machine, length = setup.machine, boom.layout.boom_length[:, None]
    slack = 0.1 * length
    least = machine.heel_out + length * np.cos(machine.boom.greatest_angle) - slack
    return np.asarray((radius <= machine.heel_out + length + slack) & (radius >= least))


def _blank(setup: Setup, *, boom: Condensed, radius: Array) -> Rating:
    limits = limits_of(setup.machine, kinds=setup.kinds)

    def nothing() -> Array:
        return np.full(radius.shape, np.nan)

    return Rating(
        setup=setup,
        boom=boom,
        radius=radius,
        capacity=nothing(),
        governing=np.full(radius.shape, -1),
        limits=limits,
        utilisation=np.full((len(limits), *radius.shape), np.nan),
        angle=nothing(),
        tipping_load=nothing(),
        tip_deflection=nothing(),
        valid=np.zeros(radius.shape, dtype=bool),
    )


def _fill(whole: Rating, found: Rating, cells: Block) -> None:
    """Put a batch where it belongs, before anyone sees the whole."""
    for name in FOUND:
        getattr(whole, name)[cells] = getattr(found, name)
    whole.utilisation[(slice(None), *cells)] = found.utilisation


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class _Trial:
    """One load tried in every cell that is looked at: how much of each limit it uses."""

    load: Array
    utilisation: Array
    start: Start
    """How the boom bends, for another load to start from."""

    @property
    def worst(self) -> Array:
        return np.asarray(np.max(self.utilisation, axis=0))

    def some(self, columns: np.ndarray) -> "_Trial":
        """Of each configuration the cells in its `columns`."""
        return _Trial(
            load=_some(self.load, columns),
            utilisation=_some(self.utilisation, columns[None]),
            start=_rotations(lambda values: _some(values, columns[:, None]), self.start),
        )


class _Search:
    """Parabolas through trials of every limit's utilisation, in a bracket; all cells at once.

    Utilisations grow almost in proportion to the load and a little faster (second order), so the
    limit whose parabola reaches one first is nearly always the one that governs. A cell is closed
    when its load is found. Each configuration moves its open cells together, into as many
    columns as the one with the most of them needs; the closed ones that fill the others up are not
    looked at.
    """

    def __init__(
        self, setup: Setup, *, boom: Condensed, radius: Array, remembers: bool = False
    ) -> None:
        self.setup, self.boom = setup, boom
        self.found = _blank(setup, boom=boom, radius=radius)
        self.borne = np.zeros_like(radius)
        """Largest load found with which no limit is passed, at whatever boom angle [kg]."""
        self.start = _room(boom, radius) if remembers else None
        """How the booms bend under those."""
        self.columns = np.broadcast_to(np.arange(radius.shape[1]), radius.shape)
        self.open: np.ndarray = np.ones(radius.shape, dtype=bool)
        self.radius = radius
        self.low, self.high = np.zeros_like(radius), self._most()

    def run(self, *, known: tuple[Response, Response] | None = None) -> Rating:
        """Find every cell's load; `known` are booms bent alike: without load, and at `borne`."""
        longer = too_long(self.setup, length=self.boom.layout.boom_length)
        closed = ~_in_reach(self.setup, self.boom, self.radius) | longer[:, None]
        with np.errstate(all="ignore"):
            if known:
                return self._judge_again(closed, *known)
            self._close(closed)
            before, response = self._try(np.zeros_like(self.radius), start=None)
            self._remember(before)
            loadable = self._loadable(before, response)
            load = FIRST * np.minimum(response.balance.least, self.high)
            before, load = self._close(~loadable, before, load)
            if not self.open.any():
                return self.found
            load = np.where(self.open, load, 0.0)
            # A load bends the boom by far more than its weight does: start from the first order.
            start = replace(_rotations(np.nan_to_num, before.start), rotation=None)
            now, response = self._try(load, start=start)
            return self._approach(before, now, response)

    def _judge_again(self, closed: np.ndarray, none: Response, most: Response) -> Rating:
        """Search on from what the boom alone bears, and anew where nobody knows what that is."""
        radius = self.radius
        self.open = self.open & ~closed
        without = judge_again(none, setup=self.setup)
        before = _tried(without)
        self.open = self.open & self._loadable(before, without)
        # At the edge of the boom's reach a state is not always found again.
        unknown = self.open & ~most.state.converged
        self.open = self.open & ~unknown
        response = judge_again(most, setup=self.setup)
        # No cell lifts more than its boom bears: shut the bracket where nothing allows less.
        self.high = np.minimum(self.high, most.state.load)
        found = self._approach(before, _tried(response), response)
        if unknown.any():
            rows = np.flatnonzero(unknown.any(axis=1))
            anew = _Search(self.setup, boom=pick(self.boom, rows), radius=radius[rows])
            anew.open = unknown[rows]
            rest = anew.run()
            for name in (*FOUND, "utilisation"):
                whole, some = getattr(found, name), getattr(rest, name)
                whole[..., rows, :] = np.where(unknown[rows], some, whole[..., rows, :])
        return found

    def _loadable(self, before: "_Trial", response: Response) -> np.ndarray:
        """Cells that bear themselves; the others are written down."""
        # NaN utilisation: incomplete machine data; do not rate.
        reachable = response.state.converged & ~np.isnan(before.worst)
        loadable = reachable & (before.worst < 1.0)
        self._note(response, np.where(reachable & ~loadable, 0.0, np.nan))
        return np.asarray(loadable)

    def _approach(self, before: "_Trial", now: "_Trial", response: Response) -> Rating:
        """On from two trials, later from three, until every open cell's load is found."""
        earlier = before
        for _ in range(MOST_TRIES):
            self._narrow(now)
            self._remember(now)
            met = np.abs(now.worst - 1.0) < CLOSE
            # Where no load meets a limit, the boom droops out of the radius first.
            self._note(response, np.where(met, now.load, np.nan))
            met |= self.high - self.low < CLOSE * self.high
            if np.all(met | ~self.open):
                break
            load = np.where(self.open & ~met, self._next(earlier, before, now), now.load)
            earlier, before, now, load = self._close(met, earlier, before, now, load)
            start = _extrapolate(earlier, before, now, load)
            earlier, before = before, now
            now, response = self._try(load, start=start)
        return self.found

    def _close(self, closed: np.ndarray, *kept: Any) -> list[Any]:
        """Leave out closed cells; what is kept of the others."""
        self.open = self.open & ~closed
        most = int(np.max(np.sum(self.open, axis=1), initial=0))
        if most == self.open.shape[1]:
            return list(kept)
        columns = np.argsort(~self.open, axis=1, kind="stable")[:, :most]
        for name in ("columns", "open", "radius", "low", "high"):
            setattr(self, name, _some(getattr(self, name), columns))
        return [
            one.some(columns) if isinstance(one, _Trial) else _some(one, columns) for one in kept
        ]

    def _try(self, load: Array, *, start: Start | None) -> tuple[_Trial, Response]:
        at = respond(self.setup, boom=self.boom, load=load, radius=self.radius, start=start)
        return _tried(at), at

    def _most(self) -> Array:
        """Load a little past the one at which the line pull is used up: no rated load is beyond.

        A secant that points to the line pull itself must lie inside, or halves creep up to it.
        """
        held = BEYOND * line_capacity(self.setup, length=self.boom.layout.boom_length)
        return np.broadcast_to(held[:, None], self.radius.shape).copy()

    def _narrow(self, trial: _Trial) -> None:
        safe = trial.worst <= 1.0
        self.low = np.where(safe, np.maximum(self.low, trial.load), self.low)
        self.high = np.where(safe, self.high, np.minimum(self.high, trial.load))

    def _next(self, earlier: _Trial, before: _Trial, now: _Trial) -> Array:
        """Load at which the first limit is met, by a parabola through three trials."""
        slope = (now.utilisation - before.utilisation) / (now.load - before.load)
        reach = (1.0 - now.utilisation) / slope
        bend = _bend(earlier, before, now, slope=slope)
        slope = slope + bend * (now.load + reach - before.load)
        reach = now.load + (1.0 - now.utilisation) / slope
        wanted = np.min(np.where(slope > 0.0, reach, np.inf), axis=0)
        inside = (wanted > self.low) & (wanted < self.high)
        return np.where(inside, wanted, (self.low + self.high) / 2)

    def _remember(self, trial: _Trial) -> None:
        """Keep the largest loads that are borne, and how the booms bend under them."""
        if self.start is None:
            return
        borne = np.take_along_axis(self.borne, self.columns, axis=1)
        more = self.open & (trial.worst <= 1.0 + CLOSE) & (trial.load >= borne)
        row, column = np.nonzero(more)
        cells = (row, self.columns[row, column])
        self.borne[cells] = trial.load[row, column]
        for each in fields(Start):
            kept, last = getattr(self.start, each.name), getattr(trial.start, each.name)
            if last is not None:
                kept[cells[0], :, cells[1]] = last[row, :, column]

    def _note(self, response: Response, capacity: Array) -> None:
        """Write down what is known of the open cells by now; the last word counts."""
        row, column = np.nonzero(self.open)
        cells = (row, self.columns[row, column])
        capacity = capacity[row, column]

        def shown(values: Array) -> Array:
            return np.where(blank, np.nan, values[..., row, column])

        blank = np.isnan(capacity) | (~response.in_range & response.state.converged)[row, column]
        utilisation, found = response.utilisation[:, row, column], self.found
        found.capacity[cells] = np.where(blank, np.nan, capacity)
        found.utilisation[:, cells[0], cells[1]] = shown(response.utilisation)
        found.governing[cells] = np.where(
            blank, -1, np.argmax(np.where(np.isnan(utilisation), -np.inf, utilisation), axis=0)
        )
        found.angle[cells] = shown(response.state.angle)
        found.tipping_load[cells] = shown(response.balance.least)
        found.tip_deflection[cells] = shown(response.tip_deflection)
        found.valid[cells] = response.is_valid[row, column] & ~blank


def _room(boom: Condensed, radius: Array) -> Start:
    """Room for rotations, which are zero where nothing is borne."""
    shape = (len(radius), boom.stations.beyond.shape[1], radius.shape[1])
    return Start(**{each.name: np.zeros(shape) for each in fields(Start)})


def _tried(at: Response) -> _Trial:
    bent = Start(rotation=at.state.rotation)
    if at.strained is not at.state:
        further = at.strained.rotation - at.state.rotation
        bent = replace(bent, further=further, aside=at.strained.rotation_side)
    return _Trial(load=at.state.load, utilisation=at.utilisation, start=bent)


def _some(values: Array, columns: np.ndarray) -> Array:
    return np.take_along_axis(values, columns, axis=-1)


def _rotations(change: Callable[..., Array], *starts: Start) -> Start:
    """Rotations made of those of other loads; what one of them does not know stays unknown."""

    def made(name: str) -> Array | None:
        known = [getattr(start, name) for start in starts]
        return None if known[0] is None else change(*known)

    return Start(**{each.name: made(each.name) for each in fields(Start)})


def _bend(earlier: _Trial, before: _Trial, now: _Trial, *, slope: Array) -> Array:
    """Second divided difference of the utilisations; nought where three trials give none."""
    first = (before.utilisation - earlier.utilisation) / (before.load - earlier.load)
    bend = (slope - first) / (now.load - earlier.load)
    return np.where(np.isfinite(bend), bend, 0.0)


def _extrapolate(earlier: _Trial, before: _Trial, now: _Trial, load: Array) -> Start:
    """Rotations to start from: a parabola over the load, or straight where one trial failed."""
    share = (load - now.load) / (now.load - before.load)
    share = np.where(np.isfinite(share), share, 0.0)
    bend = share * (load - before.load) / (now.load - earlier.load)
    ratio = (now.load - before.load) / (before.load - earlier.load)
    good = np.isfinite(bend * ratio)
    bend, ratio = np.where(good, bend, 0.0)[:, None], np.where(good, ratio, 0.0)[:, None]
    share = share[:, None]

    def ahead(last: Array, middle: Array, first: Array) -> Array:
        step = last - middle
        guess = last + share * step + bend * (step - ratio * (middle - first))
        return np.where(np.isfinite(guess), guess, 0.0)

    return _rotations(ahead, now.start, before.start, earlier.start)
