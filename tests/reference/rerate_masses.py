"""Where everything that weighs hangs, and what the wind meets, on a boom bent so far.

One cell at a time, in plain numbers: the axis is put together from the rotations at its stations,
piece by piece. Axes turn with the boom: ahead of the axis of rotation, to its left, up from ground.
"""

from dataclasses import dataclass
from math import cos, sin

import numpy as np
from rerate_cells import Bent
from rerate_profile import outline_of

from boomsim.mechanics.boom.boom_state import State
from boomsim.mechanics.boom.condense import Condensed

Point = np.ndarray
PER_SECTION = 9


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Shown:
    """What a section shows to the wind beyond the mouth around it: middle [m] and areas [m2]."""

    middle: Point
    wide: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Placed:
    """Masses [kg] and their places [m]; those of the boom are the first, so many."""

    masses: list[tuple[float, Point]]
    of_boom: int
    head: Point
    lead: Point
    lug: Point
    foot: Point
    heel: Point
    winch: Point
    shown: list[Shown]


def place(bent: Bent, state: State, row: int) -> Placed:
    """Place everything that turns with the boom."""
    machine, boom = bent.cells.machine, bent.boom
    angle = float(state.angle[row, 0])
    heel = np.array([machine.heel_out, 0.0, machine.heel_up])

    def turned(along: float, above: float, left: float = 0.0) -> Point:
        return heel + np.array(
            [
                along * cos(angle) - above * sin(angle),
                left,
                along * sin(angle) + above * cos(angle),
            ]
        )

    lines = axis_lines(boom, state, row)
    masses, shown = [], []
    for line, section, mass in zip(
        lines, machine.boom.sections, machine.boom.section_masses, strict=True
    ):
        masses.append((mass, turned(*line.mean(0.0))))
        outer = outline_of(section.profile)
        length = section.length - line.mouth
        shown.append(
            Shown(
                middle=turned(*line.mean(line.mouth)),
                wide=length * outer.width,
                high=length * outer.height,
            )
        )
    end, head = lines[-1], machine.boom.head
    fall, side = float(end.rotation[-1]), float(end.aside[-1])
    x, y, z = end.at[-1]
    ahead, below = np.array([cos(fall), sin(fall)]), np.array([sin(fall), -cos(fall)])
    sheave = np.array([x, y]) + head.ahead * ahead + head.below * below
    lead = np.array([x, y]) + head.ahead * ahead - head.rope_above * below
    left = z + head.ahead * side
    hook = turned(*sheave, left)
    masses.append((head.mass, hook))
    cylinder = machine.cylinder
    lug = turned(cylinder.attach_along, -cylinder.attach_below)
    foot = np.array([cylinder.base_out, 0.0, cylinder.base_up])
    masses += [(cylinder.mass / 2, lug), (cylinder.mass / 2, foot)]
    for one in (*machine.superstructure, bent.cells.counterweight):
        masses.append((one.mass, np.array([one.out, 0.0, one.up])))
    hoist = machine.hoist
    return Placed(
        masses=masses,
        of_boom=len(lines) + 1,
        head=hook,
        lead=turned(*lead, left),
        lug=lug,
        foot=foot,
        heel=heel,
        winch=np.array([hoist.winch_out, 0.0, hoist.winch_up]),
        shown=shown,
    )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Line:
    """A section's axis: places along it from the tail, rotations, and places in base axes."""

    along: np.ndarray
    rotation: np.ndarray
    aside: np.ndarray
    at: np.ndarray
    mouth: float

    def mean(self, start: float) -> tuple[float, float, float]:
        """Middle of the axis from a place on it to its front, by parabolas through stations."""
        total, length = np.zeros(3), 0.0
        for k in range(0, PER_SECTION, 3):
            reach = float(self.along[k + 2] - self.along[k])
            if reach > 0.0 and self.along[k + 1] > start:
                total += reach / 6 * (self.at[k] + 4 * self.at[k + 1] + self.at[k + 2])
                length += reach
        return tuple(total / length)


def axis_lines(boom: Condensed, state: State, row: int) -> list[Line]:
    """The axis of every section, tail to front, hung on the one outside it."""
    lines: list[Line] = []
    tails = boom.layout.tail[row]
    start = np.zeros(3)
    for i in range(len(tails)):
        own = slice(i * PER_SECTION, (i + 1) * PER_SECTION)
        along = boom.stations.position[row, i]
        if i:
            outer = lines[-1]
            there = int(np.argmin(np.abs(outer.along - (tails[i] - tails[i - 1]))))
            start = outer.at[there]
        rotation = state.rotation[row, own, 0]
        aside = np.array(state.rotation_side[row, own, 0])
        way = np.stack([np.cos(rotation), np.sin(rotation), aside], axis=1)
        way[:, :2] *= 1.0 + strains(boom, state, row, i)[:, None]
        mouth = float(boom.layout.overlap[row, i])
        lines.append(
            Line(
                along=along,
                rotation=rotation,
                aside=aside,
                at=start + _summed(along, way),
                mouth=mouth,
            )
        )
    return lines


def strains(boom: Condensed, state: State, row: int, section: int) -> np.ndarray:
    """How much longer a section's axis is at its stations: the force along it over E A.

    Ahead of the next section's tail it bears its own weight alone, and counts as rigid.
    """
    own = slice(section * PER_SECTION, (section + 1) * PER_SECTION)
    rotation = state.rotation[row, own, 0]
    pulled = state.force_along[row, own, 0] * np.cos(rotation)
    pulled = pulled + state.force_above[row, own, 0] * np.sin(rotation)
    if not section:
        pulled = pulled + boom.stations.in_overlap[row, own, 0] * state.lug_along[row, 0]
    steel = boom.machine.boom.sections[section]
    carries = boom.stations.beyond[row, own, 0]
    return carries * pulled / (steel.material.in_tension * outline_of(steel.profile).area)


def _summed(along: np.ndarray, way: np.ndarray) -> np.ndarray:
    """Integral of the direction from the tail to every station."""
    at = np.zeros_like(way)
    for k in range(0, PER_SECTION, 3):
        start = at[k - 1] if k else np.zeros(3)
        reach = along[k + 2] - along[k]
        a, b, c = way[k : k + 3]
        at[k] = start
        at[k + 1] = start + reach / 24 * (5 * a + 8 * b - c)
        at[k + 2] = start + reach / 6 * (a + 4 * b + c)
    return at
