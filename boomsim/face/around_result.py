"""All around the crane: capacity by slew angle, over the rear, and what the floats carry."""

from __future__ import annotations

from dataclasses import dataclass
from types import ModuleType
from typing import TYPE_CHECKING, Any, ClassVar, Unpack

from boomsim.face import default_places as places
from boomsim.face.crane import DEMONSTRATION, Choices, Crane, on_ground, set_up
from boomsim.face.given_values import Extension, Given, Several, figure, radii
from boomsim.face.study_result import ExplainedResult
from boomsim.reports import around_report

if TYPE_CHECKING:
    from boomsim.rating.around.slew_study import Around as BySlew
    from boomsim.rating.lift_response import Response


@dataclass(frozen=True, slots=True, eq=False, repr=False, kw_only=True)
class Around(ExplainedResult):
    """What is so all around the crane.

    Attributes
    ----------
    study : AroundStudy
        Rated loads, sectors, floats and reasons, SI
    """

    kind: ClassVar[str] = "around"
    report: ClassVar[ModuleType] = around_report
    study: around_report.AroundStudy

    def rows(self) -> list[dict[str, Any]]:
        """One row for each slew angle and radius."""
        found = self.study.around
        return [
            {
                "slew": slew,
                "radius": radius,
                "capacity": found.capacity[k, j],
                **_sets(found, k, j),
            }
            for k, slew in enumerate(found.slew)
            for j, radius in enumerate(found.radius)
        ]


def around(
    machine: Crane = DEMONSTRATION,
    *,
    extension: Extension | None = None,
    radius: Several | None = None,
    load: Given | None = None,
    mat: Given | None = None,
    ground: Given | None = None,
    **choices: Unpack[Choices],
) -> Around:
    """Rate one configuration all around the crane.

    Parameters
    ----------
    machine : str, path, Machine or Setup
    extension : str or sequence of float, optional
        Percent as text, "50,50,50", or fractions; default: one that shows the question [1]
    radius : str, float or sequence of these, optional
        One or several; default: within the reach [m]
    load : str or float, optional
        Whose room and float loads are told, at the last radius; default: the rated one [kg]
    mat : str or float, optional
        Area of the mat under each float [m2]
    ground : str or float, optional
        Stiffness of one float with the ground under it [N/m]
    **choices
        Those of :class:`boomsim.face.crane.Choices`
    """
    from boomsim.rating.around.direction_margins import margins
    from boomsim.rating.around.float_loads import ground_loads
    from boomsim.rating.around.over_rear_sector import reasons, sectors
    from boomsim.rating.around.slew_study import around as by_slew
    from boomsim.rating.empty_hook.empty_hook_study import empty_hook

    setup = on_ground(set_up(machine, **choices), ground)
    out = places.extension(extension, setup.machine)
    every = places.all_radii(setup, out)
    asked = radii(radius)
    at = places.picked(every, 0.25, 0.6) if asked is None else asked
    under = figure(mat, "area", what="--mat")
    hung = figure(load, "mass", what="--load")
    found = by_slew(setup, extension=out, radius=at)
    response = _hung(found, hung)
    return Around(
        study=around_report.AroundStudy(
            around=found,
            sectors=sectors(setup, extension=out, radius=every),
            at=response,
            ground=ground_loads(response, slew=found.slew, mat=under),
            margins=margins(found, response),
            empty_hook=empty_hook(found.setup, extension=found.extension),
            reasons=reasons(setup, extension=out, radius=float(at[-1])),
        )
    )


def _sets(found: BySlew, slew: int, cell: int) -> dict[str, str | None]:
    """What sets a figure; None where there is none."""
    limit = found.limit(slew, cell)
    if limit is not None:
        return {"governing": limit.key, "set_by": limit.set_by}
    rated = found.capacity[slew, cell] == found.capacity[slew, cell]
    return dict.fromkeys(("governing", "set_by"), "stability" if rated else None)


def _hung(found: BySlew, load: float | None) -> Response:
    """Hang the load whose floats are looked at: the given one, or the one rated all around."""
    import numpy as np

    from boomsim.rating.around.centres_of_gravity import hung_at

    radius = float(found.radius[-1])
    if load is None:
        load = float(found.capacity[:, -1].min())
        if np.isnan(load):
            raise ValueError(
                f"There is no rated load at a radius of {radius:.2f} m with this boom. Choose a "
                "radius that it reaches."
            )
    if not 0.0 <= load < 1e7:
        raise ValueError(f"--load: {load:g} kg is no gross load. Give 0 kg or more.")
    return hung_at(found.setup, extension=found.extension, load=load, radius=radius)
