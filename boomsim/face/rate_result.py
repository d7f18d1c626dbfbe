"""Rated loads of any ways to extend at any radii, and what sets each."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from types import ModuleType
from typing import TYPE_CHECKING, Any, ClassVar, Unpack

from boomsim.face import default_places as places
from boomsim.face.crane import DEMONSTRATION, Choices, Crane, set_up
from boomsim.face.given_values import Extension, Several, figures
from boomsim.face.study_result import Result, key_of
from boomsim.reports import rate_report

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.rating.capacity import Rating
    from boomsim.rating.limits.limit_kind import Limit


@dataclass(frozen=True, slots=True, eq=False, repr=False, kw_only=True)
class Rated(Result):
    """Rated loads.

    Attributes
    ----------
    study : Rating
        Rows are ways to extend, columns radii, SI
    """

    kind: ClassVar[str] = "rate"
    report: ClassVar[ModuleType] = rate_report
    study: Rating

    @property
    def governing(self) -> list[list[Limit | None]]:
        """Limit that governs each way at each radius; None where the cell is blank."""
        rows, columns = self.study.capacity.shape
        return [[self.study.limit(i, k) for k in range(columns)] for i in range(rows)]

    def rows(self) -> list[dict[str, Any]]:
        """One row for each way and radius."""
        found = self.study
        return [
            {
                "extension": tuple(found.boom.layout.extension[i].tolist()),
                "radius": found.radius[i, k],
                "capacity": found.capacity[i, k],
                "governing": key_of(limit),
                "set_by": None if limit is None else limit.set_by,
            }
            for i, row in enumerate(self.governing)
            for k, limit in enumerate(row)
        ]

    def _figure(self, units: str) -> Figure:
        raise ValueError("Rated loads alone have no figure: compare(...) and chart(...) have one.")


def rate(
    machine: Crane = DEMONSTRATION,
    *,
    radius: Several,
    extension: Extension | Sequence[Extension] | None = None,
    **choices: Unpack[Choices],
) -> Rated:
    """Rate ways to extend at radii.

    Parameters
    ----------
    machine : str, path, Machine or Setup
    radius : str, float or sequence of these
        [m]
    extension : str, sequence of float, or sequence of these, optional
        One way or several; default: those of the demonstration [1]
    **choices
        Those of :class:`boomsim.face.crane.Choices`
    """
    from boomsim.rating import capacity

    setup = set_up(machine, **choices)
    ways = places.ways(extension, setup, system=None)
    at = figures(radius, "length", what="--radius")
    return Rated(study=capacity.rate(setup, extension=ways.extension, radius=at))
