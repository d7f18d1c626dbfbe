"""What happens to one lift as its load is raised, each event with its own load."""

from dataclasses import dataclass

import numpy as np

from boomsim.machine.part_names import foot_name, support_names
from boomsim.mechanics.geometry import Array
from boomsim.rating.around.float_loads import FloatLoads, float_loads, lift_utilisation
from boomsim.rating.capacity import Rating
from boomsim.rating.lift_response import Response
from boomsim.rating.limits.boom_buckling import BOOM_BUCKLING
from boomsim.rating.limits.limit_kind import TIPS, Kind, Limit
from boomsim.rating.limits.limit_sentences import WHEN_PASSED
from boomsim.rating.limits.limit_table import limits_of
from boomsim.rating.load_search import (
    FLOAT,
    Held,
    load_at_one,
    most_used,
    no_margin,
)
from boomsim.rating.overload.tip_over import worst_direction
from boomsim.rating.setup import Setup


@dataclass(frozen=True, slots=True, kw_only=True)
class Event:
    """Something that happens as the load grows.

    Attributes
    ----------
    kind : str
        "gives way", "permissible", "tips" or "float"
    name : str
        Stable key, such as "stress"
    words : str
        How it reads in a sentence
    load : float
        Gross load at which it happens; 0 where it is so without a load [kg]
    multiple : float
        Of the rated load [1]
    limit : Limit or None
        None for a float
    slew : float or None
        For tipping and for a float [rad]
    place : tuple of float or None
        For a float: (x, y) in carrier axes [m]
    """

    kind: str
    name: str
    words: str
    load: float
    multiple: float
    limit: Limit | None = None
    slew: float | None = None
    place: tuple[float, float] | None = None


class Raised:
    """A rated cell without its margins, and loads hung on it."""

    def __init__(self, setup: Setup, rating: Rating, hold: str) -> None:
        self.real, self.boom = no_margin(setup), rating.boom
        self.rated = float(rating.capacity[0, 0])
        self.held = rating.angle if hold == "angle" else rating.radius
        self.kept = Held(
            self.real, boom=self.boom, rated=rating.capacity, held=self.held, hold=hold
        )
        self.limits = limits_of(self.real.machine, kinds=self.real.kinds)

    def direction(self, load: float) -> tuple[int, int]:
        """Slew angle and tipping line, by number, at which the crane is nearest to tipping.

        Of the load that hangs: a boom that bends farther out may bring another line to the fore.
        """
        return worst_direction(self.hung(np.array([[load]])))

    def hung(self, load: Array) -> Response:
        """Hang loads, one in each cell, shape (1, cells) [kg]."""
        return self.kept.hung(load)

    def _meet(self, masks: np.ndarray, *, low: Array, high: Array, first: Array) -> Array:
        """Load at which the limits of each mask are first used up, shape (masks,) [kg]."""
        chosen = masks.T[:, None, :]
        buckles = np.array([limit.kind is BOOM_BUCKLING for limit in self.limits])

        def utilisation_of(load: Array) -> Array:
            return np.where(chosen, self.hung(load).utilisation, -np.inf)

        found = load_at_one(
            utilisation_of,
            low=low,
            high=high,
            first=first,
            collapse=(masks & buckles).any(axis=1)[None],
        )
        return np.asarray(found[0])

    def events(self, at: Response, floats: FloatLoads) -> tuple[Event, ...]:
        """Everything that happens on a grid of loads, each refined to its own load."""
        load, kinds = at.state.load[0], [kind for kind in self.real.kinds if kind.passed]
        masks = np.array([[limit.kind is kind for limit in self.limits] for kind in kinds])
        utilisation = np.where(np.isnan(at.utilisation[:, 0]), np.inf, at.utilisation[:, 0])
        over = np.array([(utilisation[mask] >= 1.0).any(axis=0) for mask in masks])
        seen = np.flatnonzero(over.any(axis=1))
        where = np.argmax(over[seen], axis=1)
        low, high = load[np.maximum(where - 1, 0)][None], load[where][None]
        met = self._meet(masks[seen], low=low, high=high, first=(low + high) / 2)
        real = np.flatnonzero(np.isfinite(met))
        utilisations = self.hung(met[real][None]).utilisation[:, 0]
        found = [
            self._event(kinds[seen[k]], float(met[k]), utilisations[:, n], masks[seen[k]])
            for n, k in enumerate(real)
        ]
        lifted = self._float(load, floats)
        return tuple(sorted([*found, *lifted], key=lambda event: event.load))

    def _event(self, kind: Kind, load: float, utilisation: Array, mask: np.ndarray) -> Event:
        limit = self.limits[int(most_used(utilisation, limits=self.limits, rows=mask))]
        tips = kind.passed == TIPS
        return Event(
            kind=kind.passed or "",
            name=kind.name,
            words=WHEN_PASSED[TIPS] if tips else limit.words,
            load=load,
            multiple=load / self.rated,
            limit=limit,
            slew=float(self.real.slew[self.direction(load)[0]]) if tips else None,
        )

    def _float(self, load: Array, floats: FloatLoads) -> list[Event]:
        """First float to lift anywhere in the sector; one that is up without a load comes too."""
        used = lift_utilisation(floats)[:, 0]
        found = []
        if used[:, 0].max() >= 1.0:
            found.append(self._lifted(0.0, float(floats.slew[int(np.argmax(used[:, 0]))])))
        starts = (used[:, :-1] < 1.0) & (used[:, 1:] >= 1.0)
        if starts.any():
            first = int(np.argmax(starts.any(axis=0)))
            slew = floats.slew[starts[:, first]]
            found.append(self._lifted(*self._lift_off(slew, load[first], load[first + 1])))
        return found

    def _lift_off(self, slew: Array, low: float, high: float) -> tuple[float, float]:
        """Least load between two at which a float lifts at any of some slew angles, and where."""

        def utilisation_of(hung: Array) -> Array:
            loads = float_loads(self.hung(hung), slew=slew)
            return np.diagonal(lift_utilisation(loads)[:, 0], axis1=0, axis2=1)[None, None]

        shape = (1, len(slew))
        met = load_at_one(
            utilisation_of,
            low=np.full(shape, low),
            high=np.full(shape, high),
            first=np.full(shape, (low + high) / 2),
        )[0]
        best = int(np.argmin(met))
        return float(met[best]), float(slew[best])

    def _lifted(self, load: float, slew: float) -> Event:
        there = float_loads(self.hung(np.array([[load]])), slew=np.array([slew]))
        which = int(np.argmin(there.bonded[:, 0, 0, 0]))
        support = self.real.support
        what = f"the {support_names(support)[which]} {foot_name(support)}"
        return Event(
            kind=FLOAT,
            name="float",
            words=f"{what} lifts" if load > 0.0 else f"{what} is off the ground",
            load=load,
            multiple=load / self.rated,
            slew=slew,
            place=self.real.support.points[which],
        )
