"""How a boom is reeved: parts of line, rope out and left on the drum, line pull, hook speed."""

from __future__ import annotations

from dataclasses import dataclass
from types import ModuleType
from typing import TYPE_CHECKING, Any, ClassVar, Unpack

from boomsim.face import default_places as places
from boomsim.face.crane import DEMONSTRATION, Choices, Crane, set_up
from boomsim.face.given_values import Extension, Given, figure
from boomsim.face.study_result import Result
from boomsim.reports import reeving_report

if TYPE_CHECKING:
    from boomsim.machine.model import Machine
    from boomsim.mechanics.geometry import Array
    from boomsim.rating.reeving import reeving_study as study


@dataclass(frozen=True, slots=True, eq=False, repr=False, kw_only=True)
class Reeving(Result):
    """One boom reeved.

    Attributes
    ----------
    study : boomsim.rating.reeving.reeving_study.Reeving
        Parts, rope, pull and the choices there are, SI
    """

    kind: ClassVar[str] = "reeving"
    report: ClassVar[ModuleType] = reeving_report
    study: study.Reeving

    def rows(self) -> list[dict[str, Any]]:
        """One row for each number of parts."""
        return [
            {
                "parts": choice.parts,
                "carries": choice.carries,
                "hangs": choice.hangs,
                "rope": choice.rope,
                "reaches": choice.reaches,
                "longest_boom": choice.longest,
            }
            for choice in self.study.choices
        ]


def reeving(
    machine: Crane = DEMONSTRATION,
    *,
    length: Given | None = None,
    extension: Extension | None = None,
    radius: Given | None = None,
    load: Given | None = None,
    **choices: Unpack[Choices],
) -> Reeving:
    """Find in how many parts a boom is reeved, where its rope is and what pulls in it.

    Parameters
    ----------
    machine : str, path, Machine or Setup
    length : str or float, optional
        Boom length; the way out that is rated most counts [m]
    extension : str or sequence of float, optional
        Instead of `length`: percent as text, "0,0,45,45", or fractions; default: one that shows the
        question [1]
    radius : str or float, optional
        Of the load; default: where most is rated [m]
    load : str or float, optional
        Net load; default: the rated load is looked at [kg]
    **choices
        Those of :class:`boomsim.face.crane.Choices`
    """
    from boomsim.rating.reeving.reeving_study import reeve

    if length is not None and extension is not None:
        raise ValueError("argument --length: not allowed with argument --extension")
    setup = set_up(machine, **choices)
    return Reeving(
        study=reeve(
            setup,
            extension=_ways(setup.machine, length, extension),
            radius=figure(radius, "length", what="--radius"),
            load=figure(load, "mass", what="--load"),
        )
    )


def _ways(machine: Machine, length: Given | None, extension: Extension | None) -> Array:
    from boomsim.rating.strategies import configurations_of_length

    if length is None:
        return places.extension(extension, machine)
    wanted = figure(length, "length", what="--length")
    return configurations_of_length(machine.boom, length=wanted).extension
