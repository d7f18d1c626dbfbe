"""At which radii, with which way out and on which supports a crane lifts its own slabs."""

from dataclasses import dataclass

import numpy as np

from boomsim.machine.model import Support
from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.geometry import Array
from boomsim.rating.charts.chart_configurations import one_way_for_each_length
from boomsim.rating.charts.rows_and_rounding import reach, row_step
from boomsim.rating.lift_response import respond
from boomsim.rating.limits.limit_kind import Limit
from boomsim.rating.limits.limit_table import limits_of
from boomsim.rating.longest_boom import too_long
from boomsim.rating.parts_reeved import falls_at_radius
from boomsim.rating.setup import Setup
from boomsim.rating.slabs.slab_stages import Stage, at_stage, stages
from boomsim.rating.strategies import Configurations

TENTH, FINER = 0.1, 5
"""Radii are tried a tenth of a chart's rows apart, and a greatest one is therefore never told too
large; coarse ones first, five times as far apart."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Bands:
    """From where to where one slab is rated, on one sort of supports. Shapes (ways,).

    Attributes
    ----------
    stage : Stage
    support : Support
    setup : Setup
        While this slab is picked
    near, far : ndarray
        Radii between which it is rated; NaN where at none [m]
    tips : ndarray
        Radius from which on the crane would turn over with it, without any margin; NaN where it
        never does [m]
    beyond : tuple of Limit or None
        What is used up just beyond `far`; None where nothing is rated, or the boom reaches no
        farther
    best : int or None
        Way with the greatest radius, the shortest of several; None where no way has any
    """

    stage: Stage
    support: Support
    setup: Setup
    near: Array
    far: Array
    tips: Array
    beyond: tuple[Limit | None, ...]
    best: int | None


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Slabs:
    """All slabs on all supports.

    Attributes
    ----------
    setup : Setup
    ways : Configurations
    stages : tuple of Stage
    bands : tuple of Bands
        By stage, then by support
    deck : float or None
        Radius at which the slabs are set down on the carrier [m]
    deck_slew : float or None
        Slew angle at which they are [rad]
    step : float
        Between radii that are tried [m]
    """

    setup: Setup
    ways: Configurations
    stages: tuple[Stage, ...]
    bands: tuple[Bands, ...]
    deck: float | None
    deck_slew: float | None
    step: float

    def bands_of(self, stage: Stage) -> list[Bands]:
        """Of one slab, by support."""
        return [bands for bands in self.bands if bands.stage is stage]

    def reaches_deck(self, bands: Bands) -> np.ndarray:
        """Ways that can set a slab down on deck, shape (ways,)."""
        if self.deck is None:
            return np.zeros(len(self.ways.length), dtype=bool)
        slack = self.step * (1.0 + 1e-9)
        return np.asarray((bands.near - slack <= self.deck) & (self.deck <= bands.far))


def slabs(
    setup: Setup,
    *,
    ways: Configurations | None = None,
    supports: tuple[Support, ...] | None = None,
) -> Slabs:
    """Find where a crane lifts its own slabs.

    Parameters
    ----------
    setup : Setup
        Its counterweight does not count
    ways : Configurations, optional
        Default: one for each boom length
    supports : tuple of Support, optional
        Default: all of the machine's
    """
    ways = one_way_for_each_length(setup.machine.boom) if ways is None else ways
    supports = setup.machine.supports if supports is None else supports
    listed = stages(setup)
    step = TENTH * row_step(setup.machine, length=ways.length)
    deck = setup.machine.deck
    return Slabs(
        setup=setup,
        ways=ways,
        stages=listed,
        bands=tuple(
            _bands(setup, stage, support, ways, step) for stage in listed for support in supports
        ),
        deck=None if deck is None else float(np.hypot(deck.x, deck.y)),
        deck_slew=None if deck is None else float(np.arctan2(deck.y, deck.x)),
        step=step,
    )


def _bands(
    setup: Setup, stage: Stage, support: Support, ways: Configurations, step: float
) -> Bands:
    own = at_stage(setup, stage, support=support)
    kept = np.flatnonzero(~too_long(own, length=ways.length))
    near, far, tips = (np.full(len(ways.length), np.nan) for _ in range(3))
    beyond: list[Limit | None] = [None] * len(ways.length)
    if len(kept):
        found = _along(own, ways.extension[kept], ways.length[kept], stage.gross, step)
        near[kept], far[kept], tips[kept] = found.near, found.far, found.tips
        for place, limit in zip(kept, found.beyond, strict=True):
            beyond[place] = limit
    best = None if np.all(np.isnan(far)) else int(np.nanargmax(far))
    return Bands(
        stage=stage,
        support=support,
        setup=own,
        near=near,
        far=far,
        tips=tips,
        beyond=tuple(beyond),
        best=best,
    )


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class _Band:
    """From where to where, of some ways; shapes (ways,)."""

    near: Array
    far: Array
    tips: Array
    beyond: list[Limit | None]


def _along(setup: Setup, extension: Array, length: Array, gross: float, step: float) -> _Band:
    """Hang the slab at radii, coarse ones first, then between the two at which something ends."""
    boom = condense(setup.machine, extension=extension)
    least, most = reach(setup.machine, length=length)
    wide = step * FINER
    steps = np.arange(max(1, int(least.min() / wide)), int(most.max() / wide) + 2)
    coarse = np.tile(wide * steps, (len(length), 1))
    rated, tipped, _ = _hung(setup, boom, coarse, gross)
    first, last = _outermost_runs(rated)
    row = np.arange(len(length))
    fine = step * np.arange(1, FINER + 1)
    # The last rated step lies between the last coarse one that is rated and the next.
    beyond_last = coarse[row, last][:, None] + fine
    out, _, most_used = _hung(setup, boom, beyond_last, gross)
    more = np.cumprod(out, axis=1).sum(axis=1)
    before_first = coarse[row, first][:, None] - fine
    inwards = np.cumprod(_hung(setup, boom, before_first, gross)[0], axis=1).sum(axis=1)
    none = last < 0
    ends = np.minimum(more, FINER - 1)
    tips = np.where(tipped.any(axis=1), coarse[row, np.argmax(tipped, axis=1)], np.nan)
    just = np.where(np.isnan(tips), 1.0, tips)[:, None] - fine[::-1]
    over = _hung(setup, boom, just, gross)[1]
    return _Band(
        near=np.where(none, np.nan, coarse[row, first] - step * inwards),
        far=np.where(none, np.nan, coarse[row, last] + step * more),
        # The last radius at which it still stands, so that "from there on" is true.
        tips=tips - step * (1 + over.sum(axis=1)),
        beyond=[
            None if none[k] else _limit(setup, int(most_used[k, ends[k]])) for k in range(len(row))
        ],
    )


def _hung(
    setup: Setup, boom: Condensed, radius: Array, gross: float
) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Where the slab is rated, where it tips the crane, and which limit is most used (-1: none)."""
    with np.errstate(all="ignore"):
        load = gross + falls_at_radius(setup, length=boom.layout.boom_length, radius=radius)
        at = respond(setup, boom=boom, load=load, radius=np.maximum(radius, 1e-3))
        there = at.state.converged & at.in_range & (radius > 0.0)
        utilisation = np.where(np.isnan(at.utilisation), np.inf, at.utilisation)
        rated = there & (utilisation.max(axis=0) <= 1.0)
        tipped = there & (at.balance.least <= load)
    return rated, tipped, np.where(there, np.argmax(utilisation, axis=0), -1)


def _limit(setup: Setup, number: int) -> Limit | None:
    return None if number < 0 else limits_of(setup.machine, kinds=setup.kinds)[number]


def _outermost_runs(carried: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """First and last column of the last unbroken run of each row; -1 without any."""
    numbers = np.arange(carried.shape[1])
    last = np.where(carried, numbers, -1).max(axis=1)
    gap = ~carried & (numbers <= last[:, None])
    first = np.where(gap, numbers, -1).max(axis=1) + 1
    return np.where(last < 0, -1, first), last
