"""One lift past its rated load, and a whole chart past it: what would come first."""

from __future__ import annotations

from dataclasses import dataclass
from types import ModuleType
from typing import TYPE_CHECKING, Any, ClassVar, Unpack

from boomsim.face import default_places as places
from boomsim.face.crane import DEMONSTRATION, Choices, Crane, on_ground, set_up
from boomsim.face.given_values import Extension, Given, radii
from boomsim.face.study_result import Result, key_of
from boomsim.reports import overload_map_report, overload_report

if TYPE_CHECKING:
    from boomsim.files.work_progress import Told
    from boomsim.rating.overload import overload_map as maps
    from boomsim.rating.overload import overload_study as studies


@dataclass(frozen=True, slots=True, eq=False, repr=False, kw_only=True)
class Overload(Result):
    """One lift, raised past its rated load.

    Attributes
    ----------
    study : boomsim.rating.overload.overload_study.Overload
        Events in the order of their loads, SI
    """

    kind: ClassVar[str] = "overload"
    report: ClassVar[ModuleType] = overload_report
    study: studies.Overload

    def rows(self) -> list[dict[str, Any]]:
        """One row for each event."""
        events: list[dict[str, Any]] = self.data()["events"]
        return events


@dataclass(frozen=True, slots=True, eq=False, repr=False, kw_only=True)
class Map(Result):
    """What would come first, all over a chart.

    Attributes
    ----------
    study : boomsim.rating.overload.overload_map.OverloadMap
        Rows are radii, columns boom lengths, SI
    units : str
        In which the chart's rows are whole
    """

    kind: ClassVar[str] = "overload-map"
    report: ClassVar[ModuleType] = overload_map_report
    study: maps.OverloadMap
    units: str

    def rows(self) -> list[dict[str, Any]]:
        """One row for each radius and boom length."""
        found = self.study
        return [
            {
                "radius": radius,
                "boom_length": length,
                "rated": found.chart.exact[r, c],
                "governing": key_of(found.chart.limit(r, c)),
                "failure": found.failure[r, c],
                "tipping": found.tipping[r, c],
                "ratio": found.ratio[r, c],
            }
            for r, radius in enumerate(found.chart.radii)
            for c, length in enumerate(found.chart.length)
        ]

    def _usual(self) -> str:
        return self.units


def overload(
    machine: Crane = DEMONSTRATION,
    *,
    extension: Extension | None = None,
    radius: Given | None = None,
    hold: str = "angle",
    ground: Given | None = None,
    **choices: Unpack[Choices],
) -> Overload:
    """Raise one lift past its rated load.

    Parameters
    ----------
    machine : str, path, Machine or Setup
    extension : str or sequence of float, optional
        Percent as text, "0,0,45,45", or fractions; default: one that shows the question [1]
    radius : str or float, optional
        Default: within the reach [m]
    hold : str
        "angle" or "radius": what stays while the load grows
    ground : str or float, optional
        Stiffness of one float with the ground under it [N/m]
    **choices
        Those of :class:`boomsim.face.crane.Choices`
    """
    from boomsim.rating.overload import overload_study as study

    setup = on_ground(set_up(machine, **choices), ground)
    out = places.extension(extension, setup.machine)
    at = radii(radius)
    if at is None:
        at = places.picked(places.all_radii(setup, out), 0.4)
    if len(at) != 1:
        raise ValueError("--radius: one lift is raised at a time. Give one radius, as '12 m'.")
    return Overload(study=study.overload(setup, extension=out, radius=float(at[0]), hold=hold))


def overload_map(
    machine: Crane = DEMONSTRATION,
    *,
    best: bool = False,
    units: str = "metric",
    told: Told | None = None,
    **choices: Unpack[Choices],
) -> Map:
    """Raise the load in every cell of a chart, at a kept boom angle.

    The chart is the one that :func:`boomsim.chart` makes, so that both tell the same cells.

    Parameters
    ----------
    machine : str, path, Machine or Setup
    best : bool
        The best of all ways to extend at each radius; default: one way for each length
    units : str
        Whose chart: "metric" or "us"
    told : callable, optional
        Hears how far the work is: what is done, how many, of how many
    **choices
        Those of :class:`boomsim.face.crane.Choices`
    """
    from boomsim.face.chart_result import chart
    from boomsim.rating.overload import overload_map as maps

    made = chart(machine, best=best, units=units, **choices)
    return Map(study=maps.overload_map(made.study, told=told), units=units)
