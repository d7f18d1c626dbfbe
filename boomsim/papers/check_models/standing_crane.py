"""From the givens of a question to the call path: cranes that stand, and may tip.

The question's masses are put where it says they are; the load hangs from a weightless boom that is
long enough for every question and does not bend.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from boomsim.machine.model import (
    CALM,
    CarrierMass,
    Disturbances,
    Hoist,
    Support,
    TurningMass,
)
from boomsim.mechanics.boom.boom_state import State, solve_state
from boomsim.mechanics.boom.condense import Condensed, condense
from boomsim.mechanics.stability.masses import Masses, masses
from boomsim.mechanics.stability.overturning import Overturning, overturning
from boomsim.papers.check_models.textbook_boom import textbook_boom, textbook_machine

REACH = 100.0
"""Length of the boom that brings the load wherever a question wants it [m]."""

BEHIND, ASIDE = 4.0, 3.0
"""Where floats stand that a question does not speak of [m]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Stood:
    """One crane with its load: a single cell of the call path."""

    boom: Condensed
    state: State
    placed: Masses
    balance: Overturning

    @property
    def tipping_load(self) -> float:
        """Least over all tipping lines [kg]."""
        return float(self.balance.least[0, 0])


def floats(length: float, width: float) -> Support:
    """Four floats in a rectangle round the axis of rotation.

    Parameters
    ----------
    length, width : float
        From float to float along the carrier and across it [m]
    """
    x, y = length / 2, width / 2
    points = ((x, y), (-x, y), (-x, -y), (x, -y))
    return Support(name="floats", kind="outriggers", points=points, stiffness=1e7, area=1.0)


def line_ahead(distance: float) -> Support:
    """Floats with a tipping line square across the boom that points over the rear.

    Parameters
    ----------
    distance : float
        From the axis of rotation [m]
    """
    points = ((distance, ASIDE), (-BEHIND, ASIDE), (-BEHIND, -ASIDE), (distance, -ASIDE))
    return replace(floats(1.0, 1.0), points=points)


@lru_cache(maxsize=1)
def _bare() -> Condensed:
    """Condense the weightless boom once."""
    machine = textbook_machine(textbook_boom((REACH,)))
    return condense(replace(machine, carrier=()), extension=np.zeros((1, 0)))


def crane(
    *,
    turning: Sequence[tuple[float, float]] = (),
    carrier: Sequence[tuple[float, float]] = (),
    support: Support | None = None,
    hoist: Hoist | None = None,
) -> Condensed:
    """Make a crane of point masses, with a boom that weighs nothing.

    Parameters
    ----------
    turning : sequence of (float, float)
        Mass and distance from the axis of rotation towards the boom head [kg], [m]
    carrier : sequence of (float, float)
        Mass and distance from the axis of rotation towards the rear [kg], [m]
    """
    boom = _bare()
    parts = [TurningMass(name="turning part", mass=m, out=x, up=1.0) for m, x in turning]
    rest = [CarrierMass(name="carrier part", mass=m, x=x, y=0.0, z=1.0) for m, x in carrier]
    machine = replace(
        boom.machine,
        superstructure=tuple(parts),
        carrier=tuple(rest),
        supports=boom.machine.supports if support is None else (support,),
        hoist=boom.machine.hoist if hoist is None else hoist,
    )
    return replace(boom, machine=machine)


def stand(
    boom: Condensed,
    *,
    load: float,
    radius: float | None = None,
    angle: float | None = None,
    slew: float = 0.0,
    disturbances: Disturbances = CALM,
) -> Stood:
    """Hang a load on a crane and take moments about its tipping lines.

    Parameters
    ----------
    boom : Condensed
        One configuration
    load : float
        Gross load [kg]
    radius, angle : float
        One of them [m] or [rad]
    slew : float
        0 over the rear [rad]
    """
    machine = boom.machine
    state = solve_state(
        boom, load=np.array([[load]]), parts=machine.hoist.parts[-1], disturbances=disturbances,
        radius=None if radius is None else np.array([[radius]]),
        angle=None if angle is None else np.array([[angle]]),
    )  # fmt: skip
    placed = masses(boom, state=state, counterweight=machine.counterweights[0])
    balance = overturning(
        boom, placed=placed, state=state, support=machine.supports[0], slew=np.array([slew]),
        disturbances=disturbances,
    )  # fmt: skip
    return Stood(boom=boom, state=state, placed=placed, balance=balance)
