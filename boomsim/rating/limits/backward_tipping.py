"""Tipping over backwards: too little of the weight is left on the side of the load."""

import numpy as np

from boomsim.mechanics.geometry import Array
from boomsim.mechanics.stability.overturning import backward_share
from boomsim.rating.limits.limit_kind import STABILITY, Case, Kind


def _utilisation(case: Case) -> Array:
    share = backward_share(placed=case.placed, lines=case.balance.lines, slew=case.slew)
    least = case.rule.stability.backward_share
    with np.errstate(divide="ignore"):
        return np.where(share > 0.0, least / share, np.inf) + 0.0 * case.placed.head_out


BACKWARD = Kind(
    name="backward",
    words="tipping over backwards",
    happens="the crane tips over backwards",
    short="tips backwards",
    code="back",
    utilisation=_utilisation,
    boom_alone=False,
    set_by=STABILITY,
    passed=None,  # no matter of the load: a crane falls over backwards without one
)
