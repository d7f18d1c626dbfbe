"""All around the crane: capacity against slew angle.

The boom and its deflection do not feel the slew angle, so strength allows the same all around; what
stability allows changes with the distance of the tipping lines and of the carrier's masses from
them, and so does what tyres bear. The rated load at a slew angle is the smallest of these.
"""

from dataclasses import dataclass, replace

import numpy as np

from boomsim.mechanics.geometry import Array, layout
from boomsim.mechanics.stability.overturning import Overturning, backward_share
from boomsim.rating.around.float_loads import slews_of
from boomsim.rating.capacity import Rating, rate
from boomsim.rating.lift_response import Response, respond
from boomsim.rating.limits.limit_kind import STABILITY, Limit
from boomsim.rating.limits.tipping import tipping_utilisation
from boomsim.rating.limits.tyres import TYRES, tyre_forces
from boomsim.rating.load_search import largest_load, load_at_one
from boomsim.rating.longest_boom import refuse_too_long
from boomsim.rating.resultant import turned
from boomsim.rating.setup import Setup
from boomsim.rating.setup_variants import with_sector


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Around:
    """Rated load against slew angle, of one configuration. Shapes (slews, radii) unless given.

    Attributes
    ----------
    setup : Setup
    extension : ndarray, shape (moving sections,)
    radius : ndarray, shape (radii,)
        [m]
    slew : ndarray, shape (slews,)
        [rad]
    structure : ndarray, shape (radii,)
        What strength and makers' permissible values allow that are the same all around [kg]
    governing : ndarray of int, shape (radii,)
        Which of these limits that is, index into `limits`
    stability : ndarray
        What stability allows [kg]
    tyres : ndarray
        What the tyres allow; infinite on outriggers [kg]
    line : ndarray of int
        Tipping line that it is about
    limits : tuple of Limit
    """

    setup: Setup
    extension: Array
    radius: Array
    slew: Array
    structure: Array
    governing: np.ndarray
    stability: Array
    tyres: Array
    line: np.ndarray
    limits: tuple[Limit, ...]

    @property
    def held(self) -> Array:
        """What strength and makers' permissible values allow, with those of the tyres [kg]."""
        return np.minimum(self.structure, self.tyres)

    @property
    def capacity(self) -> Array:
        """Rated gross load; NaN out of reach [kg]."""
        return np.minimum(self.held, self.stability)

    def limit(self, slew: int, cell: int) -> Limit | None:
        """Limit of strength or a maker's value that sets a figure; None where stability does."""
        if not self.held[slew, cell] <= self.stability[slew, cell]:
            return None
        if self.tyres[slew, cell] < self.structure[cell]:
            return next(limit for limit in self.limits if limit.kind is TYRES)
        return self.limits[int(self.governing[cell])]

    @property
    def is_stability(self) -> np.ndarray:
        """True where stability sets the figure."""
        return np.asarray(self.stability < self.held)


def around(setup: Setup, *, extension: Array, radius: Array, slew: Array | None = None) -> Around:
    """Rate one configuration at every slew angle.

    Parameters
    ----------
    setup : Setup
    extension : ndarray, shape (moving sections,)
        [1]
    radius : ndarray, shape (radii,)
        [m]
    slew : ndarray, shape (slews,), optional
        Default: every five degrees and the directions that matter [rad]

    Raises
    ------
    ValueError
        From :func:`boomsim.rating.capacity.rate`, or if the boom is too long for the tyres.
    """
    refuse_too_long(setup, length=layout(setup.machine.boom, extension=extension).boom_length)
    everywhere = with_sector(setup, slew="around")
    slew = slews_of(everywhere) if slew is None else np.asarray(slew, dtype=float)
    rating = rate(everywhere, extension=extension, radius=radius)
    radii, reached = rating.radius[0], np.isfinite(rating.capacity[0])
    structure, governing = _structure(everywhere, rating)
    stability, tyres, line = _of_slew(everywhere, rating, slew)
    return Around(
        setup=everywhere,
        extension=rating.boom.layout.extension[0],
        radius=radii,
        slew=slew,
        structure=np.where(reached, structure, np.nan),
        governing=governing,
        stability=np.where(reached, stability, np.nan),
        tyres=np.where(reached, tyres, np.nan),
        line=line,
        limits=rating.limits,
    )


def _structure(setup: Setup, rating: Rating) -> tuple[Array, np.ndarray]:
    mask = np.array([one.set_by != STABILITY and one.kind is not TYRES for one in rating.limits])
    start = np.nan_to_num(rating.capacity)

    def utilisation_of(load: Array) -> Array:
        utilisation = respond(setup, boom=rating.boom, load=load, radius=rating.radius).utilisation
        return np.where(mask[:, None, None], utilisation, -np.inf)

    allowed = load_at_one(
        utilisation_of, low=np.zeros_like(start), high=0 * start + largest_load(setup), first=start
    )
    final = utilisation_of(np.minimum(allowed, largest_load(setup)))
    used = np.where(np.isnan(final), -np.inf, final)
    return allowed[0], np.argmax(used, axis=0)[0]


def _of_slew(setup: Setup, rating: Rating, slew: Array) -> tuple[Array, Array, np.ndarray]:
    """Every slew angle and radius is a cell of its own; the cell keeps to its own slew angle.

    What stability allows, what the tyres allow, and about which line the crane would tip.
    """
    count = len(slew)
    # Each cell has a slew angle of its own, seen to below: the many of the rating need not be.
    setup = replace(setup, slew=slew[:1])
    radius = np.tile(rating.radius[0], count)[None]
    own = np.repeat(np.arange(count), rating.radius.shape[1])
    start = np.tile(np.nan_to_num(rating.capacity[0]), count)[None]

    def utilisation_of(load: Array) -> Array:
        at = respond(setup, boom=rating.boom, load=load, radius=radius)
        balance = _own_slew(at, slew, own)
        tips = tipping_utilisation(
            setup.rule.stability,
            machine=setup.machine,
            support=setup.support,
            load=load,
            balance=balance,
            placed=at.placed,
        )
        share = setup.rule.stability.backward_share
        back = _backward(at, balance, slew, own)
        with np.errstate(divide="ignore"):
            return np.stack([tips, np.where(back > 0.0, share / back, np.inf)])

    def tyres_of(load: Array) -> Array:
        at = respond(setup, boom=rating.boom, load=load, radius=radius)
        balance = _own_slew(at, slew, own)
        force = tyre_forces(setup.support, placed=at.placed, balance=balance, load=load)
        return np.asarray(force.max(axis=0) / strength)

    none, most = np.zeros_like(start), np.full_like(start, largest_load(setup))
    allowed = load_at_one(utilisation_of, low=none, high=most, first=start)
    strength, bear = setup.support.strength, np.full_like(start, np.inf)
    if strength is not None:
        bear = load_at_one(tyres_of, low=none, high=most, first=start)
    at = respond(setup, boom=rating.boom, load=np.minimum(allowed, most), radius=radius)
    line = np.argmin(_own_slew(at, slew, own).tipping_load[0, :, 0], axis=0)
    shape = (count, -1)
    return allowed.reshape(shape), bear.reshape(shape), line.reshape(shape)


def _own_slew(at: Response, slew: Array, own: np.ndarray) -> Overturning:
    """Balance in which each cell has but its own slew angle."""
    every = turned(at, slew=slew)
    cell = np.arange(len(own))

    def picked(values: Array) -> Array:
        return np.asarray(np.moveaxis(values[own, :, :, cell], 0, -1)[None])

    return Overturning(
        lines=every.lines,
        slew=every.slew,
        righting=picked(every.righting),
        lever=picked(every.lever),
        tipping_load=picked(every.tipping_load),
    )


def _backward(at: Response, balance: Overturning, slew: Array, own: np.ndarray) -> Array:
    shares = np.array(
        [backward_share(placed=at.placed, lines=balance.lines, slew=turn)[0] for turn in slew]
    )
    return np.asarray(shares[own, np.arange(len(own))][None])
