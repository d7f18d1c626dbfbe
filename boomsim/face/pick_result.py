"""May I make this pick? Every check shown; a sum for a class and no leave to lift."""

from __future__ import annotations

from dataclasses import dataclass
from types import ModuleType
from typing import TYPE_CHECKING, ClassVar

from boomsim.face import default_places as places
from boomsim.face.crane import DEMONSTRATION, Crane, set_up
from boomsim.face.given_values import Extension, Given, Several, figure, figures
from boomsim.face.study_result import Result
from boomsim.reports import pick_report

if TYPE_CHECKING:
    from boomsim.rating.pick import pick_study as studies


@dataclass(frozen=True, slots=True, eq=False, repr=False, kw_only=True)
class Picked(Result):
    """One pick and its checks.

    Attributes
    ----------
    study : boomsim.rating.pick.pick_study.Pick
        What each check found, SI
    units : str
        In which the chart is printed
    """

    kind: ClassVar[str] = "pick"
    report: ClassVar[ModuleType] = pick_report
    study: studies.Pick
    units: str

    def _usual(self) -> str:
        return self.units


def pick(
    machine: Crane = DEMONSTRATION,
    *,
    radius: Given,
    load: Given,
    extension: Extension | None = None,
    slew: Several = "around",
    sector: str | None = None,
    jib: Given | None = None,
    wind: Given | None = None,
    load_area: Given | None = None,
    level: Given | None = None,
    bearing: Given | None = None,
    mat: Given | None = None,
    block: Given | None = None,
    misread: Given = 0.5,
    counterweight: str | None = None,
    support: str | None = None,
    parts: int | None = None,
    rule: str = "share",
    units: str = "metric",
) -> Picked:
    """Judge a pick check by check; what is left out counts as not looked at.

    Parameters
    ----------
    machine : str, path or Machine
    radius : str or float
        Measured with the hook empty, where the load will hang farthest out [m]
    load : str or float
        Net, without hook block and slings [kg]
    extension : str or sequence of float, optional
        Percent as text, "0,0,45,45", or fractions; default: one that shows the question [1]
    slew : str, float or sequence of these
        Where the boom points at the pick and where the load is set down, "0 deg, 90 deg"; or
        "around" or "rear" [rad]
    sector : str, optional
        Of the chart in hand, "around" or "rear"; default: the one that the swing asks for
    jib : str or float, optional
        Deduction for a stowed jib [kg]
    wind : str or float, optional
        Gusts [m/s]
    load_area : str or float, optional
        Wind area of each tonne of load [m2]
    level : str or float, optional
        How far the crane is out of level [rad]
    bearing, mat : str or float, optional
        What the ground bears [Pa]; area of the mat under each float [m2]
    block : str or float, optional
        What is stamped on the hook block [kg]
    misread : str or float
        A radius read so much too short is told [m]
    counterweight, support : str, optional
        One of the machine's; default: its first
    parts : int, optional
        Parts of line; default: the most
    rule : str
        "share", "test-load" or "limit-states"
    units : str
        In which the chart is printed: "metric" or "us"
    """
    from boomsim.rating.pick import pick_study as study
    from boomsim.rating.pick.pick_asked import Asked

    whole = slew if isinstance(slew, str) and not any(map(str.isdigit, slew)) else None
    setup = set_up(
        machine,
        counterweight=counterweight,
        support=support,
        parts=parts,
        rule=rule,
        slew=whole or "around",
    )
    angles = () if whole else figures(slew, "angle", what="--slew")
    area = figure(load_area, "area", what="--load-area")
    asked = Asked(
        radius=figure(radius, "length", what="--radius"),
        load=figure(load, "mass", what="--load"),
        jib=figure(jib, "mass", what="--jib") or 0.0,
        swing=None if whole else tuple(float(angle) for angle in angles),
        sector=sector,
        wind=figure(wind, "speed", what="--wind"),
        load_area=None if area is None else area / 1000.0,
        level=figure(level, "angle", what="--level"),
        bearing=figure(bearing, "pressure", what="--bearing"),
        mat=figure(mat, "area", what="--mat"),
        block=figure(block, "mass", what="--block"),
        misread=figure(misread, "length", what="--misread"),
    )
    out = places.extension(extension, setup.machine)
    return Picked(study=study.pick(setup, extension=out, asked=asked, units=units), units=units)
