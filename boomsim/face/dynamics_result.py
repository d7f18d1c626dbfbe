"""A load jerked, stopped or swung, as the load that, hanging still, uses the crane as much."""

from __future__ import annotations

from dataclasses import dataclass
from types import ModuleType
from typing import TYPE_CHECKING, ClassVar

from boomsim.face import default_places as places
from boomsim.face.crane import DEMONSTRATION, Crane, set_up
from boomsim.face.given_values import Extension, Given, figure
from boomsim.face.study_result import Result
from boomsim.reports import dynamics_report

if TYPE_CHECKING:
    from boomsim.rating.dynamics import dynamics_study as studies


@dataclass(frozen=True, slots=True, eq=False, repr=False, kw_only=True)
class Moved(Result):
    """A load moved in several ways.

    Attributes
    ----------
    study : boomsim.rating.dynamics.dynamics_study.Dynamics
        As how much each way counts, SI
    """

    kind: ClassVar[str] = "dynamics"
    report: ClassVar[ModuleType] = dynamics_report
    study: studies.Dynamics


def dynamics(
    machine: Crane = DEMONSTRATION,
    *,
    extension: Extension | None = None,
    radius: Given | None = None,
    load: Given | None = None,
    speed: Given = 0.5,
    stop: Given = 1.0,
    drop: Given = 0.05,
    swing: Given | None = None,
    swing_stop: Given = 3.0,
    hoist_class: int = 2,
    hook: Given = 2.0,
    counterweight: str | None = None,
    support: str | None = None,
    parts: int | None = None,
    slew: Given = "around",
    rule: str = "share",
) -> Moved:
    """Find as which still load a moved one counts.

    Parameters
    ----------
    machine : str, path, Machine or Setup
    extension : str or sequence of float, optional
        Percent as text, "0,0,45,45", or fractions; default: one that shows the question [1]
    radius : str or float, optional
        With the still load on; default: within the reach [m]
    load : str or float, optional
        Gross; default: three quarters of the rated one [kg]
    speed : str or float
        Of hoisting and lowering [m/s]
    stop : str or float
        In which lowering is stopped evenly [s]
    drop : str or float
        That slack slings let the load fall [m]
    swing, swing_stop : str or float
        Speed of the boom head while slewing; default: 1.5, less very close in [m/s]; time in which
        it is lost [s]
    hoist_class : int
        1 soft to 4 stiff
    hook : str or float
        Height of the hook above the ground [m]
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
    from boomsim.rating.dynamics import dynamics_study as study

    setup = set_up(
        machine, counterweight=counterweight, support=support, parts=parts, slew=slew, rule=rule
    )
    out = places.extension(extension, setup.machine)
    at = figure(radius, "length", what="--radius")
    if at is None:
        at = float(places.picked(places.all_radii(setup, out), 0.4)[0])
    motion = study.Motion(
        speed=figure(speed, "speed", what="--speed"),
        stop=figure(stop, "time", what="--stop"),
        drop=figure(drop, "length", what="--drop"),
        swing=usual_swing(at) if swing is None else figure(swing, "speed", what="--swing"),
        swing_stop=figure(swing_stop, "time", what="--swing-stop"),
        hoist_class=hoist_class,
        hook=figure(hook, "length", what="--hook"),
    )
    hung = figure(load, "mass", what="--load")
    return Moved(study=study.dynamics(setup, extension=out, radius=at, load=hung, motion=motion))
