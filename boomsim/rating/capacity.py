"""Rated capacity: the largest gross load at which no limit is used beyond one."""

from dataclasses import dataclass
from typing import Any

import numpy as np

from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.boom.picked_configurations import pick
from boomsim.mechanics.external_loads import GRAVITY, tackle_advantage
from boomsim.mechanics.geometry import Array
from boomsim.rating.lift_response import Response, Start, respond
from boomsim.rating.limits.limit_kind import STABILITY, Limit
from boomsim.rating.limits.limit_table import limits_of
from boomsim.rating.longest_boom import too_long
from boomsim.rating.setup import Setup

CLOSE = 1e-6
"""How near to one the largest use must come; the capacity is then good to some 1e-6 of itself."""

MOST_TRIES = 40

FIRST = 0.4
"""Of the tipping load, what is tried first: more is slow where the boom is near buckling [1]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Rating:
    """Rated cells. Shapes (configurations, cells) unless given.

    Attributes
    ----------
    setup : Setup
    boom : Condensed
    radius : ndarray
        [m]
    capacity : ndarray
        Gross; NaN out of reach and for a boom too long for the tyres, 0 where a limit is passed
        without any load [kg]
    governing : ndarray of int
        Index into `limits`; -1 where blank
    limits : tuple of Limit
    use : ndarray, shape (limits, configurations, cells)
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
    use: Array
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
    batch: int = 32,
    boom: Condensed | None = None,
) -> Rating:
    """Rate every configuration at every radius.

    Parameters
    ----------
    setup : Setup
    extension : array_like, shape (configurations, moving sections)
        Fractions of the strokes [1]
    radius : array_like, shape (cells,) or (configurations, cells)
        Loaded radius, kept as the load grows [m]
    batch : int
        Configurations solved together; so many fit a processor's cache
    boom : Condensed, optional
        The same configurations, where they are condensed already

    Returns
    -------
    Rating

    Raises
    ------
    ValueError
        If an extension or a radius is not a number in its range.
    """
    fractions = np.atleast_2d(np.asarray(extension, dtype=float))
    radii = np.asarray(radius, dtype=float)
    if not np.all(radii > 0.0):
        raise ValueError(
            f"A radius of {radii[~(radii > 0.0)].flat[0]:g} m is not one. Give radii above 0 m."
        )
    radii = np.array(np.broadcast_to(radii, (len(fractions), radii.shape[-1])))
    if boom is None:
        boom = condense(setup.machine, extension=fractions)
    whole = _blank(setup, boom=boom, radius=radii)
    # Neighbours in length reach the same radii, so that a batch holds few cells out of reach.
    lengths = whole.boom.layout.boom_length
    order = np.argsort(lengths, kind="stable")
    if len(order) <= batch:
        order = np.arange(len(order))
    order = order[~too_long(setup, length=lengths)[order]]
    for start in range(0, len(order), batch):
        rows = order[start : start + batch]
        columns = np.flatnonzero(_in_reach(setup, whole.boom, radii)[rows].any(axis=0))
        if len(columns):
            some = boom if len(rows) == len(fractions) else pick(boom, rows)
            found = _Search(setup, boom=some, radius=radii[np.ix_(rows, columns)]).run()
            _fill(whole, found, np.ix_(rows, columns))
    return whole


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
        use=np.full((len(limits), *radius.shape), np.nan),
        angle=nothing(),
        tipping_load=nothing(),
        tip_deflection=nothing(),
        valid=np.zeros(radius.shape, dtype=bool),
    )


def _fill(whole: Rating, found: Rating, cells: Any) -> None:
    """Put a batch where it belongs, before anyone sees the whole."""
    for name in ("capacity", "governing", "angle", "tipping_load", "tip_deflection", "valid"):
        getattr(whole, name)[cells] = getattr(found, name)
    whole.use[(slice(None), *cells)] = found.use


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class _Trial:
    """One load tried in every cell, and what came of it."""

    load: Array
    response: Response

    @property
    def worst(self) -> Array:
        return np.asarray(np.max(self.response.use, axis=0))


class _Search:
    """Secants of every limit's use over the load, kept in a bracket; all cells at once.

    Uses grow almost in proportion to the load and a little faster (second order), so the limit
    whose secant reaches one first is nearly always the one that governs.
    """

    def __init__(self, setup: Setup, *, boom: Condensed, radius: Array) -> None:
        self.setup, self.boom, self.radius = setup, boom, radius

    def run(self) -> Rating:
        with np.errstate(all="ignore"):
            before = self._try(np.zeros_like(self.radius), start=None)
            # A use that is no number says that the machine is not all known: no capacity from that.
            reachable = before.response.state.converged & ~np.isnan(before.worst)
            loadable = reachable & (before.worst < 1.0)
            self.low, self.high = np.zeros_like(self.radius), self._most()
            first = FIRST * np.minimum(before.response.balance.least, self.high)
            now = self._try(np.where(loadable, first, 0.0), start=_as_before(before))
            for _ in range(MOST_TRIES):
                self._narrow(now)
                met = np.abs(now.worst - 1.0) < CLOSE
                done = ~loadable | met | (self.high - self.low < CLOSE * self.high)
                if np.all(done):
                    break
                load = np.where(done, now.load, self._next(before, now))
                start = _extrapolate(before, now, load)
                before, now = now, self._try(load, start=start)
            # Where no load met a limit, the boom drooped out of the radius first: out of reach.
            capacity = np.where(met, now.load, np.where(loadable, np.nan, 0.0))
        return self._rating(now.response, np.where(reachable, capacity, np.nan))

    def _try(self, load: Array, *, start: Start | None) -> _Trial:
        response = respond(self.setup, boom=self.boom, load=load, radius=self.radius, start=start)
        return _Trial(load=load, response=response)

    def _most(self) -> Array:
        """Load at which the line pull is used up: no rated load is beyond it."""
        hoist = self.setup.machine.hoist
        advantage = tackle_advantage(self.setup.parts, sheave_efficiency=hoist.sheave_efficiency)
        return np.full_like(self.radius, hoist.line_pull * advantage / GRAVITY)

    def _narrow(self, trial: _Trial) -> None:
        safe = trial.worst <= 1.0
        self.low = np.where(safe, np.maximum(self.low, trial.load), self.low)
        self.high = np.where(safe, self.high, np.minimum(self.high, trial.load))

    def _next(self, before: _Trial, now: _Trial) -> Array:
        slope = (now.response.use - before.response.use) / (now.load - before.load)
        reach = now.load + (1.0 - now.response.use) / slope
        wanted = np.min(np.where(slope > 0.0, reach, np.inf), axis=0)
        inside = (wanted > self.low) & (wanted < self.high)
        return np.where(inside, wanted, (self.low + self.high) / 2)

    def _rating(self, response: Response, capacity: Array) -> Rating:
        blank = np.isnan(capacity) | ~response.in_range & response.state.converged
        used = np.where(np.isnan(response.use), -np.inf, response.use)
        governing = np.argmax(used, axis=0)

        def shown(values: Array) -> Array:
            return np.where(blank, np.nan, values)

        return Rating(
            setup=self.setup,
            boom=self.boom,
            radius=self.radius,
            capacity=shown(capacity),
            governing=np.where(blank, -1, governing),
            limits=response.limits,
            use=shown(response.use),
            angle=shown(response.state.angle),
            tipping_load=shown(response.balance.least),
            tip_deflection=shown(response.tip_deflection),
            valid=response.is_valid & ~blank,
        )


def _as_before(trial: _Trial) -> Start:
    """Rotations of another load, straight where there are none."""
    state, strained = trial.response.state, trial.response.strained
    return Start(
        rotation=np.nan_to_num(state.rotation),
        strained=np.nan_to_num(strained.rotation),
        strained_side=np.nan_to_num(strained.rotation_side),
    )


def _extrapolate(before: _Trial, now: _Trial, load: Array) -> Start:
    """Rotations to start from: in proportion to the load, or straight where one trial failed."""
    share = (load - now.load) / (now.load - before.load)
    share = np.where(np.isfinite(share), share, 0.0)[:, None]

    def ahead(last: Array, first: Array) -> Array:
        guess = last + share * (last - first)
        return np.where(np.isfinite(guess), guess, 0.0)

    last, first = now.response, before.response
    rotation = ahead(last.state.rotation, first.state.rotation)
    if last.strained is last.state:
        return Start(rotation=rotation, strained=rotation)
    return Start(
        rotation=rotation,
        strained=ahead(last.strained.rotation, first.strained.rotation),
        strained_side=ahead(last.strained.rotation_side, first.strained.rotation_side),
    )
