"""From one configuration of a pinned boom to another, in order, by a single telescope cylinder.

The rule is an assumption of this model. The cylinder lies inside the boom, with one end at the
tail of the base section and one stroke long. It grips a section at its tail, so that section must
stand where a cylinder of one stroke reaches it: all larger moving sections are all the way in. It
moves that one section, with all that is pinned in it, to another lock position, pins it, and goes
back for the next. So the innermost goes out first, and to move a section, all larger ones come in.
"""

from dataclasses import dataclass

import numpy as np

from boomsim.machine.boom_systems import BOOM_SYSTEMS
from boomsim.machine.model import Boom
from boomsim.mechanics.geometry import Array, layout
from boomsim.rating.strategies import label

ALL_IN = 0.0
"""Lock position at which a section is all the way in [1]."""

SAME = 1e-9
"""Fractions this near are one lock position [1]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Move:
    """One section unpinned, moved and pinned again.

    Attributes
    ----------
    section : int
        Its number, from 1
    start, end : float
        Lock positions, fractions of its stroke [1]
    carries : tuple of int
        Numbers of the sections that go with it, pinned in it
    extension : tuple of float
        Of all sections after the move [1]
    length : float
        Boom length after the move [m]
    """

    section: int
    start: float
    end: float
    carries: tuple[int, ...]
    extension: tuple[float, ...]
    length: float

    @property
    def is_out(self) -> bool:
        """True where the section goes out, False where it comes in."""
        return self.end > self.start


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Sequence:
    """All moves from one configuration to another.

    Attributes
    ----------
    start, end : ndarray, shape (moving sections,)
        [1]
    start_length : float
        Boom length before the first move [m]
    moves : tuple of Move
        In order; none where both are the same
    """

    start: Array
    end: Array
    start_length: float
    moves: tuple[Move, ...]

    @property
    def lengths(self) -> tuple[float, ...]:
        """Boom length before the first move and after each [m]."""
        return (self.start_length, *(move.length for move in self.moves))

    @property
    def shortest(self) -> float:
        """Least boom length on the way, its ends included [m]."""
        return min(self.lengths)

    @property
    def longest(self) -> float:
        """Greatest boom length on the way, its ends included [m]."""
        return max(self.lengths)

    @property
    def comes_back(self) -> float:
        """How far the boom must become shorter than at the shorter of its ends [m]."""
        return min(self.lengths[0], self.lengths[-1]) - self.shortest


def pin_sequence(boom: Boom, *, start: Array, end: Array) -> Sequence:
    """Find the fewest moves from one configuration of a pinned boom to another.

    The innermost section that has to change decides: whatever is larger comes in first, the
    largest before the next, then the section moves, then the larger ones go out, the largest last.

    Parameters
    ----------
    start, end : ndarray, shape (moving sections,)
        [1]

    Raises
    ------
    ValueError
        If the boom is not pinned, a section cannot lock as wanted, or a section would have to be
        all the way in and has no lock there.
    """
    begun, wanted = (_locked(boom, one) for one in (start, end))
    moves: list[Move] = []
    now = begun.copy()
    for number, position in _order(boom, begun, wanted):
        moves.append(_move(boom, now, number, position))
        now = np.array(moves[-1].extension)
    return Sequence(
        start=begun,
        end=wanted,
        start_length=float(layout(boom, extension=begun).boom_length[0]),
        moves=tuple(moves),
    )


def _order(boom: Boom, start: Array, end: Array) -> list[tuple[int, float]]:
    """Sections and where each goes, in order."""
    changed = np.flatnonzero(np.abs(end - start) > SAME)
    if not len(changed):
        return []
    inner = int(changed[-1])
    back = [k for k in range(inner) if start[k] > ALL_IN]
    out = [k for k in reversed(range(inner)) if end[k] > ALL_IN]
    larger = [k for k in range(inner) if k in back or k in out]
    if larger and boom.lock_positions[0] > ALL_IN:
        raise ValueError(
            f"To move section {inner + 1}, section {larger[0] + 1} must be all the way in, and "
            f"this boom locks no nearer than at {100 * boom.lock_positions[0]:g} %. It cannot go "
            f"from ({label(start)}) % to ({label(end)}) %. Add 0 % to its lock_positions."
        )
    return [
        *((k + 1, ALL_IN) for k in back),
        (inner + 1, float(end[inner])),
        *((k + 1, float(end[k])) for k in out),
    ]


def _move(boom: Boom, now: Array, number: int, position: float) -> Move:
    after = now.copy()
    after[number - 1] = position
    return Move(
        section=number,
        start=float(now[number - 1]),
        end=position,
        carries=tuple(range(number + 1, len(now) + 1)),
        extension=tuple(float(one) for one in after),
        length=float(layout(boom, extension=after).boom_length[0]),
    )


def _locked(boom: Boom, extension: Array) -> Array:
    """Check that a pinned boom can be so, each section exactly at a lock position."""
    if not any(BOOM_SYSTEMS[name].locks for name in boom.systems):
        raise ValueError(
            f"This boom is {', '.join(boom.systems)}: it has no pins to be moved from one to "
            "another. Take a pinned machine, such as yard60."
        )
    given, locks = np.asarray(extension, dtype=float), np.array(boom.lock_positions)
    layout(boom, extension=given)  # refuses another number of sections, and what is beyond 0 to 1
    nearest = locks[np.abs(given[:, None] - locks).argmin(axis=1)]
    off = np.flatnonzero(np.abs(nearest - given) > SAME)
    if len(off):
        raise ValueError(
            f"Section {off[0] + 1} cannot lock at {100 * given[off[0]]:g} %. This pinned boom "
            f"locks at {', '.join(f'{100 * one:g}' for one in locks)} %. Choose one of these."
        )
    return np.asarray(nearest)
