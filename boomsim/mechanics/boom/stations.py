"""Where a boom's sections are cut, and the stations that stand for it.

Every section is cut at its tail, its front, the mouth of the outer section and the tail of the
inner one, into three segments; the innermost, which has no inner one, in the middle of its overlap
or of its overhang, whichever is longer. Each segment has three stations (start, middle, end),
between which a function is the parabola through its three values (Simpson's rule): exact for the
moment of an evenly spread weight, so a first-order deflection carries no error of discretisation.

Values at stations are ordered section by section: K = 9 stations for each section. Axis 0 is the
configuration.

Derived in docs/theory.md, section 2.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.machine.model import Machine
from boomsim.mechanics.geometry import Array, Layout
from boomsim.mechanics.sections.section_properties import properties

SEGMENTS, NODES = 3, 3
PER_SECTION = SEGMENTS * NODES


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Stations:
    """Where the stations lie and what acts beyond them.

    Shapes are (configurations, K, 1) unless given; the last axis stretches over cells.

    Attributes
    ----------
    position : ndarray, shape (configurations, sections, 9)
        Along the section from its tail [m]
    weight : ndarray, shape (configurations, sections, 9)
        Simpson weights [m]
    beyond : ndarray
        1 where the station carries all that hangs on the inner sections, else 0 [1]
    in_overlap : ndarray
        1 between the tail and the outer section's mouth (base: heel pin to cylinder) [1]
    at_mouth, at_inner_tail : ndarray of int, shape (configurations, sections)
        Station where the outer section's mouth is, and where the inner section's tail is (of the
        innermost section: where its cut is)
    mass_out : ndarray
        Mass of the sections outboard that the station carries [kg]
    area_up, area_side : ndarray
        Wind area outboard, of what sections show beyond the mouth around them: seen from behind or
        above (width), and from the side (height) [m2]
    """

    position: Array
    weight: Array
    beyond: Array
    in_overlap: Array
    at_mouth: np.ndarray
    at_inner_tail: np.ndarray
    mass_out: Array
    area_up: Array
    area_side: Array


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Cuts:
    """Segments of each section; shapes (configurations, sections) and, marked 3, (…, 3).

    Attributes
    ----------
    length, support, inner_tail : ndarray
        Of the section; from its tail to the outer section's mouth (base: to the cylinder's lug),
        and to the inner section's tail (innermost: to its front) [m]
    seg_length, position, weight : ndarray, 3
        Length of each segment; its stations from the tail, and their Simpson weights, with a last
        axis of stations [m]
    has_inner, in_overlap : ndarray, 3
        1 where the segment carries all that hangs on the inner sections; 1 from tail to mouth [1]
    mouth_first : ndarray of bool
        Whether the mouth is the first of the section's two cuts
    """

    length: Array
    support: Array
    inner_tail: Array
    seg_length: Array
    position: Array
    weight: Array
    has_inner: Array
    in_overlap: Array
    mouth_first: np.ndarray

    @classmethod
    def of(cls, machine: Machine, placed: Layout) -> "Cuts":
        """Cut the sections of every configuration."""
        count = len(machine.boom.sections)
        length = np.broadcast_to([s.length for s in machine.boom.sections], placed.front.shape)
        support = placed.overlap.copy()
        support[:, 0] = machine.cylinder.attach_along
        inner_tail = length.copy()
        inner_tail[:, :-1] = placed.tail[:, 1:] - placed.tail[:, :-1]
        breaks = np.zeros((*length.shape, SEGMENTS + 1))
        last, front = support[:, -1], length[:, -1]
        cut = inner_tail.copy()
        cut[:, -1] = np.where(2.0 * last > front, last, last + front) / 2.0
        breaks[..., 1], breaks[..., 2], breaks[..., 3] = support, cut, length
        breaks[..., 1:3].sort(axis=-1)
        breaks.clip(0.0, length[..., None], out=breaks)
        seg_length = breaks[..., 1:] - breaks[..., :-1]
        middle = breaks[..., :-1] + seg_length / 2
        position = np.empty((*length.shape, SEGMENTS, NODES))
        for node, place in enumerate((breaks[..., :-1], middle, breaks[..., 1:])):
            position[..., node] = place
        weight = seg_length[..., None] * (np.array([1.0, 4.0, 1.0]) / 6.0)
        # A segment of no length lies nowhere: compare its middle, which then equals its start.
        has_inner = (middle < inner_tail[..., None]).astype(float)
        has_inner[:, count - 1] = 1.0
        return cls(
            length=length,
            support=support,
            inner_tail=inner_tail,
            seg_length=seg_length,
            position=position,
            weight=weight,
            has_inner=has_inner,
            in_overlap=(middle < support[..., None]).astype(float),
            mouth_first=support <= cut,
        )

    @property
    def shown(self) -> Array:
        """Length of each section beyond the mouth around it; of the base section all of it [m]."""
        hidden = self.support.copy()
        hidden[:, 0] = 0.0
        return np.asarray(self.length - hidden)

    @property
    def shape(self) -> tuple[int, int]:
        """Configurations and sections."""
        return self.length.shape[0], self.length.shape[1]

    def spread(self, per_segment: Array) -> Array:
        """Give each station its segment's value.

        Parameters
        ----------
        per_segment : ndarray, shape (..., 3)

        Returns
        -------
        ndarray, shape (..., 9)
        """
        return np.repeat(per_segment, NODES, axis=-1)


def stations_of(machine: Machine, *, cuts: Cuts) -> Stations:
    """Place the stations, and what acts beyond them."""
    configurations, sections = cuts.shape
    flat = (configurations, sections * PER_SECTION, 1)
    position = cuts.position.reshape(configurations, sections, PER_SECTION)
    own = 1.0 - position / cuts.length[..., None]
    beyond = cuts.spread(cuts.has_inner)

    mass = np.array(machine.boom.section_masses)
    mass_out = own * mass[:, None] + beyond * _of_inner(mass[None])[..., None]
    area_up, area_side = _areas(machine, cuts, position, beyond)
    # Of the two cuts inside a section, the mouth is the first where it comes before the other.
    first = np.arange(sections) * PER_SECTION + NODES - 1
    return Stations(
        position=position,
        weight=cuts.weight.reshape(configurations, sections, PER_SECTION),
        beyond=beyond.reshape(flat),
        in_overlap=cuts.spread(cuts.in_overlap).reshape(flat),
        at_mouth=first + np.where(cuts.mouth_first, 0, NODES),
        at_inner_tail=first + np.where(cuts.mouth_first, NODES, 0),
        mass_out=mass_out.reshape(flat),
        area_up=area_up.reshape(flat),
        area_side=area_side.reshape(flat),
    )


def _of_inner(each: Array) -> Array:
    """Sum over all the sections inside each one, shape (configurations, sections)."""
    return np.asarray(np.cumsum(each[:, ::-1], axis=1)[:, ::-1] - each)


def _areas(machine: Machine, cuts: Cuts, position: Array, beyond: Array) -> tuple[Array, Array]:
    """Areas that wind sees from behind and from the side: what is hidden in a section counts not.

    Shapes (configurations, sections, 9).
    """
    shapes = [properties(s.profile) for s in machine.boom.sections]
    shown = cuts.shown
    own = np.minimum(cuts.length[..., None] - position, shown[..., None])

    def area(breadth: list[float]) -> Array:
        of_inner = _of_inner(shown * np.array(breadth))
        return np.asarray(own * np.array(breadth)[:, None] + beyond * of_inner[..., None])

    return area([p.outer_width for p in shapes]), area([p.outer_height for p in shapes])
