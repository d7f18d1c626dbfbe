"""A load chart with the bold line between what strength sets and what stability sets."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from types import ModuleType
from typing import TYPE_CHECKING, Any, ClassVar, Unpack

from boomsim.face import default_places as places
from boomsim.face import given_values as given
from boomsim.face.crane import DEMONSTRATION, Choices, Crane, set_up
from boomsim.face.given_values import Extension, Given, Several, figure, figures
from boomsim.face.study_result import Result, key_of
from boomsim.reports import chart_report

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.machine.model import Machine
    from boomsim.mechanics.geometry import Array
    from boomsim.rating.charts import load_chart as studies
    from boomsim.rating.overload.overload_map import OverloadMap
    from boomsim.rating.setup import Setup
    from boomsim.rating.strategies import Configurations


@dataclass(frozen=True, slots=True, eq=False, repr=False, kw_only=True)
class Charted(Result):
    """A load chart.

    Attributes
    ----------
    study : boomsim.rating.charts.load_chart.Chart
        Rows are radii, columns boom lengths, SI
    rule : str
        By which the ways to extend were chosen; nothing where they were named
    raised : OverloadMap, optional
        What the second line shows
    units : str
        In which its rows and its step are whole
    """

    kind: ClassVar[str] = "chart"
    report: ClassVar[ModuleType] = chart_report
    study: studies.Chart
    rule: str
    raised: OverloadMap | None
    units: str

    def data(self) -> dict[str, Any]:
        """SI numbers, arrays and strings."""
        return chart_report.as_json(self.study, raised=self.raised)

    def rows(self) -> list[dict[str, Any]]:
        """One row for each radius and boom length; None where a cell is blank."""
        return [
            {"radius": radius, "boom_length": length, **_cell(self.study, r, c)}
            for r, radius in enumerate(self.study.radii)
            for c, length in enumerate(self.study.length)
        ]

    def _lines(self, units: str) -> str:
        return chart_report.as_text(self.study, units=units, rule=self.rule, raised=self.raised)

    def _figure(self, units: str) -> Figure:
        second = self.raised is not None
        return chart_report.figure(self.study, units=units, rule=self.rule, second_line=second)

    def _usual(self) -> str:
        return self.units


def _cell(chart: studies.Chart, row: int, column: int) -> dict[str, Any]:
    limit, reason = chart.limit(row, column), chart.reason(row, column)
    return {
        "capacity": chart.steps[row, column] * chart.step if reason is None else None,
        "governing": key_of(limit if reason is None else None),
        "set_by": limit.set_by if limit is not None and reason is None else None,
        "blank_because": None if reason is None else reason.key,
    }


def chart(
    machine: Crane = DEMONSTRATION,
    *,
    best: bool = False,
    extension: Extension | Sequence[Extension] | None = None,
    length: Several | None = None,
    system: str | None = None,
    radii: Several | None = None,
    rows: Given | None = None,
    step: Given | None = None,
    breaks_first: bool = False,
    units: str = "metric",
    **choices: Unpack[Choices],
) -> Charted:
    """Rate a load chart.

    Parameters
    ----------
    machine : str, path, Machine or Setup
    best : bool
        The best of all ways to extend at each radius; default: one way for each length
    extension : str, sequence of float, or sequence of these, optional
        A column for each way, written out [1]
    length : str, float or sequence of these, optional
        A column for each way to reach these boom lengths [m]
    system : str, optional
        Boom system
    radii : str, float or sequence of these, optional
        The rows [m]
    rows : str or float, optional
        From row to row [m]
    step : str or float, optional
        What capacities are rounded down to [kg]
    breaks_first : bool
        Add the second line: where something would break before the crane tips
    units : str
        Of the rows and of the step, where they are not given: "metric" or "us"
    **choices
        Those of :class:`boomsim.face.crane.Choices`
    """
    from boomsim.rating.charts.load_chart import best_chart, stated_chart
    from boomsim.rating.longest_boom import short_enough
    from boomsim.rating.overload.overload_map import overload_map

    _refuse_mixtures(best, extension, length, radii, rows)
    setup = set_up(machine, **choices)
    ways = columns(setup, best=best, extension=extension, length=length, system=system)
    usual = not best and extension is None and length is None
    ways = short_enough(setup, ways) if usual else ways
    found = (best_chart if best else stated_chart)(
        setup,
        configurations=ways,
        radii=read_rows(setup.machine, radii=radii, rows=rows, length=ways.length),
        step=read_step(step),
        units=units,
    )
    return Charted(
        study=found,
        rule=_rule(setup, system) if usual else "",
        raised=overload_map(found) if breaks_first else None,
        units=units,
    )


def _refuse_mixtures(best: bool, *asked: object) -> None:
    extension, length, radii, rows = asked
    refuse_both_rows(radii, rows)
    if best + (extension is not None) + (length is not None) > 1:
        raise ValueError("--best, --extension and --length each choose the columns. Give one.")


def refuse_both_rows(radii: object, rows: object) -> None:
    """Refuse rows that are chosen twice.

    Parameters
    ----------
    radii, rows : object
        None where not given
    """
    if radii is not None and rows is not None:
        raise ValueError(
            "--radii and --rows both choose the rows. Give the rows themselves with --radii or "
            "their distance with --rows."
        )


def columns(
    setup: Setup,
    *,
    best: bool,
    extension: Extension | Sequence[Extension] | None,
    length: Several | None,
    system: str | None,
) -> Configurations:
    """Choose the ways to extend that make the columns.

    Parameters
    ----------
    setup : Setup
    best : bool
    extension, length, system
        As for :func:`chart`
    """
    from boomsim.rating.charts import chart_configurations as ways

    boom = setup.machine.boom
    if extension is not None:
        return places.ways(extension, setup, system=None)
    if length is not None:
        wanted = [float(one) for one in figures(length, "length", what="--length")]
        return ways.configurations_at_lengths(boom, length=wanted, system=system)
    if best:
        return ways.every_configuration(boom, system=system)
    return ways.one_way_for_each_length(boom, system=system)


def read_rows(
    machine: Machine, *, radii: Several | None, rows: Given | None, length: Array
) -> Array | None:
    """Read the radii of the rows: named one by one, or by their distance.

    Parameters
    ----------
    machine : Machine
    radii : str, float or sequence of these, optional
    rows : str or float, optional
    length : ndarray, shape (configurations,)
        Boom lengths [m]

    Returns
    -------
    ndarray, shape (rows,), or None
        [m]
    """
    from boomsim.rating.charts.rows_and_rounding import chart_radii

    if rows is None:
        return given.radii(radii, what="--radii")
    return chart_radii(machine, length=length, step=figure(rows, "length", what="--rows"))


def read_step(step: Given | None) -> float | None:
    """Read what capacities are rounded down to.

    Returns
    -------
    float or None
        [kg]
    """
    from boomsim.rating.charts.rows_and_rounding import checked_step

    return None if step is None else checked_step(figure(step, "mass", what="--step"))


def _rule(setup: Setup, system: str | None) -> str:
    from boomsim.rating.charts.chart_configurations import one_way_words

    return one_way_words(setup.machine.boom, system=system)
