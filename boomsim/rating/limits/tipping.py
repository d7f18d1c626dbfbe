"""Tipping over: the load that a stability rule wants held, over the one that tips the crane."""

import numpy as np

from boomsim.machine.model import Machine, Support
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.stability.masses import Masses
from boomsim.mechanics.stability.overturning import Overturning
from boomsim.rating.limits.limit_kind import STABILITY, TIPS, Case, Kind
from boomsim.rating.rules import StabilityRule


def tipping_utilisation(
    rule: StabilityRule,
    *,
    machine: Machine,
    support: Support,
    load: Array,
    balance: Overturning,
    placed: Masses,
) -> Array:
    """Utilisation of the stability rule in the least favourable direction.

    Parameters
    ----------
    load : ndarray
        Gross load [kg]

    Returns
    -------
    ndarray, shape (configurations, cells)
        Infinite where the crane tips without a load [1]
    """
    tipping = balance.least
    if rule.kind == "share":
        wanted = load / rule.share(support.kind)
    else:
        wanted = rule.load_factor * load + rule.boom_share * boom_at_head(machine, placed=placed)
    with np.errstate(divide="ignore", invalid="ignore"):
        used = wanted / tipping
    return np.where(tipping <= 0.0, np.inf, used)


def rated_share(
    rule: StabilityRule, *, tipping_load: Array, support_kind: str, at_head: Array
) -> Array:
    """Rated load that a stability rule allows for a tipping load.

    Parameters
    ----------
    tipping_load : ndarray
        T [kg]
    support_kind : str
        "outriggers" or "tyres"
    at_head : ndarray
        F, the boom's weight referred to the head [kg]

    Returns
    -------
    ndarray
        P [kg]
    """
    if rule.kind == "share":
        return rule.share(support_kind) * tipping_load
    return (tipping_load - rule.boom_share * at_head) / rule.load_factor


def boom_at_head(machine: Machine, *, placed: Masses) -> Array:
    """F of ISO 4305: the boom's mass that, at the head, has the same moment about the heel pin.

    Returns
    -------
    ndarray, shape (configurations, cells)
        [kg]
    """
    parts = len(machine.boom.sections) + 1
    arms = placed.out[:parts] - machine.heel_out
    reach = placed.head_out - machine.heel_out
    return np.asarray(np.tensordot(placed.mass[:parts], arms, axes=1) / np.maximum(reach, 0.1))


def _utilisation(case: Case) -> Array:
    return tipping_utilisation(
        case.rule.stability,
        machine=case.machine,
        support=case.support,
        load=case.service.load,
        balance=case.balance,
        placed=case.placed,
    )


TIPPING = Kind(
    name="tipping",
    words="tipping over",
    happens="the crane tips over",
    short="tips over",
    code="",
    utilisation=_utilisation,
    boom_alone=False,
    set_by=STABILITY,
    passed=TIPS,
)
