"""Rated cells beside uses worked once more: at the rated load, and a hundredth above it."""

from dataclasses import dataclass
from functools import cache

import numpy as np
from rerate import utilisations
from rerate_cells import Cells, bend, some_of
from rerate_draw import drawn

from boomsim.rating.capacity import Rating, rate
from boomsim.rating.setup import set_up

ABOVE = 1.01


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Again:
    """One cell with a rated load: what governs, every use by both, and largest uses above it."""

    title: str
    governing: str
    rated: dict[str, float]
    own: dict[str, float]
    above: float

    @property
    def largest(self) -> str:
        """The limit that is used most, by the formulas written once more."""
        return max(self.own, key=lambda key: self.own[key])


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Refused:
    """A cell that holds nothing: the largest use without a load."""

    title: str
    governing: str
    empty: float


def kind_of(key: str) -> str:
    """A limit's kind, without the section's number."""
    return key.rstrip(" 0123456789")


def rated(cells: Cells) -> Rating:
    setup = set_up(
        cells.machine,
        rigging=cells.rigging,
        rule=cells.rule,
        allowances=cells.allowances,
        slew=cells.sector,
        disturbances=cells.given,
    )
    return rate(setup, extension=cells.extension, radius=cells.radius[:, None])


@cache
def rated_again(seed: int) -> tuple[tuple[Again, ...], tuple[Refused, ...]]:
    """Rate the places of one draw, and judge what comes out; places out of reach are left out."""
    cells = drawn(seed)
    rating = rated(cells)
    capacity = rating.capacity[:, 0]
    keys = [limit.key for limit in rating.limits]
    governing = [keys[g] for g in rating.governing[:, 0]]
    holds, empty = np.flatnonzero(capacity > 0.0), np.flatnonzero(capacity == 0.0)
    at, above = (_judged(cells, holds, share * capacity) for share in (1.0, ABOVE))
    again = tuple(
        Again(
            title=f"{cells.title}, place {row}",
            governing=governing[row],
            rated=dict(zip(keys, map(float, rating.utilisation[:, row, 0]), strict=True)),
            own=at[k],
            above=max(above[k].values()),
        )
        for k, row in enumerate(holds)
    )
    refused = tuple(
        Refused(
            title=f"{cells.title}, place {row}",
            governing=governing[row],
            empty=max(found.values()),
        )
        for row, found in zip(empty, _judged(cells, empty, 0.0 * capacity), strict=True)
    )
    return again, refused


def _judged(cells: Cells, rows: np.ndarray, load: np.ndarray) -> list[dict[str, float]]:
    """Uses of all limits at some of the places."""
    if not len(rows):
        return []
    bent = bend(some_of(cells, rows), load=load[rows])
    return [utilisations(bent, k) for k in range(len(rows))]
