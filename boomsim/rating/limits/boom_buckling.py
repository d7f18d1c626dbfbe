"""Buckling of the whole boom, sideways or in the luffing plane."""

from boomsim.mechanics.boom.critical_load import critical_ratio
from boomsim.mechanics.geometry import Array
from boomsim.rating.limits.limit_kind import Case, Kind


def _utilisation(case: Case) -> Array:
    """Load over the elastic critical load, times the rule's distance from it."""
    ratio = critical_ratio(case.boom, state=case.factored, forces=case.factored_forces)
    return ratio * case.rule.strength.buckling


BOOM_BUCKLING = Kind(
    name="boom buckling",
    words="buckling of the whole boom",
    short="whole boom buckles",
    code="b",
    utilisation=_utilisation,
)
