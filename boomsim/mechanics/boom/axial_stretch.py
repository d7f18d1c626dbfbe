"""How sections stretch along their axis, and what that moves.

A part of the boom that carries N along its axis is longer by N/(E A) of itself. The axis runs from
the heel pin to the lug and on to section 1's tail, and through every further section from its lock
to the next one's; each of these is a part with one strain. Three things follow:

- the head and every centre of gravity lie nearer to the heel pin;
- forces across the axis have shorter arms, each by the strain of what it crosses;
- a pressed section's mouth stands farther out on it: the pad stays with the outer section, and what
  is shortened between lock and mouth is missing outside.

What lies ahead of the next section's tail carries its own weight alone, and does not stretch.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.machine.model import Machine
from boomsim.mechanics.boom.bending_operators import Plane
from boomsim.mechanics.boom.stations import PER_SECTION, Cuts, Stations
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.sections.section_properties import properties


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Stretch:
    """Operators of the parts that stretch: sections + 1 of them.

    Attributes
    ----------
    mean : ndarray, shape (configurations, parts, K)
        Mean over each part of what its stations carry [1]
    soft : ndarray, shape (parts, 1)
        1/(E A) of each [1/N]
    spread : ndarray, shape (configurations, K, parts)
        Stations over which a force across is spread that stands for longer arms in a part [1]
    middle : ndarray of int, shape (configurations, parts)
        Station whose rotation stands for the part's
    long : ndarray, shape (configurations, 1, parts)
        Length of each [m]
    centres, shown : ndarray, shape (configurations, sections, parts)
        Length of each that moves a section's centre of gravity, and the middle of what it shows to
        the wind [m]
    inside : ndarray, shape (configurations, moving sections, 1)
        Length of each between its lock and the outer section's mouth that carries thrust [m]
    gap : ndarray, shape (configurations, 1)
        Length of the base section from section 1's tail to the lug, where that is outboard [m]
    turns : ndarray, shape (configurations, moving sections, K + 1 + parts)
        By how much each moving section turns as a whole for every metre that its mouth stands
        farther out on it, for the known forces across, the head moment and the forces of longer
        arms [rad/(N m)], [rad/(N m2)]
    """

    mean: Array
    soft: Array
    spread: Array
    middle: np.ndarray
    long: Array
    centres: Array
    shown: Array
    inside: Array
    gap: Array
    turns: Array

    def moved(self, long: Array, *, strain: Array, sin: Array) -> tuple[Array, Array]:
        """How far a point moves, along and above the base section.

        Parameters
        ----------
        long : ndarray, shape (configurations, points, parts)
            Length of each part between the heel pin and each point [m]
        strain : ndarray, shape (configurations, parts, cells)
            [1]
        sin : ndarray, shape (configurations, K, cells)
            Of the rotation of the axis [1]

        Returns
        -------
        ndarray, ndarray, shape (configurations, points, cells)
            [m]
        """
        turned = sin[np.arange(len(sin))[:, None], self.middle]
        turned *= strain
        return long @ strain, long @ turned


def stretch_of(
    machine: Machine,
    *,
    cuts: Cuts,
    stations: Stations,
    up: Plane,
    path: Array,
    centres: Array,
    shown: Array,
) -> Stretch:
    """Build the operators.

    Parameters
    ----------
    up : Plane
        The luffing plane
    path : ndarray, shape (configurations, 1, K)
        Weights that sum the direction of the axis to the last front [m]
    centres, shown : ndarray, shape (configurations, sections, K)
        The same for centres of gravity, and for the middle of what each section shows [m]
    """
    sections = machine.boom.sections
    stiff = np.array([s.material.in_tension * properties(s.profile).area for s in sections])
    in_part = _in_parts(cuts) * stations.beyond
    each = path[:, 0, :, None] * in_part
    long = each.sum(axis=1)
    reach = np.minimum(cuts.support, cuts.inner_tail)[:, 1:]
    return Stretch(
        mean=np.swapaxes(each / np.maximum(long, 1e-9)[:, None], 1, 2),
        soft=1.0 / np.concatenate([stiff[:1], stiff])[:, None],
        spread=in_part,
        middle=_middles(each),
        long=long[:, None],
        centres=centres @ in_part,
        shown=shown @ in_part,
        inside=reach[..., None],
        gap=np.maximum(cuts.support[:, :1] - cuts.inner_tail[:, :1], 0.0),
        turns=_turns(cuts, stations, up, in_part),
    )


def _in_parts(cuts: Cuts) -> Array:
    """Which part each station is in, shape (configurations, K, parts)."""
    configurations, sections = cuts.shape
    made = np.zeros((configurations, sections, PER_SECTION, sections + 1))
    held = cuts.spread(cuts.in_overlap)[:, 0]
    made[:, 0, :, 0], made[:, 0, :, 1] = held, 1.0 - held
    for i in range(1, sections):
        made[:, i, :, i + 1] = 1.0
    return made.reshape(configurations, sections * PER_SECTION, sections + 1)


def _middles(each: Array) -> np.ndarray:
    """Station at which half of a part's length is reached."""
    done = np.cumsum(each, axis=1)
    return np.asarray(np.argmax(done >= done[:, -1:] / 2.0, axis=1))


def _turns(cuts: Cuts, stations: Stations, up: Plane, in_part: Array) -> Array:
    """A section whose mouth moves out on it by d turns by (mean rotation - that at the mouth) d/c.

    For the mean rotation between the pads, now of the longer piece, is still the outer section's.
    """
    configurations, sections = cuts.shape
    rotation = np.concatenate([up.rotation, up.rotation_head, up.rotation @ in_part], axis=2)
    total = cuts.weight.reshape(configurations, sections, PER_SECTION)
    within = total * cuts.spread(cuts.in_overlap) / cuts.support[..., None]
    own = rotation.reshape(configurations, sections, PER_SECTION, -1)
    mean = (within[:, :, None] @ own)[:, 1:, 0]
    at_mouth = rotation[np.arange(configurations)[:, None], stations.at_mouth[:, 1:]]
    return np.asarray((mean - at_mouth) / cuts.support[:, 1:, None])


class Stretching:
    """Strains under what the stations carry. Remembers the last ones.

    Parameters
    ----------
    carried : ndarray, shape (configurations, K, causes)
        What each station carries a share of, as in :class:`boomsim.mechanics.boom.luffing_plane`
    """

    def __init__(self, stretch: Stretch, *, carried: Array) -> None:
        self.parts, self.shares = stretch, stretch.mean @ carried
        self.which = np.arange(len(carried))[:, None], stretch.middle
        self.reaches_back = bool(np.any(stretch.gap))
        self.moved: Array | float = 0.0

    def strain_by(self, ends: Array, *, sin: Array, lug_along: Array) -> None:
        """Find the strains of all parts, and how far the last front moves by them.

        Parameters
        ----------
        ends : ndarray, shape (2, configurations, causes, cells)
            Gravity, the head's force and wind, along and above the base section
        sin : ndarray, shape (configurations, K, cells)
            Of the rotation of the axis [1]
        lug_along : ndarray, shape (configurations, cells)
            Of the cylinder, along the boom at its lug [N]
        """
        along, above = self.shares @ ends
        turned = sin[self.which]
        self.across = above - along * turned
        along += above * turned
        along *= self.parts.soft
        self.pulled = self.parts.soft[0] * lug_along
        along[:, 0] += self.pulled
        self.strain = along
        turned *= along
        long = self.parts.long
        self.moved = np.array([(long @ along)[:, 0], (long @ turned)[:, 0]])

    def lengthen_arms(self, out: Array) -> None:
        """Forces across that stand for the longer arms of others: each part's times its strain.

        Parameters
        ----------
        out : ndarray, shape (configurations, parts, cells)
            [N]
        """
        np.multiply(self.strain, self.across, out=out)

    def outwards(self) -> Array:
        """How far out each moving section's mouth has come on it.

        Returns
        -------
        ndarray, shape (configurations, moving sections, cells)
            [m]
        """
        found = -self.parts.inside * self.strain[:, 2:]
        if self.reaches_back:
            found[:, 0] += self.parts.gap * self.pulled
        return np.asarray(found)
