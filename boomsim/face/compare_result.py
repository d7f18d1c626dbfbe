"""Configurations of one boom length, rated side by side, and why they differ."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from types import ModuleType
from typing import TYPE_CHECKING, Any, ClassVar, Unpack

from boomsim.face import default_places as places
from boomsim.face.crane import DEMONSTRATION, Choices, Crane, set_up
from boomsim.face.given_values import Extension, Given, Several, figure
from boomsim.face.given_values import radii as read_radii
from boomsim.face.study_result import ExplainedResult, key_of
from boomsim.reports import compare_report

if TYPE_CHECKING:
    from boomsim.rating.comparison.comparison_study import Comparison


@dataclass(frozen=True, slots=True, eq=False, repr=False, kw_only=True)
class Compared(ExplainedResult):
    """Ways to one boom length, side by side.

    Attributes
    ----------
    study : Comparison
        Rated loads, crossovers and leads, SI
    explained : tuple of float
        Radii at which the differences are accounted for [m]
    every_way : bool
        Whether the text lists every way, not only those that matter
    """

    kind: ClassVar[str] = "compare"
    report: ClassVar[ModuleType] = compare_report
    study: Comparison
    explained: tuple[float, ...]
    every_way: bool = False

    def data(self) -> dict[str, Any]:
        """SI numbers, arrays and strings."""
        return compare_report.as_json(self.study, list(self.explained))

    def rows(self) -> list[dict[str, Any]]:
        """One row for each radius and way."""
        found, rating = self.study, self.study.rating
        return [
            {
                "radius": radius,
                "extension": tuple(found.configurations.extension[i].tolist()),
                "capacity": rating.capacity[i, k],
                "governing": key_of(limit := rating.limit(i, k)),
                "set_by": None if limit is None else limit.set_by,
            }
            for k, radius in enumerate(found.radii)
            for i in range(len(rating.capacity))
        ]

    def _lines(self, units: str) -> str:
        return compare_report.as_text(
            self.study, list(self.explained), units=units, every=self.every_way
        )


def compare(
    machine: Crane = DEMONSTRATION,
    *,
    length: Given | None = None,
    extension: Extension | Sequence[Extension] | None = None,
    system: str | None = None,
    radius: Several | None = None,
    radii: Several | None = None,
    every_way: bool = False,
    **choices: Unpack[Choices],
) -> Compared:
    """Rate ways to one boom length side by side.

    Parameters
    ----------
    machine : str, path, Machine or Setup
    length : str or float, optional
        Boom length; all its ways are rated [m]
    extension : str, sequence of float, or sequence of these, optional
        The ways, written out; default: those of the demonstration [1]
    system : str, optional
        Boom system, among the ways to a length
    radius : str, float or sequence of these, optional
        Explain at these; default: one close in and one far out [m]
    radii : str, float or sequence of these, optional
        Rate at these; default: every metre [m]
    every_way : bool
        List every way in the text, not only those that matter
    **choices
        Those of :class:`boomsim.face.crane.Choices`
    """
    from boomsim.rating.comparison import comparison_study as studies

    setup = set_up(machine, **choices)
    of_length = figure(length, "length", what="--length")
    at, asked = read_radii(radii, what="--radii"), read_radii(radius)
    ways = None if length is not None else places.ways(extension, setup, system=system)
    found = studies.compare(setup, configurations=ways, length=of_length, radii=at, system=system)
    explained = compare_report.explained_at(found) if asked is None else asked.tolist()
    return Compared(study=found, explained=tuple(explained), every_way=every_way)
