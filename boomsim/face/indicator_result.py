"""What a load-moment indicator knows, and what it cannot."""

from __future__ import annotations

from dataclasses import dataclass
from types import ModuleType
from typing import TYPE_CHECKING, ClassVar

from boomsim.face import default_places as places
from boomsim.face.crane import DEMONSTRATION, Crane, set_up
from boomsim.face.given_values import Extension, Given, figure
from boomsim.face.study_result import Result
from boomsim.reports import indicator_report

if TYPE_CHECKING:
    from boomsim.rating.indicator import indicator_study as studies


@dataclass(frozen=True, slots=True, eq=False, repr=False, kw_only=True)
class Indicator(Result):
    """One lift under conditions that an indicator does not see.

    Attributes
    ----------
    study : boomsim.rating.indicator.indicator_study.Indicated
        What it shows beside what is, SI
    """

    kind: ClassVar[str] = "indicator"
    report: ClassVar[ModuleType] = indicator_report
    study: studies.Indicated


def indicator(
    machine: Crane = DEMONSTRATION,
    *,
    extension: Extension | None = None,
    radius: Given | None = None,
    load: Given | None = None,
    side_pull: Given = 0.05,
    lean: Given = "1 deg",
    wind: Given = 14.0,
    load_area: Given = 1.2,
    swing: Given | None = None,
    counterweight: str | None = None,
    support: str | None = None,
    parts: int | None = None,
    slew: Given = "around",
    rule: str = "share",
) -> Indicator:
    """Set what an indicator shows beside what is.

    Parameters
    ----------
    machine : str, path, Machine or Setup
        As the indicator was told, as all choices below
    extension : str or sequence of float, optional
        Percent as text, "0,0,45,45", or fractions; default: one that shows the question [1]
    radius : str or float, optional
        With the load on; default: within the reach [m]
    load : str or float, optional
        Gross; default: nine tenths of the rated one [kg]
    side_pull : str or float
        Share of the load [1]
    lean : str or float
        Out of level, ahead in one condition and across in another [rad]
    wind : str or float
        Gusts, from behind in one condition and across in another [m/s]
    load_area : str or float
        Wind area of each tonne of load [m2]
    swing : str or float
        Speed of the boom head while the load is slewed round; default: 1.5, less very close in
        [m/s]
    counterweight, support : str, optional
        One of the machine's; default: its first
    parts : int, optional
        Parts of line; default: the most
    slew : str or float
        "around", "rear", or a slew angle, 0 over the rear [rad]
    rule : str
        "share", "test-load" or "limit-states"
    """
    from boomsim.mechanics.moving_loads import usual_swing
    from boomsim.rating.indicator import indicator_study as study
    from boomsim.rating.indicator.indicator_conditions import Amounts

    setup = set_up(
        machine, counterweight=counterweight, support=support, parts=parts, slew=slew, rule=rule
    )
    out = places.extension(extension, setup.machine)
    at = figure(radius, "length", what="--radius")
    if at is None:
        at = float(places.picked(places.all_radii(setup, out), 0.4)[0])
    amounts = Amounts(
        side_pull=figure(side_pull, "share", what="--side-pull"),
        lean=figure(lean, "angle", what="--lean"),
        wind=figure(wind, "speed", what="--wind"),
        load_area=figure(load_area, "area", what="--load-area") / 1000.0,
        swing=usual_swing(at) if swing is None else figure(swing, "speed", what="--swing"),
    )
    hung = figure(load, "mass", what="--load")
    return Indicator(
        study=study.indicate(setup, extension=out, radius=at, load=hung, amounts=amounts)
    )
