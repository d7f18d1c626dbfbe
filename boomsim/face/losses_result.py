"""What eats capacity: slope, side pull, wind, lifting off, soft ground, and each kilogram."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import ModuleType
from typing import TYPE_CHECKING, Any, ClassVar, Unpack

from boomsim.face import default_places as places
from boomsim.face.crane import DEMONSTRATION, Choices, Crane, set_up
from boomsim.face.given_values import Extension, Given, Several, figure, radii
from boomsim.face.study_result import Result, key_of
from boomsim.reports import losses_report

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from boomsim.files.work_progress import Told
    from boomsim.machine.model import Machine
    from boomsim.rating.chart_places import Places
    from boomsim.rating.losses import losses_study as studies
    from boomsim.rating.losses.capacity_effects import Amounts
    from boomsim.rating.losses.mass_sensitivity import Sensitivity
    from boomsim.rating.setup import Setup

MOST_PLACES = 4
"""Maximum number of columns on a page."""

QUANTITIES = {
    "lean": "angle",
    "side-pull": "share",
    "wind": "speed",
    "load-area": "area",
    "hoist-speed": "speed",
    "soft": "share",
    "farther": "length",
}
"""Amounts that can be named, and what they measure."""


@dataclass(frozen=True, slots=True, eq=False, repr=False, kw_only=True)
class Losses(Result):
    """What eats capacity at a few radii.

    Attributes
    ----------
    study : boomsim.rating.losses.losses_study.Losses
        What each effect takes, SI
    costs : Sensitivity
        What a kilogram in each part costs, SI
    """

    kind: ClassVar[str] = "losses"
    report: ClassVar[ModuleType] = losses_report
    study: studies.Losses
    costs: Sensitivity

    def data(self) -> dict[str, Any]:
        """SI numbers, arrays and strings."""
        return losses_report.as_json(self.study, self.costs)

    def rows(self) -> list[dict[str, Any]]:
        """One row for each effect and radius."""
        return [
            {
                "effect": effect.name,
                "radius": radius,
                "before": effect.before[k],
                "capacity": effect.capacity[k],
                "loss": effect.loss[k],
                "share": effect.share[k],
                "governing": key_of(effect.governing[k]),
            }
            for effect in self.study.effects
            for k, radius in enumerate(self.study.places.radius)
        ]

    def _lines(self, units: str) -> str:
        return losses_report.as_text(self.study, self.costs, units=units)

    def _figure(self, units: str) -> Figure:
        return losses_report.figure(self.study, self.costs, units=units)


def losses(
    machine: Crane = DEMONSTRATION,
    *,
    extension: Extension | None = None,
    radius: Several | None = None,
    amounts: Mapping[str, Given] | None = None,
    told: Told | None = None,
    **choices: Unpack[Choices],
) -> Losses:
    """Find what each effect alone takes, and what a kilogram costs.

    Parameters
    ----------
    machine : str, path, Machine or Setup
    extension : str or sequence of float, optional
        Percent as text, "0,0,45,45", or fractions; default: one that shows the question [1]
    radius : str, float or sequence of these, optional
        Up to four; default: within the reach [m]
    amounts : mapping of str to str or float, optional
        How much of an effect, over the usual: ``{"wind": "14 m/s"}``; the keys of `QUANTITIES`
    told : callable, optional
        Hears how far the work is: what is done, how many, of how many
    **choices
        Those of :class:`boomsim.face.crane.Choices`
    """
    from boomsim.rating.losses import losses_study as study
    from boomsim.rating.losses import mass_sensitivity as sensitivity

    setup = set_up(machine, **choices)
    wanted = _places(setup, extension, radius)
    found = study.losses(
        setup, places=wanted, amounts=read_amounts(amounts or {}, setup.machine), told=told
    )
    return Losses(study=found, costs=sensitivity.sensitivity(setup, places=wanted))


def read_amounts(given: Mapping[str, Given], machine: Machine) -> Amounts:
    """Read amounts over the usual ones.

    Parameters
    ----------
    given : mapping of str to str or float
    machine : Machine
        Whose usual amounts stand where none is given
    """
    from dataclasses import replace

    from boomsim.rating.losses.capacity_effects import usual_amounts

    found = {}
    for name, value in given.items():
        known = checked_amount(name, name)
        number = figure(value, QUANTITIES[known], what=f"--amount {known}")
        # The area of the load is given for each tonne.
        found[known.replace("-", "_")] = number / 1000.0 if known == "load-area" else number
    return replace(usual_amounts(machine), **found)


def checked_amount(name: str, written: str, *, has_value: bool = True) -> str:
    """Refuse an amount that is none.

    Parameters
    ----------
    name : str
    written : str
        As it was given, for the refusal
    has_value : bool

    Returns
    -------
    str
        A key of `QUANTITIES`
    """
    from boomsim.units import did_you_mean

    known = name.strip().replace("_", "-")
    if not has_value or known not in QUANTITIES:
        raise ValueError(
            f"--amount: {written!r} names no effect.{did_you_mean(known, QUANTITIES)} Give "
            f"one of {', '.join(QUANTITIES)} with its value, as wind='14 m/s'."
        )
    return known


def _places(setup: Setup, extension: Extension | None, radius: Several | None) -> Places:
    import numpy as np

    from boomsim.rating.chart_places import Places

    out = places.extension(extension, setup.machine)
    at = radii(radius)
    if at is None:
        at = places.picked(places.all_radii(setup, out), 0.15, 0.5, 0.85)
    if len(at) > MOST_PLACES:
        raise ValueError(
            f"--radius: {len(at)} radii are too many for one page. Give up to {MOST_PLACES}."
        )
    return Places(extension=np.tile(out, (len(at), 1)), radius=at)
