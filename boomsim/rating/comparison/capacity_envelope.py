"""Capacity over radius of ways to one length, close enough together to see who is on top.

All ways are rated on a coarse grid. Between its radii only those are rated that can come on top
there, and so on, each time five times finer.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.mechanics.boom.condense import Condensed
from boomsim.mechanics.boom.picked_configurations import pick
from boomsim.mechanics.geometry import Array
from boomsim.rating.capacity import rate
from boomsim.rating.charts.rows_and_rounding import even_radii, row_step
from boomsim.rating.empty_hook.less_than_the_hook import blank_under_hook
from boomsim.rating.setup import Setup

SAME = 1e-5
"""Capacities that differ by no more than this share are level: the solver leaves some 1e-6 in
each of two [1]."""

COARSE, FINER, ROUNDS = 2, 5, 4
"""Grid radii to a row of the table, how much finer each round is, and how many rounds: from 0.5 m
over 0.1 m to 0.8 mm for a crane whose rows are a metre apart [1]."""

EDGE_ROUNDS = 2
"""After so many rounds, that is 20 mm, nobody looks closer at where a way's reach begins and ends:
such cells are slow [1]."""

CATCHES_UP = 0.1
"""How near to the top a way is at one end, as a share of the capacity, if it comes on top between
two radii of the coarse grid; a fifth of it on a grid five times finer. It has half the distance to
come up in: in the whole, ways of the built-in machines gain up to 0.15 on one another [1]."""

CELLS = 640
"""Cells solved together; so many fit a processor's cache, and a cell that is slow to find keeps no
more of them waiting [1]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Envelope:
    """Ways rated at growing radii.

    Attributes
    ----------
    radius : ndarray, shape (radii,)
        [m]
    capacity : ndarray, shape (ways, radii)
        NaN out of reach [kg]
    governing : ndarray of int, shape (ways, radii)
        Limit that sets it; -1 where there is none
    rated : ndarray of bool, shape (ways, radii)
        False where a way was left out, as it cannot be on top
    """

    radius: Array
    capacity: Array
    governing: np.ndarray
    rated: np.ndarray

    @property
    def most(self) -> Array:
        """What the best carries; 0 where none carries anything [kg]."""
        return np.asarray(np.nan_to_num(self.capacity).max(axis=0))

    @property
    def on_top(self) -> np.ndarray:
        """Which ways carry most, shape (ways, radii); several where they are level."""
        with np.errstate(invalid="ignore"):
            return (self.capacity >= self.most * (1.0 - SAME)) & (self.most > 0.0)

    def within(self, margin: float) -> np.ndarray:
        """Which ways carry all but a share of the most, shape (ways, radii)."""
        with np.errstate(invalid="ignore"):
            return (self.capacity >= self.most * (1.0 - margin)) & (self.most > 0.0)


def envelope(setup: Setup, *, boom: Condensed) -> Envelope:
    """Rate ways to one length wherever one of them reaches beside the machine.

    Parameters
    ----------
    setup : Setup
    boom : Condensed
        The ways

    Returns
    -------
    Envelope
        Finest where one way takes over from another
    """
    step = row_step(setup.machine, length=boom.layout.boom_length) / COARSE
    radii = _coarse(setup, boom, step)
    every = np.ones((len(boom.layout.boom_length), len(radii)), dtype=bool)
    found, margin = _rated(setup, boom, radii, every), CATCHES_UP
    for _ in range(ROUNDS):
        between = _between(found, margin=margin, fine=step / FINER**EDGE_ROUNDS)
        places = np.flatnonzero(between.any(axis=0))
        if not len(places):
            break
        inside = _inside(found.radius, places)
        among = np.repeat(between[:, places], FINER - 1, axis=1)
        found = _together(found, _rated(setup, boom, inside, among))
        margin /= FINER
    return found


def _coarse(setup: Setup, boom: Condensed, step: float) -> Array:
    """The whole grid, independent of what is printed."""
    return even_radii(setup, length=boom.layout.boom_length, step=step)


def _between(found: Envelope, *, margin: float, fine: float) -> np.ndarray:
    """Which ways can be on top between each radius and the next, shape (ways, radii - 1).

    That is asked where who is on top changes, and where another way comes nearest to the top.
    """
    near, top, known = found.within(margin), found.on_top, np.isfinite(found.capacity)
    changes = (top[:, :-1] != top[:, 1:]).any(axis=0)
    among = near[:, :-1] | near[:, 1:]
    others = among & _comes_nearest(found) & ~(top[:, :-1] | top[:, 1:])
    # Where one on top comes into reach or leaves it, any other may take over.
    edge = ((known[:, :-1] != known[:, 1:]) & among).any(axis=0)
    among = np.where(edge, known[:, :-1] | known[:, 1:], among)
    small = np.diff(found.radius) < 1.5 * fine
    return np.asarray(among & (changes | others.any(axis=0)) & ~(edge & small))


def _comes_nearest(found: Envelope) -> np.ndarray:
    """Where a way's distance from the top has a least value in between, (ways, radii - 1)."""
    with np.errstate(invalid="ignore", divide="ignore"):
        below = 1.0 - found.capacity / found.most
    below = np.where(found.rated & np.isfinite(below), below, np.inf)
    padded = np.pad(below, ((0, 0), (1, 1)), constant_values=np.inf)
    return np.asarray((below[:, :-1] <= padded[:, :-3]) & (below[:, 1:] <= padded[:, 3:]))


def _inside(radius: Array, places: np.ndarray) -> Array:
    share = np.arange(1, FINER) / FINER
    start, end = radius[places, None], radius[places + 1, None]
    return np.asarray((start + share * (end - start)).ravel())


def _rated(setup: Setup, boom: Condensed, radii: Array, wanted: np.ndarray) -> Envelope:
    """Rate each way at its own radii, block by block."""
    capacity = np.full(wanted.shape, np.nan)
    governing = np.full(wanted.shape, -1)
    for cells in _blocks(wanted):
        rows = np.flatnonzero(wanted[:, cells].any(axis=1))
        some = boom if len(rows) == len(wanted) else pick(boom, rows)
        found = rate(setup, extension=some.layout.extension, radius=radii[cells], boom=some)
        rating = blank_under_hook(found)
        place = np.ix_(rows, cells)
        capacity[place], governing[place] = rating.capacity, rating.governing
    return Envelope(radius=radii, capacity=capacity, governing=governing, rated=wanted)


def _blocks(wanted: np.ndarray) -> list[np.ndarray]:
    """Put neighbours together of which about as many ways are wanted."""
    count = wanted.sum(axis=0)
    blocks: list[list[int]] = []
    for cell in np.flatnonzero(count):
        first = count[blocks[-1][0]] if blocks else 0
        alike = first <= 2 * count[cell] and count[cell] <= 2 * first
        if alike and len(blocks[-1]) < max(CELLS // first, 16):
            blocks[-1].append(int(cell))
        else:
            blocks.append([int(cell)])
    return [np.array(block) for block in blocks]


def _together(one: Envelope, other: Envelope) -> Envelope:
    order = np.argsort(np.concatenate([one.radius, other.radius]), kind="stable")

    def merged(name: str) -> np.ndarray:
        both = np.concatenate([getattr(one, name), getattr(other, name)], axis=-1)
        return np.asarray(both[..., order])

    names = ("radius", "capacity", "governing", "rated")
    return Envelope(**{name: merged(name) for name in names})
