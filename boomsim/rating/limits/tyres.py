"""Tyres: what the most loaded tyre position carries, over what its maker permits."""

import numpy as np

from boomsim.gravity import GRAVITY
from boomsim.machine.model import Support
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.stability.masses import Masses
from boomsim.mechanics.stability.overturning import Overturning, zero_moment_point
from boomsim.mechanics.stability.support_reactions import support_reactions
from boomsim.rating.limits.limit_kind import PERMISSIBLE, PERMISSIBLE_VALUE, Case, Kind


def tyre_forces(support: Support, *, placed: Masses, balance: Overturning, load: Array) -> Array:
    """Load of each tyre position at each slew angle.

    The crane is a rigid body on equal springs that push and cannot pull; the lift is taken as it is
    given, without allowances.

    Parameters
    ----------
    load : ndarray, shape (configurations, cells)
        Gross load [kg]

    Returns
    -------
    ndarray, shape (tyres, slews, configurations, cells)
        Infinite where the crane tips at one of the slew angles [N]
    """
    weight = GRAVITY * (placed.mass.sum() + load)
    x, y = zero_moment_point(balance, weight=weight, load=load)
    # Once the crane tips at one slew angle, nobody asks what its tyres carry at the others.
    stands = load < balance.least
    found = support_reactions(support, weight=weight[stands], x=x[:, stands], y=y[:, stands])
    force = np.full((len(found.force), *x.shape), np.inf)
    force[:, :, stands] = np.where(found.tipped, np.inf, found.force)
    return force


def _utilisation(case: Case) -> Array:
    known, support = 0.0 * case.service.angle, case.support
    if support.strength is None:
        return known
    force = tyre_forces(support, placed=case.placed, balance=case.balance, load=case.service.load)
    # Without equilibrium there is no tyre load either: the angle brings its NaN.
    return np.asarray(force.max(axis=(0, 1)) / support.strength + known)


TYRES = Kind(
    name="tyres",
    words="the tyres",
    short="tyres",
    code="t",
    utilisation=_utilisation,
    boom_alone=False,
    set_by=PERMISSIBLE_VALUE,
    passed=PERMISSIBLE,
    on="tyres",
)
