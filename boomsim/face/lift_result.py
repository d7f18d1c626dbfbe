"""One lift, with everything that follows from it."""

from __future__ import annotations

from dataclasses import dataclass
from types import ModuleType
from typing import TYPE_CHECKING, Any, ClassVar, Unpack

from boomsim.face import given_values as given
from boomsim.face.crane import DEMONSTRATION, Choices, Crane, set_up
from boomsim.face.given_values import Extension, Given, figure
from boomsim.face.study_result import Result
from boomsim.reports import lift_report

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.rating.lift import lift_study as studies

ANGLE = "60 deg"
"""Boom angle where neither radius nor angle is given."""


@dataclass(frozen=True, slots=True, eq=False, repr=False, kw_only=True)
class Lift(Result):
    """One lift.

    Attributes
    ----------
    study : boomsim.rating.lift.lift_study.Lift
        Geometry, forces, limits and supports, SI
    """

    kind: ClassVar[str] = "lift"
    report: ClassVar[ModuleType] = lift_report
    study: studies.Lift

    def rows(self) -> list[dict[str, Any]]:
        """One row for each limit, the most used first."""
        used = sorted(self.study.limits, key=lambda one: -one.utilisation)
        return [
            {"limit": u.limit.key, "set_by": u.limit.set_by, "utilisation": u.utilisation}
            for u in used
        ]

    def _figure(self, units: str) -> Figure:
        raise ValueError(
            "A lift has no figure of its own. Draw its range or what overloads it: range(...) and "
            "overload(...) have one."
        )


def lift(
    machine: Crane = DEMONSTRATION,
    *,
    extension: Extension | None = None,
    radius: Given | None = None,
    angle: Given | None = None,
    load: Given = 0.0,
    **choices: Unpack[Choices],
) -> Lift:
    """Work one lift out.

    Parameters
    ----------
    machine : str, path, Machine or Setup
    extension : str or sequence of float, optional
        Percent as text, "0,0,45,45", or fractions; default: all in [1]
    radius : str or float, optional
        Loaded radius [m]
    angle : str or float, optional
        Boom angle, where no radius is given; default: 60 degrees [rad]
    load : str or float
        Gross load [kg]
    **choices
        Those of :class:`boomsim.face.crane.Choices`
    """
    from boomsim.rating.lift import lift_study as study

    if radius is not None and angle is not None:
        raise ValueError("--radius and --angle both place the load. Give one of the two.")
    setup = set_up(machine, **choices)
    moving = len(setup.machine.boom.sections) - 1
    out = given.extension([0.0] * moving if extension is None else extension, setup.machine)
    at = figure(radius, "length", what="--radius")
    by_angle = None if at is not None else figure(angle or ANGLE, "angle", what="--angle")
    weight = figure(load, "mass", what="--load")
    return Lift(study=study.lift(setup, extension=out, load=weight, radius=at, angle=by_angle))
