"""Raise the load, without margins, until something happens: the load at which it does.

A rated load keeps margins. Here they are taken out: yield stresses, crushing resistances, lock
strengths and the elastic critical load stand for themselves, and the crane tips when its balance
is gone. What a maker permits (pads, luffing cylinder, rope, slewing ring) stays as it is given:
passing it is told as passed and not as a failure. Ring, cylinder and rope give way at a multiple
of what is permitted, which is assumed.

Derived in docs/theory.md, section 10.
"""

from collections.abc import Callable
from dataclasses import replace

import numpy as np

from boomsim.gravity import GRAVITY
from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.rope_tackle import tackle_advantage
from boomsim.rating.lift_response import Response, respond
from boomsim.rating.limits.boom_buckling import BOOM_BUCKLING
from boomsim.rating.limits.limit_kind import Limit
from boomsim.rating.limits.ultimate_values import with_ultimates
from boomsim.rating.rules import Rule, StabilityRule, StrengthRule
from boomsim.rating.setup import Setup
from boomsim.rating.sinking_on_oil import Trapped

FLOAT = "float"
"""Kind of event beside those that limits bring: a float lifts."""

NO_MARGIN = Rule(
    name="no margin",
    stability=StabilityRule(
        kind="share",
        share_outriggers=1.0,
        share_tyres=1.0,
        backward_share=0.0,
        source="the balance of moments itself",
    ),
    strength=StrengthRule(
        resistance=1.0,
        buckling=1.0,
        source="yield stress, crushing resistance and elastic critical load themselves",
    ),
)
"""No rule for rating: what would really happen in this model."""

MOST_OF_LINE = 25.0
"""Loads are tried up to this many times what the permissible line pull lifts [1]."""

CLOSE = 1e-7
"""How near to one a utilisation must come; the load is then good to some 1e-7 of itself."""

NEARLY = 0.999
"""What jumps from below this to beyond one was not used up: something else gave way [1]."""

MOST_TRIES = 60


def no_margin(setup: Setup) -> Setup:
    """Take every margin out of a setup.

    Returns
    -------
    Setup
        With :data:`NO_MARGIN` for its rule, and with the ultimate values at the end of its kinds
    """
    return replace(setup, rule=NO_MARGIN, kinds=with_ultimates(setup.kinds))


def rows_of(limits: tuple[Limit, ...], kind: str) -> np.ndarray:
    """Which limits are of one kind.

    Parameters
    ----------
    kind : str
        `GIVES_WAY`, `PERMISSIBLE` or `TIPS` of :mod:`boomsim.rating.limits.limit_kind`

    Returns
    -------
    ndarray of bool, shape (limits,)
    """
    return np.array([limit.kind.passed == kind for limit in limits])


def most_used(utilisation: Array, *, limits: tuple[Limit, ...], rows: np.ndarray) -> np.ndarray:
    """Which of some limits is used most; without equilibrium that is the buckling of the boom.

    Parameters
    ----------
    utilisation : ndarray, shape (limits, *cells)
        [1]
    rows : ndarray of bool, shape (limits,)
        The limits to choose from

    Returns
    -------
    ndarray of int, shape (*cells,)
        Index into `limits`
    """
    shape = (len(limits), *[1] * (utilisation.ndim - 1))
    buckles = np.array([limit.kind is BOOM_BUCKLING for limit in limits]).reshape(shape)
    known = np.where(np.isnan(utilisation), np.where(buckles, np.inf, -np.inf), utilisation)
    return np.asarray(np.argmax(np.where(rows.reshape(shape), known, -np.inf), axis=0))


def largest_load(setup: Setup) -> float:
    """Load beyond which nothing is looked for [kg]."""
    hoist = setup.machine.hoist
    advantage = tackle_advantage(setup.parts, sheave_efficiency=hoist.sheave_efficiency)
    return MOST_OF_LINE * hoist.line_pull * advantage / GRAVITY


class Held:
    """What is kept while a load is raised: the loaded radius, or the luffing cylinder's oil.

    Nobody luffs while a load grows. The oil was trapped when the rated load hung at the rated
    angle; under more load the boom sinks on it, and under less it stands higher.

    Parameters
    ----------
    rated : ndarray, shape (configurations, cells)
        Rated loads [kg]
    held : ndarray, shape (configurations, cells)
        Boom angles with the rated loads on [rad], or loaded radii [m]
    hold : str
        "angle" or "radius"
    """

    def __init__(
        self, setup: Setup, *, boom: Condensed, rated: Array, held: Array, hold: str
    ) -> None:
        self.setup, self.boom, self.held = setup, boom, held
        oil = Trapped(setup, boom=boom, load=rated, angle=held) if hold == "angle" else None
        self.oil = oil

    def hung(self, load: Array) -> Response:
        """Hang loads.

        Parameters
        ----------
        load : ndarray, shape (configurations, cells)
            Gross load [kg]
        """
        if self.oil is None:
            return respond(self.setup, boom=self.boom, load=load, radius=self.held)
        return respond(self.setup, boom=self.boom, load=load, angle=self.oil.under(load))


def load_at_one(
    utilisation_of: Callable[[Array], Array],
    *,
    low: Array,
    high: Array,
    first: Array,
    collapse: np.ndarray | bool = True,
) -> Array:
    """Load at which the largest of some utilisations is one; every cell at once.

    Secants of every utilisation over the load, kept in a bracket that closes by halves where they
    fail.

    Parameters
    ----------
    utilisation_of : callable
        Of shape (rows, *cells) for loads of shape (*cells,); NaN counts as beyond one [1]
    low, high, first : ndarray, shape (*cells,)
        Bracket, and the load to try first [kg]
    collapse : bool or ndarray of bool
        Whether the load at which equilibrium is lost is an answer too

    Returns
    -------
    ndarray, shape (*cells,)
        `low` where it is used up there already, infinite where it never is [kg]
    """
    low, end = np.array(low, dtype=float), np.array(high, dtype=float)
    high, tried = end.copy(), np.zeros(end.shape, dtype=bool)
    last_load, last = low.copy(), _known(utilisation_of(low))
    safe = last.max(axis=0)
    found = np.where(safe >= 1.0, low, np.nan)
    load = np.clip(first, low, high)
    with np.errstate(all="ignore"):
        for _ in range(MOST_TRIES):
            used = _known(utilisation_of(load))
            worst = used.max(axis=0)
            safe = np.where((worst < 1.0) & (load >= low), worst, safe)
            low = np.where(worst < 1.0, np.maximum(low, load), low)
            high = np.where(worst < 1.0, high, np.minimum(high, load))
            tried |= load >= end
            met, shut = np.abs(worst - 1.0) < CLOSE, high - low < CLOSE * high
            # A bracket that shuts on a utilisation well below one has found where equilibrium is
            # lost, or the end of the loads that are tried.
            lost = shut & ~met & (safe < NEARLY) & (~np.asarray(collapse) | (low >= end))
            found = np.where(np.isnan(found) & (met | shut), np.where(lost, np.inf, load), found)
            if not np.any(np.isnan(found)):
                break
            wanted = _crossing(last_load, last, load, used)
            good = np.isfinite(worst)
            last_load, last = np.where(good, load, last_load), np.where(good, used, last)
            inside = (wanted > low) & (wanted < high)
            # Loads without end are slow to try, so the end comes only where a secant points to it.
            wanted = np.where(inside, wanted, (low + high) / 2)
            wanted = np.where(~inside & ~tried & (high >= end), end, wanted)
            # A cell that is settled stays where it is: its load must go on being a sensible one.
            load = np.where(np.isnan(found), wanted, load)
    return np.where(np.isnan(found), (low + high) / 2, found)


def _known(used: Array) -> Array:
    return np.where(np.isnan(used), np.inf, used)


def _crossing(load0: Array, used0: Array, load1: Array, used1: Array) -> Array:
    """Least load at which a straight line through two trials of a utilisation comes to one."""
    slope = (used1 - used0) / (load1 - load0)
    reach = load1 + (1.0 - used1) / slope
    return np.asarray(np.min(np.where(np.isfinite(reach) & (slope > 0.0), reach, np.inf), axis=0))
