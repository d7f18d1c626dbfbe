"""Where the boom head can be, and what it may carry there."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from types import ModuleType
from typing import TYPE_CHECKING, Any, ClassVar, Unpack

from boomsim.face.crane import DEMONSTRATION, Choices, Crane, set_up
from boomsim.face.given_values import Extension, Several, extensions, figures
from boomsim.face.study_result import Result, key_of
from boomsim.reports import range_report

if TYPE_CHECKING:
    from boomsim.figures.range.range_shape import RangeShape
    from boomsim.machine.model import Machine
    from boomsim.mechanics.geometry import Array


@dataclass(frozen=True, slots=True, eq=False, repr=False, kw_only=True)
class Range(Result):
    """Arcs of the boom head.

    Attributes
    ----------
    study : RangeShape
        An arc for each way to extend, sorted by boom length, SI
    """

    kind: ClassVar[str] = "range"
    report: ClassVar[ModuleType] = range_report
    study: RangeShape

    def rows(self) -> list[dict[str, Any]]:
        """One row for each boom and boom angle."""
        found = self.study
        return [
            {
                "boom_length": length,
                "boom_angle": angle,
                "radius": found.radius[a, k],
                "height": found.height[a, k],
                "capacity": found.capacity[a, k],
                "governing": key_of(range_report.limit(found, a, k)),
            }
            for a, length in enumerate(found.length)
            for k, angle in enumerate(found.angle)
        ]


def range(
    machine: Crane = DEMONSTRATION,
    *,
    extension: Extension | Sequence[Extension] | None = None,
    length: Several | None = None,
    system: str | None = None,
    **choices: Unpack[Choices],
) -> Range:
    """Work out where the boom head can be.

    Parameters
    ----------
    machine : str, path, Machine or Setup
    extension : str, sequence of float, or sequence of these, optional
        One way to extend or several; default: a few lengths [1]
    length : str, float or sequence of these, optional
        All ways to reach these boom lengths [m]
    system : str, optional
        Boom system, among the ways to a length
    **choices
        Those of :class:`boomsim.face.crane.Choices`
    """
    from boomsim.figures.range.range_shape import range_of

    if system is not None and length is None:
        raise ValueError(
            "--system chooses among the ways to reach a --length, which is missing. Add it, or "
            "leave --system out."
        )
    if extension is not None and length is not None:
        raise ValueError("argument --length: not allowed with argument --extension")
    setup = set_up(machine, **choices)
    return Range(study=range_of(setup, extension=_ways(setup.machine, extension, length, system)))


def _ways(
    machine: Machine,
    extension: Extension | Sequence[Extension] | None,
    length: Several | None,
    system: str | None,
) -> Array | None:
    from boomsim.rating.charts.chart_configurations import configurations_at_lengths

    if extension is not None:
        return extensions(extension, machine)
    if length is not None:
        wanted = [float(one) for one in figures(length, "length", what="--length")]
        return configurations_at_lengths(machine.boom, length=wanted, system=system).extension
    return None
