"""The one call path: a rigged machine and its cells in, every number of the lifts out."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from boomsim.machine.model import CALM
from boomsim.mechanics.condense import Condensed, condense
from boomsim.mechanics.forces import Forces, section_forces
from boomsim.mechanics.geometry import Array
from boomsim.mechanics.masses import Masses, masses
from boomsim.mechanics.stability import Overturning, overturning
from boomsim.mechanics.state import Factors, State, solve_state
from boomsim.rating.limits.kind import Case, Limit
from boomsim.rating.limits.strengths import Strengths, strengths
from boomsim.rating.limits.table import limits_of, uses
from boomsim.rating.setup import Setup

VALID_DEFLECTION = 0.05
"""Largest tip deflection over boom length for which the model is meant [1]."""


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Response:
    """What a boom under load does; NaN where it finds no equilibrium.

    Shapes (configurations, cells) unless given.

    Attributes
    ----------
    setup : Setup
    boom : Condensed
    state : State
        Without partial factors
    forces : Forces
        Without partial factors
    factored_forces : Forces
        With the partial factors of the strength rule
    placed : Masses
    balance : Overturning
    limits : tuple of Limit
    use : ndarray, shape (limits, configurations, cells)
        How much of each limit is used [1]
    """

    setup: Setup
    boom: Condensed
    state: State
    forces: Forces
    factored_forces: Forces
    placed: Masses
    balance: Overturning
    limits: tuple[Limit, ...]
    use: Array

    @property
    def radius(self) -> Array:
        """Loaded radius [m]."""
        return self.placed.head_out

    @property
    def tip_deflection(self) -> Array:
        """Head sheave centre below its place on the unbent boom, across the base section [m]."""
        return -self.boom.machine.boom.head.below - self.state.head_above

    @property
    def in_range(self) -> NDArray[np.bool_]:
        """True where the boom angle is allowed."""
        boom = self.setup.machine.boom
        with np.errstate(invalid="ignore"):
            return (self.state.angle >= boom.least_angle - 1e-9) & (
                self.state.angle <= boom.greatest_angle + 1e-9
            )

    @property
    def is_valid(self) -> NDArray[np.bool_]:
        """True where the tip deflection is inside the range of the model."""
        with np.errstate(invalid="ignore"):
            reach = VALID_DEFLECTION * self.boom.layout.boom_length[:, None]
            return np.abs(self.tip_deflection) <= reach


def bear(setup: Setup) -> Strengths:
    """Strengths of the machine under the rule; worked out once.

    Parameters
    ----------
    setup : Setup

    Returns
    -------
    Strengths
    """
    return strengths(setup.machine, rule=setup.rule)


def respond(
    setup: Setup,
    *,
    boom: Condensed,
    load: Array,
    radius: Array | None = None,
    angle: Array | None = None,
    start: Array | None = None,
) -> Response:
    """Solve and judge every cell.

    With a radius, the boom angle is the one at which the load hangs at that radius on level ground
    in still air; disturbances and partial factors then act at that angle.

    Parameters
    ----------
    setup : Setup
    boom : Condensed
        Configurations of the same machine
    load : ndarray, shape (configurations, cells) or broadcastable
        Gross load [kg]
    radius, angle : ndarray
        One of them, shape (configurations, cells) or broadcastable [m] or [rad]
    start : ndarray, optional
        Rotations to start from [rad]

    Returns
    -------
    Response
    """
    calm = setup.disturbances == CALM
    state = solve_state(boom, load=load, parts=setup.parts, radius=radius, angle=angle, start=start)
    held = state.angle
    if not calm:
        state = solve_state(
            boom, load=load, parts=setup.parts, angle=held, disturbances=setup.disturbances
        )
    forces = section_forces(boom, state=state)
    factored, factored_forces = state, forces
    strength = setup.rule.strength
    if strength.dead != 1.0 or strength.live != 1.0:
        factored = solve_state(
            boom,
            load=load,
            parts=setup.parts,
            angle=held,
            disturbances=setup.disturbances,
            factors=Factors(dead=strength.dead, live=strength.live),
        )
        factored_forces = section_forces(boom, state=factored)
    placed = masses(boom, state=state, counterweight=setup.counterweight)
    balance = overturning(
        boom,
        placed=placed,
        state=state,
        support=setup.support,
        slew=setup.slew,
        disturbances=setup.disturbances,
    )
    case = Case(
        boom=boom,
        rule=setup.rule,
        support=setup.support,
        slew=setup.slew,
        bear=bear(setup),
        service=state,
        forces=forces,
        factored=factored,
        factored_forces=factored_forces,
        placed=placed,
        balance=balance,
    )
    return Response(
        setup=setup,
        boom=boom,
        state=state,
        forces=forces,
        factored_forces=factored_forces,
        placed=placed,
        balance=balance,
        limits=limits_of(setup.machine, kinds=setup.kinds),
        use=uses(case, kinds=setup.kinds),
    )


__all__ = ["Response", "bear", "condense", "respond"]
