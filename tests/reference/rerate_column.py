"""Load over the elastic critical load by finite elements: every section a row of straight beams.

Beams that bend and shear, with the thrust of the equilibrium in them; the tail and the mouth of a
joint are pins, the head is a rigid end, the rope pulls it to the winch. Both planes: on heel pin
and luffing cylinder, and clamped at the heel pin. One over the critical factor is the largest
eigenvalue of what thrust softens over what bending holds.
"""

from itertools import pairwise

import numpy as np
from rerate_cells import Bent
from rerate_profile import outline_of
from scipy.linalg import eigh

PER_SECTION = 9
PIECES = 2
"""Beams for each of the three parts into which joints cut a section."""

POINTS, WEIGHTS = (0.5 - 0.15**0.5, 0.5, 0.5 + 0.15**0.5), (5 / 18, 8 / 18, 5 / 18)
"""Gauss's rule of three points on a beam of length one."""


def boom_buckling(bent: Bent, row: int) -> float:
    """The rule's distance from the critical load, used in the worse plane."""
    ratio = max(critical(bent, row, sideways=side) for side in (False, True))
    return ratio * bent.cells.ruling.buckling


def critical(bent: Bent, row: int, *, sideways: bool) -> float:
    """Load over the critical load in one plane; nought where nothing presses."""
    column = Column(bent, row, sideways=sideways)
    return column.ratio()


class Column:
    """Unknowns: deflection and turn of the cross-section at every node, section by section."""

    def __init__(self, bent: Bent, row: int, *, sideways: bool) -> None:
        self.bent, self.row, self.sideways = bent, row, sideways
        self.along = [self._nodes(i) for i in range(len(bent.cells.machine.boom.sections))]
        self.first = np.cumsum([0, *(2 * len(nodes) for nodes in self.along)])
        size = int(self.first[-1])
        self.holds, self.softens = np.zeros((size, size)), np.zeros((size, size))
        for i in range(len(self.along)):
            self._section(i)
        self._head()

    def _stations(self, section: int) -> np.ndarray:
        return self.bent.boom.stations.position[self.row, section]

    def _nodes(self, section: int) -> np.ndarray:
        cuts = np.unique(np.round(self._stations(section)[[0, 2, 5, 8]], 9))
        pieces = [np.linspace(a, b, PIECES + 1)[:-1] for a, b in pairwise(cuts)]
        return np.append(np.concatenate(pieces), cuts[-1])

    def _thrust(self, section: int, place: float) -> float:
        """Compression inside a part, between its stations [N]."""
        along = self._stations(section)
        axial = self.bent.factored_forces.axial[self.row, section * PER_SECTION :, 0][:PER_SECTION]
        for k in range(0, PER_SECTION, 3):
            if along[k] < place < along[k + 2]:
                return -float(np.interp(place, along[k : k + 3], axial[k : k + 3]))
        raise ValueError(f"No part of section {section} is at {place} m.")

    def _section(self, number: int) -> None:
        section = self.bent.cells.machine.boom.sections[number]
        made, steel = outline_of(section.profile), section.material
        stiff = steel.modulus * (made.sideways if self.sideways else made.luffing)
        sheared = steel.in_shear * (made.across if self.sideways else made.upright)
        nodes = self.along[number]
        for k in range(len(nodes) - 1):
            length = nodes[k + 1] - nodes[k]
            own = slice(self.first[number] + 2 * k, self.first[number] + 2 * k + 4)
            self.holds[own, own] += _beam(length, stiff=stiff, sheared=sheared)
            thrust = self._thrust(number, (nodes[k] + nodes[k + 1]) / 2)
            self.softens[own, own] += thrust * _leaning(length, stiff=stiff, sheared=sheared)

    def _head(self) -> None:
        """A rigid end that leans with the last cross-section; the rope rights it."""
        ahead = self.bent.cells.machine.boom.head.ahead
        state = self.bent.factored
        end = int(self.first[-1])
        thrust = -float(self.bent.factored_forces.axial[self.row, -1, 0])
        self.softens[end - 1, end - 1] += thrust * ahead
        rope = float(state.line_pull[self.row, 0]) / float(state.head_along[self.row, 0])
        arm = np.array([1.0, ahead])
        self.softens[end - 2 : end, end - 2 : end] -= rope * np.outer(arm, arm)

    def _node(self, section: int, place: float) -> int:
        return int(self.first[section] + 2 * np.argmin(np.abs(self.along[section] - place)))

    def _pins(self) -> np.ndarray:
        """Rows that must be nought: a joint's two pins, and how the base section is held."""
        size, layout = int(self.first[-1]), self.bent.boom.layout
        rows = []

        def row(*terms: tuple[int, float]) -> None:
            made = np.zeros(size)
            for at, factor in terms:
                made[at] += factor
            rows.append(made)

        row((0, 1.0))
        lug = self.bent.cells.machine.cylinder.attach_along
        row((1, 1.0) if self.sideways else (self._node(0, lug), 1.0))
        for i in range(1, len(self.along)):
            tails, overlap = layout.tail[self.row], layout.overlap[self.row, i]
            row((int(self.first[i]), 1.0), (self._node(i - 1, tails[i] - tails[i - 1]), -1.0))
            row((self._node(i, overlap), 1.0), (int(self.first[i]) - 2, -1.0))
        return np.array(rows)

    def ratio(self) -> float:
        """Largest eigenvalue among shapes that the pins allow."""
        _, _, turned = np.linalg.svd(self._pins())
        free = turned[len(self._pins()) :].T
        holds, softens = (free.T @ matrix @ free for matrix in (self.holds, self.softens))
        last = len(holds) - 1
        return float(eigh(softens, holds, eigvals_only=True, subset_by_index=[last, last])[0])


def _beam(length: float, *, stiff: float, sheared: float) -> np.ndarray:
    """Stiffness of a beam that bends and shears."""
    extra = 12 * stiff / (sheared * length**2)
    a, b, c, d = 12.0, 6 * length, (4 + extra) * length**2, (2 - extra) * length**2
    rows = [[a, b, -a, b], [b, c, -b, d], [-a, -b, a, -b], [b, d, -b, c]]
    return np.array(rows) * stiff / ((1 + extra) * length**3)


def _leaning(length: float, *, stiff: float, sheared: float) -> np.ndarray:
    """Integral of the squared slope of the axis, for the shapes of that beam.

    The slopes are the derivatives of its shape functions.
    """
    extra = 12 * stiff / (sheared * length**2)
    made = np.zeros((4, 4))
    for x, weight in zip(POINTS, WEIGHTS, strict=True):
        slope = np.array(
            [
                6 * x * x - 6 * x - extra,
                length * (3 * x * x - (4 + extra) * x + 1 + extra / 2),
                -(6 * x * x - 6 * x - extra),
                length * (3 * x * x - (2 - extra) * x - extra / 2),
            ]
        ) / ((1 + extra) * length)
        made += weight * length * np.outer(slope, slope)
    return made
