"""Setting up: at which radii a crane lifts the slabs of its own counterweight."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from types import ModuleType
from typing import TYPE_CHECKING, ClassVar

from boomsim.face import given_values as given
from boomsim.face.crane import DEMONSTRATION, Crane, set_up
from boomsim.face.given_values import Extension, Given
from boomsim.face.study_result import Result
from boomsim.reports import slabs_report

if TYPE_CHECKING:
    from boomsim.rating.slabs import slabs_study as studies


@dataclass(frozen=True, slots=True, eq=False, repr=False, kw_only=True)
class SettingUp(Result):
    """Where a crane lifts its own slabs.

    Attributes
    ----------
    study : boomsim.rating.slabs.slabs_study.Slabs
        By slab and support, SI
    """

    kind: ClassVar[str] = "slabs"
    report: ClassVar[ModuleType] = slabs_report
    study: studies.Slabs


def slabs(
    machine: Crane = DEMONSTRATION,
    *,
    extension: Extension | Sequence[Extension] | None = None,
    support: str | None = None,
    parts: int | None = None,
    slew: Given = "around",
    rule: str = "share",
) -> SettingUp:
    """Find where a crane lifts its own slabs, with none of them on its superstructure.

    Parameters
    ----------
    machine : str, path, Machine or Setup
    extension : str, sequence of float, or sequence of these, optional
        Ways out; default: one for each boom length [1]
    support : str, optional
        One of the machine's; default: all
    parts : int, optional
        Parts of line; default: the most
    slew : str or float
        "around", "rear", or a slew angle, 0 over the rear [rad]
    rule : str
        "share", "test-load" or "limit-states"
    """
    from boomsim.rating.slabs import slabs_study as study
    from boomsim.rating.strategies import configurations_of

    setup = set_up(machine, support=support, parts=parts, slew=slew, rule=rule)
    ways = None
    if extension is not None:
        written = given.extensions(extension, setup.machine)
        ways = configurations_of(setup.machine.boom, extension=written)
    only = None if support is None else (setup.support,)
    return SettingUp(study=study.slabs(setup, ways=ways, supports=only))
